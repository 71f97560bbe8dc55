"""The Calendar page makes entries that move and can be called off, and reads other calendars after a look."""

import os
from datetime import UTC, date, datetime, timedelta
from pathlib import Path
from typing import Any

import pytest
from icalendar import Calendar
from streamlit.testing.v1 import AppTest

from tests.builders import make_household, make_outing, make_place
from tests.saying import says
from tests.screens.conftest import Opened, drawn, opened_part, said, services_in
from tripplan.documents.calendars.calendars import SchoolCalendar
from tripplan.documents.calendars.family_days import FamilyDays
from tripplan.documents.calendars.local_days import LocalDays
from tripplan.documents.family.household import Household
from tripplan.documents.outings.planned import (
    EntryTicks,
    PlannedOuting,
    PlanStatus,
    ThingsToDo,
    others_called_off,
)
from tripplan.files.calendars.entry_text import file_in_words, file_of
from tripplan.planning.calendar_entry.planned_outing import entry_of, planned_from
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import Outing, plan_outing
from tripplan.planning.outing.place_facts import place_facts
from tripplan.records.opening import Which, open_records
from tripplan.screens.calendar.typed_days import days_typed_in
from tripplan.services import open_services

TODAY = date(2026, 11, 25)
NOW = datetime(2026, 11, 25, 12, tzinfo=UTC)
LATER = datetime(2026, 11, 26, 12, tzinfo=UTC)
HOUSEHOLD = make_household()
PLACE = make_place()
ID = "ledgewing-2026-12-05"


def with_outing(open_app: Opened, day: str = "2026-12-05", place: str = "ledgewing") -> AppTest:
    """The page with an outing taken."""
    app = open_app("calendar")
    app.session_state["taken_demo"] = (place, day, None)
    app.run()
    assert not app.exception
    return app


def told_by(app: AppTest) -> str:
    """What the page says in its headline, its text and its cards, all three parts."""
    return " ".join(f"{said(app.title)} {said(app.markdown)} {drawn(app)}".split())


def outing_on(day: date, household: Household = HOUSEHOLD) -> Outing:
    """A day at the test museum."""
    family = Family(household, (PLACE,))
    outing = plan_outing(family, household.members, place_facts(family, PLACE, (day.year,)), day, today=TODAY)
    assert isinstance(outing, Outing)
    return outing


def planned(day: date = date(2026, 12, 5), **changes: Any) -> PlannedOuting:
    """That day as a planned outing."""
    arguments: dict[str, Any] = {"before": None, "ids_taken": (), "at": NOW, **changes}
    ticked = arguments.pop("ticked", EntryTicks())
    return planned_from(outing_on(day), HOUSEHOLD, ticked, PlanStatus.CONFIRMED, **arguments)


def upload(app: AppTest, key: str, name: str, data: bytes) -> AppTest:
    """Bring a calendar file."""
    app.file_uploader(key=key).set_value((name, data, "text/calendar"))
    return app.run()


def calendar(*events: str) -> bytes:
    """A calendar file with some entries."""
    body = "".join(f"BEGIN:VEVENT\r\n{event}\r\nEND:VEVENT\r\n" for event in events)
    return f"BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//test//EN\r\n{body}END:VCALENDAR\r\n".encode()


def test_without_an_outing_the_page_leads_back_to_compare(open_app: Opened) -> None:
    """The page says what is missing and where to find it."""
    app = open_app("calendar")
    assert said(app.title) == "No outing ahead"


@pytest.mark.parametrize(("clock", "ahead"), [("17:00", True), ("17:45", False)])
def test_an_outing_of_today_is_ahead_until_everybody_is_home(
    open_app: Opened, data: Path, monkeypatch: pytest.MonkeyPatch, clock: str, ahead: bool
) -> None:
    """Home again at half past five: before that it is ahead, after that it is over."""
    services_in(data).demo.save(make_outing(TODAY, place="ledgewing", party=("Tamsin",)), NOW)
    monkeypatch.setenv("TRIPPLAN_TODAY", f"{TODAY}T{clock}-06:00")
    title = said(open_app("calendar").title)
    assert says(title, "calendar-ahead", outings=1) == ahead
    assert says(title, "calendar-none-ahead") != ahead


