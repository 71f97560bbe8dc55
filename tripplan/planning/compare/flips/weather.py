"""Whether other weather changes which outing is the better day out."""

from collections.abc import Iterator, Mapping
from datetime import date
from math import floor

from tripplan.language.sentences import Fact, fact
from tripplan.planning.climate.climate import NO_SNOW_ABOVE
from tripplan.planning.climate.forecasts import other_weather
from tripplan.planning.climate.stations import BETWEEN_YEARS
from tripplan.planning.compare.flips.comparison import Comparison
from tripplan.planning.compare.flips.flip import Flip
from tripplan.planning.outing.weather.visit_weather import weather_in_short
from tripplan.values.units import celsius

NINE_IN_TEN = 1.645
"""So many standard deviations either side hold nine tenths of a normal distribution [-]."""


def weather_of_each_day(comparison: Comparison) -> Iterator[Flip]:
    """For each day with an outing outdoors: rain, a dry day, colder and warmer than usual.

    The weather of a day changes at all places that are gone to on it. Where it is usual, its temperature
    changes by whole degrees, as far as the means of nine years in ten differ; the least is told.
    """
    for day in sorted({outing.day for outing in comparison.outings}):
        outdoors = [
            index
            for index, facts in enumerate(comparison.facts)
            if comparison.outings[index].day == day
            and facts.outdoors is not None
            and facts.outdoors.climate.knows(day)
        ]
        if not outdoors:
            continue
        yield _wet_or_dry(comparison, day, outdoors, wet=True)
        yield _wet_or_dry(comparison, day, outdoors, wet=False)
        usual = [index for index in outdoors if _usual(comparison, index)]
        if usual:
            yield _another_temperature(comparison, day, usual, warmer=False)
            yield _another_temperature(comparison, day, usual, warmer=True)


def _usual(comparison: Comparison, index: int) -> bool:
    """Whether the weather of an outing is the usual one."""
    weather = comparison.outings[index].weather
    return weather is not None and weather.forecast is None


def _wet_or_dry(comparison: Comparison, day: date, outdoors: list[int], *, wet: bool) -> Flip:
    """What a day with rain for certain does, or one without."""
    lows = [weather.day.low for index in outdoors if (weather := comparison.outings[index].weather)]
    under = fact("flips-if-dry", day=day)
    if wet:
        under = fact("flips-if-wet", day=day, snow=min(lows) <= NO_SNOW_ABOVE)
    answers = _with_weather(comparison, day, dict.fromkeys(outdoors, 0.0), wet=float(wet)).changed(
        indexes=outdoors
    )
    at = fact("flips-wet" if wet else "flips-dry")
    return comparison.flip(_what(day), _now(comparison, outdoors), at, under, answers)


def _another_temperature(comparison: Comparison, day: date, usual: list[int], *, warmer: bool) -> Flip:
    """By how much colder or warmer the order changes, if at all."""
    unit = comparison.household.degrees
    a_degree = celsius(1) - celsius(0) if unit == "F" else 1.0
    most, sign = floor(NINE_IN_TEN * BETWEEN_YEARS / a_degree), 1 if warmer else -1
    what, now = _what(day), _now(comparison, usual)
    for degrees in range(1, most + 1):
        by = dict.fromkeys(usual, sign * degrees * a_degree)
        answers = _with_weather(comparison, day, by, wet=None).changed(indexes=usual)
        if answers is not None:
            at = fact("flips-degrees", degrees=degrees, unit=unit, warmer=warmer)
            return comparison.flip(what, now, at, fact("flips-if-degrees", day=day, at=at), answers)
    at = fact("flips-degrees", degrees=most, unit=unit, warmer=warmer)
    return comparison.stays(what, now, fact("flips-up-to-degrees", day=day, at=at))


def _what(day: date) -> Fact:
    return fact("flips-weather", day=day)


def _now(comparison: Comparison, indexes: list[int]) -> Fact:
    """What the weather is at the places concerned, as it is counted at present."""
    each = tuple(
        fact("flips-weather-at", place=outing.place.name, there=weather_in_short(outing.weather))
        for outing in (comparison.outings[index] for index in indexes)
    )
    return fact("flips-weather-now", each=each)


def _with_weather(
    comparison: Comparison, day: date, warmer: Mapping[int, float], *, wet: float | None
) -> Comparison:
    """The comparison with other weather on a day.

    Args:
        comparison: as it is.
        day: the day.
        warmer: by how much, for each outing that is concerned [°C].
        wet: chance of rain or snow [0-1]; None where it stays as it is.
    """
    told = {}
    for index, by in warmer.items():
        climate = comparison.facts[index].climate
        assert climate is not None
        told[index] = other_weather(climate, day, warmer=by, wet=wet)
    return comparison.with_forecasts(told)
