"""What the parent says about one place beside what its card says."""

from decimal import Decimal
from typing import Annotated

from pydantic import Field

from tripplan.documents.model import Minutes, Name, Written
from tripplan.documents.places.place import PlaceId
from tripplan.documents.written_money import Price


class OwnExtra(Written):
    """Something the parent means to pay for there: a wagon to hire, a present, a picnic spot."""

    name: Name
    price: Price
    """For the whole party, in the household's currency."""
    give_or_take_percent: Annotated[Decimal, Field(ge=0, le=90)] = Decimal(0)
    """How far it may be off [%]."""


class OwnFigures(Written):
    """The parent's own figures for one place."""

    place: PlaceId
    """The id of the place card."""
    add_ons: tuple[Name, ...] | None = None
    """Which of the card's add-ons the family takes; those marked usual when left out."""
    tolls: Price | None = None
    """Tolls and ferries, there and back; not known when left out."""
    extras: tuple[OwnExtra, ...] = ()
    """What else is paid there."""
    stay_minutes: Annotated[Minutes, Field(ge=10)] | None = None
    """A stay that feels complete to this family [min]; the card's figure when left out."""
    stay_from: Annotated[str, Field(max_length=200)] = ""
    """Where that comes from, in words; typed in by the parent when left out."""
