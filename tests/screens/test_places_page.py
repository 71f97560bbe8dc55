"""The Places page lists places by drive, takes faultless cards over, and makes cards without TOML."""

import os
import re
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from streamlit.testing.v1 import AppTest

from tests.builders import make_place
from tests.saying import says
from tests.screens.conftest import Opened, drawn, place_page, said, services_in
from tripplan.documents.family.household import Household
from tripplan.documents.places.idea import place_id
from tripplan.documents.places.offers import Ticket
from tripplan.documents.places.place import Place
from tripplan.errors import Weight
from tripplan.files.cards.place_card import read_place_card, write_place_card
from tripplan.files.cards.shared_cards import write_shared
from tripplan.files.toml.toml_text import write_toml
from tripplan.language import wording
from tripplan.language.sentences import say
from tripplan.screens.places.adding.card_preview import Choice, beside
from tripplan.screens.places.adding.every_field import card_values
from tripplan.screens.places.board.kinds import KINDS
from tripplan.screens.places.board.rows import blank
from tripplan.screens.places.card.values import on_record
from tripplan.screens.places.place_details import read_typed_drive
from tripplan.screens.places.place_sentences import (
    board_sentences,
    crowd_sentences,
    hours_sentences,
    visit_sentences,
)
from tripplan.values.money import Money

TODAY = date(2026, 11, 25)
BOARD = (
    blank(KINDS["ticket"], name="Adult", price="9.50", ages="13+"),
    blank(KINDS["ticket"], name="Child", price="5", ages="3-12"),
    blank(KINDS["ticket"], name="Small child", price="0", ages="under 3"),
    blank(
        KINDS["bundle"],
        name="Family",
        price="24",
        seats0_count="2",
        seats0_ages="18+",
        seats1_count="3",
        seats1_ages="under 18",
    ),
    blank(KINDS["parking"], price="0"),
    blank(KINDS["prices_read"], on=TODAY, source="board"),
)


def listed(app: AppTest) -> list[str]:
    """The names of the places on the list, in its order."""
    links = (str(link.proto.label).replace("\\", "") for link in app.get("page_link"))
    return [link.removeprefix("About ") for link in links if link.startswith("About ")]


def every_field(app: AppTest) -> AppTest:
    """Open the form that asks for everything a card can hold."""
    app.button(key="new_card_demo_type").click().run()
    return app.button(key="short_new_card_demo_more").click().run()


def card(**changes: Any) -> bytes:
    """The file of a small card."""
    return write_place_card(make_place(**changes)).encode()


def bring(app: AppTest, *files: tuple[str, bytes]) -> AppTest:
    """Upload card files."""
    uploader = app.file_uploader(key="card_upload_0")
    uploader.set_value([(name, content, "application/toml") for name, content in files])
    return app.run()


def typed_card(**changes: Any) -> dict[str, Any]:
    """The fields of the form, filled with a mill in Galena."""
    return {
        **on_record(None, "USD"),
        "name": "Old Mill",
        "town": "Galena",
        "subdivision": "il",
        "topics": "grain\nwater",
        "last_entry_minutes_before_close": "30",
        "hours": "Tu-Su 10:00-16:00",
        "comfortable_minutes": "90",
        "indoors": "outdoors",
        "who_comes": "everybody",
        "busiest_months": [10, 5],
        "school_groups": "Tu-Fr 10:00-12:00",
        "own_food": False,
        "cautions": "Open water.\n\nSteps.",
        **changes,
    }


def test_places_stand_in_order_of_their_drive(open_app: Opened) -> None:
    """The nearest place comes first, each with what it comes to on its best day, its drive, nap and crowd."""
    app = open_app("places")
    assert listed(app)[:2] == ["Rag and Reed Paper Workshop", "Oatsparrow Farm"]
    card = " ".join(drawn(app).split())
    assert re.search(r"Rag and Reed Paper Workshop \$\d+ \w{3}, \w{3} \d+ \d+ min drive whole nap \w+", card)


def test_a_place_without_a_day_says_so(open_app: Opened) -> None:
    """The mill is closed in winter: no total, and no blank either."""
    card = " ".join(drawn(open_app("places")).split())
    assert f"Speckled Oxbow Mill {say('compare-no-day')}" in card


