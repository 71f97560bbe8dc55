"""Dividing a whole number in proportion, against published apportionments by the same method.

The method of largest remainders divides cents among households as it divides seats among states. Both tables
rest on the population of 15 states by the census of 1790, 3 615 920 in all (M. Balinski and H. P. Young, Fair
Representation, 1982, from memory; the same figures stand on the page named for the second table).
"""

import pytest

from tripplan.planning.together.split import fair_shares

POPULATIONS = {
    "Virginia": 630_560,
    "Massachusetts": 475_327,
    "Pennsylvania": 432_879,
    "North Carolina": 353_523,
    "New York": 331_589,
    "Maryland": 278_514,
    "Connecticut": 236_841,
    "South Carolina": 206_236,
    "New Jersey": 179_570,
    "New Hampshire": 141_822,
    "Vermont": 85_533,
    "Georgia": 70_835,
    "Kentucky": 68_705,
    "Rhode Island": 68_446,
    "Delaware": 55_540,
}

VETOED_BILL = (21, 16, 14, 12, 11, 9, 8, 7, 6, 5, 3, 2, 2, 2, 2)
"""120 seats. Source: COMAP, For All Practical Purposes, 10th edition, chapter 14, example 6, table 14.5."""

SIXTY_SEATS = (11, 8, 7, 6, 6, 5, 4, 3, 3, 2, 1, 1, 1, 1, 1)
"""60 seats. Source: Electowiki, page Hamilton method, section Example."""


@pytest.mark.parametrize("seats", [VETOED_BILL, SIXTY_SEATS], ids=["120 seats", "60 seats"])
def test_seats_are_divided_as_published(seats: tuple[int, ...]) -> None:
    """Whole parts first, then one more for the largest remainders, gives every state its published seats."""
    assert sum(POPULATIONS.values()) == 3_615_920
    assert fair_shares(sum(seats), tuple(POPULATIONS.values())) == seats
