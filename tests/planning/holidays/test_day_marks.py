"""Weekends that lie inside a break, by hand."""

from datetime import date

import numpy as np
import pytest

from tripplan.planning.holidays.day_marks import weekends_by_neighbours, with_weekends_inside

FRIDAY = date(2026, 12, 4)


@pytest.mark.parametrize(
    ("off", "expected"),
    [
        ([True, False, False, True], [True, True, True, True]),
        ([True, False, False, False], [True, False, False, False]),
        ([False, False, False, True], [False, False, False, True]),
        ([True, False, False], [True, False, False]),
    ],
    ids=["both", "Friday alone", "Monday alone", "no Monday to see"],
)
def test_a_weekend_between_a_friday_and_a_monday_off_belongs_to_the_break(
    off: list[bool], expected: list[bool]
) -> None:
    """Friday to Monday, and a row that ends before Monday says nothing of its weekend."""
    assert with_weekends_inside(np.array(off), FRIDAY).tolist() == expected


def test_a_weekend_has_the_lower_chance_of_its_friday_and_monday() -> None:
    """0.8 and 0.3 make 0.3; a weekend at the end of a row keeps its own."""
    assert weekends_by_neighbours(np.array([0.8, 0, 0, 0.3]), FRIDAY).tolist() == [0.8, 0.3, 0.3, 0.3]
    assert weekends_by_neighbours(np.array([0.8, 0.1, 0.2]), FRIDAY).tolist() == [0.8, 0.1, 0.2]
