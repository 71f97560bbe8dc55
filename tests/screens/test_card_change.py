"""On the Places page every field of a card on record is changed without TOML, and nothing else is lost."""

from collections.abc import Callable
from datetime import date, time
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest
from streamlit.testing.v1 import AppTest

from tests.builders import make_place
from tests.screens.conftest import Opened, place_page, said, services_in
from tripplan.documents.places.offers import prices_in
from tripplan.documents.places.place import Place, SpecialDay
from tripplan.errors import Weight
from tripplan.files.cards.place_card import load_place_cards, read_place_card
from tripplan.files.toml.reading_result import ReadResult
from tripplan.files.toml.toml_text import write_toml
from tripplan.records.store import StoredDocument
from tripplan.screens.places.adding.every_field import card_values
from tripplan.screens.places.board.kinds import HOLDERS
from tripplan.screens.places.board.rows import rows_of
from tripplan.screens.places.card.change import changed_values
from tripplan.screens.places.card.values import on_record

ROOT = Path(__file__).resolve().parents[2]
TODAY = date(2026, 11, 25)
FARM = "oatsparrow-farm"
CARD = f"card_demo_{FARM}"
DEMO = {place.id: place for place in load_place_cards(ROOT / "demo_places/places", TODAY).places}
FAIR = SpecialDay(day=date(2027, 5, 1), name="Lambs")
OpenCard = Callable[[], AppTest]


def changed(place: Place, **typed: object) -> tuple[ReadResult[Place], list[str]]:
    """A card with some fields typed anew, and the fields that the form itself could not read."""
    values, found = changed_values(place, {**on_record(place, place.currency), **typed})
    return read_place_card(write_toml(values), "", TODAY), [finding.field for finding in found]


@pytest.fixture
def opened(open_app: Opened) -> OpenCard:
    """Opens the farm's page, with its card in change."""

    def page() -> AppTest:
        app = place_page(open_app, FARM)
        if f"{CARD}_change" in {one.key for one in app.button}:  # else it is open still
            app.button(key=f"{CARD}_change").click().run()
        assert not app.exception, app.exception
        return app

    return page


@pytest.fixture
def kept(data: Path) -> Callable[[], StoredDocument[Place]]:
    """The farm's card as it is on record now."""
    return lambda: services_in(data).demo.all(Place)[FARM]


@pytest.mark.parametrize("place_id", DEMO)
def test_a_card_that_is_only_looked_at_stays_as_it_is(place_id: str) -> None:
    """The fields of every demo card, left alone, give the same card again."""
    place = DEMO[place_id]
    read, unread = changed(place)
    assert read.value == place
    assert not unread


@pytest.mark.parametrize("place_id", DEMO)
def test_every_field_holds_all_that_the_card_says(place_id: str) -> None:
    """Typed into the form for a new place, what the fields say of a card makes the same card."""
    place = DEMO[place_id]
    typed = {**on_record(place, place.currency), "where": ""}
    values, unread = card_values(typed, rows_of(place))
    assert not unread
    read = read_place_card(write_toml({**values, "id": place.id}), "", TODAY)
    assert read.value is not None, read.findings
    assert read.value == place


