"""From twelve monthly means to 366 days without steps."""

from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]

MONTH_DAYS = (31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)
"""Days of each month of a leap year [days]."""
YEAR_DAYS = sum(MONTH_DAYS)


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
