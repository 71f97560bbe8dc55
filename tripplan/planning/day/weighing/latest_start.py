"""Which departure is best: nobody hurries small children out of the house for a quarter of an hour's worth.

Of the departures that weigh about the least, the last one is best. Later than a good hour to leave nobody
sleeps longer for a later start, so from there on the one is best that weighs the least.
"""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tripplan.documents.family.worth import Worth
from tripplan.language.sentences import fact
from tripplan.planning.day.times.minutes import Minutes
from tripplan.planning.day.weighing.nuisances import Nuisance

ABOUT_THE_SAME_MINUTES = 15
"""Plans at most so long in the car apart weigh about the same (common practice, no source) [min]."""


def about_the_same(worth: Worth) -> int:
    """What may lie between two plans that weigh about the same, in parts of `nuisances.UNITS`."""
    return int(Nuisance(fact("plan-driving"), np.array(ABOUT_THE_SAME_MINUTES), worth.hour_in_car).weight())


Spot = tuple[int, int]
"""Which departure and which leaving time of a day."""


IMPOSSIBLE = int(np.iinfo(np.int64).max)
"""The rank of a choice that does not keep every limit."""


@dataclass(frozen=True)
class Preference:
    """Which departure is best.

    Attributes:
        good_hour: from then on a later start spares nobody anything [min].
        apart: what may lie between two that weigh about the same, in the unit of the ranks.
    """

    good_hour: int
    apart: int

    def best_and_lightest(self, least: Minutes, depart: Minutes) -> NDArray[np.intp]:
        """Which departure is the best of each day, and which weighs the least; shape (2, days).

        Args:
            least: what each departure weighs with its best leaving time; shape (days, departures).
            depart: the departures, in order; of a shape that fits [min].
        """
        days, lightest = np.arange(len(least)), least.argmin(axis=1)
        # The difference cannot run over where what is impossible stands as the largest number there is.
        about_the_least = least - least[days, lightest, None] <= self.apart
        last = least.shape[1] - 1 - about_the_least[:, ::-1].argmax(axis=1)
        latest = np.broadcast_to(depart, least.shape)[days, last]
        too_early = depart < np.minimum(latest, self.good_hour)[:, None]
        return np.array((np.where(too_early, IMPOSSIBLE, least).argmin(axis=1), lightest))


@dataclass(frozen=True, eq=False)
class BestSpots:
    """Where among the choices of some days the best of each stands, and the one that weighs the least.

    Attributes:
        rows: which departure, of the best of each day and then of the lightest; shape (2, days).
        columns: which leaving time, likewise.
        least: what each departure weighs with its best leaving time; shape (days, departures).
    """

    rows: NDArray[np.intp]
    columns: NDArray[np.intp]
    least: Minutes

    @classmethod
    def of(cls, rank: Minutes, depart: Minutes, preference: Preference) -> "BestSpots":
        """Those of some days.

        Args:
            rank: what each choice weighs, of shape (days, departures, leaving times); least for the lightest.
            depart: the departures of each day, in order, of shape (days, departures) [min].
            preference: which departure is best.
        """
        least = rank.min(axis=2)
        rows = preference.best_and_lightest(least, depart)
        return cls(rows, rank[np.arange(len(rank)), rows].argmin(axis=2), least)

    @property
    def of_days(self) -> Iterator[tuple[Spot, Spot]]:
        """Day by day the best, and the lightest."""
        best, lightest = (
            zip(rows, columns, strict=True)
            for rows, columns in zip(self.rows.tolist(), self.columns.tolist(), strict=True)
        )
        return zip(best, lightest, strict=True)
