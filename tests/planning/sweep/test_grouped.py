"""Days that are equal in several columns are told in one go."""

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from tripplan.planning.sweep.dates import grouped

LARGEST = (0, 1, 3, 80, 5000, 10**7)
"""Up to which number a column reaches: constant, narrow, renumbered by a table, and by sorting."""


@st.composite
def columns(draw: st.DrawFn) -> list[list[int]]:
    """A few columns with a number for each of some days."""
    days = draw(st.integers(1, 40))
    reach = st.sampled_from(LARGEST).flatmap(lambda most: st.integers(-most, most))
    return draw(st.lists(st.lists(reach, min_size=days, max_size=days), min_size=1, max_size=6))


@given(columns())
def test_days_of_a_kind_are_those_that_are_equal(drawn: list[list[int]]) -> None:
    """Two days have the same kind if and only if all their numbers are; each kind has a day that is of it."""
    ones, kinds = grouped([np.array(column, dtype=np.int64) for column in drawn])
    days = list(zip(*drawn, strict=True))
    numbers = dict(zip(days, kinds.tolist(), strict=True))
    assert [numbers[day] for day in days] == kinds.tolist()
    assert sorted(numbers.values()) == list(range(len(ones)))
    assert kinds[ones].tolist() == list(range(len(ones)))
