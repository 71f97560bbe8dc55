"""`tripplan passes`: which annual passes pay for a list of visits."""

import json
from datetime import date
from typing import Any

import jsonschema  # type: ignore[import-untyped]
import pytest

from tests.commands.conftest import NOON, Files, Run, assert_fits_schema
from tripplan.documents.outings.planned_visits import ListedVisit, PlannedVisits
from tripplan.records.store import Records

CARD = {
    "kind": "pass",
    "name": "Year card",
    "price": "90.00",
    "months": 12,
    "seats": [{"count": 6}],
    "parking_included": False,
}
TICKETS = (
    {"name": "Adult", "price": "14.00", "ages": "13+"},
    {"name": "Child", "price": "9.00", "ages": "3-12"},
    {"name": "Small child", "price": "0.00", "ages": "under 3"},
)
DAYS = ("2026-12-08", "2027-01-12", "2027-02-09")


@pytest.fixture
def museum(files: Files) -> Files:
    """A museum with a card for the year; else a visit costs 14 + 14 + 9 = $37, and $5 for parking."""
    files.add(offers=[*TICKETS, CARD])
    return files


def answer(run: Run, *argv: str, status: int = 0) -> dict[str, Any]:
    """The JSON answer."""
    said = run("passes", *argv, "--json")
    assert (said.status, said.err) == (status, "")
    told: dict[str, Any] = json.loads(said.out)
    return told


def test_a_pass_that_pays_is_bought_on_the_first_day(run: Run, museum: Files) -> None:
    """Three visits: 90 + 3 x 5 = $105 instead of 3 x 42 = $126."""
    told = answer(run, "--visit", "test-museum", *DAYS, *museum.options)
    (order,) = told["orders"]
    assert (order["place"], order["day"]) == ("test-museum", "2026-12-08")
    assert order["passes"][0]["valid_until"] == "2027-12-07"
    amounts = {name: told[name]["amount"] for name in ("total", "singly", "saving")}
    assert amounts == {"total": "105.00", "singly": "126.00", "saving": "21.00"}
    assert told["break_even"][0]["pays_after"] == 3


def test_a_pass_that_does_not_pay_is_told_with_its_break_even(run: Run, museum: Files) -> None:
    """For two visits, 2 x 37 = $74 is less than $90; the card would have paid after three."""
    said = run("passes", "--visit", "test-museum", *DAYS[:2], *museum.options)
    assert said.status == 0
    assert "No pass pays for the 2 visits planned" in said.out
    assert "would have paid after 3 visits" in " ".join(said.out.split())
    assert said.out.count("entry $37.00 and parking $5.00") == 2


def test_json_fits_its_schema_and_form(run: Run, museum: Files) -> None:
    """No key is missing, none is unknown, and the printed schema agrees."""
    told = answer(run, "--visit", "test-museum", *DAYS, "2026-12-07", *museum.options)
    assert_fits_schema(told, "passes")
    schema = json.loads(run("schema", "passes").out)
    jsonschema.validate(told, schema, cls=jsonschema.Draft202012Validator)
    assert [reason["code"] for reason in told["left_out"][0]["reasons"]] == ["hours-closed-weekday"]


def test_the_visits_on_record_are_the_usual_ones(run: Run, own_records: Records) -> None:
    """Without `--visit` the list of the screens counts; with it only together with `--planned`."""
    listed = ListedVisit(place="test-museum", day=date(2027, 1, 12), party=("Ann",))
    own_records.save(PlannedVisits(visits=(listed,)), NOON)
    assert [visit["party"] for visit in answer(run)["visits"]] == [["Ann"]]
    named = ("--visit", "test-museum", "2026-12-08")
    assert [visit["day"] for visit in answer(run, *named)["visits"]] == ["2026-12-08"]
    days = [visit["day"] for visit in answer(run, *named, "--planned")["visits"]]
    assert days == ["2026-12-08", "2027-01-12"]


def test_where_no_visit_can_be_the_answer_is_no(run: Run, museum: Files) -> None:
    """A Monday alone: status 1, with the reason."""
    said = run("passes", "--visit", "test-museum", "2026-12-07", *museum.options)
    assert (said.status, said.err) == (1, "")
    assert "closed on Mondays" in said.out
    assert answer(run, "--visit", "test-museum", "2026-12-07", *museum.options, status=1)["visits"] == []


def test_every_fault_is_told_at_once(run: Run, museum: Files) -> None:
    """A place, a date, a day too far off, a place without days and a person are all looked at."""
    named = ("--visit", "nowhere", "soon", "--visit", "test-museum", "--visit", "test-museum", "2029-01-01")
    said = run("passes", *named, "--party", "Zed", *museum.options)
    assert (said.status, said.out) == (2, "")
    for fault in ("found: nowhere", "found: soon", "followed by the days", "found: 2029-01-01", "found: Zed"):
        assert fault in said.err


@pytest.mark.parametrize("day", ["2026-11-24", "2027-11-25"])
def test_only_the_coming_twelve_months_can_be_asked_about(run: Run, museum: Files, day: str) -> None:
    """Yesterday and a year from today are refused."""
    said = run("passes", "--visit", "test-museum", day, *museum.options)
    assert (said.status, said.out) == (2, "")
    assert "from 2026-11-25 to 2027-11-24" in said.err


def test_nothing_to_plan_for_is_bad_input(run: Run, own_records: Records) -> None:
    """With no visit named and none on record, the answer says how to name one."""
    assert own_records.get(PlannedVisits) is None
    said = run("passes")
    assert (said.status, said.out) == (2, "")
    assert "--visit PLACE DATE" in said.err
