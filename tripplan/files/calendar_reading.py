"""Reads calendar files (RFC 5545) from anywhere: what can be used within a span of days, and what cannot.

A calendar program's export holds years of entries, and anybody can write a file that takes minutes to read.
So the text is cut into entries first, which is cheap; only those that can matter within the span, and only
the lines that say when they are, go to the iCalendar library.
"""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta, tzinfo
from zoneinfo import ZoneInfo

from tripplan.documents.calendars.calendars import DateSpan
from tripplan.errors import Finding, Weight
from tripplan.files import calendar_text
from tripplan.files.calendar_zones import ZonesOfFile
from tripplan.files.entry_lines import BROKEN, EntryRead, UnreadableEntry, read_entry, title
from tripplan.files.plain_text import one_line
from tripplan.files.reading_result import Read
from tripplan.files.repeating_entries import CannotExpand, Expansion, When, WrittenEntry

MOST_BYTES = 5_000_000
"""A larger file is refused unread."""
MOST_ENTRIES = 2_000
"""Entries read within the span; about 0.2 ms each."""
MOST_CHARACTERS = 800_000
"""Characters of those entries that are read."""
_LONGEST_ENTRY = 50_000
_LONGEST_SUMMARY = 300
_SHOWN = 5
_DAY, _HOUR = timedelta(days=1), timedelta(hours=1)
_MOMENT = timedelta(microseconds=1)
_MIDNIGHTS = (time(), time(23, 59), time(23, 59, 59))
"""How a day's end is written."""
_ZONES_APART = 4 * _HOUR
"""How far the clocks of one country's parts may lie apart [h]; Hawaii and the Midwest do."""
_CLOCK_CHANGES = (timedelta(0), _HOUR, 23 * _HOUR)
"""By how much some whole days miss a multiple of 24 hours, where the clock is changed between."""


@dataclass(frozen=True)
class CalendarEntry:
    """One entry, or one occurrence of a repeating one.

    Attributes:
        key: names the occurrence, the same at every reading of an unchanged file.
        summary: its title, on one line.
        start: in the zone the file was read for; an all-day entry begins at midnight.
        end: likewise, not included.
        all_day: whether it covers whole days, by its own clock.
        busy: whether it takes up time (RFC 5545, 3.8.2.7).
        cancelled: whether it was called off.
        declined: whether the calendar's owner said no to it.
        whole_days: the days it stands for, where it is written from midnight to midnight in another zone.
    """

    key: str
    summary: str
    start: datetime
    end: datetime
    all_day: bool
    busy: bool = True
    cancelled: bool = False
    declined: bool = False
    whole_days: DateSpan | None = None

    @property
    def entry(self) -> str:
        """Names the entry whose occurrence this is; it stays when the occurrence moves or is renamed."""
        return self.key.rpartition(" ")[0]

    @property
    def takes_time(self) -> bool:
        """Whether nothing else can be done meanwhile."""
        return self.busy and not self.cancelled and not self.declined

    @property
    def first_day(self) -> date:
        """The day it begins, by its own clock where it stands for whole days."""
        return self.whole_days.first if self.whole_days else self.start.date()

    @property
    def last_day(self) -> date:
        """The last day it touches, likewise."""
        if self.whole_days:
            return self.whole_days.last
        return max(self.start.date(), (self.end - timedelta(microseconds=1)).date())


@dataclass(frozen=True)
class CalendarContent:
    """What a calendar file holds within a span of days.

    Attributes:
        name: what the file calls itself; may be empty.
        entries: in order of their start.
    """

    name: str
    entries: tuple[CalendarEntry, ...]


