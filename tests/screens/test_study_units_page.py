"""The Study units page keeps units, says which places fit, and plans a term's outings."""

from collections.abc import Callable
from datetime import date
from pathlib import Path

from streamlit.testing.v1 import AppTest

from tests.screens.conftest import drawn, said
from tripplan.clock import TODAY_VARIABLE
from tripplan.documents.outings.planned import PlannedOuting
from tripplan.documents.study.units import StudyUnit
from tripplan.documents.study.wishes import ProgrammeWishes
from tripplan.records.location import FOLDER_VARIABLE
from tripplan.records.store import Records
from tripplan.services import open_services

OpenApp = Callable[..., AppTest]


def demo(tmp_path: Path) -> Records:
    """The invented family's records behind the app that the test has opened."""
    environment = {FOLDER_VARIABLE: str(tmp_path / "data"), TODAY_VARIABLE: "2026-11-25"}
    return open_services(environment).demo


def press(app: AppTest, key: str) -> AppTest:
    """The page after one press."""
    app.button(key=key).click().run()
    assert not app.exception, app.exception
    return app


def where_to(app: AppTest, number: int) -> str:
    """The outing of the line of dates, by its place in it."""
    (line,) = (str(one.proto.body) for one in app.get("html") if "<ol" in str(one.proto.body))
    return line.split("<li>")[number + 1]


def test_the_demo_opens_with_a_terms_outings(open_app: OpenApp, tmp_path: Path) -> None:
    """Each unit has an outing with its reasons; a close spelling counts once the parent says so."""
    app = open_app("study_units")
    assert app.title[0].value == "3 outings for your studies"
    told = said(app.caption)
    assert "left of $300" in told
    assert "Exact for these days" in told
    shown = " ".join(drawn(app).split())
    assert "Sun, Dec 6 Sheaf and Stone, a Museum of Grain" in shown
    assert "also: Ledgewing Birds of Prey" in shown
    assert "at most $300.00, one a week" in [button.label.replace("\\", "") for button in app.button]
    assert "It does not count until you say so" in said(app.caption)
    press(app, "same_2_0")
    kept = demo(tmp_path).get(StudyUnit, "Stone and water")
    assert kept is not None
    assert kept.value.topics == ("springs and groundwater", "limestone and caves")
    assert "Greyshelf Quarry Museum" in drawn(app)
    press(app, "take_back_study_units")
    kept = demo(tmp_path).get(StudyUnit, "Stone and water")
    assert kept is not None
    assert "caves" in kept.value.topics


def test_an_outing_can_be_fixed_ruled_out_freed_and_swapped(open_app: OpenApp, tmp_path: Path) -> None:
    """What is fixed stays, what is ruled out gives way; another place is weighed for the whole term."""
    app = press(open_app("study_units"), "fix_1")
    assert "You fixed this; the rest is planned around it." in said(app.caption)
    app = press(press(app, "free_1"), "not_place_1")
    assert "Tern Landing" not in where_to(app, 1)
    assert "Ledgewing Birds of Prey" in where_to(app, 1)
    assert "it may be more" in said(app.caption)
    wishes = demo(tmp_path).get(ProgrammeWishes)
    assert wishes is not None
    assert [one.place for one in wishes.value.ruled_out] == ["tern-landing"]
    app = press(app, "allow_1")
    assert "Tern Landing River House" in where_to(app, 1)
    day = app.date_input(key="fix_day_1_None")
    day.set_value(date(2027, 1, 16))
    app = press(app, "save_fix_1")
    assert "Sat, Jan 16" in where_to(app, 1)
    app = press(app, "free_1")
    app.toggle(key="elsewhere_1").set_value(True).run()
    text = said(app.markdown)
    assert "The whole programme then costs" in text
    assert "'Stone and water' would move" in text
    app = press(app, "instead_1_0")
    assert "'Who eats whom' goes to Ledgewing Birds of Prey." in said(app.success)


def test_a_small_budget_stands_in_the_way_and_kept_outings_are_planned(
    open_app: OpenApp, tmp_path: Path
) -> None:
    """What would be enough is said; without a budget all are kept as planned outings under their units."""
    app = open_app("study_units")
    app.text_input(key="programme_limits_budget").set_value("20")
    app = press(app, "save_limits")
    warned = said(app.warning)
    assert (
        "the budget of $20.00 stands in the way: the least that one outing for each unit can cost" in warned
    )
    assert "keep_0" not in [str(button.key) for button in app.button]
    app.text_input(key="programme_limits_budget").set_value("")
    app = press(press(app, "save_limits"), "keep_all")
    kept = [one.value for one in demo(tmp_path).all(PlannedOuting).values()]
    assert sorted(one.study_unit for one in kept) == [
        "From grain to bread",
        "Stone and water",
        "Who eats whom",
    ]
    assert said(app.caption).count("It is a planned outing already") == 3
    assert app.title[0].value == "3 outings for your studies"


def test_units_are_added_and_removed(open_app: OpenApp, tmp_path: Path) -> None:
    """Every fault is told at once; a removed unit takes its wishes along, and one press brings both back."""
    app = open_app("study_units")
    app.text_input(key="new_unit_budget").set_value("plenty")
    app = press(app, "save_new_unit")
    assert "Please fix 3 things. Nothing was changed yet." in said(app.error)
    app.text_input(key="new_unit_name").set_value("On the river")
    app.text_input(key="new_unit_budget").set_value("75.50")
    app.multiselect(key="new_unit_topics").set_value(["rivers and barges"])
    app.button_group(key="new_unit_members").set_value(["Tamsin", "Ivo"])
    app = press(app, "save_new_unit")
    kept = demo(tmp_path).get(StudyUnit, "On the river")
    assert kept is not None
    assert (kept.value.topics, kept.value.members) == (("rivers and barges",), ("Tamsin", "Ivo"))
    assert str(kept.value.budget) == "75.50"
    app = press(press(app, "fix_2"), "remove_unit_2")
    wishes = demo(tmp_path).get(ProgrammeWishes)
    assert wishes is not None
    assert wishes.value.settled == ()
    assert demo(tmp_path).get(StudyUnit, "Who eats whom") is None
    app = press(app, "take_back_study_units")
    wishes = demo(tmp_path).get(ProgrammeWishes)
    assert wishes is not None
    assert [one.unit for one in wishes.value.settled] == ["Who eats whom"]
    assert demo(tmp_path).get(StudyUnit, "Who eats whom") is not None

    for _ in range(4):
        app = press(app, "remove_unit_0")
    assert app.title[0].value == "What are you studying?"
    assert app.text_input(key="new_unit_name")


def test_a_day_picked_for_a_topic_waits_for_its_press(open_app: OpenApp) -> None:
    """Picked but not planned yet, it is there in another window; once it is planned the form is empty."""
    open_app("study_units").date_input(key="fix_day_1_None").set_value(date(2027, 1, 16)).run()
    app = open_app("study_units")
    assert app.date_input(key="fix_day_1_None").value == date(2027, 1, 16)
    press(press(app, "save_fix_1"), "free_1")
    assert open_app("study_units").date_input(key="fix_day_1_None").value is None
