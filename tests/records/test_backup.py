"""A copy a day, whole and checked, the newest few kept."""

import os
import stat
import time
from datetime import date, datetime, timedelta
from pathlib import Path

import pytest

from tests.builders import make_household, make_place
from tests.records.conftest import NOON
from tripplan.documents.family.household import Household
from tripplan.errors import RecordsUnusable
from tripplan.records.copies.daily import COPIES_KEPT, back_up, copy_database, sweep
from tripplan.records.copies.listed import copies_of
from tripplan.records.database import Database
from tripplan.records.opening import Which, open_records
from tripplan.records.restoring import lost
from tripplan.records.store import Records

DAY = date(2026, 11, 25)


def enter(records: Records, count: int) -> None:
    """Enter one more place than before, so that today differs from yesterday."""
    records.save(make_place(id=f"place-{count}"), NOON)


def copied(records: Records, day: date) -> Path:
    """The copy of a day, which there is."""
    path = back_up(records.database, day)
    assert path is not None
    return path


def days_kept(records: Records) -> list[date]:
    """The days of the copies, the last one made first."""
    return [copy.day for copy in copies_of(records.database.path)]


def test_a_copy_is_a_whole_records_file(records: Records, noon: datetime) -> None:
    """The copy holds the same documents, named by its day and counted."""
    records.save(make_household(), noon)
    copy = copied(records, DAY)
    assert copy == records.database.path.parent / "backups" / "family-2026-11-25-0001.sqlite3"
    assert Records(Database(copy)).raw_documents() == records.raw_documents()


def test_where_nothing_was_entered_there_is_nothing_to_copy(records: Records) -> None:
    """No copy, and no folder for it."""
    assert back_up(records.database, DAY) is None
    assert not (records.database.path.parent / "backups").exists()


def test_the_first_start_of_a_day_counts(records: Records, noon: datetime) -> None:
    """A second start on the same day keeps the copy from before that day's changes."""
    enter(records, 1)
    copy = copied(records, DAY)
    records.save(make_household(), noon)
    assert copied(records, DAY) == copy
    assert Records(Database(copy)).get(Household) is None


def test_a_day_without_a_change_needs_no_copy(records: Records) -> None:
    """The copy of the day before says the same, and no older copy has to go for another one like it."""
    enter(records, 1)
    copy = copied(records, DAY)
    assert copied(records, DAY + timedelta(days=1)) == copy
    assert days_kept(records) == [DAY]


def test_the_last_copies_stay_and_weekly_ones_besides(records: Records) -> None:
    """After a hundred days the last seven and eight of every seventh; a file of her own is not touched."""
    folder = records.database.path.parent / "backups"
    folder.mkdir()
    (folder / "family-before-the-move.sqlite3").write_text("kept by hand")
    for number in range(1, 101):
        enter(records, number)
        copied(records, DAY + timedelta(days=number))
    numbers = [copy.number for copy in copies_of(records.database.path)]
    assert numbers == sorted({*range(94, 101), *range(49, 99, 7)}, reverse=True)
    assert (folder / "family-before-the-move.sqlite3").exists()


@pytest.mark.parametrize("starts", [7, 49])
def test_no_start_with_an_emptier_file_costs_a_full_copy(
    records: Records, tmp_path: Path, starts: int
) -> None:
    """The file vanishes after seven days of use; however often she starts anew, all seven copies stay."""
    for number in range(7):
        enter(records, number)
        copied(records, DAY + timedelta(days=number))
    good = copies_of(records.database.path)
    assert [copy.holds() for copy in good] == [7, 6, 5, 4, 3, 2, 1]
    records.database.path.unlink()
    for number in range(starts):
        anew = open_records(tmp_path / "data", Which.FAMILY, NOON)
        assert (lost(anew) is not None) == (number == 0)
        kept = anew.get(Household)
        anew.save(make_household(name=f"Anew {number}"), NOON, kept.revision if kept else 0)
        back_up(anew.database, DAY + timedelta(days=30 + number))
    assert set(good) - {good[-1]} <= set(copies_of(records.database.path))  # the last of them held one record
    assert good[0].holds() == 7


