"""Which departure is best: nobody hurries small children out of the house for a quarter of an hour's worth.

Of the departures that weigh about the least, the last one is best. Later than a good hour to leave nobody
sleeps longer for a later start, so from there on the one is best that weighs the least.
"""

import numpy as np

from tripplan.documents.family.worth import Worth
from tripplan.planning.day.times.minutes import Minutes
from tripplan.planning.day.weighing.nuisances import Nuisance

ABOUT_THE_SAME_MINUTES = 15
"""Plans at most so long in the car apart weigh about the same (common practice, no source) [min]."""


def about_the_same(worth: Worth) -> int:
    """What may lie between two plans that weigh about the same, in parts of `nuisances.UNITS`."""
    return int(Nuisance("", np.array(ABOUT_THE_SAME_MINUTES), worth.hour_in_car).weight())


def unhurried(least: Minutes, depart: Minutes, good_hour: int, apart: int) -> int:
    """Which departure is best, by its number.

    Args:
        least: what each departure weighs with its best leaving time; at least one.
        depart: the departures, in order [min].
        good_hour: from then on a later start spares nobody anything [min].
        apart: what may lie between two that weigh about the same, in the unit of `least`.
    """
    # The difference cannot run over where what is impossible stands as the largest number there is.
    last = depart[np.flatnonzero(least - least.min() <= apart)[-1]]
    first = int(np.searchsorted(depart, min(int(last), good_hour)))
    return first + int(least[first:].argmin())


Spot = tuple[int, int]
"""Which departure and which leaving time."""


def best_and_lightest(rank: Minutes, depart: Minutes, good_hour: int, apart: int) -> tuple[Spot, Spot]:
    """The best choice of a day, and the one that weighs the least.

    Args:
        rank: what each choice weighs, of shape (departures, leaving times); least for the lightest.
        depart: the departures, in order [min].
        good_hour: as for `unhurried` [min].
        apart: likewise, in the unit of `rank`.
    """
    least = rank.min(axis=1)
    best, lightest = unhurried(least, depart, good_hour, apart), int(least.argmin())
    return (best, int(rank[best].argmin())), (lightest, int(rank[lightest].argmin()))
