"""The Logbook page takes an outing in two minutes, tells what it adds up to, and keeps names back."""

from collections.abc import Callable
from datetime import date, time
from decimal import Decimal
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from streamlit.testing.v1 import AppTest

from tests.builders import make_household, make_place
from tests.planning.logbook.entries import make_entry
from tests.records.drawn import logbook_entries
from tests.screens.conftest import drawn, said, services_in
from tripplan.documents.logbook.entry import LogbookEntry
from tripplan.documents.logbook.settings import Learnable, LogbookSettings
from tripplan.documents.outings.planned import PlannedOuting
from tripplan.errors import Weight
from tripplan.files.cards.logbook_file import entry_from_values
from tripplan.files.toml.reading_result import ReadResult
from tripplan.planning.family.family import Family
from tripplan.planning.logbook.draft import draft
from tripplan.screens.forms.answers import clock_text, km_in
from tripplan.screens.logbook.typed_entry import entry_values, on_record

OpenApp = Callable[..., AppTest]
TODAY = date(2026, 11, 25)


def test_the_demo_is_alive(open_app: OpenApp) -> None:
    """Six outings, the year's money, a record without names, and figures that stay switched off."""
    app = open_app("logbook")
    assert "Left of $900 this year $554" in " ".join(drawn(app).split())
    told = said(app.markdown)
    assert "$346.15 spent on 6 outings" in told
    assert "| Food | $12.50 | $14.80 |" in told.replace("  ", " ")
    assert "I., grade 6: 6 days (6 away from home), 14.5 h" in told
    assert "from your last 4 outings" in told
    assert not any(toggle.value for toggle in app.toggle if str(toggle.key).startswith("learn_demo"))
    assert "Check your own state's law" in said(app.caption)


def test_a_card_says_what_it_cost_and_how_it_was(open_app: OpenApp) -> None:
    """Paid, planned, weather, crowd and a word about it; the newest first, and one form at a time."""
    app = open_app("logbook")
    first = " ".join(drawn(app).split())
    assert first.index("Ledgewing Birds of Prey $60.30 Thu, Nov 12 planned $84") < first.index("Creek walk")
    for word in ("grey, first sleet on the way home", "quiet", "a pellet tells what lived in the field"):
        assert word in first
    app.button(key="write_other").click().run()
    assert "Ledgewing" not in drawn(app)


def test_what_all_learned_goes_to_each_child_of_school_age(open_app: OpenApp, tmp_path: Path) -> None:
    """Ivo's own words stay his; Petra and Odile get the common ones, Bram (16 months) none."""
    app = open_app("logbook")
    app.button(key="write_other").click().run()
    app.text_input(key="entry_demo_title").set_value("Pond")
    app.date_input(key="entry_demo_day").set_value(date(2026, 11, 23))
    app.text_area(key="entry_demo_learned").set_value("ice is lighter than water")
    app.text_area(key="entry_demo_Ivo_learned").set_value("why ponds freeze from the top")
    app.button(key="save_logbook_entry").click().run()
    kept = services_in(tmp_path / "data").demo.get(LogbookEntry, "2026-11-23-pond")
    assert kept is not None
    assert {one.member: one.learned for one in kept.value.children} == {
        "Ivo": "why ponds freeze from the top",
        "Petra": "ice is lighter than water",
        "Odile": "ice is lighter than water",
    }


