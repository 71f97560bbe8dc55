"""Killed programs, several at once, full, locked, damaged and read-only files: no saved record is lost."""

import multiprocessing
import os
import sqlite3
import subprocess
import sys
import time
from concurrent.futures import ThreadPoolExecutor
from contextlib import closing
from datetime import date, datetime
from pathlib import Path
from types import ModuleType

import pytest

from tests.builders import make_household, make_place
from tests.records.saver import begin_in_step
from tests.sealed import Sealed, sealed
from tripplan.documents.family.household import Household
from tripplan.documents.places.place import Place
from tripplan.documents.places.typed_drive import TypedDrive
from tripplan.errors import RecordConflict, RecordsUnusable
from tripplan.records.database import Database
from tripplan.records.export import export_all
from tripplan.records.opening import Which, open_records
from tripplan.records.store import Records

ROOT = Path(__file__).resolve().parents[2]


def start_saver(folder: Path, count: int) -> subprocess.Popen[str]:
    """Another process that counts up in the records and prints each number once it is saved."""
    command = [sys.executable, "-m", "tests.records.saver", str(folder), str(count)]
    return subprocess.Popen(command, cwd=ROOT, stdout=subprocess.PIPE, text=True)


def number_on_record(folder: Path, noon: datetime) -> int:
    """How far the records were counted up."""
    kept = open_records(folder, Which.FAMILY, noon).get(TypedDrive, "mill")
    return int(kept.value.km) if kept else 0


def verdict(path: Path) -> str:
    """What SQLite finds when it checks the whole file; 'ok' if nothing is wrong."""
    with closing(sqlite3.connect(path)) as connection:
        problems = connection.execute("PRAGMA integrity_check").fetchall()
        problems += connection.execute("PRAGMA foreign_key_check").fetchall()
    return "; ".join(str(row[0]) for row in problems)


def test_two_programs_that_save_at_once_lose_nothing(tmp_path: Path, noon: datetime) -> None:
    """Two processes, both also making the file, count up 200 times each: the count is 400."""
    savers = [start_saver(tmp_path, 200) for _ in range(2)]
    printed = [saver.communicate(timeout=60)[0].split() for saver in savers]
    assert [saver.returncode for saver in savers] == [0, 0]
    assert sorted(int(number) for numbers in printed for number in numbers) == list(range(1, 401))
    assert number_on_record(tmp_path, noon) == 400
    assert verdict(tmp_path / "family.sqlite3") == "ok"


def test_a_killed_program_loses_nothing_it_said_was_saved(tmp_path: Path, noon: datetime) -> None:
    """Killed four times within 310 saves: each time all it reported is there and the file is whole."""
    for stop_after in (1, 60, 99, 150):
        saver = start_saver(tmp_path, 10_000)
        with saver:
            assert saver.stdout is not None
            reported = [int(saver.stdout.readline()) for _ in range(stop_after)]
            time.sleep(stop_after % 7 / 1000)  # so that it is met at different steps of a save
            saver.kill()
            reported += [int(line) for line in saver.stdout if line.endswith("\n")]
        saved = number_on_record(tmp_path, noon)
        assert reported[-1] <= saved <= reported[-1] + 1  # one may be saved and not yet reported
        assert verdict(tmp_path / "family.sqlite3") == "ok"


class SmallDisk(Database):
    """A file that cannot grow, as on a full disk."""

    def connect(self) -> sqlite3.Connection:
        """A connection with no page to spare; SQLite answers SQLITE_FULL as it does on a full disk."""
        connection = super().connect()
        connection.execute("PRAGMA max_page_count = 1")  # never below what the file has
        return connection


def test_on_a_full_disk_the_old_content_stays(records: Records, noon: datetime) -> None:
    """A change too large for the disk is refused in words, wholly; with space again it goes through."""
    kept = records.save(make_household(), noon)
    before = records.raw_documents()
    full = Records(SmallDisk(records.database.path))

    def change(on: Records) -> None:
        with on.change(noon) as change:
            change.save(make_household(name="Changed"), kept.revision)
            for number in range(20):
                change.save(make_place(id=f"place-{number}", notes="long " * 500))

    with pytest.raises(RecordsUnusable, match="disk is full, so nothing was changed") as caught:
        change(full)
    assert isinstance(caught.value.__cause__, sqlite3.OperationalError)
    assert full.raw_documents() == records.raw_documents() == before
    assert verdict(records.database.path) == "ok"
    change(records)
    assert len(records.all(Place)) == 20


def test_a_locked_file_is_said_plainly(records: Records, noon: datetime) -> None:
    """While another program writes, reading goes on and saving gives up in words after its patience."""
    records.save(make_household(), noon)
    hasty = Records(Database(records.database.path, patience=0.05))
    with records.change(noon) as change:
        change.save(make_place())
        assert hasty.all(Place) == {}
        with pytest.raises(RecordsUnusable, match="another program is using the file"):
            hasty.save(make_place(id="other"), noon)
    assert list(records.all(Place)) == ["test-museum"]


@pytest.mark.parametrize("content", [b"only some words\n" * 400, b"SQLite format 3\0" + b"\xff" * 8000])
def test_a_damaged_file_is_said_plainly_and_left_alone(
    tmp_path: Path, noon: datetime, content: bytes
) -> None:
    """A file that is no database is not opened, not repaired and not emptied."""
    path = tmp_path / "family.sqlite3"
    path.write_bytes(content)
    with pytest.raises(RecordsUnusable, match=r"family\.sqlite3.*backups"):
        open_records(tmp_path, Which.FAMILY, noon)
    assert path.read_bytes() == content


