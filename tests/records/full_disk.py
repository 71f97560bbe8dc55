"""A program that saves until the disk is full, for tests that run it where that comes soon.

Usage: python -m tests.records.full_disk FOLDER MOST_BYTES

The folder lies on a small disk, or MOST_BYTES is how large any file may grow (0 for no such limit). It prints
a line for each thing that was looked at, and ends with status 0 if all was as it should be.
"""

import os
import resource
import signal
import sqlite3
import sys
from contextlib import closing
from io import StringIO
from pathlib import Path

from tests.builders import make_household, make_place
from tests.records.saver import SAVED_AT
from tripplan.__main__ import main
from tripplan.documents.family.household import Household
from tripplan.documents.places.place import Place
from tripplan.errors import RecordsUnusable
from tripplan.records.opening import Which, open_records, show
from tripplan.records.store import Records

MOST_SAVES = 400
BALLAST_BYTES = 400_000
"""Freed again in the end, as a parent would who is told that the disk is full [bytes]."""


def said(*words: str, folder: Path) -> tuple[int, str]:
    """What a command answers; its status and all that it said."""
    out = StringIO()
    settings = {"TRIPPLAN_DATA": str(folder), "TRIPPLAN_TODAY": "2026-11-25", "COLUMNS": "200"}
    return main(words, environment=settings, stdout=out, stderr=out), out.getvalue()


def save_until_full(records: Records) -> tuple[list[str], str]:
    """Save one place after another; the ids that were said to be saved, and why the next was not."""
    saved: list[str] = []
    for number in range(MOST_SAVES):
        place = make_place(id=f"place-{number}", notes="long " * 3_000)
        try:
            records.save(place, SAVED_AT)
        except RecordsUnusable as trouble:
            return saved, str(trouble)
        saved.append(str(place.id))
    sys.exit("the disk was never full")


def verdict(path: Path) -> str:
    """What SQLite finds when it checks the whole file."""
    with closing(sqlite3.connect(path)) as connection:
        return str(connection.execute("PRAGMA integrity_check").fetchone()[0])


def look(what: str, *, holds: bool, told: object = "") -> None:
    """Print one thing that was looked at; end where it is not as it should be."""
    sys.stdout.write(f"{what}: {'yes' if holds else f'NO ({told})'}\n")
    if not holds:
        sys.exit(1)


def fill_up(folder: Path, most_bytes: int) -> None:
    """Fill the disk and look at everything."""
    records = open_records(folder, Which.FAMILY, SAVED_AT)
    show(records, Which.FAMILY, SAVED_AT)
    records.save(make_household(), SAVED_AT)
    said("compare", "--demo", folder=folder)  # so that the demo is there
    ballast = folder / "ballast"
    ballast.write_bytes(bytes(BALLAST_BYTES))
    if most_bytes:
        signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
        resource.setrlimit(resource.RLIMIT_FSIZE, (most_bytes, resource.RLIM_INFINITY))
    saved, trouble = save_until_full(records)
    look("saving was refused in words", holds="nothing was changed" in trouble, told=trouble)
    look("some had been saved", holds=len(saved) > 3, told=saved)
    status, told = said("compare", "place-0", folder=folder)
    look("what is on record is still planned with", holds=status == 0 and "Test museum" in told, told=told)
    export = folder / "all.json"
    status, told = said("export", str(export), folder=folder)
    look("an export is whole or not there", holds=(status == 0) == export.exists(), told=told)
    look("nothing half written is left", holds=not list(folder.rglob("*.partial")), told=os.listdir(folder))
    look("everything that was saved is there", holds=sorted(records.all(Place)) == sorted(saved))
    if most_bytes:
        resource.setrlimit(resource.RLIMIT_FSIZE, (resource.RLIM_INFINITY, resource.RLIM_INFINITY))
    export.unlink(missing_ok=True)
    ballast.unlink()
    look("the file is whole", holds=verdict(records.database.path) == "ok")
    records.save(make_place(id="afterwards"), SAVED_AT)
    kept = open_records(folder, Which.FAMILY, SAVED_AT)
    look("with space again saving goes on", holds=sorted(kept.all(Place)) == sorted([*saved, "afterwards"]))
    look("the household is as it was", holds=kept.get(Household) == records.get(Household) is not None)


if __name__ == "__main__":
    fill_up(Path(sys.argv[1]), int(sys.argv[2]))
