"""`tripplan holidays` tells the coming year's holidays, and keeps the local days that the parent adds."""

import json
from datetime import date

import jsonschema  # type: ignore[import-untyped]
import pytest
from holidays.version import __version__ as version_of_table

from tests.builders import make_place
from tests.commands.conftest import NOON, Run
from tripplan.documents.calendars.local_days import LocalDays
from tripplan.records.store import Records


def test_the_coming_holidays_are_told(run: Run) -> None:
    """The day after the demo's today is Thanksgiving at home and in the places' states."""
    said = run("holidays", "list", "--demo")
    assert (said.status, said.err) == (0, "")
    assert "Thu, Nov 26, 2026" in said.out
    told = json.loads(run("holidays", "list", "--demo", "--json").out)
    jsonschema.validate(told, json.loads(run("schema", "holidays-list").out))
    first = told["holidays"][0]
    assert (first["day"], first["name"], first["where"][0]) == ("2026-11-26", "Thanksgiving Day", "home")
    assert first["days_off"]["first"] == "2026-11-26"


def test_what_the_table_is_known_to_leave_out_is_told_where_it_matters(
    run: Run, own_records: Records
) -> None:
    """The source is told; Minnesota's day in October to those who live or go there, and it is in no list."""
    told = " ".join(run("holidays", "list").out.split())
    assert f"the package holidays {version_of_table}" in told
    assert "Minnesota" not in told
    there = make_place(id="up-north", where={"country": "US", "subdivision": "MN", "town": "Winona"})
    own_records.save(there, NOON)
    told = " ".join(run("holidays", "list").out.split())
    assert "Minnesota's law names the second Monday in October" in told
    answer = json.loads(run("holidays", "list", "--json").out)
    assert len(answer["sources"]) == 2
    october = [one for one in answer["holidays"] if one["day"] == "2027-10-11"]
    assert not [one for one in october if "US-MN" in one["where"]]


def test_a_local_day_is_added_changed_told_and_removed(run: Run, own_records: Records) -> None:
    """By its name; what places do on it is said; a second one of the name takes the first one's place."""
    words = ("holidays", "add", "Hop fair", "2027-09-17")
    added = run(*words, "2027-09-19", "--town", "Dubuque, IA", "--every-year", "--day-off")
    assert (added.status, added.out) == (0, "Hop fair is added.\n")
    changed = run(*words, "--place", "test-museum", "--holiday-hours", "--crowd", "3")
    assert (changed.status, changed.out) == (0, "Hop fair is changed.\n")
    kept = own_records.get(LocalDays)
    assert kept is not None
    (local,) = kept.value.days
    assert (local.first, local.last, str(local.crowd_factor)) == (date(2027, 9, 17), date(2027, 9, 17), "3")
    assert (local.place, local.town, local.hours_as_on_holidays) == ("test-museum", None, True)
    listed = " ".join(run("holidays", "list").out.split())
    assert "Hop fair: Fri, Sep 17, 2027" in listed
    assert "places keep it like a public holiday" in listed
    assert run("holidays", "remove", "hop FAIR").status == 0
    assert run("holidays", "remove", "Hop fair").status == 2


def test_all_faults_of_a_local_day_are_told_at_once(run: Run, own_records: Records) -> None:  # noqa: ARG001
    """Where it is and what it does, by their options, in one answer; no field of a form is told."""
    odd = ("--crowd", "99", "--within", "0")
    for where in (("--place", "nowhere"), ("--town", "Nowhereville Q")):
        said = run("holidays", "add", "Fair", "2027-09-17", *where, *odd)
        assert said.status == 2
        for option in (where[0], "--crowd", "--within"):
            assert f"command line: {option}: " in said.err
        assert "place or a town" not in said.err


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("2027-09-17", "2027-09-16", "--place", "test-museum"), "the last day lies before the first"),
        (("2027-09-17", "--place", "nowhere"), "no place is called that"),
        (("2027-09-17", "--town", "Nowhereville Q"), "--town"),
        (("2027-09-17",), "--place or --town"),
        (("17/09/2027", "--place", "test-museum"), "a date reads like 2026-12-08"),
        (("2027-09-17", "--town", "geo:42.5,-90.66;crs=moon"), "must be in WGS84; found crs 'moon'"),
        (("2027-09-17", "--town", "Dubuque, IA", "--within", "far"), "--within"),
        (("2027-09-17", "--town", "Dubuque, IA", "--within", "900"), "command line: --within: "),
        (("2027-09-17", "--place", "test-museum", "--crowd", "many"), "command line: --crowd: "),
    ],
)
def test_a_faulty_local_day_is_told_and_changes_nothing(
    run: Run, own_records: Records, words: tuple[str, ...], said: str
) -> None:
    """Backwards, nowhere, unreadable or out of bounds: status 2 and what is wrong."""
    refused = run("holidays", "add", "Fair", *words)
    assert refused.status == 2
    assert said in " ".join(refused.err.split())
    assert own_records.get(LocalDays) is None