def test_an_outing_that_was_never_planned_is_written_down(open_app: OpenApp, tmp_path: Path) -> None:
    """A total, a time and what a child learned are enough; it is on record and can be taken back."""
    app = open_app("logbook")
    app.button(key="write_other").click().run()
    app.text_input(key="entry_demo_title").set_value("Beaver pond")
    app.date_input(key="entry_demo_day").set_value(date(2026, 11, 23))
    app.text_input(key="entry_demo_receipts_total").set_value("7.50")
    app.text_input(key="entry_demo_arrived").set_value("905")
    app.text_input(key="entry_demo_left_place").set_value("11:20 am")
    app.text_input(key="entry_demo_km").set_value("10")
    app.text_area(key="entry_demo_Ivo_learned").set_value("beavers keep their door under water")
    app.text_input(key="entry_demo_Ivo_subjects0_subject").set_value("science")
    app.text_input(key="entry_demo_Ivo_subjects0_hours").set_value("1.5")
    app.text_input(key="entry_demo_Ivo_subjects1_subject").set_value("drawing")
    app.text_input(key="entry_demo_Ivo_hours").set_value("2")
    app.button(key="save_logbook_entry").click().run()
    assert not app.exception
    assert "Beaver pond on Mon, Nov 23, 2026 is in the logbook." in said(app.success)
    kept = services_in(tmp_path / "data").demo.get(LogbookEntry, "2026-11-23-beaver-pond")
    assert kept is not None
    entry = kept.value
    assert (entry.receipts_total, entry.arrived, entry.left_place) == (
        Decimal("7.50"),
        time(9, 5),
        time(11, 20),
    )
    assert entry.km == pytest.approx(16.09344)
    child = entry.child("Ivo")
    assert child is not None
    assert [(one.subject, one.hours) for one in child.subjects] == [
        ("science", Decimal("1.5")),
        ("drawing", None),
    ]
    assert [one.member for one in entry.children] == ["Ivo"]
    app.button(key="take_back_logbook").click().run()
    assert services_in(tmp_path / "data").demo.get(LogbookEntry, "2026-11-23-beaver-pond") is None


def test_every_fault_is_told_and_nothing_is_lost(open_app: OpenApp, tmp_path: Path) -> None:
    """A price, a time and hours that cannot be read: three faults in the form's words, texts kept."""
    app = open_app("logbook")
    app.button(key="write_other").click().run()
    app.text_input(key="entry_demo_title").set_value("Pond")
    app.text_input(key="entry_demo_receipts_total").set_value("a lot")
    app.text_input(key="entry_demo_arrived").set_value("25:99")
    app.text_input(key="entry_demo_Ivo_hours").set_value("all day")
    app.button(key="save_logbook_entry").click().run()
    assert not app.exception
    faults = said(app.error)
    assert "Please fix 3 things. Nothing was changed yet." in faults
    for name in ("What did it cost?", "Were there", "Ivo, hours that count"):
        assert name in faults
    assert app.text_input(key="entry_demo_receipts_total").value == "a lot"
    assert len(services_in(tmp_path / "data").demo.all(LogbookEntry)) == 6


def test_a_planned_outing_waits_and_is_filled_in_as_planned(open_app: OpenApp, tmp_path: Path) -> None:
    """Planned on Calendar and begun, it waits; one press takes the plan's figures, which can be changed."""
    app = open_app("compare")
    app.button(key="take_ledgewing").click().run()
    app.switch_page("screens/pages/calendar.py").run()
    app.run()
    app.button(key="save_entry").click().run()
    parts = services_in(tmp_path / "data")
    ((key, kept),) = parts.demo.all(PlannedOuting).items()
    begun = {"day": date(2026, 11, 22)}
    for name in ("leave_home", "enter", "leave_place", "home"):
        moment = getattr(kept.value, name)
        begun[name] = moment.replace(year=2026, month=11, day=22)
    parts.demo.save(kept.value.model_copy(update=begun), parts.clock(), kept.revision)
    app.switch_page("screens/pages/logbook.py").run()
    app.run()
    app.button(key=f"write_{key}").click().run()
    app.button(key="fill_as_planned").click().run()
    assert not app.exception
    assert app.text_input(key="entry_demo_paid_admission").value
    app.text_input(key="entry_demo_Bram_nap0_minutes").set_value("0")
    app.button(key="save_logbook_entry").click().run()
    assert not app.exception
    entry = parts.demo.all(LogbookEntry)["2026-11-22-ledgewing"].value
    assert (entry.planned, entry.naps[0].minutes) == (key, 0)
    assert entry.as_planned is not None
    assert f"write_{key}" not in [button.key for button in app.button]


