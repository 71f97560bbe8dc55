"""Where an address or town lies, asked of a service on the internet; the only part that reaches outside.

Nothing here runs unless the parent presses the button that says what is sent and where.
"""

import re
from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import datetime
from functools import cache
from threading import Lock
from typing import Any, Protocol

from geopy.exc import (
    GeocoderInsufficientPrivileges,
    GeocoderRateLimited,
    GeocoderTimedOut,
    GeocoderUnavailable,
    GeopyError,
)

from tripplan.documents.where import LookupResult
from tripplan.errors import LookupFailed
from tripplan.version import USER_AGENT

SERVICE = "nominatim.openstreetmap.org"
SERVICE_IN_WORDS = f"Nominatim, the address search of OpenStreetMap ({SERVICE})"
CREDIT = "Data © OpenStreetMap contributors, ODbL, openstreetmap.org/copyright."
SECONDS_APART = 1.0
"""At most one request in this time [s]. Source: OpenStreetMap Foundation, Nominatim Usage Policy."""
TIMEOUT_SECONDS = 10
LONGEST_TEXT = 200
"""No address is longer [characters]."""
_SUBDIVISION = re.compile(r"([A-Z]{2})-([A-Z0-9]{1,3})")


class FoundPlace(Protocol):
    """What a geocoder finds."""

    @property
    def latitude(self) -> float:
        """Degrees, north positive."""

    @property
    def longitude(self) -> float:
        """Degrees, east positive."""

    @property
    def address(self) -> str:
        """The whole name."""

    @property
    def raw(self) -> dict[str, Any]:
        """Everything the service said."""


Geocode = Callable[[str], FoundPlace | None]
"""Asks a service where a text lies; None where it knows no such place."""


@dataclass
class OnlineLookup:
    """Asks one service, slowly enough for its rules; one for the whole program, whatever page asks.

    Attributes:
        geocode: asks the service; raises geopy's errors.
        seconds: a clock that only runs forward [s].
        sleep: waits for some seconds.
    """

    geocode: Geocode
    seconds: Callable[[], float]
    sleep: Callable[[float], None]
    _asked_at: float | None = field(default=None, init=False)
    _one_at_a_time: Lock = field(default_factory=Lock, init=False, repr=False)

    def find(self, text: str, now: datetime) -> LookupResult:
        """Ask where a text lies; waits first where the last request was less than a second ago.

        Args:
            text: address or town; exactly this is sent, blanks at both ends apart.
            now: when it is asked; zone-aware.

        Raises:
            LookupFailed: nothing was found, or the service could not be asked; says why in words.
        """
        wanted = asked_text(text)
        if not wanted:
            raise LookupFailed("there is nothing to look up")
        if len(wanted) > LONGEST_TEXT:
            raise LookupFailed(f"an address has at most {LONGEST_TEXT} characters")
        found = self._ask(wanted)
        if found is None:
            raise LookupFailed("no such place is known there; try the town with its country")
        details = found.raw.get("address", {})
        code = _SUBDIVISION.fullmatch(str(details.get("ISO3166-2-lvl4", "")))
        return LookupResult.model_validate(
            {
                "text": wanted,
                "name": found.address,
                "latitude": found.latitude,
                "longitude": found.longitude,
                "country": code[1] if code else str(details.get("country_code", "")).upper(),
                "subdivision": code[2] if code else "",
                "service": SERVICE,
                "looked_up_at": now,
            }
        )

    def _ask(self, wanted: str) -> FoundPlace | None:
        with self._one_at_a_time:
            if self._asked_at is not None:
                too_soon = self._asked_at + SECONDS_APART - self.seconds()
                if too_soon > 0:
                    self.sleep(too_soon)
            try:
                return self.geocode(wanted)
            except GeopyError as trouble:
                raise LookupFailed(_in_words(trouble)) from trouble
            finally:
                self._asked_at = self.seconds()


_REASONS: tuple[tuple[type[GeopyError], str], ...] = (
    (GeocoderTimedOut, "the service did not answer in time; try again later"),
    (GeocoderRateLimited, "the service asks for fewer questions; try again in some minutes"),
    (GeocoderInsufficientPrivileges, "the service refuses this program; give coordinates instead"),
    (GeocoderUnavailable, "the service cannot be reached; is this computer online?"),
)


def _in_words(trouble: GeopyError) -> str:
    reasons = (said for kind, said in _REASONS if isinstance(trouble, kind))
    return next(reasons, "the service could not answer; give coordinates instead")


def asked_text(text: str) -> str:
    """Exactly what is sent for a text: on one line, without blanks at both ends."""
    return " ".join(text.split())


def nominatim() -> Geocode:
    """The real service; nothing is loaded and nothing sent before the first question."""

    @cache
    def ask() -> Callable[..., FoundPlace | None]:
        from geopy.geocoders import Nominatim  # Only whoever presses the button needs it.

        service = Nominatim(user_agent=USER_AGENT, domain=SERVICE, timeout=TIMEOUT_SECONDS)
        geocode: Callable[..., FoundPlace | None] = service.geocode
        return geocode

    def geocode(text: str) -> FoundPlace | None:
        return ask()(text, addressdetails=True, language="en")

    return geocode
