"""The kinds of days at one place, and the best day plan of each."""

from collections.abc import Iterator
from dataclasses import dataclass, fields, replace
from datetime import date
from functools import cached_property

import numpy as np

from tripplan.documents.family.habits import NIGHT_OVER
from tripplan.planning.day.best import Asked
from tripplan.planning.day.times.hourly_money import HourlyMoney
from tripplan.planning.day.times.limits import Engagements
from tripplan.planning.day.times.shapes import DayQuestion
from tripplan.planning.family.family import Family
from tripplan.planning.opening.hours import Openness
from tripplan.planning.outing.day_question import day_question, ways_at
from tripplan.planning.outing.delayed_costs import PlannedTimes, with_delays
from tripplan.planning.sweep.answer_cache import AnswerCache, CostedVisit, Key, Search, VisitPlan
from tripplan.planning.sweep.dates import DateRow, Numbers, grouped
from tripplan.planning.sweep.open_hours import NOT_ASKED_FOR, OpenHours
from tripplan.planning.sweep.place_row import PlaceRow
from tripplan.planning.sweep.prices import Prices
from tripplan.planning.sweep.table import Verdict
from tripplan.planning.sweep.weather import WeatherOfDays, weather_of_days
from tripplan.planning.travel.drive import Journey, Leg
from tripplan.planning.travel.morning import READINESS_CHANGES_MONTHS
from tripplan.planning.travel.patience import PATIENCE_CHANGES_MONTHS
from tripplan.values.clocks import minute_of_day

_TOLD_OTHERWISE = {"day", "home_zone", "way_there", "way_home", "hours", "busy", "begun", "money", "weather"}
_SAME_FOR_A_PARTY = {"nappers", "habits", "worth", "currency", "last_wakes", "first_bed"}
_OF_PLACE_AND_AGES = tuple(
    asked.name for asked in fields(DayQuestion) if asked.name not in _TOLD_OTHERWISE | _SAME_FOR_A_PARTY
)
"""What the day search is asked that may differ from place to place and with everybody's age."""


@dataclass(frozen=True)
class _Kind:
    """A kind of day at a place.

    Attributes:
        n: one of its days.
        free: all that its best plan rests on if nobody is engaged, whatever the weather.
        all: all that it rests on.
        weather: the kinds of weather it has, by their numbers at the place.
        by_night: how much later everything comes than on other days with the same `free` [min].
    """

    n: int
    free: Key
    all: Key
    weather: Numbers
    by_night: int


@dataclass(frozen=True)
class _Ways:
    """The two ways of some days.

    Attributes:
        there, back: the ways.
        number: the same for ways that take the same minutes.
    """

    there: Journey
    back: Journey
    number: int


@dataclass(frozen=True)
class _Asked:
    """What the day search is asked at a place, but for the day, its ways and its hours.

    Attributes:
        question: with those of one of the days.
        number: the same where the search is asked the same.
    """

    question: DayQuestion
    number: int


