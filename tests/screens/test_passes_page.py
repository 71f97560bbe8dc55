"""The Passes page keeps the visits a parent lists and says what to buy for them."""

from collections.abc import Callable
from datetime import date
from pathlib import Path

from streamlit.testing.v1 import AppTest

from tests.saying import says
from tests.screens.conftest import drawn, said, services_in
from tripplan.documents.outings.planned_visits import PlannedVisits

OpenApp = Callable[..., AppTest]


def with_visits(open_app: OpenApp, times: int = 4, place: str = "tern-landing") -> AppTest:
    """The page after some visits, four weeks apart, were added."""
    app = open_app("passes")
    app.selectbox(key="visits_demo_place").set_value(place)
    app.number_input(key="visits_demo_times").set_value(times)
    app.button(key="add_visits").click().run()
    assert not app.exception
    return app


def test_before_anything_is_listed_the_page_says_what_to_do(open_app: OpenApp) -> None:
    """No figure is shown, the form is ready, and the passes on the cards can be read."""
    app = open_app("passes")
    assert app.title[0].value == "Is a membership worth it?"
    assert "Add those visits" in said(app.markdown)
    assert "$" not in drawn(app)
    assert "River House household pass" in said(app.markdown)


def test_one_press_lists_visits_and_brings_the_answer(open_app: OpenApp) -> None:
    """Four visits of the invented family to the river house: its pass of $128 and a senior's $6 each time.

    By hand from the card: 128 + 4 x 6 = $152; without a pass it is 4 x $63 = $252, so $100 less.
    """
    app = with_visits(open_app)
    assert said(app.title) == "Buy River House household pass: it saves $100.00"
    assert "4 visits, all in $152.00" in " ".join(drawn(app).split())
    assert "$252.00 without" in drawn(app)
    assert "pays from visit 3" in drawn(app)
    text = said(app.markdown)
    assert "'River House household pass' for the household, good until Sat, Dec 4, 2027" in text
    assert says(text, "passes-paid-back", number=3)
    assert text.count("instead of $63.00 in all") == 4
    assert "Exact for these visits" in said(app.caption)


def test_the_list_is_kept_and_a_visit_comes_off_it(open_app: OpenApp, tmp_path: Path) -> None:
    """The visits stand on record; one taken off is gone there too, and taking that back brings it again."""
    app = with_visits(open_app)
    app.button(key="remove_visit_tern-landing_2027-01-02").click().run()
    kept = services_in(tmp_path / "data").demo.get(PlannedVisits)
    assert kept is not None
    assert [visit.day for visit in kept.value.visits] == [
        date(2026, 12, 5),
        date(2027, 1, 30),
        date(2027, 2, 27),
    ]
    app.button(key="take_back_passes").click().run()
    kept = services_in(tmp_path / "data").demo.get(PlannedVisits)
    assert kept is not None
    assert len(kept.value.visits) == 4
    app.button(key="clear_visits").click().run()
    assert app.title[0].value == "Is a membership worth it?"


def test_a_visit_that_cannot_be_is_left_out_with_its_reason(open_app: OpenApp) -> None:
    """The farm has a season: a visit after it costs nothing here and says why."""
    app = with_visits(open_app, place="oatsparrow-farm")
    assert "is left out: closed" in said(app.markdown)


def test_every_fault_of_new_visits_is_told_at_once(open_app: OpenApp, tmp_path: Path) -> None:
    """Nobody picked and visits beyond twelve months: both are said, and nothing is listed."""
    app = open_app("passes")
    app.number_input(key="visits_demo_times").set_value(20)
    app.button_group(key="visits_demo_party").set_value([])
    app.button(key="add_visits").click().run()
    assert not app.exception
    faults = said(app.error)
    assert "Please fix 2 things. Nothing was changed yet." in faults
    assert "pick at least one person" in faults
    assert "Nov 24, 2027" in faults
    assert faults.casefold().count("pick at least one person") == 2  # at the button and at the field
    assert services_in(tmp_path / "data").demo.get(PlannedVisits) is None


def test_a_planned_outing_is_on_the_list(open_app: OpenApp) -> None:
    """What Calendar keeps as planned counts here without being entered again, and is changed there."""
    app = open_app("compare")
    app.button(key="take_ledgewing").click().run()
    app.switch_page("screens/pages/calendar.py").run()
    app.run()
    app.button(key="save_entry").click().run()
    app.switch_page("screens/pages/passes.py").run()
    app.run()
    assert not app.exception
    assert "Ledgewing Birds of Prey: entry" in said(app.markdown)
    assert "Planned on Calendar." in said(app.caption)
    assert not [button for button in app.button if str(button.key).startswith("remove_visit")]
