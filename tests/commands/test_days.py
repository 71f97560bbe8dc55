"""`tripplan days`: the days of a span in order."""

import json
from datetime import date
from decimal import Decimal
from typing import Any

import pytest

from tests.builders import make_outing, make_place
from tests.commands.conftest import NOON, Files, Run, assert_fits_schema
from tests.saying import says
from tripplan.language.sentences import fact
from tripplan.records.store import Records


@pytest.fixture
def museum(files: Files) -> Files:
    """One museum, closed on Mondays."""
    files.add()
    return files


def answer(run: Run, *argv: str) -> dict[str, Any]:
    """The JSON answer."""
    told: dict[str, Any] = json.loads(run("days", *argv, "--json").out)
    return told


def test_days_stand_in_order_of_generalized_cost(run: Run, museum: Files) -> None:
    """The best day comes first, and no day that can be done is lost."""
    told = answer(run, "--most", "99", *museum.options)
    felt = [Decimal(outing["felt_cost"]["amount"]) for outing in told["outings"]]
    assert felt == sorted(felt)
    assert len(felt) == told["count"]
    assert told["count"] + len(told["passed_over"]) == 42


def test_json_is_what_its_form_says(run: Run, museum: Files) -> None:
    """No key is missing, none is unknown."""
    told = answer(run, *museum.options)
    assert_fits_schema(told, "days")


@pytest.mark.parametrize(("most", "shown"), [((), 10), (("--most", "3"), 3)], ids=["usual", "three"])
def test_no_more_days_than_wanted_are_told(
    run: Run, museum: Files, most: tuple[str, ...], shown: int
) -> None:
    """Ten days at first; the rest is counted."""
    said = run("days", *most, *museum.options)
    assert said.out.count("Test museum") == shown
    assert "36 can be done in all" in said.out


def test_why_names_the_days_passed_over(run: Run, museum: Files) -> None:
    """Days with the same reason stand together, the nearest first."""
    said = run("days", "--to", "2026-12-08", "--why", *museum.options)
    assert "2 days passed over:\n  - Test museum: closed on Mondays (Nov 30, Dec 7)\n" in said.out
    assert "crowds" in said.out


def test_places_with_the_same_reason_on_the_same_days_stand_together(run: Run, museum: Files) -> None:
    """A reason that two places share is told once."""
    museum.add(id="other", name="Other")
    said = run("days", "--to", "2026-12-01", "--why", *museum.options)
    assert "- Other; Test museum: closed on Mondays (Nov 30)" in said.out


def test_a_span_without_a_day_is_a_no(run: Run, museum: Files) -> None:
    """From Monday to Monday the museum is closed; that is an answer, no fault."""
    said = run("days", "--from", "2026-11-30", "--to", "2026-11-30", *museum.options)
    assert (said.status, said.err) == (1, "")
    assert "No day in this span can be done." in said.out


def test_school_calendars_can_be_named(run: Run, museum: Files) -> None:
    """A district's calendar says which days are out of school, in place of nobody knowing."""
    school = museum.folder / "school.ics"
    events = (
        ("First day of school", "20260824"),
        ("No school", "20261203"),
        ("Last day of school", "20270604"),
    )
    lines = ["BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//tests//EN"]
    for number, (title, day) in enumerate(events):
        lines += [
            "BEGIN:VEVENT",
            f"UID:{number}",
            f"DTSTART;VALUE=DATE:{day}",
            f"SUMMARY:{title}",
            "END:VEVENT",
        ]
    school.write_text("\r\n".join([*lines, "END:VCALENDAR", ""]), encoding="utf-8")
    asked = ("--from", "2026-12-02", "--to", "2026-12-03", *museum.options)
    before = {outing["day"]: outing["crowd"] for outing in answer(run, *asked)["outings"]}
    after = {
        outing["day"]: outing["crowd"]
        for outing in answer(run, *asked, "--school-calendar", str(school))["outings"]
    }
    assert {day: crowd["school_unknown"] for day, crowd in before.items()} == {
        "2026-12-02": 1,
        "2026-12-03": 1,
    }
    assert {day: crowd["out_of_school"] for day, crowd in after.items()} == {"2026-12-02": 0, "2026-12-03": 1}


def test_wishes_leave_days_out_and_are_told(run: Run, museum: Files) -> None:
    """With Tuesdays asked for, no other day is told; the others are counted."""
    told = answer(run, "--weekdays", "Tuesday", "--most", "99", *museum.options)
    assert {date.fromisoformat(outing["day"]).weekday() for outing in told["outings"]} == {1}
    assert [wish["code"] for wish in told["wishes"]] == ["misses-wish-weekdays"]
    assert told["count"] + told["not_as_wished"] == 36


def test_a_budget_that_no_day_keeps_is_a_no_with_the_nearest_miss(run: Run, museum: Files) -> None:
    """The day that comes nearest is told with what it costs."""
    said = run("days", "--budget", "1", *museum.options)
    assert said.status == 1
    assert "No day is as you wish." in said.out
    assert "you asked for at most $1.00" in " ".join(said.out.split())


def test_a_nuisance_is_weighed_as_asked(run: Run, museum: Files) -> None:
    """A full house worth nothing takes its part out of the felt cost."""
    usual, free = (
        Decimal(answer(run, *asked, "--most", "1", *museum.options)["outings"][0]["felt_cost"]["amount"])
        for asked in ((), ("--worth", "full-house", "0"))
    )
    assert free < usual


