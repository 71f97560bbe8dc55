"""How long a party takes from waking to 'shoes on', and how much driving it bears in a day."""

import pytest

from tripplan.planning.travel.morning import READY_AT_MOST_MINUTES, usual_ready_minutes
from tripplan.planning.travel.patience import usual_driving_in_a_day

YEAR = 12


@pytest.mark.parametrize(
    ("ages", "ready", "driving"),
    [
        ([40 * YEAR], 30, 540),
        ([40 * YEAR, 13 * YEAR], 30, 480),
        ([40 * YEAR, 9 * YEAR], 30, 360),
        ([40 * YEAR, 5 * YEAR], 40, 300),
        ([40 * YEAR, 2 * YEAR, 1 * YEAR], 60, 240),
        ([40 * YEAR, 2 * YEAR, 5, 5], 75, 180),
    ],
)
def test_the_smaller_the_children_the_later_and_the_shorter(
    ages: list[int], ready: int, driving: int
) -> None:
    """Half an hour, a quarter more for each under three, ten minutes for each under six; no source.

    The most driving is that of the field's description, three hours with a child under one.
    """
    assert usual_ready_minutes(ages) == ready
    assert usual_driving_in_a_day(ages) == driving


def test_getting_ready_has_an_end() -> None:
    """However many small children there are."""
    assert usual_ready_minutes([12] * 20) == READY_AT_MOST_MINUTES
