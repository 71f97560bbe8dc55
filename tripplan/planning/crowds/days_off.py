"""Which days of a year are off work for most people, as arrays that all places of a region share."""

from collections.abc import Mapping, Set
from dataclasses import dataclass
from datetime import date
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from tripplan.planning.crowds.public_holidays import is_observed

Flags = NDArray[np.bool_]

_SATURDAY = 5
_MARGIN = 3


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
    first, last = date(year, 1, 1), date(year, 12, 31)
    # A bridge day shows by the days beside it, and a row of three days off by two more.
    around = [date.fromordinal(n) for n in range(first.toordinal() - _MARGIN, last.toordinal() + _MARGIN + 1)]
    of_year = slice(_MARGIN, len(around) - _MARGIN)
    weekday_around = (np.arange(len(around)) + around[0].weekday()) % 7
    holiday = np.array([day in named for day in around])
    free = holiday | (weekday_around >= _SATURDAY)
    bridge = ~free & _before(free) & _after(free) & (_before(holiday) | _after(holiday))
    off = free | bridge
    row_of_three = (
        (_before(off) & _after(off))
        | (_before(off) & _before(_before(off)))
        | (_after(off) & _after(_after(off)))
    )
    days = around[of_year]
    names = tuple(named.get(day, "") for day in days)
    weekday = weekday_around[of_year]
    celebrated = np.array([bool(name) and not is_observed(name) for name in names])
    weekend = (weekday >= _SATURDAY) & ~celebrated
    arrays = {
        "weekday": weekday,
        "public_holiday": celebrated,
        "weekend": weekend,
        "long_weekend": weekend & row_of_three[of_year],
        "in_lieu": holiday[of_year] & ~celebrated & ~weekend,
        "bridge": bridge[of_year],
        "kept": np.array([day in kept for day in days]),
    }
    for array in arrays.values():
        array.setflags(write=False)
    return DaysOff(first=first, names=names, **arrays)


def _before(flags: Flags) -> Flags:
    """What is so on the day before each day; nothing is before the first."""
    return np.concatenate(([False], flags[:-1]))


def _after(flags: Flags) -> Flags:
    """What is so on the day after each day; nothing is after the last."""
    return np.concatenate((flags[1:], [False]))
