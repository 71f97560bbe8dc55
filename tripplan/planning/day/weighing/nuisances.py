"""The nuisances of a day, counted for every choice and weighed in the parent's own money.

Everything is whole numbers, so that the search is exact: minutes, tenths of a minute where it is an
average, thousandths where it is a chance.
"""

from dataclasses import dataclass
from decimal import Decimal
from enum import Enum
from functools import lru_cache

import numpy as np

from tripplan.language import wording
from tripplan.planning.day.times.minutes import Minutes, chosen
from tripplan.planning.day.times.shapes import NuisanceCost
from tripplan.planning.day.weighing.lateness import TENTHS, THOUSANDTHS
from tripplan.values.money import Money

_RATE_DECIMALS = 4
UNITS = 60 * 10**_RATE_DECIMALS
"""Felt cost is counted in this many parts of the currency's main unit, so that a rate per hour with
four decimals weighs a whole number for every minute."""


@lru_cache(maxsize=256)
def rate(price: Decimal) -> int:
    """What a minute weighs, by the price of an hour, in parts of the currency's main unit."""
    return int(price.scaleb(_RATE_DECIMALS).to_integral_value())


class Measure(Enum):
    """What a nuisance is counted in; the value is how many of it the price is for."""

    MINUTES = 60
    """Priced by the hour."""
    EXPECTED = 60 * TENTHS
    """Tenths of a minute on average, priced by the hour."""
    CHANCE = THOUSANDTHS
    """Priced for the whole."""
    WEIGHED = 0
    """What it weighs, already in parts of the currency's main unit."""


@dataclass(frozen=True, eq=False)
class Nuisance:
    """One nuisance, for every choice.

    Attributes:
        name: as part of a sentence.
        amount: how much of it there is; of any shape that fits the choices.
        price: what the parent would give to be spared an hour of it, or the whole.
        measure: what it is counted in.
    """

    name: str
    amount: Minutes
    price: Decimal
    measure: Measure = Measure.MINUTES

    def weight(self, finer: int = 1) -> Minutes:
        """What it weighs for every choice, in parts of the currency's main unit.

        Args:
            finer: count in so many times as small a unit.
        """
        return self._weight(self.amount, finer)

    def _weight(self, amount: Minutes, finer: int = 1) -> Minutes:
        by_minute = rate(self.price)
        if self.measure is Measure.MINUTES:
            weight: Minutes = np.multiply(amount, by_minute * finer, dtype=np.int64)
        elif self.measure is Measure.WEIGHED:
            weight = np.multiply(amount, finer, dtype=np.int64)
        else:
            weight = np.multiply(amount, 60 * by_minute, dtype=np.int64) // self.measure.value * finer
        return weight

    def part(self, at: tuple[int, int, int], currency: str) -> NuisanceCost:
        """What it comes to in one choice, of which day, departure and leaving time are given."""
        amount = chosen(self.amount, at)
        units = int(self._weight(np.array(amount)))
        minutes = None if self.measure is Measure.CHANCE else amount
        if self.measure is Measure.EXPECTED:
            minutes = round(amount / TENTHS)
        return NuisanceCost(self.name, self._said(amount), minutes, Money(Decimal(units) / UNITS, currency))

    def _said(self, amount: int) -> str:
        if self.measure is Measure.MINUTES:
            return f"{wording.minutes(amount)} of {self.name}"
        if self.measure is Measure.EXPECTED:
            return f"on average {amount / TENTHS:.1f} min of {self.name}"
        if amount == THOUSANDTHS:
            return self.name
        return f"the chance of {self.name} ({100 * amount / THOUSANDTHS:.1f} %)"