def read_calendar(
    data: bytes, file: str, window: DateSpan, zone: ZoneInfo, *, own_addresses: Iterable[str] = ()
) -> Read[CalendarContent]:
    """Read a calendar file within a span of days.

    Args:
        data: the file.
        file: its name, as the parent knows it.
        window: the days that matter.
        zone: of the family's home; times without a zone and whole days are read by its clock.
        own_addresses: the family's e-mail addresses, by which a declined invitation is known. Without them
            the calendar's own name serves if it is one, else an invitation that every guest declined counts.

    Returns:
        The entries that touch the span, and what could not be used and why. There is no value when the file
        is too large or is no calendar at all.
    """

    def refused(message: str, value: str = "") -> Read[CalendarContent]:
        return Read(None, (Finding(file, "", value, message),))

    if len(data) > MOST_BYTES:
        # Who read one byte too many, and no more, does not know the size.
        size = f"{len(data) / 1e6:.1f} MB" if len(data) > MOST_BYTES + 1 else ""
        return refused(f"is larger than {MOST_BYTES / 1e6:.0f} MB; export a shorter span of time", size)
    text = calendar_text.unfolded(data.decode("utf-8-sig", errors="replace"))
    if not calendar_text.is_calendar(text):
        return refused("is no calendar file: there is no BEGIN:VCALENDAR in it")
    scale = calendar_text.header(text, "CALSCALE")
    if scale.upper() not in ("", "GREGORIAN"):
        return refused("only the Gregorian calendar can be read", scale)
    name = calendar_text.header(text, "NAME") or calendar_text.header(text, "X-WR-CALNAME")
    addresses = frozenset(own_addresses) or frozenset({name} if "@" in name else ())
    noticed = _Noticed(file)
    reading = _Reading(window, zone, frozenset(map(str.casefold, addresses)), noticed)
    entries = sorted(reading.entries(text), key=lambda entry: (entry.start, entry.end, entry.key))
    return Read(CalendarContent(name, tuple(entries)), noticed.findings())


class _Noticed:
    """Warnings about one file, gathered by kind, so that a thousand alike are said once."""

    def __init__(self, file: str) -> None:
        self._file = file
        self._first: dict[str, list[Finding]] = {}
        self._count: dict[str, int] = defaultdict(int)

    def add(self, message: str, field: str = "", value: str = "") -> None:
        shown = self._first.setdefault(message, [])
        self._count[message] += 1
        if len(shown) < _SHOWN:
            shown.append(Finding(self._file, field, one_line(value[:200])[:60], message, Weight.WARNING))

    def findings(self) -> tuple[Finding, ...]:
        found = []
        for message, shown in self._first.items():
            found.extend(shown)
            if self._count[message] > _SHOWN:
                more = f"{self._count[message] - _SHOWN} more"
                found.append(Finding(self._file, more, "", message, Weight.WARNING))
        return tuple(found)


class _Reading:
    """One file being read."""

    def __init__(
        self, window: DateSpan, home: ZoneInfo, addresses: frozenset[str], noticed: _Noticed
    ) -> None:
        self._window, self._home, self._addresses, self._noticed = window, home, addresses, noticed

    def entries(self, text: str) -> Iterator[CalendarEntry]:
        """Everything in the window, in no order."""
        if "\ufffd" in text:
            self._noticed.add("has characters that are not UTF-8; they are shown as \ufffd")
        for line in calendar_text.ODD_LINE.finditer(text):
            self._noticed.add("is no line of a calendar and was left out", "a line", line[0][:200])
        blocks, unended = calendar_text.blocks(text, "VEVENT")
        if unended:
            self._noticed.add("some entries never end (no END:VEVENT) and were left out", "", str(unended))
        series: dict[str, list[EntryRead]] = defaultdict(list)
        for entry in self._read(self._wanted(blocks), ZonesOfFile(text)):
            series[entry.written.uid].append(entry)
        expansion = Expansion(self._window.first - _DAY, self._window.last + _DAY)
        found = [entry for entries in series.values() for entry in self._occurrences(entries, expansion)]
        if not found:
            self._noticed.add(_nothing(blocks, self._window))
        yield from found

    def _wanted(self, blocks: Sequence[str]) -> list[list[str]]:
        """The lines of the entries that can matter, up to the limits."""
        relevant = [block for block in blocks if calendar_text.may_matter(block, self._window)]
        wanted: list[list[str]] = []
        characters = 0
        for block in relevant:
            lines = [_shortened(line) for line in calendar_text.own_lines(block)]
            length = sum(map(len, lines))
            if length > _LONGEST_ENTRY:
                self._noticed.add("is far too long and was left out", title(lines))
                continue
            characters += length
            if len(wanted) == MOST_ENTRIES or characters > MOST_CHARACTERS:
                self._noticed.add(
                    f"holds {len(relevant)} entries for these days, more than can be read; "
                    f"only the first {len(wanted)} were used. Export a shorter span of time."
                )
                break
            wanted.append(lines)
        return wanted

    def _read(self, wanted: Sequence[Sequence[str]], zones: ZonesOfFile) -> Iterator[EntryRead]:
        for number, lines in enumerate(wanted):
            try:
                entry = read_entry(
                    number,
                    lines,
                    zone_called=zones.called,
                    home=self._home,
                    addresses=self._addresses,
                    last_day=self._window.last,
                )
            except UnreadableEntry as unreadable:
                self._noticed.add("could not be read and was left out", title(lines), str(unreadable))
                continue
            if entry.unknown_zone:
                message = f"is in a time zone that nobody knows; it was read by the clock of {self._home.key}"
                self._noticed.add(message, title(lines), entry.unknown_zone)
            yield entry

    def _occurrences(self, entries: list[EntryRead], expansion: Expansion) -> list[CalendarEntry]:
        """What one entry and its exceptions come to within the window."""
        zone = next((entry.zone for entry in entries if entry.written.replaces is None), entries[0].zone)
        by_number = {entry.written.number: entry for entry in entries}
        called = f"entry '{entries[0].summary[:40]}'"
        try:
            written = [entry.by_clock_of(zone) for entry in entries]
            repeats = any(entry.repeats for entry in written)
            found = list(expansion.occurrences(written)) if repeats else _newest(written)
            placed = [self._placed(by_number[number], start, end, zone) for number, start, end in found]
        except CannotExpand as refused:
            self._noticed.add(f"{refused}; it was left out", called)
            return []
        except BROKEN:
            self._noticed.add("has times that make no sense and was left out", called)
            return []
        return [entry for entry in placed if entry is not None]

    def _placed(self, entry: EntryRead, start: When, end: When, zone: tzinfo) -> CalendarEntry | None:
        """An occurrence in the home's zone; None when it does not touch the window."""
        clock = zone if isinstance(start, datetime) else self._home
        begins = _moment(start, clock).astimezone(self._home)
        ends = max(begins, _moment(end, clock).astimezone(self._home))
        opens = _moment(self._window.first, self._home)
        closes = _moment(self._window.last + _DAY, self._home)
        if begins >= closes or (ends <= opens and begins < opens):
            return None
        whole_days = _whole_days(start, end, begins, ends, in_utc=zone is UTC)
        times = "-".join(f"{moment.astimezone(UTC):%Y%m%dT%H%MZ}" for moment in (begins, ends))
        return CalendarEntry(
            key=f"{entry.written.uid} {times}",
            summary=entry.summary,
            start=begins,
            end=ends,
            all_day=entry.all_day or whole_days is not None,
            busy=entry.busy,
            cancelled=entry.cancelled,
            declined=entry.declined,
            whole_days=whole_days,
        )


