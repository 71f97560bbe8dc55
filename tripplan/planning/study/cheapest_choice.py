"""One option for each unit at the least weight, within a budget and without two that clash; exact.

An integer programme: a 0-1 unknown for each option that is left once dominated ones are dropped. SciPy's
solver takes a third of a second to import, so it is imported where it is first needed. What it answers is
checked against every rule in whole numbers.
"""

from collections import defaultdict
from collections.abc import Hashable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from tripplan.errors import PlanError
from tripplan.planning.integer_programme import minimized

_SCALE = 100.0
"""Brings amounts to a size that the solver's fixed tolerances suit."""


@dataclass(frozen=True)
class SolverOption:
    """One option as the solver sees it.

    Attributes:
        cost: what counts against the budget [minor units].
        weight: what is made as small as can be [minor units].
        uses: what only one unit may use, such as a week or a place.
    """

    cost: int
    weight: int
    uses: frozenset[Hashable]


def cheapest_choice(
    units: Sequence[Sequence[SolverOption]], budget: int | None, *, alone: frozenset[Hashable] = frozenset()
) -> tuple[int, ...] | None:
    """Pick one choice a unit so that the weight in all is least.

    Args:
        units: the choices of each unit.
        budget: what the costs may come to together [minor units]; None for no limit.
        alone: what is used already by something outside.

    Returns:
        For each unit the index of its choice; None where no choice keeps every limit.

    Raises:
        PlanError: the solver gave up or its answer breaks a rule.
    """
    kept = [_worth_trying(choices, alone) for choices in units]
    if not all(kept):
        return None
    columns = [(unit, index) for unit, indices in enumerate(kept) for index in indices]
    if not columns:
        return ()
    picked = _solved([units[unit][index] for unit, index in columns], [unit for unit, _ in columns], budget)
    if picked is None:
        return None
    answer = dict(columns[column] for column in picked)
    chosen = [units[unit][answer[unit]] for unit in range(len(units))] if len(answer) == len(units) else []
    if len(chosen) != len(units) or not _allowed(chosen, budget):
        raise PlanError("the solver's answer breaks a rule of the programme")
    return tuple(answer[unit] for unit in range(len(units)))


def _worth_trying(choices: Sequence[SolverOption], alone: frozenset[Hashable]) -> list[int]:
    """The choices that no other with the same uses beats in both weight and cost, ties to the first."""
    by_use: Mapping[frozenset[Hashable], list[int]] = defaultdict(list)
    for index, choice in enumerate(choices):
        if not choice.uses & alone:
            by_use[choice.uses].append(index)
    kept: list[int] = []
    for indices in by_use.values():
        indices.sort(key=lambda index: (choices[index].weight, choices[index].cost, index))
        cheapest: int | None = None
        for index in indices:
            if cheapest is None or choices[index].cost < cheapest:
                kept.append(index)
                cheapest = choices[index].cost
    return sorted(kept)


def _allowed(chosen: Iterable[SolverOption], budget: int | None) -> bool:
    chosen = list(chosen)
    uses = sorted((hash(use), repr(use)) for choice in chosen for use in choice.uses)
    clash = any(one == other for one, other in pairwise(uses))
    return not clash and (budget is None or sum(choice.cost for choice in chosen) <= budget)


def _solved(choices: Sequence[SolverOption], unit_of: Sequence[int], budget: int | None) -> list[int] | None:
    """The columns that are picked; None where nothing keeps every limit."""
    import numpy as np
    from scipy.optimize import LinearConstraint
    from scipy.sparse import csr_array

    rows: dict[Hashable, list[int]] = defaultdict(list)
    for column, (choice, unit) in enumerate(zip(choices, unit_of, strict=True)):
        rows["unit", unit].append(column)
        for use in choice.uses:
            rows["use", use].append(column)
    exactly_one = [isinstance(key, tuple) and key[0] == "unit" for key in rows]
    row_of = [row for row, columns in enumerate(rows.values()) for _ in columns]
    column_of = [column for columns in rows.values() for column in columns]
    at_most_one = csr_array((np.ones(len(row_of)), (row_of, column_of)), shape=(len(rows), len(choices)))
    constraints = [LinearConstraint(at_most_one, np.where(exactly_one, 1.0, 0.0), np.ones(len(rows)))]
    if budget is not None:
        costs = np.array([[choice.cost / _SCALE for choice in choices]])
        # Costs are whole numbers, so half of one more lets nothing more in and keeps clear of rounding.
        constraints.append(LinearConstraint(costs, -np.inf, (budget + 0.5) / _SCALE))
    found = minimized([choice.weight / _SCALE for choice in choices], constraints, what="the programme")
    return None if found is None else [column for column, value in enumerate(found) if value > 0.5]
