"""What a row of days is for one family, whatever the place: ages, engagements, clock changes, the sun."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field, replace
from datetime import date, datetime, time, timedelta
from functools import cached_property, lru_cache
from zoneinfo import ZoneInfo

import numpy as np
from numpy.typing import NDArray

from tripplan.documents.calendars.family_days import WEEKDAYS
from tripplan.documents.family.habits import NIGHT_OVER
from tripplan.documents.family.household import Household
from tripplan.documents.family.member import Member
from tripplan.documents.where import Point
from tripplan.planning.climate.days_of_year import day_of_year
from tripplan.planning.climate.outdoors import AGES_MONTHS, percent_for
from tripplan.planning.day.times.limits import Engagements
from tripplan.planning.day.times.minutes import DayMinutes
from tripplan.planning.day.times.shapes import Napper
from tripplan.planning.family.family import Family
from tripplan.planning.outing.day_question import PartyNeeds
from tripplan.planning.outing.journeys import Pace, pace_of
from tripplan.planning.travel.daylight import daylight
from tripplan.planning.travel.patience import PATIENCE_CHANGES_MONTHS
from tripplan.planning.travel.rests import NEW_WALKER_UNDER_MONTHS, SMALL_CHILD_UNDER_MONTHS
from tripplan.values.ages import months_later
from tripplan.values.clocks import minute_of_day

Numbers = NDArray[np.int64]
_NEVER_UP = 10**6
"""A minute that no day has, for the sunrise of a polar night [min]."""


@dataclass(frozen=True, eq=False)
class DateRow:
    """Days in a row as one party lives them.

    Attributes:
        first: the first day.
        count: how many.
        family: home, habits, calendars and its own week.
        party: who is asked; somebody at work may stay behind on some days.
    """

    first: date
    count: int
    family: Family
    party: tuple[Member, ...]

    _birthdays_known: dict[int, frozenset[date]] = field(default_factory=dict)
    _needs_known: dict[int, PartyNeeds] = field(default_factory=dict)
    _nappers_known: dict[tuple[Napper, ...], tuple[Napper, ...]] = field(default_factory=dict)
    _between_known: dict[frozenset[date], tuple[Numbers, Numbers]] = field(default_factory=dict)
    _on_weekdays_known: dict[tuple[tuple[str, ...], ...], Numbers] = field(default_factory=dict)

    @property
    def household(self) -> Household:
        """The family's."""
        return self.family.household

    @cached_property
    def party_on(self) -> tuple[tuple[Member, ...], ...]:
        """Who goes on each day."""
        busy_days = self.family.busy_days
        return tuple(busy_days.who_goes(self.party, day).members for day in self.days)

    def needs(self, n: int) -> PartyNeeds:
        """What they bring into the plan of a day; equal naps of several days are the same object."""
        if n not in self._needs_known:
            needs = PartyNeeds.of(self.household, self.party_on[n], self.days[n])
            nappers = self._nappers_known.setdefault(needs.nappers, needs.nappers)
            self._needs_known[n] = replace(needs, nappers=nappers)
        return self._needs_known[n]

    def first_minute(self, n: int) -> int:
        """By the clock, the first minute of a day that a plan may rest on: a departure or a nap's slack."""
        party, habits = self.party_on[n], self.household.habits
        earliest = max((habits.earliest_departure, *(member.wakes for member in party)))
        naps = (nap for member in party for nap in member.naps)
        starts = [minute_of_day(nap.start) - nap.slack_minutes for nap in naps]
        return min([minute_of_day(earliest), *starts])

    def later_from_the_night(self, n: int) -> int:
        """How much later everything comes, counted from midnight, on a day whose clock changed at home [min].

        0 where it did not change before the night was over, or changes again by the next midnight.
        """
        zone = self.household.home.zone
        before, after, next_day = self.offsets(zone)[n : n + 3].tolist()
        over = DayMinutes(self.days[n], zone).by_clock(NIGHT_OVER) - minute_of_day(NIGHT_OVER)
        return before - after if over == before - after and after == next_day else 0

    @cached_property
    def party_kind(self) -> Numbers:
        """For each day a number; the same people go on days with the same number."""
        numbers: dict[tuple[str, ...], int] = {}
        names = (tuple(member.name for member in party) for party in self.party_on)
        return np.array([numbers.setdefault(who, len(numbers)) for who in names], dtype=np.int64)

    @cached_property
    def days(self) -> tuple[date, ...]:
        """All of them."""
        return tuple(self.first + timedelta(days=n) for n in range(self.count))

    @cached_property
    def ordinals(self) -> Numbers:
        """As days since the beginning of the calendar."""
        return np.arange(self.first.toordinal(), self.first.toordinal() + self.count, dtype=np.int64)

    @cached_property
    def weekday(self) -> Numbers:
        """0 for Monday."""
        return (self.ordinals - 1) % 7

    def on_weekdays(self, rules: tuple[tuple[str, ...], ...]) -> Numbers:
        """For each day which of some rules name its weekday, a bit a rule."""
        if rules not in self._on_weekdays_known:
            named = [sum((name in days) << n for n, days in enumerate(rules)) for name in WEEKDAYS]
            self._on_weekdays_known[rules] = np.array(named, dtype=np.int64)[self.weekday]
        return self._on_weekdays_known[rules]

    def kinds_between(self, changes: Iterable[date]) -> tuple[Numbers, Numbers]:
        """Which days are equal in who goes and in how many of the dates on which something changes have come.

        Returns:
            As `grouped`.
        """
        dates = frozenset(changes)
        known = self._between_known.get(dates)
        if known is None:
            ordinals = np.array(sorted(change.toordinal() for change in dates), dtype=np.int64)
            since = np.searchsorted(ordinals, self.ordinals, side="right")
            known = self._between_known[dates] = grouped([self.party_kind, since])
        return known

    def birthdays(self, bounds: Iterable[int]) -> set[date]:
        """The dates in the row on which somebody of the party comes to one of some ages [months]."""
        return set().union(*(self._birthdays(age) for age in bounds))

    def _birthdays(self, age: int) -> frozenset[date]:
        known = self._birthdays_known.get(age)
        if known is None:
            last = self.first + timedelta(days=self.count)
            passed = (months_later(member.born.earliest, age) for member in self.party)
            known = self._birthdays_known[age] = frozenset(day for day in passed if self.first < day < last)
        return known

    def is_among(self, dates: frozenset[date]) -> NDArray[np.bool_]:
        """For each day, whether it is one of some dates."""
        return _is_among(dates, self.first, self.count)

    @cached_property
    def of_year(self) -> Numbers:
        """The number of each date among the 366 of a year, from 0."""
        return np.array([day_of_year(day) for day in self.days])

    @cached_property
    def outdoor_percent(self) -> Numbers:
        """For each day how much cold and heat weigh for the youngest, against the usual [%]."""
        firsts, kinds = self.kinds_between(self.birthdays(AGES_MONTHS))
        return np.array([percent_for(min(self.needs(n).months)) for n in firsts.tolist()])[kinds]

    def offsets(self, zone: ZoneInfo) -> Numbers:
        """How far a zone's clock is from UTC at each midnight, up to two days after the row [min]."""
        return _offsets(zone, self.first, self.count + 2)

    def clock_changes(self, zone: ZoneInfo, *, past_midnight: bool) -> Numbers:
        """A number of its own for each day on which a clock is changed, which is like no other; else 0.

        Args:
            zone: whose clock.
            past_midnight: whether a change in the night after the day counts as well.
        """
        return _clock_changes(zone, self.first, self.count, past_midnight)

    @cached_property
    def pace(self) -> tuple[tuple[Pace, ...], Numbers, Numbers]:
        """The different ways in which the party travels, a day of each, and which of them each day has."""
        changes = self.birthdays((NEW_WALKER_UNDER_MONTHS, SMALL_CHILD_UNDER_MONTHS))
        firsts, kinds = self.kinds_between(changes)
        paces = [pace_of(self.household, self.party_on[n], self.days[n]) for n in firsts.tolist()]
        day_of = dict(zip(paces, firsts.tolist(), strict=True))
        different = tuple(day_of)
        which = np.array([different.index(pace) for pace in paces])[kinds]
        return different, np.array(list(day_of.values())), which

    @cached_property
    def most_driving(self) -> Numbers:
        """For each day the most driving, there and back together [min]."""
        firsts, kinds = self.kinds_between(self.birthdays(PATIENCE_CHANGES_MONTHS))
        return np.array([self.needs(n).most_driving_minutes for n in firsts.tolist()])[kinds]

    @cached_property
    def busy_minutes(self) -> tuple[Engagements, ...]:
        """For each day when its engagements are, as far as an outing could meet them [min]."""
        zone, habits = self.household.home.zone, self.household.habits
        found: list[Engagements] = []
        for day, party in zip(self.days, self.party_on, strict=True):
            entries = self.family.busy_days.on(day, [member.name for member in party])
            if not entries:
                found.append(())
                continue
            earliest = max((habits.earliest_departure, *(member.wakes for member in party)))
            minutes = DayMinutes(day, zone)
            end = minutes.home_by(habits)
            first = min(minutes.by_clock(earliest), end)
            spans = ((minutes.rounded_down(busy.start), minutes.rounded_up(busy.end)) for busy in entries)
            met = {
                (max(start, first), min(stop, end)) for start, stop in spans if start < end and stop > first
            }
            found.append(tuple(sorted(met)))
        return tuple(found)

    @cached_property
    def busy_kind(self) -> Numbers:
        """For each day a number; days with the same number are busy at the same minutes, with 0 never."""
        numbers: dict[Engagements, int] = {(): 0}
        return np.array([numbers.setdefault(spans, len(numbers)) for spans in self.busy_minutes])

    @cached_property
    def sun(self) -> tuple[Numbers, Numbers]:
        """Sunrise and sunset at home as minutes since midnight; all day light where the sun stays up."""
        home = self.household.home
        return _sun(home.point, home.zone, self.first, self.count)


