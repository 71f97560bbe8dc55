"""Each day's chance of being among the busiest fifth of its year, given how full it is expected to be."""

import math
from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

BUSIEST_SHARE = 0.2
"""The busiest fifth of the open days [-]."""

_MOST_STEPS = 200
_CLOSE_ENOUGH = 1e-9
"""By how many days the expected number of busy days may miss a fifth [days]."""

Floats = NDArray[np.float64]


def busiest_fifth_chances(level: Floats, noise: Floats, begins: Sequence[int] = (0,)) -> Floats:
    """The chance of each day of a year, or of several years, of any places, one after the other.

    The logarithm of a day's visitors is its level plus logistic noise. A day counts as busy above the one
    threshold that a fifth of all days of its year is expected to exceed; Newton's method finds it, halving
    where a step of it would leave the bracket.

    Args:
        level: expected logarithm of visitors, one entry a day, in each year against any common zero [ln].
        noise: standard deviation about it, one entry a day, above 0 [ln].
        begins: where each year begins among the days, in order; no year is without days.

    Returns:
        Chances [0-1]; those of a year add up to a fifth of the number of its days.
    """
    if not level.size:
        return np.zeros(0)
    starts = np.array(begins)
    days = np.diff(starts, append=level.size)
    # A logistic distribution of scale s has the standard deviation s pi / sqrt(3).
    twice_scale = noise * (2 * math.sqrt(3) / math.pi)
    steepest = 0.5 / twice_scale
    reach = 10 * np.maximum.reduceat(twice_scale, starts)
    low, high = np.minimum.reduceat(level, starts) - reach, np.maximum.reduceat(level, starts) + reach
    # One standard deviation above the mean, where about a fifth of many a distribution begins.
    mean = np.add.reduceat(level, starts) / days
    spread = np.add.reduceat(level * level, starts) / days - mean**2
    threshold = mean + np.sqrt(np.maximum(spread, 0))
    for _ in range(_MOST_STEPS):
        # A chance is (1 + swing) / 2, and falls with the threshold by steepest x (1 - swing squared).
        swing = np.tanh((level - np.repeat(threshold, days)) / twice_scale)
        too_many = 0.5 * (days + np.add.reduceat(swing, starts)) - BUSIEST_SHARE * days
        close = np.abs(too_many) < _CLOSE_ENOUGH
        if close.all():
            break
        low, high = np.where(too_many > 0, threshold, low), np.where(too_many > 0, high, threshold)
        steepness = np.add.reduceat(steepest * (1 - swing * swing), starts)
        # Where all days lie far from the threshold the curve is flat, and a step leads nowhere.
        with np.errstate(divide="ignore", over="ignore", invalid="ignore"):
            step = threshold + too_many / steepness
        inside = (low < step) & (step < high)
        threshold = np.where(close, threshold, np.where(inside, step, (low + high) / 2))
    chances: Floats = 0.5 * (1 + swing)
    return chances
