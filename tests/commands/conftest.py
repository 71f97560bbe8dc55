"""A command line with a data folder of its own for each test."""

import io
import json
import shutil
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import UTC, date, datetime
from pathlib import Path
from typing import Any, Protocol

import jsonschema  # type: ignore[import-untyped]
import pytest

from tests.builders import make_household, make_place
from tripplan.__main__ import main
from tripplan.documents.family.household import Household
from tripplan.documents.model import Written
from tripplan.documents.places.place import Place
from tripplan.documents.places.typed_drive import TypedDrive
from tripplan.files.cards.household_file import write_household
from tripplan.files.cards.place_card import write_place_card
from tripplan.records.opening import Which, open_records, show
from tripplan.records.store import Records

TODAY = date(2026, 11, 25)
NOON = datetime(2026, 11, 25, 12, tzinfo=UTC)


@dataclass(frozen=True)
class Said:
    """What a command answered."""

    status: int
    out: str
    err: str


class Run(Protocol):
    """Carries out one command."""

    def __call__(self, *argv: str | Path, **environment: str) -> Said: ...


@pytest.fixture
def data(tmp_path: Path, first_start: Path) -> Path:
    """Where the records of this test lie, as after a first start."""
    return shutil.copytree(first_start, tmp_path / "data")


@pytest.fixture
def run(data: Path) -> Run:
    """The command line on November 25, 2026, on a terminal of 100 characters."""
    usual = {"TRIPPLAN_DATA": str(data), "TRIPPLAN_TODAY": TODAY.isoformat(), "COLUMNS": "100"}

    def carry_out(*argv: str | Path, **environment: str) -> Said:
        out, err = io.StringIO(), io.StringIO()
        settings: Mapping[str, str] = {**usual, **environment}
        status = main([str(word) for word in argv], environment=settings, stdout=out, stderr=err)
        return Said(status, out.getvalue(), err.getvalue())

    return carry_out


def assert_fits_schema(answer: object, name: str) -> None:
    """An answer in JSON is what the printed schema of that name says."""
    out = io.StringIO()
    assert main(["schema", name], environment={}, stdout=out) == 0
    jsonschema.validate(answer, json.loads(out.getvalue()), cls=jsonschema.Draft202012Validator)


@dataclass(frozen=True)
class Files:
    """A household and place cards in files."""

    folder: Path

    @property
    def household(self) -> Path:
        return self.folder / "household.toml"

    @property
    def places(self) -> Path:
        return self.folder / "places"

    @property
    def options(self) -> tuple[str, ...]:
        """The options that name them; with both, no records are opened."""
        return ("--household", str(self.household), "--places", str(self.places))

    def add(self, **changes: Any) -> Place:
        """One more place card."""
        place = make_place(**changes)
        (self.places / f"{place.id}.toml").write_text(write_place_card(place), encoding="utf-8")
        return place


@pytest.fixture
def files(tmp_path: Path) -> Files:
    """The test household in a file, and a folder without place cards yet."""
    made = Files(tmp_path / "files")
    made.places.mkdir(parents=True)
    made.household.write_text(write_household(make_household()), encoding="utf-8")
    return made


@pytest.fixture
def own_records(data: Path) -> Records:
    """The family's own records, in use: two adults who know the drive of half an hour to one museum."""
    records = open_records(data, Which.FAMILY, NOON)
    household: Household = make_household(
        members=[{"name": "Ann", "born": "1988-05-20"}, {"name": "Bo", "born": "1986-11-02"}],
        worth={"full_house": "0"},
    )
    documents: tuple[Written, ...] = (
        household,
        make_place(),
        TypedDrive(place="test-museum", km=64, minutes=30, typed_on=TODAY),
    )
    with records.change(NOON) as change:
        change.replace_all(documents)
    show(records, Which.FAMILY, NOON)
    return records
