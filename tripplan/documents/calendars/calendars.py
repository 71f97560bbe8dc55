"""School and family calendars, reduced to what planning asks of them."""

from datetime import date, datetime, timedelta
from typing import Annotated, Self

from pydantic import AwareDatetime, Field, model_validator

from tripplan.documents.model import Name, Written
from tripplan.errors import PlanError

_DAY = timedelta(days=1)
MOST_PUPILS = 5_000_000
"""More students than these follow no single calendar; who types more has slipped. No source, our choice."""


class DateSpan(Written):
    """Some days in a row; both ends count."""

    first: date
    last: date
    name: str = ""
    """What the days are, such as 'spring break'."""

    @model_validator(mode="after")
    def _in_order(self) -> Self:
        if self.last < self.first:
            raise ValueError("the last day lies before the first")
        return self

    def __contains__(self, day: date) -> bool:
        return self.first <= day <= self.last


class PupilTown(Written):
    """Where a part of a large region's students live."""

    name: str = ""
    latitude: Annotated[float, Field(ge=-90, le=90)]
    """Degrees, north positive."""
    longitude: Annotated[float, Field(ge=-180, le=180)]
    """Degrees, east positive."""
    part: Annotated[float, Field(gt=0)]
    """How much it weighs beside the region's other towns [-]."""


class EntryChoice(Written):
    """What the parent said of one entry of an imported calendar, kept for the next import."""

    key: str
    """Names the occurrence; begins with what names the entry."""
    title: str
    """What the entry was called then."""
    no_school: bool
    """Whether it counts as days without school."""
    short: bool = False
    """Whether it counts as short days, with school."""


class SchoolCalendar(Written):
    """The days without school of one district or region."""

    name: Name
    country: Annotated[str, Field(pattern=r"^[A-Z]{2}$")]
    subdivision: Annotated[str, Field(pattern=r"^[A-Z0-9]{0,3}$")] = ""
    """ISO 3166-2 code without the country."""
    latitude: Annotated[float, Field(ge=-90, le=90)]
    longitude: Annotated[float, Field(ge=-180, le=180)]
    """Where its students live, roughly the middle [degrees]."""
    towns: tuple[PupilTown, ...] = ()
    """Of a large region, where its students live instead of in one middle."""
    pupils: Annotated[int, Field(ge=1)] = 10_000
    """How many students follow it; the weight beside other calendars."""
    known: DateSpan
    """The span the calendar speaks about; outside it nothing is known."""
    no_school: tuple[DateSpan, ...] = ()
    """Breaks and days off, weekends need not be listed."""
    short_days: tuple[DateSpan, ...] = ()
    """Days on which students go home early or come late; they are at school."""
    expected_within: DateSpan | None = None
    """The span that `expected` speaks about, as a guess; it lies outside `known`."""
    expected: tuple[DateSpan, ...] = ()
    """Breaks and days off that are likely, such as last year's moved to the same weekdays."""
    choices: tuple[EntryChoice, ...] = ()
    """What the parent ticked in the file it was made of."""
    region: str = ""
    """The code of the built-in region it was made of, such as DE-BY."""
    source: str = ""
    """Where it comes from."""

    @model_validator(mode="after")
    def _guess_beside_facts(self) -> Self:
        within = self.expected_within
        if within is None and self.expected:
            raise ValueError("expected days need the span they are expected within")
        if within and within.first <= self.known.last and within.last >= self.known.first:
            raise ValueError("what is expected lies outside the days the calendar speaks about")
        return self


_A_YEAR_OF_WEEKS = timedelta(weeks=52)
"""The same weekday a year on; every fifth or sixth year it takes 53 weeks, which the edges' doubt covers."""
_LEAST_TO_COPY = timedelta(days=180)
_LONGEST_SUMMER = timedelta(weeks=14)


def with_next_year_expected(calendar: SchoolCalendar) -> SchoolCalendar:
    """The calendar with the year after its last known day guessed from the year before that day.

    Breaks move by 52 weeks, so that they keep their weekdays. Where the calendar runs from a first to a last
    day of school, the weeks between are taken for the summer. The guess replaces an older one; how far it
    can be trusted is for `tripplan.planning.holidays.schools` to say.

    Raises:
        PlanError: the calendar speaks about less than 180 days, too few to tell a year's breaks.
    """
    known = calendar.known
    if known.last - known.first < _LEAST_TO_COPY:
        raise PlanError(f"{calendar.name} speaks about less than half a year; that is too little to go by")
    copied_from = max(known.first, known.last - _A_YEAR_OF_WEEKS + _DAY)
    begins, ends = copied_from + _A_YEAR_OF_WEEKS, known.last + _A_YEAR_OF_WEEKS
    expected = [
        DateSpan(
            first=max(off.first, copied_from) + _A_YEAR_OF_WEEKS,
            last=off.last + _A_YEAR_OF_WEEKS,
            name=off.name,
        )
        for off in calendar.no_school
        if off.last >= copied_from
    ]
    between = begins - known.last - _DAY
    if _DAY <= between <= _LONGEST_SUMMER:
        expected.insert(0, DateSpan(first=known.last + _DAY, last=begins - _DAY, name="summer"))
        begins = known.last + _DAY
    return calendar.model_copy(
        update={"expected_within": DateSpan(first=begins, last=ends), "expected": tuple(expected)}
    )


def with_guess_kept(calendar: SchoolCalendar, before: SchoolCalendar | None) -> SchoolCalendar:
    """A calendar brought in again, with the year after guessed anew where it was guessed before.

    Args:
        calendar: as it was read now.
        before: the one whose place it takes, if any.

    Returns:
        The calendar as it is where it has a guess of its own, none was made before, or it now speaks about
        all days of the earlier guess. Where it is too short to guess by, what is left of the earlier guess.
    """
    old = before.expected_within if before else None
    if before is None or old is None or calendar.expected_within or calendar.known.last >= old.last:
        return calendar
    try:
        return with_next_year_expected(calendar)
    except PlanError:
        within = DateSpan(first=max(old.first, calendar.known.last + _DAY), last=old.last)
    expected = tuple(
        DateSpan(first=max(off.first, within.first), last=off.last, name=off.name)
        for off in before.expected
        if off.last >= within.first
    )
    return calendar.model_copy(update={"expected_within": within, "expected": expected})


class Busy(Written):
    """A time when the family cannot go out; all-day entries run from midnight to midnight at home."""

    start: AwareDatetime
    end: AwareDatetime
    name: str = ""
    """Left empty unless the parent chose to keep what the entry says."""

    def meets(self, start: datetime, end: datetime) -> bool:
        """Whether it overlaps the time from start to end."""
        return self.start < end and start < self.end


class FamilyCalendar(Written):
    """When the family is already busy."""

    name: Name
    busy: tuple[Busy, ...] = ()
    covers: DateSpan | None = None
    """The days it was read for; beyond them nothing is known. Not on record when left out."""
    source: str = ""
    """The file it was read from."""
