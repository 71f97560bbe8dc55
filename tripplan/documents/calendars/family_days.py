"""The family's own week: fixed blocks, working hours, and slow mornings after late evenings."""

from datetime import date, datetime, time, timedelta
from typing import Annotated, Literal, Self, get_args
from zoneinfo import ZoneInfo

from pydantic import Field, model_validator

from tripplan.documents.calendars.calendars import Busy, DateSpan
from tripplan.documents.field_spec import Control, FieldSpec
from tripplan.documents.model import DAY_NAMES, ClockTime, Name, Weekday, Written

WEEKDAYS: tuple[Weekday, ...] = get_args(Weekday)


_DAY = timedelta(days=1)


Days = Annotated[tuple[Weekday, ...], Field(min_length=1, max_length=7)]


class _EveryWeek(Written):
    """What happens at the same hours on the same days of the week."""

    days: Annotated[Days, FieldSpec("On which days?", called="Days", control=Control.SOME, words=DAY_NAMES)]
    """Days of the week."""
    start: Annotated[ClockTime, FieldSpec("From", width=200)]
    """When it begins, by the clock at home."""
    end: Annotated[ClockTime, FieldSpec("To", width=200)]
    """When it is over, later on the same day."""
    first: Annotated[date | None, FieldSpec("First day", help="Left empty, it counts always.", width=200)] = (
        None
    )
    """The first day it counts; always, when left out."""
    last: Annotated[date | None, FieldSpec("Last day", help="Left empty, it goes on.", width=200)] = None
    """The last day it counts; for good, when left out."""
    every_weeks: Annotated[
        int,
        Field(ge=1, le=12),
        FieldSpec("Every so many weeks", help="Counted from the week of the first day.", width=200),
    ] = 1
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

    name: Annotated[Name, FieldSpec("What is it?", called="Name", example="such as: piano lesson")]
    """What it is; tells it from the others."""


class WorkingHours(_EveryWeek):
    """The hours in which an adult works."""

    member: Annotated[
        Name, FieldSpec("Who works?", called="Who works", control=Control.CHOICE, offered="adults")
    ]
    """Who; a member of the household."""
    public_holidays_off: Annotated[
        bool, FieldSpec("Public holidays are free, and local days off around home")
    ] = True
    """Whether public holidays where the family lives are free, and local days on which people there are off
    work."""
    then: Annotated[
        Literal["wait", "without"],
        FieldSpec(
            "What then?",
            called="What then",
            help="Without this adult the outing is also priced without. Where no other adult would be "
            "left, it waits.",
            control=Control.RADIO,
            words={
                "wait": "the outing keeps clear of these hours",
                "without": "the outing goes without this adult on such a day",
            },
        ),
    ] = "wait"
    """What an outing does that this adult belongs to: `wait` keeps it clear of the hours; `without` goes on
    such a day without this adult, unless nobody of 18 or older would be left."""


class LateEvening(Written):
    """What a late evening does to the day after it."""

    after: Annotated[ClockTime, FieldSpec("Late is after", width=220)] = time(21, 0)
    """An entry that ends later than this makes the evening late, by the clock at home."""
    not_before: Annotated[ClockTime | None, FieldSpec("Then nobody leaves before", width=220)] = None
    """When the family leaves at the earliest on the day after; not at all that day when left out."""


class FamilyDays(Written):
    """The family's own week, beside what its calendars say."""

    weekly: Annotated[tuple[WeeklyBlock, ...], Field(max_length=60), FieldSpec("Fixed block")] = ()
    """Fixed blocks."""
    work: Annotated[tuple[WorkingHours, ...], Field(max_length=60), FieldSpec("Working hours")] = ()
    """Working hours of adults."""
    late_evening: Annotated[LateEvening | None, FieldSpec("After a late evening")] = None
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
