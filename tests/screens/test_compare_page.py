import sqlite3
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

from streamlit.testing.v1 import AppTest

from tests.screens.conftest import services_in
from tripplan.records.kinds import ComparedPlaces
from tripplan.records.opening import Which

OpenApp = Callable[..., AppTest]


def test_a_first_visitor_sees_three_outings_compared(open_app: OpenApp) -> None:
    """Compare opens with three totals, a chart, a table and the notice that the demo is invented."""
    app = open_app()
    assert len(app.metric) == 3
    assert all("$" in metric.value for metric in app.metric)
    assert any("invented" in text.value for text in app.markdown)
    assert len(app.table) == 1
    assert {"In all", "Best day", "Nap", "Full house"} <= set(app.table[0].value.index)


def test_the_chance_of_a_full_house_can_be_asked_why(open_app: OpenApp) -> None:
    """Each outing tells every reason with its size, and where the figures come from."""
    told = [expander for expander in open_app().expander if expander.label == "Why so full or empty?"]
    assert len(told) == 3
    for why in told:
        text = "\n".join(element.value for element in why.markdown).replace("\\", "")
        assert "estimate: counted elsewhere, not at this place" in text


def test_taking_an_outing_leads_on_to_the_day_plan(open_app: OpenApp) -> None:
    """After the press the page says what was taken."""
    app = open_app()
    app.button(key="take_ledgewing").click().run()
    assert not app.exception
    assert any(text.value.startswith("Taken\\: Ledgewing") for text in app.markdown)


def test_other_places_are_compared_and_kept(open_app: OpenApp) -> None:
    """Another pick changes the cards and stands in the records."""
    app = open_app()
    app.multiselect(key="compared_places").set_value(["tern-landing"]).run()
    assert not app.exception
    assert len(app.metric) == 1
    again = open_app()
    assert again.multiselect(key="compared_places").value == ["tern-landing"]


def test_a_choice_stays_with_the_records_that_it_was_made_in(open_app: OpenApp, tmp_path: Path) -> None:
    """The demo is on the screen, another window switches to the own records: the choice is the demo's."""
    app = open_app()
    parts = services_in(tmp_path / "data")
    parts.use(Which.FAMILY)
    app.multiselect(key="compared_places").set_value(["tern-landing"]).run()
    assert not app.exception
    assert parts.own.get(ComparedPlaces) is None
    kept = parts.demo.get(ComparedPlaces)
    assert kept is not None
    assert kept.value.places == ("tern-landing",)


def test_a_choice_that_cannot_be_kept_says_so(open_app: OpenApp, tmp_path: Path) -> None:
    """Another program holds the file: the page stands, with a sentence."""
    app = open_app()
    with closing(sqlite3.connect(tmp_path / "data" / "demo.sqlite3", isolation_level=None)) as other:
        other.execute("BEGIN IMMEDIATE")
        app.multiselect(key="compared_places").set_value(["tern-landing"]).run()
    assert not app.exception
    assert "Nothing was changed" in app.error[0].value
    assert [metric.label for metric in app.metric]


def test_a_smaller_party_costs_less(open_app: OpenApp) -> None:
    """Leaving the grandmother at home lowers no total below zero and raises none."""
    app = open_app()
    before = [float(metric.value.split("$")[1].replace(",", "")) for metric in app.metric]
    party = app.button_group(key="party_picker")
    party.set_value([name for name in party.value or [] if not name.startswith("Grandma")]).run()
    after = [float(metric.value.split("$")[1].replace(",", "")) for metric in app.metric]
    assert not app.exception
    assert sum(after) < sum(before)


def test_own_records_without_a_household_point_to_the_household_page(open_app: OpenApp) -> None:
    """Leaving the demo shows no outing but the way to begin."""
    app = open_app()
    app.button(key="leave_demo").click().run()
    assert not app.exception
    assert not app.metric
    assert any("household" in info.value for info in app.info)
    app.button(key="load_demo").click().run()
    assert len(app.metric) == 3
