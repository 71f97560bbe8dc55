"""What the terms of an offer say about each of its rules, on offers that have every rule."""

from decimal import Decimal
from typing import Any

import pytest

from tests.builders import make_place
from tests.planning.admission.price_boards import ARRIVAL, DAY, TODAY, person
from tripplan.documents.family.held_pass import HeldPass
from tripplan.documents.places.offers import Offer
from tripplan.planning.admission.cheapest import cheapest_admission
from tripplan.planning.admission.result import Admission, NoAdmission
from tripplan.planning.admission.terms.registry import terms_of

GROUP: dict[str, Any] = {
    "name": "Group",
    "price": "4",
    "needs": ["educator"],
    "one_status_covers": 5,
    "companions": {},
    "at_least": 2,
    "at_most": 9,
}
FAMILY: dict[str, Any] = {
    "kind": "bundle",
    "name": "Family",
    "price": "20",
    "seats": [{"count": 4}],
    "extras": {"price": "3", "at_most": 2},
    "needs": ["resident"],
    "must_include": "18+",
    "at_least": 2,
    "at_most": 1,
    "one_family": True,
}


def offer_of(written: dict[str, Any]) -> Offer:
    """The offer as it stands on a card."""
    return make_place(offers=[written]).offers[0]


@pytest.mark.parametrize(
    ("written", "fields"),
    [
        (GROUP, {"companions", "at_least", "at_most", "needs"}),
        ({"kind": "discount", "name": "D", "percent_off": "5", "at_most": 2}, {"at_most"}),
        (FAMILY, {"must_include", "needs", "at_least", "at_most", "one_family", "extras"}),
        ({**FAMILY, "per_car": True}, {*("must_include", "needs", "at_least", "at_most"), "per_car"}),
        ({**FAMILY, "counts_everybody": True}, {"counts_everybody"}),
    ],
)
def test_without_each_rule_that_ties_people_together_it_is_gone(
    written: dict[str, Any], fields: set[str]
) -> None:
    """Each is lifted by itself: one field is then as when it is left out, and all others stay."""
    offer = offer_of(written)
    lifted_fields = set()
    for lifted, words in terms_of(offer).ties():
        (field,) = (
            name for name in type(offer).model_fields if getattr(lifted, name) != getattr(offer, name)
        )
        lifted_fields.add(field)
        if field == "extras":
            assert lifted.extras.at_most is None
        else:
            assert getattr(lifted, field) == type(offer).model_fields[field].default
        assert words
    assert fields <= lifted_fields


@pytest.mark.parametrize(
    ("offer", "people", "said"),
    [
        ({**GROUP, "needs": [], "companions": None, "at_least": 3}, 2, "from 3 people"),
        ({**GROUP, "needs": [], "companions": None, "at_most": 2}, 3, "at most 2"),
        ({**FAMILY, "needs": [], "extras": None, "one_family": False}, 5, "at most 1"),
        ({**FAMILY, "needs": [], "one_family": False, "at_least": 3}, 2, "3 seats"),
        ({**FAMILY, "one_family": False}, 3, "resident"),
    ],
)
def test_the_one_rule_that_keeps_a_party_out_is_named(offer: dict[str, Any], people: int, said: str) -> None:
    """It is the only offer on the board, and only one rule of it is broken."""
    party = tuple(person(f"P{number}", 40) for number in range(people))
    answer = cheapest_admission(make_place(offers=[offer]), party, ARRIVAL, today=TODAY)
    assert isinstance(answer, NoAdmission)
    assert any(said in reason.text for reason in answer.reasons)


def test_parts_of_a_percent_are_exact_for_many() -> None:
    """Forty at 9.99 less 33.3 % are 266.5332, so 266.53; with one digit less for each it would be 266.52."""
    board = [
        {"name": "All", "price": "9.99"},
        {"kind": "discount", "name": "Part", "percent_off": "33.3"},
    ]
    party = tuple(person(f"P{number}", 40) for number in range(40))
    answer = cheapest_admission(make_place(offers=board), party, ARRIVAL, today=TODAY)
    assert isinstance(answer, Admission)
    assert str(answer.total.amount) == "266.53"


def test_tax_stands_once_on_the_order() -> None:
    """Ten percent on two tickets of 12 are one line of 2.40."""
    place = make_place(offers=[{"name": "All", "price": "12"}], sales_tax={"percent": "10"})
    answer = cheapest_admission(place, (person("Ann", 40), person("Bo", 40)), ARRIVAL, today=TODAY)
    assert isinstance(answer, Admission)
    tax = answer.purchases[-1]
    assert (tax.quantity, tax.unit_price.amount, str(tax.total.amount)) == (1, Decimal("2.4"), "2.40")


@pytest.mark.parametrize(("days", "ahead"), [(-1, True), (0, False)])
def test_a_voucher_that_ends_before_the_visit_is_used_ahead(days: int, ahead: bool) -> None:
    """One that counts until the day before the visit must be used by then; one until that day need not."""
    last_day = DAY.replace(day=DAY.day + days)
    voucher = {"name": "Half", "percent_off": "50", "last_day": last_day}
    place = make_place(offers=[{"name": "All", "price": "12"}], vouchers=[voucher])
    answer = cheapest_admission(place, (person("Ann", 40),), ARRIVAL, today=TODAY)
    assert isinstance(answer, Admission)
    assert str(answer.total.amount) == "6.00"
    assert any("Half" in note for note in answer.notes) is ahead


@pytest.mark.parametrize(("valid_until", "total"), [(DAY, "0.00"), (DAY.replace(day=DAY.day - 1), "12.00")])
def test_a_pass_counts_to_its_last_day(valid_until: Any, total: str) -> None:
    """The day of the visit is the last on which the card counts, or the day after it."""
    card = {"kind": "pass", "name": "Card", "price": "90", "months": 12, "seats": [{"count": 1}]}
    held = HeldPass(place="test-museum", offer="Card", holders=("Ann",), valid_until=valid_until)
    place = make_place(offers=[{"name": "All", "price": "12"}, card])
    answer = cheapest_admission(place, (person("Ann", 40),), ARRIVAL, today=TODAY, held=(held,))
    assert isinstance(answer, Admission)
    assert str(answer.total.amount) == total


def test_an_offer_without_a_rule_has_none_to_lift() -> None:
    """Nothing ties the users of a plain ticket, discount or bundle together."""
    plain: tuple[dict[str, Any], ...] = (
        {"name": "Adult", "price": "12"},
        {"name": "Odd", "price": "12", "one_status_covers": 2},
        {"kind": "discount", "name": "Residents", "percent_off": "25"},
        {"kind": "bundle", "name": "Pair", "price": "20", "seats": [{"count": 2}], "extras": {"price": "5"}},
    )
    for offer in plain:
        assert not list(terms_of(offer_of(offer)).ties())
