"""What an outing costs in all, give or take what."""

from tripplan.planning.cost.account import Account, outing_cost
from tripplan.planning.cost.items import CostItem, OutingCost, Swing

__all__ = ["Account", "CostItem", "OutingCost", "Swing", "outing_cost"]
