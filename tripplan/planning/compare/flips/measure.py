"""By what outings are compared: the money alone, or with what the nuisances weigh."""

from collections.abc import Iterable
from enum import Enum

from tripplan.planning.outing.outing import Outing
from tripplan.planning.sweep.table import DayTable
from tripplan.values.money import Money


class Measure(Enum):
    """By what the first of some outings is found: the cheapest, or the better day out."""

    MONEY = "total"
    WITH_HASSLE = "felt_cost"

    def of(self, outing: Outing) -> Money:
        """How much one outing comes to."""
        return outing.cost.total.likely if self is Measure.MONEY else outing.generalized_cost

    def first(self, outings: Iterable[Outing]) -> Outing | None:
        """That which comes to the least, the earliest among equals; None of none."""
        return min(outings, key=lambda outing: self.of(outing).amount, default=None)

    def in_table(self, table: DayTable, row: int, column: int) -> int | None:
        """How much one day comes to [smallest coins]; None where it cannot be done."""
        if not table.can_go[row, column]:
            return None
        return int((table.likely if self is Measure.MONEY else table.felt)[row, column])