def _whole_days(start: When, end: When, begins: datetime, ends: datetime, *, in_utc: bool) -> DateSpan | None:
    """The days that a timed entry means, where it runs from midnight to midnight by somebody's clock.

    That clock is the one it is written by. Many programs write every time in UTC; then it may also be one
    that lies a few hours from that at home.

    Args:
        start: by the clock it is written by.
        end: likewise.
        begins: the same moment in the home's zone.
        ends: likewise.
        in_utc: whether it is written in UTC.
    """
    if not isinstance(start, datetime) or not isinstance(end, datetime) or start >= end:
        return None
    if start.time() == time() and end.time() in _MIDNIGHTS:
        return DateSpan(first=start.date(), last=(end - _MOMENT).date())
    opens, closes = (_nearest_midnight(moment) for moment in (begins, ends))
    near = in_utc and all(
        abs(moment.replace(tzinfo=None) - midnight) <= _ZONES_APART
        for moment, midnight in ((begins, opens), (ends, closes))
    )
    if near and (end - start) % _DAY in _CLOCK_CHANGES and opens < closes:
        return DateSpan(first=opens.date(), last=closes.date() - _DAY)
    return None


def _nearest_midnight(moment: datetime) -> datetime:
    return datetime.combine((moment + _DAY / 2).date(), time())


def _newest(written: Sequence[WrittenEntry]) -> list[tuple[int, When, When]]:
    """The latest revision of an entry; careless programs give one UID to many entries, which are all kept."""
    newest = max(entry.sequence for entry in written)
    found = {(entry.start, entry.end): entry.number for entry in written if entry.sequence == newest}
    return [(number, start, end) for (start, end), number in found.items()]


def _nothing(blocks: Sequence[str], window: DateSpan) -> str:
    starts = [start for start in map(calendar_text.starts_on, blocks) if start]
    if not starts:
        return "has no entries"
    first, last = (f"{day[:4]}-{day[4:6]}-{day[6:]}" for day in (min(starts), max(starts)))
    return f"has nothing from {window.first} to {window.last}; its entries begin from {first} to {last}"


def _shortened(line: str) -> str:
    return line[:_LONGEST_SUMMARY] if line[:7].upper() == "SUMMARY" else line


def _moment(when: When, zone: tzinfo) -> datetime:
    at = when if isinstance(when, datetime) else datetime.combine(when, time())
    return at.replace(tzinfo=zone)