def test_an_entry_is_changed_and_removed(open_app: OpenApp, tmp_path: Path) -> None:
    """A changed receipt is a new revision, and untouched items keep their words; removed, it is gone."""
    app = open_app("logbook")
    app.button(key="change_2026-09-16-speckled-oxbow-mill").click().run()
    app.text_input(key="entry_demo_receipts_total").set_value("61.00")
    app.button(key="save_logbook_entry").click().run()
    assert not app.exception
    before = services_in(tmp_path / "data").demo.get(LogbookEntry, "2026-09-16-speckled-oxbow-mill")
    assert before is not None
    assert (before.revision, before.value.receipts_total) == (2, Decimal("61.00"))
    assert {one.what for one in before.value.paid} >= {"carload", "two bags of flour"}
    assert before.value.as_planned is not None
    app.button(key="remove_2026-09-16-speckled-oxbow-mill").click().run()
    assert len(services_in(tmp_path / "data").demo.all(LogbookEntry)) == 5


def test_a_figure_is_switched_on_and_the_plan_says_so(open_app: OpenApp, tmp_path: Path) -> None:
    """Fuel switched on: it is kept, and Compare's why? tells from how many outings it is."""
    app = open_app("logbook")
    app.toggle(key="learn_demo_fuel").set_value(True).run()
    assert not app.exception
    kept = services_in(tmp_path / "data").demo.get(LogbookSettings)
    assert kept is not None
    assert Learnable.FUEL not in kept.value.not_learned
    assert Learnable.FOOD in kept.value.not_learned
    app.switch_page("screens/pages/compare.py").run()
    app.run()
    app.button(key="ask_why_ledgewing").click().run()
    assert "consumption: from your last 4 outings; without them 22 mpg" in said(app.markdown)


def test_budget_and_year_are_set(open_app: OpenApp, tmp_path: Path) -> None:
    """A new budget counts at once; a price that is none is told."""
    app = open_app("logbook")
    app.text_input(key="logbook_year_demo_budget").set_value("400")
    app.button(key="save_logbook_settings").click().run()
    assert "Left of $400 this year $54" in " ".join(drawn(app).split())
    app.text_input(key="logbook_year_demo_budget").set_value("much")
    app.button(key="save_logbook_settings").click().run()
    assert said(app.error).count("It says: much") == 2  # at the button and at the field
    kept = services_in(tmp_path / "data").demo.get(LogbookSettings)
    assert kept is not None
    assert kept.value.budget == Decimal(400)
    assert kept.value.band_of("Ivo") == "grade 6"


def test_times_and_distances_are_read_as_people_write_them() -> None:
    """What cannot be read stays as it is, for the finding."""
    assert [clock_text(text) for text in ("9:05", "905", "9.05", "9:05 pm", "12 am", "9")] == [
        "09:05",
        "09:05",
        "09:05",
        "21:05",
        "00:00",
        "09:00",
    ]
    assert (clock_text("soon"), clock_text("13 pm")) == ("soon", "13 pm")
    assert (km_in("10", "mi"), km_in("1,200", "km"), km_in("far", "mi")) == (16.09344, 1200, None)


OLD_ENTRY = {
    "party": ["Ann", "Cy", "Di", "Zoe"],
    "naps": [
        {"member": "Di", "minutes": 55, "where": "car"},
        {"member": "Di", "minutes": 20, "where": "home"},
        {"member": "Zoe", "minutes": 40},
    ],
    "left_home": "09:20:30",
    "children": [
        {
            "member": "Zoe",
            "learned": "mill stones are dressed",
            "subjects": [{"subject": "Algebra 1"}, {"subject": "Reading, writing", "hours": "1.50"}],
        },
        {"member": "Cy", "did": "turned the mill", "hours": "2.5", "counts_as_day": False},
    ],
}
"""Zoe has left the household, naps were noted that are not usual ones, and names hold numbers and commas."""


def typed_over(entry: LogbookEntry, **changes: object) -> ReadResult[LogbookEntry]:
    """The entry that results where some fields are changed."""
    household = make_household()
    shown = on_record(entry, household, unnamed=False)
    assert changes.keys() <= shown.keys()
    family = Family(household, (make_place(),))
    values, unread = entry_values({**shown, **changes}, shown, entry, family, entry.id)
    assert not unread
    return entry_from_values(values, date(2031, 1, 1), household)


