"""A calendar file in words, read back from the file itself."""

from datetime import datetime

from icalendar import Calendar, Component

from tripplan.files.calendars.calendar_file import calendar_file
from tripplan.language import wording
from tripplan.planning.calendar_entry.entry import OutingEntry
from tripplan.values.plain_text import lines


def file_of(entry: OutingEntry, written_at: datetime) -> bytes:
    """The calendar file with one entry."""
    return calendar_file([entry], written_at=written_at)


def file_in_words(data: bytes) -> str:
    """What a calendar file tells, read back from the file itself; a blank line between its entries."""
    calendar = Calendar.from_ical(data)
    return "\n\n".join(
        _in_words(component) for component in calendar.walk() if component.name in ("VEVENT", "VTODO")
    )


def text_in_words(text: str) -> str:
    """What an entry tells that any program may have written; the text itself where it is an odd one."""
    try:
        return file_in_words(text.encode())
    except (ValueError, TypeError, LookupError, AttributeError):
        return lines(text)


def _in_words(component: Component) -> str:
    start = component.decoded("DTSTART")
    if component.name == "VTODO":
        when = f"To do by {wording.day(component.decoded('DUE'))}, {wording.clock(component.decoded('DUE'))}"
    else:
        when = f"{wording.day(start)}, {wording.clock(start)} to {wording.clock(component.decoded('DTEND'))}"
    told = [
        str(component["SUMMARY"]),
        when,
        f"Where: {component['LOCATION']}" if "LOCATION" in component else "",
        f"Status: {str(component['STATUS']).lower()}" if "STATUS" in component else "",
        _attached(component),
        *(f"Reminder {_ahead(alarm)}: {alarm['DESCRIPTION']}" for alarm in component.walk("VALARM")),
    ]
    said = "\n".join(filter(None, told))
    return f"{said}\n\n{component['DESCRIPTION']}" if "DESCRIPTION" in component else said


def _attached(component: Component) -> str:
    """That files hang on an entry, as our own never have any (RFC 5545, 3.8.1.1)."""
    files = component.get("ATTACH", [])
    count = len(files) if isinstance(files, list) else 1
    if not count:
        return ""
    return "One file is attached" if count == 1 else f"{count} files are attached"


def _ahead(alarm: Component) -> str:
    minutes = -alarm.decoded("TRIGGER").total_seconds() / 60
    return f"{wording.minutes(minutes)} before" if minutes else "at the start"
