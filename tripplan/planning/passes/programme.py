"""The passes that cost least, as an integer programme over orders of passes and hands on visits.

SciPy's solver takes a third of a second to import, so it is imported where it is needed. Its answer is
rounded to whole numbers; what the plan costs is then added up from them exactly.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from tripplan.errors import PlanError
from tripplan.planning.integer_programme import minimized
from tripplan.planning.passes.candidates import PassCandidate
from tripplan.planning.passes.prices import VisitPrices

_HALF_A_CENT = 0.5


@dataclass(frozen=True)
class OrderChoice:
    """One order of passes that can be placed for one visit.

    Attributes:
        arrival: position of the visit.
        place: id of the place that sells them.
        counts: how many of each offer, by name.
        cents: what the order costs, in the smallest coin.
    """

    arrival: int
    place: str
    counts: tuple[tuple[str, int], ...]
    cents: int


@dataclass(frozen=True)
class Bought:
    """One candidate bought for one visit.

    Attributes:
        arrival: position of the visit.
        candidate: position of the candidate.
        count: how many copies.
    """

    arrival: int
    candidate: int
    count: int


class _Programme:
    def __init__(self) -> None:
        self.cents: list[float] = []
        self.ties: list[float] = []
        self.upper: list[int] = []
        self.rows: list[tuple[list[tuple[int, float]], float, float]] = []

    def column(self, *, cents: int = 0, tie: int = 0, upper: int = 1) -> int:
        self.cents.append(float(cents))
        self.ties.append(float(tie))
        self.upper.append(upper)
        return len(self.upper) - 1

    def row(self, terms: Iterable[tuple[int, float]], low: float, high: float) -> None:
        self.rows.append((list(terms), low, high))

    def least(self, objective: Sequence[float]) -> list[int]:
        from scipy.optimize import LinearConstraint
        from scipy.sparse import csr_array

        at = [(number, column) for number, (terms, _, _) in enumerate(self.rows) for column, _ in terms]
        values = [value for terms, _, _ in self.rows for _, value in terms]
        matrix = csr_array(
            (values, ([number for number, _ in at], [column for _, column in at])),
            shape=(len(self.rows), len(self.upper)),
        )
        rows = LinearConstraint(matrix, [low for _, low, _ in self.rows], [high for _, _, high in self.rows])
        found = minimized(objective, rows, what="which passes pay", upper=self.upper)
        if found is None:
            raise PlanError("which passes pay could not be worked out: the rows contradict each other")
        return [round(value) for value in found]


def cheapest_purchases(
    candidates: Sequence[PassCandidate],
    covers: Sequence[Sequence[tuple[int, ...]]],
    prices: Sequence[VisitPrices],
    orders: Sequence[OrderChoice],
) -> tuple[Bought, ...]:
    """The purchases with which passes and visits together cost least.

    Equal costs are broken by fewer passes, then by places in the list of candidates (added up), then by
    buying later, so that a pass is bought for the first visit on which it is of use.

    Args:
        candidates: the passes that may be bought.
        covers: by candidate and by position in its `sold_at`, the arrivals it is then valid for.
        prices: by arrival, what each hand costs.
        orders: the orders that can be placed.

    Returns:
        What to buy, in order of arrival and candidate.

    Raises:
        PlanError: the solver gave up.
    """
    programme = _Programme()
    whole = float("inf")
    most_passes = sum(candidate.copies * len(candidate.sold_at) for candidate in candidates)
    by_time = most_passes * len(prices) + 1
    by_number = by_time * (most_passes * len(candidates) + 1)
    bought: dict[tuple[int, int], int] = {}
    for number, candidate in enumerate(candidates):
        for arrival in candidate.sold_at:
            tie = by_number + by_time * number + len(prices) - 1 - arrival
            bought[arrival, number] = programme.column(tie=tie, upper=candidate.copies)
    by_till: dict[tuple[int, str], list[tuple[int, OrderChoice]]] = {}
    for order in orders:
        column = programme.column(cents=order.cents)
        by_till.setdefault((order.arrival, order.place), []).append((column, order))
    for choices in by_till.values():
        programme.row([(column, 1.0) for column, _ in choices], 0.0, 1.0)
    offers = {(candidate.place.id, candidate.offer.name) for candidate in candidates}
    for arrival in range(len(prices)):
        for place, name in sorted(offers):
            written = [
                (column, 1.0)
                for (when, number), column in bought.items()
                if when == arrival
                and (candidates[number].place.id, candidates[number].offer.name) == (place, name)
            ]
            paid = [
                (column, -float(dict(order.counts).get(name, 0)))
                for column, order in by_till.get((arrival, place), [])
            ]
            if written:
                programme.row([*written, *paid], 0.0, 0.0)
    for position, visit in enumerate(prices):
        hands = [(programme.column(cents=cents), hand) for hand, cents in visit.worth_asking()]
        programme.row([(column, 1.0) for column, _ in hands], 1.0, 1.0)
        for slot, number in enumerate(visit.candidates):
            in_hand = [
                (bought[when, number], 1.0)
                for when, covered in zip(candidates[number].sold_at, covers[number], strict=True)
                if position in covered
            ]
            needed = [(column, -float(hand[slot])) for column, hand in hands if hand[slot]]
            if needed:
                programme.row([*in_hand, *needed], 0.0, whole)
    cheapest = programme.least(programme.cents)
    total = sum(cents * value for cents, value in zip(programme.cents, cheapest, strict=True))
    programme.row(enumerate(programme.cents), 0.0, total + _HALF_A_CENT)
    chosen = programme.least(programme.ties)
    return tuple(
        Bought(arrival, number, chosen[column])
        for (arrival, number), column in sorted(bought.items())
        if chosen[column]
    )
