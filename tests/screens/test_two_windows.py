"""Two windows that change the same: the second is asked, and neither loses what was typed or saved."""

import os
from datetime import date

import pytest
from streamlit.testing.v1 import AppTest

from tests.builders import make_household, make_place
from tests.screens.conftest import Opened, place_page, said
from tripplan.documents.calendars.calendars import FamilyCalendar
from tripplan.documents.family.household import Household
from tripplan.documents.outings.planned import PlannedOuting
from tripplan.records.merging.differences import differences
from tripplan.screens.widgets.conflict import Clash, brought_together, told
from tripplan.services import open_services

RESERVE, TREATS, EARLIEST = (
    "reserve_reserve_percent",
    "reserve_treats_per_child",
    "habits_habits.rest_minutes",
)
MINE, THEIRS = "conflict_mine", "conflict_theirs"
TODAY = date(2026, 11, 25)


def keys(app: AppTest) -> set[str]:
    """The buttons of a page."""
    return {str(button.key) for button in app.button}


@pytest.fixture
def windows(open_app: Opened) -> tuple[AppTest, AppTest]:
    """Two windows that show the same household; both have typed, and the first one has saved."""
    first, second = open_app("household"), open_app("household")
    first.text_input(key=RESERVE).set_value("5")
    first.button(key="save_reserve").click().run()
    assert not keys(first) & {MINE, THEIRS}
    second.text_input(key=RESERVE).set_value("50")
    second.text_input(key=TREATS).set_value("7.25")
    second.button(key="save_reserve").click().run()
    assert not second.exception
    return first, second


def on_record(app: AppTest) -> tuple[str, str]:
    """Reserve and treats as a window shows them after a look at the records."""
    app.run()
    return app.text_input(key=RESERVE).value or "", app.text_input(key=TREATS).value or ""


def test_the_second_window_is_asked_and_keeps_what_it_typed(
    windows: tuple[AppTest, AppTest], open_app: Opened
) -> None:
    """It sees both changes beside what was there before; nothing is saved, its fields say what it typed."""
    _, second = windows
    shown = said(second.markdown)
    assert "Reserve, in % of the rest: it was 10; the other window says 5, yours says 50" in shown
    assert "Treats for each child: only yours changed" in shown
    assert on_record(second) == ("50", "7.25")
    third = open_app("household")
    assert third.text_input(key=RESERVE).value == "5"


def test_mine_goes_on_top_and_can_be_taken_back(windows: tuple[AppTest, AppTest]) -> None:
    """Where both changed the same mine counts; an undo brings the other window's back."""
    first, second = windows
    second.button(key=MINE).click().run()
    assert not second.exception
    assert not keys(second) & {MINE, THEIRS}
    assert on_record(first) == on_record(second) == ("50", "7.25")
    first.button(key="undo_household").click().run()
    assert first.text_input(key=RESERVE).value == "5"


def test_the_other_windows_can_be_kept(windows: tuple[AppTest, AppTest]) -> None:
    """Then the form shows the newest, and what was typed is dropped because the parent said so."""
    first, second = windows
    treats = first.text_input(key=TREATS).value or ""
    second.button(key=THEIRS).click().run()
    assert not keys(second) & {MINE, THEIRS}
    assert on_record(first) == on_record(second) == ("5", treats)


def test_what_only_one_window_changed_stays_whatever_is_chosen(
    windows: tuple[AppTest, AppTest],
) -> None:
    """A field of another form, changed by a third save meanwhile, is still there after mine is saved."""
    first, second = windows
    first.run()
    first.text_input(key=EARLIEST).set_value("25")
    first.button(key="save_habits").click().run()
    second.run()
    assert "length of a rest, in minutes: only the other window changed it" in said(second.markdown)
    second.button(key=MINE).click().run()
    assert second.text_input(key=EARLIEST).value == "25"
    assert on_record(second) == ("50", "7.25")


