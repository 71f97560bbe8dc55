"""The JSON answer of `tripplan holidays`."""

from datetime import date

from tripplan.commands.answers.parts import RecordsAnswer, Told
from tripplan.documents.calendars.calendars import DateSpan
from tripplan.documents.calendars.local_days import LocalDay


class HolidayTold(Told):
    """A public holiday, an observed day or a bridge day."""

    day: date
    name: str
    where: tuple[str, ...]
    """'home', and countries and states of places."""
    days_off: DateSpan | None
    """The long weekend it is part of; null where it is part of none."""


class HolidaysListAnswer(RecordsAnswer):
    """The holidays of the coming year, and the local days that the parent added."""

    holidays: tuple[HolidayTold, ...]
    local_days: tuple[LocalDay, ...]
    sources: tuple[str, ...]
    """Where the holidays come from, and what is known to be missing, in words."""
