"""A drive that the parent knows."""

from datetime import date
from typing import Annotated

from pydantic import Field

from tripplan.documents.model import Written
from tripplan.documents.places.place import PlaceId


class TypedDrive(Written):
    """What the parent knows of one way, from having driven it or looked it up."""

    place: PlaceId
    """The id of the place card."""
    km: Annotated[float, Field(gt=0, le=20_000)]
    """One way [km]."""
    minutes: Annotated[float, Field(gt=0, le=10_000)]
    """One way, wheels turning [min]."""
    typed_on: date
    """When it was typed in."""
