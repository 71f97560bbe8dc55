"""A bad day costs one day at most: a copy can be looked at and put back, whatever happened to the file."""

from datetime import date, datetime, timedelta
from pathlib import Path

import pytest

from tests.builders import make_household, make_place
from tests.records.conftest import fill
from tests.records.older import write_before_checksums
from tripplan.documents.family.household import Household
from tripplan.errors import RecordsDamaged, RecordsUnusable, UnknownName
from tripplan.records.copies.daily import back_up
from tripplan.records.copies.listed import copies_of, copy_of
from tripplan.records.merging.replacement import replacement
from tripplan.records.opening import Which, open_records
from tripplan.records.restoring import contents_of, earlier_state, put_back, recover
from tripplan.records.store import Records

DAY = date(2026, 11, 24)


@pytest.fixture
def copied(records: Records) -> Records:
    """Records with a copy of yesterday; since then the household was renamed and the place removed."""
    fill(records, [make_household(), make_place()])
    back_up(records.database, DAY)
    fill(records, [make_household(name="Renamed")])
    return records


def test_copies_are_listed_newest_first_and_others_files_are_not(copied: Records) -> None:
    """A file with a name of the parent's own is no copy of a day."""
    back_up(copied.database, DAY + timedelta(days=1))
    (copied.database.path.parent / "backups" / "family-2026-99-99.sqlite3").write_text("kept by hand")
    assert [copy.day for copy in copies_of(copied.database.path)] == [DAY + timedelta(days=1), DAY]
    with pytest.raises(UnknownName, match="2026-11-24"):
        copy_of(copied.database.path, date(2026, 1, 1))


def test_a_copy_is_looked_at_then_put_back_and_taken_back(copied: Records, noon: datetime) -> None:
    """Everything is as it was that day; one step of the history leads forward again."""
    copy = copy_of(copied.database.path, DAY)
    before = copy.path.read_bytes()
    change = replacement(copied, contents_of(copy, noon).documents)
    assert (change.added, change.changed, change.removed) == (("place test-museum",), ("household",), ())
    put_back(copied, copy, noon)
    kept = copied.get(Household)
    assert kept is not None
    assert kept.value == make_household()
    assert not replacement(copied, contents_of(copy, noon).documents).any
    (last,) = copied.past_changes(1)
    assert last.said == "The copy of 2026-11-24 was put back."
    with copied.change(noon) as undoing:
        undoing.take_back(last.number)
    assert {raw.kind for raw in copied.raw_documents()} == {"household"}
    assert copy.path.read_bytes() == before


@pytest.mark.parametrize("damage", [b"only words\n" * 900, b"SQLite format 3\0" + b"\xff" * 9000])
def test_a_damaged_file_is_replaced_by_a_copy_and_kept_aside(
    copied: Records, noon: datetime, damage: bytes
) -> None:
    """The records open again as they were that day, and what is left of the damaged file is still there."""
    path = copied.database.path
    for beside in path.parent.glob("family.sqlite3*"):
        beside.unlink()
    path.write_bytes(damage)
    with pytest.raises(RecordsDamaged) as caught:
        open_records(path.parent, Which.FAMILY, noon)
    assert caught.value.path == path
    aside = recover(path, copy_of(path, DAY), noon)
    assert aside.read_bytes() == damage
    kept = open_records(path.parent, Which.FAMILY, noon).get(Household)
    assert kept is not None
    assert kept.value == make_household()
    assert not list(path.parent.glob("*.partial"))


def test_a_damaged_copy_replaces_nothing(copied: Records, noon: datetime) -> None:
    """It is refused in words, for putting back and for recovering, and the records stay."""
    copy = copy_of(copied.database.path, DAY)
    copy.path.write_bytes(b"no database at all, only some words" * 100)
    before, raw = copied.raw_documents(), copied.database.path.read_bytes()
    with pytest.raises(RecordsUnusable, match="no records file"):
        put_back(copied, copy, noon)
    with pytest.raises(RecordsUnusable, match="no records file"):
        recover(copied.database.path, copy, noon)
    assert copied.raw_documents() == before
    assert copied.database.path.read_bytes() == raw


def test_a_copy_from_an_older_program_is_brought_up_to_date_aside(copied: Records, noon: datetime) -> None:
    """What the copy holds comes back, and the copy itself keeps its old tables."""
    copy = copy_of(copied.database.path, DAY)
    copy.path.unlink()
    write_before_checksums(copy.path, [make_household(), make_place()], noon)
    before = copy.path.read_bytes()
    put_back(copied, copy, noon)
    assert {raw.kind for raw in copied.raw_documents()} == {"household", "place"}
    assert copy.path.read_bytes() == before


def test_a_copy_that_cannot_be_written_back_leaves_all_as_it_is(copied: Records, noon: datetime) -> None:
    """Where the copy is gone by then, the file that is there stays."""
    copy = copy_of(copied.database.path, DAY)
    copy.path.unlink()
    with pytest.raises(RecordsUnusable):
        recover(copied.database.path, copy, noon)
    assert Path(copied.database.path).exists()
    assert copied.get(Household) is not None


def test_what_is_lost_comes_back_from_the_last_copy_that_has_it(copied: Records, noon: datetime) -> None:
    """A place with one state is damaged, and a copy is made since: the state comes from the copy before."""
    copied.save(make_place(id="mill", name="Windmill"), noon)
    back_up(copied.database, DAY + timedelta(days=1))
    path = copied.database.path
    raw = path.read_bytes()
    assert raw.count(b"Windmill") == 1
    path.write_bytes(raw.replace(b"Windmill", b"Wildmill"))
    records = open_records(path.parent, Which.FAMILY, noon)
    (aside,) = records.set_aside()
    records.save(make_place(id="other"), noon)
    back_up(records.database, DAY + timedelta(days=2))
    earlier = earlier_state(records, aside)
    assert earlier is not None
    assert earlier.value == make_place(id="mill", name="Windmill")
