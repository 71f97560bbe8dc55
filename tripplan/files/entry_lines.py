"""One entry of a calendar file (RFC 5545, section 3.6.1), made of the lines that say what it is and when."""

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from datetime import UTC, date, datetime, time, timedelta, tzinfo
from zoneinfo import ZoneInfo

from icalendar import Component, Event
from icalendar.prop import vDDDLists, vDDDTypes, vRecur

from tripplan.files.calendar_text import value
from tripplan.files.plain_text import one_line
from tripplan.files.repeating_entries import EARLIEST_YEAR, When, WrittenEntry

BROKEN = (ValueError, TypeError, LookupError, AttributeError, ArithmeticError)
"""What the calendar libraries raise over broken text; they promise nothing narrower."""

_TIME_LINE = re.compile(r"^(?:DTSTART|DTEND|RDATE|EXDATE|RECURRENCE-ID);", re.IGNORECASE)
_ZONE_NAME = re.compile(r';TZID=(?:"([^"\n]*)"|([^";:\n]*))', re.IGNORECASE)
_PEOPLE = re.compile(r"^(?:ATTENDEE|ORGANIZER)[;:]", re.IGNORECASE)
_ADDRESS = re.compile(r":(?:mailto:)?([^\s;:\"]+)\s*$", re.IGNORECASE)
_LIMIT = timedelta(days=2 * 366)


class UnreadableEntry(ValueError):
    """An entry that cannot be understood; says which of its lines, or what stands in the way."""


@dataclass(frozen=True)
class EntryRead:
    """One entry as the file writes it.

    Attributes:
        written: when it happens, by the wall clock of `zone`.
        zone: the zone its start is written in.
        summary: its title, on one line.
        busy: whether it takes up time.
        cancelled: whether it was called off.
        declined: whether the calendar's owner said no to it.
        unknown_zone: the name of a time zone that nobody knows; its times were read by the clock at home.
    """

    written: WrittenEntry
    zone: tzinfo
    summary: str
    busy: bool
    cancelled: bool
    declined: bool
    unknown_zone: str = ""

    @property
    def all_day(self) -> bool:
        """Whether it covers whole days."""
        return not isinstance(self.written.start, datetime)

    def by_clock_of(self, zone: tzinfo) -> WrittenEntry:
        """When it happens, by the wall clock of another zone."""
        written = self.written
        return replace(
            written,
            start=by_clock(written.start, self.zone, zone),
            end=by_clock(written.end, self.zone, zone),
            replaces=None if written.replaces is None else by_clock(written.replaces, self.zone, zone),
        )


def title(lines: Sequence[str]) -> str:
    """What an entry is called, shortened, before it is read."""
    return f"entry '{value(chr(10).join(lines), 'SUMMARY')[:40]}'"


def by_clock(when: When, written_in: tzinfo, zone: tzinfo) -> When:
    """A moment by the wall clock of a zone; days stay days.

    Args:
        when: without a zone unless it is written in UTC.
        written_in: the zone of a moment without one.
        zone: whose clock to read.
    """
    if not isinstance(when, datetime):
        return when
    if when.tzinfo is None:
        if written_in is zone:
            return when
        when = when.replace(tzinfo=written_in)
    return when.astimezone(zone).replace(tzinfo=None)


def read_entry(
    number: int,
    lines: Sequence[str],
    *,
    zone_called: Callable[[str], tzinfo | None],
    home: ZoneInfo,
    addresses: frozenset[str],
    last_day: date,
) -> EntryRead:
    """Read one entry.

    Args:
        number: which entry of the file it is.
        lines: its own lines, unfolded.
        zone_called: what the name of a time zone stands for.
        home: the zone that times without one are read by.
        addresses: of the calendar's owner, in small letters.
        last_day: after which nothing matters; an entry's end is cut some time later.

    Raises:
        UnreadableEntry: a line is broken, its start is missing, or it lies before any calendar.
    """
    people = [line for line in lines if _PEOPLE.match(line)]
    rest = [_prepared(line) for line in lines if not _PEOPLE.match(line)]
    try:
        event = Event.from_ical("\r\n".join(("BEGIN:VEVENT", *rest, "END:VEVENT", "")))
        return _Lines(event, zone_called, home).entry(number, _declined(people, addresses), last_day)
    except UnreadableEntry:
        raise
    except BROKEN as broken:
        raise UnreadableEntry(value("\n".join(lines), "DTSTART")) from broken


