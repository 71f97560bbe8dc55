"""How long an outing takes to become a calendar file, as a ratio measured in one run."""

import statistics
from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

from icalendar import Alarm, Calendar, Event

from tests.benchmarks.timing import again, timed
from tripplan.documents.where import Point
from tripplan.files.calendars.calendar_file import calendar_file
from tripplan.files.calendars.time_zone_rules import vtimezone
from tripplan.planning.calendar_entry.entry import OutingEntry, Reminder

NOW = datetime(2026, 11, 25, 16, tzinfo=UTC)
LEAVE = datetime(2026, 12, 8, 8, 40, tzinfo=ZoneInfo("America/Chicago"))
ENTRY = OutingEntry(
    uid="b3a1f7de-0001",
    summary="Old mill",
    start=LEAVE,
    arrive=LEAVE + timedelta(hours=1),
    leave_place=LEAVE + timedelta(hours=4),
    end=LEAVE + timedelta(hours=5),
    location="Old mill, 12 Mill Road",
    point=Point(40.48421, -88.99371),
    url="https://example.org/mill",
    description="Leave home 8:40 AM.\n" * 20,
    categories=("water power",),
    last_modified=NOW,
    reminders=(Reminder(820, "Pack"), Reminder(60, "Leave in an hour")),
)


def without_zone() -> bytes:
    """The library's own way, with the same properties and the times in UTC."""
    calendar, event = Calendar(), Event()
    for name, value in (("VERSION", "2.0"), ("PRODID", "-//test//EN"), ("CALSCALE", "GREGORIAN")):
        calendar.add(name, value)
    for name, property_ in (
        ("UID", ENTRY.uid),
        ("DTSTAMP", NOW),
        ("DTSTART", ENTRY.start.astimezone(UTC)),
        ("DTEND", ENTRY.end.astimezone(UTC)),
        ("SUMMARY", ENTRY.summary),
        ("SEQUENCE", 0),
        ("STATUS", "CONFIRMED"),
        ("TRANSP", "OPAQUE"),
        ("LAST-MODIFIED", NOW),
        ("LOCATION", ENTRY.location),
        ("GEO", (40.48421, -88.99371)),
        ("URL", ENTRY.url),
        ("DESCRIPTION", ENTRY.description),
        ("CATEGORIES", list(ENTRY.categories)),
    ):
        event.add(name, property_)
    for reminder in ENTRY.reminders:
        alarm = Alarm()
        alarm.add("ACTION", "DISPLAY")
        alarm.add("DESCRIPTION", reminder.text)
        alarm.add("TRIGGER", -timedelta(minutes=reminder.minutes_before))
        event.add_component(alarm)
    calendar.add_component(event)
    written: bytes = calendar.to_ical()
    return written


def test_one_outing_with_its_zone_against_the_library_without_one(tell: Callable[[str], None]) -> None:
    """Timed in turns, the zone's rules worked out each time and remembered; both hold the same event."""
    took: dict[str, list[float]] = {"first": [], "later": [], "plain": []}
    for _ in range(150):
        seconds, ours = timed(lambda: calendar_file([ENTRY], written_at=NOW))
        took["first"].append(seconds)
        assert vtimezone.cache_info().misses == 1
        seconds, later = again(lambda: calendar_file([ENTRY], written_at=NOW))
        took["later"].append(seconds)
        assert (vtimezone.cache_info().misses, later) == (1, ours)
        seconds, plain = again(without_zone)
        took["plain"].append(seconds)
        assert ours.count(b"BEGIN:VTIMEZONE") == 1
        assert b"VTIMEZONE" not in plain
        for name in (b"SUMMARY:Old mill", b"GEO:40.48421", b"BEGIN:VALARM"):
            assert ours.count(name) == plain.count(name) > 0
    first, later_on, alone = (statistics.median(times) for times in took.values())
    tell(
        f"one outing to .ics with zone {first * 1e3:.2f} ms, {later_on * 1e3:.2f} ms with the zone's rules "
        f"remembered; without zone {alone * 1e3:.2f} ms: {first / alone:.1f} and {later_on / alone:.1f} times"
    )