@pytest.mark.parametrize("what", ["files", "folder"])
def test_write_protected_records_are_read_and_say_so(
    reachable_folder: Path, noon: datetime, what: Sealed
) -> None:
    """File or folder: what is there is opened, read and exported; saving fails in words; nothing changes."""
    records = open_records(reachable_folder, Which.FAMILY, noon)
    records.save(make_household(), noon)
    before = records.database.path.read_bytes()
    with sealed(reachable_folder, what):
        again = open_records(reachable_folder, Which.FAMILY, noon)
        assert again.get(Household) == records.get(Household) is not None
        exported = export_all(again)
        with pytest.raises(RecordsUnusable, match="write-protected"):
            again.save(make_place(), noon)
        assert export_all(again) == exported
        assert list(again.all(Household)) == ["only"]
    assert records.database.path.read_bytes() == before
    records.save(make_place(), noon)
    assert list(records.all(Place)) == ["test-museum"]


def test_somebody_at_work_in_a_write_protected_folder_is_read_to_the_last(
    reachable_folder: Path, noon: datetime
) -> None:
    """What another program has saved and not yet moved into the file itself is seen too."""
    records = open_records(reachable_folder, Which.FAMILY, noon)
    with closing(records.database.connect()) as other:
        other.execute("SELECT * FROM document").fetchall()  # it keeps the write-ahead log from being cleared
        records.save(make_household(), noon)
        assert records.database.path.with_name("family.sqlite3-wal").stat().st_size > 0
        with sealed(reachable_folder, "folder"):
            assert records.get(Household) is not None


LIMITED = f"{sys.executable} -m tests.records.full_disk"


def looked_at(done: "subprocess.CompletedProcess[str]") -> list[str]:
    """What `full_disk` has looked at, each with yes or no."""
    return [line.partition(": ")[2] for line in done.stdout.splitlines()]


def test_where_no_file_may_grow_nothing_is_lost(tmp_path: Path) -> None:
    """The operating system refuses to write on (RLIMIT_FSIZE): refused in words, all else goes on."""
    if os.name != "posix":
        pytest.skip("this limit is one of POSIX systems; the page limit above stands in for it")
    command = [*LIMITED.split(), str(tmp_path), "1200000"]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, timeout=60)
    assert looked_at(done) == ["yes"] * 9, done.stdout + done.stderr


def test_on_a_disk_that_is_really_full_nothing_is_lost(tmp_path: Path) -> None:
    """A disk of 3 MB is filled to the last byte; where none may be mounted, the tests above stand for it."""
    mount = f"mount -t tmpfs -o size=3m tmpfs '{tmp_path}'"
    unshare = ["unshare", "--map-root-user", "--mount", "sh", "-c"]
    try:
        subprocess.run([*unshare, mount], check=True, capture_output=True)
    except (OSError, subprocess.CalledProcessError) as error:
        pytest.skip(f"this system lets nobody mount a disk of their own: {error}")
    command = [*unshare, f"{mount} && {LIMITED} '{tmp_path}' 0"]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, timeout=60)
    assert looked_at(done) == ["yes"] * 9, done.stdout + done.stderr


def test_programs_may_begin_at_the_same_moment(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Three processes that make the same records, 30 times in step, all succeed, in write-ahead mode."""
    # Screen tests leave the app as the main module, which a new process would run before anything else.
    monkeypatch.setitem(sys.modules, "__main__", ModuleType("__main__"))
    folders = [tmp_path / str(number) for number in range(30)]
    context = multiprocessing.get_context("spawn")
    step = context.Barrier(3, timeout=30)
    programs = [context.Process(target=begin_in_step, args=(folders, step)) for _ in range(3)]
    for program in programs:
        program.start()
    for program in programs:
        program.join(timeout=60)
    assert [program.exitcode for program in programs] == [0, 0, 0]
    for folder in folders:
        with closing(sqlite3.connect(folder / "family.sqlite3")) as connection:
            assert connection.execute("PRAGMA journal_mode").fetchone() == ("wal",)


def test_fifty_sessions_share_one_records_object(records: Records, noon: datetime) -> None:
    """Fifty threads that save a document each through the same object all find theirs afterwards."""

    def save(number: int) -> None:
        records.save(TypedDrive(place=f"p{number}", km=1, minutes=1, typed_on=date(2026, 11, 1)), noon)

    with ThreadPoolExecutor(50) as pool:
        list(pool.map(save, range(50)))
    assert len(records.all(TypedDrive)) == 50


def test_of_many_windows_exactly_one_wins(records: Records, noon: datetime) -> None:
    """Of twenty windows that save from the same revision at once, one succeeds and the others are told."""
    seen = records.save(make_household(), noon).revision

    def save(number: int) -> str | None:
        name = f"Window {number}"
        try:
            records.save(make_household(name=name), noon, seen)
        except RecordConflict:
            return None
        return name

    with ThreadPoolExecutor(20) as pool:
        winners = [name for name in pool.map(save, range(20)) if name]
    kept = records.get(Household)
    assert kept is not None
    assert winners == [kept.value.name]
