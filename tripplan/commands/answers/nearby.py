"""The JSON answer of `tripplan nearby`."""

from dataclasses import dataclass
from typing import Literal

from tripplan.commands.answers.json_keys import json_keys
from tripplan.nearby.listing import NearbyPlace


@dataclass(frozen=True)
class NearbyAnswer:
    """Places of a map near home.

    Attributes:
        places: nearest first.
        attribution: whom the map's data are owed to, as its license asks.
        format: version of the answers' keys.
    """

    places: tuple[NearbyPlace, ...]
    attribution: str
    format: Literal[1] = 1


json_keys(
    NearbyPlace,
    "osm name kind latitude=point.latitude longitude=point.longitude drive_minutes drive_km indoors topics"
    " address opening_hours web telephone free charge wheelchair changing_table",
)
json_keys(NearbyAnswer, "format places attribution")
