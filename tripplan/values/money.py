"""Exact money: a decimal amount that never loses its currency, and ranges of it."""

from collections.abc import Iterable
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from functools import cache
from typing import Self

from babel.numbers import get_currency_precision

from tripplan.errors import CurrencyMismatch


@cache
def minor_digits(currency: str) -> int:
    """Decimal places of a currency's smallest unit [-], such as 2 for USD and 0 for JPY.

    Source: Unicode CLDR currency data, read through Babel.
    """
    return get_currency_precision(currency)


@cache
def _coin(currency: str) -> Decimal:
    """The smallest unit."""
    return Decimal(1).scaleb(-minor_digits(currency))


def decimals(value: Decimal) -> int:
    """Decimal places a number is written with [-]."""
    exponent = value.as_tuple().exponent
    return max(0, -exponent) if isinstance(exponent, int) else 0


@dataclass(frozen=True)
class Money:
    """An exact amount in one currency.

    Attributes:
        amount: the amount in the currency's main unit; any number of decimals until `rounded`.
        currency: ISO 4217 code.
    """

    amount: Decimal
    currency: str

    @classmethod
    def zero(cls, currency: str) -> Self:
        """No money, in a currency (ISO 4217 code)."""
        return cls(Decimal(0), currency)

    @classmethod
    def from_minor(cls, minor: int, currency: str) -> Self:
        """Money from a whole number of the currency's smallest units [cents or the like]."""
        return cls(Decimal(minor).scaleb(-minor_digits(currency)), currency)

    @property
    def minor(self) -> int:
        """The amount in the currency's smallest units, rounded half up [cents or the like]."""
        scaled = self.amount.scaleb(minor_digits(self.currency))
        return int(scaled.to_integral_value(ROUND_HALF_UP))

    def rounded(self) -> "Money":
        """The same money to the smallest unit that can be paid, half up."""
        # Nothing is added so that no zero keeps a minus sign.
        return Money(self.amount.quantize(_coin(self.currency), ROUND_HALF_UP) + 0, self.currency)

    def _same_currency(self, other: "Money") -> None:
        if self.currency != other.currency:
            raise CurrencyMismatch(self.currency, other.currency)

    def __add__(self, other: "Money") -> "Money":
        self._same_currency(other)
        return Money(self.amount + other.amount, self.currency)

    def __sub__(self, other: "Money") -> "Money":
        self._same_currency(other)
        return Money(self.amount - other.amount, self.currency)

    def __mul__(self, factor: int | Decimal) -> "Money":
        return Money(self.amount * factor, self.currency)

    def __lt__(self, other: "Money") -> bool:
        self._same_currency(other)
        return self.amount < other.amount

    def __le__(self, other: "Money") -> bool:
        self._same_currency(other)
        return self.amount <= other.amount

    def __gt__(self, other: "Money") -> bool:
        return other < self

    def __ge__(self, other: "Money") -> bool:
        return other <= self


def total(amounts: Iterable[Money], currency: str) -> Money:
    """The sum of amounts, zero for none.

    Raises:
        CurrencyMismatch: an amount is not in `currency`.
    """
    summed = Decimal(0)
    for money in amounts:
        if money.currency != currency:
            raise CurrencyMismatch(currency, money.currency)
        summed += money.amount
    return Money(summed, currency)


@dataclass(frozen=True)
class MoneyRange:
    """What an amount may turn out to be: low and high bound the middle 90 %, likely is the best guess.

    Raises:
        ValueError: the three are out of order.
        CurrencyMismatch: they are not in one currency.
    """

    low: Money
    likely: Money
    high: Money

    def __post_init__(self) -> None:
        if not self.low <= self.likely <= self.high:
            raise ValueError(f"a range runs low, likely, high: {self.low}, {self.likely}, {self.high}")

    @classmethod
    def exactly(cls, amount: Money) -> Self:
        """A price that is known: low, likely and high are the same."""
        return cls(amount, amount, amount)

    @property
    def is_exact(self) -> bool:
        """Whether there is no doubt about the amount."""
        return self.low == self.high

    @property
    def currency(self) -> str:
        """ISO 4217 code of the amounts."""
        return self.likely.currency
