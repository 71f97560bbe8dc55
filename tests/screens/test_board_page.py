"""On the Places page a price board is changed without TOML, and says at once what it means for the family."""

import tomllib
from datetime import date
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest
from streamlit.testing.v1 import AppTest

from tests.builders import make_household, make_place
from tests.screens.conftest import Opened, place_page, said, services_in
from tripplan.documents.places.offers import prices_in
from tripplan.documents.places.own_figures import OwnFigures
from tripplan.documents.places.place import Place
from tripplan.files.cards.place_card import write_place_card
from tripplan.language.sentences import fact
from tripplan.planning.admission.result import Admission
from tripplan.planning.family.family import Family
from tripplan.records.store import Records
from tripplan.screens.places.for_us import for_us, next_open_day
from tripplan.screens.places.own_figures_form import (
    own_figures_sentences,
    raw_figures,
    read_own_figures,
)
from tripplan.values.weekday import Weekday

ROOT = Path(__file__).resolve().parents[2]
TODAY = date(2026, 11, 25)
FARM = "oatsparrow-farm"
EDITOR = f"board_demo_{FARM}"
OWN = f"own_demo_{FARM}"
ADDED = 10
"""The farm's card has ten rows, 0 to 9; the first that is added gets this number."""


@pytest.fixture
def demo(data: Path) -> Records:
    """The demo's records, as the page saves them."""
    return services_in(data).demo


@pytest.fixture
def page(open_app: Opened) -> AppTest:
    """The farm's page, with the demo's records."""
    return place_page(open_app, FARM)


@pytest.fixture
def editor(page: AppTest) -> AppTest:
    """The farm's board, opened for changes."""
    page.button(key=f"{EDITOR}_change").click().run()
    assert not page.exception
    return page


def card_file(demo: Records) -> dict[str, Any]:
    """The farm's card on record, as its file would hold it."""
    return tomllib.loads(write_place_card(demo.all(Place)[FARM].value))


def fill(app: AppTest, row: int, **typed: Any) -> AppTest:
    """Type into the fields of a row; a double underscore stands for the point in a field's path."""
    for name, value in typed.items():
        key = f"{EDITOR}_{row}_{name.replace('__', '.')}"
        kinds = (app.text_input, app.checkbox, app.multiselect, app.selectbox, app.date_input, app.text_area)
        widget = next(one for kind in kinds for one in kind if one.key == key)
        widget.set_value(value)
    app.run()
    assert not app.exception
    return app


def add(app: AppTest, what: str) -> AppTest:
    """Press one of the buttons that add a row, and open its rarer rules where it has some."""
    app.button(key=f"{EDITOR}_add_{what}").click().run()
    more = f"{EDITOR}_{ADDED}_more"
    if more in {toggle.key for toggle in app.toggle} and not app.toggle(key=more).value:
        app.toggle(key=more).set_value(True).run()
    assert not app.exception
    return app


def save(app: AppTest) -> AppTest:
    """Press the button that saves the board."""
    app.button(key=f"{EDITOR}_save").click().run()
    assert not app.exception
    return app


