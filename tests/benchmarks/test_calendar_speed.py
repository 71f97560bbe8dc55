"""How long an outing takes to become a calendar file, as a ratio measured in one run; printed with `-s`."""

import statistics
import time
from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

from icalendar import Alarm, Calendar, Event

from tripplan.documents.where import Point
from tripplan.files.calendar_file import OutingEntry, Reminder, calendar_file

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


def seconds(work: Callable[[], object]) -> float:
    """How long one run takes [s]."""
    began = time.perf_counter()
    work()
    return time.perf_counter() - began


def test_one_outing_with_its_zone_against_the_library_without_one() -> None:
    """Both are timed in turns; the aim is at most twice, and the files hold the same event."""
    ours = calendar_file([ENTRY], written_at=NOW)
    pairs = [
        (seconds(lambda: calendar_file([ENTRY], written_at=NOW)), seconds(without_zone)) for _ in range(150)
    ]
    mine, plain = (statistics.median(times) for times in zip(*pairs, strict=True))
    print(  # noqa: T201
        f"\none outing to .ics with zone {mine * 1e3:.2f} ms, without {plain * 1e3:.2f} ms: "
        f"{mine / plain:.2f} times (aim: at most 2)"
    )
    assert ours.count(b"BEGIN:VTIMEZONE") == 1
    assert b"VTIMEZONE" not in without_zone()
    for name in (b"SUMMARY:Old mill", b"GEO:40.48421;-88.99371", b"BEGIN:VALARM"):
        assert ours.count(name) == without_zone().count(name)
