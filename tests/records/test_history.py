"""Everything that was changed can be looked at and taken back, newest first."""

import sqlite3
from contextlib import closing
from datetime import date, datetime, timedelta
from pathlib import Path

import pytest

from tests.builders import make_household, make_place
from tests.records.conftest import fill
from tripplan.documents.family.household import Household
from tripplan.documents.places.place import Place
from tripplan.documents.places.typed_drive import TypedDrive
from tripplan.errors import RecordConflict, UnknownName
from tripplan.records.database import Database
from tripplan.records.kinds import ComparedPlaces
from tripplan.records.migrations import MIGRATIONS, migrate
from tripplan.records.opening import Which, show
from tripplan.records.store import Records


def drive(km: float) -> TypedDrive:
    """A typed drive whose distance tells its versions apart."""
    return TypedDrive(place="mill", km=km, minutes=50, typed_on=date(2026, 11, 1))


def take_back(records: Records, number: int, noon: datetime) -> None:
    """Take a change back by its number."""
    with records.change(noon) as change:
        change.take_back(number)


def test_changes_are_told_newest_first_with_before_and_after(records: Records, noon: datetime) -> None:
    """Each has its sentence, its time, and the documents it touched as they were before and after."""
    first = records.save(drive(1), noon)
    with records.change(noon + timedelta(minutes=5), "The way was measured.") as change:
        change.save(drive(2), first.revision)
        change.save(make_household())
    newest, oldest = records.past_changes(10)
    assert (newest.said, newest.saved_at) == ("The way was measured.", noon + timedelta(minutes=5))
    assert [edit.called for edit in newest.edits] == ["household", "typed drive mill"]
    assert newest.edits[0].before is None
    assert newest.edits[1].before == oldest.edits[0].after == drive(1).model_dump_json()
    assert (newest.stands, oldest.stands) == (True, False)
    assert records.past_changes(1) == (newest,)


def test_a_change_of_many_documents_is_taken_back_as_one(records: Records, noon: datetime) -> None:
    """What an import replaced, added and removed is as it was before, to the byte."""
    fill(records, [make_household(), make_place(), drive(1)])
    before = [(raw.kind, raw.key, raw.body) for raw in records.raw_documents()]
    fill(records, [make_household(name="Others"), make_place(id="elsewhere"), drive(1)])
    take_back(records, records.past_changes(1)[0].number, noon)
    assert [(raw.kind, raw.key, raw.body) for raw in records.raw_documents()] == before


def test_taking_back_a_taking_back_brings_the_change_again(records: Records, noon: datetime) -> None:
    """Back and forth as often as one likes, and further back from there."""
    records.save(drive(2), noon, records.save(drive(1), noon).revision)
    second, first = records.past_changes(2)
    for expected in (1.0, 2.0, 1.0):
        take_back(records, records.past_changes(1)[0].number, noon)
        kept = records.get(TypedDrive, "mill")
        assert kept is not None
        assert kept.value.km == expected
    stands = {change.number: change.stands for change in records.past_changes(9)}
    assert (stands[second.number], stands[first.number]) == (False, True)
    take_back(records, first.number, noon)
    assert records.get(TypedDrive, "mill") is None


def test_what_was_changed_again_since_is_not_overwritten(records: Records, noon: datetime) -> None:
    """Taking back an older change is refused as a whole where one of its documents moved on."""
    with records.change(noon) as change:
        seen = change.save(drive(1)).revision
        change.save(make_household())
    records.save(drive(2), noon, seen)
    before = records.raw_documents()
    with pytest.raises(RecordConflict, match="typed drive mill"):
        take_back(records, records.past_changes(2)[1].number, noon)
    assert records.raw_documents() == before
    with pytest.raises(UnknownName):
        take_back(records, 999, noon)


def test_a_document_saved_twice_in_one_change_goes_back_to_before_both(
    records: Records, noon: datetime
) -> None:
    """The change as a whole is what counts."""
    with records.change(noon) as change:
        change.save(drive(2), change.save(drive(1)).revision)
    (past,) = records.past_changes(5)
    assert len(past.edits) == 1
    assert past.stands
    take_back(records, past.number, noon)
    assert records.get(TypedDrive, "mill") is None


def test_choices_about_this_computer_are_no_part_of_the_history(records: Records, noon: datetime) -> None:
    """Switching between demo and own family is nothing to take back, nor is a save without a difference."""
    kept = records.save(ComparedPlaces(places=("mill",)), noon)
    show(records, Which.FAMILY, noon)
    records.save(kept.value, noon, kept.revision)
    assert [edit.kind for change in records.past_changes(9) for edit in change.edits] == ["compared_places"]


def test_a_document_can_be_read_as_of_each_revision(records: Records, noon: datetime) -> None:
    """Every state is there; where it was removed or never was, there is none."""
    first = records.save(drive(1), noon)
    second = records.save(drive(2), noon, first.revision)
    gone = records.remove(TypedDrive, "mill", noon, second.revision)
    states = [records.as_of(TypedDrive, "mill", number) for number in (first.revision, 2, gone, 9)]
    assert states == [drive(1), drive(2), None, None]


def test_a_file_from_before_changes_were_counted_keeps_its_history(tmp_path: Path, noon: datetime) -> None:
    """A file of the first tables, written by SQL alone, opens: each old state is a change to take back."""
    path = tmp_path / "family.sqlite3"
    with closing(sqlite3.connect(path)) as connection:
        for statement in MIGRATIONS[0].statements:
            connection.execute(statement)
        connection.execute("CREATE TABLE migration (name TEXT PRIMARY KEY, applied_at TEXT NOT NULL) STRICT")
        connection.execute("INSERT INTO migration VALUES ('0001-documents', '2026-11-01T12:00:00+00:00')")
        for revision in (1, 2):
            row = ("typed_drive", "mill", revision, revision, drive(revision).model_dump_json(), "2026-11-02")
            connection.execute("INSERT INTO version VALUES (?, ?, ?, ?, ?, ?)", row)
        household = make_household().model_dump_json()
        connection.execute(
            "INSERT INTO version VALUES ('household', 'only', 1, 1, ?, '2026-11-03')", (household,)
        )
        connection.execute("INSERT INTO document VALUES ('typed_drive', 'mill', 2), ('household', 'only', 1)")
        connection.commit()
    records = Records(Database(path))
    migrate(records.database, noon)
    assert records.get(Household) is not None
    assert records.all(Place) == {}
    changes = records.past_changes(9)
    assert [change.edits[0].called for change in changes] == [
        "household",
        "typed drive mill",
        "typed drive mill",
    ]
    take_back(records, changes[1].number, noon)
    kept = records.get(TypedDrive, "mill")
    assert kept is not None
    assert kept.value == drive(1)
    assert (tmp_path / "family-before-0002-changes.sqlite3").exists()
