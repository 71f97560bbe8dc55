"""What an outing costs in all, give or take what."""

from tripplan.planning.cost.account import Account, outing_cost
from tripplan.planning.cost.items import CostItem, OutingCost, Swing
from tripplan.values.cost_kind import CostKind

__all__ = ["Account", "CostItem", "CostKind", "OutingCost", "Swing", "outing_cost"]