def test_an_impossible_day_says_why(open_app: Opened) -> None:
    """A day on which the place is closed gives its reason and no entry."""
    app = with_outing(open_app, day="2026-12-04", place="oatsparrow-farm")
    assert "closed on Fridays" in told_by(app)
    assert not app.download_button


def test_the_entry_tells_names_and_home_only_when_ticked(open_app: Opened) -> None:
    """At first nobody is named; a tick changes what will be in the file."""
    app = with_outing(open_app)
    assert "Tamsin" not in app.code[0].value
    assert "Dubuque" not in app.code[0].value
    app.checkbox(key="entry_names").check()
    app.checkbox(key="entry_home_address").check().run()
    assert "Tamsin" in app.code[0].value
    assert "Dubuque" in app.code[0].value
    assert "2021" not in app.code[0].value
    # The invented family is never sent anywhere.
    assert "The invented family sends nothing" in said(app.caption)
    assert not {"send_entry", "look_for_calendars"} & {button.key for button in app.button}


def test_reminders_go_as_they_are_ticked(open_app: Opened) -> None:
    """To pack, an hour ahead and to leave at first; without a tick it is gone."""
    app = with_outing(open_app)
    assert app.code[0].value.count("Reminder") == 3
    app.checkbox(key="entry_packing").uncheck()
    app.checkbox(key="entry_leave_now").uncheck()
    app.number_input(key="entry_leaving_minutes").set_value(45)
    app.run()
    assert "Reminder 45 min before: Load up in 45 min" in app.code[0].value
    assert app.code[0].value.count("Reminder") == 1


def test_downloading_keeps_the_outing_too(open_app: Opened) -> None:
    """One press hands out the file and keeps the outing, so that a later file moves the same entry."""
    app = with_outing(open_app)
    app.download_button(key="download_entry").click().run()
    assert not app.exception
    assert "Ledgewing Birds of Prey, Sat, Dec 5: it is planned" in told_by(app)
    assert app.button(key="save_entry").disabled


def test_a_planned_outing_is_called_off_planned_again_and_removed(open_app: Opened) -> None:
    """Each press shows in the list; a removed outing can be brought back."""
    app = with_outing(open_app)
    app.button(key="save_entry").click().run()
    app.button(key=f"turn_{ID}").click().run()
    assert "called off" in told_by(app)
    assert app.download_button(key=f"download_planned_{ID}").label == "Download the cancellation (.ics)"
    app.button(key=f"turn_{ID}").click().run()
    assert "confirmed" in told_by(app)
    app.button(key=f"remove_planned_{ID}").click().run()
    assert ID not in " ".join(button.key or "" for button in app.button)
    app.button(key="take_back_calendar").click().run()
    assert ID in " ".join(button.key or "" for button in app.button)


def test_a_removed_outing_that_is_planned_anew_goes_on_from_there(open_app: Opened) -> None:
    """It can be saved although it is as it was; the entry in the file is the old one, changed once more."""
    app = with_outing(open_app)
    app.button(key="save_entry").click().run()
    app.button(key=f"turn_{ID}").click().run()
    app.button(key=f"remove_planned_{ID}").click().run()
    assert not app.button(key="save_entry").disabled
    assert "a calendar that still has its entry" in said(app.caption)
    app.button(key="save_entry").click().run()
    assert not app.exception
    assert app.button(key="save_entry").disabled
    kept = open_services(dict(os.environ)).demo.get(PlannedOuting, ID)
    assert kept is not None
    assert (kept.value.status, kept.value.sequence) == (PlanStatus.CONFIRMED, 2)


def test_an_outing_can_move_to_another_day(open_app: Opened) -> None:
    """After a move there is one planned outing, on the new day."""
    app = with_outing(open_app)
    app.button(key="save_entry").click().run()
    app.session_state["taken_demo"] = ("ledgewing", "2026-12-06", None)
    app.run()
    app.selectbox(key="moved_from").select_index(1).run()
    app.button(key="save_entry").click().run()
    text = told_by(app)
    assert "Ledgewing Birds of Prey, Sun, Dec 6: it is planned" in text
    assert "Sat, Dec 5, 2026: Ledgewing" not in text


