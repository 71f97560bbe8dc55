"""What the usual weather means for the part of a visit that is outdoors."""

from dataclasses import dataclass
from decimal import Decimal
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from tripplan.documents.family.worth import Worth
from tripplan.planning.climate.climate import Climate, Numbers, temperature
from tripplan.planning.climate.days_of_year import YEAR_DAYS, Floats
from tripplan.planning.climate.feels_like import feels_like
from tripplan.values.money import minor_digits
from tripplan.values.units import fahrenheit

_COLD_AT, _COLD = (-20.0, 0.0, 15.0, 30.0, 50.0), (4.0, 2.0, 1.0, 0.5, 0.0)
_HEAT_AT, _HEAT = (80.0, 90.0, 100.0, 110.0), (0.0, 0.5, 1.0, 2.0)
"""How bad what it feels like is [°F], by the classes of `feels_like.Class`; one where it is very cold or very
hot. What each class counts: common practice, no source."""
SHARE = {"indoors": 0.0, "both": 0.5, "outdoors": 1.0}
"""Which part of a visit is outdoors, by what the card says [0-1]; half where it is both (common practice, no
source)."""
AGES_MONTHS, _PERCENT = (12, 36), (150, 125, 100)
"""Under these ages of the youngest, cold and heat weigh so much [months; %]: small children lose and gain
heat faster. How much: common practice, no source."""
_SAMPLES = 5
_COLDEST, _HOTTEST, _A_DEGREE = -60, 60, 2
_THOUSANDTHS, _RATE = 1000, 10**4


@dataclass(frozen=True)
class OutdoorLimits:
    """How cold and how hot it may feel for a visit outdoors.

    Attributes:
        below, above: [°C]; None for no limit.
    """

    below: float | None = None
    above: float | None = None


@dataclass(frozen=True, eq=False)
class OutdoorVisits:
    """The weather of some visits to one place, an array entry each.

    Attributes:
        low, high: usual temperature at the coldest and the warmest hour of the visit [°C].
        felt_low, felt_high: how these feel [°C].
        cold, heat, wet: time outdoors, weighed by how bad it is [thousandths of minutes].
        barred: whether it is colder or hotter than the parent allows.
    """

    low: Floats
    high: Floats
    felt_low: Floats
    felt_high: Floats
    cold: Numbers
    heat: Numbers
    wet: Numbers
    barred: NDArray[np.bool_]

    def coins(self, worth: Worth, percent: Numbers, currency: str) -> Numbers:
        """What being outdoors weighs [smallest coins].

        Args:
            worth: what the parent would give to be spared it.
            percent: how much cold and heat weigh for the youngest [%].
            currency: of the worth.
        """
        return (
            _coins(self.cold * percent // 100, worth.hour_in_the_cold, currency)
            + _coins(self.heat * percent // 100, worth.hour_in_the_heat, currency)
            + _coins(self.wet, worth.hour_in_the_wet, currency)
        )


@dataclass(frozen=True, eq=False)
class OutdoorYear:
    """What time outdoors is like over the year at one place.

    A nap in a stroller there counts like the rest of the visit.

    Attributes:
        climate: of the place.
        longitude: of the place, east positive [degrees].
        share: which part of a visit is outdoors [0-1]; above 0.
        limits: how cold and hot it may feel.
    """

    climate: Climate
    longitude: float
    share: float
    limits: OutdoorLimits

    def visits(self, number: Numbers, enter: Numbers, leave: Numbers) -> OutdoorVisits:
        """The weather of some visits.

        Args:
            number: of their days, see `Climate`.
            enter: when the party is let in, by the clock of Greenwich [min].
            leave: when it leaves, likewise [min].
        """
        climate = self.climate
        low, high, sunrise = climate.low[number], climate.high[number], climate.sunrise[number]
        middles = (np.arange(_SAMPLES)[:, None] + 0.5) / _SAMPLES
        hours = (enter + (leave - enter) * middles) / 60 + self.longitude / 15
        degrees = temperature(low, high, sunrise, hours)
        table, cold, heat = _tables()
        at = _index(degrees)
        felt = table[at, _index(np.broadcast_to(low, degrees.shape))]
        felt_at, minutes = _index(felt), leave - enter
        felt_low, felt_high = felt.min(axis=0), felt.max(axis=0)
        barred = np.zeros(number.shape, dtype=np.bool_)
        if self.share == SHARE["outdoors"]:
            if self.limits.below is not None:
                barred |= felt_low < self.limits.below
            if self.limits.above is not None:
                barred |= felt_high > self.limits.above
            if not climate.usual_known:
                barred &= number >= YEAR_DAYS

        def weighed(bad: Floats) -> Numbers:
            return np.rint(bad * self.share * minutes).astype(np.int64)

        return OutdoorVisits(
            low=degrees.min(axis=0),
            high=degrees.max(axis=0),
            felt_low=felt_low,
            felt_high=felt_high,
            cold=weighed(cold[felt_at].mean(axis=0)),
            heat=weighed(heat[felt_at].mean(axis=0)),
            wet=weighed(climate.wet[number] * _THOUSANDTHS),
            barred=barred,
        )


def how_bad(felt_low: float, felt_high: float) -> tuple[float, float]:
    """How bad cold and heat are by what they feel like [°C]: 1 where it is very cold or very hot [-]."""
    cold, heat = (
        np.interp(fahrenheit(felt_low), _COLD_AT, _COLD),
        np.interp(fahrenheit(felt_high), _HEAT_AT, _HEAT),
    )
    return float(cold), float(heat)


def percent_for(youngest_months: int) -> int:
    """How much cold and heat weigh with a youngest of an age [completed months], against the usual [%]."""
    return _PERCENT[sum(youngest_months >= age for age in AGES_MONTHS)]


def _coins(amount: Numbers, price: Decimal, currency: str) -> Numbers:
    """An amount at a price an hour, rounded half up [smallest coins]."""
    rate = int(price * _RATE) * 10 ** minor_digits(currency)
    whole = 60 * _THOUSANDTHS * _RATE
    coins: Numbers = (2 * amount * rate + whole) // (2 * whole)
    return coins


def _index(degrees: Floats) -> NDArray[np.intp]:
    """Where in the tables a temperature stands, to half a degree."""
    at: NDArray[np.intp] = np.rint((np.clip(degrees, _COLDEST, _HOTTEST) - _COLDEST) * _A_DEGREE).astype(
        np.intp
    )
    return at


@lru_cache(maxsize=1)
def _tables() -> tuple[Floats, Floats, Floats]:
    """How each temperature feels by the day's low [°C], and how bad each feeling is by cold and heat."""
    degrees = np.arange((_HOTTEST - _COLDEST) * _A_DEGREE + 1) / _A_DEGREE + _COLDEST
    felt = np.array([feels_like(one, _COLDEST) for one in degrees.tolist()])[:, None].repeat(
        degrees.size, axis=1
    )
    for n in np.flatnonzero(degrees >= 26).tolist():
        felt[n] = [feels_like(float(degrees[n]), low) for low in degrees.tolist()]
    in_fahrenheit = degrees * 1.8 + 32
    return (
        felt,
        np.interp(in_fahrenheit, _COLD_AT, _COLD) * _THOUSANDTHS,
        np.interp(in_fahrenheit, _HEAT_AT, _HEAT) * _THOUSANDTHS,
    )
