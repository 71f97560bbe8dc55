"""What was chosen and half written is there in another window and after a restart, of each family its own."""

from datetime import date
from pathlib import Path

import pytest
from streamlit.testing.v1 import AppTest

from tests.builders import make_household, make_place
from tests.screens.conftest import Opened, drawn, said, services_in
from tripplan.records.opening import Which
from tripplan.records.unsaved.unsaved_file import UnsavedFile

TODAY = date(2026, 11, 25)
CONSUMPTION = "car_car.consumption"


@pytest.fixture
def own(data: Path) -> None:
    """A family of one's own beside the demo; the demo is shown."""
    services = services_in(data)
    with services.own.change(services.clock()) as change:
        for value in (make_household(), make_place()):
            change.save(value)
    services.use(Which.DEMO)


def kept(data: Path, which: Which) -> dict[str, object]:
    """What lies beside one family's records."""
    return dict(UnsavedFile(data / f"{which}.sqlite3").all(TODAY))


def test_a_half_written_form_waits_until_it_is_saved_or_begun_anew(open_app: Opened, data: Path) -> None:
    """In a second window it reads as it was typed; saving or beginning anew leaves nothing behind."""
    first = open_app("household")
    first.text_input(key=CONSUMPTION).set_value("25.5").run()
    second = open_app("household")
    assert second.text_input(key=CONSUMPTION).value == "25.5"
    assert "22 miles per US gallon" in drawn(second)
    second.button(key="car_start_over").click().run()
    assert second.text_input(key=CONSUMPTION).value == "22"
    assert kept(data, Which.DEMO) == {}
    second.text_input(key=CONSUMPTION).set_value("26").run()
    assert kept(data, Which.DEMO) != {}
    second.button(key="save_car").click().run()
    assert kept(data, Which.DEMO) == {}
    assert open_app("household").text_input(key=CONSUMPTION).value == "26"


def test_what_was_saved_elsewhere_meanwhile_counts_more_than_a_draft(open_app: Opened) -> None:
    """A field whose value on record is another by now shows that; another field keeps its draft."""
    first = open_app("household")
    first.text_input(key=CONSUMPTION).set_value("25.5").run()
    first.text_input(key="car_car.name").set_value("Old van").run()
    other = open_app("household")
    other.text_input(key="car_car.name").set_value("Bus")
    other.text_input(key=CONSUMPTION).set_value("22")
    other.button(key="save_car").click().run()
    first.run()
    assert first.text_input(key="car_car.name").value == "Bus"
    assert first.text_input(key=CONSUMPTION).value == "25.5"


@pytest.mark.usefixtures("own")
def test_choices_and_drafts_of_the_demo_and_of_the_family_stay_apart(open_app: Opened, data: Path) -> None:
    """The demo's party, outing and typed text are not the family's, and are there when it is shown again."""
    app = open_app("compare")
    app.button(key="take_ledgewing").click().run()
    app.switch_page("screens/pages/household.py").run()
    app.text_input(key="new_member_name").set_value("Fern").run()
    app.button(key="leave_demo").click().run()
    assert app.text_input(key="new_member_name").value == ""
    assert "taken_demo" not in app.session_state
    app.text_input(key="new_member_name").set_value("Moss").run()
    assert set(kept(data, Which.FAMILY)) == {"filled_new_member", "typed_new_member"}
    services_in(data).use(Which.DEMO)
    again = open_app("household")
    assert again.text_input(key="new_member_name").value == "Fern"
    assert again.session_state["taken_demo"][0] == "ledgewing"


def test_an_entry_of_the_logbook_is_open_again_as_it_was(open_app: Opened) -> None:
    """The form that was open, with what was typed; closing it without keeping drops both."""
    app = open_app("logbook")
    app.button(key="write_other").click().run()
    app.text_input(key="entry_demo_title").set_value("Beaver pond")
    app.date_input(key="entry_demo_day").set_value(date(2026, 11, 23)).run()
    again = open_app("logbook")
    assert again.text_input(key="entry_demo_title").value == "Beaver pond"
    assert again.date_input(key="entry_demo_day").value == date(2026, 11, 23)
    again.button(key="close_entry").click().run()
    closed = open_app("logbook")
    closed.button(key="write_other").click().run()
    assert closed.text_input(key="entry_demo_title").value == ""


def test_a_place_that_is_typed_in_is_open_again_with_its_prices(open_app: Opened) -> None:
    """Name, hours, a price and a row that was added; cancelling drops them."""
    spot = "new_card_demo"
    app = open_app("places")
    app.button(key=f"{spot}_type").click().run()
    app.text_input(key=f"short_{spot}_name").set_value("Mill").run()
    again = open_app("places")
    assert again.text_input(key=f"short_{spot}_name").value == "Mill"
    again.button(key=f"short_{spot}_more").click().run()
    again.run()
    again.text_input(key=f"{spot}_0_price").set_value("9.50").run()
    third = open_app("places")
    assert third.text_input(key=f"{spot}_name").value == "Mill"
    assert third.text_input(key=f"{spot}_0_price").value == "9.50"
    third.button(key=f"{spot}_cancel").click().run()
    assert f"{spot}_name" not in {one.key for one in open_app("places").text_input}


def address(app: AppTest, **named: str) -> str:
    """What Day plan says of an address that names a place and a day."""
    for name, value in named.items():
        app.query_params[name] = value
    app.run()
    assert not app.exception
    return said(app.warning)


def test_an_address_that_cannot_be_opened_is_said(open_app: Opened) -> None:
    """An unknown place, what is no day, and a day that is over; a good one opens what it names."""
    app = open_app("day_plan")
    assert "no place of yours is called “nowhere”" in address(app, place="nowhere", day="2026-12-03")
    wrong = address(app, place="ledgewing", day="12/3")
    assert "“12/3” is no day such as 2026-11-25" in wrong
    assert "is over" in address(app, place="ledgewing", day="2026-11-02")
    assert address(app, place="ledgewing", day="2026-12-03") == ""
    assert app.selectbox(key="plan_place").value == "ledgewing"
    assert app.date_input(key="plan_day").value == date(2026, 12, 3)
    assert app.query_params["place"] == "ledgewing"
