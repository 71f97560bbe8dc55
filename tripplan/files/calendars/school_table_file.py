"""Reads a school calendar from a table (CSV): one row a break or day off, every fault at once.

Columns: first day, last day (may be empty), name, kind (may be missing). Cells lie between commas, semicolons
or tabs. Dates are written 2026-12-24; where a table writes 03/04/2027, the parent says which number is the
day, because no program can know.
"""

import csv
import io
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from enum import StrEnum
from zoneinfo import ZoneInfo

from tripplan.documents.calendars.calendars import DateSpan
from tripplan.errors import Finding, Weight
from tripplan.files.calendar_reader.content import CalendarContent, CalendarEntry
from tripplan.files.calendars.school_calendar_file import Meaning
from tripplan.files.toml.reading_result import ReadResult
from tripplan.values.plain_text import one_line

MOST_BYTES = 1_000_000
"""A larger table is refused unread."""
MOST_ROWS = 2_000
MOST_FAULTS = 100
"""So many faults are listed one by one [-]."""
_LONGEST_NAME = 300
_LONGEST_SPAN = timedelta(days=150)
"""A longer break is a typing error; the longest summers have about three months."""
_COLUMNS = {"first day": True, "last day": False, "name": True, "kind": False}
_KINDS: dict[str, Meaning] = {
    "": Meaning.OTHER,
    "no school": Meaning.NO_SCHOOL,
    "short day": Meaning.SHORT_DAY,
    "first day of school": Meaning.FIRST_DAY,
    "last day of school": Meaning.LAST_DAY,
    "other": Meaning.OTHER,
}
_NUMBERS = re.compile(r"(\d{1,2})([/.\-])(\d{1,2})\2(\d{4})")


class DateOrder(StrEnum):
    """Which number of 03/04/2027 is the day."""

    DAY_FIRST = "day first"
    MONTH_FIRST = "month first"


@dataclass(frozen=True)
class SchoolTable:
    """A table that was read.

    Attributes:
        content: its rows as whole-day entries.
        told: what the column 'kind' says, by the entry's key; rows without a kind are missing.
    """

    content: CalendarContent
    told: Mapping[str, Meaning]


def dates_to_ask_about(data: bytes) -> tuple[str, ...]:
    """Up to three dates of a table whose day and month could be mistaken for each other, as they stand."""
    found = dict.fromkeys(match[0] for match in _NUMBERS.finditer(_text(data[: MOST_BYTES + 1])[0]))
    return tuple(found)[:3]


def read_school_table(
    data: bytes, file: str, window: DateSpan, zone: ZoneInfo, order: DateOrder | None = None
) -> ReadResult[SchoolTable]:
    """Read a school calendar from a table.

    Args:
        data: the file.
        file: its name, as the parent knows it.
        window: the days that matter; rows outside are left out, and said.
        zone: of the family's home; whole days are by its clock.
        order: which number of 03/04/2027 is the day; without it such dates are faults.

    Returns:
        The rows, or every fault at once.
    """
    if len(data) > MOST_BYTES:
        size = f"{len(data) / 1e6:.1f} MB"
        message = f"is larger than {MOST_BYTES / 1e6:.0f} MB; a school calendar is not"
        return ReadResult(None, (Finding(file, "", size, message),))
    text, findings = _text(data)
    if "\x00" in text:
        return ReadResult(None, (Finding(file, "", "", "is no table: it holds characters that no text has"),))
    reading = _Reading(file, window, zone, order)
    if not text.strip():
        return ReadResult(None, (Finding(file, "", "", "has nothing in it"),))
    entries = list(reading.rows(text))
    warned = [Finding(file, "", "", message, Weight.WARNING) for message in findings]
    if reading.faults:
        return ReadResult(None, tuple(_listed(file, reading.faults)))
    if reading.outside:
        rows = "one row lies" if reading.outside == 1 else f"{reading.outside} rows lie"
        left_out = "was left out" if reading.outside == 1 else "were left out"
        message = f"{rows} outside {window.first} to {window.last} and {left_out}"
        warned.append(Finding(file, "", "", message, Weight.WARNING))
    if not entries:
        message = f"has no rows from {window.first} to {window.last}"
        return ReadResult(None, (*warned, Finding(file, "", "", message)))
    content = CalendarContent("", tuple(sorted(entries, key=lambda entry: (entry.start, entry.key))))
    return ReadResult(SchoolTable(content, reading.told), (*warned, *reading.warnings))


def _text(data: bytes) -> tuple[str, tuple[str, ...]]:
    try:
        return data.decode("utf-8-sig"), ()
    except UnicodeDecodeError:
        return data.decode("cp1252", errors="replace"), (
            "is not UTF-8; read as Western European, so look at names with accents",
        )


def _listed(file: str, faults: list[Finding]) -> Iterator[Finding]:
    yield from faults[:MOST_FAULTS]
    if len(faults) > MOST_FAULTS:
        yield Finding(file, "", "", f"and {len(faults) - MOST_FAULTS} more faults")


