"""No form takes a number, a year or a yes-or-no that cannot be meant."""

import json
from collections.abc import Iterator
from datetime import UTC, date, datetime
from pathlib import Path
from typing import Any

import pytest
from pydantic import ValidationError

from tests.builders import make_household, make_place
from tripplan.documents.bounds import FIRST_YEAR, LAST_YEAR
from tripplan.documents.family.household import Household
from tripplan.documents.model import Written
from tripplan.documents.places.place import Place
from tripplan.files.cards.household_file import read_household
from tripplan.files.cards.place_card import read_place_card
from tripplan.files.toml.toml_text import write_toml
from tripplan.records.export import export_all, read_export
from tripplan.records.kinds import KINDS
from tripplan.records.opening import Which, open_records

TODAY = date(2026, 11, 25)
CANNOT_BE_MEANT: list[tuple[str, object]] = [
    ("reserve_percent", 10**400),
    ("reserve_percent", float("inf")),
    ("treats_per_child", 10**400),
    ("members.0.naps.0.shortest_minutes", True),
    ("members.0.naps.0.minutes", 10**400),
    ("members.0.naps.0.in_car", 1),
    ("home.latitude", True),
    ("home.latitude", float("nan")),
    ("passes.0.valid_until", 1764028800),
    ("passes.0.valid_until", date(9999, 12, 31)),
    ("passes.0.valid_until", date(1, 1, 1)),
]


def household_with(field: str, value: object) -> dict[str, Any]:
    """A household as it is written down, with one value changed."""
    members = [{"name": "Ann", "born": "1988-05", "naps": [{"start": "12:30", "minutes": 60}]}]
    whole: dict[str, Any] = json.loads(make_household(members=members).model_dump_json(exclude_none=True))
    whole["passes"] = [{"place": "mill", "offer": "Pass", "holders": ["Ann"], "valid_until": "2027-01-01"}]
    Household.model_validate(whole)
    *way, last = field.split(".")
    here: Any = whole
    for step in way:
        here = here[int(step)] if step.isdecimal() else here[step]
    here[last] = value
    return whole


@pytest.mark.parametrize(("field", "value"), CANNOT_BE_MEANT, ids=lambda part: str(part)[:30])
def test_a_household_refuses_what_cannot_be_meant(field: str, value: object) -> None:
    """The fault stands at the field; pydantic may add that a list of the others is too short."""
    with pytest.raises(ValidationError) as caught:
        Household.model_validate(household_with(field, value))
    assert ".".join(map(str, caught.value.errors()[0]["loc"])) == field


def test_a_file_says_which_field_and_which_value() -> None:
    """A date that is a number and minutes that are true come back as findings with file, field and value."""
    nap = household_with("members.0.naps.0.shortest_minutes", True)
    read = read_household(write_toml(nap), "home.toml", TODAY)
    (found,) = read.findings
    assert (found.file, found.field, found.value) == (
        "home.toml",
        "members[0].naps[0].shortest_minutes",
        "true",
    )
    card = json.loads(make_place().model_dump_json(exclude_none=True))
    card["prices_read"]["on"] = 1764028800
    (found,) = read_place_card(write_toml(card), "mill.toml", TODAY).findings
    assert (found.file, found.field, found.value) == ("mill.toml", "prices_read.on", "1764028800")


def test_an_export_says_so_too(tmp_path: Path) -> None:
    """The same in a file of records."""
    records = open_records(tmp_path, Which.FAMILY, datetime(2026, 11, 25, tzinfo=UTC))
    records_file = json.loads(export_all(records))
    for field, value in CANNOT_BE_MEANT:
        said = value.isoformat() if isinstance(value, date) else value
        records_file["documents"] = [{"kind": "household", "body": household_with(field, said)}]
        found = read_export(json.dumps(records_file).encode(), "all.json").findings[0]
        assert found.field == "documents[0].body." + field.replace(".0", "[0]")
        assert found.value != ""


def forms(form: type[Written] = Written) -> Iterator[type[Written]]:
    """Every form there is."""
    for below in form.__subclasses__():
        yield below
        yield from forms(below)


def nodes(schema: Any, under: tuple[str, ...] = ()) -> Iterator[tuple[dict[str, Any], tuple[str, ...]]]:
    """Every part of a form's own schema, with the functions that are called before and after it."""
    if isinstance(schema, dict):
        function = schema.get("function")
        name = getattr(function.get("function"), "__name__", "") if isinstance(function, dict) else ""
        inside = (*under, name) if name else under
        yield schema, inside
        for key, part in schema.items():
            if key not in ("metadata", "serialization") and not (isinstance(part, dict) and "cls" in part):
                yield from nodes(part, inside)
    elif isinstance(schema, list | tuple):
        for part in schema:
            yield from nodes(part, under)


def own_schema(form: type[Written]) -> Any:
    """The fields of a form, past what wraps it."""
    schema: Any = form.__pydantic_core_schema__
    while schema.get("cls") is not form:
        schema = schema["schema"]
    return schema["schema"]


def test_every_number_and_date_of_every_form_is_bounded() -> None:
    """Whoever adds a field need not think of it: each number has two ends, each date its years."""
    counted = 0
    for form in {*forms(), *KINDS}:
        if not form.__module__.startswith("tripplan."):
            continue
        for node, functions in nodes(own_schema(form)):
            kind = node.get("type")
            if kind in ("int", "float", "decimal"):
                counted += 1
                assert {"ge", "gt"} & node.keys(), (form, node)
                assert {"le", "lt"} & node.keys(), (form, node)
                assert "_refuse_yes_or_no" in functions, (form, node)
                assert kind == "int" or node["allow_inf_nan"] is False, (form, node)
            elif kind in ("date", "datetime"):
                counted += 1
                assert {"_refuse_numbers", "_within_years"} <= set(functions), (form, node)
            elif kind == "bool":
                counted += 1
                assert node["strict"], (form, node)
    assert counted > 150  # 180 when this was written


@pytest.mark.parametrize("year", [FIRST_YEAR, LAST_YEAR])
def test_the_first_and_the_last_year_count(year: int) -> None:
    """What lies between them is taken."""
    value = json.loads(make_place().model_dump_json(exclude_none=True))
    value["prices_read"]["on"] = f"{year}-06-01"
    assert Place.model_validate(value).prices_read.on == date(year, 6, 1)
