"""Longer answers as Markdown lists, the same on every page."""

from collections.abc import Sequence

from tripplan.language import wording
from tripplan.language.sentences import told
from tripplan.planning.admission.result import Admission
from tripplan.planning.cost import OutingCost
from tripplan.planning.crowds.risk import CrowdRisk
from tripplan.planning.outing.idea_notes import asking
from tripplan.planning.outing.outing import Outing
from tripplan.planning.outing.sentences import (
    crowd_reasons,
    item_sentence,
    price_not_known,
    purchase_sentence,
    tickets_known,
)
from tripplan.screens.widgets.markdown import bullets, plain


def cost_lines(cost: OutingCost) -> str:
    """Every item with its amount and where it comes from, as a Markdown list."""
    return "\n".join(
        f"- {plain(item_sentence(item))}  \n  _{plain(item.source.text)}_" for item in cost.items
    )


def crowd_lines(risk: CrowdRisk) -> str:
    """Every reason why a day is so full or empty and where the figures come from, as a Markdown list."""
    *reasons, source = crowd_reasons(risk)
    return f"{bullets(reasons)}\n\n_{plain(source)}_"


def ideas_told(outings: Sequence[Outing]) -> list[str]:
    """What to ask the places of these outings that are only ideas, a sentence a place."""
    months = [member.months_on(outings[0].day) for member in outings[0].party] if outings else []
    return list(told(asking([outing.place for outing in outings], months)))


def tickets_of(outing: Outing) -> str:
    """What an outing's tickets are, as a Markdown list; of an idea, that nobody knows."""
    return ticket_lines(outing.admission) if tickets_known(outing.place) else f"- {price_not_known()}"


def ticket_lines(admission: Admission) -> str:
    """What to buy and who goes in on it, as a Markdown list."""
    return "\n".join(
        f"- {plain(purchase_sentence(purchase))}: {plain(wording.money(purchase.total))}  \n"
        f"  _{plain(purchase.rule)}_"
        for purchase in admission.purchases
    )
