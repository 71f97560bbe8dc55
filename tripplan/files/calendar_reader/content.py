"""What a calendar file comes to: its entries within a span of days, and warnings."""

from collections import defaultdict
from dataclasses import dataclass
from datetime import date, datetime, timedelta

from tripplan.errors import Finding, Weight
from tripplan.values.plain_text import one_line

MOST_BYTES = 5_000_000
"""A larger file is refused unread."""
_SHOWN = 5
_MOMENT = timedelta(microseconds=1)


@dataclass(frozen=True)
class CalendarEntry:
    """One entry, or one occurrence of a repeating one.

    Attributes:
        key: names the occurrence, the same at every reading of an unchanged file.
        summary: its title, on one line.
        start: in the zone the file was read for; an all-day entry begins at midnight.
        end: likewise, not included.
        all_day: whether it covers whole days, by its own clock.
        busy: whether it takes up time (RFC 5545, 3.8.2.7).
        cancelled: whether it was called off.
        declined: whether the calendar's owner said no to it.
        whole_days: the first and last day it stands for, where it is written from midnight to midnight in
            another zone.
    """

    key: str
    summary: str
    start: datetime
    end: datetime
    all_day: bool
    busy: bool = True
    cancelled: bool = False
    declined: bool = False
    whole_days: tuple[date, date] | None = None

    @property
    def entry(self) -> str:
        """Names the entry whose occurrence this is; it stays when the occurrence moves or is renamed."""
        return self.key.rpartition(" ")[0]

    @property
    def takes_time(self) -> bool:
        """Whether nothing else can be done meanwhile."""
        return self.busy and not self.cancelled and not self.declined

    @property
    def first_day(self) -> date:
        """The day it begins, by its own clock where it stands for whole days."""
        return self.whole_days[0] if self.whole_days else self.start.date()

    @property
    def last_day(self) -> date:
        """The last day it touches, likewise."""
        if self.whole_days:
            return self.whole_days[1]
        return max(self.start.date(), (self.end - _MOMENT).date())


@dataclass(frozen=True)
class CalendarContent:
    """What a calendar file holds within a span of days.

    Attributes:
        name: what the file calls itself; may be empty.
        entries: in order of their start.
    """

    name: str
    entries: tuple[CalendarEntry, ...]


class Noticed:
    """Warnings about one file, gathered by kind, so that a thousand alike are said once."""

    def __init__(self, file: str) -> None:
        self._file = file
        self._first: dict[str, list[Finding]] = {}
        self._count: dict[str, int] = defaultdict(int)

    def add(self, message: str, field: str = "", value: str = "") -> None:
        """Note a warning; of many alike the first few are kept whole."""
        shown = self._first.setdefault(message, [])
        self._count[message] += 1
        if len(shown) < _SHOWN:
            shown.append(Finding(self._file, field, one_line(value[:200])[:60], message, Weight.WARNING))

    def findings(self) -> tuple[Finding, ...]:
        """All of them, and how many more of each kind there were."""
        found = []
        for message, shown in self._first.items():
            found.extend(shown)
            if self._count[message] > _SHOWN:
                more = f"{self._count[message] - _SHOWN} more"
                found.append(Finding(self._file, more, "", message, Weight.WARNING))
        return tuple(found)
