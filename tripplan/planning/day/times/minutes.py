"""One day counted in minutes, so that clock changes and a second time zone cannot trip the search."""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta, tzinfo
from functools import cached_property, lru_cache, reduce
from typing import Any
from zoneinfo import ZoneInfo

import numpy as np
from numpy.typing import NDArray

from tripplan.documents.family.habits import Habits
from tripplan.values.clocks import minute_of_day

Minutes = NDArray[np.integer[Any]]
"""Elapsed minutes since midnight at home, or other whole numbers of the choices, many at once."""
NARROW = np.int32
"""What minutes are kept in: half as wide as they come, so that twice as many fit a processor's own memory."""
_MINUTE = timedelta(minutes=1)


@dataclass(frozen=True)
class DayMinutes:
    """A day as elapsed minutes since midnight at home.

    Where clocks change that day, 12:00 is minute 660 or 780: minutes count time that passes.

    Attributes:
        day: the date at home.
        home_zone: whose midnight is minute 0.
    """

    day: date
    home_zone: ZoneInfo

    @cached_property
    def midnight(self) -> datetime:
        """Minute 0, in UTC."""
        return _midnight(self.day, self.home_zone)

    @cached_property
    def changes_clocks(self) -> bool:
        """Whether the clock at home is changed that day."""
        return _changes_clocks(self.day, self.home_zone)

    def by_clock(self, clock: time) -> int:
        """The minute at which the clock at home first shows a time [min]."""
        if self.changes_clocks:
            return self.rounded_up(datetime.combine(self.day, clock, self.home_zone))
        return minute_of_day(clock) + bool(clock.second or clock.microsecond)

    def home_by(self, habits: Habits) -> int:
        """The minute by which everybody is home, that day or in the night after [min]."""
        if not habits.home_after_midnight:
            return self.by_clock(habits.home_by)
        night = self.day + timedelta(days=1)
        return self.rounded_up(datetime.combine(night, habits.home_by, self.home_zone))

    def rounded_down(self, moment: datetime) -> int:
        """The last whole minute at or before a moment [min]."""
        return (moment - self.midnight) // _MINUTE

    def rounded_up(self, moment: datetime) -> int:
        """The first whole minute at or after a moment [min]."""
        return -((self.midnight - moment) // _MINUTE)

    def moment(self, minute: int, zone: tzinfo) -> datetime:
        """A minute as a moment, by a zone's clock."""
        return (self.midnight + minute * _MINUTE).astimezone(zone)


@lru_cache(maxsize=1024)
def _midnight(day: date, zone: ZoneInfo) -> datetime:
    return datetime.combine(day, time(0), zone).astimezone(UTC)


@lru_cache(maxsize=1024)
def _changes_clocks(day: date, zone: ZoneInfo) -> bool:
    return _midnight(day + timedelta(days=1), zone) - _midnight(day, zone) != timedelta(days=1)


def combined(combine: Callable[[Minutes, Minutes], Minutes], parts: Iterable[Minutes]) -> Minutes:
    """Figures of the choices combined by a sum or a maximum.

    What rests on the departure alone, or on the leaving time alone, is combined first: a hundred numbers
    instead of thousands.

    Args:
        combine: of two, in whatever order.
        parts: at least one; each of any shape that fits the choices.
    """
    return reduce(combine, sorted(by_shape(combine, parts), key=np.size))


def by_shape(combine: Callable[[Minutes, Minutes], Minutes], parts: Iterable[Minutes]) -> list[Minutes]:
    """The same, but only parts of the same shape combined."""
    found: dict[tuple[int, ...], Minutes] = {}
    for part in parts:
        same = found.get(part.shape)
        found[part.shape] = part if same is None else combine(same, part)
    return list(found.values())


def chosen(found: Minutes | NDArray[np.bool_], at: tuple[int, int, int]) -> int:
    """The figure of one choice.

    Args:
        found: one for each day, departure and leaving time; an axis of length one stands for all.
        at: which day, departure and leaving time.
    """
    return int(found[tuple(number if size > 1 else 0 for number, size in zip(at, found.shape, strict=True))])


def a_day(figures: Sequence[int] | Minutes) -> Minutes:
    """One figure a day, in the shape (days, 1, 1) that fits all choices of these days."""
    return np.asarray(figures, dtype=NARROW).reshape(-1, 1, 1)
