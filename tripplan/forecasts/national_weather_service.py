"""The forecast of the United States' National Weather Service: a point leads to a square of its grid.

Shapes: the service's own documentation, weather.gov/documentation/services-web-api, and its OpenAPI
description (Point, GridpointForecast, GridpointForecastPeriod). What it tells is in the public domain.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import date, datetime
from typing import Any, Literal
from zoneinfo import ZoneInfo

from pydantic import AwareDatetime, BaseModel, ConfigDict, Field
from pydantic.alias_generators import to_camel

from tripplan.documents.places.forecast import ForecastDay
from tripplan.values.units import celsius

_LONGEST_WORDS = 120


class _Part(BaseModel):
    """A part of an answer; what else it holds is passed over."""

    model_config = ConfigDict(alias_generator=to_camel, allow_inf_nan=False)


class _Percent(_Part):
    value: float | None = Field(default=None, ge=0, le=100)


class _Period(_Part):
    """Half a day."""

    start_time: AwareDatetime
    end_time: AwareDatetime
    is_daytime: bool
    temperature: float
    temperature_unit: Literal["F", "C"]
    probability_of_precipitation: _Percent = _Percent()
    short_forecast: str = ""

    @property
    def in_celsius(self) -> float:
        """High of a day, low of a night [°C]."""
        return celsius(self.temperature) if self.temperature_unit == "F" else self.temperature


class _Periods(_Part):
    periods: tuple[_Period, ...]


class _Forecast(_Part):
    properties: _Periods


class _Links(_Part):
    forecast: str


class _SpotOnGrid(_Part):
    properties: _Links


@dataclass(frozen=True)
class NationalWeatherService:
    """The service.

    Attributes:
        address: where it is asked.
    """

    address: str = "https://api.weather.gov"
    service: str = "api.weather.gov"
    in_words: str = "the National Weather Service of the United States (api.weather.gov)"

    def days(
        self, get: Callable[[str], Any], latitude: str, longitude: str, zone: ZoneInfo, now: datetime
    ) -> Mapping[date, ForecastDay]:
        """As `Provider.days`; a date whose daytime is not told is left out."""
        spot = _SpotOnGrid.model_validate(get(f"{self.address}/points/{latitude},{longitude}"))
        periods = _Forecast.model_validate(get(spot.properties.forecast)).properties.periods
        lows: dict[date, float] = {}
        for night in (one for one in periods if not one.is_daytime):
            # The night before a day tells its low; once that is over, the night after stands in.
            lows.setdefault(night.start_time.astimezone(zone).date(), night.in_celsius)
            lows[night.end_time.astimezone(zone).date()] = night.in_celsius
        return {
            day: self._day(day, daytime, lows.get(day), now)
            for daytime in periods
            if daytime.is_daytime
            for day in (daytime.start_time.astimezone(zone).date(),)
        }

    def _day(self, day: date, daytime: _Period, low: float | None, now: datetime) -> ForecastDay:
        percent = daytime.probability_of_precipitation.value
        wet = None if percent is None else percent / 100
        snows = "snow" in daytime.short_forecast.casefold()
        return ForecastDay(
            day=day,
            low=None if low is None else min(low, daytime.in_celsius),
            high=daytime.in_celsius,
            wet=wet,
            snow=wet if snows else 0.0,
            words=daytime.short_forecast[:_LONGEST_WORDS],
            service=self.service,
            known_at=now,
        )
