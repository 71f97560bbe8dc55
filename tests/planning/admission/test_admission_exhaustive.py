"""The calculator against a search that tries everything."""

from dataclasses import replace
from datetime import datetime
from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.builders import make_household
from tests.planning.admission.exhaustive import Search, takes_it
from tests.planning.admission.price_boards import (
    ARRIVAL,
    LEAVING,
    TODAY,
    Question,
    questions,
    with_add_ons,
    with_limits,
)
from tripplan.documents.places.offers import AddOn
from tripplan.documents.places.place import Place
from tripplan.planning.admission import purchase_plans
from tripplan.planning.admission.cheapest import cheapest_admission
from tripplan.planning.admission.result import Admission, NoAdmission
from tripplan.planning.cost.own_money import in_own_money


def ask(
    question: Question,
    other_ways: int = 0,
    *,
    add_ons: tuple[AddOn, ...] = (),
    leaving: datetime | None = None,
) -> Admission | NoAdmission:
    """Put a question to the calculator."""
    return cheapest_admission(
        question.place,
        question.party,
        ARRIVAL,
        today=TODAY,
        household_members=question.household,
        held=question.held,
        other_places=question.others,
        car_seats=question.car_seats,
        other_ways=other_ways,
        add_ons=add_ons,
        leaving=leaving,
    )


@settings(max_examples=100, derandomize=True, suppress_health_check=[HealthCheck.too_slow])
@given(st.one_of(questions(people=(2, 4), offers=3), questions(people=(3, 4), offers=3, few=True)))
def test_no_legal_set_of_offers_is_cheaper(question: Question) -> None:
    """The answer costs, to the cent, what the cheapest of all legal assignments costs, or there is none."""
    least = Search(question).cheapest()
    answer = ask(question)
    if least is None:
        assert isinstance(answer, NoAdmission)
        assert answer.reasons
    else:
        assert isinstance(answer, Admission)
        assert answer.total.minor == least


def beside(question: Question, answer: Admission) -> Fraction:
    """What the party pays beside entry by an answer [cents], not rounded."""
    tax, paid = question.place.sales_tax, Fraction(0)
    for add_on in question.place.add_ons:
        with_ticket = dict(dict(answer.beside).get(add_on.name, ()))
        for position, member in enumerate(question.party):
            if takes_it(member, add_on):
                paid += Fraction(with_ticket.get(position, add_on.price))
    return paid * 100 * (1 + (Fraction(tax.percent) / 100 if tax is not None else 0))


@pytest.mark.parametrize("table_at_most", [purchase_plans.TABLE_SIZE_AT_MOST, 0])
@settings(max_examples=60, derandomize=True, suppress_health_check=list(HealthCheck))
@given(asked=with_add_ons(questions(people=(2, 4), offers=2)))
def test_tickets_are_chosen_with_what_is_wanted_beside_entry(asked: Question, table_at_most: int) -> None:
    """Where a ticket includes an add-on, or makes it cheaper, entry and add-ons together cost the least.

    By the table, and by the integer programme.
    """
    least = Search(asked).least_in_all()
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(purchase_plans, "TABLE_SIZE_AT_MOST", table_at_most)
        answer = ask(asked, add_ons=asked.place.add_ons)
    if least is None:
        assert isinstance(answer, NoAdmission)
    else:
        assert isinstance(answer, Admission)
        assert abs(answer.total.minor + beside(asked, answer) - least) <= Fraction(1, 2)


@pytest.mark.parametrize("table_at_most", [purchase_plans.TABLE_SIZE_AT_MOST, 0])
@settings(max_examples=40, derandomize=True, suppress_health_check=list(HealthCheck))
@given(asked=with_limits(questions(people=(2, 4), offers=2)))
def test_only_offers_that_keep_to_their_limits_are_sold(
    asked: tuple[Question, Question], table_at_most: int
) -> None:
    """Days, hours, booking ahead, length of stay, leaving time: the least of all assignments of what is left.

    By the table, and by the integer programme.
    """
    limited, good = asked
    least = Search(good).cheapest()
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(purchase_plans, "TABLE_SIZE_AT_MOST", table_at_most)
        answer = ask(limited, leaving=LEAVING)
    if least is None:
        assert isinstance(answer, NoAdmission)
    else:
        assert isinstance(answer, Admission)
        assert answer.total.minor == least


RATE = Decimal("1.0837")


def dearer(value: Any, name: str = "") -> Any:
    """A card as its file holds it, every amount of money at a rate, with four digits."""
    if isinstance(value, dict):
        return {key: dearer(one, key) for key, one in value.items()}
    if isinstance(value, list):
        return [dearer(one, name) for one in value]
    return str(round(Decimal(value) * RATE, 4)) if name in ("price", "amount_off") and value else value


@pytest.mark.parametrize("table_at_most", [purchase_plans.TABLE_SIZE_AT_MOST, 0])
@settings(max_examples=40, derandomize=True, suppress_health_check=list(HealthCheck))
@given(asked=questions(people=(2, 4), offers=2))
def test_at_the_parents_own_rate_no_legal_set_is_cheaper(asked: Question, table_at_most: int) -> None:
    """A board in euros, counted at $1.0837: to the cent the least of all assignments at converted prices.

    By the table, and by the integer programme. Passes of other places are left aside.
    """
    card = {**asked.place.model_dump(mode="json"), "currency": "EUR"}
    rate = {"currency": "EUR", "worth": str(RATE), "on": TODAY}
    own = in_own_money(Place.model_validate(card), make_household(exchange_rates=[rate]))
    converted = Place.model_validate({**dearer(card), "currency": "USD"})
    least = Search(replace(asked, place=converted, others=())).cheapest()
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(purchase_plans, "TABLE_SIZE_AT_MOST", table_at_most)
        answer = ask(replace(asked, place=own, others=()))
    if least is None:
        assert isinstance(answer, NoAdmission)
    else:
        assert isinstance(answer, Admission)
        assert (answer.total.minor, answer.total.currency) == (least, "USD")
