"""What the plan had said about an outing, kept beside what came of it."""

from decimal import Decimal
from typing import Annotated

from pydantic import Field

from tripplan.planning.cost import CostKind
from tripplan.planning.household import Currency, Minutes, Name
from tripplan.planning.model import Written
from tripplan.planning.money import Money, total
from tripplan.planning.outing import Outing
from tripplan.planning.planned import ZonedTime


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
    wheels_turn: ZonedTime
    """When the drive was to begin, after load-up."""
    arrive: ZonedTime
    """When the party was to be there, after unloading."""
    leave_place: ZonedTime
    """When load-up for the way home was to begin."""
    home: ZonedTime
    """When everybody was to be home."""
    km: Annotated[float, Field(ge=0)]
    """There and back [km]."""
    currency: Currency
    """ISO 4217 code of the amounts."""
    items: tuple[PlannedItem, ...] = ()
    """What the cost was made of."""
    naps: tuple[PlannedNap, ...] = ()
    """What was to become of the naps."""
    crowd_chance: Annotated[float, Field(ge=0, le=1)]
    """The chance of a full house [0-1]."""
    crowd_word: str
    """The same in words."""

    def amount_for(self, kind: CostKind) -> Money | None:
        """The likely amount for one kind of thing; None where an item of it was not known."""
        items = [item for item in self.items if item.kind is kind]
        if any(item.amount is None for item in items):
            return None
        return total((Money(i.amount, self.currency) for i in items if i.amount is not None), self.currency)

    @property
    def likely_total(self) -> Money:
        """The likely total of the known items."""
        known = (Money(i.amount, self.currency) for i in self.items if i.amount is not None)
        return total(known, self.currency)

    @property
    def unknown(self) -> tuple[str, ...]:
        """Labels of the items that nobody knew."""
        return tuple(item.label for item in self.items if item.amount is None)


def as_planned(outing: Outing) -> AsPlanned:
    """What a plan says, as it is kept in the logbook.

    Args:
        outing: one place on one day with all its answers.
    """
    plan, drives = outing.plan, [step for step in outing.plan.steps if step.kind == "drive"]
    return AsPlanned(
        leave_home=plan.leave_home,
        wheels_turn=drives[0].start if drives else plan.leave_home,
        arrive=plan.enter,
        leave_place=plan.leave_place,
        home=plan.home,
        km=outing.way_there.drive.km.likely + outing.way_home.drive.km.likely,
        currency=outing.cost.total.currency,
        items=tuple(
            PlannedItem(
                kind=item.kind, label=item.label, amount=item.amount.likely.amount if item.amount else None
            )
            for item in outing.cost.items
        ),
        naps=tuple(
            PlannedNap(member=nap.member, usual_minutes=nap.usual_minutes, kept_minutes=nap.kept_minutes)
            for nap in plan.naps
        ),
        crowd_chance=outing.crowd.chance,
        crowd_word=outing.crowd.word,
    )
