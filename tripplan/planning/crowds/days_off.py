"""Which days of a year are off work for most people, as arrays that all places of a region share."""

from collections.abc import Mapping, Set
from dataclasses import dataclass
from datetime import date, timedelta
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from tripplan.planning.crowds.public_holidays import is_bridge_day, is_observed, long_weekend

Flags = NDArray[np.bool_]

_SATURDAY = 5


@dataclass(frozen=True, eq=False)
class DaysOff:
    """Every day of one calendar year, one array entry a day.

    Attributes:
        first: 1 January.
        weekday: 0 for Monday to 6 for Sunday [-].
        public_holiday: whether a public holiday is celebrated that day, whatever the weekday.
        weekend: whether it is a Saturday or Sunday and no public holiday.
        long_weekend: whether it is such a weekend day beside a public holiday or bridge day.
        in_lieu: whether it is a weekday off work for a holiday on another date.
        bridge: whether it is a working day alone between a public holiday and another day off.
        kept: whether PH in a card's rules means the day.
        names: of the public holidays and days in lieu, empty for other days.
    """

    first: date
    weekday: NDArray[np.intp]
    public_holiday: Flags
    weekend: Flags
    long_weekend: Flags
    in_lieu: Flags
    bridge: Flags
    kept: Flags
    names: tuple[str, ...]

    def __len__(self) -> int:
        return len(self.names)


def days_off(year: int, public_holidays: Mapping[date, str], kept: Set[date] | None = None) -> DaysOff:
    """The days off of one calendar year.

    Args:
        year: the calendar year [years].
        public_holidays: names by date; long weekends across New Year need those of the years around.
        kept: what PH means in a card's rules; all of these when left out.

    Returns:
        The same arrays, not to be written to, for every place with the same public holidays.
    """
    means_ph = frozenset(public_holidays if kept is None else kept)
    return _days_off(year, tuple(public_holidays.items()), means_ph)


@lru_cache(maxsize=256)
def _days_off(year: int, public_holidays: tuple[tuple[date, str], ...], kept: frozenset[date]) -> DaysOff:
    named = dict(public_holidays)
    first = date(year, 1, 1)
    days = [first + timedelta(days=n) for n in range((date(year + 1, 1, 1) - first).days)]
    names = tuple(named.get(day, "") for day in days)
    weekday = np.array([day.weekday() for day in days])
    celebrated = np.array([bool(name) and not is_observed(name) for name in names])
    weekend = (weekday >= _SATURDAY) & ~celebrated
    arrays = {
        "weekday": weekday,
        "public_holiday": celebrated,
        "weekend": weekend,
        "long_weekend": weekend & np.array([bool(long_weekend(day, named.keys())) for day in days]),
        "in_lieu": np.array([bool(name) for name in names]) & ~celebrated & ~weekend,
        "kept": np.array([day in kept for day in days]),
        "bridge": np.array([is_bridge_day(day, named.keys()) for day in days]),
    }
    for array in arrays.values():
        array.setflags(write=False)
    return DaysOff(first=first, names=names, **arrays)