def test_a_clock_that_is_wrong_costs_no_copy(records: Records) -> None:
    """Ten days in 2036, then the clock is right again: each state has its copy, and the last seven stay."""
    enter(records, 1)
    copied(records, DAY)
    for number in range(10):
        enter(records, 10 + number)
        copied(records, date(2036, 1, 1) + timedelta(days=number))
    enter(records, 2)
    back = copied(records, DAY + timedelta(days=1))
    first, *others = copies_of(records.database.path)
    assert (first.path, first.day, first.holds()) == (back, DAY + timedelta(days=1), 12)
    assert len(others) >= COPIES_KEPT - 1
    assert others[0].day == date(2036, 1, 10)


def test_copies_from_before_they_were_counted_are_kept_as_well(records: Records) -> None:
    """A copy named by its day alone is older than any counted one, and goes as the others do."""
    enter(records, 1)
    copied(records, DAY)
    folder = records.database.path.parent / "backups"
    (folder / "family-2026-11-25-0001.sqlite3").rename(folder / "family-2036-11-25.sqlite3")
    for number in range(2, 10):
        enter(records, number)
        copied(records, DAY + timedelta(days=number))
        assert (date(2036, 11, 25) in days_kept(records)) == (number < 8)


def test_what_a_killed_program_left_is_swept_away(records: Records) -> None:
    """Half-written files older than a minute go, by whichever clock they were written; a fresh one stays."""
    enter(records, 1)
    folder = copied(records, DAY).parent
    old, future, fresh = (folder / f"tmp{name}.partial" for name in ("old", "future", "fresh"))
    beside = records.database.path.parent / "tmpold.partial-journal"
    for left in (old, future, fresh, beside):
        left.write_bytes(b"half")
    for left, shift in ((old, -3600), (beside, -3600), (future, 10 * 365 * 86_400)):
        os.utime(left, (time.time() + shift, time.time() + shift))
    sweep(records.database.path.parent)
    assert [left.exists() for left in (old, future, beside, fresh)] == [False, False, False, True]
    assert days_kept(records) == [DAY]


def test_a_copy_is_on_the_disk_before_it_has_its_name(
    records: Records, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The file is synced, then renamed, then its folder: a power cut leaves a whole file or none."""
    enter(records, 1)
    steps: list[str] = []
    monkeypatch.setattr("os.fsync", lambda handle: steps.append("folder" if is_folder(handle) else "file"))
    rename = os.replace

    def renamed(one: Path, other: Path) -> None:
        steps.append("rename")
        rename(one, other)

    monkeypatch.setattr("os.replace", renamed)
    copied(records, DAY)
    assert steps == ["file", "rename", *(["folder"] if os.name == "posix" else [])]


def is_folder(handle: int) -> bool:
    """Whether a descriptor is a folder's."""
    return stat.S_ISDIR(os.fstat(handle).st_mode)


def test_a_damaged_file_is_not_copied_over_good_copies(records: Records, noon: datetime) -> None:
    """Damage is named, the good copies stay, and no half-made file is left behind."""
    for number in range(40):
        records.save(make_household(name=f"Household {number}"), noon, number)
    good = copied(records, DAY)
    raw = bytearray(records.database.path.read_bytes())
    raw[4096:-4096] = bytes(len(raw) - 8192)
    records.database.path.write_bytes(raw)
    with pytest.raises(RecordsUnusable, match="damaged"):
        back_up(records.database, DAY + timedelta(days=1))
    assert [path.name for path in good.parent.iterdir()] == [good.name]


def test_a_folder_that_cannot_be_written_is_said_plainly(records: Records) -> None:
    """Where a file stands in the way of the backup folder, the error is ours."""
    enter(records, 1)
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