# Each kind of row: the button that adds it, what is wrong and the words that say so, what puts it right, and
# where and how the saved card's file holds it.
ROWS: list[tuple[str, dict[str, Any], str, dict[str, Any], str, dict[str, Any]]] = [
    (
        "ticket",
        {"name": "Teacher", "price": "ten"},
        "Ticket (Teacher): Price: a price reads like 14",
        {"price": "4", "ages": "18+", "needs": ["home educator"], "book_days_ahead": "1"},
        "offers",
        {"name": "Teacher", "price": 4, "needs": ["home educator"], "book_days_ahead": 1},
    ),
    (
        "beside",
        {"companions__each_allows": "none"},
        "So many people for each companion: this is a whole number",
        {"companions__each_allows": "2"},
        "offers",
        {"price": 0, "companions": {"each_allows": 2}},
    ),
    (
        "group",
        {"price": "6", "at_most": "3"},
        "Sold from so many people on: this is more than 'At most so many to one party', 3",
        {"at_most": "40", "one_free_per": "10"},
        "offers",
        {"price": 6, "at_least": 10, "at_most": 40, "one_free_per": 10},
    ),
    (
        "bundle",
        {"price": "20", "must_include": "65-64"},
        "Must include somebody aged: the first age is above the second",
        {"must_include": "18+", "seats2_count": "1", "seats2_ages": "65+"},
        "offers",
        {
            "kind": "bundle",
            "must_include": "18+",
            "seats": [
                {"count": 2, "ages": "18+"},
                {"count": 3, "ages": "under 18"},
                {"count": 1, "ages": "65+"},
            ],
        },
    ),
    (
        "pass",
        {"price": "90", "months": "0"},
        "Valid for so many months: use 1 or more",
        {"months": "12", "parking_included": True, "elsewhere0_place": "ledgewing"},
        "offers",
        {"months": 12, "parking_included": True, "elsewhere": [{"place": "ledgewing"}]},
    ),
    (
        "add_on",
        {"name": "Ride", "price": "-1"},
        "Add-on (Ride): Price: this cannot be less than 0",
        {"price": "2", "per": "party", "usual": True},
        "add_ons",
        {"name": "Ride", "price": 2, "per": "party", "usual": True},
    ),
    (
        "fee",
        {"price": "1.555"},
        "Fee (Booking fee): Price: USD has at most 2 digits",
        {"price": "1.50", "per": "ticket"},
        "fees",
        {"name": "Booking fee", "price": 1.5, "per": "ticket"},
    ),
    (
        "tax",
        {"percent": "800"},
        "Added to the prices, in %: use 100 or less",
        {"percent": "8", "on_parking": True},
        "sales_tax",
        {"percent": 8, "on_parking": True},
    ),
    (
        "voucher",
        {"name": "Coupon"},
        "takes off either 'Takes off, in %' or 'or an amount'",
        {"amount_off": "5", "offers": ["Senior"], "last_day": date(2027, 1, 1)},
        "vouchers",
        {"name": "Coupon", "amount_off": 5, "offers": ["Senior"], "last_day": date(2027, 1, 1)},
    ),
    (
        "accompanied",
        {"ages": "under 12", "by": "under 10"},
        "only with somebody aged: these people may not enter alone themselves",
        {"by": "16+", "each_minds": "4"},
        "must_be_accompanied",
        {"ages": "under 12", "by": "16+", "each_minds": 4},
    ),
]


@pytest.mark.parametrize(
    ("what", "wrong", "words", "right", "holder", "written"), ROWS, ids=[row[0] for row in ROWS]
)
def test_each_kind_of_row_is_added_found_faulty_put_right_and_saved(
    editor: AppTest,
    demo: Records,
    what: str,
    wrong: dict[str, Any],
    words: str,
    right: dict[str, Any],
    holder: str,
    written: dict[str, Any],
) -> None:
    """A fault shows at its row while it is typed and keeps everything as it was; put right, it is saved."""
    before = demo.all(Place)[FARM]
    fill(add(editor, what), ADDED, **wrong)
    assert words in said(editor.error)
    save(editor)
    assert demo.all(Place)[FARM] == before
    fill(editor, ADDED, **right)
    assert not editor.error, said(editor.error)
    save(editor)
    entries = card_file(demo)[holder]
    last = entries[-1] if isinstance(entries, list) else entries
    assert written.items() <= last.items()


def test_people_beyond_a_family_tickets_seats_can_pay_extra(editor: AppTest, demo: Records) -> None:
    """A tick opens the fields for them; without the tick there is no such rule."""
    fill(add(editor, "bundle"), ADDED, price="20", extras=True)
    assert "Price each: please fill this in" in said(editor.error)
    save(fill(editor, ADDED, extras__price="3", extras__at_most="2"))
    assert card_file(demo)["offers"][-1]["extras"] == {"price": 3, "at_most": 2}


