"""What the usual weather means for the part of a visit that is outdoors."""

from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from tripplan.documents.family.worth import Worth
from tripplan.planning.climate.climate import Climate, Numbers, temperature
from tripplan.planning.climate.days_of_year import YEAR_DAYS, Floats
from tripplan.planning.climate.feels_like import feels_like
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
STEP_MINUTES = 30
"""So long the weather stays as it is in the middle of each such part of a day [min]."""
_STEPS = 24 * 60 // STEP_MINUTES
_COLDEST, _HOTTEST, _A_DEGREE = -60, 60, 2


@dataclass(frozen=True)
class OutdoorLimits:
    """How cold and how hot it may feel for a visit outdoors.

    Attributes:
        below, above: [°C]; None for no limit.
    """

    below: float | None = None
    above: float | None = None


@dataclass(frozen=True, eq=False)
class OutdoorSteps:
    """Being outdoors in each half hour of some days, from midnight on; shape (days, half hours).

    Attributes:
        degrees: usual temperature [°C].
        felt: how it feels [°C].
        cold, heat: how bad that is, 1 where it is very cold or very hot [-].
        wet: chance of rain or snow; shape (days, 1) [0-1].
    """

    degrees: Floats
    felt: Floats
    cold: Floats
    heat: Floats
    wet: Floats

    def weight(self, worth: Worth, percent: Numbers) -> Floats:
        """What a minute outdoors weighs in each half hour [main unit of the currency].

        Args:
            worth: what the parent would give to be spared it.
            percent: how much cold and heat weigh for the youngest, one entry a day [%].
        """
        cold, heat, wet = (
            float(price) / 60
            for price in (worth.hour_in_the_cold, worth.hour_in_the_heat, worth.hour_in_the_wet)
        )
        weight: Floats = (self.cold * cold + self.heat * heat) * (percent[:, None] / 100) + self.wet * wet
        return weight


@dataclass(frozen=True, eq=False)
class OutdoorYear:
    """What time outdoors is like over the year at one place.

    A nap in a stroller there counts like the rest of the visit.

    Attributes:
        climate: of the place.
        longitude: of the place, east positive [degrees].
        share: which part of a visit is outdoors [0-1].
        limits: how cold and hot it may feel.
    """

    climate: Climate
    longitude: float
    share: float
    limits: OutdoorLimits

    def steps(self, number: Numbers, begins: Numbers) -> OutdoorSteps:
        """Being outdoors in each half hour of some days.

        Args:
            number: of the days, see `Climate`.
            begins: when they begin, by the clock of Greenwich [min].
        """
        climate = self.climate
        low, high, sunrise = (each[number, None] for each in (climate.low, climate.high, climate.sunrise))
        middles = (np.arange(_STEPS) + 0.5) * STEP_MINUTES
        degrees = temperature(low, high, sunrise, (begins[:, None] + middles) / 60 + self.longitude / 15)
        table, cold, heat = _tables()
        felt = table[_index(degrees), _index(low)]
        felt_at = _index(felt)
        known = self._known(number)
        return OutdoorSteps(
            degrees, felt, cold[felt_at] * known, heat[felt_at] * known, climate.wet[number, None]
        )

    def _known(self, number: Numbers) -> NDArray[np.bool_]:
        """Which days anything is known of; shape (days, 1)."""
        known: NDArray[np.bool_] = (number >= YEAR_DAYS)[:, None] | self.climate.usual_known
        return known

    def bars(self, number: Numbers, steps: OutdoorSteps) -> NDArray[np.bool_]:
        """In which half hours it is colder or hotter than the parent allows; of the shape of the steps."""
        barred = np.zeros(steps.felt.shape, dtype=np.bool_)
        if self.share == SHARE["outdoors"]:
            if self.limits.below is not None:
                barred |= steps.felt < self.limits.below
            if self.limits.above is not None:
                barred |= steps.felt > self.limits.above
        return barred & self._known(number)


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
        np.interp(in_fahrenheit, _COLD_AT, _COLD),
        np.interp(in_fahrenheit, _HEAT_AT, _HEAT),
    )