def test_no_field_of_a_card_is_missing_from_the_form() -> None:
    """A card with every field unlike the usual comes out of the form as it was; a new field belongs here.

    `by_town` is noted by the look-up of a place, not asked.
    """
    place = make_place(
        currency="CAD",
        where={
            "address": "1 Mill Road",
            "town": "Galena",
            "postal_code": "61036",
            "country": "US",
            "subdivision": "IL",
            "latitude": 42.4167,
            "longitude": -90.429,
            "time_zone": "America/Chicago",
            "metropolitan": True,
        },
        visit={
            "topics": ["grain"],
            "shortest_minutes": 45,
            "comfortable_minutes": 150,
            "stays": [{"ages": "under 3", "shortest_minutes": 20, "comfortable_minutes": 40}],
            "shows": [
                {"name": "Milling", "starts": ["11:00"], "minutes": 15, "days": "Sa", "worth_it": False}
            ],
            "quiet_hours": "Su 09:00-10:00",
            "pushchairs": False,
            "own_food": False,
            "food_sold": False,
            "indoors": "outdoors",
            "who_comes": "everybody",
            "kind": "park_or_trail",
            "fullest_days": "sundays",
            "cautions": ["Open water."],
            "questions": ["Why does it turn?"],
        },
        opening={
            "hours": "Mo-Su 09:00-17:00",
            "last_entry_minutes_before_close": 30,
            "entry_times": ["09:00", "11:00"],
            "school_groups": "Tu 10:00-12:00",
            "book_days_ahead": 2,
            "checked_on_site": False,
        },
        special_days=[{"day": "2026-12-12", "name": "Frost fair", "crowd_factor": "3"}],
        busiest_months=[5],
        height_m=240,
        usual_weather={
            "degrees": "F",
            "highs": [28, 32, 45, 58, 70, 79, 83, 81, 74, 61, 46, 33],
            "lows": [12, 16, 28, 39, 50, 60, 64, 62, 53, 41, 29, 18],
            "wet_days": [8, 8, 10, 11, 12, 11, 10, 9, 9, 9, 9, 9],
            "snow_days": [7, 6, 4, 1, 0, 0, 0, 0, 0, 0, 2, 6],
            "source": "My own notes.",
        },
        web="https://mill.example.com",
        telephone="555-0100",
        notes="Bring boots.",
    )
    for form in (place, place.visit, place.visit.shows[0], place.visit.stays[0], place.opening, place.where):
        for name, field in type(form).model_fields.items():
            if name not in ("format", "kind", "by_town", *HOLDERS) and not field.is_required():
                assert getattr(form, name) != field.get_default(), name
    values, unread = card_values({**on_record(place, "USD"), "where": ""}, rows_of(place))
    assert not unread
    read = read_place_card(write_toml({**values, "id": place.id}), "", TODAY)
    assert read.value == place, read.findings


@pytest.mark.parametrize(
    ("typed", "path", "expected"),
    [
        ({"name": "Oat Farm"}, "name", "Oat Farm"),
        ({"hours": "Mo-Su 09:00-17:00"}, "opening.hours", "Mo-Su 09:00-17:00"),
        ({"last_entry_minutes_before_close": "45"}, "opening.last_entry_minutes_before_close", 45),
        ({"entry_times": "9:30, 11:00"}, "opening.entry_times", (time(9, 30), time(11))),
        ({"book_days_ahead": "3"}, "opening.book_days_ahead", 3),
        ({"book_days_ahead": ""}, "opening.book_days_ahead", 0),
        ({"checked_on_site": False}, "opening.checked_on_site", False),
        ({"topics": "oats, and what eats them\nwool"}, "visit.topics", ("oats, and what eats them", "wool")),
        ({"food_sold": False}, "visit.food_sold", False),
        ({"busiest_months": [5, 4]}, "busiest_months", (4, 5)),
        ({"questions": "Why oats?\n\nWho eats them?"}, "visit.questions", ("Why oats?", "Who eats them?")),
        ({"web": "https://farm.example.com"}, "web", "https://farm.example.com"),
        ({"telephone": ""}, "telephone", ""),
        ({"notes": "Bring boots.\nAnd coats."}, "notes", "Bring boots.\nAnd coats."),
        ({"currency": "cad"}, "currency", "CAD"),
        ({"address": "1 Farm Lane"}, "where.address", "1 Farm Lane"),
        (
            {"special_days0_day": "2026-12-13", "special_days0_name": "Frost fair; and songs"},
            "special_days",
            (
                SpecialDay(day=date(2026, 12, 13), name="Frost fair; and songs", crowd_factor=Decimal(3)),
                FAIR,
            ),
        ),
        (
            {"special_days0_day": None, "special_days0_name": "", "special_days0_crowd_factor": ""},
            "special_days",
            (FAIR,),
        ),
    ],
)
def test_one_field_is_changed_and_all_others_stay(
    typed: dict[str, object], path: str, expected: object
) -> None:
    """What was typed stands at its place on the card; taken out again, the card is as before."""
    place = DEMO[FARM].model_copy(
        update={
            "opening": DEMO[FARM].opening.model_copy(update={"hours": "Mo-Su 09:00-18:00"}),
            "special_days": (
                SpecialDay(day=date(2026, 12, 12), name="Lantern night", crowd_factor=Decimal(3)),
                FAIR,
            ),
        }
    )
    read, unread = changed(place, **typed)
    assert read.value is not None, read.findings
    assert not unread
    value: Any = read.value
    for step in path.split("."):
        value = getattr(value, step)
    assert value == expected
    said_before = on_record(place, place.currency)
    if not any(name.endswith("_day") for name in typed):  # an entry that is gone has no fields any more
        back, _ = changed(read.value, **{name: said_before[name] for name in typed})
        assert back.value == place


