"""Which published mileage rate counts on a day."""

from datetime import date, timedelta
from decimal import Decimal

import pytest

from tripplan.planning.cost.mileage_rates import published_on

# IRS, standard mileage rates: Announcement 2022-13 for July 2022, else yearly notices; from memory but for
# those of 2025 and 2026, which are in the product's own source.
US = [
    (date(2022, 1, 1), "0.585"),
    (date(2022, 7, 1), "0.625"),
    (date(2023, 1, 1), "0.655"),
    (date(2024, 1, 1), "0.67"),
    (date(2025, 1, 1), "0.70"),
    (date(2026, 1, 1), "0.725"),
]


@pytest.mark.parametrize(("since", "business"), US)
def test_a_us_rate_counts_from_its_first_day_on(since: date, business: str) -> None:
    """On the day itself, and the one before still has another."""
    rates, before = published_on(since).us, published_on(since - timedelta(days=1)).us
    assert rates is not None
    assert rates.business == Decimal(business)
    assert before is None or before.business != rates.business


def test_before_the_first_and_after_the_last_year_on_record() -> None:
    """Nobody guesses backwards; days yet to be decided go by the newest rate."""
    assert published_on(date(2021, 12, 31)).us is None
    later = published_on(date(2031, 5, 5))
    assert later.us == published_on(date(2026, 1, 1)).us is not None
    assert later.uk is not None
    assert (later.uk.first_10_000_miles, later.uk.beyond) == (Decimal("0.45"), Decimal("0.25"))