def test_a_place_tells_prices_hours_cautions_and_source(open_app: Opened) -> None:
    """What a parent wants to know stands there in sentences, with the day the prices were read."""
    app = place_page(open_app, "ledgewing")
    assert app.title[0].value == "Ledgewing Birds of Prey"
    text = said((*app.markdown, *app.caption))
    assert "Adult: $13.00 each for people aged 14 to 59." in text
    assert "Thu, Nov 26, 2026: closed" in text
    assert "Prices read on Tue, Nov 3, 2026" in text
    assert "Birds fly low and loose" in text
    assert not listed(app)


def test_an_address_that_names_no_place_shows_all(open_app: Opened) -> None:
    """Such as one that is removed by now; the name is said as it was typed."""
    app = place_page(open_app, "$gone$")
    assert says(app.warning[0].value, "places-no-such-place", name="$gone$")
    assert len(listed(app)) > 5


def test_a_typed_in_drive_counts_until_it_is_forgotten(open_app: Opened) -> None:
    """Miles and minutes of the parent's own replace the estimate, and can be taken away again."""
    app = place_page(open_app, "ledgewing")
    app.text_input(key="drive_ledgewing_distance").set_value("20.5")
    app.text_input(key="drive_ledgewing_minutes").set_value("29")
    app.button(key="save_drive_ledgewing").click().run()
    assert app.text_input(key="drive_ledgewing_distance").value == "20.5"
    assert listed(open_app("places"))[0] == "Ledgewing Birds of Prey"
    app.button(key="forget_drive_ledgewing").click().run()
    assert listed(open_app("places"))[0] == "Rag and Reed Paper Workshop"


def test_a_faulty_drive_changes_nothing(open_app: Opened) -> None:
    """Both figures are named at once and the estimate stays."""
    app = place_page(open_app, "ledgewing")
    app.text_input(key="drive_ledgewing_distance").set_value("far")
    app.text_input(key="drive_ledgewing_minutes").set_value("-3")
    app.button(key="save_drive_ledgewing").click().run()
    assert "Please fix 2 things" in said(app.error)
    assert listed(open_app("places"))[0] == "Rag and Reed Paper Workshop"


def test_a_removed_place_can_be_brought_back(open_app: Opened) -> None:
    """Removing leads back to the list, without the place; one press takes that back."""
    app = place_page(open_app, "oatsparrow-farm")
    app.button(key="remove_oatsparrow-farm").click().run()
    assert listed(app)
    assert "Oatsparrow Farm" not in listed(app)
    assert not app.warning
    app.button(key="take_back_places").click().run()
    assert "Oatsparrow Farm" in listed(app)


def test_only_faultless_cards_are_taken_over(open_app: Opened) -> None:
    """Of a good and a bad card the good one is offered, and every fault of the bad one is said."""
    app = bring(
        open_app("places"), ("good.toml", card()), ("bad.toml", b'id = "b"\n[[offers]]\nprice = -3\n')
    )
    faults = said(app.error)
    assert "bad.toml: offers[0].price must not be negative" in faults
    assert "bad.toml: prices_read is needed" in faults
    app.button(key="take_cards").click().run()
    assert not app.exception
    assert "Test museum" in listed(app)


def handed_over() -> bytes:
    """The demo's card of Ledgewing as another family keeps it: dearer, with one ticket less and a note."""
    read = read_place_card(Path("demo_places/places/ledgewing.toml").read_bytes(), "ledgewing.toml", TODAY)
    place = read.usable()
    first, second, *others = place.offers
    assert isinstance(first, Ticket)
    dearer = first.model_copy(update={"price": first.price + 1})
    changed = place.model_copy(update={"offers": (dearer, *others), "notes": "Bring $5 in coins."})
    assert second.name not in {offer.name for offer in changed.offers}
    return write_place_card(changed).encode()


