"""How sure it is which of several outings is the cheapest, from the ranges of what they cost."""

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

import numpy as np

from tripplan.errors import CurrencyMismatch, PlanError
from tripplan.language.sentences import Fact, fact
from tripplan.planning.cost import OutingCost
from tripplan.planning.outing.outing import Outing
from tripplan.values.units import Chance

DRAWS = 40_000
"""How often the prices are drawn; the standard error of a chance is at most 0.25 %."""
NINETY_FIVE_PERCENT_POINT = 1.6448536269514722
"""Where 95 % of the standard normal distribution lie below. Source: its quantile function, as in
`statistics.NormalDist().inv_cdf(0.95)`."""
SURE_ENOUGH = 2 / 3
"""Below this chance of the first place the comparison is too close to call. No source, our choice."""
_NOT_WORTH_NAMING = 0.02


@dataclass(frozen=True)
class Certainty:
    """How sure the order of some outings is.

    Attributes:
        chances: for each outing, in the order given, the chance that it is the cheapest [0-1].
        too_close: whether the chance of the least likely total is below `SURE_ENOUGH`.
        facts: all of it, and what was left out.
    """

    chances: tuple[float, ...]
    too_close: bool
    facts: tuple[Fact, ...]


def chance_cheapest(costs: Sequence[OutingCost], *, seed: int = 0) -> tuple[float, ...]:
    """The chance of each outing to be the cheapest.

    What one cause does to several outings happens to all of them at once, so it cancels where it weighs
    the same; different causes are independent. Each cause is a normal distribution in two halves: its median
    leaves the likely amount alone, its 5 % point takes `below` off and its 95 % point puts `above` on it.
    That is how `add_up` reads a swing, whose root of the sum of squares is exact for even swings.
    Items that nobody knows are left out, as they are from the totals.

    Args:
        costs: of the outings, in one currency.
        seed: of the random draws; the same seed gives the same answer.

    Returns:
        Chances [0-1] that sum to 1, in the order given; outings that cost the same share them.

    Raises:
        PlanError: there are no outings.
        CurrencyMismatch: two outings are counted in different currencies.

    Source: two-piece normal, after G. T. Fechner, Kollektivmasslehre, 1897 (from memory), here with half of
    the chance on either side, so that the likely amount is the median.
    """
    if not costs:
        raise PlanError("without an outing there is no cheapest one")
    for cost in costs:
        if cost.total.currency != costs[0].total.currency:
            raise CurrencyMismatch(costs[0].total.currency, cost.total.currency)
    swings = [_by_cause(cost) for cost in costs]
    amounts = np.empty((len(costs), DRAWS))
    amounts[:] = [[float(cost.total.likely.amount)] for cost in costs]
    random = np.random.default_rng(seed)
    # In order of their names, so that the answer does not hang on the order of outings or items.
    for cause in sorted(set().union(*swings)):
        moved = random.standard_normal(DRAWS) / NINETY_FIVE_PERCENT_POINT
        less, more = np.minimum(moved, 0), np.maximum(moved, 0)
        for row, by_cause in enumerate(swings):
            if cause in by_cause:
                below, above = by_cause[cause]
                amounts[row] += float(below) * less + float(above) * more
    cheapest = amounts == amounts.min(axis=0)
    shares = (cheapest / cheapest.sum(axis=0)).mean(axis=1)
    return tuple(float(share) for share in shares)


def _by_cause(cost: OutingCost) -> dict[str, tuple[Decimal, Decimal]]:
    """How far each cause moves a total, below and above."""
    together: dict[str, tuple[Decimal, Decimal]] = defaultdict(lambda: (Decimal(0), Decimal(0)))
    for item in cost.items:
        for swing in item.swings:
            below, above = together[swing.cause]
            together[swing.cause] = (below + swing.below.amount, above + swing.above.amount)
    return together


def how_sure(outings: Sequence[Outing], *, seed: int = 0) -> Certainty:
    """How sure it is which outing is the cheapest, or that it is too close to call.

    Args:
        outings: to compare, in any order.
        seed: of the random draws.

    Returns:
        The chances and what they mean; a chance leaves out what is not known, which is told.

    Raises:
        PlanError: there are no outings.
        CurrencyMismatch: two outings are counted in different currencies.
    """
    chances = chance_cheapest([outing.cost for outing in outings], seed=seed)
    if len(outings) == 1:
        return Certainty(chances, False, (fact("sure-nothing-else", place=outings[0].place.name),))
    first = min(range(len(outings)), key=lambda index: outings[index].cost.total.likely.amount)
    too_close = chances[first] < SURE_ENOUGH
    if too_close:
        in_order = sorted(range(len(outings)), key=lambda index: -chances[index])
        named = tuple(
            fact("sure-chance", place=outings[index].place.name, odds=Chance(chances[index]))
            for index in in_order
            if chances[index] >= _NOT_WORTH_NAMING
        )
        facts = [fact("sure-too-close", chances=named)]
    else:
        facts = [fact("sure-cheapest", place=outings[first].place.name, odds=Chance(chances[first]))]
    left_out = tuple(
        fact("sure-unknown", what=label, place=outing.place.name)
        for outing in outings
        for label in outing.cost.unknown
    )
    if left_out:
        facts.append(fact("sure-left-out", unknown=left_out))
    return Certainty(chances, too_close, tuple(facts))
