"""What the family eats on an outing, and what that costs."""

from decimal import Decimal
from typing import Annotated, Literal

from pydantic import Field

from tripplan.planning.model import Written
from tripplan.planning.written_money import Price


class Food(Written):
    """What eating costs on an outing, per person."""

    way: Literal["packed", "bought"] = "packed"
    """Whether food is packed at home or bought there."""
    packed_adult: Price = Decimal("3.00")
    """Packed at home, for an adult."""
    packed_child: Price = Decimal("2.00")
    """Packed at home, for a child."""
    bought_adult: Price = Decimal("14.00")
    """Bought there, for an adult."""
    bought_child: Price = Decimal("9.00")
    """Bought there, for a child."""
    packed_from: Annotated[str, Field(max_length=200)] = ""
    """Where the two figures for packed food come from; the parent's own when left out."""
    bought_from: Annotated[str, Field(max_length=200)] = ""
    """Where the two figures for bought food come from; the parent's own when left out."""
    free_under_months: Annotated[int, Field(ge=0, le=120)] = 12
    """Younger children eat what comes along anyway [months]."""
