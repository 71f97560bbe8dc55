"""The family's own week: fixed blocks, working hours, and slow mornings after late evenings."""

from datetime import date, datetime, time, timedelta
from typing import Annotated, Literal, Self, get_args
from zoneinfo import ZoneInfo

from pydantic import Field, model_validator

from tripplan.documents.calendars.calendars import Busy, DateSpan
from tripplan.documents.model import ClockTime, Name, Weekday, Written

WEEKDAYS: tuple[Weekday, ...] = get_args(Weekday)


_DAY = timedelta(days=1)


Days = Annotated[tuple[Weekday, ...], Field(min_length=1, max_length=7)]


class _EveryWeek(Written):
    """What happens at the same hours on the same days of the week."""

    days: Days
    """Days of the week."""
    start: ClockTime
    """When it begins, by the clock at home."""
    end: ClockTime
    """When it is over, later on the same day."""
    first: date | None = None
    """The first day it counts; always, when left out."""
    last: date | None = None
    """The last day it counts; for good, when left out."""
    every_weeks: Annotated[int, Field(ge=1, le=12)] = 1
    """Every so many weeks, counted from the week of `first` [weeks]."""
    not_during: tuple[DateSpan, ...] = ()
    """Days on which it does not happen: breaks, holidays, days off."""

    @model_validator(mode="after")
    def _makes_sense(self) -> Self:
        if self.end <= self.start:
            raise ValueError("it is over later on the same day than it begins")
        if self.first and self.last and self.last < self.first:
            raise ValueError("the last day lies before the first")
        if self.every_weeks > 1 and self.first is None:
            raise ValueError("every so many weeks needs a first day to count from")
        return self

    def happens_on(self, day: date) -> bool:
        """Whether it happens on a day."""
        if WEEKDAYS[day.weekday()] not in self.days or any(day in span for span in self.not_during):
            return False
        if (self.first and day < self.first) or (self.last and day > self.last):
            return False
        if self.every_weeks == 1 or self.first is None:
            return True
        return (monday_of(day) - monday_of(self.first)).days // 7 % self.every_weeks == 0

    def hours_on(self, day: date, zone: ZoneInfo, name: str) -> Busy:
        """Its hours on a day, by the clock at home."""
        start, end = (datetime.combine(day, at, zone) for at in (self.start, self.end))
        return Busy(start=start, end=end, name=name)


class WeeklyBlock(_EveryWeek):
    """Something fixed: a lesson, a club, a standing appointment; no outing is planned over it."""

    name: Name
    """What it is; tells it from the others."""


class WorkingHours(_EveryWeek):
    """The hours in which an adult works."""

    member: Name
    """Who; a member of the household."""
    public_holidays_off: bool = True
    """Whether public holidays where the family lives are free, and local days on which people there are off
    work."""
    then: Literal["wait", "without"] = "wait"
    """What an outing does that this adult belongs to: `wait` keeps it clear of the hours; `without` goes on
    such a day without this adult, unless nobody of 18 or older would be left."""


class LateEvening(Written):
    """What a late evening does to the day after it."""

    after: ClockTime = time(21, 0)
    """An entry that ends later than this makes the evening late, by the clock at home."""
    not_before: ClockTime | None = None
    """When the family leaves at the earliest on the day after; not at all that day when left out."""


class FamilyDays(Written):
    """The family's own week, beside what its calendars say."""

    weekly: Annotated[tuple[WeeklyBlock, ...], Field(max_length=60)] = ()
    """Fixed blocks."""
    work: Annotated[tuple[WorkingHours, ...], Field(max_length=60)] = ()
    """Working hours of adults."""
    late_evening: LateEvening | None = None
    """What a late evening does to the next day; nothing when left out."""

    @model_validator(mode="after")
    def _told_apart(self) -> Self:
        names = [block.name.casefold() for block in self.weekly]
        twice = {name for name in names if names.count(name) > 1}
        if twice:
            raise ValueError(f"every fixed block needs a name of its own; twice: {', '.join(sorted(twice))}")
        return self


def monday_of(day: date) -> date:
    """The Monday of the week that a day lies in (ISO 8601: a week begins on Monday)."""
    return day - day.weekday() * _DAY
