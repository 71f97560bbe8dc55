"""How cold or hot it feels: wind chill and heat index of the United States' National Weather Service."""

import math
from enum import Enum

from tripplan.values.units import celsius, fahrenheit

BREEZE_MPH = 5.0
"""A light breeze is assumed at any time [mph]; common practice, no source."""
_CHILLS_UP_TO, _CHILLS_FROM_MPH = 50.0, 3.0
_HEATS_FROM = 80.0


class Class(Enum):
    """How cold or hot it feels, each from a wind chill down or a heat index up [°F].

    Source: Child Care Weather Watch, Iowa Department of Public Health, 2009, as child care offices hand it
    out: a wind chill of 30 is chilly and generally uncomfortable, below 15 very cold, below 0 bitter cold
    with significant risk of frostbite; a heat index of 90 begins to feel uncomfortable, 100 is uncomfortable
    and may be hazardous, 110 is considered dangerous.
    """

    BITTER = "bitter cold"
    VERY_COLD = "very cold"
    COLD = "cold"
    FINE = "fine"
    HOT = "hot"
    VERY_HOT = "very hot"
    DANGEROUS = "dangerously hot"


_COLD = ((0.0, Class.BITTER), (15.0, Class.VERY_COLD), (30.0, Class.COLD))
_HOT = ((110.0, Class.DANGEROUS), (100.0, Class.VERY_HOT), (90.0, Class.HOT))


def wind_chill(degrees: float, mph: float = BREEZE_MPH) -> float:
    """What still air would feel as cold [°F]; the temperature itself where the formula does not hold.

    Args:
        degrees: temperature [°F].
        mph: wind at 33 ft [mph].

    Source: National Weather Service, wind chill chart of November 2001; from memory.
    """
    if degrees > _CHILLS_UP_TO or mph <= _CHILLS_FROM_MPH:
        return degrees
    power: float = mph**0.16
    return min(degrees, 35.74 + 0.6215 * degrees - 35.75 * power + 0.4275 * degrees * power)


def heat_index(degrees: float, humidity: float) -> float:
    """What dry air would feel as hot [°F]; the temperature itself where the formula does not hold.

    Args:
        degrees: temperature [°F].
        humidity: relative [%].

    Source: L. P. Rothfusz, The Heat Index Equation, NWS Technical Attachment SR 90-23, 1990, with the
    adjustments of the NWS Weather Prediction Center; from memory.
    """
    if degrees < _HEATS_FROM:
        return degrees
    t, r = degrees, humidity
    simple = (t + 61 + (t - 68) * 1.2 + r * 0.094) / 2
    if (simple + t) / 2 < _HEATS_FROM:
        return simple
    index = (
        -42.379
        + 2.04901523 * t
        + 10.14333127 * r
        - 0.22475541 * t * r
        - 6.83783e-3 * t * t
        - 5.481717e-2 * r * r
        + 1.22874e-3 * t * t * r
        + 8.5282e-4 * t * r * r
        - 1.99e-6 * t * t * r * r
    )
    if r < 13 and t <= 112:
        index -= (13 - r) / 4 * math.sqrt((17 - abs(t - 95)) / 17)
    elif r > 85 and t <= 87:
        index += (r - 85) / 10 * (87 - t) / 5
    return index


def humidity(degrees: float, dew_point: float) -> float:
    """Relative humidity [%] of air at a temperature with a dew point [°C], by Magnus' formula.

    Source: O. A. Alduchov and R. E. Eskridge, 1996; from memory.
    """

    def pressure(at: float) -> float:
        return math.exp(17.625 * at / (243.04 + at))

    return min(100.0, 100 * pressure(dew_point) / pressure(degrees))


def feels_like(degrees: float, low: float) -> float:
    """How a temperature feels in a light breeze [°C].

    Args:
        degrees: temperature [°C].
        low: of the day, taken for its dew point [°C]; air is about full of water in the morning. In dry
            climates the dew point lies lower and the heat feels less. Common practice, no source.
    """
    temperature = fahrenheit(degrees)
    if temperature < _HEATS_FROM:
        return celsius(wind_chill(temperature))
    return celsius(heat_index(temperature, humidity(degrees, low)))


def class_of(felt: float) -> Class:
    """The class of what a temperature feels like [°C]."""
    degrees = fahrenheit(felt)
    for below, cold in _COLD:
        if degrees < below:
            return cold
    for above, hot in _HOT:
        if degrees >= above:
            return hot
    return Class.FINE
