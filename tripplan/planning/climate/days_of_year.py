"""From twelve monthly means to 366 days without steps."""

from datetime import date, timedelta
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]

MONTH_DAYS = (31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)
"""Days of each month of a leap year [days]."""
YEAR_DAYS = sum(MONTH_DAYS)
_LEAP_YEAR = 2000
_MIDDLES = (5, 15, 25)


@lru_cache(maxsize=1)
def by_day() -> Floats:
    """The matrix of shape (366, 12) that makes days of months.

    Of all curves around the year whose means over the months are those given, it makes the one whose
    second differences have the least sum of squares. The monthly means stay, no month's end has a step, and
    a year of equal months stays flat.
    """
    months = np.repeat(np.arange(12), MONTH_DAYS)
    means = np.equal.outer(np.arange(12), months) / np.array(MONTH_DAYS)[:, None]
    here = np.eye(YEAR_DAYS)
    bend = np.roll(here, 1, axis=1) - 2 * here + np.roll(here, -1, axis=1)
    # Lagrange's multipliers make the means exact.
    system = np.block([[bend.T @ bend, means.T], [means, np.zeros((12, 12))]])
    asked = np.vstack([np.zeros((YEAR_DAYS, 12)), np.eye(12)])
    days: Floats = np.linalg.solve(system, asked)[:YEAR_DAYS]
    days.flags.writeable = False
    return days


def day_of_year(day: date) -> int:
    """The number of a date among 366, from 0; 1 March is 60 in every year."""
    return date(_LEAP_YEAR, day.month, day.day).timetuple().tm_yday - 1


@lru_cache(maxsize=1)
def ten_days() -> NDArray[np.int64]:
    """For each of 366 days the middle one of its ten days, counted from the 1st, 11th and 21st of a month.

    Source: the dekads of agricultural meteorology (World Meteorological Organization), from memory.
    """
    days = (date(_LEAP_YEAR, 1, 1) + timedelta(days=n) for n in range(YEAR_DAYS))
    middles = [day_of_year(day.replace(day=_MIDDLES[min((day.day - 1) // 10, 2)])) for day in days]
    found = np.array(middles, dtype=np.int64)
    found.flags.writeable = False
    return found
