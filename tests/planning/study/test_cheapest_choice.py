"""The exact choice of one option a unit, against trying every combination."""

from collections.abc import Hashable, Sequence
from itertools import combinations, product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tripplan.planning.study.cheapest_choice import SolverOption, cheapest_choice

USES = st.frozensets(st.sampled_from(["week 1", "week 2", "week 3", "mill", "cave"]), max_size=2)
CHOICES = st.builds(SolverOption, cost=st.integers(0, 120), weight=st.integers(0, 150), uses=USES)
UNITS = st.lists(st.lists(CHOICES, min_size=1, max_size=5), min_size=1, max_size=4)


def allowed(chosen: Sequence[SolverOption], budget: int | None, alone: frozenset[Hashable]) -> bool:
    """Whether some choices keep every limit."""
    apart = all(not one.uses & other.uses for one, other in combinations(chosen, 2))
    outside = all(not one.uses & alone for one in chosen)
    return apart and outside and (budget is None or sum(one.cost for one in chosen) <= budget)


def least_by_trying(
    units: Sequence[Sequence[SolverOption]], budget: int | None, alone: frozenset[Hashable]
) -> int | None:
    """The least weight of all combinations that keep every limit; None where none does."""
    return min(
        (sum(one.weight for one in chosen) for chosen in product(*units) if allowed(chosen, budget, alone)),
        default=None,
    )


@settings(max_examples=80)
@given(UNITS, st.none() | st.integers(0, 300), st.frozensets(st.sampled_from(["week 1", "mill"]), max_size=1))
def test_no_combination_weighs_less(
    units: list[list[SolverOption]], budget: int | None, alone: frozenset[str]
) -> None:
    """The answer keeps every limit, weighs what the best of all combinations weighs, and is None with it."""
    least = least_by_trying(units, budget, alone)
    answer = cheapest_choice(units, budget, alone=alone)
    if answer is None:
        assert least is None
    else:
        chosen = [choices[index] for choices, index in zip(units, answer, strict=True)]
        assert allowed(chosen, budget, alone)
        assert sum(one.weight for one in chosen) == least


def test_a_budget_is_kept_to_the_last_coin() -> None:
    """Costs that meet the budget exactly are allowed, one coin less of it is not; by hand."""
    units = [[SolverOption(100_001, 5, frozenset()), SolverOption(99_999, 900, frozenset())]] * 2
    assert cheapest_choice(units, 200_002) == (0, 0)
    answer = cheapest_choice(units, 200_001)
    assert answer is not None
    assert sorted(answer) == [0, 1]
    assert cheapest_choice(units, 199_997) is None


def test_two_units_never_share_what_only_one_may_use() -> None:
    """Both would like the same week; the one that loses less moves.."""
    week, next_week = frozenset({"week 1"}), frozenset({"week 2"})
    units = [
        [SolverOption(0, 1, week), SolverOption(0, 12, next_week)],
        [SolverOption(0, 2, week), SolverOption(0, 12, next_week)],
    ]
    # 1 + 12 = 13 against 12 + 2 = 14.
    assert cheapest_choice(units, None) == (0, 1)
    assert cheapest_choice(units, None, alone=week) is None


def test_more_units_than_places_cannot_be_served() -> None:
    """Four units want three places; the solver breaks off over this one when it presolves it."""
    wanted = ["mill 4, mill 7, farm 7", "mill 4, farm 4, lock 4"]
    wanted += ["mill 5, farm 5, lock 5, lock 12", "mill 6, farm 11, lock 11, lock 12"]
    units = [
        [SolverOption(0, 0, frozenset(use.split())) for use in places_and_days.split(", ")]
        for places_and_days in wanted
    ]
    assert cheapest_choice(units, None) is None
    assert cheapest_choice(units[:3], None) is not None


@pytest.mark.parametrize("budget", [None, 0, 100])
def test_without_units_there_is_nothing_to_choose(budget: int | None) -> None:
    """No unit is an empty answer, which is not the same as no answer."""
    assert cheapest_choice([], budget) == ()
    assert cheapest_choice([[]], budget) is None
