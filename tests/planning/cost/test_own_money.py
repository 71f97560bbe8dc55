"""A place in another currency is planned at the parent's own rate, and says so."""

from datetime import date
from decimal import Decimal

import pytest

from tests.builders import codes, make_household, make_place
from tripplan.documents.places.place import Place
from tripplan.language.sentences import fact
from tripplan.planning.cost.own_money import in_own_money
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import NoOuting, Outing, plan_outing
from tripplan.planning.outing.place_facts import place_facts

TODAY, DAY = date(2026, 11, 25), date(2026, 12, 8)
RATE = {"currency": "EUR", "worth": "1.25", "on": "2026-11-20"}


def planned(place: Place, **household: object) -> Outing | NoOuting:
    """A day at the place."""
    family = Family(make_household(**household), (place,))
    return plan_outing(family, family.party(), place_facts(family, place, (2026,)), DAY, today=TODAY)


def test_without_a_rate_it_is_refused() -> None:
    """The reason names both currencies and what would help."""
    answer = planned(make_place(currency="EUR"))
    assert isinstance(answer, NoOuting)
    assert answer.reasons == (fact("outing-no-rate", currency="EUR", own="USD"),)


def test_at_the_parents_rate_it_costs_so_much_more() -> None:
    """At 1.25 the entry of 37.00 (two adults at 14, a child at 9, a baby free) is 46.25, parking 6.25."""
    answer = planned(make_place(currency="EUR"), exchange_rates=[RATE])
    assert isinstance(answer, Outing)
    assert (answer.admission.total.amount, answer.admission.total.currency) == (Decimal("46.25"), "USD")
    parking = next(item for item in answer.cost.items if item.label.code == "costs-parking")
    assert parking.likely is not None
    assert parking.likely.amount == Decimal("6.25")
    assert "notes-rate" in codes(answer.notes)
    assert "typed in" in parking.source.text


def test_only_money_is_converted() -> None:
    """Percentages, ages and numbers of people stay; a place in the own currency stays as it is."""
    household = make_household(exchange_rates=[RATE])
    place = make_place(
        currency="EUR",
        vouchers=[{"name": "V", "percent_off": "10"}, {"name": "W", "amount_off": "8"}],
        parking={"rates": [{"per_hour": "2", "at_most": "10", "up_to_minutes": 90}]},
        sales_tax={"percent": "7"},
    )
    own = in_own_money(place, household)
    assert own.vouchers[0].percent_off == 10
    assert own.vouchers[1].amount_off == 10
    rate = own.parking.rates[0]
    assert (rate.per_hour, rate.at_most, rate.up_to_minutes) == (Decimal("2.5"), Decimal("12.5"), 90)
    assert own.sales_tax == place.sales_tax
    dollars = make_place()
    assert in_own_money(dollars, household) is dollars


@pytest.mark.parametrize("rates", [[RATE, RATE], [{**RATE, "currency": "USD"}]])
def test_each_currency_has_one_rate(rates: list[dict[str, str]]) -> None:
    """Neither twice, nor the household's own."""
    with pytest.raises(ValueError, match="each currency once"):
        make_household(exchange_rates=rates)


def test_two_cars_are_said_in_sight() -> None:
    """Four people in a car of three seats need two; in one of five, nothing is said."""
    from tripplan.planning.outing.sentences import cars_sentence

    answer = planned(make_place())
    assert isinstance(answer, Outing)
    small = make_household(car={"fuel": "mpg", "consumption": "24", "fuel_price": "3.12", "seats": 3})
    assert cars_sentence(answer, make_household()) == ""
    assert cars_sentence(answer, small).startswith("2 cars for 4 people")