class Visits:
    """The day plans of one place over a row of days."""

    def __init__(
        self, family: Family, at: PlaceRow, days: Numbers, known: AnswerCache, *, today: date
    ) -> None:
        """Days: those of the row that the place is open on, one at least."""
        self._today = today
        self._family, self._at, self._days, self._known = family, at, days, known
        self._row: DateRow = at.row
        self._hours = OpenHours(at, known)
        self._money_numbers: dict[tuple[int, int], int] = {}

    def ask(self) -> None:
        """Have the best plan of each kind of day searched, unless it is known already."""
        known = self._known
        for kind in self._kinds:
            if kind.all in known.visits:
                continue
            if self._hours.on(kind.n).openness is not Openness.OPEN:
                known.visits[kind.all] = (Verdict.CLOSED,) * len(kind.weather)
                continue
            search = known.searches.get(kind.free)
            if search is None:
                search = known.searches[kind.free] = self._search(kind)
            engagements = _later(self._row.busy_minutes[kind.n], search.by_night - kind.by_night)
            weather = None if self._weather is None else self._weather.hourly.of(kind.weather)
            search.asked[kind.all] = Asked(engagements, weather)

    def found(self) -> list[CostedVisit | Verdict]:
        """Once all is searched, the best plan of each kind of day in each weather, or why there is none.

        Equal ones are the same object.
        """
        return [each for kind in self._kinds for each in self._found(kind)]

    def _found(self, kind: _Kind) -> Iterator[CostedVisit | Verdict]:
        found = self._known.visits[kind.all]
        costed = {id(one): self._costed(kind, one) for one in {id(one): one for one in found}.values()}
        return (costed[id(one)] for one in found)

    def _costed(self, kind: _Kind, found: VisitPlan | Verdict) -> CostedVisit | Verdict:
        if isinstance(found, Verdict):
            return found
        visit, costs = found.later(kind.by_night), self._prices.costs(kind.n)
        best = visit.best
        cost = costs.at(best.enter, best.leave, lunch_there=best.lunch_there)
        if cost is None:
            return Verdict.NO_TICKETS
        if costs.same_all_day:
            return CostedVisit(visit, cost)
        times = PlannedTimes(best.enter, best.leave, best.lunch_there)
        there = self._ways(kind.n).there.at(best.depart)
        return CostedVisit(visit, with_delays(cost, costs, times, self._row.household.habits, there))

    def weather(self, days: Numbers, enter: Numbers, leave: Numbers) -> Numbers:
        """What being outdoors weighs in a visit on each of some days [`hourly_weather.PARTS`]."""
        if self._weather is None:
            return np.zeros_like(enter)
        later = self._by_night[days]
        return self._weather.hourly.weighs(self._weather.kind[days], enter - later, leave - later)

    @property
    def kind(self) -> Numbers:
        """Of which kind, in which weather, each of the days is, as in `found`."""
        return self._in_weather[1]

    @cached_property
    def _grouped(self) -> tuple[Numbers, Numbers]:
        """Which of the days are equal but for their weather, as `grouped` says it."""
        at, row, days = self._at, self._row, self._days
        rests_on = [
            at.hours.kind,
            row.busy_kind,
            self._asked_of[1],
            self._ways_kinds[1],
            at.changes,
            at.ahead[: row.count],
            self._prices.kind,
            *(rule.kind for rule in at.inside),
        ]
        return grouped([column[days] for column in rests_on])

    @cached_property
    def _by_night(self) -> Numbers:
        """How much later everything comes on each day than on others of its kind [min]."""
        later = np.zeros(self._row.count, dtype=np.int64)
        for n in self._days[self._at.changes[self._days] > 0].tolist():
            later[n] = self._changed_by_night(n)
        return later

    @cached_property
    def _weather(self) -> WeatherOfDays | None:
        return weather_of_days(self._at, self._by_night)

    @cached_property
    def _in_weather(self) -> tuple[Numbers, Numbers]:
        """The kinds of days in each weather they have, in order, and which of these each of the days is.

        Their numbers are those of the kind, times how many weathers there are, and of the weather.
        """
        kind = self._grouped[1]
        if self._weather is not None:
            kind = kind * len(self._weather.hourly) + self._weather.kind[self._days]
        pairs, which = np.unique(kind, return_inverse=True)
        return pairs, which

    @cached_property
    def _kinds(self) -> list[_Kind]:
        """The kinds of days, in the order of `kind`."""
        firsts = self._days[self._grouped[0]].tolist()
        if self._weather is None:
            return [self._kind_of(n, np.zeros(1, dtype=np.int64)) for n in firsts]
        kind, weather = np.divmod(self._in_weather[0], len(self._weather.hourly))
        of_kinds = np.split(weather, np.flatnonzero(np.diff(kind)) + 1)
        return [self._kind_of(n, of_kind) for n, of_kind in zip(firsts, of_kinds, strict=True)]

    def _kind_of(self, n: int, weather: Numbers) -> _Kind:
        busy_kind, changes = int(self._row.busy_kind[n]), int(self._at.changes[n])
        by_night = int(self._by_night[n])
        money = self._money_number(n, by_night)
        same = (self._ways(n).number, self._asked(n).number, money, *self._hours.times(n))
        told = self._known.number(None if self._weather is None else (self._at.place.id, weather.tobytes()))
        free = (0 if by_night else changes, *same)
        return _Kind(n, free, (busy_kind, changes, told, *same), weather, by_night)

    @cached_property
    def _prices(self) -> Prices:
        ways = self.ways(int(self._days[0]))
        return Prices(self._family, self._at, self._days, self._today, ways, self._hours)

    def _money_number(self, n: int, by_night: int) -> int:
        """The same for days on which the same hours are as much cheaper than others."""
        key = (int(self._prices.kind[n]), by_night)
        if key not in self._money_numbers:
            money = self._money(n)
            told = money and money.compared().later(-by_night)
            self._money_numbers[key] = self._known.number(told)
        return self._money_numbers[key]

    def _money(self, n: int) -> HourlyMoney | None:
        """What a day costs by the hour; None where nobody is let in at any."""
        money = self._prices.costs(n).money
        return None if money.lets_nobody_in else money

    def ways(self, n: int) -> tuple[Journey, Journey]:
        """The way there and the way home on a day."""
        ways = self._ways(n)
        return ways.there, ways.back

    def _ways(self, n: int) -> _Ways:
        ways, kinds = self._ways_kinds
        return ways[int(kinds[n])]

    @cached_property
    def _ways_kinds(self) -> tuple[list[_Ways], Numbers]:
        """The different ways there are, and which of them each day has."""
        at, row = self._at, self._row
        paces, firsts, pace = row.pace
        kinds = pace
        if at.rush.any():
            changes = row.clock_changes(row.household.home.zone, past_midnight=False)
            firsts, kinds = grouped([pace, at.rush, np.where(at.rush, changes, 0)])
        found: dict[int, _Ways] = {}
        which = []
        for n in firsts.tolist():
            there, back = ways_at(self._family, paces[int(pace[n])], at.facts, row.days[n])
            minutes = _decisive(there)
            number = self._known.number((minutes, minutes if back is there else _decisive(back)))
            found.setdefault(number, _Ways(there, back, number))
            which.append(list(found).index(number))
        return list(found.values()), np.array(which)[kinds]

    @cached_property
    def _asked_of(self) -> tuple[list[_Asked], Numbers]:
        """The different things that the search is asked, and which of them is for each day.

        They rest on who goes and on everybody's age; load-up and rests are told by the ways.
        """
        row, stays = self._row, self._at.place.visit.stays
        changes = (*PATIENCE_CHANGES_MONTHS, *READINESS_CHANGES_MONTHS)
        ages = [*changes, *(bound for stay in stays for bound in stay.ages.bounds)]
        firsts, kinds = row.kinds_between(row.birthdays(ages))
        asked = []
        for n in firsts.tolist():
            day, needs = row.days[n], row.needs(n)
            question = day_question(self._family, needs, self._at.facts, day, NOT_ASKED_FOR, self.ways(n))
            told = tuple(getattr(question, name) for name in _OF_PLACE_AND_AGES)
            asked.append(_Asked(question, self._known.number((int(row.party_kind[n]), told))))
        return asked, kinds

    def _asked(self, n: int) -> _Asked:
        asked, kinds = self._asked_of
        return asked[int(kinds[n])]

    def _search(self, kind: _Kind) -> Search:
        there, back = self.ways(kind.n)
        question = replace(
            self._asked(kind.n).question,
            day=self._row.days[kind.n],
            hours=self._hours.on(kind.n),
            way_there=there,
            way_home=back,
            money=self._money(kind.n),
        )
        return Search(question, kind.by_night)

    def _changed_by_night(self, n: int) -> int:
        """How much later everything comes, counted from midnight, on a day whose clock changed in the night.

        After that the day is like any other: what it rests on is all read off the changed clock, so every
        minute of its best plan moves by as much. 0 where the change could matter.
        """
        at, row = self._at, self._row
        later = row.later_from_the_night(n)
        if not later or row.household.home.zone != at.place.where.zone or at.past_midnight or at.rush[n]:
            return 0
        opens = min(start for start, _ in at.hours.spans[at.hours.kind[n]])
        over, grid = minute_of_day(NIGHT_OVER), self._asked(n).question.grid_minutes
        return later if not later % grid and min(opens, row.first_minute(n)) >= over else 0


def _later(engagements: Engagements, minutes: int) -> Engagements:
    return tuple((start + minutes, end + minutes) for start, end in engagements)


def _decisive(way: Journey) -> tuple[object, ...]:
    """All of a way that a day plan rests on."""
    if isinstance(way, Leg):
        halts = tuple((halt.after_minutes, halt.minutes) for halt in way.halts)
        return (way.load_up_minutes, way.drive_minutes, way.drive.minutes, way.unload_minutes, *halts)
    return (way.by_minute.tobytes(), *map(_decisive, way.legs))
