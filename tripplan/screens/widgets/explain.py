"""Longer answers as Markdown lists, the same on every page."""

from tripplan.planning.admission.result import Admission
from tripplan.planning.cost import OutingCost
from tripplan.planning.crowds.risk import CrowdRisk
from tripplan.planning.outing.sentences import crowd_reasons, item_sentence, purchase_sentence
from tripplan.screens.widgets.markdown import bullets, plain
from tripplan.values import wording


def cost_lines(cost: OutingCost) -> str:
    """Every item with its amount and where it comes from, as a Markdown list."""
    return "\n".join(
        f"- {plain(item_sentence(item))}  \n  _{plain(item.source.text)}_" for item in cost.items
    )


def crowd_lines(risk: CrowdRisk) -> str:
    """Every reason why a day is so full or empty and where the figures come from, as a Markdown list."""
    *reasons, source = crowd_reasons(risk)
    return f"{bullets(reasons)}\n\n_{plain(source)}_"


def ticket_lines(admission: Admission) -> str:
    """What to buy and who goes in on it, as a Markdown list."""
    return "\n".join(
        f"- {plain(purchase_sentence(purchase))}: {plain(wording.money(purchase.total))}  \n"
        f"  _{plain(purchase.rule)}_"
        for purchase in admission.purchases
    )