def test_the_year_goes_into_one_file(open_app: Opened) -> None:
    """With two planned outings there is one file with both, the one called off too."""
    app = with_outing(open_app)
    app.button(key="save_entry").click().run()
    assert "download_year" not in [button.key for button in app.download_button]
    app.session_state["taken_demo"] = ("ledgewing", "2026-12-12", None)
    app.run()
    app.button(key="save_entry").click().run()
    app.button(key=f"turn_{ID}").click().run()
    assert not app.exception
    assert app.download_button(key="download_year").label.startswith("Download all")


def test_candidates_are_pencilled_in_and_keeping_one_calls_the_others_off(open_app: Opened) -> None:
    """One press on Compare plans all three tentatively; one press on Calendar settles which it is."""
    app = open_app("compare")
    app.button(key="pencil_in").click().run()
    assert "3 outings are saved as maybes" in said(app.success)
    app.switch_page("screens/pages/calendar.py").run()
    app.run()
    assert told_by(app).count("tentative") == 3
    settle = [key for key in (button.key or "" for button in app.button) if key.startswith("settle_")]
    assert len(settle) == 3
    app.button(key=settle[1]).click().run()
    assert not app.exception
    assert "Called off: the other candidates" in said(app.success)
    told = told_by(app)
    assert (told.count("confirmed"), told.count("called off")) == (1, 2)


def test_what_is_settled_takes_its_day(open_app: Opened, data: Path) -> None:
    """With one of three settled, Compare offers other days than its own, and pencils in those."""
    app = open_app("compare")
    app.button(key="pencil_in").click().run()
    app.switch_page("screens/pages/calendar.py").run()
    app.run()
    next(button for button in app.button if (button.key or "").startswith("settle_")).click().run()
    app.switch_page("screens/pages/compare.py").run()
    app.run()
    app.button(key="pencil_in").click().run()
    assert not app.exception
    outings = [kept.value for kept in services_in(data).demo.all(PlannedOuting).values()]
    (settled,) = (one.day for one in outings if one.status is PlanStatus.CONFIRMED)
    pencilled = [one.day for one in outings if one.status is PlanStatus.TENTATIVE]
    assert len(pencilled) == 3
    assert settled not in pencilled


def test_two_outings_on_one_day_are_asked_about(open_app: Opened, data: Path) -> None:
    """Nothing is saved before she says what becomes of the other; instead of it, that one is called off."""
    with_outing(open_app).button(key="save_entry").click().run()
    app = with_outing(open_app, place="tern-landing")
    assert "You have planned something for that day already: Ledgewing" in said(app.warning)
    assert app.button(key="save_entry").disabled
    app.radio(key="same_day").set_value("This one instead; the other is called off").run()
    app.button(key="save_entry").click().run()
    assert not app.exception
    kept = {one.value.place: one.value for one in services_in(data).demo.all(PlannedOuting).values()}
    assert kept["ledgewing"].status is PlanStatus.CANCELLED
    assert kept["ledgewing"].sequence == 1
    assert kept["tern-landing"].status is not PlanStatus.CANCELLED


def test_both_may_be_wanted_on_one_day(open_app: Opened, data: Path) -> None:
    """Said so, both are kept, and that there are two is told."""
    with_outing(open_app).button(key="save_entry").click().run()
    app = with_outing(open_app, place="tern-landing")
    app.radio(key="same_day").set_value("Both on one day").run()
    app.button(key="save_entry").click().run()
    assert not app.exception
    assert "2 outings are planned for that day now." in said(app.success)
    assert len(services_in(data).demo.all(PlannedOuting)) == 2


def test_a_school_calendar_is_looked_through_before_it_is_kept(open_app: Opened) -> None:
    """Entries without school are ticked; without a location it is refused; then it replaces its namesake."""
    app = open_app("calendar")
    data = Path("demo_places/calendars/otter-slough-district-wi.ics").read_bytes()
    upload(app, "school_upload_0", "otter.ics", data)
    ticked = [box.label for box in app.checkbox if box.value]
    assert any("Winter Recess" in label for label in ticked)
    assert any(says(part.label, "calendar-short-days") for part in app.expander)
    app.text_input(key="school_file_name").set_value("Otter Slough district (invented)")
    # It is the demo's own district again, so its place is there already.
    assert "as you left them in Otter Slough district" in said(app.info)
    app.text_input(key="school_file_where").set_value("")
    app.text_input(key="school_file_coordinates").set_value("")
    app.text_input(key="school_file_pupils").set_value("none")
    app.button(key="save_school_file").click().run()
    assert "Where its students live" in said(app.error)
    assert "Students" in said(app.error)
    app.text_input(key="school_file_postal_code").set_value("53703")
    app.text_input(key="school_file_pupils").set_value("123")
    app.button(key="save_school_file").click().run()
    assert "is replaced" in said(app.success)
    assert "123 students" in told_by(app)


