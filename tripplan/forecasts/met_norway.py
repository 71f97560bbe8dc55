"""The forecast of the Norwegian Meteorological Institute, for anywhere on the Earth.

Shapes: the service's own documentation, docs.api.met.no/doc/ForecastJSON and the data model of
locationforecast 2.0. License: CC BY 4.0, so its credit stands wherever its figures do; the service asks for a
name of the program with every question and for no more than four decimals.
"""

from collections import defaultdict
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime
from typing import Any
from zoneinfo import ZoneInfo

from pydantic import AwareDatetime, BaseModel, ConfigDict, Field

from tripplan.documents.places.forecast import ForecastDay

WET_FROM_MM = 0.25
"""From so much on a day is wet, as in the tables of what is usual (0.01 in) [mm]."""
_MORNING_BY, _AFTERNOON_FROM = 12, 15
"""A day is told whole whose hours reach from noon or earlier to this hour or later [h]."""


class _Part(BaseModel):
    """A part of an answer; what else it holds is passed over."""

    model_config = ConfigDict(allow_inf_nan=False)


class _Instant(_Part):
    air_temperature: float


class _Moment(_Part):
    details: _Instant


class _Fallen(_Part):
    precipitation_amount: float | None = Field(default=None, ge=0)
    probability_of_precipitation: float | None = Field(default=None, ge=0, le=100)
    air_temperature_max: float | None = None
    air_temperature_min: float | None = None


class _Summary(_Part):
    symbol_code: str = ""


class _Hours(_Part):
    summary: _Summary = _Summary()
    details: _Fallen = _Fallen()


class _Data(_Part):
    instant: _Moment
    next_1_hours: _Hours | None = None
    next_6_hours: _Hours | None = None

    @property
    def next_hours(self) -> _Hours:
        """The hours up to the next entry."""
        return self.next_1_hours or self.next_6_hours or _Hours()


class _Entry(_Part):
    time: AwareDatetime
    data: _Data


class _Series(_Part):
    timeseries: tuple[_Entry, ...]


class _Forecast(_Part):
    properties: _Series


@dataclass(frozen=True)
class MetNorway:
    """The service.

    Attributes:
        address: where it is asked.
    """

    address: str = "https://api.met.no"
    service: str = "api.met.no"
    in_words: str = "the Norwegian Meteorological Institute (api.met.no)"

    def days(
        self, get: Callable[[str], Any], latitude: str, longitude: str, zone: ZoneInfo, now: datetime
    ) -> Mapping[date, ForecastDay]:
        """As `Provider.days`; a date of which the morning or the afternoon is not told is left out."""
        address = f"{self.address}/weatherapi/locationforecast/2.0/complete?lat={latitude}&lon={longitude}"
        entries: dict[date, list[_Entry]] = defaultdict(list)
        for entry in _Forecast.model_validate(get(address)).properties.timeseries:
            entries[entry.time.astimezone(zone).date()].append(entry)
        return {
            day: self._day(day, of_day, now)
            for day, of_day in entries.items()
            for hours in ([one.time.astimezone(zone).hour for one in of_day],)
            if min(hours) <= _MORNING_BY and max(hours) >= _AFTERNOON_FROM
        }

    def _day(self, day: date, entries: Sequence[_Entry], now: datetime) -> ForecastDay:
        hours = [one.data.next_hours for one in entries]
        temperatures = [one.data.instant.details.air_temperature for one in entries]
        for one in hours[:-1]:  # the last one's reach into the next day
            temperatures += _known(one.details.air_temperature_max, one.details.air_temperature_min)
        wet = _wet([one.details for one in hours])
        snows = any(word in one.summary.symbol_code for one in hours for word in ("snow", "sleet"))
        return ForecastDay(
            day=day,
            low=min(temperatures),
            high=max(temperatures),
            wet=wet,
            snow=wet if snows else 0.0,
            service=self.service,
            known_at=now,
        )


def _wet(fallen: Sequence[_Fallen]) -> float | None:
    """Chance of a wet day by the likeliest of its hours; by the amount where no chance is told [0-1]."""
    chances = [one for part in fallen for one in _known(part.probability_of_precipitation)]
    if chances:
        return max(chances) / 100
    amounts = [one for part in fallen for one in _known(part.precipitation_amount)]
    return float(sum(amounts) >= WET_FROM_MM) if amounts else None


def _known(*figures: float | None) -> list[float]:
    return [one for one in figures if one is not None]
