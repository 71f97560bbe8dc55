"""Old files are brought up to date as a whole, newer ones are left alone."""

import sqlite3
from contextlib import closing
from datetime import datetime
from pathlib import Path

import pytest

from tests.builders import make_household, make_place
from tests.records.older import write_before_checksums
from tripplan.documents.family.household import Household
from tripplan.errors import RecordsUnusable
from tripplan.records.damage.examine import damage_in
from tripplan.records.database import Database
from tripplan.records.migrations import MIGRATIONS, Migration, migrate
from tripplan.records.opening import Which, open_records
from tripplan.records.store import Records

TOMORROW = Migration(
    "9999-colours", ("CREATE TABLE colour (name TEXT)", "INSERT INTO colour VALUES ('teal')")
)
BROKEN = Migration("9999-broken", ("CREATE TABLE colour (name TEXT)", "INSERT INTO nowhere VALUES (1)"))


def steps_taken(database: Database) -> list[str]:
    """The names recorded in the file, and 'colour' if that table is there."""
    with database.reading() as connection:
        names = [row[0] for row in connection.execute("SELECT name FROM migration ORDER BY name")]
        tables = connection.execute("SELECT name FROM sqlite_master WHERE name = 'colour'").fetchall()
    return names + [row[0] for row in tables]


def test_names_are_in_order_and_differ() -> None:
    """Steps are run in the order of their names, each of its own name."""
    names = [migration.name for migration in MIGRATIONS]
    assert names == sorted(set(names))


def test_opening_twice_changes_nothing(records: Records, noon: datetime) -> None:
    """A file that is up to date is not written to."""
    before = records.database.path.read_bytes()
    open_records(records.database.path.parent, Which.FAMILY, noon)
    assert records.database.path.read_bytes() == before


def test_an_older_file_is_copied_then_brought_up_to_date(records: Records, noon: datetime) -> None:
    """Content stays, the new table is there, and a copy from before lies beside the file."""
    records.save(make_household(), noon)
    migrate(records.database, noon, (*MIGRATIONS, TOMORROW))
    assert steps_taken(records.database) == [m.name for m in MIGRATIONS] + ["9999-colours", "colour"]
    kept = records.get(Household)
    assert kept is not None
    assert kept.value == make_household()
    copy = Database(records.database.path.with_name("family-before-9999-colours.sqlite3"))
    assert steps_taken(copy) == [m.name for m in MIGRATIONS]
    assert Records(copy).get(Household) == kept


def test_a_fresh_file_needs_no_copy(records: Records) -> None:
    """Where there was nothing, nothing is copied."""
    assert [path.name for path in records.database.path.parent.iterdir()] == ["family.sqlite3"]


def test_a_step_that_fails_half_way_leaves_the_old_file(records: Records, noon: datetime) -> None:
    """The good step before, the first statement and the record of it are all taken back."""
    records.save(make_household(), noon)
    good = Migration("9998-good", ("CREATE TABLE fine (name TEXT)",))
    with pytest.raises(RecordsUnusable, match="nowhere"):
        migrate(records.database, noon, (*MIGRATIONS, good, BROKEN))
    assert steps_taken(records.database) == [m.name for m in MIGRATIONS]
    assert records.get(Household) is not None


def test_a_first_opening_that_fails_half_way_can_be_repeated(tmp_path: Path, noon: datetime) -> None:
    """A broken first step leaves a file that the next opening makes use of."""
    database = Database(tmp_path / "family.sqlite3")
    database.create()
    with pytest.raises(RecordsUnusable):
        migrate(database, noon, (BROKEN,))
    assert open_records(tmp_path, Which.FAMILY, noon).is_fresh()


def test_a_newer_file_is_left_alone(records: Records, noon: datetime) -> None:
    """A step this program does not know means a newer program; the file stays as it is."""
    migrate(records.database, noon, (*MIGRATIONS, TOMORROW))
    before = records.database.path.read_bytes()
    with pytest.raises(RecordsUnusable, match="newer tripplan"):
        open_records(records.database.path.parent, Which.FAMILY, noon)
    assert records.database.path.read_bytes() == before


def test_every_name_was_recorded_with_the_time_given(records: Records, noon: datetime) -> None:
    """The file says when each step was taken, by the caller's clock."""
    with closing(sqlite3.connect(records.database.path)) as connection:
        rows = connection.execute("SELECT name, applied_at FROM migration").fetchall()
    assert rows == [(migration.name, noon.isoformat()) for migration in MIGRATIONS]


def test_rows_of_an_older_program_get_their_checksums(tmp_path: Path, noon: datetime) -> None:
    """A file from before there were checksums opens, says what it said, keeps its history and is whole."""
    path = tmp_path / "family.sqlite3"
    write_before_checksums(path, [make_household(), make_place()], noon)
    before = path.read_bytes()
    records = open_records(tmp_path, Which.FAMILY, noon)
    assert {raw.kind: raw.is_sound for raw in records.raw_documents()} == {"household": True, "place": True}
    kept = records.get(Household)
    assert kept is not None
    assert (kept.value, kept.revision) == (make_household(), 1)
    assert [change.said for change in records.past_changes(9)] == ["Saved.", "Saved."]
    assert damage_in(records.database) == ""
    assert (tmp_path / "family-before-0003-checksums.sqlite3").stat().st_size == len(before)
    assert records.save(make_household(name="Renamed"), noon, kept.revision).revision == 2
    assert damage_in(records.database) == ""


def test_a_damaged_name_of_a_step_is_no_newer_program(records: Records, noon: datetime) -> None:
    """One changed letter in the list of steps taken: the file opens all the same, with all that is in it."""
    records.save(make_household(), noon)
    raw = records.database.path.read_bytes()
    assert raw.count(b"0002-changes") == 2  # in the table and in its index
    records.database.path.write_bytes(raw.replace(b"0002-changes", b"8002-changes"))
    again = open_records(records.database.path.parent, Which.FAMILY, noon)
    kept = again.get(Household)
    assert kept is not None
    assert kept.value == make_household()
