"""Programs that are killed while they save, import, copy or bring a file up to date, and what is left."""

import os
import random
import signal
import time
from collections.abc import Callable
from datetime import date, timedelta
from functools import partial
from pathlib import Path

from tests.builders import make_household, make_place
from tests.records.conftest import NOON
from tests.records.older import write_before_checksums
from tripplan.documents.family.household import Household
from tripplan.documents.places.place import Place
from tripplan.documents.places.typed_drive import TypedDrive
from tripplan.records.copies.daily import back_up, sweep
from tripplan.records.copies.listed import copies_of
from tripplan.records.damage.examine import damage_in
from tripplan.records.database import Database
from tripplan.records.export import export_all, import_all
from tripplan.records.opening import Which, open_records

LONGEST_SECONDS = 0.05
"""A program lives no longer once it is at work; a save takes a few thousandths [s]."""
Report = Callable[[int], None]
"""Called with a number once what it stands for was said to be done."""

MANY = tuple(make_place(id=f"place-{number}", notes="long " * 200) for number in range(8))


def saving(folder: Path, report: Report) -> None:
    """Count up in one document."""
    records = open_records(folder, Which.FAMILY, NOON)
    report(0)
    for _ in range(10_000):
        kept = records.get(TypedDrive, "mill")
        number = 1 + (int(kept.value.km) if kept else 0)
        drive = TypedDrive(place="mill", km=number, minutes=50, typed_on=date(2026, 11, 1))
        records.save(drive, NOON, kept.revision if kept else 0)
        report(number)


def importing(folder: Path, report: Report) -> None:
    """Replace everything by one family, then by the other, again and again."""
    records = open_records(folder, Which.FAMILY, NOON)
    report(0)
    full, small = (folder / name for name in ("full.json", "small.json"))
    for number in range(10_000):
        data = (full if number % 2 else small).read_bytes()
        if import_all(records, data, "all.json", NOON):
            raise AssertionError("the file was refused")
        report(number + 1)


def copying(folder: Path, report: Report) -> None:
    """Enter something and copy, a day later each time."""
    records = open_records(folder, Which.FAMILY, NOON)
    report(0)
    for number in range(1, 10_000):
        kept = records.get(Household)
        records.save(make_household(name=f"Day {number}"), NOON, kept.revision if kept else 0)
        back_up(records.database, NOON.date() + timedelta(days=number))
        report(number)


def migrating(folder: Path, report: Report) -> None:
    """Open a file from before there were checksums."""
    report(0)
    open_records(folder, Which.FAMILY, NOON)
    report(1)


WORK = (saving, importing, copying, migrating)


def prepare(folder: Path, work: Callable[[Path, Report], None]) -> None:
    """What lies in the folder before the first program."""
    path = folder / f"{Which.FAMILY}.sqlite3"
    if work is migrating:
        for left in folder.glob("family*"):
            left.unlink()
        write_before_checksums(path, [make_household(), *MANY], NOON)
    elif not path.exists():
        records = open_records(folder, Which.FAMILY, NOON)
        records.save(make_household(), NOON)
        (folder / "small.json").write_bytes(export_all(records))
        with records.change(NOON) as change:
            change.replace_all([make_household(name="Full"), *MANY])
        (folder / "full.json").write_bytes(export_all(records))


def kill_one(folder: Path, work: Callable[[Path, Report], None], rng: random.Random) -> int:
    """Start a program, kill it soon after it began its work; the last number it reported, 0 for none."""
    reading, writing = os.pipe()
    child = os.fork()
    if child == 0:
        os.close(reading)
        try:
            work(folder, partial(_write, writing))
        finally:
            os._exit(0)
    os.close(writing)
    with os.fdopen(reading, "rb") as file:
        lines = [file.readline()]  # it is at work
        time.sleep(rng.random() * LONGEST_SECONDS)
        os.kill(child, signal.SIGKILL)
        os.waitpid(child, 0)
        lines += [line for line in file if line.endswith(b"\n")]
    return int(lines[-1])


def _write(pipe: int, number: int) -> None:
    os.write(pipe, b"%d\n" % number)


def wrong_after(folder: Path, work: Callable[[Path, Report], None], reported: int) -> str:
    """What is not as it should be after a kill; empty where all is well."""
    path = folder / f"{Which.FAMILY}.sqlite3"
    records = open_records(folder, Which.FAMILY, NOON)
    if records.made_anew or (found := damage_in(records.database)) or records.set_aside():
        return f"damaged: {records.made_anew or found}"
    kept = records.get(Household)
    if kept is None:
        return "the household is gone"
    places = len(records.all(Place))
    if work is saving:
        drive = records.get(TypedDrive, "mill")
        if reported and (drive is None or not reported <= drive.value.km <= reported + 1):
            return f"{reported} was reported, {drive} is there"
    elif work is importing and (kept.value.name == "Full") != (places == len(MANY)):
        return f"half an import: {kept.value.name} with {places} places"
    elif work is migrating and (kept.value, places) != (make_household(), len(MANY)):
        return "the older file lost something"
    for copy in copies_of(path):
        if trouble := damage_in(Database(copy.path)):
            return f"{copy.path.name}: {trouble}"
    for left_over in folder.rglob("*.partial*"):
        os.utime(left_over, (time.time() - 3600, time.time() - 3600))
    sweep(folder)
    return f"left: {left}" if (left := list(folder.rglob("*.partial*"))) else ""
