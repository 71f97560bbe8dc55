"""A forecast of single days in the place of what these days are usually like."""

from dataclasses import replace
from datetime import UTC, date, datetime, time

import numpy as np

from tripplan.documents.places.forecast import ForecastDay, PlaceForecast
from tripplan.planning.climate.climate import Climate
from tripplan.planning.climate.days_of_year import YEAR_DAYS, day_of_year
from tripplan.values.ranges import Origin, Source

MILD_LOW, MILD_HIGH = 10.0, 20.0
"""Neither cold nor hot to be out in: what stands for days of which nothing is known [°C]."""
CREDITS = {
    "api.weather.gov": "",
    "api.met.no": "weather: MET Norway, api.met.no, CC BY 4.0",
}
"""What each service asks to be said of its forecasts: those of the United States' National Weather Service
are in the public domain, those of the Norwegian Meteorological Institute under CC BY 4.0."""


def with_forecast(climate: Climate | None, latitude: float, forecast: PlaceForecast | None) -> Climate | None:
    """What the days are like at a place, with what is told of single days.

    Args:
        climate: the usual; None where nobody knows it.
        latitude: of the place, north positive [degrees].
        forecast: what is told; None for nothing.
    """
    if forecast is None or not forecast.days:
        return climate
    usual = climate or _mild(latitude)
    told = [_filled(one, usual) for one in forecast.days]
    return replace(
        usual,
        low=np.concatenate([usual.low, [low for low, _, _ in told]]),
        high=np.concatenate([usual.high, [high for _, high, _ in told]]),
        wet=np.concatenate([usual.wet, [wet for _, _, wet in told]]),
        forecasts={one.day: one for one in forecast.days},
    )


def forecast_source(told: ForecastDay) -> Source:
    """Where what is told of a day comes from."""
    if not told.service:
        return Source(Origin.PARENT, f"what you typed: “{told.words}”")
    return Source(Origin.PUBLISHED, f"forecast of {told.service}", CREDITS.get(told.service, ""))


def other_weather(
    climate: Climate, day: date, *, warmer: float = 0.0, wet: float | None = None
) -> ForecastDay:
    """What a day would be like in other weather than counts at present, told as a forecast of it.

    Args:
        climate: what the day is like at present.
        day: one of which something is known.
        warmer: by how much all of the day [°C].
        wet: chance of rain or snow [0-1]; None where it stays as it is.
    """
    (number,) = climate.numbers(np.array([day_of_year(day)]), np.array([day.toordinal()])).tolist()
    return ForecastDay(
        day=day,
        low=float(climate.low[number]) + warmer,
        high=float(climate.high[number]) + warmer,
        wet=float(climate.wet[number]) if wet is None else wet,
        known_at=datetime.combine(day, time(0), UTC),
    )


def _filled(told: ForecastDay, usual: Climate) -> tuple[float, float, float]:
    """Low, high [°C], chance of a wet day [0-1]; of one temperature alone, the other is as far as usual."""
    day = usual.on(told.day)
    between = day.high - day.low
    low, high = told.low, told.high
    if low is None:
        low = day.low if high is None else high - between
    if high is None:
        high = day.high if told.low is None else low + between
    return low, high, day.wet if told.wet is None else told.wet


def _mild(latitude: float) -> Climate:
    """What stands for a year of which nothing is known: it weighs nothing."""
    year = np.ones(YEAR_DAYS)
    nothing = Source(Origin.ESTIMATE, "nobody knows what it is usually like there")
    return Climate(latitude, year * MILD_HIGH, year * MILD_LOW, year * 0, None, nothing, usual_known=False)
