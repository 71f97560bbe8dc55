"""What the days of a year are usually like at one place."""

import math
from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from functools import cached_property, lru_cache

import numpy as np
from numpy.typing import NDArray

from tripplan.documents.places.forecast import ForecastDay
from tripplan.planning.climate.days_of_year import (
    MONTH_DAYS,
    YEAR_DAYS,
    Floats,
    by_day,
    day_of_year,
    ten_days,
)
from tripplan.values.ranges import Source

Numbers = NDArray[np.int64]

NO_SNOW_ABOVE = 4.0
"""On a day that stays warmer no snow is expected unless somebody says so [°C]; common practice, no source."""
_WARMEST_HOUR = 14.0
"""When it is warmest, by the sun [h]; de Wit, Simulation of assimilation, respiration and transpiration of
crops, 1978; from memory."""
_TILT = math.radians(23.44)
"""The Earth's axis against its orbit [rad]; from memory."""
_SOLSTICE = 356
"""Number of 21 December in a leap year, from 1 [-]."""
_RISING = math.radians(-0.833)
"""The sun's middle at sunrise: its upper edge on the horizon under mean refraction [rad]."""


@dataclass(frozen=True)
class UsualDay:
    """What one day of the year is usually like, or what it is forecast to be.

    Attributes:
        low, high: mean of the day's lowest and highest temperature over the years [°C].
        wet: share of the years in which it rains or snows that day [0-1].
        snow: share of the years in which snow falls that day [0-1]; None where nobody counted.
        sunrise: by the sun, in hours before its noon; 0 where it does not rise, 12 where it does not set [h].
        forecast: what has taken the place of the usual; None where nothing has.
    """

    low: float
    high: float
    wet: float
    snow: float | None
    sunrise: float
    forecast: ForecastDay | None = None

    def temperature(self, hour: float) -> float:
        """The usual temperature at an hour by the sun, see `temperature` [°C]."""
        return float(temperature(*(np.array(one) for one in (self.low, self.high, self.sunrise, hour))))


@dataclass(frozen=True, eq=False)
class UsualMonths:
    """What twelve months are usually like at one place.

    Attributes:
        high, low: mean daily extremes [°C].
        wet: days with rain or snow [days a month].
        snow: days with snowfall [days a month]; None where nobody counted.
        source: where they come from.
    """

    high: Floats
    low: Floats
    wet: Floats
    snow: Floats | None
    source: Source


@dataclass(frozen=True, eq=False)
class Climate:
    """What the days of a year are usually like at one place, and what single days are forecast to be.

    Days have numbers: 0 to 365 for the days of a year, and from 366 on for the dates of `forecasts`.

    Attributes:
        latitude: of the place, north positive [degrees].
        high, low: mean daily extremes, one for each number [°C].
        wet: chance of a day with rain or snow, likewise [0-1].
        snow: chance of a day with snowfall, for each of 366 days; None where nobody counted [0-1].
        source: where the usual comes from.
        forecasts: what is told of single dates.
        usual_known: whether the days of a year are known; else mild and dry days stand for them.
    """

    latitude: float
    high: Floats
    low: Floats
    wet: Floats
    snow: Floats | None
    source: Source
    forecasts: Mapping[date, ForecastDay] = field(default_factory=dict)
    usual_known: bool = True

    @classmethod
    def of_months(cls, latitude: float, months: UsualMonths) -> "Climate":
        """From twelve months at a latitude [degrees]."""
        snow = None if months.snow is None else _chances(months.snow)
        return cls(
            latitude, by_day() @ months.high, by_day() @ months.low, _chances(months.wet), snow, months.source
        )

    @cached_property
    def sunrise(self) -> Floats:
        """Half the length of the day of each number, see `half_days` [h]."""
        half = half_days(self.latitude)
        return np.concatenate([half, half[[day_of_year(day) for day in self.forecasts]]])

    def number(self, day: date) -> int:
        """The number of one day."""
        told = list(self.forecasts)
        return YEAR_DAYS + told.index(day) if day in self.forecasts else day_of_year(day)

    def numbers(self, of_year: Numbers, ordinals: Numbers) -> Numbers:
        """The numbers whose weather counts on some days: that of the middle of each ten days, or a forecast.

        Args:
            of_year: their numbers by `day_of_year`.
            ordinals: as days since the beginning of the calendar.
        """
        found: Numbers = ten_days()[of_year]
        for day in self.forecasts:
            found = np.where(ordinals == day.toordinal(), self.number(day), found)
        return found

    def knows(self, day: date) -> bool:
        """Whether anything is known of a day."""
        return self.usual_known or day in self.forecasts

    def on(self, day: date) -> UsualDay:
        """What a day is usually like."""
        number, forecast = self.number(day), self.forecasts.get(day)
        snow = None if self.snow is None else float(self.snow[day_of_year(day)])
        if forecast is not None:
            told = 0.0 if self.low[number] > NO_SNOW_ABOVE else snow
            snow = told if forecast.snow is None else forecast.snow
        return UsualDay(
            low=float(self.low[number]),
            high=float(self.high[number]),
            wet=float(self.wet[number]),
            snow=snow,
            sunrise=float(self.sunrise[number]),
            forecast=forecast,
        )


def temperature(low: Floats, high: Floats, sunrise: Floats, hour: Floats) -> Floats:
    """The usual temperature at an hour by the sun [°C]; arrays that fit each other.

    Two half waves: from the low at sunrise to the high at 14, and back to the low of the next sunrise.

    Args:
        low: of the day [°C].
        high: of the day [°C].
        sunrise: in hours before the sun's highest stand [h].
        hour: by the sun, 12 being its highest stand [h].

    Source: de Wit, 1978, as above; from memory.
    """
    rises = np.minimum(12 - sunrise, _WARMEST_HOUR - 1)
    since, warming = (hour - rises) % 24, _WARMEST_HOUR - rises
    wave = np.where(since <= warming, since / warming - 1, (since - warming) / (24 - warming))
    degrees: Floats = low + (high - low) * (1 + np.cos(np.pi * wave)) / 2
    return degrees


def _chances(counted: Floats) -> Floats:
    """Days a month as a chance for each day of the year [0-1]."""
    share: Floats = np.clip(by_day() @ (counted / np.array(MONTH_DAYS)), 0, 1)
    return share


def half_days(latitude: float) -> Floats:
    """Half the length of each of 366 days: from sunrise to the sun's highest stand [h].

    Args:
        latitude: north positive [degrees].

    Returns:
        0 where the sun does not rise, 12 where it does not set; within some five minutes of an almanac.
    """
    return _half_days(round(latitude, 1))


@lru_cache(maxsize=256)
def _half_days(latitude: float) -> Floats:
    angle = 2 * math.pi * (np.arange(YEAR_DAYS) + 1 - _SOLSTICE) / YEAR_DAYS
    sine = -math.sin(_TILT) * np.cos(angle)
    here = math.radians(latitude)
    # At a pole the cosine is as good as zero, and its sign tells day from night.
    down = max(math.cos(here), 1e-9) * np.sqrt(1 - sine**2)
    cosine = (math.sin(_RISING) - math.sin(here) * sine) / down
    half: Floats = np.degrees(np.arccos(np.clip(cosine, -1, 1))) / 15
    half.flags.writeable = False
    return half
