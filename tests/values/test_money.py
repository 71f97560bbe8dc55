from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tripplan.errors import CurrencyMismatch
from tripplan.values.money import Money, MoneyRange, total


def usd(amount: str) -> Money:
    """Dollars."""
    return Money(Decimal(amount), "USD")


def test_two_currencies_never_add_up_silently() -> None:
    """Adding or comparing two currencies raises and names both."""
    with pytest.raises(CurrencyMismatch, match="USD and EUR"):
        usd("1") + Money(Decimal(1), "EUR")
    with pytest.raises(CurrencyMismatch):
        _ = usd("1") < Money(Decimal(1), "EUR")
    with pytest.raises(CurrencyMismatch):
        total([usd("1"), Money(Decimal(1), "EUR")], "USD")


@pytest.mark.parametrize(
    ("amount", "currency", "minor"),
    [("12.50", "USD", 1250), ("12.345", "USD", 1235), ("-12.345", "USD", -1235), ("700", "JPY", 700)],
)
def test_minor_units_follow_the_currency(amount: str, currency: str, minor: int) -> None:
    """Cents for dollars, whole yen for yen (ISO 4217 minor units, by CLDR), halves away from zero."""
    assert Money(Decimal(amount), currency).minor == minor


@given(st.integers(-(10**9), 10**9), st.sampled_from(["USD", "EUR", "JPY", "KWD"]))
def test_minor_units_round_trip(minor: int, currency: str) -> None:
    """Money made from smallest units gives the same number back."""
    assert Money.from_minor(minor, currency).minor == minor


def test_a_range_keeps_its_order() -> None:
    """Low, likely and high cannot be out of order."""
    with pytest.raises(ValueError, match="low, likely, high"):
        MoneyRange(usd("2"), usd("1"), usd("3"))
    assert MoneyRange.exactly(usd("2")).is_exact