def test_a_table_with_the_day_first_is_asked_about(open_app: Opened) -> None:
    """Nothing is read before the parent says what comes first; then the rows are offered."""
    app = open_app("calendar")
    upload(app, "school_upload_0", "alder.csv", b"first day;name\n03/04/2027;No school\n")
    assert "school_file_name" not in [field.key for field in app.text_input]
    app.radio(key="school_dates_0").set_value("day first").run()
    assert not app.exception
    assert any("Apr 3, 2027" in box.label.replace("\\", "") for box in app.checkbox)


def test_a_built_in_region_is_added_and_its_reach_told(open_app: Opened) -> None:
    """One press; what is known of it and of every place is said in words."""
    app = open_app("calendar")
    app.selectbox(key="built_in_region").set_value("FR-C").run()
    app.button(key="add_built_in").click().run()
    assert not app.exception
    assert "France, zone C (school holidays) is added" in said(app.success)
    told = told_by(opened_part(app, "open_coverage"))
    assert "then a guess from Wed, Sep 1, 2027" in told
    assert "Ledgewing Birds of Prey: Known of 100% of the students nearby until Wed, Jun 2, 2027" in told


@pytest.mark.parametrize(
    ("today", "said_of_it"),
    [
        ("2030-05-01", "the calendar ended Wed, Jun 2, 2027"),
        ("2020-02-29", "the calendar begins Mon, Aug 24"),
    ],
)
def test_what_nobody_knows_in_another_year_is_said(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path, open_app: Opened, today: str, said_of_it: str
) -> None:
    """With the clock years away the demo starts all the same, and no day of its schools is known."""
    monkeypatch.setenv("TRIPPLAN_DATA", str(tmp_path / "another year"))
    monkeypatch.setenv("TRIPPLAN_TODAY", today)
    told = told_by(opened_part(open_app("calendar"), "open_coverage"))
    assert told.count("Nothing is known") == 2
    assert said_of_it in told
    assert "Ledgewing Birds of Prey: No school calendar near here reaches these days." in told


def test_the_next_year_is_guessed_with_one_press(open_app: Opened) -> None:
    """The calendar says that it is a guess, and the offer is gone."""
    app = open_app("calendar")
    key = "guess_school_Limekiln Bluffs district (invented)"
    app.button(key=key).click().run()
    assert not app.exception
    assert "is guessed for Limekiln Bluffs" in said(app.success)
    assert "then a guess from Thu, Jun 3, 2027" in told_by(app)
    assert key not in [button.key for button in app.button]


def test_a_festival_is_added_and_removed_and_its_faults_are_said(open_app: Opened) -> None:
    """Without a town or place it is refused; backwards dates too; then it stands in the list."""
    app = open_app("calendar")
    app.text_input(key="festival_name").set_value("Hop fair")
    app.button(key="save_festival").click().run()
    assert "name a town" in said(app.error)
    app.text_input(key="festival_town").set_value("Dubuque, IA")
    app.date_input(key="festival_first").set_value(date(2027, 5, 2))
    app.date_input(key="festival_last").set_value(date(2027, 5, 1))
    app.button(key="save_festival").click().run()
    assert "last day lies before the first" in said(app.error)
    app.date_input(key="festival_last").set_value(date(2027, 5, 3))
    app.button(key="save_festival").click().run()
    assert not app.exception
    assert "Hop fair: Sun, May 2, 2027 to Mon, May 3, 2027" in told_by(app)
    app.button(key="remove_festival_0").click().run()
    assert "Hop fair:" not in told_by(app)


