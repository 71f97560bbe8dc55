"""The entries of a calendar file within a span of days, as the iCalendar libraries read them.

Anybody can write a file that keeps those libraries busy for hours, so all of this may run in a process of its
own, see `worker`. What they would lose of a damaged file is saved here: each entry is read by itself.
"""

import re
import warnings
from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from time import thread_time
from typing import Any
from zoneinfo import ZoneInfo

import recurring_ical_events
from icalendar import Calendar, Component, Event, Timezone
from icalendar.prop import vInt
from icalendar.timezone import tzp

from tripplan.errors import Finding
from tripplan.files.calendar_reader import text as calendar_text
from tripplan.files.calendar_reader.content import MOST_BYTES, CalendarContent, CalendarEntry, Noticed
from tripplan.files.calendar_reader.event_times import (
    Unreadable,
    When,
    clock_text,
    give_end,
    give_until,
    give_zones,
    listed,
    moment_of,
    time_of,
    whole_days,
)
from tripplan.files.calendar_reader.rule_horizon import rules_end_with
from tripplan.files.toml.reading_result import ReadResult
from tripplan.values.plain_text import one_line

MOST_ENTRIES = 2_000
"""Entries read within the span; about 0.3 ms each."""
MOST_CHARACTERS = 800_000
"""Characters of those entries that are read."""
MOST_OCCURRENCES = 6_000
"""Occurrences found in one file."""
MOST_SECONDS = 1.0
"""After so long no further entry is looked at [s of processor time]."""
EARLIEST_YEAR = 1900

_LONGEST_ENTRY = 50_000
_LONGEST_NAME, _LONGEST_ZONE_NAME = 300, 100
_LONGEST_ZONE = 20_000
_DAY = timedelta(days=1)
_BROKEN = (ValueError, TypeError, LookupError, AttributeError, ArithmeticError)
"""What the libraries raise over broken text; they promise nothing narrower."""
_PERIODS = ("DAILY", "WEEKLY", "MONTHLY", "YEARLY")
_PEOPLE = re.compile(r"^(?:ATTENDEE|ORGANIZER)[;:]", re.IGNORECASE)
_ZONE_NAME = re.compile(r';TZID=(?:"([^"\n]*)"|([^";:\n]*))', re.IGNORECASE)
_ODD_ZONE_RULE = re.compile(r"FREQ=(?!YEARLY)", re.IGNORECASE)


class _CannotExpand(ValueError):
    """A repeating entry that cannot be expanded, and why, in words."""


@dataclass(frozen=True)
class _Written:
    """One entry as the file writes it.

    Attributes:
        event: when it happens, every moment with its zone.
        summary, busy, cancelled, declined: as in `CalendarEntry`.
    """

    event: Event
    summary: str
    busy: bool
    cancelled: bool
    declined: bool

    @property
    def sequence(self) -> int:
        """Of several entries with one name the highest counts."""
        return int(str(self.event["SEQUENCE"]))

    @property
    def repeats(self) -> bool:
        """Whether it is more than a single entry on its own."""
        return any(name in self.event for name in ("RRULE", "RDATE", "RECURRENCE-ID"))


def read_content(
    data: bytes, file: str, first: date, last: date, zone: ZoneInfo, own_addresses: Iterable[str]
) -> ReadResult[CalendarContent]:
    """Read a calendar file in this process, however long it takes; see `reading.read_calendar`."""

    def refused(message: str, value: str = "") -> ReadResult[CalendarContent]:
        return ReadResult(None, (Finding(file, "", value, message),))

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
    noticed = Noticed(file)
    reading = _EntriesOfFile(text, first, last, zone, frozenset(map(str.casefold, addresses)), noticed)
    return ReadResult(CalendarContent(name, tuple(reading.read())), noticed.findings())