def test_a_show_is_planned_around_unless_its_tick_says_otherwise() -> None:
    """A show that is not for us stays so when another time is typed in; a new one is wanted at first."""
    shows = [{"name": "Milking", "starts": ["10:00"], "days": "Sa; Nov Su", "worth_it": False}]
    place = make_place(visit={"shows": shows})
    read, unread = changed(
        place, shows0_starts="9:30, 11:00", shows1_name="Shearing", shows1_starts="2:15 pm"
    )
    assert not unread
    assert read.value is not None
    milking, shearing = read.value.visit.shows
    assert (milking.starts, milking.days, milking.worth_it) == ((time(9, 30), time(11)), "Sa; Nov Su", False)
    assert (shearing.starts, shearing.minutes, shearing.worth_it) == ((time(14, 15),), 20, True)
    wanted, _ = changed(place, shows0_worth_it=True)
    assert wanted.value is not None
    assert wanted.value.visit.shows[0].worth_it


def test_a_show_whose_line_is_emptied_is_gone() -> None:
    """The line that waits below is no show either."""
    place = make_place(visit={"shows": [{"name": "Milking", "starts": ["10:00"]}]})
    read, _ = changed(place, shows0_name="", shows0_starts="", shows0_minutes="")
    assert read.value is not None
    assert read.value.visit.shows == ()


@pytest.mark.parametrize(
    ("typed", "field"),
    [
        ({"name": ""}, "name"),
        ({"hours": "whenever"}, "opening.hours"),
        ({"entry_times": "teatime"}, "opening.entry_times[0]"),
        ({"book_days_ahead": "-1"}, "opening.book_days_ahead"),
        ({"comfortable_minutes": "long"}, "visit.comfortable_minutes"),
        ({"special_days0_name": "Fair", "special_days0_day": None}, "special_days[0].day"),
        ({"currency": "dollars"}, "currency"),
        ({"coordinates": "91, 0", "where": ""}, "where.coordinates"),
        ({"shows0_name": "Milking", "shows0_starts": "teatime"}, "visit.shows[0].starts[0]"),
    ],
)
def test_a_wrong_answer_is_found_at_its_field(typed: dict[str, object], field: str) -> None:
    """The card's own checks, or the form's, name the field that is to be put right."""
    read, unread = changed(DEMO[FARM], **typed)
    faults = [finding.field for finding in read.findings if finding.weight is Weight.FAULT]
    assert field in [*faults, *unread]


def test_a_card_is_saved_and_the_change_taken_back(
    opened: OpenCard, kept: Callable[[], StoredDocument[Place]]
) -> None:
    """What is saved stands on the page and on record; one press brings the card back as it was."""
    before = kept().value
    app = opened()
    app.text_input(key=f"{CARD}_telephone").set_value("(608) 555-0199")
    app.text_area(key=f"{CARD}_cautions").set_value("Mind the ram.")
    app.button(key=f"{CARD}_save").click().run()
    assert not app.exception
    after = kept().value
    assert (after.telephone, after.visit.cautions) == ("(608) 555-0199", ("Mind the ram.",))
    assert after.offers == before.offers
    assert "Mind the ram." in said(app.markdown)
    app.button(key=f"take_back_{CARD}").click().run()
    assert not app.exception
    assert kept().value == before


