"""The With others page keeps who comes along and says what everybody pays, to the cent."""

from collections.abc import Callable
from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest
from streamlit.testing.v1 import AppTest

from tests.saying import says
from tests.screens.conftest import drawn, opened_part, said
from tripplan.clock import TODAY_VARIABLE
from tripplan.documents.outings.going_together import GoingTogether
from tripplan.records.location import FOLDER_VARIABLE
from tripplan.services import open_services
from tripplan.values.money import Money

OpenApp = Callable[..., AppTest]
FARM_DAY = date(2026, 12, 12)


def on_record(tmp_path: Path) -> GoingTogether | None:
    """What the app that the test has opened keeps."""
    settings = {FOLDER_VARIABLE: str(tmp_path / "data"), TODAY_VARIABLE: "2026-11-25"}
    kept = open_services(settings).demo.get(GoingTogether)
    return None if kept is None else kept.value


def usd(amount: int) -> Money:
    """An amount in dollars."""
    return Money(Decimal(amount), "USD")


def add(app: AppTest, name: str, people: str, seats: str = "5", paid: str = "0") -> AppTest:
    """Fill in the form for a new household and send it."""
    for field, text in (("name", name), ("people", people), ("seats", seats), ("paid", paid)):
        app.text_input(key=f"together_demo_new_{field}").set_value(text)
    app.button(key="save_household_new").click().run()
    assert not app.exception
    return app


@pytest.fixture
def at_the_farm(open_app: OpenApp) -> AppTest:
    """The page, asked about the farm in its December season."""
    app = opened_part(open_app("together"), "open_outing")
    app.selectbox(key="together_place").set_value("oatsparrow-farm").run()
    opened_part(app, "open_outing")
    app.date_input(key="together_day").set_value(FARM_DAY).run()
    assert not app.exception
    return app


def test_the_page_opens_on_a_day_that_can_be_done_and_asks_who_comes_along(open_app: OpenApp) -> None:
    """Before anybody is entered there is no figure, and nothing is in the way."""
    app = open_app("together")
    assert "Nobody else comes along yet" in said(app.markdown)
    assert not app.warning
    assert "$" not in drawn(app)


def test_the_example_of_the_demo_is_one_press_away(open_app: OpenApp) -> None:
    """The form says an invented household already; adding it brings shares, payments and seats."""
    app = open_app("together")
    app.button(key="save_household_new").click().run()
    assert not app.exception
    text = said(app.markdown)
    assert says(text, "together-pays", group="The Thistlewoods (invented)")
    assert says(text, "together-seats", seats=15, people="13 people")
    assert says(text, "cautions-seat-moves-along")
    assert says(text, "together-rule")


def test_shares_add_up_and_money_paid_in_advance_comes_back(at_the_farm: AppTest) -> None:
    """By hand from the card ($10 from 2 to 64, $8 from 65, free under 2): 58 + 50 = $108; 40 are paid.

    The demo family is five at $10 and a senior at $8; the others are five at $10. They still owe $10.
    """
    add(at_the_farm, "Thistle", "41, 38, 12, 10, 7, 19 mo", paid="40")
    text = said(at_the_farm.markdown)
    assert at_the_farm.title[0].value.replace("\\", "") == "Your part: $58.00 of $108.00"
    assert "13 people" in drawn(at_the_farm)
    own = "The Quillmarsh family (invented)"
    assert says(text, "together-pays", group=own, amount=usd(58))
    assert says(text, "together-pays-paid", group="Thistle", amount=usd(50), paid=usd(40))
    assert says(text, "together-transfer", payer="Thistle", receiver=own, amount=usd(10))
    assert says(text, "together-more") or says(text, "together-more-reached")


def test_missing_seats_are_a_warning(at_the_farm: AppTest) -> None:
    """The van has eight seats; with nobody else's car five of thirteen people have none."""
    add(at_the_farm, "Thistle", "41, 38, 12, 10, 7, 19 mo", seats="0")
    assert says(drawn(at_the_farm), "together-seats-missing", missing=5, people="13 people", seats=8)


def test_every_fault_of_a_household_is_told_at_once(at_the_farm: AppTest, tmp_path: Path) -> None:
    """Name, one age, seats and money are all named as on the screen, and nothing is kept."""
    add(at_the_farm, "", "38, old, 9", seats="many", paid="1.234")
    faults = said(at_the_farm.error)
    assert "Please fix 4 things. Nothing was changed yet." in faults
    for told in ("What is it called?", "Who comes along, by age? no. 2", "It says: many", "It says: 1.234"):
        assert told in faults
    assert faults.count("It says: many") == 2  # at the button and at the field
    assert on_record(tmp_path) is None


def test_a_household_is_changed_and_taken_off(at_the_farm: AppTest, tmp_path: Path) -> None:
    """What is changed is on record, with statuses; taken off, it is gone."""
    add(at_the_farm, "Thistle", "41, 9")
    at_the_farm.text_input(key="together_demo_0_people").set_value(
        "41 (home educator, Iowa resident), 9, 16 mo"
    )
    at_the_farm.button(key="save_household_0").click().run()
    assert not at_the_farm.exception
    kept = on_record(tmp_path)
    assert kept is not None
    assert list(map(str, kept.households[0].people)) == ["41 (home educator, Iowa resident)", "9", "16 mo"]
    at_the_farm.button(key="remove_household_0").click().run()
    kept = on_record(tmp_path)
    assert kept is not None
    assert kept.households == ()


def test_own_seats_and_payments_are_kept(at_the_farm: AppTest, tmp_path: Path) -> None:
    """Who has paid everything in advance pays nothing at the till and gets the others' part."""
    add(at_the_farm, "Thistle", "41, 9")
    at_the_farm.text_input(key="together_demo_own_paid").set_value("78")
    at_the_farm.button(key="save_together_own").click().run()
    assert not at_the_farm.exception
    kept = on_record(tmp_path)
    assert kept is not None
    assert kept.paid == 78
    text = said(at_the_farm.markdown)
    own = "The Quillmarsh family (invented)"
    assert says(text, "together-transfer", payer="Thistle", receiver=own, amount=usd(20))
    assert not says(text, "together-pays-rest")


def test_markup_in_a_name_is_shown_as_it_is(at_the_farm: AppTest) -> None:
    """A name with marks neither becomes bold nor a link."""
    add(at_the_farm, "**A** [b](c) $d$", "41, 9")
    shares = next(m.value for m in at_the_farm.markdown if "pays" in m.value)
    assert r"\*\*A\*\* \[b\]\(c\) \$d\$" in shares


def test_the_own_household_cannot_come_along_twice(at_the_farm: AppTest) -> None:
    """Another household needs another name."""
    add(at_the_farm, "The Quillmarsh family (invented)", "41, 9")
    assert "that is your own household" in said(at_the_farm.error)


def test_a_day_without_entry_says_why(at_the_farm: AppTest) -> None:
    """In the farm's closed season there is no figure but a reason."""
    add(at_the_farm, "Thistle", "41, 9")
    opened_part(at_the_farm, "open_outing")
    at_the_farm.date_input(key="together_day").set_value(date(2027, 2, 6)).run()
    assert not at_the_farm.exception
    assert "cannot be done" in said(at_the_farm.warning)
    assert "$" not in drawn(at_the_farm)
