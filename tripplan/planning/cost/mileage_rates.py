"""What governments say a mile by car costs, by the date from which each rate counts."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from functools import lru_cache
from typing import Protocol, TypeVar


class _Dated(Protocol):
    @property
    def since(self) -> date: ...


@dataclass(frozen=True, eq=False)
class UsRates:
    """Standard mileage rates of the US Internal Revenue Service.

    Attributes:
        since: the first day they count.
        business: all costs of the car [USD/mi].
        medical_or_moving: variable costs only, mostly fuel [USD/mi].
        depreciation: the part of `business` that is loss of value [USD/mi]; None where not at hand.
    """

    since: date
    business: Decimal
    medical_or_moving: Decimal
    depreciation: Decimal | None


US_RATES = tuple(
    UsRates(since, Decimal(business), Decimal(moving), Decimal(wear) if wear else None)
    for since, business, moving, wear in (
        (date(2022, 1, 1), "0.585", "0.18", ""),
        (date(2022, 7, 1), "0.625", "0.22", ""),
        (date(2023, 1, 1), "0.655", "0.22", "0.28"),
        (date(2024, 1, 1), "0.67", "0.21", "0.30"),
        (date(2025, 1, 1), "0.70", "0.21", "0.33"),
        (date(2026, 1, 1), "0.725", "0.205", "0.35"),
    )
)
"""Source: IRS, standard mileage rates, yearly notices (for 2026 Notice 2026-10), read in a university's table
of 2012-2025 and in pages that quote the notices. In 2022 they changed in July, so they go by date."""


@dataclass(frozen=True, eq=False)
class UkRates:
    """Approved mileage allowance of HM Revenue and Customs for cars and vans.

    Attributes:
        since: the first day it counts.
        first_10_000_miles: all costs of the car [GBP/mi].
        beyond: per mile after that, when the fixed costs are covered [GBP/mi].
    """

    since: date
    first_10_000_miles: Decimal
    beyond: Decimal


UK_RATES = (UkRates(date(2011, 4, 6), Decimal("0.45"), Decimal("0.25")),)
"""Source: HMRC, approved mileage allowance payments, read on a payroll page for 2025-26; the start in 2011
from memory."""


@dataclass(frozen=True)
class PublishedRates:
    """The rates that count on a day; None before the first.

    Attributes:
        us: of the United States.
        uk: of the United Kingdom.
    """

    us: UsRates | None
    uk: UkRates | None


@lru_cache(maxsize=1024)
def published_on(day: date) -> PublishedRates:
    """The published rates of a day."""
    return PublishedRates(rates_on(US_RATES, day), rates_on(UK_RATES, day))


_Rates = TypeVar("_Rates", bound=_Dated)


def rates_on(table: Sequence[_Rates], day: date) -> _Rates | None:
    """The rates that count on a day; the newest ones for days yet to be decided, None before the first."""
    return max((rates for rates in table if rates.since <= day), key=lambda rates: rates.since, default=None)
