"""What an outing may cost where it runs late: another price of entry or parking."""

from collections.abc import Collection, Iterator
from dataclasses import dataclass, replace
from decimal import Decimal

from tripplan.documents.family.habits import Habits
from tripplan.planning.cost.items import OutingCost, Swing, add_up
from tripplan.planning.day.times.hourly_money import PriceHours
from tripplan.planning.day.weighing.delays import usual_at_most
from tripplan.planning.outing.hourly_costs import HourlyCosts
from tripplan.planning.travel.drive import Leg
from tripplan.values.cost_kind import CostKind
from tripplan.values.money import Money, total

DELAYS = "delays on the way"
"""What moves the cost of an outing that runs late."""
_CHANGING_WITH = {
    CostKind.ADMISSION: (CostKind.ADMISSION, CostKind.EXTRAS),
    CostKind.PARKING: (CostKind.PARKING,),
    CostKind.FOOD: (CostKind.FOOD,),
    CostKind.RESERVE: (CostKind.RESERVE,),
}
"""The kinds of items that hang on the hour, and what changes with each: a ticket may include an add-on."""


@dataclass(frozen=True)
class PlannedTimes:
    """When a day plan does what, as minutes since midnight at home.

    Attributes:
        enter, leave: being let in and leaving the place [min].
        lunch_there: whether lunch is planned at the place; a delay leaves that as it is.
    """

    enter: int
    leave: int
    lunch_there: bool


def with_delays(
    cost: OutingCost, costs: HourlyCosts, times: PlannedTimes, habits: Habits, way_there: Leg
) -> OutingCost:
    """The same cost, its range wide enough for all that nineteen of twenty delays may change.

    Args:
        cost: by the plan.
        costs: at every hour.
        times: of the plan.
        habits: the family's delays.
        way_there: the drive out.
    """
    there = usual_at_most(habits, way_there.drive.minutes)
    off = usual_at_most(habits, None)
    late = list(_late(costs, times, there, off))
    if all(one.total.likely == cost.total.likely for one in late):
        return cost
    items = []
    for item in cost.items:
        if item.kind in _CHANGING_WITH and item.likely is not None:
            planned, *changed = (_of_kinds(one, _CHANGING_WITH[item.kind]) for one in (cost, *late))
            changes = [one.amount - planned.amount for one in changed]
            below, above = (
                Money(max(Decimal(0), change), item.likely.currency)
                for change in (-min(changes), max(changes))
            )
            if below.amount or above.amount:
                item = replace(item, swings=(*item.swings, Swing(DELAYS, below, above)))
        items.append(item)
    return add_up(items, cost.total.currency)


def _late(costs: HourlyCosts, times: PlannedTimes, there: int, off: int) -> Iterator[OutingCost]:
    """What the outing costs with every delay up to some minutes that makes a difference."""
    if len(costs.costs) == 1:
        return
    numbers = {costs.hours.number(*visit) for visit in _visits(costs.hours, times, there, off)}
    for number in sorted(numbers):
        each = costs.costs[number]
        if each is not None:
            yield each[times.lunch_there]


def _visits(hours: PriceHours, times: PlannedTimes, there: int, off: int) -> Iterator[tuple[int, int]]:
    """Visits that begin and end up to so late, one at least for each price they may meet."""
    latest = times.enter + there
    enters = {times.enter, latest, *(begin for begin in hours.begins if times.enter < begin <= latest)}
    last = times.leave + off
    for enter in enters:
        cuts = (*hours.leave_by, *(enter + stay for stay in hours.stays))
        for leave in {times.leave, last, *(cut + 1 for cut in cuts if times.leave <= cut < last)}:
            if enter < leave:
                yield enter, leave


def _of_kinds(cost: OutingCost, kinds: Collection[CostKind]) -> Money:
    likely = (item.likely for item in cost.items if item.kind in kinds and item.likely is not None)
    return total(likely, cost.total.currency)