def test_parking_and_the_source_of_the_prices_can_be_changed(editor: AppTest, demo: Records) -> None:
    """An emptied price for parking is unknown, not free; the day of reading is kept."""
    save(fill(editor, 8, price="", note="On the meadow"))
    assert card_file(demo)["parking"] == {"note": "On the meadow"}
    editor.button(key=f"{EDITOR}_change").click().run()
    again = ADDED + 9
    save(fill(editor, again, source="the board at the ticket counter", on=date(2026, 11, 24)))
    assert card_file(demo)["prices_read"] == {
        "on": date(2026, 11, 24),
        "source": "the board at the ticket counter",
    }


def test_a_board_that_was_only_looked_at_saves_to_the_same_card(editor: AppTest, demo: Records) -> None:
    """Opening and saving without a change adds no revision."""
    before = demo.all(Place)[FARM]
    save(editor)
    assert demo.all(Place)[FARM] == before


def test_a_changed_price_counts_at_once_and_is_saved_only_on_demand(editor: AppTest, demo: Records) -> None:
    """What it comes to follows the typing; the record follows the button, and that can be taken back."""
    # Five farm guests at 10, one senior at 8, one under two for nothing; then the guests at 11.
    assert "For us that is $58.00 on Sat, Nov 28, 2026" in said(editor.markdown)
    fill(editor, 0, price="11")
    assert "For us that is $63.00 on Sat, Nov 28, 2026" in said(editor.markdown)
    assert prices_in(demo.all(Place)[FARM].value.offers[0])[0] == 10
    save(editor)
    assert prices_in(demo.all(Place)[FARM].value.offers[0])[0] == 11
    editor.button(key=f"take_back_{EDITOR}").click().run()
    assert prices_in(demo.all(Place)[FARM].value.offers[0])[0] == 10


def test_every_offer_is_told_in_a_sentence_while_it_is_typed(editor: AppTest) -> None:
    """The parent reads the board as it was understood, next to what she typed."""
    fill(editor, 1, name="Elder", price="7.50")
    assert "Elder: $7.50 each for people aged 65 or over." in said(editor.caption)


def test_rows_can_be_removed(editor: AppTest, demo: Records) -> None:
    """A ticket and an add-on go, the others stay as they were."""
    editor.button(key=f"{EDITOR}_3_remove").click().run()
    editor.button(key=f"{EDITOR}_5_remove").click().run()
    save(editor)
    kept = demo.all(Place)[FARM].value
    assert [offer.name for offer in kept.offers] == [
        "Farm guest",
        "Senior",
        "Under 24 months",
        "Season at the farm, one person",
    ]
    assert [add_on.name for add_on in kept.add_ons] == ["Hay wagon ride"]


def test_a_height_that_a_ride_hangs_on_is_asked_for_beside_the_board(editor: AppTest) -> None:
    """Once the wagon ride, which most families take, is only for people of a certain height."""
    assert "How tall is" not in said(editor.markdown)
    editor.toggle(key=f"{EDITOR}_6_more").set_value(True).run()
    fill(editor, 6, usual=True, least_height="42 in")
    assert "How tall is" in said(editor.markdown)


def test_a_warning_does_not_keep_a_board_from_being_saved(editor: AppTest, demo: Records) -> None:
    """A gap between the ages is worth a look, no more."""
    fill(editor, 1, ages="66+")
    assert "no single ticket is for people aged 65" in said(editor.warning)
    save(editor)
    assert card_file(demo)["offers"][1]["ages"] == "66+"


def test_a_new_row_is_not_called_faulty_before_it_is_touched(editor: AppTest) -> None:
    """An empty ticket that was just added waits quietly, until saving is tried."""
    add(editor, "ticket")
    assert not editor.error
    assert "Type in the prices" in said(editor.info)
    save(editor)
    assert "please fill this in" in said(editor.error)


def test_leaving_the_board_changes_nothing(editor: AppTest, demo: Records) -> None:
    """What was typed is gone, and opening the board again shows what is on record."""
    before = demo.all(Place)[FARM]
    fill(editor, 0, price="99")
    editor.button(key=f"{EDITOR}_leave").click().run()
    assert demo.all(Place)[FARM] == before
    editor.button(key=f"{EDITOR}_change").click().run()
    assert next(field.value for field in editor.text_input if field.label == "Price") == "10.00"


