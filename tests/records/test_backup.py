"""A copy a day, whole and checked, the newest few kept."""

from datetime import date, datetime, timedelta
from pathlib import Path

import pytest

from tests.builders import make_household
from tripplan.documents.family.household import Household
from tripplan.errors import RecordsUnusable
from tripplan.records.copies.daily import COPIES_KEPT, back_up, copy_database
from tripplan.records.database import Database
from tripplan.records.store import Records

DAY = date(2026, 11, 25)


def test_a_copy_is_a_whole_records_file(records: Records, noon: datetime) -> None:
    """The copy holds the same documents, for the family's eyes only, named by its day."""
    records.save(make_household(), noon)
    copy = back_up(records.database, DAY)
    assert copy == records.database.path.parent / "backups" / "family-2026-11-25.sqlite3"
    assert Records(Database(copy)).raw_documents() == records.raw_documents()


def test_the_first_start_of_a_day_counts(records: Records, noon: datetime) -> None:
    """A second start on the same day keeps the copy from before that day's changes."""
    copy = back_up(records.database, DAY)
    records.save(make_household(), noon)
    assert back_up(records.database, DAY) == copy
    assert Records(Database(copy)).get(Household) is None


def test_the_newest_copies_are_kept_and_nothing_else_is_touched(records: Records) -> None:
    """After ten days there are the last seven copies, and a file of the parent's own is still there."""
    folder = records.database.path.parent / "backups"
    folder.mkdir()
    (folder / "family-before-the-move.sqlite3").write_text("kept by hand")
    days = [DAY + timedelta(days=number) for number in range(10)]
    for day in days:
        back_up(records.database, day)
    expected = {f"family-{day}.sqlite3" for day in days[-COPIES_KEPT:]} | {"family-before-the-move.sqlite3"}
    assert {path.name for path in folder.iterdir()} == expected


def test_a_clock_set_back_does_not_cost_todays_copy(records: Records) -> None:
    """With copies of later days there already, today's is kept and counts as one of the seven."""
    for number in range(1, 9):
        back_up(records.database, DAY + timedelta(days=number))
    today = back_up(records.database, DAY)
    assert today.exists()
    assert len(list(today.parent.iterdir())) == COPIES_KEPT


def test_a_damaged_file_is_not_copied_over_good_copies(records: Records, noon: datetime) -> None:
    """Damage is named, the good copies stay, and no half-made file is left behind."""
    for number in range(40):
        records.save(make_household(name=f"Household {number}"), noon, number)
    good = back_up(records.database, DAY)
    raw = bytearray(records.database.path.read_bytes())
    raw[4096:-4096] = bytes(len(raw) - 8192)
    records.database.path.write_bytes(raw)
    with pytest.raises(RecordsUnusable, match="damaged"):
        back_up(records.database, DAY + timedelta(days=1))
    assert [path.name for path in good.parent.iterdir()] == [good.name]


def test_a_folder_that_cannot_be_written_is_said_plainly(records: Records) -> None:
    """Where a file stands in the way of the backup folder, the error is ours."""
    (records.database.path.parent / "backups").write_text("in the way")
    with pytest.raises(RecordsUnusable, match="backups"):
        back_up(records.database, DAY)


def test_a_copy_that_fails_leaves_the_target_as_it_was(records: Records, tmp_path: Path) -> None:
    """The target is replaced at the end or not at all."""
    target = tmp_path / "copy.sqlite3"
    target.write_text("older copy")
    records.database.path.write_bytes(b"no database at all, only some words" * 100)
    with pytest.raises(RecordsUnusable, match="no records file"):
        copy_database(records.database, target)
    assert target.read_text() == "older copy"
    assert not list(tmp_path.glob("*.partial"))
