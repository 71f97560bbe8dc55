"""`tripplan schema`: JSON schemas of files and answers."""

import json
import tomllib
from collections.abc import Iterator
from datetime import date, time
from pathlib import Path
from typing import Any, get_args

import jsonschema  # type: ignore[import-untyped]
import pytest

from tests.commands.conftest import Files, Run, assert_fits_schema
from tripplan.commands.options.files import Form

SCHEMAS = get_args(Form)
DEMO = Path(__file__).resolve().parents[2] / "demo_places"


def schema(run: Run, form: str) -> dict[str, Any]:
    """What the command prints."""
    said = run("schema", form)
    assert (said.status, said.err) == (0, "")
    printed: dict[str, Any] = json.loads(said.out)
    return printed


def as_json(value: object) -> object:
    """What a TOML value looks like in JSON."""
    if isinstance(value, dict):
        return {name: as_json(inner) for name, inner in value.items()}
    if isinstance(value, list):
        return [as_json(inner) for inner in value]
    return value.isoformat() if isinstance(value, date | time) else value


@pytest.mark.parametrize("form", SCHEMAS)
def test_every_schema_is_a_schema(run: Run, form: str) -> None:
    """It says which draft it follows, and follows it."""
    printed = schema(run, form)
    assert printed["$schema"] == "https://json-schema.org/draft/2020-12/schema"
    jsonschema.Draft202012Validator.check_schema(printed)


@pytest.mark.parametrize(
    ("form", "path"), [("household", DEMO / "household.toml"), ("place", DEMO / "places" / "ledgewing.toml")]
)
def test_the_demo_files_fit_their_schema(run: Run, form: str, path: Path) -> None:
    """Files that are read without a fault are valid by the printed schema too."""
    document = as_json(tomllib.loads(path.read_text(encoding="utf-8")))
    jsonschema.validate(document, schema(run, form), cls=jsonschema.Draft202012Validator)


@pytest.mark.parametrize(
    ("form", "asked"),
    [
        ("compare", ("compare", "--to", "2026-12-01")),
        ("days", ("days", "--to", "2026-12-01")),
        ("day", ("day", "test-museum", "2026-12-08")),
        ("day", ("day", "test-museum", "2026-12-07")),
    ],
)
def test_answers_fit_their_schema(run: Run, files: Files, form: str, asked: tuple[str, ...]) -> None:
    """An answer in JSON is valid by the schema that is printed for it."""
    files.add()
    assert_fits_schema(json.loads(run(*asked, "--json", *files.options).out), form)


@pytest.mark.parametrize("form", [form for form in SCHEMAS if "-" in form])
def test_answers_of_tasks_fit_their_schema(run: Run, form: str) -> None:
    """What a task tells of the demo in JSON is valid by the schema that is called after it."""
    told = run(*form.split("-"), "--demo", "--json")
    assert (told.status, told.err) == (0, "")
    assert_fits_schema(json.loads(told.out), form)


def keys_in(schema: dict[str, Any], part: dict[str, Any], path: str = "") -> Iterator[str]:
    """The path of every key that a part of a schema describes; a list's members stand under '[]'."""
    if "$ref" in part:
        part = schema["$defs"][part["$ref"].rpartition("/")[2]]
    for choice in part.get("anyOf", ()):
        yield from keys_in(schema, choice, path)
    if "items" in part:
        yield from keys_in(schema, part["items"], f"{path}[]")
    for name, value in part.get("properties", {}).items():
        yield f"{path}.{name}"
        yield from keys_in(schema, value, f"{path}.{name}")


@pytest.mark.parametrize("form", [form for form in SCHEMAS if form not in ("place", "household", "logbook")])
def test_keys_are_only_ever_added(run: Run, form: str) -> None:
    """Every key that programs may rely on stays: `answer_keys.json` lists those of format 1."""
    known = json.loads((Path(__file__).parent / "answer_keys.json").read_text(encoding="utf-8"))
    printed = schema(run, form)
    assert set(known[form].split()) <= set(keys_in(printed, printed))
