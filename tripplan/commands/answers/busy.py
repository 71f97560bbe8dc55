"""The JSON answer of `tripplan busy`."""

from tripplan.commands.answers.parts import RecordsAnswer, Told
from tripplan.documents.calendars.calendars import DateSpan
from tripplan.documents.calendars.family_days import FamilyDays


class FamilyCalendarTold(Told):
    """A family calendar on record."""

    name: str
    source: str
    """The file it was read from."""
    busy: int
    """How many busy times it has."""
    covers: DateSpan | None
    """The days it was read for; null where that is not on record."""


class BusyListAnswer(RecordsAnswer):
    """When the family is busy."""

    calendars: tuple[FamilyCalendarTold, ...]
    own_week: FamilyDays
    """Fixed blocks, working hours, and what a late evening does."""