def test_a_card_handed_over_is_told_field_by_field_before_anything_changes(open_app: Opened) -> None:
    """Old and new price, the ticket that is gone and the note are in words; by itself nothing is taken."""
    app = bring(open_app("places"), ("theirs.toml", handed_over()))
    shown = said(app.markdown)
    first, second, *_ = (
        read_place_card(Path("demo_places/places/ledgewing.toml").read_bytes(), "", TODAY).usable().offers
    )
    assert isinstance(first, Ticket)
    old, new = wording.money(Money(first.price, "USD")), wording.money(Money(first.price + 1, "USD"))
    assert f"{first.name}, price: yours says {old}, theirs says {new}" in shown
    assert f"{second.name}: yours says" in shown
    assert "theirs has none" in shown
    assert "theirs says Bring $5 in coins." in shown
    assert app.radio(key="choice_0_ledgewing").value == Choice.MINE
    assert app.button(key="take_cards").disabled


@pytest.mark.parametrize("choice", [Choice.THEIRS, Choice.BOTH])
def test_theirs_replaces_mine_or_stands_beside_it(open_app: Opened, choice: Choice) -> None:
    """Either is one undo away from what was there before."""
    app = bring(open_app("places"), ("theirs.toml", handed_over()))
    before = listed(app)
    app.radio(key="choice_0_ledgewing").set_value(choice).run()
    app.button(key="take_cards").click().run()
    assert not app.exception
    beside = [name for name in listed(app) if name.startswith("Ledgewing") and "(2)" in name]
    assert len(beside) == (1 if choice is Choice.BOTH else 0)
    assert len(listed(app)) == len(before) + len(beside)
    theirs = place_page(open_app, "ledgewing-2" if beside else "ledgewing")
    assert "Bring $5 in coins." in said(theirs.markdown)
    app.button(key="take_back_places").click().run()
    assert listed(app) == before


def test_the_very_same_card_is_nothing_to_take(open_app: Opened) -> None:
    """A card that equals the one on record is said to."""
    same = Path("demo_places/places/ledgewing.toml").read_bytes()
    app = bring(open_app("places"), ("ledgewing.toml", same))
    assert "of these cards already, word for word" in said(app.markdown)
    assert "take_cards" not in [button.key for button in app.button]


def test_a_free_id_and_name_are_found_whatever_their_length() -> None:
    """The longest id and name still give valid ones, and ids that are taken are passed over."""
    place = make_place(id="a" * 60, name="N" * 80)
    first = beside(place, {place.id})
    second = beside(place, {place.id, first.id})
    assert first.id.endswith("-2")
    assert second.id.endswith("-3")
    for other in (first, second):
        assert type(other).model_validate_json(other.model_dump_json()) == other


def test_two_files_with_one_id_are_both_refused(open_app: Opened) -> None:
    """Nobody could say which of them is meant."""
    app = bring(open_app("places"), ("a.toml", card()), ("b.toml", card(name="Other")))
    assert "another of these cards has the same id" in said(app.error)
    assert "take_cards" not in [button.key for button in app.button]


def test_a_name_that_looks_like_code_is_shown_as_it_is(open_app: Opened) -> None:
    """Markup, money signs and icon names in a card come out letter by letter."""
    app = bring(open_app("places"), ("odd.toml", card(name="<script> $x$ :material/home:")))
    app.button(key="take_cards").click().run()
    assert any(r"\<script\> \$x\$ \:" in link.proto.label for link in app.get("page_link"))


def test_an_empty_form_names_every_missing_field(open_app: Opened) -> None:
    """The form goes through the card's own checks and says all faults by the names on the screen."""
    app = every_field(open_app("places"))
    app.button(key="save_new_card").click().run()
    faults = said(app.error)
    for field in (
        "Name",
        "Location",
        "Opening hours",
        "Ticket (Adult): Price",
        "Where the prices come from: Where did you read them?",
    ):
        assert field in faults
    assert "opening_hours syntax" not in faults


def test_a_form_makes_a_card_that_reads_without_a_fault() -> None:
    """What the form gives is a card like any other, with the place put on the map."""
    values, found = card_values(typed_card(), BOARD)
    read = read_place_card(write_toml(values), "", TODAY)
    assert not found
    assert read.value is not None, read.findings
    assert read.value.id == "old-mill"
    assert read.value.where.time_zone == "America/Chicago"
    assert [offer.name for offer in read.value.offers] == ["Adult", "Child", "Small child", "Family"]
    assert read.value.visit.cautions == ("Open water.", "Steps.")
    assert read.value.parking.price == 0
    assert (read.value.visit.indoors, read.value.visit.who_comes) == ("outdoors", "everybody")
    assert read.value.busiest_months == (5, 10)
    assert read.value.opening.school_groups == "Tu-Fr 10:00-12:00"


