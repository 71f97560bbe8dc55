"""What a family noted about how full a place was."""

from dataclasses import dataclass
from datetime import date
from enum import StrEnum


class Fullness(StrEnum):
    """How full a place was, as somebody who was there would say it; from the emptiest to the fullest."""

    PLENTY_OF_ROOM = "plenty of room"
    SOME_COMPANY = "some company"
    WELL_FILLED = "well filled"
    PACKED = "packed"


@dataclass(frozen=True)
class CrowdNote:
    """How full one place was on one day, as the family saw it.

    Attributes:
        place: the id of the place card.
        day: the day of the visit, at the place.
        fullness: how full it was.
    """

    place: str
    day: date
    fullness: Fullness
