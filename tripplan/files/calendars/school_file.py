"""A school calendar's file of either kind, calendar (.ics) or table (.csv), ready to be looked through."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from pathlib import PurePath
from zoneinfo import ZoneInfo

from tripplan.documents.calendars.calendars import DateSpan, SchoolCalendar
from tripplan.errors import Finding, Weight
from tripplan.files.calendar_reader.content import CalendarContent
from tripplan.files.calendar_reader.reading import read_calendar
from tripplan.files.calendars.school_calendar_file import (
    SchoolProposal,
    calendar_before,
    propose_school_calendar,
)
from tripplan.files.calendars.school_table_file import DateOrder, read_school_table
from tripplan.files.toml.reading_result import ReadResult

CalendarReader = Callable[[bytes, str, DateSpan, ZoneInfo], ReadResult[CalendarContent]]
TABLE_ENDING = ".csv"


@dataclass(frozen=True)
class SchoolFile:
    """A file that was read.

    Attributes:
        proposal: its entries, with guesses and earlier ticks.
        before: the calendar on record that an earlier version of it became, if there is one.
    """

    proposal: SchoolProposal
    before: SchoolCalendar | None


def is_table(file: str) -> bool:
    """Whether a file's name says that it is a table."""
    return PurePath(file).suffix.casefold() == TABLE_ENDING


def read_school_file(
    data: bytes,
    file: str,
    window: DateSpan,
    zone: ZoneInfo,
    *,
    calendars: Iterable[SchoolCalendar] = (),
    order: DateOrder | None = None,
    read: CalendarReader = read_calendar,
) -> ReadResult[SchoolFile]:
    """Read a file and propose what its entries mean.

    Args:
        data: the file.
        file: its name, as the parent knows it; one that ends in .csv is a table.
        window: the days that matter.
        zone: of the family's home.
        calendars: those on record; ticks of an earlier import stay.
        order: which number of a table's 03/04/2027 is the day.
        read: reads a calendar; one that keeps to no limits serves files of one's own.

    Returns:
        The proposal with what is odd about it, or every fault.
    """
    told = None
    findings: tuple[Finding, ...]
    if is_table(file):
        table = read_school_table(data, file, window, zone, order)
        if table.value is None:
            return ReadResult(None, table.findings)
        content, told, findings = table.value.content, table.value.told, table.findings
    else:
        calendar = read(data, file, window, zone)
        if calendar.value is None:
            return ReadResult(None, calendar.findings)
        content, findings = calendar.value, calendar.findings
    before = calendar_before(content, file, calendars)
    proposal = propose_school_calendar(content, file, told=told, before=before)
    if proposal.value is None:
        # What the file lacks is said once, by the reader where it said why.
        faults = [] if findings else list(proposal.findings)
        said = tuple(Finding(f.file, f.field, f.value, f.message, Weight.FAULT) for f in findings)
        return ReadResult(None, (*said, *faults))
    return ReadResult(SchoolFile(proposal.value, before), (*findings, *proposal.findings))
