"""Festivals and local days off that the parent lists."""

from datetime import date
from decimal import Decimal
from typing import Annotated, Self

from pydantic import Field, model_validator

from tripplan.documents.model import Name, Written
from tripplan.documents.places.place import PlaceId
from tripplan.documents.where import Where

LONGEST_DAYS = 31
"""A festival longer than this is a season [days]."""


class LocalDay(Written):
    """A festival or local day off, at one place or in and around a town."""

    name: Name
    """What it is called."""
    first: date
    """Its first day."""
    last: date
    """Its last day."""
    every_year: bool = False
    """Whether it comes back on the same dates every year."""
    place: PlaceId | None = None
    """The place it concerns; a town is given instead where it concerns all places near."""
    town: Where | None = None
    """The middle of the town it concerns."""
    reach_km: Annotated[float, Field(gt=0, le=200)] = 25.0
    """How far around the town's middle places are concerned [km]."""
    crowd_factor: Annotated[Decimal, Field(gt=0, le=50)] = Decimal("1.5")
    """How many times the usual number of visitors [-]; the usual value is a guess."""
    day_off: bool = False
    """Whether people there are off work, as on a public holiday; so are the household's adults where the town
    is theirs."""
    hours_as_on_holidays: bool = False
    """Whether places there keep the hours and prices of a public holiday. A card's rules for public holidays
    (PH) mean those of its own country and state alone, unless this says otherwise."""

    @model_validator(mode="after")
    def _usable(self) -> Self:
        if self.last < self.first:
            raise ValueError("the last day lies before the first")
        if (self.last - self.first).days >= LONGEST_DAYS:
            raise ValueError(f"a festival has at most {LONGEST_DAYS} days")
        if (self.place is None) == (self.town is None):
            raise ValueError("give a place or a town, one of the two")
        return self


class LocalDays(Written):
    """All festival days the parent has listed."""

    days: tuple[LocalDay, ...] = ()