class _Reading:
    """One table being read."""

    def __init__(self, file: str, window: DateSpan, zone: ZoneInfo, order: DateOrder | None) -> None:
        self._file, self._window, self._zone, self._order = file, window, zone, order
        self.faults: list[Finding] = []
        self.warnings: list[Finding] = []
        self.told: dict[str, Meaning] = {}
        self.outside = 0

    def rows(self, text: str) -> Iterator[CalendarEntry]:
        """Every row that can be used; faults are gathered on the way."""
        heading = text.lstrip("\r\n").partition("\n")[0]
        between = max(",;\t", key=heading.count)
        # Read strictly, as a quote that is never closed would swallow the rest of the table.
        table = csv.reader(io.StringIO(text, newline=""), delimiter=between, strict=True)
        try:
            cells = [(table.line_num, row) for row in table]
        except csv.Error as trouble:
            self._fault("a row", "", f"cannot be read as a table: {trouble}")
            return
        filled = [(number, row) for number, row in cells if any(cell.strip() for cell in row)]
        columns = self._columns(filled[0][1] if filled else [])
        if columns is None:
            return
        if len(filled) - 1 > MOST_ROWS:
            message = f"has more than {MOST_ROWS} rows; a school calendar has a few dozen"
            self._fault("", str(len(filled) - 1), message)
            return
        for number, row in filled[1:]:
            entry = self._entry(f"row {number}", row, columns)
            if entry is not None:
                yield entry

    def _columns(self, heading: list[str]) -> dict[str, int] | None:
        names = [" ".join(cell.replace("_", " ").split()).casefold() for cell in heading]
        wanted = ", ".join(_COLUMNS)
        for name, needed in _COLUMNS.items():
            if names.count(name) > 1:
                self._fault("first row", name, "names a column twice")
            if needed and name not in names:
                shown = one_line(", ".join(heading))[:60]
                message = f"has no column '{name}'; the first row names the columns: {wanted}"
                self._fault("first row", shown, message)
        for name in names:
            if name and name not in _COLUMNS:
                message = f"is no column of a school calendar and was left out; known: {wanted}"
                self.warnings.append(Finding(self._file, "first row", name[:60], message, Weight.WARNING))
        if self.faults:
            return None
        return {name: names.index(name) for name in _COLUMNS if name in names}

    def _entry(self, row: str, cells: list[str], columns: dict[str, int]) -> CalendarEntry | None:
        def cell(column: str) -> str:
            at = columns.get(column, len(cells))
            return cells[at].strip() if at < len(cells) else ""

        before = len(self.faults)
        name = one_line(cell("name"))[:_LONGEST_NAME]
        first = self._date(row, "first day", cell("first day"))
        last = self._date(row, "last day", cell("last day")) if cell("last day") else first
        kind = " ".join(cell("kind").casefold().split())
        if not name:
            self._fault(f"{row}, name", "", "is empty; say what the days are, such as winter break")
        if kind not in _KINDS:
            self._fault(f"{row}, kind", kind[:60], f"is one of {', '.join(filter(None, _KINDS))}, or empty")
        if first and last and last < first:
            self._fault(f"{row}, last day", str(last), f"lies before the first day, {first}")
        elif first and last and last - first > _LONGEST_SPAN:
            self._fault(
                f"{row}, last day", str(last), f"is more than {_LONGEST_SPAN.days} days after the first"
            )
        if len(self.faults) > before or not first or not last:
            return None
        if last < self._window.first or first > self._window.last:
            self.outside += 1
            return None
        key = f"{name} {first:%Y%m%d}-{last:%Y%m%d}"
        if kind:
            self.told[key] = _KINDS[kind]
        start = datetime.combine(first, time(), self._zone)
        end = datetime.combine(last + timedelta(days=1), time(), self._zone)
        return CalendarEntry(key=key, summary=name, start=start, end=end, all_day=True)

    def _date(self, row: str, column: str, text: str) -> date | None:
        where = f"{row}, {column}"
        if not text:
            self._fault(where, "", "is empty; a date reads like 2026-12-24")
            return None
        numbers = _NUMBERS.fullmatch(text)
        try:
            if not numbers:
                return date.fromisoformat(text) if re.fullmatch(r"\d{4}-\d{2}-\d{2}", text) else _fail()
            if self._order is not None:
                day, month = int(numbers[1]), int(numbers[3])
                if self._order is DateOrder.MONTH_FIRST:
                    day, month = month, day
                return date(int(numbers[4]), month, day)
        except ValueError:
            reading = f", read {self._order}" if numbers else ""
            self._fault(where, text[:60], f"is no date{reading}; a date reads like 2026-12-24")
            return None
        self._fault(where, text, "say whether the day or the month comes first, or write it like 2026-12-24")
        return None

    def _fault(self, field: str, value: str, message: str) -> None:
        self.faults.append(Finding(self._file, field, value, message))


def _fail() -> date:
    raise ValueError("not written as a date")
