"""How late the two ways of a day may end: chances for many starts at once.

The same delays as in `slack`: the family gets off late by chances of its own, a late
departure takes the road as it is then, with its range. Nothing is drawn at random.
"""

from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property, lru_cache, reduce
from operator import add

import numpy as np
from numpy.lib.stride_tricks import sliding_window_view
from numpy.typing import NDArray

from tripplan.planning.day.times.legs import LegsOfDays, LegTimes
from tripplan.planning.day.times.minutes import NARROW, Minutes, a_day
from tripplan.planning.day.times.shapes import DayQuestion
from tripplan.planning.day.weighing.delays import Delay, getting_off_late, longer_than_likely
from tripplan.values.ranges import Range

THOUSANDTHS = 1000
"""Chances weigh in whole thousandths, so that plans that are equally likely to hold weigh the same [-]."""
TENTHS = 10
"""Expected minutes weigh in whole tenths [-]."""


@dataclass(frozen=True, eq=False)
class SurvivalTable:
    """What is left of a delay from a first number of minutes on.

    Attributes:
        first: the number of minutes that the tables begin with [min].
        more: the chance of a delay of more than so many minutes [0-1].
        excess: the expected minutes beyond so many [min].
    """

    first: int
    more: NDArray[np.float64]
    excess: NDArray[np.float64]

    @classmethod
    def of(cls, delay: Delay) -> "SurvivalTable":
        """The tables of a delay."""
        # One minute before the first chance everything is still to come, at the last one nothing.
        more = np.ones(delay.chances.size + 1)
        np.maximum(0.0, 1.0 - delay.chances.cumsum(), out=more[1:])
        more[-1] = 0.0
        return cls(delay.first - 1, more, more[::-1].cumsum()[::-1])

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
        weighs = (self.more * THOUSANDTHS + 0.5 >= 1) | (self.excess * TENTHS + 0.5 >= 1)
        return self.first + int(np.flatnonzero(weighs).max(initial=-1)) + 1


@dataclass(frozen=True, eq=False)
class SurvivalTables:
    """What is left of several delays, their tables one after the other."""

    tails: tuple[SurvivalTable, ...]

    def at(self, which: Minutes, minutes: Minutes) -> Minutes:
        """Where in the joined tables some minutes of one of the delays stand."""
        first, begin, last = self._places
        place: Minutes = np.minimum(
            np.maximum(begin[which] + minutes - first[which], begin[which]), last[which]
        )
        return place

    def before(self, which: Minutes, minutes: Minutes) -> Minutes:
        """How long before the first minute of a table some minutes are [min]."""
        minutes_before: Minutes = np.maximum(self._places[0][which] - minutes, 0)
        return minutes_before

    @cached_property
    def more(self) -> NDArray[np.float64]:
        """As in `SurvivalTable`, joined."""
        return np.concatenate([of_delay.more for of_delay in self.tails])

    @cached_property
    def excess(self) -> NDArray[np.float64]:
        """As in `SurvivalTable`, joined."""
        return np.concatenate([of_delay.excess for of_delay in self.tails])

    @cached_property
    def thousandths(self) -> Minutes:
        """As in `SurvivalTable`, joined."""
        return np.concatenate([of_delay.thousandths for of_delay in self.tails])

    @cached_property
    def tenths(self) -> Minutes:
        """As in `SurvivalTable`, joined."""
        return np.concatenate([of_delay.tenths for of_delay in self.tails])

    @cached_property
    def _places(self) -> tuple[Minutes, Minutes, Minutes]:
        """Of each table the first minute, and where it begins and ends among the joined ones."""
        sizes = np.array([of_delay.more.size for of_delay in self.tails])
        ends = np.cumsum(sizes)
        return np.array([of_delay.first for of_delay in self.tails]), ends - sizes, ends - 1


@lru_cache(maxsize=4096)
def _left_of(*delays: Delay) -> SurvivalTable:
    """What is left of some delays one after the other, each a kept object, as those of `delays` are."""
    return SurvivalTable.of(reduce(add, delays))


