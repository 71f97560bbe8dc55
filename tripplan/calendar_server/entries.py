"""What an entry on the server tells, and whether it tells the same as one of ours."""

import re
from datetime import UTC, datetime

from icalendar import Calendar, Component

from tripplan.documents.calendars.server_calendar import LONGEST_ENTRY
from tripplan.errors import CalendarServerTrouble

_SAYS_NOTHING = frozenset({"DTSTAMP", "CREATED", "LAST-MODIFIED", "SEQUENCE"})
"""What a server may touch without anybody having changed the entry (RFC 5545, 3.8.7)."""
_SHOWN = frozenset({"UID", "SUMMARY", "DTSTART", "DTEND", "DUE", "STATUS"})
"""What an entry that a server took must still say, whatever it has added to it."""
_ATTACHED = re.compile(r"^ATTACH;[^\r\n]*BASE64[^\r\n]*(?:\r?\n[ \t][^\r\n]*)*", re.IGNORECASE | re.MULTILINE)
"""A file within an entry (RFC 5545, 3.8.1.1), with its continued lines (3.1)."""
NO_CALENDAR_SERVER = "there is an answer, but not of a calendar server; the address may be incomplete"
_NO_CALENDAR = (ValueError, TypeError, LookupError, AttributeError)
"""What reading a text that is no calendar ends in."""


def named(body: bytes) -> tuple[str, bool]:
    """The UID of an entry of ours, and whether it is a task."""
    (entry,) = _entries(body.decode())
    return str(entry["UID"]), entry.name == "VTODO"


def readable(text: str) -> str:
    """An entry as the server shows it, so that it can be kept and shown; attached files give way to a mark.

    Args:
        text: what came, however long.

    Raises:
        CalendarServerTrouble: it is no entry, or too long even without files.
    """
    if not text.lstrip("\ufeff \r\n").upper().startswith("BEGIN:VCALENDAR"):
        raise CalendarServerTrouble(NO_CALENDAR_SERVER)
    # Before it is parsed, which takes a second for each megabyte.
    shorter = _ATTACHED.sub("ATTACH:data:,", text)  # RFC 2397: a file without content
    if len(shorter) > LONGEST_ENTRY:
        raise CalendarServerTrouble(
            "somebody has made this entry too large to be shown here; look at it in your calendar program"
        )
    try:
        known = bool(_entries(shorter))
    except _NO_CALENDAR:
        known = False
    if not known:
        raise CalendarServerTrouble(NO_CALENDAR_SERVER)
    return shorter


def same(one: str, other: str) -> bool:
    """Whether two calendar files tell the same, however they are written."""
    try:
        return _told(one) == _told(other)
    except _NO_CALENDAR:
        return False


def shows(there: str, ours: str) -> bool:
    """Whether what lies there is our entry: its name, times, title and status, whatever else was added."""
    try:
        return [_shown(one) for one in _entries(there)] == [_shown(one) for one in _entries(ours)]
    except _NO_CALENDAR:
        return False


def _entries(text: str) -> list[Component]:
    return [one for one in Calendar.from_ical(text).walk() if one.name in ("VEVENT", "VTODO")]


def _told(text: str) -> list[list[tuple[str, str]]]:
    return [_lines(one) for one in _entries(text)]


def _shown(entry: Component) -> list[tuple[str, str]]:
    return [(name, value) for name, value in _lines(entry, with_parts=False) if name in _SHOWN]


def _lines(component: Component, *, with_parts: bool = True) -> list[tuple[str, str]]:
    told = []
    for name, value in component.property_items(recursive=with_parts):
        if name in ("BEGIN", "END") or name in _SAYS_NOTHING:
            continue
        moment = getattr(value, "dt", None)
        if isinstance(moment, datetime) and moment.tzinfo is not None:
            told.append((name, moment.astimezone(UTC).isoformat()))
        else:
            written = value.to_ical() if hasattr(value, "to_ical") else str(value)
            told.append((name, written.decode() if isinstance(written, bytes) else str(written)))
    return sorted(told)
