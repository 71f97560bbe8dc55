"""Copies of the records, so that a bad day costs one day at most."""

import os
import sqlite3
import tempfile
from contextlib import closing
from datetime import date
from pathlib import Path

from tripplan.errors import RecordsDamaged
from tripplan.records.database import BACKUP_FOLDER, Database, said_plainly

COPIES_KEPT = 7


def back_up(database: Database, day: date, keep: int = COPIES_KEPT) -> Path:
    """Copy the records as they were at the first start of a day, and drop the oldest copies.

    Args:
        database: the records.
        day: today; names the copy. A day that has its copy gets no second one.
        keep: how many copies stay [-], at least 1.

    Returns:
        The copy of that day.

    Raises:
        RecordsUnusable: the copy could not be written, or the records are damaged; older copies stay.
    """
    folder = database.path.parent / BACKUP_FOLDER
    stem = database.path.stem
    copy = folder / f"{stem}-{day.isoformat()}.sqlite3"
    with said_plainly(copy):
        if not copy.exists():
            folder.mkdir(mode=0o700, exist_ok=True)
            copy_database(database, copy)
        others = sorted(path for path in folder.glob(f"{stem}-????-??-??.sqlite3") if path != copy)
        for path in others[: max(0, len(others) - keep + 1)]:
            path.unlink(missing_ok=True)
    return copy


def copy_database(database: Database, target: Path) -> None:
    """Copy the records to another file, which appears whole and checked, or not at all.

    Raises:
        RecordsUnusable: the copy could not be written, or the records are damaged.
    """
    with said_plainly(target):
        handle, name = tempfile.mkstemp(dir=target.parent, suffix=".partial")  # for the user's eyes only
        os.close(handle)
        partial = Path(name)
        try:
            with database.reading() as source, closing(sqlite3.connect(partial)) as copy:
                source.backup(copy)
                verdict = copy.execute("PRAGMA quick_check(1)").fetchone()[0]
            if verdict != "ok":
                said = f"{database.path}: the file is damaged and was not copied ({verdict})"
                raise RecordsDamaged(database.path, said)
            os.replace(partial, target)
        finally:
            partial.unlink(missing_ok=True)
