"""What the family eats on an outing, and what that costs."""

from decimal import Decimal
from typing import Annotated, Literal

from pydantic import Field

from tripplan.documents.field_spec import Control, FieldSpec, Unit
from tripplan.documents.model import Written
from tripplan.documents.written_money import Price


class Food(Written):
    """What eating costs on an outing, per person."""

    way: Annotated[
        Literal["packed", "bought"],
        FieldSpec(
            "Food on the way",
            control=Control.RADIO,
            words={"packed": "packed at home", "bought": "bought there"},
        ),
    ] = "packed"
    """Whether food is packed at home or bought there."""
    packed_adult: Annotated[Price, FieldSpec("Packed at home, for an adult")] = Decimal("3.00")
    """Packed at home, for an adult."""
    packed_child: Annotated[Price, FieldSpec("Packed at home, for a child")] = Decimal("2.00")
    """Packed at home, for a child."""
    bought_adult: Annotated[Price, FieldSpec("Bought there, for an adult")] = Decimal("14.00")
    """Bought there, for an adult."""
    bought_child: Annotated[Price, FieldSpec("Bought there, for a child")] = Decimal("9.00")
    """Bought there, for a child."""
    packed_from: Annotated[
        str,
        Field(max_length=200),
        FieldSpec(
            "Where the two figures for packed food come from, and when you looked",
            help="Such as 'receipts of November 2026'; empty if they are just your own guess.",
        ),
    ] = ""
    """Where the two figures for packed food come from; the parent's own when left out."""
    bought_from: Annotated[
        str,
        Field(max_length=200),
        FieldSpec(
            "Where the two figures for bought food come from, and when you looked",
            help="Such as 'menu of the farm's café, October 2026'; empty if they are just your own guess.",
        ),
    ] = ""
    """Where the two figures for bought food come from; the parent's own when left out."""
    free_under_months: Annotated[
        int, Field(ge=0, le=120), FieldSpec("Share food until this age", unit=Unit.MONTHS)
    ] = 12
    """Younger children eat what comes along anyway."""
    count_all: Annotated[
        bool,
        FieldSpec(
            "Count all of it",
            help="Else food counts as what it costs over eating at home, which is as dear as packed food.",
        ),
    ] = False
    """Whether all food of the day counts; else only what it costs over eating at home, which is as dear as
    packed food (common practice, no source)."""
