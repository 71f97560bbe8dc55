"""One question to a weather service, bounded in time and size, and its answer as days.

Nothing here runs unless the parent presses the button that says what is sent and where.
"""

import json
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from typing import Any, Protocol
from zoneinfo import ZoneInfo

import requests
from pydantic import ValidationError

from tripplan.calendar_server.transport import BoundedAdapter
from tripplan.documents.places.forecast import FARTHEST_DAYS, ForecastDay
from tripplan.documents.where import Point
from tripplan.errors import CalendarServerTrouble, LookupFailed
from tripplan.forecasts.met_norway import MetNorway
from tripplan.forecasts.national_weather_service import NationalWeatherService
from tripplan.version import USER_AGENT

MOST_BYTES = 2_000_000
"""An answer has some hundred thousand [bytes]."""
DIGITS = 2
"""Coordinates are rounded to so many decimals before they are sent, which is about a kilometer [-]."""

_REFUSALS = {
    403: "it refuses this program",
    404: "it knows no forecast for that spot",
    429: "it asks for fewer questions; try again in some minutes",
}


class Provider(Protocol):
    """A service that tells the weather of the next days."""

    @property
    def service(self) -> str:
        """Its host."""

    @property
    def in_words(self) -> str:
        """What it is called, with its host."""

    @property
    def address(self) -> str:
        """Where it is asked, such as 'https://api.weather.gov'."""

    def days(
        self, get: Callable[[str], Any], latitude: str, longitude: str, zone: ZoneInfo, now: datetime
    ) -> Mapping[date, ForecastDay]:
        """Ask it.

        Args:
            get: asks an address and gives what its JSON says.
            latitude: as it is sent.
            longitude: likewise.
            zone: of the place, whose days are meant.
            now: when it is asked.

        Raises:
            ValueError: an answer is not of the shape that its documentation describes.
        """


@dataclass(frozen=True)
class Forecasts:
    """The services that are asked: one for the United States, and one for everywhere else.

    Attributes:
        in_the_us, elsewhere: the services.
    """

    in_the_us: Provider
    elsewhere: Provider

    def provider(self, country: str) -> Provider:
        """Which of them knows a country, by its ISO 3166-1 code."""
        return self.in_the_us if country in _US else self.elsewhere

    def ask(self, point: Point, country: str, zone: ZoneInfo, now: datetime) -> tuple[ForecastDay, ...]:
        """The weather of today and the next days.

        Args:
            point: the place; sent rounded, see `sent`.
            country: its ISO 3166-1 code.
            zone: its time zone.
            now: when it is asked; zone-aware.

        Returns:
            The days that the answer tells whole, the earliest first; at least one.

        Raises:
            LookupFailed: there is no answer, or none that can be used; says why in words.
        """
        provider, latitude, longitude = self.provider(country), *sent(point)
        with requests.Session() as session:
            session.trust_env = False
            session.headers.update(
                {"User-Agent": USER_AGENT, "Accept": "application/geo+json, application/json"}
            )
            adapter = BoundedAdapter(provider.address, MOST_BYTES)
            session.mount("http://", adapter)
            session.mount("https://", adapter)

            def get(address: str) -> Any:  # noqa: ANN401 - whatever the JSON holds
                return _said(session.get(address))

            try:
                found = provider.days(get, latitude, longitude, zone, now)
            except CalendarServerTrouble as trouble:
                # What follows the first half is advice about a calendar server of one's own.
                raise LookupFailed(str(trouble).partition(";")[0]) from trouble
            except requests.TooManyRedirects as trouble:
                raise LookupFailed("it sends this program from address to address") from trouble
            except (ValidationError, ValueError, RecursionError) as trouble:
                raise LookupFailed("its answer is damaged or not whole, so nothing of it counts") from trouble
        today = now.astimezone(zone).date()
        near = [found[day] for day in sorted(found) if today <= day <= today + timedelta(days=FARTHEST_DAYS)]
        if not near:
            raise LookupFailed("its answer tells nothing of the next days")
        return tuple(near)


_US = frozenset({"US", "PR", "VI", "GU", "AS", "MP"})
"""Where the National Weather Service forecasts: the states and the territories."""


def sent(point: Point) -> tuple[str, str]:
    """The coordinates that are sent for a point: rounded, without zeros at the end."""
    latitude, longitude = (
        f"{round(degrees, DIGITS) + 0.0:.{DIGITS}f}".rstrip("0").rstrip(".")
        for degrees in (point.latitude, point.longitude)
    )
    return latitude, longitude


def real_forecasts() -> Forecasts:
    """The real services; nothing is sent before somebody asks."""
    return Forecasts(NationalWeatherService(), MetNorway())


def _said(response: requests.Response) -> Any:  # noqa: ANN401 - whatever the JSON holds
    """What the JSON of an answer says; numbers that are none are refused."""
    if response.status_code >= 300:
        usual = (
            "it has trouble itself; try again later" if response.status_code >= 500 else "it has no answer"
        )
        raise LookupFailed(f"{_REFUSALS.get(response.status_code, usual)} (HTTP {response.status_code})")

    def no_number(word: str) -> float:
        raise ValueError(word)

    return json.loads(response.content, parse_constant=no_number)
