"""The household's file is read with every fault at once and reads back the same."""

import json
import tomllib
from datetime import date, time, timedelta
from pathlib import Path
from typing import Any
from zoneinfo import available_timezones

import jsonschema  # type: ignore[import-untyped]
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.builders import make_household
from tripplan.documents.where import zone_named
from tripplan.errors import Weight
from tripplan.files.cards.household_file import (
    household_schema,
    load_household,
    read_household,
    write_household,
)
from tripplan.values.visible import shows_something

TODAY = date(2026, 11, 25)
DEMO = Path(__file__).resolve().parents[3] / "demo_places" / "household.toml"
ADULT = {"name": "Ann", "born": "1988-05-20"}


def found(**changes: Any) -> dict[str, tuple[str, Weight]]:
    """The findings of a household with these changes, by field."""
    read = read_household(write_household(make_household(**changes)), "home.toml", TODAY)
    return {f.field: (f.message, f.weight) for f in read.findings}


def napper(start: str, length: int = 60, **changes: Any) -> dict[str, Any]:
    """A small child with one nap."""
    return {"name": "Di", "born": "2025-07-15", "naps": [{"start": start, "minutes": length}], **changes}


def test_the_usual_household_has_no_findings() -> None:
    """Two adults, two children, one car and a midday nap are all right."""
    assert found() == {}


@pytest.mark.parametrize("name", ["a.b/c", "America", "../UTC", "", "UTC\0"])
def test_a_time_zone_has_the_name_of_one(name: str) -> None:
    """Whatever else is written there is a fault in words."""
    text = write_household(make_household()).replace("America/Chicago", "ZONE")
    faults = read_household(text.replace('"ZONE"', json.dumps(name)), "home.toml", TODAY).findings
    assert [(fault.field, "IANA name" in fault.message) for fault in faults] == [("home.time_zone", True)]


def test_every_zone_there_is_can_be_named() -> None:
    """No name of the time zone database is turned down for how it is written."""
    assert [name for name in available_timezones() if zone_named(name) is None] == []
    assert zone_named(f"America/{'a.' * 400}b") is None


def test_the_demo_household_is_free_of_faults_and_survives_writing() -> None:
    """The demo family loads without a fault and reads back the same after writing."""
    read = load_household(DEMO, TODAY)
    assert read.findings == ()
    assert read_household(write_household(read.usable()), "x", TODAY).value == read.value


@pytest.mark.parametrize(
    ("member", "field", "part", "weight"),
    [
        (
            napper("20:30"),
            "members[1].naps[0].start",
            "lies in the night: awake from 06:30 to 19:30",
            Weight.FAULT,
        ),
        (napper("05:00"), "members[1].naps[0].start", "lies in the night", Weight.FAULT),
        (napper("19:00"), "members[1].naps[0].minutes", "runs past bedtime", Weight.WARNING),
        (
            napper("12:30", naps=[{"start": "12:30", "minutes": 60}, {"start": "13:00", "minutes": 60}]),
            "members[1].naps[1].start",
            "begins before the nap listed above it is over",
            Weight.FAULT,
        ),
        ({"name": "Ed", "born": "2026-11-26"}, "members[1].born", "lies in the future", Weight.FAULT),
        ({"name": "Ed", "born": "2026-12"}, "members[1].born", "lies in the future", Weight.FAULT),
        ({"name": "Ed", "born": "1903-01-01"}, "members[1].born", "is the year right?", Weight.WARNING),
    ],
)
def test_what_cannot_be_true_of_a_person_is_told(
    member: dict[str, Any], field: str, part: str, weight: Weight
) -> None:
    """Naps at night or on top of each other, and births to come, are named with their field."""
    message, how_bad = found(members=[ADULT, member])[field]
    assert part in message
    assert how_bad is weight


@pytest.mark.parametrize(
    "member",
    [
        napper("19:30", 60, wakes="14:00", bed="01:00"),
        napper("00:30", 20, wakes="14:00", bed="01:00"),
        napper("12:30", 60, wakes="06:30", bed="06:30"),
        {"name": "Ed", "born": "2026-11-25"},
        {"name": "Ed", "born": "2026-11"},
    ],
)
def test_odd_but_possible_people_are_no_fault(member: dict[str, Any]) -> None:
    """People who wake in the afternoon, and a child born today, are all right."""
    assert found(members=[ADULT, member]) == {}


