"""Which days of a row are off work for most people, as arrays that all places of a region share."""

from collections.abc import Mapping, Set
from dataclasses import dataclass
from datetime import date, timedelta
from functools import cached_property, lru_cache
from itertools import pairwise
from typing import Any, TypeVar

import numpy as np
from numpy.typing import NDArray

from tripplan.planning.holidays.public_holidays import is_observed

Flags = NDArray[np.bool_]
_Array = TypeVar("_Array", bound=NDArray[Any])

_SATURDAY = 5
_MARGIN = 3


@dataclass(frozen=True, eq=False)
class DaysOff:
    """Some days in a row, one array entry a day.

    Attributes:
        first: the first of them.
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

    @cached_property
    def working(self) -> Flags:
        """Weekdays that are no public holiday, those in lieu and bridge days among them."""
        return fixed(~(self.public_holiday | self.weekend))

    @cached_property
    def years(self) -> Mapping[int, slice]:
        """Which of the entries belong to each calendar year."""
        last = self.first + timedelta(days=len(self) - 1)
        begins = [(date(year, 1, 1) - self.first).days for year in range(self.first.year, last.year + 2)]
        return {
            self.first.year + n: slice(max(begin, 0), end) for n, (begin, end) in enumerate(pairwise(begins))
        }


def days_off(
    first: date, last: date, public_holidays: Mapping[date, str], kept: Set[date] | None = None
) -> DaysOff:
    """The days off among all days from first to last.

    Args:
        first: the first date.
        last: the last date, which counts.
        public_holidays: names by date; long weekends across either end need those of the days beyond.
        kept: what PH means in a card's rules; all of these when left out.

    Returns:
        The same arrays, not to be written to, for every place with the same public holidays.
    """
    means_ph = frozenset(public_holidays if kept is None else kept)
    return _days_off(first, last, tuple(public_holidays.items()), means_ph)


@lru_cache(maxsize=256)
def _days_off(
    first: date, last: date, public_holidays: tuple[tuple[date, str], ...], kept: frozenset[date]
) -> DaysOff:
    named = dict(public_holidays)
    # A bridge day shows by the days beside it, and a row of three days off by two more.
    around = [date.fromordinal(n) for n in range(first.toordinal() - _MARGIN, last.toordinal() + _MARGIN + 1)]
    asked = slice(_MARGIN, len(around) - _MARGIN)
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
    days = around[asked]
    names = tuple(named.get(day, "") for day in days)
    weekday = weekday_around[asked]
    celebrated = np.array([bool(name) and not is_observed(name) for name in names])
    weekend = (weekday >= _SATURDAY) & ~celebrated
    arrays = {
        "weekday": weekday,
        "public_holiday": celebrated,
        "weekend": weekend,
        "long_weekend": weekend & row_of_three[asked],
        "in_lieu": holiday[asked] & ~celebrated & ~weekend,
        "bridge": bridge[asked],
        "kept": np.array([day in kept for day in days]),
    }
    return DaysOff(first=first, names=names, **{name: fixed(array) for name, array in arrays.items()})


def fixed(array: _Array) -> _Array:
    """The array, shared between places, so that nobody can write to it."""
    array.setflags(write=False)
    return array


def _before(flags: Flags) -> Flags:
    """What is so on the day before each day; nothing is before the first."""
    return np.concatenate(([False], flags[:-1]))


def _after(flags: Flags) -> Flags:
    """What is so on the day after each day; nothing is after the last."""
    return np.concatenate((flags[1:], [False]))
