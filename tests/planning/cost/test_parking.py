"""Parking by hour and weekday; the sums are worked by hand beside the rates."""

from datetime import datetime, timedelta
from decimal import Decimal
from typing import Any
from zoneinfo import ZoneInfo

import pytest

from tripplan.documents.places.offers import Parking
from tripplan.planning.admission.availability import VisitTime
from tripplan.planning.cost.parking import parking_price

TUESDAY = datetime(2026, 12, 8, 10, 0, tzinfo=ZoneInfo("America/Chicago"))
SUNDAY = TUESDAY + timedelta(days=5)
STEPS: tuple[dict[str, Any], ...] = (
    {"valid": "Su", "price": "0"},
    {"up_to_minutes": 60, "price": "2"},
    {"up_to_minutes": 180, "price": "5"},
)
HOURLY: tuple[dict[str, Any], ...] = (
    {"price": "1", "per_hour": "1.50", "free_minutes": 30, "at_most": "8.50"},
)


def price(rates: tuple[dict[str, Any], ...], minutes: int, moment: datetime = TUESDAY) -> Decimal | None:
    """For one car and a stay of so many minutes, beside a price of 12 for any time."""
    parking = Parking.model_validate({"price": "12", "rates": rates})
    visit = VisitTime(moment, moment.date(), leaving=moment + timedelta(minutes=minutes))
    return parking_price(parking, visit)


@pytest.mark.parametrize(
    ("rates", "minutes", "moment", "due"),
    [
        (STEPS, 60, TUESDAY, "2"),
        (STEPS, 61, TUESDAY, "5"),
        (STEPS, 181, TUESDAY, "12"),  # no step fits: the price that always counts
        (STEPS, 300, SUNDAY, "0"),  # the first line that fits
        (HOURLY, 30, TUESDAY, "1"),  # nothing but the fixed part
        (HOURLY, 31, TUESDAY, "2.50"),  # one hour begun
        (HOURLY, 150, TUESDAY, "4"),  # two hours: 1 + 2 x 1.50
        (HOURLY, 600, TUESDAY, "8.50"),  # ten hours begun would be 16
        ((), 60, TUESDAY, "12"),
    ],
)
def test_the_first_rate_that_fits_counts(
    rates: tuple[dict[str, Any], ...], minutes: int, moment: datetime, due: str
) -> None:
    """By the moment of arrival and the length of the stay; hours count from their beginning."""
    assert price(rates, minutes, moment) == Decimal(due)


def test_unknown_stays_unknown() -> None:
    """Where no rate fits and the card names no other price, none is made up."""
    parking = Parking.model_validate({"rates": [{"valid": "Su", "price": "3"}]})
    visit = VisitTime(TUESDAY, TUESDAY.date(), leaving=TUESDAY + timedelta(hours=2))
    assert parking_price(parking, visit) is None
    assert parking_price(parking, None) is None


def test_a_stay_over_a_clock_change_counts_real_minutes() -> None:
    """From 0:30 to 3:30 in the night when clocks go forward are two hours, not three."""
    night = datetime(2027, 3, 14, 0, 30, tzinfo=ZoneInfo("America/Chicago"))
    parking = Parking.model_validate({"rates": [{"per_hour": "2"}]})
    visit = VisitTime(night, night.date(), leaving=night.replace(hour=3))
    assert parking_price(parking, visit) == Decimal(4)