def test_what_calls_for_care_is_a_warning() -> None:
    """No adult, too few seats and a pass that ran out are told, and the household can be used."""
    findings = found(
        members=[{"name": "Cy", "born": "2019-03-11"}, {"name": "Di", "born": "2012-03-11"}],
        car={"seats": 1, "fuel": "per km", "rate": "0.30"},
        passes=[{"place": "a-mill", "offer": "Year", "holders": ["Cy"], "valid_until": "2026-11-24"}],
    )
    assert set(findings) == {"members", "car.seats", "passes[0].valid_until"}
    assert {weight for _, weight in findings.values()} == {Weight.WARNING}


def test_a_pass_counts_on_its_last_day() -> None:
    """A pass that runs out today is still good."""
    held = {"place": "a-mill", "offer": "Year", "holders": ["Ann"], "valid_until": "2026-11-25"}
    assert found(passes=[held]) == {}


def test_faults_of_fields_and_of_fit_come_together() -> None:
    """A wrong currency, a wrong month of birth, a night nap and an unknown town are told at once."""
    text = """
name = "Home"
currency = "dollars"
[home]
town = "Nosuchtown"
subdivision = "IL"
country = "US"
[[members]]
name = "Ann"
born = "1988-13-20"
[[members]]
name = "Di"
born = "2025-07"
naps = [{ start = 21:00:00, minutes = 60 }]
"""
    read = read_household(text, "home.toml", TODAY)
    assert read.value is None
    assert [(f.field, f.value) for f in read.findings] == [
        ("currency", "dollars"),
        ("members[0].born", "1988-13-20"),
        ("home.town", "Nosuchtown"),
        ("members[1].naps[0].start", "21:00"),
    ]
    assert read.findings[1].message == "its month must be 12 or less"


def test_a_missing_file_is_a_finding(tmp_path: Path) -> None:
    """A file that cannot be opened is told like any other fault."""
    read = load_household(tmp_path / "none.toml", TODAY)
    assert read.value is None
    assert ["cannot be opened" in f.message for f in read.findings] == [True]


clock = st.times().map(lambda t: t.replace(microsecond=0))
# Births far enough back to be in no doubt.
births = st.one_of(
    st.dates(date(1930, 1, 1), TODAY - timedelta(days=40)).map(str),
    st.dates(date(1930, 1, 1), TODAY - timedelta(days=40)).map(lambda d: f"{d:%Y-%m}"),
)
members = st.lists(
    st.fixed_dictionaries(
        {"born": births},
        optional={
            "needs": st.text(max_size=30),
            "statuses": st.lists(st.text(min_size=1, max_size=9).filter(shows_something), max_size=2),
            "naps": st.just([{"start": time(12, 30), "minutes": 80, "slack_minutes": 45}]),
            "wakes": st.times(time(4), time(9)).map(lambda t: t.replace(microsecond=0)),
        },
    ),
    min_size=1,
    max_size=5,
).map(lambda people: [{**person, "name": f"Member {n}"} for n, person in enumerate(people)])
changes = st.fixed_dictionaries(
    {"name": st.text(min_size=1, max_size=40).filter(shows_something), "members": members},
    optional={
        "habits": st.fixed_dictionaries({}, optional={"home_by": clock, "rest_minutes": st.integers(5, 60)}),
        "worth": st.fixed_dictionaries({"full_house": st.decimals(0, 99, places=2, allow_nan=False)}),
        "car": st.fixed_dictionaries(
            {"fuel": st.just("mpg"), "consumption": st.decimals(1, 99, places=1, allow_nan=False)},
            optional={"fuel_price": st.decimals(0, 9, places=3, allow_nan=False)},
        ),
    },
)


@given(changes)
def test_any_household_reads_back_the_same(change: dict[str, Any]) -> None:
    """Writing a household and reading the text gives an equal one and, written again, the same text."""
    household = make_household(**change)
    text = write_household(household)
    again = read_household(text, "x", TODAY).usable()
    assert again == household
    assert write_household(again) == text


def test_the_schema_accepts_the_demo_household() -> None:
    """The JSON schema is a valid one and takes the demo family."""
    schema = household_schema()
    jsonschema.Draft202012Validator.check_schema(schema)
    values = tomllib.loads(DEMO.read_text(encoding="utf-8"))
    for member in values["members"]:
        member["born"] = str(member["born"])
        member.update({name: str(member[name]) for name in ("wakes", "bed") if name in member})
        for nap in member.get("naps", ()):
            nap["start"] = str(nap["start"])
    values["habits"] = {name: str(v) if isinstance(v, time) else v for name, v in values["habits"].items()}
    jsonschema.validate(values, schema)