def test_all_faults_of_a_festival_are_said_at_once(open_app: Opened, data: Path) -> None:
    """An unknown town, a distance that is no number, no name and a silly factor, each by its field."""
    app = open_app("calendar")
    app.text_input(key="festival_town").set_value("Nowhereville Q")
    app.text_input(key="festival_reach_km").set_value("far")
    app.text_input(key="festival_crowd_factor").set_value("99")
    app.button(key="save_festival").click().run()
    faults = said(app.error)
    assert "Please fix 4 things" in faults
    for field in (
        "Which town?",
        "How far around the town",
        "What is it?",
        "How many times the usual visitors",
    ):
        assert field in faults
    assert open_records(data, Which.DEMO, NOW).get(LocalDays) is None


def test_a_festivals_last_day_is_its_first_until_said_otherwise(open_app: Opened, data: Path) -> None:
    """Only the first day is picked; how far is in miles, as the household counts, and places may keep it."""
    app = open_app("calendar")
    app.text_input(key="festival_name").set_value("Hop fair")
    app.date_input(key="festival_first").set_value(date(2027, 5, 2))
    app.text_input(key="festival_town").set_value("Dubuque, IA")
    app.text_input(key="festival_reach_km").set_value("10")
    app.checkbox(key="festival_hours_as_on_holidays").check()
    app.button(key="save_festival").click().run()
    assert not app.exception
    told = told_by(app)
    assert "Hop fair: Sun, May 2, 2027, within 10 mi of Dubuque" in told
    assert "places keep it like a public holiday" in told
    kept = open_records(data, Which.DEMO, NOW).get(LocalDays)
    assert kept is not None
    assert kept.value.days[0].reach_km == pytest.approx(16.09344)


def test_typed_in_breaks_are_kept_and_their_faults_named_by_line(open_app: Opened) -> None:
    """A line that cannot be read and an impossible date are both said, by the line's own number."""
    app = open_app("calendar")
    app.text_input(key="school_typed_name").set_value("<script>")
    app.text_input(key="school_typed_postal_code").set_value("53703")
    app.text_area(key="school_typed_no_school").set_value(
        "2026-12-21 to 2027-01-01 break\nsome day\n2027-13-01 x"
    )
    app.button(key="save_school_typed").click().run()
    faults = said(app.error)
    assert "Days without school, line 2" in faults
    assert "Days without school, line 3, first day" in faults
    app.text_area(key="school_typed_no_school").set_value("2026-12-21 to 2027-01-01 break\n2027-01-18")
    app.button(key="save_school_typed").click().run()
    assert not app.error
    assert any(r"\<script\>" in element.value for element in app.markdown)


def test_short_days_are_typed_in_apart_from_days_without_school(open_app: Opened, data: Path) -> None:
    """Their faults are told by their own lines; days of another year are told, not left out in silence."""
    app = open_app("calendar")
    app.text_input(key="school_typed_name").set_value("Cooper Hollow")
    app.text_input(key="school_typed_postal_code").set_value("53703")
    app.text_area(key="school_typed_no_school").set_value("2026-12-21 to 2027-01-01 break")
    app.text_area(key="school_typed_short_days").set_value("2026-12-18 early release\nsoon\n2025-03-10")
    app.button(key="save_school_typed").click().run()
    assert "Short days, line 2" in said(app.error)
    app.text_area(key="school_typed_short_days").set_value("2026-12-18 early release\n2025-03-10 late start")
    app.button(key="save_school_typed").click().run()
    assert "Short days, line 2" in said(app.error)
    assert "lies outside the days the calendar speaks about, 2026-11-25 to 2027-11-25" in said(app.error)
    app.text_area(key="school_typed_short_days").set_value("2026-12-18 early release\n2027-03-10 late start")
    app.button(key="save_school_typed").click().run()
    assert not app.error
    assert "1 break or day off, 2 short days with school" in told_by(app)
    kept = open_records(data, Which.DEMO, NOW).get(SchoolCalendar, "Cooper Hollow")
    assert kept is not None
    assert [(day.first, day.name) for day in kept.value.short_days] == [
        (date(2026, 12, 18), "early release"),
        (date(2027, 3, 10), "late start"),
    ]