class _Lines:
    """The properties of one entry, brought to the clock of the zone its start is written in."""

    def __init__(self, event: Component, zone_called: Callable[[str], tzinfo | None], home: ZoneInfo) -> None:
        self._event, self._zone_called, self._home = event, zone_called, home
        self._unknown_zone = ""
        if event.errors:
            raise UnreadableEntry(", ".join(sorted({str(name) for name, _ in event.errors})))
        start = self._one("DTSTART")
        if start is None:
            raise UnreadableEntry("no DTSTART")
        floats = not isinstance(start.dt, datetime) or start.dt.tzinfo is None
        self._zone = self._own_zone(start) or (home if floats else UTC)

    def entry(self, number: int, declined: bool, last_day: date) -> EntryRead:
        start = self._when("DTSTART")
        if start is None or start.year < EARLIEST_YEAR:
            raise UnreadableEntry("it begins before any calendar")
        summary = one_line(str(self._event.get("SUMMARY", "")))
        replaced = self._one("RECURRENCE-ID")
        written = WrittenEntry(
            number=number,
            uid=str(self._event.get("UID", "")) or f"{summary} {start.isoformat()}",
            sequence=int(str(self._event.get("SEQUENCE", 0))),
            start=start,
            end=self._end(start, last_day),
            rules=tuple(self._rule(rule, start) for rule in self._all("RRULE") if isinstance(rule, vRecur)),
            added=self._listed("RDATE"),
            left_out=self._listed("EXDATE"),
            replaces=self._when("RECURRENCE-ID"),
            and_later=replaced is not None
            and str(replaced.params.get("RANGE", "")).upper() == "THISANDFUTURE",
        )
        return EntryRead(
            written=written,
            zone=self._zone,
            summary=summary,
            busy=self._word("TRANSP") != "TRANSPARENT" and self._word("X-MICROSOFT-CDO-BUSYSTATUS") != "FREE",
            cancelled=self._word("STATUS") == "CANCELLED",
            declined=declined,
            unknown_zone=self._unknown_zone,
        )

    def _all(self, name: str) -> list[object]:
        found = self._event.get(name, [])
        return found if isinstance(found, list) else [found]

    def _word(self, name: str) -> str:
        return str(self._event.get(name, "")).upper()

    def _one(self, name: str) -> vDDDTypes | None:
        found = self._all(name)
        if not found:
            return None
        if len(found) > 1 or not isinstance(found[0], vDDDTypes):
            raise UnreadableEntry(name)
        return found[0]

    def _own_zone(self, prop: vDDDTypes | vDDDLists) -> tzinfo | None:
        name = str(prop.params.get("X-ZONE", ""))
        if not name:
            return None
        zone = self._zone_called(name)
        if zone is None:
            self._unknown_zone = name
        return zone or self._home

    def _wall(self, moment: object, prop: vDDDTypes | vDDDLists) -> When:
        if not isinstance(moment, date):
            raise UnreadableEntry(f"no day or moment: {moment}")
        return by_clock(moment, self._own_zone(prop) or self._zone, self._zone)

    def _when(self, name: str) -> When | None:
        found = self._one(name)
        return None if found is None else self._wall(found.dt, found)

    def _listed(self, name: str) -> tuple[When, ...]:
        """The moments of RDATE and EXDATE lines; of a period only where it begins."""
        moments = [
            (one.dt, prop) for prop in self._all(name) if isinstance(prop, vDDDLists) for one in prop.dts
        ]
        return tuple(self._wall(at[0] if isinstance(at, tuple) else at, prop) for at, prop in moments)

    def _end(self, start: When, last_day: date) -> When:
        """The end, of the kind of the start, never before it and not for ever.

        Source: RFC 5545, section 3.6.1 (without an end, a day lasts that day and a moment no time at all).
        """
        end, length = self._when("DTEND"), self._one("DURATION")
        if end is None and length is not None and isinstance(length.dt, timedelta):
            end = start + length.dt
        if not isinstance(start, datetime):
            day = end.date() if isinstance(end, datetime) else end
            return min(max(start + timedelta(days=1), day or start), max(start, last_day) + _LIMIT)
        moment = end if isinstance(end, datetime) else datetime.combine(end or start, time())
        return min(max(start, moment), datetime.combine(max(start.date(), last_day) + _LIMIT, time()))

    def _rule(self, rule: vRecur, start: When) -> vRecur:
        """A rule whose UNTIL is of the same kind and by the same clock as the start."""
        if "UNTIL" not in rule:
            return rule
        until = by_clock(rule["UNTIL"][0], self._zone, self._zone)
        if not isinstance(start, datetime):
            until = until.date() if isinstance(until, datetime) else until
        elif not isinstance(until, datetime):
            until = datetime.combine(until, time(23, 59, 59))
        return vRecur({**rule, "UNTIL": [until]})


def _prepared(line: str) -> str:
    """A line whose time zone name the library leaves to us; it would guess, warn or remember it."""
    return _ZONE_NAME.sub(r';X-ZONE="\1\2"', line, count=1) if _TIME_LINE.match(line) else line


def _declined(people: Sequence[str], addresses: frozenset[str]) -> bool:
    """Whether the owner declined; when nobody knows who that is, whether every guest did."""
    organizers = {_address(line) for line in people if line[:9].upper() == "ORGANIZER"}
    answers = {
        _address(line): "PARTSTAT=DECLINED" in line.upper()
        for line in people
        if line[:8].upper() == "ATTENDEE"
    }
    asked = addresses or (answers.keys() - organizers)
    given = [declined for address, declined in answers.items() if address in asked]
    return bool(given) and all(given)


def _address(line: str) -> str:
    found = _ADDRESS.search(line)
    return found[1].casefold() if found else line
