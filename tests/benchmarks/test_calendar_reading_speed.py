"""What reading a calendar in a process of its own costs, as a ratio within one run."""

import statistics
import subprocess
import sys
import time
from collections.abc import Callable
from datetime import date
from zoneinfo import ZoneInfo

from tripplan.documents.calendars.calendars import DateSpan
from tripplan.files.calendar_reader.reading import read_calendar, read_here

CHICAGO = ZoneInfo("America/Chicago")
YEAR = DateSpan(first=date(2026, 9, 1), last=date(2027, 8, 31))
WEEKLY = (
    b"BEGIN:VCALENDAR\r\nVERSION:2.0\r\nBEGIN:VEVENT\r\nUID:1\r\nSUMMARY:Choir\r\n"
    b"DTSTART;TZID=America/Chicago:20260908T160000\r\nRRULE:FREQ=WEEKLY\r\nEND:VEVENT\r\nEND:VCALENDAR\r\n"
)


def seconds(work: Callable[[], object]) -> float:
    """The usual time of a few runs [s]."""

    def once() -> float:
        start = time.perf_counter()
        work()
        return time.perf_counter() - start

    return statistics.median(once() for _ in range(5))


def test_a_small_calendar_costs_little_more_than_importing_the_libraries(
    tell: Callable[[str], None],
) -> None:
    """A process that reads a weekly entry takes less than twice as long as one that imports the libraries."""
    here = read_here(WEEKLY, "a.ics", YEAR, CHICAGO)
    assert here.value is not None
    assert len(here.value.entries) == 52  # Tuesdays from September 8, 2026; no source, counted
    assert read_calendar(WEEKLY, "a.ics", YEAR, CHICAGO) == here
    libraries = [sys.executable, "-c", "import icalendar, recurring_ical_events"]
    bare = seconds(lambda: subprocess.run(libraries, check=True))
    ours = seconds(lambda: read_calendar(WEEKLY, "a.ics", YEAR, CHICAGO))
    tell(f"one weekly entry: {ours:.2f} s, {ours / bare:.2f} times a bare import of the libraries")
    assert ours < 2 * bare
