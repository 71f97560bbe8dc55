"""School and family calendars, reduced to what planning asks of them."""

from datetime import date, datetime
from typing import Annotated, Self

from pydantic import AwareDatetime, Field, model_validator

from tripplan.planning.household import Name
from tripplan.planning.model import Written


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


class SchoolCalendar(Written):
    """The days without school of one district or region."""

    name: Name
    country: Annotated[str, Field(pattern=r"^[A-Z]{2}$")]
    subdivision: Annotated[str, Field(pattern=r"^[A-Z0-9]{0,3}$")] = ""
    """ISO 3166-2 code without the country."""
    latitude: Annotated[float, Field(ge=-90, le=90)]
    longitude: Annotated[float, Field(ge=-180, le=180)]
    """Where its pupils live, roughly the middle [degrees]."""
    pupils: Annotated[int, Field(ge=1)] = 10_000
    """How many pupils follow it; the weight beside other calendars."""
    known: DateSpan
    """The span the calendar speaks about; outside it nothing is known."""
    no_school: tuple[DateSpan, ...] = ()
    """Breaks and days off, weekends need not be listed."""
    source: str = ""
    """Where it comes from."""

    def out_on(self, day: date) -> bool | None:
        """Whether its pupils have no school that day; None where the calendar does not reach."""
        if day not in self.known:
            return None
        return day.weekday() >= 5 or any(day in span for span in self.no_school)


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
