"""The piece of a page that looks a text up online, with a service made for the test."""

from pathlib import Path

import pytest
from streamlit.testing.v1 import AppTest


def page() -> None:
    """A page with nothing but the piece; whole in itself, as the test runs it from its text."""
    import os
    from types import SimpleNamespace

    import streamlit as st

    from tripplan.files.online_lookup import OnlineLookup
    from tripplan.screens.frame import View
    from tripplan.screens.where_lookup import look_up_online
    from tripplan.services import open_services

    services = open_services(dict(os.environ))
    asked = st.session_state.setdefault("asked", [])

    def geocode(text: str) -> SimpleNamespace | None:
        asked.append(text)
        if text == "Nowhere":
            return None
        return SimpleNamespace(latitude=45.76, longitude=4.84, address="Lyon, France", raw={})

    view = View(services, services.which, services.family(), services.today())
    text = st.text_input("Town", key="town")
    look_up_online(view, "home", text, OnlineLookup(geocode, lambda: 0.0, lambda _: None))


@pytest.fixture
def app(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> AppTest:
    """The page with fresh records, nothing typed yet."""
    monkeypatch.setenv("TRIPPLAN_DATA", str(tmp_path / "data"))
    monkeypatch.setenv("TRIPPLAN_TODAY", "2026-11-25")
    found = AppTest.from_function(page, default_timeout=30).run()
    assert not found.exception, found.exception
    return found


def captions(app: AppTest) -> str:
    """The small print, without marks."""
    return "\n".join(caption.value for caption in app.caption).replace("\\", "")


def test_without_a_text_there_is_nothing_to_press(app: AppTest) -> None:
    """The piece asks for a text first."""
    assert "type it in first" in captions(app)
    assert not app.button


def test_the_button_says_before_what_is_sent_and_where(app: AppTest) -> None:
    """Text, service and program are named, and nothing has been sent yet."""
    app.text_input(key="town").set_value("Lyon, France").run()
    said = captions(app)
    assert "“Lyon, France”" in said
    assert "nominatim.openstreetmap.org" in said
    assert "tripplan/" in said
    assert "nothing else about your family is sent" in said
    assert app.session_state["asked"] == []


def test_an_answer_is_kept_so_that_the_same_text_is_sent_once(app: AppTest) -> None:
    """After the press the point stands there, and again for the same text however it is written."""
    app.text_input(key="town").set_value("Lyon, France").run()
    app.button(key="look_up_home").click().run()
    assert not app.exception
    assert "45.76000, 4.84000" in app.markdown[0].value.replace("\\", "")
    assert "OpenStreetMap contributors" in captions(app)
    app.text_input(key="town").set_value("  LYON,  France").run()
    assert [button.key for button in app.button] == ["look_up_home_forget"]
    assert app.session_state["asked"] == ["Lyon, France"]


def test_a_forgotten_answer_can_be_asked_for_again(app: AppTest) -> None:
    """The answer goes away and the offer with all it says comes back."""
    app.text_input(key="town").set_value("Lyon").run()
    app.button(key="look_up_home").click().run()
    app.button(key="look_up_home_forget").click().run()
    assert [button.key for button in app.button] == ["look_up_home"]
    app.button(key="look_up_home").click().run()
    assert app.session_state["asked"] == ["Lyon", "Lyon"]


def test_a_failure_is_said_and_nothing_is_kept(app: AppTest) -> None:
    """A place nobody knows brings a sentence, and the button stays."""
    app.text_input(key="town").set_value("Nowhere").run()
    app.button(key="look_up_home").click().run()
    assert "Nothing was looked up: no such place" in app.error[0].value.replace("\\", "")
    assert [button.key for button in app.button] == ["look_up_home"]
