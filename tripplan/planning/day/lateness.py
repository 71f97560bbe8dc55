"""How late the two ways of a day may end: chances for many starts at once.

The same delays as in `tripplan.planning.day.slack`: the family gets off late by chances of its own, a late
departure takes the road as it is then, and the drive has the range of the one that was planned. Nothing is
drawn at random.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property, lru_cache

import numpy as np
from numpy.typing import NDArray

from tripplan.planning.day.delays import Delay, getting_off_late, longer_than_likely
from tripplan.planning.day.legs import LegTimes
from tripplan.planning.day.limits import Limits
from tripplan.planning.day.minutes import Minutes
from tripplan.planning.day.shapes import DayQuestion
from tripplan.planning.ranges import Range

THOUSANDTHS = 1000
"""Chances weigh in whole thousandths, so that plans that are equally likely to hold weigh the same [-]."""
TENTHS = 10
"""Expected minutes weigh in whole tenths [-]."""


@dataclass(frozen=True, eq=False)
class Tails:
    """What is left of some delays, table by table, from a first number of minutes on.

    Attributes:
        first: the number of minutes that the tables begin with [min].
        more: the chance of a delay of more than so many minutes; shape (delays, minutes) [0-1].
        excess: the expected minutes beyond so many; the same shape [min].
    """

    first: int
    more: NDArray[np.float64]
    excess: NDArray[np.float64]

    @cached_property
    def thousandths(self) -> Minutes:
        """`more` in whole thousandths."""
        return _whole(self.more * THOUSANDTHS)

    @cached_property
    def tenths(self) -> Minutes:
        """`excess` in whole tenths of a minute."""
        return _whole(self.excess * TENTHS)

    @cached_property
    def weighs_until(self) -> int:
        """From so many minutes on, nothing is left in thousandths or tenths [min]."""
        weighs = (self.thousandths > 0) | (self.tenths > 0)
        return self.first + int(np.flatnonzero(weighs.any(axis=0)).max(initial=-1)) + 1

    @classmethod
    def of(cls, delays: Iterable[Delay]) -> "Tails":
        """Tables of one length for several delays."""
        every = list(delays)
        # One minute before the first chance everything is still to come, at the last one nothing.
        first = min(delay.first for delay in every) - 1
        last = max(delay.first + delay.chances.size for delay in every)
        chances = np.zeros((len(every), last - first + 1))
        for row, delay in zip(chances, every, strict=True):
            row[delay.first - first :][: delay.chances.size] = delay.chances
        more = np.maximum(0.0, 1.0 - np.cumsum(chances, axis=1))
        more[:, -1] = 0.0
        excess = np.cumsum(more[:, ::-1], axis=1)[:, ::-1]
        return cls(first, more, excess)

    def chance_of_more(self, which: Minutes, minutes: Minutes) -> NDArray[np.float64]:
        """The chance that a delay is longer than some minutes [0-1]."""
        found: NDArray[np.float64] = self.more[which, self.at(minutes)]
        return found

    def minutes_beyond(self, which: Minutes, minutes: Minutes) -> NDArray[np.float64]:
        """How much longer than some minutes a delay is to be expected [min]."""
        found: NDArray[np.float64] = self.excess[which, self.at(minutes)]
        beyond: NDArray[np.float64] = found + np.maximum(self.first - minutes, 0)
        return beyond

    def at(self, minutes: Minutes) -> Minutes:
        """Where in the tables some minutes stand."""
        column: Minutes = np.minimum(np.maximum(minutes - self.first, 0), self.more.shape[1] - 1)
        return column


@lru_cache(maxsize=256)
def _off_and_change(usual: int, late: int, drive: Range) -> Tails:
    """Getting off late and a drive of uncertain length together, for a drive that is the same all day."""
    return Tails.of([getting_off_late(usual, late) + longer_than_likely(drive)])


@lru_cache(maxsize=256)
def _changes(drives: tuple[Range, ...]) -> Tails:
    """How much longer than likely each of several drives takes."""
    return Tails.of(map(longer_than_likely, drives))


@dataclass(frozen=True, eq=False)
class Lateness:
    """How late one of the two ways may end.

    Attributes:
        way: the way.
        usual, late: how late the family gets off on a usual day, and on one day in ten [min].
    """

    way: LegTimes
    usual: int
    late: int

    @classmethod
    def there(cls, question: DayQuestion, limits: Limits) -> "Lateness":
        """On the way to the place; who has left already gets off late no more."""
        habits = question.habits
        if question.begun is not None:
            return cls(limits.there, 0, 0)
        return cls(limits.there, habits.usual_delay_minutes, habits.late_one_day_in_ten_minutes)

    @classmethod
    def back(cls, question: DayQuestion, limits: Limits) -> "Lateness":
        """On the way home, the visit having ended as planned."""
        habits = question.habits
        return cls(limits.back, habits.usual_delay_minutes, habits.late_one_day_in_ten_minutes)

    def may_be_late(self, starts: Minutes, due: int) -> bool:
        """Whether any of some starts, in order, may arrive after due often enough to weigh.

        Told at once on a road that is the same all day; elsewhere it always may.
        """
        tails = self._same_all_day
        return tails is None or due - int(starts[-1]) - self.way.quickest < tails.weighs_until

    def chance_after(self, starts: Minutes, due: Minutes) -> Minutes:
        """The chance of arriving later than due, for each planned start, in thousandths."""
        if self._same_all_day is not None:
            tails, left = self._same_all_day, due - starts - self.way.minutes(starts)
            chance: Minutes = tails.thousandths[0].take(left - tails.first, mode="clip")
            return chance
        chances = _changes(self.way.drives).chance_of_more(*self._left(starts, due))
        return _whole(chances @ self._off.chances * THOUSANDTHS)

    def expected_after(self, starts: Minutes, due: Minutes) -> Minutes:
        """By how much later than due one arrives on average, punctual days as zero, in tenths of minutes."""
        if self._same_all_day is not None:
            tails, left = self._same_all_day, due - starts - self.way.minutes(starts)
            beyond: Minutes = TENTHS * np.maximum(tails.first - left, 0)
            beyond += tails.tenths[0].take(left - tails.first, mode="clip")
            return beyond
        minutes = _changes(self.way.drives).minutes_beyond(*self._left(starts, due))
        return _whole(minutes @ self._off.chances * TENTHS)

    @property
    def _off(self) -> Delay:
        return getting_off_late(self.usual, self.late)

    @cached_property
    def _same_all_day(self) -> Tails | None:
        """Both delays in one table, where the road is the same all day."""
        drives = self.way.drives
        return _off_and_change(self.usual, self.late, drives[0]) if len(drives) == 1 else None

    def _left(self, starts: Minutes, due: Minutes) -> tuple[Minutes, Minutes]:
        """Which of the drives is meant, and the minutes left to due, with a column for each delay."""
        really = starts[:, None] + self._off.minutes
        left = np.broadcast_to(due, starts.shape)[:, None] - really - self.way.minutes(really)
        return self.way.which(starts)[:, None], left


def _whole(figures: NDArray[np.float64]) -> Minutes:
    """Rounded half up."""
    return np.floor(figures + 0.5).astype(np.int64)