def test_short_days_of_a_file_are_ticked_apart(open_app: Opened, data: Path) -> None:
    """A guessed one can be unticked and another entry be picked; what is left out is told in words."""
    app = open_app("calendar")
    data_of_file = calendar(
        "UID:1\r\nSUMMARY:Winter break\r\nDTSTART;VALUE=DATE:20261221\r\nDTEND;VALUE=DATE:20270102",
        "UID:2\r\nSUMMARY:Early release\r\nDTSTART;VALUE=DATE:20261218",
        "UID:3\r\nSUMMARY:Late start\r\nDTSTART;VALUE=DATE:20270310",
        "UID:4\r\nSUMMARY:Conferences\r\nDTSTART;VALUE=DATE:20270211",
    )
    upload(app, "school_upload_0", "ours.ics", data_of_file)
    told = told_by(app)
    folds = " ".join(part.label for part in app.expander)
    assert says(folds, "calendar-days-off", days=1)
    assert says(folds, "calendar-short-days", days=2)
    assert "Conferences (nothing in it says that there is no school)" in told
    late = next(box for box in app.checkbox if "Late start" in box.label)
    late.uncheck()
    (also_short,) = (box for box in app.multiselect if box.label == "Which of these are short days?")
    also_short.set_value([name for name in also_short.options if "Conferences" in name] or ["x"])
    app.text_input(key="school_file_name").set_value("Cooper Hollow")
    app.text_input(key="school_file_postal_code").set_value("53703")
    app.button(key="save_school_file").click().run()
    assert not app.exception
    kept = open_records(data, Which.DEMO, NOW).get(SchoolCalendar, "Cooper Hollow")
    assert kept is not None
    assert [day.name for day in kept.value.no_school] == ["Winter break"]
    assert [day.name for day in kept.value.short_days] == ["Early release", "Conferences"]


def test_a_file_with_far_too_many_days_off_does_not_hold_up_the_page(open_app: Opened, data: Path) -> None:
    """Of 300 entries that say 'no school' 100 can be unticked; the others count, and that is said."""
    days = (date(2027, 1, 1) + timedelta(days=n) for n in range(300))
    file = calendar(*(f"UID:{day}\r\nSUMMARY:No school\r\nDTSTART;VALUE=DATE:{day:%Y%m%d}" for day in days))
    app = open_app("calendar")
    upload(app, "school_upload_0", "ours.ics", file)
    boxes = [box for box in app.checkbox if "No school" in box.label]
    assert len(boxes) == 100
    assert "The first 100 of 300 are shown; the others count as well." in said(app.caption)
    boxes[0].uncheck()
    app.text_input(key="school_file_name").set_value("Cooper Hollow")
    app.text_input(key="school_file_postal_code").set_value("53703")
    app.button(key="save_school_file").click().run()
    kept = open_records(data, Which.DEMO, NOW).get(SchoolCalendar, "Cooper Hollow")
    assert kept is not None
    assert len(kept.value.no_school) == 299


def test_a_family_calendar_with_nothing_in_it_is_not_offered(open_app: Opened) -> None:
    """Kept, it would say that the family is always free; one with an entry is called after its file."""
    app = open_app("calendar")
    upload(app, "family_upload_0", "ours.ics", calendar())
    assert "has no entries" in said(app.warning)
    assert "There is nothing in it to keep." in said(app.caption)
    assert "save_family_file" not in {button.key for button in app.button}
    walk = "UID:1\r\nSUMMARY:Walk\r\nDTSTART:20261218T100000Z\r\nDURATION:PT1H"
    upload(app, "family_upload_0", "ours.ics", calendar(walk))
    assert app.text_input(key="family_file_name").value == "ours"


