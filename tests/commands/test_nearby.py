"""`tripplan nearby`: places to go near home, out of a map file."""

import json
from pathlib import Path

import pytest

from tests.commands.conftest import Run, assert_fits_schema
from tests.nearby.map_writer import write_map


@pytest.fixture
def extract(tmp_path: Path) -> Path:
    """A map around the demo's home in Dubuque, Iowa, with three invented places."""
    return write_map(
        tmp_path / "here.osm.pbf",
        nodes={
            1: (42.51, -90.67, {"tourism": "museum", "name": "Mill Museum", "fee": "no"}),
            2: (42.80, -90.67, {"tourism": "zoo", "name": "Fern Zoo", "charge": "8 USD"}),
            3: (42.52, -90.67, {"amenity": "library", "name": "Old Library"}),
        },
    )


def test_places_are_listed_nearest_first_with_the_attribution(run: Run, extract: Path) -> None:
    """Each with its drive, and at the end whom the data are owed to."""
    said = run("nearby", extract, "--demo")
    assert said.status == 0
    assert [said.out.index(name) for name in ("Mill Museum", "Old Library", "Fern Zoo")] == sorted(
        said.out.index(name) for name in ("Mill Museum", "Old Library", "Fern Zoo")
    )
    assert "OpenStreetMap contributors" in said.out


def test_the_answer_in_json_fits_its_schema(run: Run, extract: Path) -> None:
    """With kinds, drives and charges."""
    said = run("nearby", extract, "--demo", "--kind", "zoo", "museum", "--json")
    answer = json.loads(said.out)
    assert_fits_schema(answer, "nearby")
    assert [(p["name"], p["kind"], p["charge"]) for p in answer["places"]] == [
        ("Mill Museum", "museum", ""),
        ("Fern Zoo", "zoo", "8 USD"),
    ]


def test_an_unknown_kind_is_refused_with_those_there_are(run: Run, extract: Path) -> None:
    """A misspelled kind is bad input, and the kinds are named."""
    said = run("nearby", extract, "--demo", "--kind", "musuem")
    assert said.status == 2
    assert "museum" in said.err


def test_no_place_within_reach_is_a_no(run: Run, extract: Path) -> None:
    """The exit status says so."""
    assert run("nearby", extract, "--demo", "--kind", "aquarium").status == 1


def test_what_is_no_map_is_refused_by_name(run: Run, tmp_path: Path) -> None:
    """A text file is named."""
    (tmp_path / "no.osm.pbf").write_text("no map", encoding="utf-8")
    said = run("nearby", tmp_path / "no.osm.pbf", "--demo")
    assert said.status == 2
    assert "no.osm.pbf" in said.err