class _EntriesOfFile:
    """One file being read.

    Args:
        text: unfolded, see `text.unfolded`.
        first: the first day that matters.
        last: the last one.
        home: the zone at home; times without one and whole days are read by its clock.
        addresses: the owner's e-mail addresses, in small letters.
        noticed: told what could not be used and why.
    """

    def __init__(
        self, text: str, first: date, last: date, home: ZoneInfo, addresses: frozenset[str], noticed: Noticed
    ) -> None:
        self._text, self._first, self._last = text, first, last
        self._home, self._addresses, self._noticed = home, addresses, noticed
        self._occurrences_left = MOST_OCCURRENCES
        self._until = thread_time() + MOST_SECONDS

    def read(self) -> list[CalendarEntry]:
        """Everything in the window, in order of time."""
        if "\ufffd" in self._text:
            self._noticed.add("has characters that are not UTF-8; they are shown as \ufffd")
        for line in calendar_text.ODD_LINE.finditer(self._text):
            self._noticed.add("is no line of a calendar and was left out", "a line", line[0][:200])
        blocks, unended = calendar_text.blocks(self._text, "VEVENT")
        if unended:
            self._noticed.add("some entries never end (no END:VEVENT) and were left out", "", str(unended))
        with warnings.catch_warnings(), rules_end_with(self._last.year + 1):
            warnings.simplefilter("ignore")  # what the libraries think of a stranger's file
            wanted = self._wanted(blocks)
            self._learn_zones(wanted)
            series: dict[str, list[_Written]] = defaultdict(list)
            for lines in wanted:
                entry = self._entry(lines)
                if entry is not None:
                    series[str(entry.event["UID"])].append(entry)
            found = [entry for entries in series.values() for entry in self._in_window(entries)]
        if not found:
            self._noticed.add(_nothing(blocks, self._first, self._last))
        return sorted(found, key=lambda entry: (entry.start, entry.end, entry.key))

    def _wanted(self, blocks: Sequence[str]) -> list[list[str]]:
        """The lines of the entries that can matter, up to the limits."""
        relevant = [block for block in blocks if calendar_text.may_matter(block, self._first, self._last)]
        wanted: list[list[str]] = []
        characters = 0
        for block in relevant:
            lines = [_shortened(line) for line in calendar_text.own_lines(block)]
            length = sum(map(len, lines))
            if length > _LONGEST_ENTRY:
                self._noticed.add("is far too long and was left out", _title(lines))
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

    def _learn_zones(self, wanted: Sequence[Sequence[str]]) -> None:
        """Tell the library what the file calls its zones, where entries need it and nobody else knows."""
        names = {quoted or bare for lines in wanted for quoted, bare in _ZONE_NAME.findall("\n".join(lines))}
        defined, _ = calendar_text.blocks(self._text, "VTIMEZONE") if names else ((), 0)
        tzp.use_default()  # forgets the zones of another file
        for block in defined:
            name = calendar_text.value(block, "TZID")
            # Only rules that any clock follows; one by seconds would be expanded for hours.
            if name not in names or len(block) > _LONGEST_ZONE or _ODD_ZONE_RULE.search(block):
                continue
            names.discard(name)
            with suppress(*_BROKEN):
                Timezone.from_ical(f"BEGIN:VTIMEZONE\n{block}\nEND:VTIMEZONE")
            if thread_time() > self._until:
                break

    def _entry(self, lines: Sequence[str]) -> _Written | None:
        """What an entry's lines say; None where that cannot be understood."""
        try:
            return self._understood(lines)
        except Unreadable as unreadable:
            self._noticed.add("could not be read and was left out", _title(lines), str(unreadable))
        except _BROKEN:
            begins = calendar_text.value("\n".join(lines), "DTSTART")
            self._noticed.add("could not be read and was left out", _title(lines), begins)
        return None

    def _understood(self, lines: Sequence[str]) -> _Written:
        event = _event([line for line in lines if not _PEOPLE.match(line)])
        people = _event([line for line in lines if _PEOPLE.match(line)])
        if event.errors:
            raise Unreadable(", ".join(sorted({str(name) for name, _ in event.errors})))
        if time_of(event, "DTSTART").year < EARLIEST_YEAR:
            raise Unreadable("it begins before any calendar")
        unknown_zone = give_zones(event, self._home)
        give_end(event, self._last)
        give_until(event, self._home, self._last)
        summary = one_line(str(event.get("SUMMARY", "")))
        event["UID"] = str(event.get("UID", "")) or f"{summary} {clock_text(time_of(event, 'DTSTART'))}"
        event["SEQUENCE"] = vInt(event.get("SEQUENCE", 0))
        if unknown_zone:
            message = f"is in a time zone that nobody knows; it was read by the clock of {self._home.key}"
            self._noticed.add(message, _title(lines), unknown_zone)
        return _Written(
            event=event,
            summary=summary,
            busy=_word(event, "TRANSP") != "TRANSPARENT"
            and _word(event, "X-MICROSOFT-CDO-BUSYSTATUS") != "FREE",
            cancelled=_word(event, "STATUS") == "CANCELLED",
            declined=_declined(people, self._addresses),
        )

    def _in_window(self, entries: list[_Written]) -> list[CalendarEntry]:
        """What one entry and its exceptions come to within the window."""
        called = f"entry '{entries[0].summary[:40]}'"
        try:
            repeats = any(entry.repeats for entry in entries)
            found = self._expanded(entries) if repeats else _newest(entries)
            placed = [self._placed(entry, start, end) for entry, start, end in found]
        except _CannotExpand as refused:
            self._noticed.add(f"{refused}; it was left out", called)
            return []
        except _BROKEN:
            self._noticed.add("has times that make no sense and was left out", called)
            return []
        return [entry for entry in placed if entry is not None]

    def _expanded(self, entries: Sequence[_Written]) -> Iterator[tuple[_Written, When, When]]:
        """The occurrences of one entry and its exceptions in the window and a day around it."""
        calendar = Calendar()
        for number, entry in enumerate(entries):
            for rule in listed(entry.event, "RRULE"):
                _check(rule)
            entry.event["X-NUMBER"] = vInt(number)
            calendar.add_component(entry.event)
        opens, closes = (datetime.combine(day, time()) for day in (self._first - _DAY, self._last + 2 * _DAY))
        if thread_time() > self._until:
            raise _CannotExpand("repeats, and all repeating entries together take too long for one file")
        found = recurring_ical_events.of(calendar, components=["VEVENT"]).between(opens, closes)
        self._occurrences_left -= len(found)
        if self._occurrences_left < 0:
            raise _CannotExpand("repeats, and all repeating entries together come too often for one file")
        for one in found:
            yield entries[int(str(one["X-NUMBER"]))], time_of(one, "DTSTART"), time_of(one, "DTEND")

    def _placed(self, entry: _Written, start: When, end: When) -> CalendarEntry | None:
        """An occurrence in the home's zone; None when it does not touch the window."""
        begins = moment_of(start, self._home).astimezone(self._home)
        ends = max(begins, moment_of(end, self._home).astimezone(self._home))
        opens, closes = (moment_of(day, self._home) for day in (self._first, self._last + _DAY))
        if begins >= closes or (ends <= opens and begins < opens):
            return None
        days = whole_days(start, end, begins, ends)
        times = "-".join(f"{moment.astimezone(UTC):%Y%m%dT%H%MZ}" for moment in (begins, ends))
        return CalendarEntry(
            key=f"{entry.event['UID']} {times}",
            summary=entry.summary,
            start=begins,
            end=ends,
            all_day=not isinstance(start, datetime) or days is not None,
            busy=entry.busy,
            cancelled=entry.cancelled,
            declined=entry.declined,
            whole_days=days,
        )


