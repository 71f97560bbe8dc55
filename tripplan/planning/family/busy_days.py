"""The family's own week: fixed blocks, working hours, and slow mornings after late evenings.

What calendars and these rules come to is indexed by day once, so that a sweep over a year asks cheaply.
"""

from collections import defaultdict
from collections.abc import Collection, Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from functools import cached_property
from zoneinfo import ZoneInfo

from tripplan.documents.calendars.calendars import Busy, FamilyCalendar
from tripplan.documents.calendars.family_days import FamilyDays, LateEvening, WorkingHours, monday_of
from tripplan.documents.calendars.local_days import LocalDay
from tripplan.documents.family.household import Household
from tripplan.documents.family.member import Member
from tripplan.documents.outings.planned import PlannedOuting
from tripplan.errors import UnknownName
from tripplan.language.sentences import Fact, fact
from tripplan.planning.holidays.local_days import is_near, local_dates
from tripplan.planning.holidays.public_holidays import public_holidays

_DAY = timedelta(days=1)
NIGHT_ENDS = time(6)
"""An entry that runs past midnight and ends by then made the evening late; a later one is a night away."""
_LAST_MINUTE = timedelta(minutes=1)
"""By how much a whole day's end may be written short of midnight."""
THE_DAY_SO_FAR = "the day so far"
"""Takes the time of today that is over."""
_AHEAD_DAYS = 3
"""The search looks at the day asked about and so many days on."""


@dataclass(frozen=True)
class WhoGoes:
    """Which of a party can go on a day.

    Attributes:
        members: those who go.
        notes: who stays behind and why.
    """

    members: tuple[Member, ...]
    notes: tuple[Fact, ...]


