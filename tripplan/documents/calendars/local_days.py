"""Festivals and local days off that the parent lists."""

from datetime import date
from decimal import Decimal
from typing import Annotated, Self

from pydantic import Field, model_validator

from tripplan.documents.field_spec import Control, FieldSpec, Unit
from tripplan.documents.model import Name, Written
from tripplan.documents.places.place import PlaceId
from tripplan.documents.where import Where

LONGEST_DAYS = 31
"""A festival longer than this is a season [days]."""


class LocalDay(Written):
    """A festival or local day off, at one place or in and around a town."""

    name: Annotated[Name, FieldSpec("What is it?", called="Name")]
    """What it is called."""
    first: Annotated[date, FieldSpec("First day", width=220)]
    """Its first day."""
    last: Annotated[date, FieldSpec("Last day", help="Left as it is, the first day alone.", width=220)]
    """Its last day."""
    every_year: Annotated[bool, FieldSpec("It comes back on these dates every year")] = False
    """Whether it comes back on the same dates every year."""
    place: Annotated[
        PlaceId | None, FieldSpec("Where?", called="Place", control=Control.CHOICE, offered="places")
    ] = None
    """The place it concerns; a town is given instead where it concerns all places near."""
    town: Annotated[
        Where | None,
        FieldSpec(
            "Which town?",
            called="Town",
            help="A town with its state, a ZIP code, or coordinates; only where no place is picked.",
        ),
    ] = None
    """The middle of the town it concerns."""
    reach_km: Annotated[
        float, Field(gt=0, le=200), FieldSpec("How far around the town", unit=Unit.KILOMETRES)
    ] = 25.0
    """How far around the town's middle places are concerned."""
    crowd_factor: Annotated[
        Decimal,
        Field(gt=0, le=50),
        FieldSpec("How many times the usual visitors", help="1.5 is a guess; 1 changes nothing."),
    ] = Decimal("1.5")
    """How many times the usual number of visitors [-]; the usual value is a guess."""
    day_off: Annotated[
        bool,
        FieldSpec(
            "People there are off work, as on a public holiday",
            help="Where your home is within reach of the town, your own working hours are free as well.",
        ),
    ] = False
    """Whether people there are off work, as on a public holiday; so are the household's adults where the town
    is theirs."""
    hours_as_on_holidays: Annotated[
        bool,
        FieldSpec(
            "Places there keep the hours and prices of a public holiday",
            help="Usually they do not: a card's public holidays are those of its country and state. "
            "Tick it where a place tells you that it closes, or opens as on a holiday, on this "
            "day.",
        ),
    ] = False
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

    days: Annotated[tuple[LocalDay, ...], FieldSpec("Local day")] = ()
