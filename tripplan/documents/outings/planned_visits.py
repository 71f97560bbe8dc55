"""The visits a parent lists for the coming twelve months."""

from datetime import date
from typing import Annotated

from pydantic import Field

from tripplan.documents.model import Name, Written
from tripplan.documents.places.place import PlaceId

VISITS_AT_MOST = 60
"""A list has no more visits than these [visits]."""


class ListedVisit(Written):
    """A visit the family has in mind; no calendar knows of it."""

    place: PlaceId
    """The id of the place card."""
    day: date
    """The day of the visit, by the clock of the place."""
    party: Annotated[tuple[Name, ...], Field(min_length=1)]
    """The names of those who go."""


class PlannedVisits(Written):
    """The visits a parent has listed to see which pass pays."""

    visits: Annotated[tuple[ListedVisit, ...], Field(max_length=VISITS_AT_MOST)] = ()
    """In any order."""