def test_a_card_changed_in_another_window_is_not_overwritten(editor: AppTest, demo: Records) -> None:
    """The parent is asked; her prices go on top of what the other window changed, or are dropped."""
    fill(editor, 0, price="12")
    kept = demo.all(Place)[FARM]
    newer = kept.value.model_copy(update={"notes": "from another window"})
    now = services_in(demo.database.path.parent).clock
    demo.save(newer, now(), kept.revision)
    save(editor)
    assert demo.all(Place)[FARM].value == newer
    name = kept.value.offers[0].name
    assert f"{name}, price: only yours changed, from $10.00 to $12.00" in said(editor.markdown)
    editor.button(key="conflict_mine").click().run()
    both = demo.all(Place)[FARM].value
    assert both.notes == "from another window"
    assert both.model_copy(update={"offers": newer.offers}) == newer
    assert [str(prices_in(offer)[0]) for offer in both.offers][:1] == ["12"]


@pytest.mark.parametrize("text", ["<script>alert(1)</script>", "=cmd|' /C calc'!A0", "$x$ costs $5"])
def test_odd_names_are_kept_and_shown_letter_by_letter(editor: AppTest, demo: Records, text: str) -> None:
    """Markup, formulas and money signs are names like any others."""
    fill(editor, 0, name=text)
    save(editor)
    assert demo.all(Place)[FARM].value.offers[0].name == text
    shown = [element.value for element in editor.markdown if "each for people aged 2 to 64" in element.value]
    assert shown
    assert all("<script>" not in value and "$x$" not in value for value in shown)


# --- what it comes to -------------------------------------------------------------------------------------


FAMILY = Family(make_household())
"""Two adults, a seven-year-old and a toddler."""


def test_the_next_open_day_is_one_that_can_still_be_booked() -> None:
    """From tomorrow on, after the days of notice that the place wants, past the day it is closed."""
    # 25 November 2026 is a Wednesday; the test museum is closed on Mondays.
    assert next_open_day(FAMILY, make_place(), TODAY) == date(2026, 11, 26)
    with_notice = make_place(opening={"hours": "Tu-Su 10:00-17:00", "book_days_ahead": 5})
    assert next_open_day(FAMILY, with_notice, TODAY) == date(2026, 12, 1)
    assert next_open_day(FAMILY, make_place(opening={"hours": "2020 Jan 01 10:00-12:00"}), TODAY) is None


def test_it_comes_to_the_sum_on_the_board() -> None:
    """Two grown-ups at 14, a child at 9 and a toddler for nothing, worked by hand: 37."""
    told = for_us(FAMILY, make_place(), None, TODAY)
    assert isinstance(told.answer, Admission)
    assert told.answer.total.amount == 37
    assert told.changes


@pytest.mark.parametrize(
    ("opening", "clock"),
    [
        ({"hours": "Mo-Su 08:00-17:00"}, "10:00"),
        ({"hours": "Mo-Su 13:00-17:00"}, "13:00"),
        ({"hours": "Mo-Su 06:00-09:00", "last_entry_minutes_before_close": 30}, "08:30"),
        ({"hours": "Mo-Su 08:00-17:00", "entry_times": ["09:15", "11:15"]}, "11:15"),
    ],
)
def test_the_party_is_at_the_gate_in_the_morning_or_when_it_is_let_in(
    opening: dict[str, Any], clock: str
) -> None:
    """Offers for certain hours are judged by an arrival at ten, or as near to it as the place allows."""
    told = for_us(FAMILY, make_place(opening=opening), None, TODAY)
    assert told.arrival is not None
    assert f"{told.arrival:%H:%M}" == clock


def test_a_closed_day_says_why() -> None:
    """The 30th of November 2026 is a Monday."""
    told = for_us(FAMILY, make_place(), date(2026, 11, 30), TODAY)
    assert told.answer is None
    assert told.closed == fact("hours-closed-weekday", day=Weekday.MONDAY)


def test_the_page_says_who_may_not_enter(editor: AppTest) -> None:
    """Without a ticket and a pass for the senior the page names her instead of a price."""
    editor.button(key=f"{EDITOR}_4_remove").click().run()
    fill(editor, 1, ages="90+")
    assert "Nobody may let all of us in" in said(editor.warning)
    assert "Grandma Wilhelmina" in said(editor.warning)


