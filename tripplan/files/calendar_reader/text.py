"""The text of a calendar file (RFC 5545), cut into entries without reading them; cheap at any length."""

import re
from datetime import date

from tripplan.values.plain_text import one_line

_FOLD = re.compile(r"\n[ \t]")
_FLAGS = re.MULTILINE | re.IGNORECASE
_FIRST_BLOCK = re.compile(r"^BEGIN:(?!VCALENDAR)", _FLAGS)
_NESTED = re.compile(r"^BEGIN:", _FLAGS)
_OWN_LINE = re.compile(
    r"^(?:UID|SUMMARY|DTSTART|DTEND|DURATION|RRULE|RDATE|EXDATE|RECURRENCE-ID|SEQUENCE|STATUS|TRANSP"
    r"|X-MICROSOFT-CDO-BUSYSTATUS|ATTENDEE|ORGANIZER)[;:][^\n]*$",
    _FLAGS,
)
_START = re.compile(r"^DTSTART(?:;[^\n]*)?:(\d{8})", _FLAGS)
_END = re.compile(r"^DTEND(?:;[^\n]*)?:(\d{8})", _FLAGS)
_REPLACES = re.compile(r"^RECURRENCE-ID(?:;[^\n]*)?:(\d{8})", _FLAGS)
_REPEATS = re.compile(r"^(?:RRULE|RDATE)[;:]|^RECURRENCE-ID;[^\n]*THISANDFUTURE", _FLAGS)
_LASTS = re.compile(r"^DURATION[;:]", _FLAGS)
_LONGEST_HEADER = 500

ODD_LINE = re.compile(r"^(?![A-Za-z0-9-]+[:;])[^\n]*\S[^\n]*$", re.MULTILINE)
"""A line that is no property of anything."""


def unfolded(text: str) -> str:
    """The text with one property a line, whatever the line ends were (RFC 5545, section 3.1)."""
    return _FOLD.sub("", text.replace("\r\n", "\n").replace("\r", "\n"))


def is_calendar(text: str) -> bool:
    """Whether a calendar begins anywhere in the text."""
    return re.search(r"^BEGIN:VCALENDAR[ \t]*$", text, _FLAGS) is not None


def header(text: str, name: str) -> str:
    """A property of the calendar as a whole, on one line; empty when it is not there."""
    first = _FIRST_BLOCK.search(text)
    return value(text[: first.start()] if first else text, name)


def value(block: str, name: str) -> str:
    """What stands after a property's name and parameters, on one line; empty when it is not there."""
    line = re.search(rf'^{name}(?:;(?:"[^"\n]*"|[^\n:"])*)?:([^\n]*)$', block, _FLAGS)
    return one_line(line[1][:_LONGEST_HEADER]) if line else ""


def blocks(text: str, name: str) -> tuple[list[str], int]:
    """The components of one kind.

    Args:
        text: unfolded.
        name: such as VEVENT.

    Returns:
        What stands between BEGIN and END of each, and how many never end.
    """
    _, *begun = re.split(rf"^BEGIN:{name}[ \t]*$", text, flags=_FLAGS)
    end = re.compile(rf"^END:{name}[ \t]*$", _FLAGS)
    ends = [end.search(block) for block in begun]
    whole = [block[: found.start()] for block, found in zip(begun, ends, strict=True) if found]
    return whole, len(begun) - len(whole)


def own_lines(block: str) -> list[str]:
    """The lines that say what an entry is and when; those of alarms inside it are not its own."""
    outer, *nested = _NESTED.split(block)
    after = (piece[max(0, piece.upper().rfind("\nEND:")) + 1 :] for piece in nested)
    return _OWN_LINE.findall("\n".join((outer, *after)))


def starts_on(block: str) -> str:
    """The day an entry begins, as eight digits; empty when none is written."""
    found = _START.search(block)
    return found[1] if found else ""


def may_matter(block: str, first_day: date, last_day: date) -> bool:
    """Whether an entry might touch a span of days; only a clear no is a no."""
    # A day's leeway on either side for the zone, and a year for what says how long it lasts.
    first, last = first_day.toordinal() - 2, last_day.toordinal() + 2
    start = _ordinal(starts_on(block))
    if start is None:
        return True
    replaced = _REPLACES.search(block)
    if _REPEATS.search(block):
        return start <= last or replaced is not None
    if replaced is not None:
        other = _ordinal(replaced[1])
        return other is None or (min(start, other) <= last + 62 and max(start, other) >= first - 62)
    if start > last:
        return False
    end = _END.search(block)
    ends = _ordinal(end[1]) if end else start + (366 if _LASTS.search(block) else 0)
    return ends is None or max(start, ends) >= first


def _ordinal(day: str) -> int | None:
    """Days since the year 1; None for what is no date."""
    try:
        return date(int(day[:4]), int(day[4:6]), int(day[6:])).toordinal()
    except ValueError:
        return None