@lru_cache(maxsize=256)
def _is_among(dates: frozenset[date], first: date, count: int) -> NDArray[np.bool_]:
    among = np.zeros(count, dtype=np.bool_)
    found = np.array([(day - first).days for day in dates], dtype=np.int64)
    among[found[(found >= 0) & (found < count)]] = True
    among.setflags(write=False)
    return among


@lru_cache(maxsize=256)
def _offsets(zone: ZoneInfo, first: date, count: int) -> Numbers:
    found = np.empty(count, dtype=np.int64)
    for n in range(count):
        offset = datetime.combine(first + timedelta(days=n), time(0), zone).utcoffset()
        found[n] = 0 if offset is None else offset // timedelta(minutes=1)
    found.setflags(write=False)
    return found


@lru_cache(maxsize=256)
def _clock_changes(zone: ZoneInfo, first: date, count: int, past_midnight: bool) -> Numbers:
    offsets = _offsets(zone, first, count + 2)
    changes = offsets[1 : count + 1] != offsets[:count]
    if past_midnight:
        changes |= offsets[2:] != offsets[1 : count + 1]
    found = np.where(changes, np.arange(1, count + 1), 0)
    found.setflags(write=False)
    return found


@lru_cache(maxsize=16)
def _sun(point: Point, zone: ZoneInfo, first: date, count: int) -> tuple[Numbers, Numbers]:
    rises, sets = np.empty(count, dtype=np.int64), np.empty(count, dtype=np.int64)
    for n in range(count):
        day = first + timedelta(days=n)
        light, minutes = daylight(point, day, zone), DayMinutes(day, zone)
        rises[n] = _NEVER_UP if light.polar_night else -_NEVER_UP
        sets[n] = _NEVER_UP
        if light.rises is not None:
            rises[n] = minutes.rounded_down(light.rises)
        if light.sets is not None:
            sets[n] = minutes.rounded_down(light.sets)
    rises.setflags(write=False)
    sets.setflags(write=False)
    return rises, sets


