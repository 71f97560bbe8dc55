"""A plan for passes in plain sentences, the same on screens and command line."""

from collections.abc import Sequence
from datetime import date

from tripplan.language import wording
from tripplan.language.sentences import told
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
        *(order_sentence(order) for order in plan.orders),
        *total_sentences(plan),
        *(break_even_sentence(one) for one in plan.break_even),
        *(left_out_sentence(one) for one in plan.left_out),
        *plan.notes,
        *counted_sentences(plan),
    )


def order_sentence(order: PassOrder) -> str:
    """One order of passes: when, what for whom, for how much, until when."""
    groups: dict[tuple[str, date, bool], list[PassPurchase]] = {}
    for one in order.passes:
        for_one = one.offer.named and len(one.holders) == 1
        groups.setdefault((one.offer.name, one.valid_until, for_one), []).append(one)
    what = wording.listed([_passes(group) for group in groups.values()])
    day, price = wording.day(order.day), wording.money(order.total)
    return f"On {day}, buy at {order.place.name}: {what}. That is {price}."


def _passes(group: Sequence[PassPurchase]) -> str:
    """Passes of one kind, such as "2 x 'Year card' for Ada and Ben, good until Tue, Dec 7, 2027"."""
    first = group[0]
    if all(len(one.holders) == 1 for one in group):
        whose = wording.listed([one.holders[0] for one in group])
    elif first.offer.named:
        whose = " and for ".join(wording.listed(one.holders) for one in group)
    else:
        whose = "the household"
    count = f"{len(group)} x " if len(group) > 1 else ""
    return f"{count}'{first.offer.name}' for {whose}, good until {wording.day(first.valid_until)}"


def total_sentences(plan: PassPlan) -> tuple[str, ...]:
    """What everything comes to, against single visits."""
    if not plan.visits:
        return ("None of the planned visits can be.",)
    count = wording.counted(len(plan.visits), "visit")
    total = wording.money(plan.total)
    if not plan.orders:
        return (f"No pass pays for the {count} planned: without buying one, that is {total} in all.",)
    come = "comes" if len(plan.visits) == 1 else "come"
    everything = f"With that, the {count} planned {come} to {total} in all, passes included."
    if plan.singly is None or plan.saving is None:
        return (everything, "Some of them are not possible without a pass.")
    singly, saving = wording.money(plan.singly), wording.money(plan.saving)
    return (everything, f"Without buying a pass that would be {singly}, so {saving} is saved.")


def visit_sentence(line: VisitCost) -> str:
    """One visit: what it costs with the plan's passes, and what it would cost without."""
    parts = [f"entry {wording.money(line.admission.total)}"]
    if line.parking is not None:
        parts.append(f"parking {wording.money(line.parking)}")
    names = [f"'{name}'" for name in line.passes]
    shown = f" with {wording.listed(names)}" if names else ""
    text = f"{wording.day(line.visit.day)}, {line.visit.place.name}: {wording.listed(parts)}{shown}"
    if not line.passes or line.singly == line.total:
        return f"{text}."
    instead = (
        "where nobody could enter without"
        if line.singly is None
        else f"instead of {wording.money(line.singly)} in all"
    )
    return f"{text}, {instead}."


def break_even_sentence(one: BreakEven) -> str:
    """On which visit a pass has paid, or after how many like those planned."""
    name = f"'{one.offer.name}' of {one.place.name}"
    if one.offer.named:
        name += f" for {wording.listed(one.holders)}"
    price, planned = wording.money(one.price), wording.counted(one.visits, "visit")
    if one.saved is None:
        return f"{name} ({price}) is needed for a visit."
    if one.pays_after is None:
        return f"{name} ({price}) never pays for visits like those planned: it takes nothing off them."
    after, saved = wording.counted(one.pays_after, "visit"), wording.money(one.saved)
    if one.pays_on is None:
        return (
            f"{name} ({price}) would have paid after {after} like those planned; it would take {saved} off "
            f"the {planned} it counts for."
        )
    on = f"on {wording.day(one.pays_on)}, the {wording.ordinal(one.pays_after)} visit"
    if one.bought:
        return f"{name} ({price}) is paid back {on}; it takes {saved} off {planned} planned."
    return f"{name} ({price}) would be paid back {on}; it would take {saved} off {planned} planned."


def left_out_sentence(one: UnplannedVisit) -> str:
    """A visit that stands outside the sum, and why."""
    reasons = "; ".join(reason.rstrip(".") for reason in told(one.reasons))
    return f"{wording.day(one.visit.day)}, {one.visit.place.name}, is left out: {reasons}."


def counted_sentences(plan: PassPlan) -> tuple[str, ...]:
    """What the figures are made of."""
    if not plan.visits:
        return ()
    return (
        "Entry, passes and parking are counted. A pass counts from the day it is bought; passes bought on one"
        " day at one place are one order.",
    )