@pytest.mark.parametrize(
    ("asked", "named"),
    [
        (("--weekdays", "Funday"), "Funday"),
        (("--budget", "lots"), "--budget"),
        (("--nap", "101"), "--nap"),
        (("--home-by", "25:00"), "--home-by"),
        (("--unit", "Birds"), "no study unit"),
        (("--worth", "boredom", "3"), "boredom"),
        (("--worth", "full-house", "-3"), "--worth"),
    ],
)
def test_a_wish_that_cannot_be_understood_is_a_fault(
    run: Run, museum: Files, asked: tuple[str, ...], named: str
) -> None:
    """Each is told with its option, and nothing is ranked."""
    said = run("days", *asked, *museum.options)
    assert (said.status, said.out) == (2, "")
    assert named in said.err


def test_the_table_holds_every_day_that_can_be_done(run: Run, museum: Files) -> None:
    """One line a day and one for the headings; a file that is there is not written over unasked."""
    path = museum.folder / "days.csv"
    assert run("days", "--table", str(path), *museum.options).status == 0
    lines = path.read_text(encoding="utf-8").splitlines()
    assert len(lines) == 37
    assert lines[0].startswith('"day","weekday","place"')
    assert run("days", "--table", str(path), *museum.options).status == 1
    assert run("days", "--table", "-", *museum.options).out.splitlines() == lines


def test_an_hour_that_opens_up_is_kept_to(run: Run, museum: Files) -> None:
    """Free today from 11:30 to 17:30: one day, out and home again in between, whatever the habits say."""
    told = answer(run, "--free-from", "11:30", "--free-until", "17:30", *museum.options)
    assert told["span"] == {"first": "2026-11-25", "last": "2026-11-25"}
    (outing,) = told["outings"]
    assert outing["plan"]["leave_home"][:16] >= "2026-11-25T11:30"
    assert outing["plan"]["home"][:16] <= "2026-11-25T17:30"
    said = run("days", "--free-from", "11:30", "--free-until", "17:30", *museum.options)
    assert "Wed, Nov 25, 2026, free from 11:30 AM to 5:30 PM." in said.out


def test_what_has_begun_today_is_not_proposed(run: Run, museum: Files) -> None:
    """At 11:32 by the clock at home nobody leaves before 11:35; without a beginning named, from now on."""
    later = {"TRIPPLAN_TODAY": "2026-11-25T11:32-06:00"}
    asked = ("--free-until", "18:00", *museum.options, "--json")
    (outing,) = json.loads(run("days", *asked, **later).out)["outings"]
    assert outing["plan"]["leave_home"][:16] >= "2026-11-25T11:35"
    (compared,) = json.loads(run("compare", "--on", "2026-11-25", *museum.options, "--json", **later).out)[
        "candidates"
    ]
    assert compared["best"]["plan"]["leave_home"][:16] >= "2026-11-25T11:35"


def test_free_hours_on_a_day_to_come(run: Run, museum: Files) -> None:
    """With days named they are free on each of these, and nothing is said of today."""
    told = answer(run, "--from", "2026-12-01", "--to", "2026-12-03", "--free-from", "11:30", *museum.options)
    assert {outing["day"] for outing in told["outings"]} == {"2026-12-01", "2026-12-02", "2026-12-03"}
    assert all(outing["plan"]["leave_home"][11:16] >= "11:30" for outing in told["outings"])


def test_where_nothing_fits_the_reason_is_told(run: Run, museum: Files) -> None:
    """An hour is too short for a museum an hour away: a no, with what stands in the way."""
    said = run("days", "--free-from", "14:00", "--free-until", "15:00", *museum.options)
    assert said.status == 1
    assert "Test museum: " in said.out
    assert "3:00 PM" in said.out


@pytest.mark.parametrize(
    ("asked", "faults"),
    [
        (("--free-from", "noon", "--free-until", "25:00"), ("--free-from", "--free-until")),
        (("--free-from", "14:00", "--free-until", "13:00"), ("--free-until",)),
    ],
)
def test_free_hours_that_make_no_sense_are_faults(
    run: Run, museum: Files, asked: tuple[str, ...], faults: tuple[str, ...]
) -> None:
    """Times that cannot be read, both at once, or out of order."""
    said = run("days", *asked, *museum.options)
    assert said.status == 2
    assert all(fault in said.err for fault in faults)


def test_where_the_family_is_going_anyway_is_asked_about_on_request(run: Run, own_records: Records) -> None:
    """The farm, planned for January, is left out and told; named, or with --again, it counts."""
    own_records.save(make_place(id="farm"), NOON)
    own_records.save(make_outing(date(2027, 1, 12)), NOON)
    usual = answer(run, "--most", "99")
    assert usual["left_out"] == [{"place": "farm", "day": "2027-01-12"}]
    assert {one["place"]["id"] for one in usual["outings"]} == {"test-museum"}
    assert says(
        run("days").out,
        "days-lately",
        visits=(fact("days-visit", place="Test museum", day=date(2027, 1, 12)),),
    )
    for asked in (("--again",), ("farm",)):
        told = answer(run, "--most", "99", *asked)
        assert told["left_out"] == []
        assert "farm" in {one["place"]["id"] for one in told["outings"]}
