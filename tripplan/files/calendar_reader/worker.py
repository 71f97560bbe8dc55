"""A process that reads one calendar file and ends at a limit of time or memory.

It is run as a module with a question as its argument, reads the file as its input and writes JSON.
Nothing of the screens or the planning is imported here, so that it starts quickly.
"""

import json
import os
import sys
from contextlib import suppress
from dataclasses import asdict, dataclass
from datetime import date, datetime
from threading import Thread
from time import process_time, sleep
from zoneinfo import ZoneInfo

from tripplan.errors import Finding, Weight
from tripplan.files.calendar_reader.content import CalendarContent, CalendarEntry
from tripplan.files.toml.reading_result import ReadResult

LONGEST_SECONDS = 2.0
"""Processor time for one file, the start included [s]."""
MOST_MEMORY = 1_000_000_000
"""Room for one file where the system can hold a process to it [bytes of addresses]."""
_OUT_OF_TIME, _OUT_OF_MEMORY = 70, 71
LIMIT_REACHED = (_OUT_OF_TIME, _OUT_OF_MEMORY)
"""What the process ends with where the file asked for too much."""
_LOOKS_EVERY = 0.05


@dataclass(frozen=True)
class Question:
    """Which file is read for what; see `reading.read_calendar`."""

    file: str
    first: date
    last: date
    zone: str
    own_addresses: tuple[str, ...]


def question_text(question: Question) -> str:
    """A question as an argument of the process."""
    return json.dumps(asdict(question), default=str)


def answer_from(data: bytes, zone: ZoneInfo) -> ReadResult[CalendarContent]:
    """What the process has printed.

    Args:
        data: what it printed.
        zone: of the question; entries are told in it.
    """
    answer = json.loads(data)
    findings = tuple(Finding(**{**one, "weight": Weight(one["weight"])}) for one in answer["findings"])
    if answer["value"] is None:
        return ReadResult(None, findings)
    entries = (_entry(one, zone) for one in answer["value"]["entries"])
    return ReadResult(CalendarContent(answer["value"]["name"], tuple(entries)), findings)


def _entry(told: dict[str, object], zone: ZoneInfo) -> CalendarEntry:
    start, end = (datetime.fromisoformat(str(told[name])).astimezone(zone) for name in ("start", "end"))
    days = told["whole_days"]
    whole_days = tuple(map(date.fromisoformat, days)) if isinstance(days, list) else None
    return CalendarEntry(**{**told, "start": start, "end": end, "whole_days": whole_days})  # type: ignore[arg-type]


def main(argument: str) -> None:
    """Answer one question about the file that comes in."""
    hold_to_limits()
    from tripplan.files.calendar_reader.entries import read_content  # counts towards the limits

    asked = json.loads(argument)
    first, last = date.fromisoformat(asked["first"]), date.fromisoformat(asked["last"])
    try:
        data = sys.stdin.buffer.read()
        read = read_content(data, asked["file"], first, last, ZoneInfo(asked["zone"]), asked["own_addresses"])
        sys.stdout.write(json.dumps(asdict(read), default=str))
    except (MemoryError, RecursionError):
        os._exit(_OUT_OF_MEMORY)


def hold_to_limits() -> None:
    """Limit memory where the system can, and processor time everywhere."""
    with suppress(ImportError, ValueError, OSError):  # Windows has no limits, macOS none of addresses
        import resource

        resource.setrlimit(resource.RLIMIT_AS, (MOST_MEMORY, MOST_MEMORY))
        seconds = int(LONGEST_SECONDS) + 1
        resource.setrlimit(resource.RLIMIT_CPU, (seconds, seconds))

    def watch() -> None:
        while process_time() < LONGEST_SECONDS:
            sleep(_LOOKS_EVERY)
        os._exit(_OUT_OF_TIME)

    Thread(target=watch, daemon=True).start()


if __name__ == "__main__":
    main(sys.argv[1])