def test_a_card_says_what_fills_the_place() -> None:
    """Who comes, the busiest months, school classes and the special days to come, each as a sentence."""
    place = make_place(
        busiest_months=[10, 5],
        opening={"hours": "Mo-Su 10:00-17:00", "school_groups": "Tu-Fr 10:00-12:00"},
        special_days=[
            {"day": "2026-10-10", "name": "Harvest fair", "crowd_factor": "3"},
            {"day": "2027-10-09", "name": "Harvest fair", "crowd_factor": "2.50"},
        ],
    )
    assert list(crowd_sentences(place, TODAY)) == [
        "Mostly families with children come, so school breaks fill it like weekends.",
        "Busiest in May and October.",
        "In term, school classes usually come at these times: Tu-Fr 10:00-12:00",
        "Sat, Oct 9, 2027: Harvest fair, 2.5 times the usual visitors.",
    ]
    (only,) = crowd_sentences(make_place(visit={"who_comes": "everybody"}), TODAY)
    assert only == "People of all ages come, so school breaks fill it only a little."


@pytest.mark.parametrize("days", ["saturdays", "sundays"])
def test_a_card_may_name_its_fullest_days(days: str) -> None:
    """What the card says of Saturdays or Sundays is told with the rest of the crowds."""
    told = " ".join(crowd_sentences(make_place(visit={"fullest_days": days}), TODAY))
    assert says(told, f"places-fullest-{days}")


def test_what_is_typed_into_the_form_outlives_a_look_at_another_page(open_app: Opened) -> None:
    """Fields and tickets are as they were when the parent comes back."""
    app = every_field(open_app("places"))
    app.text_input(key="new_card_demo_name").set_value("Old Mill")
    app.text_input(key="new_card_demo_0_price").set_value("9.50").run()
    app.switch_page("screens/pages/household.py").run()
    app.switch_page("screens/pages/places.py").run()
    app.run()
    assert app.text_input(key="new_card_demo_name").value == "Old Mill"
    assert app.text_input(key="new_card_demo_0_price").value == "9.50"


def test_a_place_typed_into_the_form_is_added_with_its_board(open_app: Opened) -> None:
    """What it comes to is said before it is saved; saving empties the form, and can be taken back."""
    app = every_field(open_app("places"))
    for name, text in {
        "name": "Old Mill",
        "town": "Galena",
        "subdivision": "IL",
        "hours": "Mo-Su 10:00-16:00",
        "0_price": "9.50",
        "1_price": "5",
        "4_source": "the board",
    }.items():
        app.text_input(key=f"new_card_demo_{name}").set_value(text)
    app.run()
    # Three grown-ups at 9.50, Ivo, Petra and Odile (11, 7 and 4 years) at 5, Bram (1 year) free.
    assert "For us that is $43.50" in said(app.markdown)
    app.button(key="save_new_card").click().run()
    assert not app.exception
    assert "Old Mill" in listed(app)
    assert "new_card_demo_name" not in [field.key for field in app.text_input]
    app.button(key="take_back_new_card_demo").click().run()
    assert "Old Mill" not in listed(app)


@pytest.mark.parametrize(
    ("changes", "field"),
    [
        ({"hours": "whenever"}, "opening.hours"),
        ({"last_entry_minutes_before_close": "soon"}, "opening.last_entry_minutes_before_close"),
        ({"town": "Nowhere at all"}, "where.town"),
    ],
)
def test_each_wrong_answer_is_found_at_its_field(changes: dict[str, str], field: str) -> None:
    """The checks of the card name the field that the parent has to put right."""
    values, _ = card_values(typed_card(**changes), BOARD)
    read = read_place_card(write_toml(values), "", TODAY)
    assert field in [finding.field for finding in read.findings if finding.weight is Weight.FAULT]


