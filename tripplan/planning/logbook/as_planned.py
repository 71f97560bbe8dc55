"""What the plan had said about an outing, kept beside what came of it."""

from decimal import Decimal
from typing import Annotated

from pydantic import Field

from tripplan.documents.model import Minutes, Name, Written
from tripplan.documents.outings.planned import PlannedOuting, ZonedTime
from tripplan.documents.written_money import Currency
from tripplan.planning.day import StepKind
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import Outing, plan_outing
from tripplan.planning.outing.place_facts import place_facts
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


def as_planned(family: Family, planned: PlannedOuting) -> AsPlanned:
    """What the plan had said about an outing, with as much of its detail as can be worked out again.

    It is planned once more as on the day when the outing was last changed, with today's cards and figures.

    Args:
        family: the household and its places.
        planned: the outing as it stands on the calendar.

    Returns:
        The plan's times, items, naps and crowd risk; only times and total where the place card or a member
        is gone or the day cannot be planned any more.
    """
    place = next((place for place in family.places if place.id == planned.place), None)
    if place is None or any(family.household.member(name) is None for name in planned.party):
        return _without_detail(planned)
    facts = place_facts(family, place, (planned.day.year,))
    outing = plan_outing(
        family,
        family.party(planned.party),
        facts,
        planned.day,
        today=planned.planned_on(family.household.home.zone),
        leave_at=planned.leave_home,
        leave_place_at=planned.leave_place,
    )
    return _with_detail(planned, outing) if isinstance(outing, Outing) else _without_detail(planned)


def _without_detail(planned: PlannedOuting) -> AsPlanned:
    return AsPlanned(
        leave_home=planned.leave_home,
        arrive=planned.enter,
        leave_place=planned.leave_place,
        home=planned.home,
        currency=planned.currency,
        likely_amount=planned.likely_amount,
    )


def _with_detail(planned: PlannedOuting, outing: Outing) -> AsPlanned:
    drives = (step.start for step in outing.plan.steps if step.kind is StepKind.DRIVE)
    load_up = next(drives, outing.plan.leave_home) - outing.plan.leave_home
    return AsPlanned(
        leave_home=planned.leave_home,
        wheels_turn=planned.leave_home + load_up,
        arrive=planned.enter,
        leave_place=planned.leave_place,
        home=planned.home,
        km=round(outing.way_there.drive.km.likely + outing.way_home.drive.km.likely, 1),
        currency=outing.cost.total.currency,
        likely_amount=outing.cost.total.likely.amount,
        items=tuple(
            PlannedItem(kind=item.kind, label=item.label, amount=item.likely.amount if item.likely else None)
            for item in outing.cost.items
        ),
        naps=tuple(
            PlannedNap(member=nap.member, usual_minutes=nap.usual_minutes, kept_minutes=nap.kept_minutes)
            for nap in outing.plan.naps
        ),
        crowd_chance=round(outing.crowd.chance, 4),
        crowd_word=outing.crowd.word,
    )
