"""Reads calendar files from anywhere, within limits of time and memory.

What could take long is read by a process of its own, which ends at a limit and takes nothing with it. That
process takes a moment to start, so a small file without repeating entries is read in this one.
"""

import os
import re
import subprocess
import sys
from collections.abc import Iterable
from pathlib import Path
from zoneinfo import ZoneInfo

from tripplan.documents.calendars.calendars import DateSpan
from tripplan.errors import CalendarReaderBroken, Finding
from tripplan.files.calendar_reader import worker
from tripplan.files.calendar_reader.content import MOST_BYTES, CalendarContent
from tripplan.files.toml.reading_result import ReadResult

DEADLINE_SECONDS = 20.0
"""The longest that the process may take by the clock on the wall, on however busy a computer [s]."""
_SMALL_BYTES = 100_000
_REPEATS = re.compile(rb"^(?:RRULE|RDATE)[;:]", re.MULTILINE | re.IGNORECASE)
_ROOT = Path(__file__).resolve().parents[3]


def read_calendar(
    data: bytes, file: str, window: DateSpan, zone: ZoneInfo, *, own_addresses: Iterable[str] = ()
) -> ReadResult[CalendarContent]:
    """Read a calendar file within a span of days, whatever is in it.

    Args:
        data: the file.
        file: its name, as the parent knows it.
        window: the days that matter.
        zone: of the family's home; times without a zone and whole days are read by its clock.
        own_addresses: the family's e-mail addresses, by which a declined invitation is known. Without them
            the calendar's own name serves if it is one, else an invitation that every guest declined counts.

    Returns:
        The entries that touch the span, and what could not be used and why. There is no value when the file
        is too large, takes too long or too much memory, or is no calendar at all.

    Raises:
        CalendarReaderBroken: the process that reads it cannot run on this computer.
    """
    small = len(data) <= _SMALL_BYTES and not _REPEATS.search(data.replace(b"\r", b"\n"))
    if small or len(data) > MOST_BYTES:
        return read_here(data, file, window, zone, own_addresses=own_addresses)
    asked = worker.Question(file, window.first, window.last, zone.key, tuple(own_addresses))
    path = os.pathsep.join(filter(None, (str(_ROOT), os.environ.get("PYTHONPATH"))))
    try:
        done = subprocess.run(
            [sys.executable, "-m", worker.__name__, worker.question_text(asked)],
            input=data,
            capture_output=True,
            timeout=DEADLINE_SECONDS,
            env={**os.environ, "PYTHONPATH": path},
            check=False,
        )
    except subprocess.TimeoutExpired:
        return _too_much(file)
    if done.returncode < 0 or done.returncode in worker.LIMIT_REACHED:  # below 0 where the system ended it
        return _too_much(file)
    if done.returncode:
        raise CalendarReaderBroken(done.stderr.decode(errors="replace")[-2000:])
    return worker.answer_from(done.stdout, zone)


def read_here(
    data: bytes, file: str, window: DateSpan, zone: ZoneInfo, *, own_addresses: Iterable[str] = ()
) -> ReadResult[CalendarContent]:
    """The same in this process, however long it takes: for files of one's own, and small ones."""
    from tripplan.files.calendar_reader.entries import read_content  # the libraries take time to import

    return read_content(data, file, window.first, window.last, zone, own_addresses)


def _too_much(file: str) -> ReadResult[CalendarContent]:
    message = "takes too long to read, or too much memory; export a shorter span of time"
    return ReadResult(None, (Finding(file, "", "", message),))