@dataclass(frozen=True, eq=False)
class Lateness:
    """How late one of the two ways of some days may end.

    Attributes:
        ways: the way on each day.
        usual, late: how late the family gets off on a usual day, and on one day in ten [min].
    """

    ways: LegsOfDays
    usual: int
    late: int

    @classmethod
    def there(cls, question: DayQuestion, ways: LegsOfDays) -> "Lateness":
        """On the way to the place; who has left already gets off late no more."""
        habits = question.habits
        if question.begun is not None:
            return cls(ways, 0, 0)
        return cls(ways, habits.usual_delay_minutes, habits.late_one_day_in_ten_minutes)

    @classmethod
    def back(cls, question: DayQuestion, ways: LegsOfDays) -> "Lateness":
        """On the way home, the visit having ended as planned."""
        habits = question.habits
        return cls(ways, habits.usual_delay_minutes, habits.late_one_day_in_ten_minutes)

    def may_be_late(self, starts: Minutes, due: Minutes) -> bool:
        """Whether any of some starts may arrive after due often enough to weigh.

        Args:
            starts: the days along the first axis, in order along the others [min].
            due: one entry a day, as `minutes.a_day` makes them [min].
        """
        return bool(self._may_be_late(starts[:, -1:, -1:], due).any())

    def chance_after(self, starts: Minutes, due: Minutes) -> Minutes:
        """The chance of arriving later than due, for each planned start, in thousandths.

        Args:
            starts: the days along the first axis [min].
            due: of a shape that fits the starts [min].
        """
        if self.ways.same_all_day:
            chance: Minutes = self._tails.thousandths[self._tails.at(*self._left(starts, due))]
            return chance
        return self._by_start(starts, due, THOUSANDTHS, lambda tails, *left: tails.more[tails.at(*left)])

    def expected_after(self, starts: Minutes, due: Minutes) -> Minutes:
        """By how much later than due one arrives on average, punctual days as zero, in tenths of minutes.

        The arguments are those of `chance_after`.
        """
        if self.ways.same_all_day:
            tails, left = self._tails, self._left(starts, due)
            beyond: Minutes = TENTHS * tails.before(*left) + tails.tenths[tails.at(*left)]
            return beyond
        return self._by_start(
            starts, due, TENTHS, lambda tails, *left: tails.excess[tails.at(*left)] + tails.before(*left)
        )

    @property
    def _off(self) -> Delay:
        return getting_off_late(self.usual, self.late)

    @cached_property
    def _tails(self) -> SurvivalTables:
        """What is left of getting off late and the drive together, for roads that are the same all day."""
        drives = (leg.drive.minutes for leg in self.ways.legs)
        return SurvivalTables(tuple(_left_of(self._off, longer_than_likely(drive)) for drive in drives))

    def _left(self, starts: Minutes, due: Minutes) -> tuple[Minutes, Minutes]:
        """Which of the delays is meant, and the minutes left to due."""
        return self.ways.which(starts), due - starts - self.ways.minutes(starts)

    def _may_be_late(self, starts: Minutes, due: Minutes) -> NDArray[np.bool_]:
        """Which starts may arrive after due often enough to weigh; some more on roads with rush hours.

        There the slowest drive of the day counts.
        """
        takes = self.ways.minutes(starts) if self.ways.same_all_day else self.ways.slowest
        late: NDArray[np.bool_] = due - starts - takes < self._weighs_until
        return late

    @cached_property
    def _weighs_until(self) -> Minutes:
        """From so many minutes left on, lateness weighs nothing, one entry a day [min]."""
        if self.ways.same_all_day:
            return a_day([tails.weighs_until for tails in self._tails.tails])
        slowest = (longer_than_likely(_no_quicker(way)) for way in self.ways.ways)
        return a_day([_left_of(self._off, change).weighs_until for change in slowest])

    def _by_start(
        self,
        starts: Minutes,
        due: Minutes,
        times: int,
        weigh: Callable[[SurvivalTables, Minutes, Minutes], NDArray[np.float64]],
    ) -> Minutes:
        """What is left of the drives' delays on average over all delays in getting off, in small units.

        It is weighed for every minute at which a drive may really begin, given which of the drives is meant
        and the minutes left to due; a planned start then takes its average over the minutes from it on.
        """
        may = self._may_be_late(starts, due)
        found = np.zeros(may.shape, dtype=NARROW)
        spots = np.nonzero(may)
        if not spots[0].size:
            return found
        planned, due_then = (np.broadcast_to(figures, may.shape)[spots] for figures in (starts, due))
        (days, dues), row = np.unique(np.array((spots[0], due_then)), axis=1, return_inverse=True)
        first, delays = int(planned.min()), self._off.chances
        really = np.arange(first, int(planned.max()) + delays.size) + self._off.first
        legs, which = np.unique(self.ways.which_of(days[:, None], really), return_inverse=True)
        each = (_left_of(longer_than_likely(self.ways.legs[leg].drive.minutes)) for leg in legs.tolist())
        numbers: dict[SurvivalTable, int] = {}
        which = np.array([numbers.setdefault(of_leg, len(numbers)) for of_leg in each])[which]
        tails = SurvivalTables(tuple(numbers))
        left = dues[:, None] - really - self.ways.minutes_of(days[:, None], really)
        weighed = sliding_window_view(weigh(tails, which, left), delays.size, axis=1)
        found[spots] = _whole(weighed[row, planned - first] @ delays * times)
        return found


def _no_quicker(way: LegTimes) -> Range:
    """A drive that takes longer than likely by no less than any of a way, whatever the chance."""
    return Range(0.0, 0.0, max(leg.drive.minutes.high - leg.drive.minutes.likely for leg in way.legs))


def _whole(figures: NDArray[np.float64]) -> Minutes:
    """Rounded half up."""
    return np.floor(figures + 0.5).astype(NARROW)
