"""The JSON answer of `tripplan passes`."""

from collections.abc import Sequence
from datetime import date

from tripplan.commands.answers.parts import (
    Answer,
    MoneyTold,
    PassedOverTold,
    PurchaseTold,
    Told,
    money_or_null,
    money_told,
    opening,
    purchase_told,
)
from tripplan.commands.question import Question
from tripplan.planning.passes.plan import BreakEven, PassOrder, PassPlan, VisitCost


class PassTold(Told):
    """One pass to buy."""

    name: str
    holders: tuple[str, ...]
    """The members it is written out to."""
    valid_until: date
    """The last day it counts."""


class PassOrderTold(Told):
    """The passes of one place that are bought on one day."""

    place: str
    """Its id."""
    day: date
    passes: tuple[PassTold, ...]
    lines: tuple[PurchaseTold, ...]
    """What the till asks for, fees and taxes included."""
    total: MoneyTold
    notes: tuple[str, ...]


class VisitTold(Told):
    """One visit with the passes of the plan in hand."""

    place: str
    """Its id."""
    day: date
    party: tuple[str, ...]
    entry: MoneyTold
    parking: MoneyTold | None
    """Null where it is not known, which is not zero."""
    total: MoneyTold
    """Entry and parking, as far as known."""
    singly: MoneyTold | None
    """The same without buying any pass; null where nobody may enter without one."""
    passes: tuple[str, ...]
    """The bought passes that count."""
    purchases: tuple[PurchaseTold, ...]


class BreakEvenTold(Told):
    """When one offer of passes has paid, beside all else that is held or bought."""

    place: str
    """Its id."""
    name: str
    bought: bool
    """Whether it is part of the plan."""
    holders: tuple[str, ...]
    price: MoneyTold
    visits: int
    """On how many of the visits it counts."""
    saved: MoneyTold | None
    """What it takes off them together; null where nobody may enter without it."""
    pays_after: int | None
    """After how many visits like those; null for never."""


class PassesAnswer(Answer):
    """The passes and single visits that cost least in all; `party` goes on the visits named."""

    orders: tuple[PassOrderTold, ...]
    visits: tuple[VisitTold, ...]
    left_out: tuple[PassedOverTold, ...]
    total: MoneyTold
    singly: MoneyTold | None
    """What the same visits cost without buying a pass; null where one needs a pass."""
    saving: MoneyTold | None
    break_even: tuple[BreakEvenTold, ...]
    notes: tuple[str, ...]


def passes_answer(question: Question, plan: PassPlan, notes: Sequence[str]) -> PassesAnswer:
    """Which passes pay for a list of visits."""
    return PassesAnswer(
        **opening(question),
        orders=tuple(map(_pass_order, plan.orders)),
        visits=tuple(map(_visit, plan.visits)),
        left_out=tuple(
            PassedOverTold(place=one.visit.place.id, day=one.visit.day, reasons=one.reasons)
            for one in plan.left_out
        ),
        total=money_told(plan.total),
        singly=money_or_null(plan.singly),
        saving=money_or_null(plan.saving),
        break_even=tuple(map(_break_even, plan.break_even)),
        notes=(*notes, *plan.notes),
    )


def _pass_order(order: PassOrder) -> PassOrderTold:
    return PassOrderTold(
        place=order.place.id,
        day=order.day,
        passes=tuple(
            PassTold(name=one.offer.name, holders=one.holders, valid_until=one.valid_until)
            for one in order.passes
        ),
        lines=tuple(map(purchase_told, order.lines)),
        total=money_told(order.total),
        notes=order.notes,
    )


def _visit(line: VisitCost) -> VisitTold:
    return VisitTold(
        place=line.visit.place.id,
        day=line.visit.day,
        party=tuple(member.name for member in line.visit.party),
        entry=money_told(line.admission.total),
        parking=money_or_null(line.parking),
        total=money_told(line.total),
        singly=money_or_null(line.singly),
        passes=line.passes,
        purchases=tuple(map(purchase_told, line.admission.purchases)),
    )


def _break_even(one: BreakEven) -> BreakEvenTold:
    return BreakEvenTold(
        place=one.place.id,
        name=one.offer.name,
        bought=one.bought,
        holders=one.holders,
        price=money_told(one.price),
        visits=one.visits,
        saved=money_or_null(one.saved),
        pays_after=one.pays_after,
    )
