"""Points on the Earth and how a parent writes them down."""

import re
from dataclasses import dataclass
from typing import Annotated, Self
from zoneinfo import ZoneInfo

from pydantic import AfterValidator, AwareDatetime, Field, model_validator

from tripplan.documents.field_spec import FieldSpec
from tripplan.documents.model import Written
from tripplan.errors import PlanError


@dataclass(frozen=True)
class Point:
    """A point on the WGS84 ellipsoid.

    Attributes:
        latitude: north positive [degrees].
        longitude: east positive [degrees].
    """

    latitude: float
    longitude: float


_ZONE = re.compile(r"[A-Za-z0-9_+-]+(?:/[A-Za-z0-9_+-]+){0,2}")
"""What names of zones are made of. zoneinfo looks them up as packages and files, so a name full of dots would
go through packages inside each other without end."""


def zone_named(name: str) -> ZoneInfo | None:
    """The time zone of an IANA name; None where there is none, whatever the name holds."""
    if _ZONE.fullmatch(name) is None:
        return None
    try:
        return ZoneInfo(name)
    except (LookupError, ValueError, OSError):
        return None


def _known_zone(name: str) -> str:
    if zone_named(name) is None:
        raise ValueError("a time zone is an IANA name such as 'America/Chicago'")
    return name


ZoneName = Annotated[str, AfterValidator(_known_zone)]
"""The name of an IANA time zone."""

TOWN_ONLY = "Only the town is known: add the street."
"""Says of a location that it is somewhere in its town."""


class Where(Written):
    """A location: coordinates, or a town or postal code that is looked up offline when the file is read."""

    address: Annotated[str, FieldSpec("Street and number")] = ""
    """Street and number, for the calendar entry; may be empty."""
    town: Annotated[str, FieldSpec("Town")] = ""
    """Town, looked up when coordinates are missing."""
    postal_code: Annotated[str, FieldSpec("ZIP code")] = ""
    """Postal code, looked up when coordinates are missing (US ZIP codes)."""
    country: Annotated[
        str, Field(pattern=r"^[A-Z]{2}$"), FieldSpec("Country", help="Two letters, such as US.")
    ]
    """ISO 3166-1 code of two letters, such as US."""
    subdivision: Annotated[
        str, Field(pattern=r"^[A-Z0-9]{0,3}$"), FieldSpec("State", help="Two letters, such as IA.")
    ] = ""
    """ISO 3166-2 code without the country, such as IL; for public holidays and town look-up."""
    latitude: Annotated[Annotated[float, Field(ge=-90, le=90)] | None, FieldSpec("Coordinates, latitude")] = (
        None
    )
    """Degrees, north positive."""
    longitude: Annotated[
        Annotated[float, Field(ge=-180, le=180)] | None, FieldSpec("Coordinates, longitude")
    ] = None
    """Degrees, east positive."""
    time_zone: Annotated[ZoneName | None, FieldSpec("Time zone", help="A name such as America/Chicago.")] = (
        None
    )
    """IANA time zone; found from the coordinates when missing."""
    metropolitan: Annotated[bool, FieldSpec("Near a big city (rush hour slows every drive)")] = False
    """Whether it lies in or near a large city, where rush hours slow every drive down."""

    by_town: bool = False
    """Whether the coordinates are only those of its town or postal code; noted when they are looked up."""

    @property
    def town_only(self) -> bool:
        """Whether no more than the town is known: neither a street nor the place's own coordinates."""
        return self.by_town and not self.address

    @model_validator(mode="after")
    def _locatable(self) -> Self:
        if (self.latitude is None) != (self.longitude is None):
            raise ValueError("latitude and longitude come together or not at all")
        if self.latitude is None and not self.town and not self.postal_code:
            raise ValueError("give latitude and longitude, or a town, or a postal code")
        return self

    @property
    def point(self) -> Point:
        """The coordinates.

        Raises:
            PlanError: town or postal code were not looked up yet.
        """
        if self.latitude is None or self.longitude is None:
            raise PlanError(f"{self.town or self.postal_code} has no coordinates yet")
        return Point(self.latitude, self.longitude)

    @property
    def zone(self) -> ZoneInfo:
        """The time zone.

        Raises:
            PlanError: it was not looked up yet.
        """
        if self.time_zone is None:
            raise PlanError(f"{self.town or self.postal_code or self.point} has no time zone yet")
        return ZoneInfo(self.time_zone)


class LookupResult(Written):
    """What a service on the internet answered when the parent asked where something lies."""

    text: Annotated[str, Field(min_length=1, max_length=200)]
    """What was sent, and nothing else."""
    name: str
    """What the service calls it."""
    latitude: Annotated[float, Field(ge=-90, le=90)]
    """Degrees, north positive."""
    longitude: Annotated[float, Field(ge=-180, le=180)]
    """Degrees, east positive."""
    country: Annotated[str, Field(pattern=r"^([A-Z]{2})?$")] = ""
    """ISO 3166-1 code of two letters, if it was told."""
    subdivision: Annotated[str, Field(pattern=r"^[A-Z0-9]{0,3}$")] = ""
    """ISO 3166-2 code without the country, if it was told."""
    service: str
    """Where it was sent."""
    looked_up_at: AwareDatetime
    """When."""

    @property
    def point(self) -> Point:
        """The coordinates."""
        return Point(self.latitude, self.longitude)