def test_a_save_between_question_and_answer_asks_again(windows: tuple[AppTest, AppTest]) -> None:
    """The answer counts for what was shown; what came after it is shown first."""
    first, second = windows
    first.run()
    first.text_input(key=RESERVE).set_value("6")
    first.button(key="save_reserve").click().run()
    second.button(key=MINE).click().run()
    assert "the other window says 6, yours says 50" in said(second.markdown)
    assert on_record(first)[0] == "6"
    second.button(key=MINE).click().run()
    assert on_record(first)[0] == "50"


def test_what_was_removed_in_another_window_comes_back_only_if_wanted(open_app: Opened) -> None:
    """Own figures for a way, forgotten in one window while they are changed in another."""
    first, second = place_page(open_app, "ledgewing"), place_page(open_app, "ledgewing")
    spot = "drive_ledgewing"

    def type_in(app: AppTest, miles: str) -> None:
        app.text_input(key=f"{spot}_distance").set_value(miles)
        app.text_input(key=f"{spot}_minutes").set_value("45")
        app.button(key=f"save_{spot}").click().run()

    type_in(first, "30")
    second.run()
    first.button(key=f"forget_{spot}").click().run()
    type_in(second, "31")
    assert "The other window removed it" in said(second.markdown)
    assert f"forget_{spot}" not in keys(second)
    second.button(key=MINE).click().run()
    assert not second.exception
    assert f"forget_{spot}" in keys(second)
    assert second.text_input(key=f"{spot}_distance").value == "31"


def test_an_outing_changed_in_two_windows_is_a_later_edition_than_both(open_app: Opened) -> None:
    """Whichever file a calendar has taken, it takes the one of what was brought together."""
    first, second = (open_app("calendar") for _ in range(2))
    for app in (first, second):
        app.session_state["taken_demo"] = ("ledgewing", "2026-12-05", None)
        app.run()
    first.button(key="save_entry").click().run()
    second.run()
    second.checkbox(key="entry_names").check().run()
    first.button(key="turn_ledgewing-2026-12-05").click().run()
    second.button(key="save_entry").click().run()
    assert MINE in keys(second)
    second.button(key=MINE).click().run()
    assert not second.exception
    kept = open_services(dict(os.environ)).demo.get(PlannedOuting, "ledgewing-2026-12-05")
    assert kept is not None
    assert (kept.value.ticked.names, kept.value.sequence) == (True, 2)


def test_changes_that_break_a_rule_together_are_not_mixed() -> None:
    """A new person on both sides is one person; a stay longer than what feels complete fits neither."""
    base = make_household()
    people = base.model_dump(mode="json")["members"]
    mine = make_household(members=[*people, {"name": "Eve", "born": "2020-01-01"}])
    renamed = make_household(members=[*people[1:], {"name": "Eve", "born": "1988-05-20"}])
    both = brought_together(Clash("household", base, mine, renamed, 2), TODAY)
    assert isinstance(both, Household)
    assert [member.name for member in both.members].count("Eve") == 1
    together = brought_together(Clash("household", base, mine, make_household(name="Moved"), 2), TODAY)
    assert together == make_household(name="Moved", members=[*people, {"name": "Eve", "born": "2020-01-01"}])
    longer, shorter = (
        make_place(visit={"shortest_minutes": 100}),
        make_place(visit={"comfortable_minutes": 90}),
    )
    assert brought_together(Clash("place", make_place(), longer, shorter, 2), TODAY) is None


def test_what_both_made_anew_or_one_removed_is_mine_when_i_say_so() -> None:
    """Without a common beginning there is nothing to bring together."""
    mine, theirs = FamilyCalendar(name="Ours"), FamilyCalendar(name="Ours", busy=())
    assert brought_together(Clash("family calendar Ours", None, mine, theirs, 1), TODAY) is mine
    assert brought_together(Clash("family calendar Ours", mine, mine, None, 0), TODAY) is mine


def test_the_same_change_in_both_windows_is_told_as_such() -> None:
    """It is no choice."""
    base, changed = make_household(), make_household(reserve_percent="3")
    found = differences(base, changed)
    assert told(found, found) == [f"Reserve, in % of the rest: both changed it to {found[0].after}"]
