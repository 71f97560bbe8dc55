"""Every kind of rule as a parent reads it."""

from datetime import date
from decimal import Decimal
from typing import Any

import pytest
from pydantic import TypeAdapter

from tripplan.documents.places import offer_sentences as sentences
from tripplan.documents.places.offers import (
    AddOn,
    Bundle,
    Fee,
    MustBeAccompanied,
    Offer,
    Pass,
    SalesTax,
    Ticket,
    Voucher,
)

OFFER: TypeAdapter[Offer] = TypeAdapter(Offer)


@pytest.mark.parametrize(
    ("offer", "said"),
    [
        (
            {"name": "Child", "price": "9", "ages": "3-12"},
            "Child: $9.00 each for people aged 3 to 12.",
        ),
        (
            {"name": "Tot", "price": "0", "ages": "under 3", "companions": {"each_allows": 2}},
            "Tot: free for people under 3, up to 2 for each paying companion aged 18 or over.",
        ),
        (
            {
                "name": "Carer",
                "price": "0",
                "companions": {"ages": "any", "needs": ["visitor with a disability"], "must_pay": False},
            },
            "Carer: free for people of any age, up to 1 for each companion of any age with proof of "
            "'visitor with a disability'.",
        ),
        (
            {"name": "Teacher", "price": "4", "needs": ["educator", "tutor"], "one_status_covers": 3},
            "Teacher: $4.00 each for people of any age, with proof of 'educator' or 'tutor', which covers 3 "
            "people, its holder included.",
        ),
        (
            {"name": "Group", "price": "5", "at_least": 10, "at_most": 40, "one_free_per": 10},
            "Group: $5.00 each for people of any age, from 10 people on, at most 40 to one party, with a "
            "leader aged 18 or over free for every 10 payers.",
        ),
        (
            {
                "name": "Winter",
                "price": "3",
                "ages": "7",
                "valid": "Nov-Mar",
                "first_day": "2026-11-01",
                "last_day": "2027-03-31",
                "book_days_ahead": 1,
            },
            "Winter: $3.00 each for people aged 7, good only at these times: Nov-Mar, from Sun, Nov 1, 2026, "
            "until Wed, Mar 31, 2027, to be booked at least 1 day ahead.",
        ),
        (
            {
                "kind": "bundle",
                "name": "Family",
                "price": "30",
                "seats": [{"count": 2, "ages": "18+"}, {"count": 1, "ages": "6-23 months"}],
                "extras": {"price": "4", "at_most": 2},
                "must_include": "18+",
                "needs": ["resident"],
                "at_least": 2,
                "at_most": 1,
            },
            "Family: $30.00 for up to 2 people aged 18 or over and 1 person aged 6 to 23 months together, "
            "$4.00 for each further person of any age (at most 2), with somebody aged 18 or over among them, "
            "with proof of 'resident' by one of them, with at least 2 of its seats taken, at most 1 to one "
            "party.",
        ),
        (
            {
                "kind": "pass",
                "name": "Card",
                "price": "90",
                "months": 12,
                "seats": [{"count": 4}],
                "guests_percent_off": "50",
                "guests_at_most": 1,
                "parking_included": True,
                "elsewhere": [{"place": "a"}, {"place": "b", "percent_off": "12.5"}],
            },
            "Card: $90.00 for 12 months of visits by up to 4 people of any age of the household, 50 % off "
            "the single price of up to 1 guest, parking included, free entry at 'a', 12.5 % off at 'b'.",
        ),
    ],
)
def test_offers_read_as_one_sentence(offer: dict[str, Any], said: str) -> None:
    """Every rule of the offer is in its sentence."""
    assert sentences.sentence(OFFER.validate_python(offer), "USD") == said


def test_what_comes_with_an_offer_has_its_own_sentence() -> None:
    """Extra persons, guests, leaders, held passes and passes from elsewhere."""
    bundle = Bundle.model_validate(
        {"name": "F", "price": 9, "seats": [{"count": 2}], "extras": {"price": 4, "ages": "under 18"}}
    )
    card = Pass.model_validate(
        {
            "name": "Card",
            "price": 90,
            "months": 12,
            "seats": [{"count": 2}],
            "guests_percent_off": 30,
            "guests_at_most": 2,
        }
    )
    group = Ticket.model_validate({"name": "Group", "price": 5, "at_least": 8, "one_free_per": 8})
    assert sentences.extra_sentence(bundle, "USD") == "Each further person under 18 on 'F': $4.00."
    assert sentences.guest_sentence(card) == "'Card' takes 30 % off the single price of up to 2 guests."
    assert sentences.leader_sentence(group) == (
        "One leader aged 18 or over goes free for every 8 who pay 'Group'."
    )
    assert sentences.held_sentence(card, date(2027, 1, 31)) == (
        "'Card' is already paid until Sun, Jan 31, 2027 and lets in up to 2 people of any age of the "
        "household."
    )
    assert sentences.elsewhere_sentence(card, "Far museum", Decimal(100)) == (
        "With 'Card' of Far museum, entry is free here."
    )
    assert sentences.elsewhere_sentence(card, "Far museum", Decimal("25")) == (
        "With 'Card' of Far museum, 25 % off the single price here."
    )


def test_fees_tax_vouchers_and_accompaniment_read_as_one_sentence() -> None:
    """What stands beside the offers is said in words too."""
    assert sentences.fee_sentence(Fee(name="Booking", price=Decimal("1.5")), "USD") == (
        "Booking: $1.50 once per order."
    )
    assert sentences.fee_sentence(Fee(name="Web", price=Decimal(1), per="ticket"), "USD") == (
        "Web: $1.00 on every ticket, bundle or pass bought at a price."
    )
    assert sentences.tax_sentence(SalesTax(percent=Decimal("8.25"), on_parking=True)) == (
        "Sales tax of 8.25 % is added to entry, add-ons, and parking."
    )
    voucher = Voucher(name="Half", percent_off=Decimal(50), offers=("Adult",), needs=("student",))
    assert sentences.voucher_sentence(voucher, "USD") == (
        "Half: 50 % off 'Adult', once per order, when somebody shows proof of 'student'."
    )
    last = Voucher(name="Two", amount_off=Decimal(2), last_day=date(2026, 12, 31))
    assert sentences.voucher_sentence(last, "EUR") == (
        "Two: €2.00 off entry, once per order, to be used by Thu, Dec 31, 2026."
    )
    rule = MustBeAccompanied.model_validate({"ages": "under 14"})
    assert sentences.accompaniment_sentence(rule) == (
        "Visitors under 14 may only enter with somebody aged 18 or over."
    )


def test_an_add_on_cheaper_with_a_ticket_says_with_which() -> None:
    """The usual price, and what it costs those who enter on certain tickets."""
    boat = AddOn.model_validate(
        {
            "name": "Boat",
            "price": "6",
            "with_ticket": [{"offers": ["Plus", "Year"], "price": "2"}, {"offers": ["Gold"], "price": "0"}],
        }
    )
    said = sentences.add_on_sentence(boat, "USD")
    assert "$6.00 each" in said
    assert "$2.00 with 'Plus' or 'Year'" in said
    assert "free with 'Gold'" in said


def test_an_add_on_says_for_which_heights_it_is() -> None:
    """Each limit in the unit in which the venue tells it."""
    slide = AddOn.model_validate(
        {"name": "Slide", "price": "4", "least_height": "3 ft 6", "most_height": "150 cm"}
    )
    said = sentences.add_on_sentence(slide, "USD")
    assert "at least 42 in tall, at most 150 cm tall" in said
