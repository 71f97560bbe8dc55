"""How much later than planned things happen, as chances for every whole minute."""

import math
from dataclasses import dataclass
from functools import lru_cache
from statistics import NormalDist

import numpy as np
from numpy.typing import NDArray

from tripplan.documents.family.habits import Habits
from tripplan.values.ranges import Range

EARLY_BY_MINUTES = 5.0
"""How much too early a family is ready at best; it then waits. No source, our choice [min]."""
LONGEST_DELAY_MINUTES = 12 * 60
"""Delays are looked at up to here; whatever is longer counts as this long [min]."""
FORGOTTEN = 1e-6
"""Likewise once no more than this chance of a longer one is left [0-1]."""

_NORMAL = NormalDist()
_ONE_IN_TEN = _NORMAL.inv_cdf(0.9)
_NINETEEN_OF_TWENTY = 0.95
_ONE_IN_TWENTY = _NORMAL.inv_cdf(_NINETEEN_OF_TWENTY)

Chances = NDArray[np.float64]


@dataclass(frozen=True, eq=False)
class Delay:
    """A delay in whole minutes, or any other number of minutes that is not sure.

    Attributes:
        first: the least number of minutes [min].
        chances: the chance of `first`, of one minute more, and so on; they add up to one [0-1].
    """

    first: int
    chances: Chances

    def __add__(self, other: "Delay") -> "Delay":
        """Two independent delays after each other."""
        return Delay(self.first + other.first, np.convolve(self.chances, other.chances))

    @property
    def minutes(self) -> NDArray[np.int64]:
        """The number of minutes that each chance belongs to."""
        return np.arange(self.first, self.first + self.chances.size, dtype=np.int64)

    def at_most(self, minutes: int) -> float:
        """The chance of no more than so many minutes [0-1]."""
        return min(1.0, float(self.chances[: max(0, minutes - self.first + 1)].sum()))


def getting_off(habits: Habits) -> Delay:
    """How much later than planned the family leaves, be it home or the place.

    A shifted lognormal: the delay and five minutes together are lognormal, because what goes wrong while
    loading small children multiplies (a lost shoe, then a nappy) and now and then all goes well. It is no
    more than `usual_delay_minutes` on half of all days, and more than `late_one_day_in_ten_minutes` on one
    day in ten. Nobody leaves before the planned minute: whoever is ready early waits.

    Source: the shape is our choice, no source; both figures are the parent's own.
    """
    return getting_off_late(habits.usual_delay_minutes, habits.late_one_day_in_ten_minutes)


@lru_cache(maxsize=64)
def getting_off_late(usual: int, late: int) -> Delay:
    """The delay of `getting_off`, by its usual length and the one of one day in ten [min]."""
    if late == usual:
        return Delay(usual, np.ones(1))
    middle = math.log(usual + EARLY_BY_MINUTES)
    spread = (math.log(late + EARLY_BY_MINUTES) - middle) / _ONE_IN_TEN

    # A delay is told in whole minutes, so it counts as the nearest of them.
    forgotten = math.exp(middle - spread * _NORMAL.inv_cdf(FORGOTTEN)) - EARLY_BY_MINUTES
    last = min(math.ceil(forgotten + 0.5), LONGEST_DELAY_MINUTES)
    deviations = (np.log(np.arange(1, last + 1) - 0.5 + EARLY_BY_MINUTES) - middle) / spread
    return Delay(0, _steps(deviations))


def usual_at_most(habits: Habits, drive: Range | None) -> int:
    """How much later than planned a way is over at most on nineteen of twenty days [min].

    Args:
        habits: the family's delays in getting off.
        drive: how long the drive takes [min]; None for getting off alone.
    """
    below, above = (
        (0, 0) if drive is None else (round(drive.likely - drive.low), round(drive.high - drive.likely))
    )
    return _at_most(habits.usual_delay_minutes, habits.late_one_day_in_ten_minutes, below, above)


@lru_cache(maxsize=4096)
def _at_most(usual: int, late: int, below: int, above: int) -> int:
    delay = getting_off_late(usual, late) + _in_two_halves(below, above)
    enough = int(np.searchsorted(delay.chances.cumsum(), _NINETEEN_OF_TWENTY))
    return max(0, delay.first + enough)


def longer_than_likely(minutes: Range) -> Delay:
    """How much longer than likely a drive takes; below zero where it is quicker.

    A normal distribution in two halves: the likely figure is its median, low and high bound its middle 90 %.
    How far off these are counts in whole minutes, as estimates are no finer; so many drives share one delay,
    which is the very same object.

    Source: two-piece normal, after G. T. Fechner, Kollektivmasslehre, 1897 (from memory), here with half of
    the chance on either side.
    """
    return _in_two_halves(round(minutes.likely - minutes.low), round(minutes.high - minutes.likely))


@lru_cache(maxsize=4096)
def _in_two_halves(below: int, above: int) -> Delay:
    """The same for the ends of the middle 90 %, as so many minutes from the median."""
    scales = below / _ONE_IN_TWENTY, above / _ONE_IN_TWENTY
    first, last = math.floor(-4 * scales[0]), math.ceil(4 * scales[1])
    changes = np.arange(first, last) + 0.5
    return Delay(first, _steps(changes / np.where(changes < 0, *scales)))


def _steps(deviations: NDArray[np.float64]) -> Chances:
    """The chances between some deviations of a normal distribution in order, and beyond both ends."""
    reached = np.array([-1.0, *map(math.erf, (deviations / math.sqrt(2)).tolist()), 1.0])
    chances: Chances = 0.5 * (reached[1:] - reached[:-1])
    return chances