def _event(lines: Sequence[str]) -> Event:
    event = Event.from_ical("\r\n".join(("BEGIN:VEVENT", *lines, "END:VEVENT", "")))
    if not isinstance(event, Event):
        raise Unreadable("no entry")
    return event


def _word(event: Component, name: str) -> str:
    return str(event.get(name, "")).upper()


def _title(lines: Sequence[str]) -> str:
    """What an entry is called, shortened, before it is read."""
    return f"entry '{calendar_text.value(chr(10).join(lines), 'SUMMARY')[:40]}'"


def _shortened(line: str) -> str:
    """A line without what is too long for a title or a zone's name."""
    if len(line) <= _LONGEST_NAME:
        return line
    if line[:7].upper() == "SUMMARY":
        return line[:_LONGEST_NAME]
    return _ZONE_NAME.sub(lambda found: f';TZID="{(found[1] or found[2])[:_LONGEST_ZONE_NAME]}"', line)


def _declined(people: Component, addresses: frozenset[str]) -> bool:
    """Whether the owner declined; when nobody knows who that is, whether every guest did."""
    answers = {_address(one): one.params.get("PARTSTAT") == "DECLINED" for one in listed(people, "ATTENDEE")}
    asked = addresses or (answers.keys() - set(map(_address, listed(people, "ORGANIZER"))))
    given = [declined for address, declined in answers.items() if address in asked]
    return bool(given) and all(given)


def _address(person: object) -> str:
    return str(person).casefold().removeprefix("mailto:")


def _newest(entries: Sequence[_Written]) -> list[tuple[_Written, When, When]]:
    """The latest revision of an entry; careless programs give one UID to many entries, which are all kept."""
    newest = max(entry.sequence for entry in entries)
    times = ((entry, time_of(entry.event, "DTSTART"), time_of(entry.event, "DTEND")) for entry in entries)
    return list(
        {
            (start, end): (entry, start, end) for entry, start, end in times if entry.sequence == newest
        }.values()
    )


def _check(rule: Mapping[str, list[Any]]) -> None:
    """Refuse what makes no sense in a family's calendar, or that the library would never be done with.

    Raises:
        _CannotExpand: the rule is such a one.
    """
    frequency = str(rule.get("FREQ", [""])[0]).upper()
    if frequency not in _PERIODS:
        raise _CannotExpand(
            f"repeats by {frequency or 'no period'}; days, weeks, months and years can be used"
        )
    if any(len(rule.get(part, [])) > 1 for part in ("BYHOUR", "BYMINUTE", "BYSECOND")):
        raise _CannotExpand("repeats several times a day")
    if any(number < 1 for part in ("INTERVAL", "COUNT") for number in rule.get(part, [])):
        raise _CannotExpand("repeats in steps, or a number of times, below 1")


def _nothing(blocks: Sequence[str], first: date, last: date) -> str:
    starts = [start for start in map(calendar_text.starts_on, blocks) if start]
    if not starts:
        return "has no entries"
    earliest, latest = (f"{day[:4]}-{day[4:6]}-{day[6:]}" for day in (min(starts), max(starts)))
    return f"has nothing from {first} to {last}; its entries begin from {earliest} to {latest}"
