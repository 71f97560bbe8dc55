"""Dividing a price and settling accounts, by rule and against a dumb search."""

from collections.abc import Iterator, Sequence
from fractions import Fraction

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from tripplan.errors import PlanError
from tripplan.planning.together.split import EXACT_AT_MOST, fair_shares, fewest_payments

cents = st.integers(0, 20_000)


@settings(derandomize=True)
@given(st.integers(0, 100_000), st.lists(cents, min_size=1, max_size=9))
def test_parts_add_up_and_stay_within_a_cent_of_the_exact_part(total: int, alone: list[int]) -> None:
    """Every part is the exact proportional part rounded down or up, and together they are the price."""
    parts = fair_shares(total, alone)
    assert sum(parts) == total
    assert all(part >= 0 for part in parts)
    for part, weight in zip(parts, alone, strict=True):
        if sum(alone):
            exact = Fraction(total * weight, sum(alone))
            assert abs(part - exact) < 1
            assert weight or not part


@settings(derandomize=True)
@given(st.lists(cents, min_size=1, max_size=9), st.data())
def test_nobody_pays_more_than_alone_when_going_together_is_no_dearer(
    alone: list[int], data: st.DataObject
) -> None:
    """With a common price of at most the sum of the single ones, no part exceeds its own.

    Proof: with total T <= A = a1 + ... + an, the exact part T * a / A is at most a. A part is that rounded
    down or up to a whole cent, and a is a whole number of cents, so rounding up does not pass it either.
    """
    total = data.draw(st.integers(0, sum(alone)))
    assert all(part <= single for part, single in zip(fair_shares(total, alone), alone, strict=True))


def test_where_all_would_be_free_alone_everybody_pays_the_same() -> None:
    """Ten cents among three who would have paid nothing: the first gets the odd cent."""
    assert fair_shares(10, [0, 0, 0]) == (4, 3, 3)
    assert fair_shares(0, [0, 0]) == (0, 0)


def test_equal_fractions_are_rounded_up_in_order() -> None:
    """One cent between two who would have paid the same falls to the first, every time."""
    assert fair_shares(101, [50, 50, 0]) == (51, 50, 0)


def test_what_cannot_be_divided_is_refused() -> None:
    """Nobody to pay, or negative amounts."""
    for total, alone in ((5, []), (-1, [1]), (5, [2, -1])):
        with pytest.raises(PlanError):
            fair_shares(total, alone)
    with pytest.raises(PlanError, match="what some owe"):
        fewest_payments([5, -4])


def partitions(items: Sequence[int]) -> Iterator[list[list[int]]]:
    """Every way to part items into sets."""
    if not items:
        yield []
        return
    for rest in partitions(items[1:]):
        yield [[items[0]], *rest]
        for number, some in enumerate(rest):
            yield [*rest[:number], [items[0], *some], *rest[number + 1 :]]


def settles(balances: Sequence[int]) -> tuple[tuple[int, int, int], ...]:
    """The payments, once it is checked that they leave everybody with nothing open."""
    payments = fewest_payments(balances)
    left = list(balances)
    for payer, receiver, amount in payments:
        assert payer != receiver
        assert amount > 0
        left[payer] += amount
        left[receiver] -= amount
    assert not any(left)
    return payments


small = st.integers(-6, 6)


@settings(derandomize=True, max_examples=200)
@given(st.lists(small, min_size=1, max_size=6))
def test_payments_settle_everything_and_there_are_no_fewer(some: list[int]) -> None:
    """As many payments as open accounts less the most sets that cancel out, found among all partitions.

    Expected: k accounts that cannot be parted into cancelling sets need k - 1 payments, as fewer would leave
    them unconnected and one part of them would cancel by itself.
    """
    balances = [*some, -sum(some)]
    open_ones = [number for number, balance in enumerate(balances) if balance]
    most = max(
        len(sets)
        for sets in partitions(open_ones)
        if all(sum(balances[number] for number in one) == 0 for one in sets)
    )
    assert len(settles(balances)) == len(open_ones) - most


@settings(derandomize=True, max_examples=30)
@given(st.lists(st.integers(-9_999, 9_999), min_size=1, max_size=25))
def test_many_accounts_need_at_most_one_payment_less_than_they_are(some: list[int]) -> None:
    """Also beyond the number up to which payments are the fewest."""
    balances = [*some, -sum(some)]
    assume(any(balances))
    assert len(settles(balances)) <= sum(map(bool, balances)) - 1


def test_accounts_that_cancel_in_pairs_are_settled_in_pairs() -> None:
    """Who owes 5 pays who gets 5, also where a larger debt could be split; twelve accounts, six payments."""
    assert {(3, 0, 5), (2, 1, 9)} == set(settles([5, 9, -9, -5]))
    balances = [sign * (value * value + 1) for value in range(1, 7) for sign in (1, -1)]
    assert len(balances) == EXACT_AT_MOST
    assert len(settles(balances)) == 6
