"""An hour opens up: one press, and what could still be done today stands there."""

from datetime import datetime, time
from pathlib import Path

import pytest
from streamlit.testing.v1 import AppTest

from tests.screens.conftest import Opened, drawn, said
from tripplan.language import wording

WEDNESDAY = "2026-12-09"


@pytest.fixture
def at_eleven(data: Path, monkeypatch: pytest.MonkeyPatch, open_app: Opened) -> AppTest:  # noqa: ARG001
    """The app on a Wednesday in December, at 11:32 by the clock at home."""
    monkeypatch.setenv("TRIPPLAN_TODAY", f"{WEDNESDAY}T11:32-06:00")
    return open_app()


def shown(app: AppTest) -> str:
    """All that the page says in words."""
    return said((*app.markdown, *app.warning, *app.title))


def test_the_answer_is_one_press_away(at_eleven: AppTest) -> None:
    """From now on, at first: nobody leaves before 11:35, and the free time begins then."""
    app = at_eleven.button(key="free_today").click().run()
    assert not app.exception
    assert app.selectbox(key="free_from").value == time(11, 35)
    assert "load up 12:" in drawn(app)
    assert " pm" not in drawn(app)
    assert [button.key for button in app.button if str(button.key).startswith("plan_today_")]


def test_the_free_time_can_be_picked(at_eleven: AppTest) -> None:
    """With an hour left nothing fits, and the reasons stand under it; out of order is said."""
    app = at_eleven.button(key="free_today").click().run()
    app.selectbox(key="free_until").set_value(time(12, 15)).run()
    assert not app.exception
    assert "Nothing fits between 11:35 AM and 12:15 PM." in shown(app)
    app.selectbox(key="free_until").set_value(time(11, 0)).run()
    assert "The free time ends before it begins." in shown(app)


def test_what_is_picked_is_the_plan_of_the_day(at_eleven: AppTest) -> None:
    """Planning one opens the day plan of today with just those times."""
    app = at_eleven.button(key="free_today").click().run()
    button = next(one for one in app.button if str(one.key).startswith("plan_today_"))
    button.click().run()
    assert not app.exception
    place, day, leaves = app.session_state["taken_demo"]
    assert (place, day) == (str(button.key).removeprefix("plan_today_"), WEDNESDAY)
    assert datetime.fromisoformat(leaves).time() >= time(11, 35)
    assert wording.clock(datetime.fromisoformat(leaves)) in app.title[0].value.replace("\\", "")