def test_an_entry_saved_untouched_is_the_same() -> None:
    """Children who left, two naps of one child, seconds, metres, names with numbers: nothing is lost."""
    entry = make_entry(**OLD_ENTRY, km=128.123, title="The old museum")
    assert typed_over(entry).value == entry


@settings(max_examples=30)
@given(logbook_entries)
def test_any_entry_saved_untouched_is_the_same(entry: LogbookEntry) -> None:
    """Whatever stands in it."""
    assert typed_over(entry).value == entry


def test_only_what_was_changed_is_written() -> None:
    """One nap, one subject's hours and one child's text change; all else stays."""
    entry = make_entry(**OLD_ENTRY)
    after = typed_over(
        entry, Di_nap1_minutes="25", Zoe_subjects0_hours="1", Cy_did="ground wheat", notes="windy"
    ).value
    assert after is not None
    assert [(nap.member, nap.minutes, nap.where) for nap in after.naps] == [
        ("Di", 55, "car"),
        ("Di", 25, "home"),
        ("Zoe", 40, None),
    ]
    zoe, cy = after.child("Zoe"), after.child("Cy")
    assert zoe is not None
    assert [(one.subject, one.hours) for one in zoe.subjects] == [
        ("Algebra 1", Decimal(1)),
        ("Reading, writing", Decimal("1.50")),
    ]
    assert zoe.learned == "mill stones are dressed"
    assert cy is not None
    assert (cy.did, cy.hours, cy.counts_as_day) == ("ground wheat", Decimal("2.5"), False)
    assert (after.left_home, after.paid, after.notes) == (entry.left_home, entry.paid, "windy")


def test_who_did_not_go_and_what_is_emptied_is_taken_out() -> None:
    """Zoe unticked: her nap and her line go; an emptied nap and subject go, the others stay."""
    after = typed_over(make_entry(**OLD_ENTRY), party=["Ann", "Cy", "Di"], Di_nap0_minutes="").value
    assert after is not None
    assert [(nap.member, nap.minutes) for nap in after.naps] == [("Di", 20)]
    assert [child.member for child in after.children] == ["Cy"]
    fewer = typed_over(make_entry(**OLD_ENTRY), Zoe_subjects1_subject="", Zoe_subjects1_hours="").value
    assert fewer is not None
    assert [one.subject for one in fewer.children[1].subjects] == ["Algebra 1"]


def test_hours_without_a_subject_and_a_place_of_sleep_without_minutes_are_told() -> None:
    """Neither is dropped in silence."""
    entry = make_entry()
    hours = typed_over(entry, Cy_subjects2_subject="", Cy_subjects2_hours="1")
    assert [finding.field for finding in hours.findings] == ["children[0].subjects[2].subject"]
    slept = typed_over(make_entry(naps=[]), Di_nap0_where="car")
    assert [finding.field for finding in slept.findings] == ["naps[0].minutes"]


TEXTS = st.one_of(
    st.text(st.characters(exclude_categories=["Cs"]), max_size=30),
    st.sampled_from(["-1", "1e400", "NaN", "0", "9" * 25, "=1+1", "12.345", "25:00", "\x00", "1,5 h"]),
)


@settings(max_examples=60)
@given(st.data())
def test_nothing_typed_breaks_the_form(data: st.DataObject) -> None:
    """Whatever stands in the text fields, there is an entry or there are faults with their fields."""
    household = make_household()
    family = Family(household, (make_place(),))
    blank = draft(household, TODAY, place=None)
    shown = on_record(blank, household, unnamed=True)
    typed = {
        name: data.draw(TEXTS, label=name) if isinstance(value, str) and name != "place" else value
        for name, value in shown.items()
    }
    values, unread = entry_values(typed, shown, blank, family, blank.id)
    read = entry_from_values(values, TODAY, household)
    clocks = {"left_home", "arrived", "left_place", "home_again"}
    assert {finding.field for finding in unread} <= {"km", "odometer_out_km", "odometer_home_km", *clocks}
    assert (read.value is None) == any(finding.weight is Weight.FAULT for finding in read.findings)
    if read.value is not None:
        assert LogbookEntry.model_validate_json(read.value.model_dump_json()) == read.value