def test_a_family_calendar_keeps_times_only_unless_ticked(open_app: Opened) -> None:
    """What entries say is not kept; the calendar can be removed and brought back."""
    app = open_app("calendar")
    data = calendar(
        "UID:1\r\nDTSTART:20261210T150000Z\r\nDTEND:20261210T160000Z\r\nSUMMARY:Secret <script>",
        "UID:2\r\nDTSTART:20261212T150000Z\r\nDTEND:20261212T160000Z\r\nSUMMARY:Fun\r\nTRANSP:TRANSPARENT",
    )
    upload(app, "family_upload_0", "ours.ics", data)
    assert says(told_by(app), "calendar-busy-times", times=1)
    assert any(says(part.label, "calendar-entries", entries=2) for part in app.expander)
    assert "One is shown as free, and takes up no time." in told_by(app)
    app.text_input(key="family_file_name").set_value("Ours")
    app.button(key="save_family_file").click().run()
    assert "Ours 1 busy time, Thu, Dec 10, 2026 to Thu, Dec 10, 2026, times only." in told_by(app)
    upload(app, "family_upload_1", "ours.ics", calendar("UID:1\r\nDTSTART:20261211T150000Z\r\nDURATION:PT1H"))
    assert "This file was read before, as 'Ours'; saving replaces what it held." in told_by(app)
    app.button(key="save_family_file").click().run()
    assert "Ours 1 busy time, Fri, Dec 11, 2026" in told_by(app)
    assert "It was read up to Sun, May 28, 2028." in told_by(app)  # 550 days from November 25, 2026
    app.button(key="remove_family_Ours").click().run()
    assert "Ours 1 busy" not in told_by(app)
    app.button(key="take_back_calendar").click().run()
    assert "Ours 1 busy" in told_by(app)


def test_the_familys_own_week_is_entered_and_taken_from(open_app: Opened, tmp_path: Path) -> None:
    """A block, an adult's hours and late evenings are kept; faults are told; one of a name replaces it."""
    app = open_app("calendar")
    assert "Recorder lesson: Ivo: Mon, 16:00 to 16:45, from Mon, Sep 7, 2026" in told_by(app)
    app.text_area(key="weekly_block_not_during").set_value("some day")
    app.button(key="save_block").click().run()
    assert "Please fix 3 things" in said(app.error)
    app.text_input(key="weekly_block_name").set_value("Piano")
    app.button_group(key="weekly_block_days").set_value(["Tu"])
    app.text_area(key="weekly_block_not_during").set_value("2026-12-21 to 2027-01-03")
    app.button(key="save_block").click().run()
    assert not app.exception
    told = "Piano: Tue, 16:00 to 17:00, not Mon, Dec 21, 2026 to Sun, Jan 3, 2027."
    assert told in told_by(app)
    app.selectbox(key="working_hours_member").set_value("Joel")
    app.button_group(key="working_hours_days").set_value(["Mo", "We"])
    app.radio(key="working_hours_then").set_value("without")
    app.button(key="save_work").click().run()
    assert "Joel works Mon and Wed, 08:00 to 16:30, not on public holidays and local days off" in said(
        app.markdown
    )
    app.radio(key="late_evening_then").set_value("later")
    app.button(key="save_late").click().run()
    assert "nobody leaves before 09:30 the next day" in told_by(app)
    app.button(key="remove_block_1").click().run()
    assert told not in told_by(app)
    environment = {"TRIPPLAN_DATA": str(tmp_path / "data"), "TRIPPLAN_TODAY": "2026-11-25"}
    kept = open_services(environment).demo.get(FamilyDays)
    assert kept is not None
    assert [block.name for block in kept.value.weekly] == ["Recorder lesson: Ivo"]
    assert [work.member for work in kept.value.work] == ["Joel"]
    assert kept.value.late_evening is not None


@pytest.mark.parametrize(
    ("data", "fault"),
    [
        (b"no calendar at all", "is no calendar file"),
        (b"BEGIN:VCALENDAR\r\n" + b"x" * 5_000_001, "is larger than 5 MB"),
    ],
    ids=["no calendar", "too large"],
)
def test_a_file_that_cannot_be_read_is_refused_in_words(open_app: Opened, data: bytes, fault: str) -> None:
    """The file's name and the reason are said, and there is nothing to save."""
    app = upload(open_app("calendar"), "family_upload_0", "ours.ics", data)
    assert f"ours.ics {fault}" in said(app.error)
    assert "save_family_file" not in [button.key for button in app.button]


