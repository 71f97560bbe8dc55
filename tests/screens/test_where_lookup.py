"""Looking a location up online on the Household page, with a service made for the test."""

from pathlib import Path

import pytest
from streamlit.testing.v1 import AppTest

from tests.screens.conftest import Opened, drawn
from tripplan.screens.look.folds import ALL_OPENED


def page() -> None:
    """The Household page with a made-up service; whole in itself, as the test runs it from its text."""
    import os
    from dataclasses import replace
    from types import SimpleNamespace

    import streamlit as st

    from tripplan.files.locations.online_lookup import OnlineLookup
    from tripplan.records.opening import Which
    from tripplan.screens.household.page import render
    from tripplan.screens.widgets.view import View
    from tripplan.services import open_services

    asked = st.session_state.setdefault("asked", [])

    def geocode(text: str) -> SimpleNamespace | None:
        asked.append(text)
        if text == "Nowhere":
            return None
        details = {"address": {"country_code": "fr", "ISO3166-2-lvl4": "FR-ARA"}}
        return SimpleNamespace(latitude=45.7578, longitude=4.832, address="Lyon, Rhône, France", raw=details)

    lookup = OnlineLookup(geocode, lambda: 0.0, lambda _: None)
    services = replace(open_services(dict(os.environ)), look_up=lookup)
    services.use(Which(os.environ["SHOWN"]))
    family = services.family()
    render(View(services, services.which, family, services.today(family)))


@pytest.fixture
def opened(data: Path, monkeypatch: pytest.MonkeyPatch) -> Opened:  # noqa: ARG001 - it is there for the app
    """Opens the page on fresh records: one's own, or the demo family's."""

    def open_page(shown: str = "family") -> AppTest:
        monkeypatch.setenv("SHOWN", shown)
        app = AppTest.from_function(page, default_timeout=30)
        app.session_state[ALL_OPENED] = True
        app.run()
        assert not app.exception, app.exception
        return app

    return open_page


def captions(app: AppTest) -> str:
    """The small print, without marks."""
    return "\n".join(caption.value for caption in app.caption).replace("\\", "")


def keys(app: AppTest) -> list[str | None]:
    """The keys of the look-up's buttons."""
    return [button.key for button in app.button if str(button.key).startswith("look_up")]


def test_without_a_text_there_is_nothing_to_press(opened: Opened) -> None:
    """The piece asks for a text first."""
    app = opened()
    assert "type it in first" in captions(app)
    assert keys(app) == []


def test_the_button_says_before_what_is_sent_and_where(opened: Opened) -> None:
    """Text, service and program are named, and nothing has been sent yet."""
    app = opened()
    app.text_input(key="look_up_first_text").set_value("Lyon, France").run()
    said = captions(app)
    assert "“Lyon, France”" in said
    assert "nominatim.openstreetmap.org" in said
    assert "tripplan/" in said
    assert "nothing else about your family is sent" in said
    assert app.session_state["asked"] == []


def test_a_town_unknown_offline_is_found_by_the_button_and_becomes_the_home(opened: Opened) -> None:
    """The refused town is offered for the look-up; the answer fills the fields, and saving takes it."""
    app = opened()
    app.text_input(key="first_name").set_value("Ours")
    app.text_input(key="first_person0").set_value("Ada")
    app.text_input(key="first_born0").set_value("1988-05-20")
    app.text_input(key="first_where").set_value("Lyon, France")
    app.button(key="save_first").click().run()
    assert "look it up on the internet" in app.error[0].value
    assert app.text_input(key="look_up_first_text").value == "Lyon, France"
    assert app.session_state["asked"] == []
    app.button(key="look_up_first").click().run()
    assert app.session_state["asked"] == ["Lyon, France"]
    assert "They count once you save" in app.success[0].value
    assert app.text_input(key="first_where").value == "45.7578, 4.832"
    app.button(key="save_first").click().run()
    assert not app.error
    assert "Lyon, ARA · Europe/Paris" in drawn(app)


def test_the_home_on_record_moves_to_what_was_looked_up(opened: Opened) -> None:
    """The offered text names town and state but no street; state, ZIP code and zone follow the answer."""
    app = opened("demo")
    app.text_input(key="home_address").set_value("12 Elm Street")
    app.button(key="save_home").click().run()
    assert app.text_input(key="look_up_home_text").value == "Dubuque, IA, 52001"
    app.text_input(key="look_up_home_text").set_value("5 Rue Neuve, Lyon").run()
    app.button(key="look_up_home").click().run()
    app.button(key="save_home").click().run()
    assert not app.error
    assert "Lyon, ARA · Europe/Paris" in drawn(app)
    assert app.text_input(key="home_postal_code").value == ""
    assert app.text_input(key="home_country").value == "FR"
    assert app.session_state["asked"] == ["5 Rue Neuve, Lyon"]


def test_an_answer_is_kept_so_that_the_same_text_is_sent_once(opened: Opened) -> None:
    """After the press the point stands there, and again for the same text however it is written."""
    app = opened()
    app.text_input(key="look_up_first_text").set_value("Lyon, France").run()
    app.button(key="look_up_first").click().run()
    assert "45.75780, 4.83200" in "".join(element.value for element in app.markdown).replace("\\", "")
    assert "OpenStreetMap contributors" in captions(app)
    app.text_input(key="look_up_first_text").set_value("  LYON,  France").run()
    assert keys(app) == ["look_up_first_take", "look_up_first_forget"]
    app.button(key="look_up_first_take").click().run()
    assert app.text_input(key="first_where").value == "45.7578, 4.832"
    assert app.session_state["asked"] == ["Lyon, France"]


def test_a_forgotten_answer_can_be_asked_for_again(opened: Opened) -> None:
    """The answer goes away and the offer with all it says comes back."""
    app = opened()
    app.text_input(key="look_up_first_text").set_value("Lyon").run()
    app.button(key="look_up_first").click().run()
    app.button(key="look_up_first_forget").click().run()
    assert keys(app) == ["look_up_first"]
    app.button(key="look_up_first").click().run()
    assert app.session_state["asked"] == ["Lyon", "Lyon"]


def test_a_failure_is_said_and_nothing_is_kept(opened: Opened) -> None:
    """A place nobody knows brings a sentence, and the button stays."""
    app = opened()
    app.text_input(key="look_up_first_text").set_value("Nowhere").run()
    app.button(key="look_up_first").click().run()
    assert "Nothing was looked up: no such place" in app.error[0].value.replace("\\", "")
    assert keys(app) == ["look_up_first"]