def test_every_fault_stands_beside_its_field_and_nothing_is_saved(
    opened: OpenCard, kept: Callable[[], StoredDocument[Place]]
) -> None:
    """While typing, each fault is told at once; saving tells them together, and what was typed stays."""
    before = kept()
    app = opened()
    app.text_input(key=f"{CARD}_hours").set_value("whenever")
    app.text_input(key=f"{CARD}_shortest_minutes").set_value("long").run()
    assert len(app.error) == 2
    app.button(key=f"{CARD}_save").click().run()
    together = said(app.error)
    assert "Please fix 2 things. Nothing was changed yet." in together
    assert app.text_input(key=f"{CARD}_hours").value == "whenever"
    assert kept() == before


def test_hours_are_told_for_the_next_days_while_they_are_typed(opened: OpenCard) -> None:
    """The preview follows the text and not what is on record; a text that cannot be read has none."""
    app = opened()
    app.text_input(key=f"{CARD}_hours").set_value("Th 11:00-12:30").run()
    assert "Thu, Nov 26, 2026: 11:00" in said(app.markdown)
    app.text_input(key=f"{CARD}_hours").set_value("Th 11-").run()
    assert "Thu, Nov 26, 2026: 11:00" not in said(app.markdown)


def test_prices_that_are_being_typed_outlive_saving_the_rest_of_the_card(
    opened: OpenCard, kept: Callable[[], StoredDocument[Place]]
) -> None:
    """Both editors are open; after the card is saved the typed price is still there and is saved as well."""
    app = opened()
    app.button(key=f"board_demo_{FARM}_change").click().run()
    price = f"board_demo_{FARM}_0_price"
    app.text_input(key=price).set_value("11.25").run()
    app.text_input(key=f"{CARD}_telephone").set_value("555-0001").run()
    app.button(key=f"{CARD}_save").click().run()
    assert app.text_input(key=price).value == "11.25"
    app.button(key=f"board_demo_{FARM}_save").click().run()
    assert not app.exception
    after = kept().value
    assert (after.telephone, prices_in(after.offers[0])[0]) == ("555-0001", Decimal("11.25"))


def test_a_card_can_be_left_as_it_was(opened: OpenCard, kept: Callable[[], StoredDocument[Place]]) -> None:
    """Leaving drops what was typed; opened again, the fields say what is on record."""
    before = kept()
    app = opened()
    app.text_input(key=f"{CARD}_name").set_value("Other").run()
    app.button(key=f"{CARD}_leave").click().run()
    app.button(key=f"{CARD}_change").click().run()
    assert app.text_input(key=f"{CARD}_name").value == before.value.name
    assert kept() == before


def test_two_windows_that_change_one_card_are_asked(
    opened: OpenCard, kept: Callable[[], StoredDocument[Place]]
) -> None:
    """The second one to save sees both changes and keeps its own; what only the first changed stays."""
    first, second = opened(), opened()
    second.text_input(key=f"{CARD}_telephone").set_value("555-0002").run()
    first.text_input(key=f"{CARD}_telephone").set_value("555-0001")
    first.text_input(key=f"{CARD}_web").set_value("https://a.example.com")
    first.button(key=f"{CARD}_save").click().run()
    second.button(key=f"{CARD}_save").click().run()
    assert not second.exception
    assert "the other window says 555-0001, yours says 555-0002" in said(second.markdown)
    assert second.text_input(key=f"{CARD}_telephone").value == "555-0002"
    second.button(key="conflict_mine").click().run()
    assert (kept().value.telephone, kept().value.web) == ("555-0002", "https://a.example.com")
