"""The JSON answer of `tripplan passes`."""

from dataclasses import dataclass

from tripplan.commands.answers.common import OPENING, Answer
from tripplan.commands.answers.json_keys import json_keys
from tripplan.planning.passes.plan import (
    BreakEven,
    PassOrder,
    PassPlan,
    PassPurchase,
    UnplannedVisit,
    VisitCost,
)


@dataclass(frozen=True, kw_only=True)
class PassesAnswer(Answer):
    """The passes and single visits that cost least in all; `party` goes on the visits named.

    Attributes:
        plan: which passes to buy, and what all visits cost.
        notes: what the figures leave out or take for granted.
    """

    plan: PassPlan
    notes: tuple[str, ...]


json_keys(
    PassesAnswer,
    f"{OPENING} orders=plan.orders visits=plan.visits left_out=plan.left_out total=plan.total "
    "singly=plan.singly saving=plan.saving break_even=plan.break_even notes",
)
json_keys(PassOrder, "place=place.id day passes lines total notes")
json_keys(PassPurchase, "name=offer.name holders valid_until")
json_keys(
    VisitCost,
    "place=visit.place.id day=visit.day party=visit.party.name entry=admission.total parking total singly "
    "passes purchases=admission.purchases",
)
json_keys(UnplannedVisit, "place=visit.place.id day=visit.day reasons")
json_keys(BreakEven, "place=place.id name=offer.name bought holders price visits saved pays_after pays_on")
