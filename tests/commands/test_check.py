"""`tripplan check`: every fault in place cards and household files."""

import json
from pathlib import Path

import pytest

from tests.commands.conftest import Files, Run, assert_fits_schema

DEMO = Path(__file__).resolve().parents[2] / "demo_places"
BROKEN = """\
id = "broken"
name = "Broken"
currency = "USD"
colour = "red"
[where]
town = "Peoria"
country = "US"
subdivision = "IL"
[opening]
hours = "Tu-Su 10:00-17:00"
[[offers]]
name = "Adult"
price = -3
ages = "any"
[prices_read]
on = 2026-11-02
source = "tests"
"""


def test_the_demo_files_have_no_fault(run: Run) -> None:
    """Household and place cards are told apart by what stands in them."""
    said = run("check", DEMO / "household.toml", DEMO / "places")
    assert (said.status, said.err) == (0, "")
    assert said.out.count(": place card, nothing wrong") == len(list((DEMO / "places").glob("*.toml")))
    assert said.out.count(": household file, nothing wrong") == 1


def test_a_folder_is_checked_for_what_it_holds(run: Run) -> None:
    """A file that has no field of a card or a household is passed over with a warning, which is no fault."""
    said = run("check", DEMO, "--json")
    assert said.status == 0
    assert [Path(one["file"]).name for one in json.loads(said.out)["files"]] == ["household.toml"]
    assert said.err.startswith("warning: demo.toml: ")


def unwrapped(text: str) -> str:
    """Text on one line; where it was broken depends on how long the path of a file is."""
    return " ".join(text.split())


def test_every_fault_is_told_at_once(run: Run, tmp_path: Path) -> None:
    """An unknown field and a negative price are both named, with field and value."""
    card = tmp_path / "broken.toml"
    card.write_text(BROKEN, encoding="utf-8")
    said = run("check", card)
    assert said.status == 2
    assert "place card, 2 faults" in unwrapped(said.out)
    assert "fault: colour: " in said.out
    assert "fault: offers[0].price: " in said.out
    assert "(found: -3)" in said.out


def test_warnings_alone_are_no_fault(run: Run, files: Files) -> None:
    """Prices of last year are worth a warning; the card can still be used."""
    place = files.add(prices_read={"on": "2025-01-05", "source": "tests"})
    said = run("check", files.places / f"{place.id}.toml", COLUMNS="200")
    assert said.status == 0
    assert "place card, 1 warning" in said.out
    assert "more than a year ago" in said.out


def test_two_cards_with_one_id_are_a_fault(run: Run, files: Files) -> None:
    """What a card is called by must be its own among the cards that are checked."""
    place = files.add()
    twin = files.places / "twin.toml"
    twin.write_bytes((files.places / f"{place.id}.toml").read_bytes())
    said = run("check", files.places)
    assert said.status == 2
    assert "test-museum.toml has the same id" in said.out


def test_json_tells_the_same(run: Run, tmp_path: Path, files: Files) -> None:
    """One entry a file, with kind, findings and whether it can be used."""
    card = tmp_path / "broken.toml"
    card.write_text(BROKEN, encoding="utf-8")
    said = run("check", card, files.household, "--json")
    told = json.loads(said.out)
    assert said.status == 2
    assert_fits_schema(told, "check")
    assert [(one["kind"], one["usable"]) for one in told["files"]] == [("place", False), ("household", True)]
    assert {finding["field"] for finding in told["files"][0]["findings"]} == {"colour", "offers[0].price"}


def test_every_file_can_be_taken_for_a_household(run: Run, tmp_path: Path) -> None:
    """`--household` leaves nothing to guess where a file holds too little to tell."""
    file = tmp_path / "family.toml"
    file.write_text('name = "We"\n', encoding="utf-8")
    assert "household file, " in unwrapped(run("check", file, "--household").out)
    assert "place card, " in unwrapped(run("check", file).out)


@pytest.mark.parametrize(
    ("name", "content"),
    [
        ("broken.toml", b"name = \n[[offers"),
        ("latin.toml", "name = 'Caf\xe9'".encode("latin-1")),
        ("empty.toml", b""),
        ("picture.toml", b"\x89PNG\r\n\x1a\n\x00\x00"),
        ("large.toml", b"x" * 20_000_000),
        ("longname.toml", b"a" * 200_000 + b" = 1\n"),
    ],
)
def test_what_is_no_card_is_refused_with_a_reason(
    run: Run, tmp_path: Path, name: str, content: bytes
) -> None:
    """Whatever stands in a file, the answer is a finding and the status 2."""
    path = tmp_path / name
    path.write_bytes(content)
    said = run("check", path)
    assert (said.status, said.err) == (2, "")
    assert "fault" in said.out
    assert len(said.out) < 5_000


def test_a_file_that_is_not_there_is_told(run: Run, tmp_path: Path) -> None:
    """A missing file is a fault of that file; an empty folder is told beside the answer."""
    (tmp_path / "empty").mkdir()
    said = run("check", tmp_path / "missing.toml", tmp_path / "empty")
    assert said.status == 2
    assert "cannot be opened" in said.out
    assert "holds no .toml file" in said.err