_NARROW, _TABLE, _WIDE = 64, 4096, 10**6
"""Numbers that reach beyond the first are renumbered, and so are keys beyond the second: up to the third, a
table with an entry for each number tells equal ones in a fraction of the time of sorting."""


def grouped(columns: Sequence[Numbers]) -> tuple[Numbers, Numbers]:
    """Which days are equal in all columns.

    Args:
        columns: one number a day each.

    Returns:
        For each kind of day one of its days, and for each day its kind.
    """
    told = np.array(columns)
    least, most = told.min(axis=1).tolist(), told.max(axis=1).tolist()
    key, count = np.zeros(told.shape[1], dtype=np.int64), 1
    for column, first, last in zip(told, least, most, strict=True):
        if first == last:
            continue
        column, width = column - first, last - first + 1
        if width > _NARROW:
            column, width = _renumbered(column, width)
        if count * width > _TABLE:
            key, count = _renumbered(key, count)
        key, count = key * width + column if count > 1 else column, count * width
    if count > _WIDE:
        key, count = _renumbered(key, count)
    one = np.full(count, -1)
    one[key] = np.arange(len(key))
    there = one >= 0
    return one[there], (np.cumsum(there) - 1)[key]


def _renumbered(numbers: Numbers, below: int) -> tuple[Numbers, int]:
    """The same numbers without gaps from 0 on, and how many different ones there are."""
    if below > _WIDE:
        different, kinds = np.unique(numbers, return_inverse=True)
        return kinds, len(different)
    there = np.zeros(below, dtype=np.bool_)
    there[numbers] = True
    return (np.cumsum(there) - 1)[numbers], int(np.count_nonzero(there))