def test_a_picked_day_counts_instead_of_the_next_open_one(page: AppTest) -> None:
    """The farm is closed in January, and the page says so."""
    app = page
    app.date_input(key=f"for_us_demo_{FARM}_day").set_value(date(2027, 1, 9)).run()
    assert "On Sat, Jan 9, 2027: closed for the season; opens" in said(app.info)


# --- own figures ------------------------------------------------------------------------------------------


def open_own(app: AppTest) -> AppTest:
    """Open the form for the own figures."""
    return app.toggle(key=f"{OWN}_open").set_value(True).run()


def test_own_figures_are_saved_told_and_taken_back(page: AppTest, demo: Records) -> None:
    """Add-ons, tolls and extras count from the press of the button on, until that is taken back."""
    app = open_own(page)
    app.checkbox(key=f"{OWN}_usual").uncheck()
    app.multiselect(key=f"{OWN}_add_ons").set_value(["Hay wagon ride"])
    app.text_input(key=f"{OWN}_tolls").set_value("3.50")
    app.text_input(key=f"{OWN}_name0").set_value("Wagon <b>to hire</b>")
    app.text_input(key=f"{OWN}_price0").set_value("12")
    app.text_input(key=f"{OWN}_give_or_take_percent0").set_value("20")
    app.button(key=f"{OWN}_save").click().run()
    assert not app.exception
    own = demo.all(OwnFigures)[FARM].value
    assert own.add_ons == ("Hay wagon ride",)
    assert own.tolls == Decimal("3.50")
    assert [(extra.name, extra.price, extra.give_or_take_percent) for extra in own.extras] == [
        ("Wagon <b>to hire</b>", Decimal(12), Decimal(20))
    ]
    text = said(app.markdown)
    assert "Beside entry we take Hay wagon ride." in text
    assert "Tolls and ferries, there and back: $3.50." in text
    assert "Wagon <b>to hire</b>: $12.00 for all of us, give or take 20 %." in text
    app.button(key=f"take_back_{OWN}").click().run()
    assert FARM not in demo.all(OwnFigures)


def test_faulty_own_figures_change_nothing(page: AppTest, demo: Records) -> None:
    """Every fault is named at once by the words on the screen."""
    app = open_own(page)
    app.text_input(key=f"{OWN}_tolls").set_value("a lot")
    app.text_input(key=f"{OWN}_price1").set_value("-2")
    app.button(key=f"{OWN}_save").click().run()
    text = said(app.error)
    assert "Tolls and ferries, there and back: a price reads like 14" in text
    assert "Extra 1, what for: please fill this in" in text
    assert "Extra 1, price, for all of us: this cannot be less than 0" in text
    assert FARM not in demo.all(OwnFigures)


def test_own_figures_can_be_forgotten(page: AppTest, demo: Records) -> None:
    """Afterwards the usual add-ons count again."""
    app = open_own(page)
    app.text_input(key=f"{OWN}_tolls").set_value("0")
    app.button(key=f"{OWN}_save").click().run()
    assert demo.all(OwnFigures)[FARM].value.add_ons is None
    app.button(key=f"{OWN}_forget").click().run()
    assert FARM not in demo.all(OwnFigures)


def test_an_own_figure_finer_than_the_coins_is_a_fault() -> None:
    """A dollar has a hundred cents and no more."""
    typed = {"usual": True, "add_ons": [], "tolls": "1.005", "stay_minutes": "", "stay_from": ""}
    read = read_own_figures(raw_figures(typed, make_place()), "USD")
    assert [finding.field for finding in read.findings] == ["tolls"]
    assert read.value is None


def test_what_is_no_longer_sold_is_said() -> None:
    """An add-on that left the card is named rather than dropped without a word."""
    own = OwnFigures(place="test-museum", add_ons=("Boat",))
    assert list(own_figures_sentences(own, make_place(), "USD")) == [
        "We take nothing beside entry.",
        "No longer on the card, so not counted: Boat.",
    ]
