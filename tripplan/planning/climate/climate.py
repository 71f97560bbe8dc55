"""What the days of a year are usually like at one place."""

import math
from dataclasses import dataclass
from datetime import date

import numpy as np

from tripplan.planning.climate.days_of_year import MONTH_DAYS, YEAR_DAYS, Floats, by_day
from tripplan.values.ranges import Source

_LEAP_YEAR = 2000
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
    """What one day of the year is usually like.

    Attributes:
        low, high: mean of the day's lowest and highest temperature over the years [°C].
        wet: share of the years in which it rains or snows that day [0-1].
        snow: share of the years in which snow falls that day [0-1]; None where nobody counted.
        sunrise: by the sun, in hours before its noon; 0 where it does not rise, 12 where it does not set [h].
    """

    low: float
    high: float
    wet: float
    snow: float | None
    sunrise: float

    def temperature(self, hour: float) -> float:
        """The usual temperature at an hour by the sun, 12 being its highest stand [°C].

        Two half waves: from the low at sunrise to the high at 14, and back to the low of the next sunrise.
        Source: de Wit, 1978, as above; from memory.
        """
        rises = min(12 - self.sunrise, _WARMEST_HOUR - 1)
        since = (hour - rises) % 24
        warming = _WARMEST_HOUR - rises
        if since <= warming:
            share = (1 - math.cos(math.pi * since / warming)) / 2
        else:
            share = (1 + math.cos(math.pi * (since - warming) / (24 - warming))) / 2
        return self.low + (self.high - self.low) * share


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
    """What the days of a year are usually like at one place.

    Attributes:
        latitude: of the place, north positive [degrees].
        high, low: mean daily extremes, one for each of 366 days [°C].
        wet: chance of a day with rain or snow, likewise [0-1].
        snow: chance of a day with snowfall; None where nobody counted [0-1].
        source: where it comes from.
    """

    latitude: float
    high: Floats
    low: Floats
    wet: Floats
    snow: Floats | None
    source: Source

    @classmethod
    def of_months(cls, latitude: float, months: UsualMonths) -> "Climate":
        """From twelve months at a latitude [degrees]."""
        snow = None if months.snow is None else _chances(months.snow)
        return cls(
            latitude, by_day() @ months.high, by_day() @ months.low, _chances(months.wet), snow, months.source
        )

    def on(self, day: date) -> UsualDay:
        """What a day is usually like."""
        number = day_of_year(day)
        return UsualDay(
            low=float(self.low[number]),
            high=float(self.high[number]),
            wet=float(self.wet[number]),
            snow=None if self.snow is None else float(self.snow[number]),
            sunrise=half_day(self.latitude, number),
        )


def _chances(counted: Floats) -> Floats:
    """Days a month as a chance for each day of the year [0-1]."""
    share: Floats = np.clip(by_day() @ (counted / np.array(MONTH_DAYS)), 0, 1)
    return share


def day_of_year(day: date) -> int:
    """The number of a date among 366, from 0; 1 March is 60 in every year."""
    return date(_LEAP_YEAR, day.month, day.day).timetuple().tm_yday - 1


def half_day(latitude: float, number: int) -> float:
    """Half the length of a day: from sunrise to the sun's highest stand [h].

    Args:
        latitude: north positive [degrees].
        number: of the day among 366, from 0.

    Returns:
        0 where the sun does not rise, 12 where it does not set; within some five minutes of an almanac.
    """
    angle = 2 * math.pi * (number + 1 - _SOLSTICE) / YEAR_DAYS
    declination = math.asin(-math.sin(_TILT) * math.cos(angle))
    here = math.radians(latitude)
    down = math.cos(here) * math.cos(declination)
    if abs(down) < 1e-9:
        return 12.0 if here * declination > 0 else 0.0
    cosine = (math.sin(_RISING) - math.sin(here) * math.sin(declination)) / down
    return math.degrees(math.acos(min(1.0, max(-1.0, cosine)))) / 15