@dataclass(frozen=True)
class BusyDays:
    """When a family is busy, by day, from its calendars and its own week.

    Attributes:
        household: its members, home and clock.
        calendars: what was imported.
        own_week: blocks, working hours and late evenings.
        local_days: what the parent listed; those on which people around home are off work free them too.
        planned: outings, each with what its place is called; only those who go are taken by it.
        now: what is before it on its day is over, zone-aware; None where the present does not matter.
    """

    household: Household
    calendars: tuple[FamilyCalendar, ...]
    own_week: FamilyDays
    local_days: tuple[LocalDay, ...] = ()
    planned: tuple[tuple[PlannedOuting, str], ...] = ()
    now: datetime | None = None

    def on(self, day: date, party: Collection[str]) -> tuple[Busy, ...]:
        """What an outing on a day must stay clear of.

        Args:
            day: the date at home.
            party: the names of those who go; nobody else's working hours count.

        Returns:
            Calendar entries and planned outings of that and the following three days, and the blocks,
            working hours and slow morning of the day; of today, what is over of it.
        """
        zone = self.household.home.zone
        entries = {
            (busy.start, busy.end, busy.name): busy
            for ahead in range(_AHEAD_DAYS + 1)
            for busy, whose in self._entries.get(day + ahead * _DAY, ())
            if whose is None or not whose.isdisjoint(party)
        }
        return (
            *entries.values(),
            *self._blocks(day),
            *(
                work.hours_on(day, zone, f"{work.member} works")
                for work in self._at_work(day, party)
                if work.then == "wait" or self._needed(work.member, day, party)
            ),
            *self._slow_morning(day),
            *self._over(day),
        )

    def who_goes(self, party: Sequence[Member], day: date) -> WhoGoes:
        """Which of a party go on a day: all but the adults at work without whom the outing goes.

        Where nobody of 18 or older would be left, everybody goes and the outing waits instead.
        """
        names = [member.name for member in party]
        stays = {
            work.member: work
            for work in self._at_work(day, names)
            if work.then == "without" and not self._needed(work.member, day, names)
        }
        return WhoGoes(
            tuple(member for member in party if member.name not in stays),
            tuple(
                fact("notes-at-work", name=name, start=work.start, end=work.end)
                for name, work in stays.items()
            ),
        )

    def notes(self, day: date) -> tuple[Fact, ...]:
        """What is not known about a day because a calendar does not reach it."""
        return tuple(
            fact(
                "notes-calendar-ends",
                name=calendar.name,
                first=calendar.covers.first,
                last=calendar.covers.last,
            )
            for calendar in self.calendars
            if calendar.covers is not None and day not in calendar.covers
        )

    @cached_property
    def _entries(self) -> dict[date, list[tuple[Busy, frozenset[str] | None]]]:
        """Calendar entries and planned outings by every day they touch, with whom they take; None for all."""
        zone = self.household.home.zone
        by_day: dict[date, list[tuple[Busy, frozenset[str] | None]]] = defaultdict(list)
        for busy, whose in self._all_entries():
            first, last = busy.start.astimezone(zone).date(), busy.end.astimezone(zone).date()
            for ahead in range((last - first).days + 1):
                by_day[first + ahead * _DAY].append((busy, whose))
        return dict(by_day)

    def _all_entries(self) -> Iterator[tuple[Busy, frozenset[str] | None]]:
        for calendar in self.calendars:
            for busy in calendar.busy:
                yield busy, None
        for outing, name in self.planned:
            yield Busy(start=outing.leave_home, end=outing.home, name=name), frozenset(outing.party)

    @cached_property
    def _after_late(self) -> dict[date, Busy]:
        """The days after a late evening in a calendar, with the entry that made it late."""
        rule, zone = self.own_week.late_evening, self.household.home.zone
        if rule is None:
            return {}
        found = ((_late_until(busy, rule, zone), busy) for busy, _ in self._all_entries())
        return {day + _DAY: busy for day, busy in found if day is not None}

    def _blocks(self, day: date) -> Iterator[Busy]:
        zone = self.household.home.zone
        for block in self.own_week.weekly:
            if block.happens_on(day):
                yield block.hours_on(day, zone, block.name)

    def _slow_morning(self, day: date) -> Iterator[Busy]:
        rule, zone = self.own_week.late_evening, self.household.home.zone
        if rule is None:
            return
        late = [busy for busy in self._blocks(day - _DAY) if _late_until(busy, rule, zone)]
        if day in self._after_late:
            late.append(self._after_late[day])
        if not late:
            return
        midnight = datetime.combine(day, time(), zone)
        free_from = (
            datetime.combine(day + _DAY, time(), zone)
            if rule.not_before is None
            else datetime.combine(day, rule.not_before, zone)
        )
        if free_from > midnight:
            what = f"late evening before: {late[0].name}" if late[0].name else "late evening before"
            yield Busy(start=midnight, end=free_from, name=what)

    def _over(self, day: date) -> Iterator[Busy]:
        """What is over of today."""
        if self.now is None:
            return
        midnight = datetime.combine(day, time(), self.household.home.zone)
        if midnight < self.now and self.now.astimezone(midnight.tzinfo).date() == day:
            yield Busy(start=midnight, end=self.now, name=THE_DAY_SO_FAR)

    def _at_work(self, day: date, party: Collection[str]) -> Iterator[WorkingHours]:
        for work in self.own_week.work:
            free = work.public_holidays_off and self._is_off_work(day)
            if work.member in party and work.happens_on(day) and not free:
                yield work

    def _needed(self, name: str, day: date, party: Collection[str]) -> bool:
        """Whether nobody of 18 or older could go if all who are at work stayed behind."""
        at_work = {work.member for work in self._at_work(day, party) if work.then == "without"}
        adults = {
            member.name
            for member in self.household.members
            if member.name in party and member.is_adult_on(day)
        }
        return name in adults and adults <= at_work

    def _is_off_work(self, day: date) -> bool:
        """Whether people around home are off work on a day of the week on which they usually work."""
        if day in self._holidays(day.year):
            return True
        return any(day in local_dates(local, (day.year,)) for local in self._days_off)

    @cached_property
    def _days_off(self) -> tuple[LocalDay, ...]:
        """The local days off around home."""
        home = self.household.home.point
        return tuple(local for local in self.local_days if local.day_off and is_near(local, home))

    def _holidays(self, year: int) -> Collection[date]:
        home = self.household.home
        try:
            return public_holidays(home.country, home.subdivision, (year,)).keys()
        except UnknownName:
            return ()


def weeks_of(days: Iterable[date]) -> frozenset[date]:
    """The Mondays of the weeks that some days lie in (ISO 8601: a week begins on Monday)."""
    return frozenset(map(monday_of, days))


def day_end(start: datetime, end: datetime) -> tuple[date, time] | None:
    """The day that an entry lets end late or early, and how late.

    Args:
        start: of the entry, by the clock at home.
        end: likewise, later.

    Returns:
        The day, and when the entry is over by its clock; its last moment where that is past midnight, but not
        where it is a night away. None for whole days, also by the clock of another zone or up to their last
        minute.
    """
    short_of_days = (start.replace(tzinfo=None) - end.replace(tzinfo=None)) % _DAY
    if short_of_days <= _LAST_MINUTE:
        return None
    if end.date() > start.date() and end.time() <= NIGHT_ENDS:
        return end.date() - _DAY, time.max
    return end.date(), end.time()


def _late_until(busy: Busy, rule: LateEvening, zone: ZoneInfo) -> date | None:
    """The day whose evening an entry made late; None where it did not."""
    ended = day_end(busy.start.astimezone(zone), busy.end.astimezone(zone))
    return ended[0] if ended and ended[1] > rule.after else None
