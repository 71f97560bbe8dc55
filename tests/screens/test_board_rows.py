"""A price board turns into rows of plain fields and back without losing a rule, and faults find their row."""

import json
from collections.abc import Iterable
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from pydantic import BaseModel

from tests.builders import make_place
from tests.planning.admission.price_boards import Question as Drawn
from tests.planning.admission.price_boards import questions
from tripplan.documents.field_spec import Control, forms_in
from tripplan.documents.model import Written
from tripplan.documents.places.offers import Bundle
from tripplan.documents.places.place import Place
from tripplan.errors import Finding, Weight
from tripplan.files.cards.place_card import load_place_cards, read_place_card, write_place_card
from tripplan.files.toml.toml_text import write_toml
from tripplan.screens.forms.questions import Question
from tripplan.screens.places.board.kinds import HOLDERS, KINDS
from tripplan.screens.places.board.rows import blank, raw_board, rows_of
from tripplan.screens.places.board.words import in_screen_words, row_of

TODAY = date(2026, 11, 25)
ODD_TEXTS = ("<script>alert(1)</script>", "=cmd|' /C calc'!A0", "$x$ costs $5", 'a "quoted" \\ name')


def every_rule() -> Place:
    """A card on which every rule that a price board can have stands at a value that is not the usual one."""
    limits: dict[str, Any] = {
        "valid": "We,Fr 10:00-16:00",
        "first_day": "2026-10-01",
        "last_day": "2027-06-30",
        "book_days_ahead": 3,
        "longest_stay_minutes": 150,
        "leave_by": "13:30",
        "online_only": True,
        "includes": ["Boat"],
        "refundable": True,
        "note": "Ring twice.\nThen wait.",
    }
    return make_place(
        offers=[
            {"name": "Adult", "price": "14.50", "ages": "13+"},
            {
                "kind": "bundle",
                "name": "Clan",
                "price": "44",
                "seats": [{"count": 2, "ages": "18+"}, {"count": 4, "ages": "6-23 months"}],
                "extras": {"price": "3.25", "ages": "under 18", "at_most": 2},
                "needs": ["resident of Galena, IL"],
                "must_include": "18+",
                "at_least": 3,
                "at_most": 2,
                "one_family": True,
                "per_car": True,
                "counts_everybody": True,
                "also_at": [{"place": "other-mill", "within_days": 3}],
                **limits,
            },
            {
                "name": "Class",
                "other_ages": [{"ages": "under 4", "price": "0"}, {"ages": "70+", "price": "1.50"}],
                "good_on": "birth month",
                "price": "0",
                "ages": "4-69",
                "needs": ["educator", "home educated"],
                "one_status_covers": 5,
                "companions": {
                    "ages": "21+",
                    "needs": ["carer"],
                    "must_pay": False,
                    "each_allows": 4,
                },
                "at_least": 2,
                "at_most": 30,
                "one_free_per": 6,
                "leader_ages": "16+",
                "also_at": [{"place": "third-mill", "within_days": 7}],
                **limits,
            },
            {
                "kind": "pass",
                "name": "Year",
                "price": "120",
                "months": 13,
                "seats": [{"count": 3, "ages": "under 2"}],
                "named": True,
                "guests_percent_off": "12.5",
                "guests_at_most": 4,
                "guests_per_year": 10,
                "parking_included": True,
                "elsewhere": [
                    {"place": "other-mill", "percent_off": "50", "at_most": 2},
                    {"place": "third-mill"},
                ],
                **limits,
            },
            {
                "kind": "discount",
                "name": "Residents",
                "percent_off": "25",
                "needs": ["resident"],
                "ages": "18+",
                "offers": ["Adult"],
                "one_status_covers": 2,
                "at_most": 4,
                **limits,
            },
        ],
        add_ons=[
            {
                "name": "Boat",
                "price": "6",
                "ages": "4+",
                "least_height": "42 in",
                "most_height": "190 cm",
                "needs": ["swimmer"],
                "valid": "Sa-Su",
                "per": "party",
                "with_ticket": [{"offers": ["Year", "Adult"], "price": "2"}],
                "usual": True,
            }
        ],
        fees=[
            {"name": "Booking", "price": "1.50", "per": "ticket"},
            {"name": "Order", "percent": "2", "online_only": True},
        ],
        sales_tax={
            "percent": "8.25",
            "on_entry": False,
            "on_add_ons": False,
            "on_parking": True,
            "on_fees": True,
        },
        vouchers=[
            {
                "name": "Paper",
                "percent_off": "10",
                "offers": ["Adult", "Class"],
                "needs": ["member"],
                "last_day": "2027-01-31",
                "valid": "Mo-Fr",
                "book_days_ahead": 2,
                "people_at_most": 3,
            },
            {"name": "Coin", "amount_off": "5"},
        ],
        must_be_accompanied=[{"ages": "under 14", "by": "21+", "each_minds": 3}],
        parking={
            "price": "7",
            "rates": [
                {"valid": "Su", "price": "1"},
                {"up_to_minutes": 90, "per_hour": "2", "free_minutes": 15, "at_most": "5"},
            ],
            "note": "Behind the barn.",
        },
        prices_read={"on": "2026-11-02", "source": "the board", "give_or_take_percent": "4.5"},
    )


def read_back(place: Place) -> Place:
    """The card after its board went through rows and the card's checks."""
    raw = place.model_dump(mode="json", exclude_none=True)
    beside = {name: value for name, value in raw.items() if name not in HOLDERS}
    return read_place_card(write_toml({**beside, **raw_board(rows_of(place))}), "", TODAY).usable()


