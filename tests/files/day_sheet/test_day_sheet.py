"""The day sheet in words: what stands on it, and what does not."""

from dataclasses import replace
from datetime import timedelta
from typing import Any

import pytest

from tests.builders import make_household, make_place
from tests.day_sheets import FAMILY, MUSEUM, SHOWING, planned, section, sheet, words
from tripplan.documents.outings.emergency_contacts import EmergencyContact, EmergencyContacts
from tripplan.documents.outings.packing_changes import PackingChanges
from tripplan.documents.outings.sheet_entries import Booking, SheetEntries, SheetTicks
from tripplan.documents.places.own_questions import OwnQuestions
from tripplan.files.day_sheet.day_sheet import LONGEST_LINE, day_sheet, dialled
from tripplan.language.sentences import fact, told
from tripplan.language.wording import clock, money
from tripplan.planning.day import LeaveWindow, Step, StepKind


def leads(name: str, **entries: Any) -> list[str]:
    """What stands before the lines of a section."""
    return [line.lead for line in section(sheet(**entries), name).lines]


def texts(name: str, **entries: Any) -> list[str]:
    """The lines of a section."""
    return [line.text for line in section(sheet(**entries), name).lines]


def test_times_come_first_and_are_the_plans_own() -> None:
    """Leaving home with its window, arriving, going in, lunch, leaving, home again."""
    outing = planned()
    plan = outing.plan
    eats = plan.enter + timedelta(minutes=20)
    lunch = Step(StepKind.LUNCH, eats, eats + timedelta(minutes=35), fact("plan-step-lunch"))
    drive = Step(
        StepKind.DRIVE,
        plan.leave_home,
        plan.enter - timedelta(minutes=9),
        fact("plan-step-drive", there=True),
    )
    window = LeaveWindow(plan.leave_home, plan.leave_home + timedelta(minutes=20), plan)
    plan = replace(plan, steps=(drive, lunch))
    outing = replace(outing, plan=plan, search=replace(outing.search, windows=(window,)))
    found = day_sheet(outing, FAMILY, SheetEntries()).sections[0]
    assert found.name == "times"
    first, last = clock(window.first), clock(window.last)
    assert [(line.lead, line.text) for line in found.lines] == [
        (first, f"Load up (any time from {first} to {last} is about as good)"),
        (clock(drive.start), "Drive off"),
        (clock(drive.end), "Arrive"),
        (clock(plan.enter), "Go in"),
        (clock(eats), "Lunch"),
        (clock(plan.leave_place), "Leave the place, load up"),
        (clock(plan.home), "Home again"),
    ]


def test_a_timed_entry_is_called_so() -> None:
    """Where people are let in at fixed times only, the sheet says to be at the door."""
    opening = {"hours": "Tu-Su 10:00-17:00", "entry_times": ["11:00", "13:00"]}
    timed = sheet(place=make_place(opening=opening))
    assert "Entry slot: be at the door" in [line.text for line in section(timed, "times").lines]


def test_shows_and_lunch_stand_in_order_of_time() -> None:
    """Otters at eleven, lunch, planets at half past one; what there is no time for is told as well."""
    showing = sheet(place=SHOWING)
    times = [(line.lead, line.text) for line in section(showing, "times").lines]
    inside = [text for _, text in times[times.index(("11:00 AM", "Otter feeding, until 11:20 AM")) :]]
    assert [text.split(",")[0] for text in inside[:3]] == ["Otter feeding", "Lunch", "Planet hour"]
    assert ("1:30 PM", "Planet hour, until 2:10 PM") in times
    missed = [line.text for line in section(showing, "place").lines if "Night sky" in line.text]
    assert missed == ["Night sky at 4:50 PM: no time for it in this plan"]


def test_where_clocks_differ_every_time_names_its_zone() -> None:
    """A place one hour east of home: no time stands there without its zone."""
    east = make_place(
        where={
            "latitude": 40.4,
            "longitude": -88.0,
            "country": "US",
            "subdivision": "IN",
            "time_zone": "America/Indiana/Indianapolis",
        }
    )
    far = {"members": [{"name": "Ann", "born": "1988-05-20"}]}
    found = section(sheet(make_household(**far), place=east), "times")
    assert {line.lead[-3:] for line in found.lines} == {"CST", "EST"}


def test_the_place_is_told_with_address_telephone_and_hours() -> None:
    """The telephone can be dialled from the sheet."""
    lines = section(sheet(), "place").lines
    assert lines[0].text == "Bloomington IL, US (40.4842, -88.9937)"
    assert (lines[1].text, lines[1].dial) == ("Phone (309) 555-0147", "3095550147")
    assert lines[2].text == "Open 10:00 AM to 5:00 PM"


def test_tickets_say_who_is_covered_and_what_to_expect() -> None:
    """One line a purchase with its price and people, their sum, parking, and the whole outing."""
    outing, lines = planned(), section(sheet(), "tickets").lines
    bought = outing.admission.purchases
    assert [line.lead for line in lines[: len(bought)]] == [money(one.total) for one in bought]
    assert "1 x Adult for Žofie" in lines[0].text
    assert (lines[len(bought)].lead, lines[len(bought)].text) == (
        money(outing.admission.total),
        "total for the tickets",
    )
    assert "Parking: $5.00" in [line.text for line in lines]
    assert lines[-1].text.startswith("The whole outing, drive and food included: $")


