"""Days in a row as a parent types them, one span a line."""

import re

from tripplan.errors import Finding
from tripplan.files.toml.toml_text import shown

_DAY = r"\d{4}-\d{2}-\d{2}"
_SPAN = re.compile(rf"({_DAY})(?:\s*(?:to|-|\u2013)\s*({_DAY}))?[\s:,]*(.*)")


def days_typed_in(text: str, field: str) -> tuple[dict[int, dict[str, str]], list[Finding]]:
    """Spans of days as they were typed, one a line, and what cannot be read.

    Args:
        text: lines such as '2026-12-21 to 2027-01-01 winter break' or '2027-01-18 staff day'.
        field: what the parent typed them into; faults begin with it.

    Returns:
        First day, last day and name by the number of the line, counted from 1; and the faults.
    """
    days: dict[int, dict[str, str]] = {}
    found = []
    for number, line in enumerate(text.splitlines(), start=1):
        match = _SPAN.fullmatch(line.strip())
        if match:
            days[number] = {"first": match[1], "last": match[2] or match[1], "name": match[3]}
        elif line.strip():
            message = "write a date or two, then the name: 2026-12-21 to 2027-01-01 winter break"
            found.append(Finding("", line_called(field, number), shown(line), message))
    return days, found


def line_called(field: str, number: int) -> str:
    """How a line of a field is called, such as 'Short days, line 2'."""
    return f"{field}, line {number}"
