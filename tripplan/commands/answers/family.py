"""The JSON answers of `tripplan busy`, `tripplan holidays` and `tripplan schools`."""

from dataclasses import dataclass
from datetime import date

from tripplan.commands.answers.common import RecordsAnswer
from tripplan.commands.answers.json_keys import json_keys
from tripplan.documents.calendars.calendars import DateSpan, SchoolCalendar
from tripplan.documents.calendars.family_days import FamilyDays
from tripplan.documents.calendars.local_days import LocalDay
from tripplan.planning.holidays.coming_holidays import ComingHoliday
from tripplan.planning.holidays.coverage import PlaceCoverage


@dataclass(frozen=True)
class CalendarInShort:
    """A family calendar on record.

    Attributes:
        name: what it is called.
        source: the file it was read from.
        busy: how many busy times it has.
        covers: the days it was read for; null where that is not on record.
    """

    name: str
    source: str
    busy: int
    covers: DateSpan | None


@dataclass(frozen=True, kw_only=True)
class BusyListAnswer(RecordsAnswer):
    """When the family is busy.

    Attributes:
        calendars: those on record.
        own_week: fixed blocks, working hours, and what a late evening does.
    """

    calendars: tuple[CalendarInShort, ...]
    own_week: FamilyDays


@dataclass(frozen=True, kw_only=True)
class HolidaysListAnswer(RecordsAnswer):
    """The holidays of the coming year, and the local days that the parent added.

    Attributes:
        holidays: by day; `days_off` is the long weekend it is part of, null where it is part of none.
        local_days: as they are on record.
        sources: where the holidays come from, and what is known to be missing, in words.
    """

    holidays: tuple[ComingHoliday, ...]
    local_days: tuple[LocalDay, ...]
    sources: tuple[str, ...]


@dataclass(frozen=True, kw_only=True)
class SchoolsListAnswer(RecordsAnswer):
    """The school calendars on record, and how far they reach.

    Attributes:
        calendars: as they are on record.
        until: as far ahead as coverage is told.
        places: how far the calendars reach around each place.
        built_in: codes of built-in regions near home and the places that are not on record.
    """

    calendars: tuple[SchoolCalendar, ...]
    until: date
    places: tuple[PlaceCoverage, ...]
    built_in: tuple[str, ...]


json_keys(ComingHoliday, "day name where days_off=row")
json_keys(PlaceCoverage, "place=place.id said=sentence districts(name,share:4) typical_year=typical_source")
