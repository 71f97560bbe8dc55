"""What an outing costs as far as its hours decide it: when the party comes and leaves, and where it eats."""

from bisect import bisect_left, bisect_right
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import TypeVar

import numpy as np
from numpy.typing import NDArray

from tripplan.planning.day.times.minutes import Minutes

_Figure = TypeVar("_Figure", np.int64, np.bool_)

EVER = -(10**6)
"""Earlier than any minute of the day [min]."""

Coins = tuple[int, int]
"""What an outing costs with lunch at home, and with lunch out [smallest coins]."""


@dataclass(frozen=True)
class PriceHours:
    """The hours of a day within which prices are the same, whoever comes, stays and leaves within them.

    Attributes:
        begins: from when on each price counts by when the party is let in, the first from `EVER` on [min].
        leave_by: up to and with which leaving times prices count; beyond the last they go on [min].
        stays: up to and with which lengths of stay they count, likewise [min].
    """

    begins: tuple[int, ...] = (EVER,)
    leave_by: tuple[int, ...] = ()
    stays: tuple[int, ...] = ()

    @property
    def shape(self) -> tuple[int, int, int]:
        """How many different hours of entry, hours of leaving and lengths of stay there are."""
        return len(self.begins), len(self.leave_by) + 1, len(self.stays) + 1

    def number(self, enter: int, leave: int) -> int:
        """Which of the prices counts for a visit from one minute to another."""
        _, leaving, staying = self.shape
        entered, left = bisect_right(self.begins, enter) - 1, bisect_left(self.leave_by, leave)
        return (entered * leaving + left) * staying + bisect_left(self.stays, leave - enter)

    def later(self, minutes: int) -> "PriceHours":
        """The same so many minutes later."""
        begins = (EVER, *(begin + minutes for begin in self.begins[1:]))
        return replace(self, begins=begins, leave_by=tuple(leave + minutes for leave in self.leave_by))


@dataclass(frozen=True)
class HourlyMoney:
    """What an outing likely costs in all, by the hour.

    Attributes:
        hours: which hours have a price of their own.
        coins: what the outing costs in each of them, by `PriceHours.number`; None where nobody lets the party
            in, or nobody could be there at such hours.
    """

    hours: PriceHours
    coins: tuple[Coins | None, ...]

    @property
    def lets_nobody_in(self) -> bool:
        """Whether the party is let in at no hour."""
        return not any(self.coins)

    def lets_in(self, enter: int, leave: int) -> bool:
        """Whether the party is let in to stay from one minute to another."""
        return self.coins[self.hours.number(enter, leave)] is not None

    def entry_paid(self) -> "HourlyMoney":
        """The same where no hour is better than another for its price, as all but lunch is paid already."""
        return HourlyMoney(PriceHours(), (next((coins for coins in self.coins if coins), None),))

    def compared(self) -> "HourlyMoney":
        """The same with the least amount taken off all: what only tells hours apart."""
        least = min((min(coins) for coins in self.coins if coins is not None), default=0)
        taken = (coins and (coins[0] - least, coins[1] - least) for coins in self.coins)
        return HourlyMoney(self.hours, tuple(taken))

    def later(self, minutes: int) -> "HourlyMoney":
        """The same so many minutes later."""
        return HourlyMoney(self.hours.later(minutes), self.coins)


@dataclass(frozen=True, eq=False)
class MoneyOfDays:
    """The same for some days with as many different hours each, ready for arrays of choices.

    Attributes:
        begins, leave_by, stays: as in `PriceHours`, of shape (days, hours).
        coins: with lunch at home and out along the last axis; shape (days, prices, 2).
        bars: where nobody lets the party in; shape (days, prices).
    """

    begins: Minutes
    leave_by: Minutes
    stays: Minutes
    coins: NDArray[np.int64]
    bars: NDArray[np.bool_]

    @classmethod
    def of(cls, days: Sequence[HourlyMoney]) -> "MoneyOfDays":
        """Those of some days; an hour at which nobody is let in counts as costing nothing."""
        hours = [money.hours for money in days]
        coins = [[(0, 0) if each is None else each for each in money.coins] for money in days]
        return cls(
            np.array([each.begins for each in hours], dtype=np.int64),
            np.array([each.leave_by for each in hours], dtype=np.int64),
            np.array([each.stays for each in hours], dtype=np.int64),
            np.array(coins, dtype=np.int64),
            np.array([[each is None for each in money.coins] for money in days]),
        )

    def number(self, enter: Minutes, leave: Minutes) -> NDArray[np.intp] | None:
        """Which price counts for each choice, of a shape that fits these; None where each day has but one."""
        if self.coins.shape[1] == 1:
            return None
        number: NDArray[np.intp] = np.zeros((1, 1, 1), dtype=np.intp)
        for cut in self.begins.T[1:]:
            number = number + (enter >= cut[:, None, None])
        number = number * (self.leave_by.shape[1] + 1)
        for cut in self.leave_by.T:
            number = number + (leave > cut[:, None, None])
        number = number * (self.stays.shape[1] + 1)
        if self.stays.size:
            stay = leave - enter
            for cut in self.stays.T:
                number = number + (stay > cut[:, None, None])
        return number

    def spent(self, number: NDArray[np.intp] | None) -> tuple[NDArray[np.int64], NDArray[np.int64]]:
        """What each choice costs with lunch at home, and how much more with lunch out, by its price."""
        at_home, out = self.coins[:, :, 0], self.coins[:, :, 1]
        return _of_each(at_home, number), _of_each(out - at_home, number)

    def lets_in(self, enter: Minutes, leave: Minutes) -> NDArray[np.bool_]:
        """At which choices the party is let in."""
        return ~_of_each(self.bars, self.number(enter, leave))


def _of_each(figures: NDArray[_Figure], number: NDArray[np.intp] | None) -> NDArray[_Figure]:
    if number is None:
        return figures[:, :1, None]
    of_each: NDArray[_Figure] = figures[np.arange(len(figures))[:, None, None], number]
    return of_each
