"""The nuisances of a day, counted for every choice and weighed in the parent's own money.

Everything is whole numbers, so that the search is exact: minutes, tenths of a minute where it is an
average, thousandths where it is a chance.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import timedelta
from decimal import Decimal
from enum import Enum
from functools import lru_cache
from math import gcd
from typing import Any

import numpy as np

from tripplan.documents.family.worth import Worth
from tripplan.language.sentences import Fact, fact
from tripplan.planning.day.times.hourly_weather import PARTS
from tripplan.planning.day.times.limits import LONGEST_DAY
from tripplan.planning.day.times.minutes import NARROW, Minutes, chosen
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


WEATHER_PART = UNITS // PARTS
"""How many of `UNITS` one of the parts is in which being outdoors is weighed."""
_FINEST = 50
"""Whole minutes, tenths of one and thousandths of an hour all weigh whole times this part of a minute [-]."""
_MOST_MINUTES = 4 * LONGEST_DAY
"""More than any nuisance of a day can last, the lost naps of all children together included [min]."""
_ROOM = 2**29
"""What weighs less can be added to this and to as much again in 32 bits."""


@dataclass(frozen=True)
class Scale:
    """How weights are counted: in as large a unit as leaves them whole, and in as few bits as hold them.

    Attributes:
        unit: how many of `UNITS` one is.
        kind: the integers that hold all that a possible choice weighs; of an impossible one they may not.
    """

    unit: int = 1
    kind: type[np.signedinteger[Any]] = np.int64

    @classmethod
    def of(cls, worth: Worth, coin: int, coins: Iterable[int], weather: int = 0) -> "Scale":
        """One for nuisances at some prices, and money.

        Args:
            worth: the prices.
            coin: how many of `UNITS` the smallest coin is.
            coins: all amounts of money that may come up [smallest coins].
            weather: the most that being outdoors may weigh [`hourly_weather.PARTS`].
        """
        rates = [rate(price) for _, price in worth if isinstance(price, Decimal)]
        unit = gcd(
            coin,
            WEATHER_PART if weather else 0,
            *(1 if each % _FINEST else each // _FINEST for each in rates),
        )
        most = sum(rates) * _MOST_MINUTES + coin * max(map(abs, coins), default=0)
        most += WEATHER_PART * weather
        return cls(unit, NARROW if most < _ROOM * unit else np.int64)

    @property
    def cannot_be(self) -> int:
        """More than any possible choice weighs."""
        return _ROOM if self.kind is NARROW else 2**48


AS_IT_IS = Scale()
"""Weights as they are."""


class Measure(Enum):
    """What a nuisance is counted in; the value is how many of it the price is for."""

    MINUTES = 60
    """Priced by the hour."""
    EXPECTED = 60 * TENTHS
    """Tenths of a minute on average, priced by the hour."""
    CHANCE = THOUSANDTHS
    """Priced for the whole."""
    WEIGHED = 0
    """What it weighs, already by the scale."""


@dataclass(frozen=True, eq=False)
class Nuisance:
    """One nuisance, for every choice.

    Attributes:
        name: which.
        amount: how much of it there is; of any shape that fits the choices.
        price: what the parent would give to be spared an hour of it, or the whole.
        measure: what it is counted in.
    """

    name: Fact
    amount: Minutes
    price: Decimal
    measure: Measure = Measure.MINUTES

    def weight(self, scale: Scale = AS_IT_IS) -> Minutes:
        """What it weighs for every choice, by a scale that was made for its price."""
        return self._weight(self.amount, scale)

    def _weight(self, amount: Minutes, scale: Scale) -> Minutes:
        if self.measure is Measure.WEIGHED:
            return amount
        by_minute = rate(self.price)
        if self.measure is Measure.MINUTES:
            weight: Minutes = np.multiply(amount, by_minute // scale.unit, dtype=scale.kind)
            return weight
        fine = np.multiply(amount, 60 * by_minute, dtype=np.int64)
        by_scale: Minutes = (fine // (self.measure.value * scale.unit)).astype(scale.kind)
        return by_scale

    def part(self, at: tuple[int, int, int], currency: str, scale: Scale) -> NuisanceCost:
        """What it comes to in one choice, of which day, departure and leaving time are given."""
        amount = chosen(self.amount, at)
        units = int(self._weight(np.array(amount), scale)) * scale.unit
        minutes = None if self.measure in (Measure.CHANCE, Measure.WEIGHED) else amount
        if self.measure is Measure.EXPECTED:
            minutes = round(amount / TENTHS)
        return NuisanceCost(self.name, self._said(amount), minutes, Money(Decimal(units) / UNITS, currency))

    def _said(self, amount: int) -> Fact:
        if self.measure is Measure.MINUTES:
            return fact("plan-minutes-of", what=self.name, minutes=timedelta(minutes=amount))
        if self.measure is Measure.EXPECTED:
            return fact("plan-average-of", what=self.name, minutes=amount / TENTHS)
        if self.measure is Measure.WEIGHED or amount == THOUSANDTHS:
            return self.name
        return fact("plan-chance-of", what=self.name, chance=amount / THOUSANDTHS)
