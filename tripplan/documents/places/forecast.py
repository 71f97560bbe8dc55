"""What the weather is going to be at a place on single days: forecast, or as the parent says."""

from collections import Counter
from collections.abc import Iterable
from datetime import date
from typing import Annotated, Self

from pydantic import AwareDatetime, Field, model_validator

from tripplan.documents.model import Written
from tripplan.documents.places.place import PlaceId

FARTHEST_DAYS = 10
"""No forecast is asked for further ahead [days]; services give seven to ten."""
COLDEST_C, HOTTEST_C = -90.0, 60.0
"""No forecast is colder or hotter; the records of the World Meteorological Organization are -89.2 and
56.7 °C, from memory."""

_Temperature = Annotated[float, Field(ge=COLDEST_C, le=HOTTEST_C, allow_inf_nan=False)]
_Chance = Annotated[float, Field(ge=0, le=1, allow_inf_nan=False)]


class ForecastDay(Written):
    """The weather of one day, as far as it is told; what is left out stays as it usually is."""

    day: date
    """The day, by the clock of the place."""
    low: _Temperature | None = None
    """The lowest temperature [°C]."""
    high: _Temperature | None = None
    """The highest [°C]."""
    wet: _Chance | None = None
    """Chance of rain or snow [0-1]."""
    snow: _Chance | None = None
    """Chance of snowfall [0-1]."""
    words: Annotated[str, Field(max_length=120)] = ""
    """The day in the service's words, or what the parent typed."""
    service: Annotated[str, Field(max_length=80)] = ""
    """The host that was asked; empty where the parent typed it."""
    known_at: AwareDatetime
    """When it was asked or typed."""

    @model_validator(mode="after")
    def _possible(self) -> Self:
        if self.low is not None and self.high is not None and self.low > self.high:
            raise ValueError(f"the low ({self.low:g} °C) is above the high ({self.high:g} °C)")
        return self


class PlaceForecast(Written):
    """The weather of the next days at one place."""

    place: PlaceId
    """The id of the place card."""
    days: Annotated[tuple[ForecastDay, ...], Field(max_length=60)] = ()
    """The days, each once, the earliest first."""

    @model_validator(mode="after")
    def _once_each(self) -> Self:
        twice = [f"{day}" for day, count in Counter(one.day for one in self.days).items() if count > 1]
        if twice:
            raise ValueError(f"each day is told once; twice: {', '.join(twice)}")
        return self

    def on(self, day: date) -> ForecastDay | None:
        """What is told of one day, if anything."""
        return next((one for one in self.days if one.day == day), None)

    def without(self, day: date) -> Self:
        """The same without one day."""
        return self.model_copy(update={"days": tuple(one for one in self.days if one.day != day)})

    def updated(self, told: Iterable[ForecastDay], today: date) -> Self:
        """With what is newly told; days that are over go, and what the parent typed outlasts a service.

        Args:
            told: of some days, each once.
            today: earlier days are over.
        """
        days = {one.day: one for one in self.days if one.day >= today}
        for one in told:
            if not one.service or one.day not in days or days[one.day].service:
                days[one.day] = one
        return type(self)(place=self.place, days=tuple(days[day] for day in sorted(days)))
