"""What the names of time zones in a calendar file mean."""

import re
from datetime import tzinfo
from io import StringIO

from dateutil.tz import tzical
from icalendar.timezone.windows_to_olson import WINDOWS_TO_OLSON

from tripplan.documents.where import zone_named
from tripplan.files.calendar_text import blocks, value

_PLAIN_RULE = re.compile(r"FREQ=YEARLY(?:;(?:BYMONTH|BYDAY|BYMONTHDAY|UNTIL|INTERVAL|WKST)=[0-9A-Z,+-]+)*")
_RULE = re.compile(r"^(?:RRULE|EXRULE)[^:\n]*:([^\n]*)$", re.MULTILINE | re.IGNORECASE)
_MOST_RULES = 20
_LONGEST = 20_000


class ZonesOfFile:
    """Looks up the names (TZID) of one file: IANA names, Windows names, and those the file defines itself."""

    def __init__(self, text: str) -> None:
        self._defined, _ = blocks(text, "VTIMEZONE")
        self._known: dict[str, tzinfo | None] = {}

    def called(self, name: str) -> tzinfo | None:
        """The zone a name stands for; None when nobody knows."""
        if name not in self._known:
            self._known[name] = _iana(name) or self._from_file(name)
        return self._known[name]

    def _from_file(self, name: str) -> tzinfo | None:
        for block in self._defined:
            # Only rules that any clock follows; one by seconds would be expanded for hours.
            rules = [rule.strip().upper() for rule in _RULE.findall(block)]
            plain = len(rules) <= _MOST_RULES and all(map(_PLAIN_RULE.fullmatch, rules))
            if value(block, "TZID") == name and plain and len(block) <= _LONGEST:
                return _zone(block)
        return None


def _iana(name: str) -> tzinfo | None:
    """An IANA zone by its own name, by Windows' name for it, or at the end of '/vendor/Area/City'."""
    parts = name.strip("/").split("/")
    tails = ["/".join(parts[start:]) for start in range(min(len(parts), 6))]
    found = (zone_named(candidate) for candidate in (WINDOWS_TO_OLSON.get(name, ""), *tails))
    return next(filter(None, found), None)


def _zone(block: str) -> tzinfo | None:
    lines = [line for line in block.split("\n") if line and not line.upper().startswith("X-")]
    try:
        zone: tzinfo | None = tzical(StringIO("\n".join(("BEGIN:VTIMEZONE", *lines, "END:VTIMEZONE")))).get()
    except (ValueError, TypeError, LookupError, AttributeError, ArithmeticError):
        return None  # the library promises no narrower error over broken text
    return zone
