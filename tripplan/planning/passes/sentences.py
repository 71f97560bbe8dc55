"""What there is to say of a plan for passes, the same on screens and command line."""

from collections.abc import Sequence
from datetime import date

from tripplan.language.sentences import Fact, fact, told
from tripplan.planning.passes.plan import (
    BreakEven,
    PassOrder,
    PassPlan,
    PassPurchase,
    UnplannedVisit,
    VisitCost,
)


def pass_plan_sentences(plan: PassPlan) -> tuple[str, ...]:
    """The whole plan: what to buy, what it comes to, when passes have paid, and what is left out."""
    return (
        *told(map(order_fact, plan.orders)),
        *told(total_facts(plan)),
        *told(map(break_even_fact, plan.break_even)),
        *told(map(left_out_fact, plan.left_out)),
        *plan.notes,
        *told(counted_facts(plan)),
    )


def order_fact(order: PassOrder) -> Fact:
    """One order of passes: when, what for whom, for how much, until when."""
    groups: dict[tuple[str, date, bool], list[PassPurchase]] = {}
    for one in order.passes:
        for_one = one.offer.named and len(one.holders) == 1
        groups.setdefault((one.offer.name, one.valid_until, for_one), []).append(one)
    what = tuple(map(_passes, groups.values()))
    return fact("passes-order", day=order.day, place=order.place.name, what=what, price=order.total)


def _passes(group: Sequence[PassPurchase]) -> Fact:
    """Passes of one kind, such as "2 x 'Year card' for Ada and Ben, good until Tue, Dec 7, 2027"."""
    first, count = group[0], len(group)
    name, until = first.offer.name, first.valid_until
    if all(len(one.holders) == 1 for one in group):
        holders = tuple(one.holders[0] for one in group)
        return fact("passes-for", count=count, name=name, holders=holders, until=until)
    if not first.offer.named:
        return fact("passes-for-household", count=count, name=name, until=until)
    if count == 1:
        return fact("passes-for", count=count, name=name, holders=tuple(first.holders), until=until)
    groups = tuple(fact("passes-group", holders=tuple(one.holders)) for one in group)
    return fact("passes-for-groups", count=count, name=name, groups=groups, until=until)


def total_facts(plan: PassPlan) -> tuple[Fact, ...]:
    """What everything comes to, against single visits."""
    count = len(plan.visits)
    if not count:
        return (fact("passes-no-visit-can-be"),)
    visits = _visits(count)
    if not plan.orders:
        return (fact("passes-none-pays", visits=visits, total=plan.total),)
    everything = fact("passes-all-in", visits=visits, count=count, total=plan.total)
    if plan.singly is None or plan.saving is None:
        return (everything, fact("passes-not-without"))
    return (everything, fact("passes-saved", singly=plan.singly, saving=plan.saving))


def visit_fact(line: VisitCost) -> Fact:
    """One visit: what it costs with the plan's passes, and what it would cost without."""
    parts = [fact("passes-entry", amount=line.admission.total)]
    if line.parking is not None:
        parts.append(fact("passes-parking", amount=line.parking))
    day, place, names = line.visit.day, line.visit.place.name, line.passes
    if names:
        passes = tuple(fact("passes-name", name=name) for name in names)
        visit = fact("passes-visit-with", day=day, place=place, parts=tuple(parts), passes=passes)
    else:
        visit = fact("passes-visit", day=day, place=place, parts=tuple(parts))
    if not names or line.singly == line.total:
        return fact("passes-visit-alone", visit=visit)
    if line.singly is None:
        return fact("passes-visit-not-without", visit=visit)
    return fact("passes-visit-instead", visit=visit, singly=line.singly)


def break_even_fact(one: BreakEven) -> Fact:
    """On which visit a pass has paid, or after how many like those planned."""
    name = fact("passes-of", name=one.offer.name, place=one.place.name)
    if one.offer.named:
        name = fact(
            "passes-of-holders", name=one.offer.name, place=one.place.name, holders=tuple(one.holders)
        )
    price, visits = one.price, _visits(one.visits)
    if one.saved is None:
        return fact("passes-needed", card=name, price=price)
    if one.pays_after is None:
        return fact("passes-never-pays", card=name, price=price)
    if one.pays_on is None:
        after = _visits(one.pays_after)
        return fact("passes-paid-after", card=name, price=price, after=after, saved=one.saved, visits=visits)
    return fact(
        "passes-paid-back" if one.bought else "passes-would-be-paid-back",
        card=name,
        price=price,
        day=one.pays_on,
        number=one.pays_after,
        saved=one.saved,
        visits=visits,
    )


def left_out_fact(one: UnplannedVisit) -> Fact:
    """A visit that stands outside the sum, and why."""
    why = "; ".join(reason.rstrip(".") for reason in told(one.reasons))
    return fact("passes-left-out", day=one.visit.day, place=one.visit.place.name, why=why)


def counted_facts(plan: PassPlan) -> tuple[Fact, ...]:
    """What the figures are made of."""
    return (fact("passes-counted"),) if plan.visits else ()


def _visits(count: int) -> Fact:
    return fact("passes-visits", count=count)
