"""The written description of the files is true and up to date."""

import re
import runpy
import sys
from datetime import date
from pathlib import Path

import pytest

from tests.builders import make_place
from tripplan.files.cards.format_guide import example_card, format_guide
from tripplan.files.cards.household_file import household_schema
from tripplan.files.cards.place_card import place_card_schema, read_place_card

FORMAT = Path(__file__).resolve().parents[3] / "demo_places" / "FORMAT.md"
TODAY = date(2026, 11, 25)


def test_the_committed_description_is_up_to_date() -> None:
    """If this fails: python -m tripplan.files.cards.format_guide demo_places/FORMAT.md."""
    assert FORMAT.read_text(encoding="utf-8") == format_guide()


def test_every_field_of_every_group_is_described() -> None:
    """Each field of the two forms has a line of its own with a meaning."""
    lines = re.findall(r"^\| `(\w+)` \| (.+?) \| (.+?) \| (.+?) \| (.+) \|$", format_guide(), re.MULTILINE)
    assert all(cell.strip() for line in lines for cell in line)
    described = {name for name, *_ in lines}
    for schema in (place_card_schema(), household_schema()):
        groups = [schema, *(group for group in schema["$defs"].values() if "properties" in group)]
        assert {field for group in groups for field in group["properties"]} <= described


def test_the_example_card_is_right() -> None:
    """The card that the description shows can be read without a finding."""
    assert example_card() in format_guide()
    assert read_place_card(example_card(), "example-mill.toml", TODAY).findings == ()


def test_the_opening_hours_of_the_description_are_right() -> None:
    """Every rule in the table of opening hours is accepted on a card."""
    section = format_guide().split("**Opening hours**")[1].split("After a `;`")[0]
    rules = re.findall(r"^\| `(.+?)` \|", section, re.MULTILINE)
    assert len(rules) >= 5
    for rule in rules:
        assert make_place(opening={"hours": rule}).opening.hours == rule


def test_the_ages_of_the_description_are_right() -> None:
    """Every form of an age band that is named is accepted on a card."""
    section = format_guide().split("**Ages**")[1].split("**Opening hours**")[0]
    bands = re.findall(r'`"(.+?)"`', section)
    assert len(bands) >= 5
    for band in bands:
        make_place(offers=[{"name": "Adult", "price": 1, "ages": band}])


def test_the_command_writes_the_description(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Run as a program with a path, it writes the description there."""
    path = tmp_path / "FORMAT.md"
    monkeypatch.setattr(sys, "argv", ["format_guide", str(path)])
    monkeypatch.delitem(sys.modules, "tripplan.files.cards.format_guide")
    runpy.run_module("tripplan.files.cards.format_guide", run_name="__main__")
    assert path.read_bytes().decode("utf-8") == format_guide()