def test_a_changed_outing_keeps_its_uid_and_counts_up() -> None:
    """The same UID, one sequence number later; an unchanged outing is not counted."""
    first = planned()
    assert planned(before=first, at=LATER) == first
    moved = planned(date(2026, 12, 8), before=first, at=LATER)
    assert (moved.uid, moved.id, moved.sequence) == (first.uid, first.id, 1)
    assert moved.day == date(2026, 12, 8)
    told = file_in_words(file_of(entry_of(moved, HOUSEHOLD, PLACE, outing_on(moved.day)), NOW))
    assert "Moved: it was planned for Sat, Dec 5, 2026, loading up at" in told
    settled = planned_from(
        outing_on(moved.day), HOUSEHOLD, EntryTicks(names=True), PlanStatus.CONFIRMED, before=moved,
        ids_taken=(), at=LATER,
    )  # fmt: skip
    assert settled.moved_from == first.leave_home


def test_parts_and_tasks_that_are_no_longer_ticked_are_taken_back() -> None:
    """The next file cancels what the one before held, so that importing it leaves no stray entries."""
    before = planned(ticked=EntryTicks(in_parts=True, things_to_do=ThingsToDo.TASKS))
    after = planned(before=before, at=LATER)
    assert after.once_written == ("-there", "-back", "-pack-todo")
    told = file_of(entry_of(after, HOUSEHOLD, PLACE, outing_on(after.day)), NOW).decode()
    assert told.count("STATUS:CANCELLED") == 3
    again = planned(before=after, at=LATER, ticked=before.ticked)
    told = file_of(entry_of(again, HOUSEHOLD, PLACE, outing_on(again.day)), NOW).decode()
    assert "CANCELLED" not in told


def test_only_open_candidates_of_the_same_choice_are_called_off() -> None:
    """Settling one leaves outings of another choice, and those of none, as they are."""
    one, two, three = (
        planned(date(2026, 12, day)).model_copy(update={"status": PlanStatus.TENTATIVE, "choice": choice})
        for day, choice in ((5, "a"), (8, "a"), (9, "b"))
    )
    settled = one.changed(LATER, status=PlanStatus.CONFIRMED)
    (off,) = others_called_off(settled, (settled, two, three), LATER)
    assert (off.id, off.status, off.sequence) == (two.id, PlanStatus.CANCELLED, 1)
    assert others_called_off(one, (one, two, three), LATER) == ()


def test_a_second_outing_on_the_day_of_a_moved_one_is_an_entry_of_its_own() -> None:
    """Where the id is taken, id and UID are others."""
    first = planned()
    second = planned(ids_taken=(first.id,))
    assert second.id == f"{first.id}-2"
    assert second.uid != first.uid


def test_the_file_of_a_cancelled_outing_cancels_the_same_entries() -> None:
    """The cancellation carries the UIDs of all three parts, status cancelled and no reminder."""
    before = planned(ticked=EntryTicks(in_parts=True))
    after = before.changed(LATER, status=PlanStatus.CANCELLED)
    outing = outing_on(before.day)
    events, cancelled = (
        Calendar.from_ical(file_of(entry_of(one, HOUSEHOLD, PLACE, outing), NOW)).walk("VEVENT")
        for one in (before, after)
    )
    assert [str(event["UID"]) for event in cancelled] == [str(event["UID"]) for event in events]
    assert {str(event["STATUS"]) for event in cancelled} == {"CANCELLED"}
    assert {str(event["SEQUENCE"]) for event in cancelled} == {"1"}
    assert not any(event.walk("VALARM") for event in cancelled)


def test_an_outing_that_would_be_planned_otherwise_now_keeps_its_own_times() -> None:
    """Where the plan has changed, or the card is gone, the file still says what is on record."""
    one = planned()
    for outing, place in ((outing_on(date(2026, 12, 8)), PLACE), (None, None)):
        entry = entry_of(one, HOUSEHOLD, place, outing)
        assert (entry.start, entry.end, entry.uid) == (one.leave_home, one.home, one.uid)
        assert "as planned" in file_in_words(file_of(entry, NOW))


def test_days_off_are_read_with_one_date_or_two() -> None:
    """A single date is a break of one day; lines count from 1, empty ones too."""
    text = "2026-12-21 to 2027-01-01 winter break\n\n2027-01-18 staff day\nnothing"
    days_off, found = days_typed_in(text, "Days off")
    assert days_off == {
        1: {"first": "2026-12-21", "last": "2027-01-01", "name": "winter break"},
        3: {"first": "2027-01-18", "last": "2027-01-18", "name": "staff day"},
    }
    assert [finding.field for finding in found] == ["Days off, line 4"]
