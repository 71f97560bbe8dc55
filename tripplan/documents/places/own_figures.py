"""What the parent says about one place beside what its card says."""

from decimal import Decimal
from typing import Annotated

from pydantic import Field

from tripplan.documents.field_spec import Control, FieldSpec, Unit
from tripplan.documents.model import Minutes, Name, Written
from tripplan.documents.places.place import PlaceId
from tripplan.documents.written_money import Price


class OwnExtra(Written):
    """Something the parent means to pay for there: a wagon to hire, a present, a picnic spot."""

    name: Annotated[Name, FieldSpec("What for")]
    price: Annotated[Price, FieldSpec("Price, for all of us")]
    """For the whole party, in the household's currency."""
    give_or_take_percent: Annotated[
        Decimal, Field(ge=0, le=90), FieldSpec("Give or take", unit=Unit.PERCENT)
    ] = Decimal(0)
    """How far it may be off."""


class OwnFigures(Written):
    """The parent's own figures for one place."""

    place: PlaceId
    """The id of the place card."""
    add_ons: Annotated[
        tuple[Name, ...] | None, FieldSpec("What we take there", offered="add_ons", control=Control.WORDS)
    ] = None
    """Which of the card's add-ons the family takes; those marked usual when left out."""
    tolls: Annotated[
        Price | None,
        FieldSpec(
            "Tolls and ferries, there and back",
            help="0 if there are none, empty if you do not know.",
            unit=Unit.MONEY,
        ),
    ] = None
    """Tolls and ferries, there and back; not known when left out."""
    extras: Annotated[tuple[OwnExtra, ...], FieldSpec("Extra")] = ()
    """What else is paid there."""
    stay_minutes: Annotated[
        Annotated[Minutes, Field(ge=10)] | None,
        FieldSpec(
            "A stay that feels complete to us",
            help="Empty for what the card says, or what your logbook teaches.",
            unit=Unit.MINUTES,
        ),
    ] = None
    """A stay that feels complete to this family; the card's figure when left out."""
    stay_from: Annotated[str, Field(max_length=200), FieldSpec("Where that comes from")] = ""
    """Where that comes from, in words; typed in by the parent when left out."""