def test_booking_numbers_stand_there_and_else_there_is_room_for_one() -> None:
    """What the parent typed, or a line to write on."""
    booked = texts("tickets", bookings=(Booking(what="noon tour", number="K7-3312"),))
    assert "Booking number, noon tour: K7-3312" in booked
    assert any(text.startswith("Booking number: ___") for text in texts("tickets"))


def test_steps_cover_the_whole_day() -> None:
    """Every step of the plan with its beginning and length."""
    assert leads("steps") == [clock(step.start) for step in planned().plan.steps]


def test_naps_are_told_with_where_they_happen() -> None:
    """The usual nap, and what this day makes of it."""
    (nap,) = texts("naps")
    assert nap.startswith("Ελένη & Di, usually 12:30 PM for 1 h 40 min: ")
    assert "asleep about" in nap


def test_a_lost_nap_is_called_lost() -> None:
    """A child that sleeps nowhere on this day is not told to sleep."""
    outing = planned()
    awake = tuple(replace(nap, kept=(), asleep=None) for nap in outing.plan.naps)
    lost = replace(outing, plan=replace(outing.plan, naps=awake))
    found = section(day_sheet(lost, FAMILY, SheetEntries()), "naps")
    assert "no room for it on this day" in found.lines[0].text


def test_the_packing_list_has_boxes_and_follows_the_family() -> None:
    """Own things are there, things left out are gone."""
    changes = PackingChanges(added=("the grey rabbit",), left_out=("Stroller",))
    found = section(sheet(packing=changes), "packing")
    assert found.ticked_off
    told = [line.text for line in found.lines]
    assert "the grey rabbit" in told
    assert not any(text.startswith("Stroller") for text in told)


def test_emergency_numbers_are_told_with_their_doubt() -> None:
    """Own people, the place, the country's number, and that it is written from memory."""
    own = EmergencyContacts(contacts=(EmergencyContact(name="Aunt Vera", telephone="+1 608 555 0100"),))
    lines = section(sheet(contacts=own), "emergency").lines
    assert [(line.lead, line.dial) for line in lines[:4]] == [
        ("911", "911"),
        ("1-800-222-1222", "18002221222"),
        ("+1 608 555 0100", "+16085550100"),
        ("(309) 555-0147", "3095550147"),
    ]
    assert "Check the emergency and advice numbers" in lines[-1].text


@pytest.mark.parametrize(
    ("written", "number"),
    [
        ("(608) 555-0166", "6085550166"),
        ("+49 30 555-010", "+4930555010"),
        ("1-800-222-1222", "18002221222"),
        ("ask at the desk", ""),
        ("911;phone-context=x", ""),
    ],
)
def test_only_a_number_is_dialled(written: str, number: str) -> None:
    """Words and codes beside it never reach the telephone."""
    assert dialled(written) == number


def test_cautions_and_questions_are_there_and_the_last_word_is_not_ours() -> None:
    """The outing's cautions, the card's and suggested questions, and who has the last word."""
    assert texts("cautions") == list(told(planned().cautions))
    assert texts("questions")[0] == "Where does the water come from?"
    own = OwnQuestions(place=MUSEUM.id, questions=("How deep is it?",))
    assert texts("questions", questions=own)[0] == "How deep is it?"
    assert leads("questions") == ["1.", "2.", "3."]
    assert "Local law" in sheet().closing
    assert "professionals have the last word" in sheet().closing


def test_birth_dates_home_and_needs_stand_there_only_when_ticked() -> None:
    """Names do; the rest would tell a finder of the paper too much."""
    private = ("1988-05-20", "2019-03-11", "12 Elm Street", "hazelnut")
    plain, full = (
        words(sheet()),
        words(sheet(ticked=SheetTicks(needs=True, birth_dates=True, home_address=True))),
    )
    assert "Žofie" in plain
    assert not any(secret in plain for secret in private)
    assert all(secret in full for secret in private)


@pytest.mark.parametrize(
    ("tick", "secret"),
    [("needs", "hazelnut"), ("birth_dates", "2019-03-11"), ("home_address", "12 Elm Street")],
)
def test_each_tick_lets_in_its_own_and_nothing_else(tick: str, secret: str) -> None:
    """Ticking one thing does not let in another."""
    told = words(sheet(ticked=SheetTicks.model_validate({tick: True})))
    others = {"hazelnut", "2019-03-11", "12 Elm Street"} - {secret}
    assert secret in told
    assert not any(other in told for other in others)


def test_an_endless_text_is_cut_and_invisible_letters_are_gone() -> None:
    """A careless note does not fill the page, and nothing turns the text around."""
    place = make_place(visit={"cautions": ["word " * 1000, "turned \u202e around\x07"]})
    told = [line.text for line in section(sheet(make_household(), place), "cautions").lines]
    assert max(map(len, told)) <= LONGEST_LINE + 2
    assert "turned around" in told
