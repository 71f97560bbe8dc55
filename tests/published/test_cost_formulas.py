"""Units, fuel formulas and mileage rates against published values and worked examples."""

from datetime import date
from decimal import Decimal

import pytest

from tests.builders import make_household, make_place
from tripplan.planning.admission.result import Admission
from tripplan.planning.cost import CostItem, outing_cost
from tripplan.planning.cost.mileage_rates import UK_RATES, US_RATES, rates_on
from tripplan.planning.travel.drive import Drive, KnownBy, Leg
from tripplan.values.cost_kind import CostKind
from tripplan.values.money import Money
from tripplan.values.ranges import Origin, Range, Source
from tripplan.values.units import KM_PER_MILE, LITRES_PER_US_GALLON, litres_per_100_km


def test_miles_per_gallon_turn_into_litres_as_published() -> None:
    """24 miles per US gallon are 9.8 L/100 km, by a factor of 235.215.

    Source: NIST SP 811, Guide for the Use of the International System of Units, 2008, section B.5.
    """
    assert round(litres_per_100_km(Decimal(24)), 1) == Decimal("9.8")
    assert round(litres_per_100_km(Decimal(1)), 3) == Decimal("235.215")


def test_gallon_and_mile_follow_from_exact_definitions() -> None:
    """231 cubic inches of 2.54 cm; a mile of 5280 feet of 0.3048 m.

    Source: NIST SP 811, 2008, appendix B.8.
    """
    assert Decimal("2.54") ** 3 * 231 / 1000 == LITRES_PER_US_GALLON
    assert Decimal("0.3048") * 5280 / 1000 == KM_PER_MILE


def driving_120_miles(day: date, *, count_wear: bool = False, **household: object) -> list[CostItem]:
    """The car items of a drive of 120 exact miles there and back."""
    one_way = Range.exactly(float(60 * KM_PER_MILE))
    source = Source(Origin.PARENT, "typed in for tests")
    leg = Leg(Drive(one_way, Range.exactly(75), KnownBy.TYPED, source), 0, 75, (), 0)
    family = make_household(**household)
    free = Admission((), Money.zero("USD"), {}, (), ())
    cost = outing_cost(family, family.members, day, make_place(), free, leg, leg, count_wear=count_wear)
    return [item for item in cost.items if item.kind is CostKind.CAR]


@pytest.mark.parametrize(
    ("car", "expected"),
    [
        ({"fuel": "mpg", "consumption": "24", "fuel_price": "3.12"}, "15.60"),
        ({"fuel": "kWh/100km", "consumption": str(33 / KM_PER_MILE), "fuel_price": "0.226"}, "8.95"),
        ({"fuel": "per mile", "rate": "0.725"}, "87.00"),
    ],
    ids=["petrol", "electric", "rate"],
)
def test_a_trip_costs_what_worked_examples_say(car: dict[str, str], expected: str) -> None:
    """120 miles: at 24 mpg and 3.12 a gallon 15.60; at 33 kWh per 100 miles and 0.226 a kWh 8.95.

    Source: a public trip cost calculator's own example, as no government page with one was found; the rate
    per mile is plain arithmetic, 120 times 0.725.
    """
    (item,) = driving_120_miles(date(2026, 12, 8), car=car)
    assert item.amount is not None
    assert item.amount.likely == Money(Decimal(expected), "USD")


@pytest.mark.parametrize(
    ("day", "business", "moving"),
    [
        (date(2022, 6, 30), "0.585", "0.18"),
        (date(2022, 7, 1), "0.625", "0.22"),
        (date(2023, 12, 31), "0.655", "0.22"),
        (date(2024, 2, 29), "0.67", "0.21"),
        (date(2025, 7, 4), "0.70", "0.21"),
        (date(2026, 1, 1), "0.725", "0.205"),
    ],
)
def test_us_rates_go_by_date(day: date, business: str, moving: str) -> None:
    """A rate counts from its own day on; in 2022 it changed in July.

    Source: IRS standard mileage rates, yearly notices 2022 to 2026, read in pages that quote them.
    """
    rates = rates_on(US_RATES, day)
    assert rates is not None
    assert (rates.business, rates.medical_or_moving) == (Decimal(business), Decimal(moving))


def test_rates_reach_forward_but_not_back() -> None:
    """The newest rate stands in for days to come; before the first there is none."""
    assert rates_on(US_RATES, date(2028, 1, 1)) is US_RATES[-1]
    assert rates_on(US_RATES, date(2021, 12, 31)) is None


def test_uk_allowance_is_the_worked_example() -> None:
    """100 miles are 45.00; 11 500 miles are 10 000 at 0.45 and 1 500 at 0.25, 4 875.00 together.

    Source: HMRC approved mileage allowance payments, worked example of a payroll page for 2025-26
    (100 miles); the second by arithmetic.
    """
    rates = rates_on(UK_RATES, date(2025, 6, 1))
    assert rates is not None
    assert 100 * rates.first_10_000_miles == Decimal("45.00")
    assert 10_000 * rates.first_10_000_miles + 1_500 * rates.beyond == Decimal("4875.00")


def test_without_a_car_the_marginal_rate_of_the_day_counts() -> None:
    """120 miles at 20.5 cents are 24.60 in 2026, and 35 cents of wear are 42.00.

    Source: IRS Notice 2026-10 as quoted; the products by arithmetic.
    """
    running, wear = driving_120_miles(date(2026, 12, 8), car=None, count_wear=True)
    assert running.amount is not None
    assert wear.amount is not None
    assert running.amount.likely == Money(Decimal("24.60"), "USD")
    assert wear.amount.likely == Money(Decimal("42.00"), "USD")