def test_a_card_with_every_rule_comes_out_of_the_rows_unchanged() -> None:
    """Rows and back give the same card, and the same file to the letter."""
    place = every_rule()
    assert read_back(place) == place
    assert write_place_card(read_back(place)) == write_place_card(place)


def test_the_card_with_every_rule_leaves_none_out() -> None:
    """Each field of each form differs somewhere from what counts when it is left out."""
    place = every_rule()

    def written(form: Written) -> Iterable[tuple[type[Written], str]]:
        for name, field in type(form).model_fields.items():
            value = getattr(form, name)
            if field.is_required() or value != field.get_default():
                yield type(form), name
            for inner in value if isinstance(value, tuple) else (value,):
                if isinstance(inner, Written):
                    yield from written(inner)

    there = {found for holder in HOLDERS for one in _held(place, holder) for found in written(one)}
    forms = {form for form, _ in there}
    assert {(form, name) for form in forms for name in form.model_fields if name != "kind"} <= there


def _held(place: Place, holder: str) -> tuple[Written, ...]:
    held = getattr(place, holder)
    return held if isinstance(held, tuple) else (held,)


@pytest.mark.parametrize("kind", KINDS.values(), ids=list(KINDS))
def test_every_field_of_every_rule_can_be_typed(kind: Any) -> None:
    """The rows offer all that the card's format knows, and nothing else."""

    def check(asked: Iterable[Question], form: type[BaseModel]) -> None:
        asked = tuple(asked)
        assert {question.path for question in asked} == form.model_fields.keys() - {"kind"}
        for question in asked:
            if question.control in (Control.PART, Control.ROWS):
                (inner,) = forms_in(form.model_fields[question.path].annotation)
                check(question.inner, inner)

    check((*kind.main, *kind.more), kind.form)


@pytest.mark.parametrize(
    "card", load_place_cards(Path("demo_places/places"), TODAY).places, ids=lambda card: card.id
)
def test_every_demo_card_comes_out_of_the_rows_unchanged(card: Place) -> None:
    """Cards as places really write them survive the way through the rows."""
    assert read_back(card) == card


@settings(max_examples=60, suppress_health_check=[HealthCheck.too_slow])
@given(question=questions((1, 3), offers=5))
def test_any_board_comes_out_of_the_rows_unchanged(question: Drawn) -> None:
    """Whatever rules are mixed, the rows hold the same board; checked without the rules across fields."""
    place = question.place
    raw = json.loads(json.dumps(raw_board(rows_of(place)), default=str))
    assert Place.model_validate({**place.model_dump(mode="json"), **raw}) == place


@pytest.mark.parametrize("text", ODD_TEXTS)
def test_odd_texts_stay_as_they_were_typed(text: str) -> None:
    """Markup, formulas, money signs and quotation marks are names like any others."""
    place = make_place(
        offers=[{"name": text, "price": "3", "needs": [text], "note": text}],
        parking={"note": text},
        prices_read={"on": TODAY, "source": text},
    )
    assert read_back(place) == place


def test_an_empty_entry_of_a_list_is_left_out() -> None:
    """The line that waits below a family ticket's seats is no seat."""
    row = blank(
        KINDS["bundle"],
        name="Family",
        price="20",
        seats0_count="2",
        seats1_count="",
        seats1_ages="",
    )
    bundle = Bundle.model_validate(raw_board([row])["offers"][0])
    assert len(bundle.seats) == 1


def test_a_price_written_with_an_exponent_can_be_typed_again() -> None:
    """A card's file may say 1e2; the field says 100."""
    place = make_place(offers=[{"name": "All", "price": 1e2}])
    exponent = read_place_card(write_place_card(place).replace("price = 100", "price = 1e2"), "", TODAY)
    assert rows_of(exponent.usable())[0].typed["price"] == "100"


@pytest.mark.parametrize(
    ("field", "row", "words"),
    [
        ("offers[1].seats[1].count", 1, "Family ticket (Clan): It lets in 2, people"),
        ("offers[2].companions.each_allows", 2, "Ticket (Class): So many people for each companion"),
        ("add_ons[0].price", 5, "Add-on (Boat): Price"),
        ("fees[1].per", 7, "Fee (Order): How often"),
        ("sales_tax.percent", 8, "Sales tax: Added to the prices, in %"),
        ("vouchers[1]", 10, "Voucher (Coin)"),
        ("must_be_accompanied[0].by", 11, "Not without an older visitor: only with somebody aged"),
        ("parking.price", 12, "Parking: For the car"),
        ("prices_read.source", 13, "Where the prices come from: Where did you read them?"),
    ],
)
def test_a_fault_finds_its_row_and_the_words_of_the_screen(field: str, row: int, words: str) -> None:
    """A path of the card's file leads to the row that holds it, called as on the screen."""
    rows = rows_of(every_rule())
    at = row_of(field, rows)
    assert at is not None
    assert at[0] == row
    assert in_screen_words(Finding("", field, "", "is wrong", Weight.FAULT), rows).field == words


def test_a_message_names_fields_as_the_screen_does() -> None:
    """Names of the card's format do not reach the parent."""
    rows = rows_of(every_rule())
    found = Finding("", "vouchers[0]", "", "takes off either percent_off or amount_off")
    assert in_screen_words(found, rows).message == "takes off either 'Takes off, in %' or 'or an amount'"


def test_what_no_single_row_is_to_blame_for_stands_with_the_tickets() -> None:
    """A gap between the age bands concerns all tickets."""
    rows = rows_of(make_place())
    assert row_of("offers", rows) is None
    assert in_screen_words(Finding("", "offers", "under 3", "a gap"), rows).field == "Tickets"