@pytest.mark.parametrize(
    ("name", "expected"),
    [("Old Mill", "old-mill"), ("Müller's  Farm!", "muller-s-farm"), ("日本", "place"), ("  ", "")],
)
def test_a_places_id_is_made_from_its_name(name: str, expected: str) -> None:
    """Small letters, digits and hyphens, whatever the name is written with."""
    assert place_id(name) == expected


def test_typed_in_miles_are_kept_as_kilometres() -> None:
    """Ten miles are 16.09344 km (international mile, exact)."""
    drive = read_typed_drive({"distance": "10", "minutes": "20"}, "mill", "mi", TODAY).usable()
    assert drive.km == pytest.approx(16.09344)
    assert drive.typed_on == TODAY


def test_hours_are_told_for_the_coming_week_and_beyond() -> None:
    """Days alike are told together; a place closed all week says when it opens again."""
    week = list(hours_sentences(make_place(), (), TODAY))
    assert week[0] == "Wed, Nov 25, 2026 to Sun, Nov 29, 2026: 10:00 AM to 5:00 PM."
    assert week[1] == "Mon, Nov 30, 2026: closed on Mondays."
    summer = list(hours_sentences(make_place(opening={"hours": "Jun-Aug 10:00-17:00"}), (), TODAY))
    assert "Open again on Tue, Jun 1, 2027." in summer


def test_unknown_parking_is_never_called_free() -> None:
    """A price that nobody knows is said to be unknown."""
    assert list(board_sentences(make_place(parking={})))[-1].startswith("Parking: the price is not known")


def test_every_demo_card_can_be_told(open_app: Opened) -> None:
    """The page opens with all the demo's places."""
    count = len(list(Path("demo_places/places").glob("*.toml")))
    assert len(listed(open_app("places"))) == count


def test_shows_and_stays_are_typed_a_line_of_fields_each() -> None:
    """Name, times, minutes, days of a show; ages and two lengths of a stay; both come back as sentences."""
    mill = {"name": "Mill at work", "starts": "12:00", "minutes": "", "days": "", "worth_it": True}
    values, found = card_values(
        typed_card(
            shows0_name="Otter feeding",
            shows0_starts="11:00, 14:30",
            shows0_minutes="20",
            shows0_days="Sa-Su",
            **{f"shows1_{name}": value for name, value in mill.items()},
            stays0_ages="under 3",
            stays0_shortest_minutes="30",
            stays0_comfortable_minutes="60",
            quiet_hours="Su 10:00-11:00",
        ),
        BOARD,
    )
    assert not found
    place = read_place_card(write_toml(values), "", TODAY).value
    assert place is not None
    told = [*visit_sentences(place), *hours_sentences(place, (), TODAY)]
    assert "Otter feeding at 11:00 AM and 2:30 PM (Sa-Su), 20 min." in told
    assert "Mill at work at 12:00 PM, 20 min." in told
    assert "For people under 3 1 h is comfortable, less than 30 min not worth the drive." in told
    assert "Quiet hours: Su 10:00-11:00" in told


def test_a_show_without_a_time_is_a_fault_of_that_field() -> None:
    """What is missing or cannot be read is told by field, and nothing is guessed."""
    values, _ = card_values(typed_card(shows0_name="Otters", stays0_ages="toddlers"), BOARD)
    found = {finding.field for finding in read_place_card(write_toml(values), "", TODAY).findings}
    assert {
        "visit.shows[0].starts",
        "visit.stays[0].ages",
        "visit.stays[0].shortest_minutes",
        "visit.stays[0].comfortable_minutes",
    } <= found


def test_cards_are_shared_as_one_file_and_come_back_with_the_preview(open_app: Opened) -> None:
    """What another family is handed holds nothing of this one, and is looked at before it counts."""
    app = open_app("places")
    places = [kept.value for kept in services_in(Path(os.environ["TRIPPLAN_DATA"])).demo.all(Place).values()]
    household = services_in(Path(os.environ["TRIPPLAN_DATA"])).demo.get(Household)
    assert household is not None
    shared = write_shared(places)
    words = set(re.findall(r"[\w-]+", shared))
    assert not {member.name for member in household.value.members} & words
    app = bring(app, ("places.toml", shared.encode()))
    assert f"You have {len(places)} of these cards already, word for word" in said(app.markdown)
    assert "take_cards" not in [button.key for button in app.button]
