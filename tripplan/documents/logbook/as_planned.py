"""What the plan had said about an outing, as the logbook keeps it."""

from decimal import Decimal
from typing import Annotated

from pydantic import Field

from tripplan.documents.model import Minutes, Name, Written
from tripplan.documents.outings.planned import ZonedTime
from tripplan.documents.written_money import Currency
from tripplan.values.cost_kind import CostKind
from tripplan.values.money import Money, total


class PlannedItem(Written):
    """One item of the planned cost."""

    kind: CostKind
    label: str
    """In words."""
    amount: Annotated[Decimal, Field(ge=0, max_digits=20, allow_inf_nan=False)] | None = None
    """The likely amount; not known when left out."""


class PlannedNap(Written):
    """What the plan left of one usual nap."""

    member: Name
    usual_minutes: Minutes
    """The nap's usual length [min]."""
    kept_minutes: Minutes
    """What the plan left room for [min]."""


class AsPlanned(Written):
    """What the plan had said."""

    leave_home: ZonedTime
    """When load-up was to begin."""
    wheels_turn: ZonedTime | None = None
    """When the drive was to begin, after load-up; not known when left out."""
    arrive: ZonedTime
    """When the party was to be let in."""
    leave_place: ZonedTime
    """When load-up for the way home was to begin."""
    home: ZonedTime
    """When everybody was to be home."""
    km: Annotated[float, Field(ge=0)] | None = None
    """There and back [km]; not known when left out."""
    currency: Currency
    """ISO 4217 code of the amounts."""
    likely_amount: Annotated[Decimal, Field(ge=0, max_digits=20, allow_inf_nan=False)]
    """The likely total of what was known, the reserve included."""
    items: tuple[PlannedItem, ...] = ()
    """What the total was made of; empty where only the total is known."""
    naps: tuple[PlannedNap, ...] = ()
    """What was to become of the naps."""
    crowd_chance: Annotated[float, Field(ge=0, le=1)] | None = None
    """The chance of a full house [0-1]; not known when left out."""
    crowd_word: str = ""
    """The same in words."""
    felt_low: Annotated[float, Field(ge=-120, le=120)] | None = None
    """How cold it was to feel there, forecast or as usual [°C]; not known when left out."""
    felt_high: Annotated[float, Field(ge=-120, le=120)] | None = None
    """How warm it was to feel there [°C]; likewise."""
    wet_chance: Annotated[float, Field(ge=0, le=1)] | None = None
    """The chance of rain or snow that day [0-1]; likewise."""

    @property
    def likely_total(self) -> Money:
        """The likely total of what was known."""
        return Money(self.likely_amount, self.currency)

    @property
    def unknown(self) -> tuple[str, ...]:
        """Labels of the items that nobody knew."""
        return tuple(item.label for item in self.items if item.amount is None)

    def amount_for(self, kind: CostKind) -> Money | None:
        """The likely amount for one kind of thing; None where nobody knew it."""
        items = [item for item in self.items if item.kind is kind]
        if not self.items or any(item.amount is None for item in items):
            return None
        return total((Money(i.amount, self.currency) for i in items if i.amount is not None), self.currency)
