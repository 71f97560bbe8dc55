"""Copies of the records, so that a bad day costs one day at most, and a bad month not everything."""

import sqlite3
import time
from collections.abc import Sequence
from contextlib import closing
from datetime import date
from pathlib import Path

from tripplan.errors import RecordsDamaged, RecordsUnusable
from tripplan.records.copies.listed import DayCopy, copies_of, records_in
from tripplan.records.database import BACKUP_FOLDER, Database, partial_file, put_in_place, said_plainly

COPIES_KEPT = 7
"""The last copies stay [-]."""
WEEKLY, WEEKLY_KEPT = 7, 8
"""Of the copies before them every seventh stays, eight of those [-]."""
_ABANDONED_SECONDS = 60.0
"""Nobody writes one copy for that long [s]."""
_STATE = """
    SELECT (SELECT count(*) FROM document), (SELECT count(*) FROM version), (SELECT max(number) FROM change),
        (SELECT checksum FROM version ORDER BY change DESC, kind, key LIMIT 1)"""
"""Differs between any two states of the records."""


def back_up(database: Database, day: date) -> Path | None:
    """Copy the records at the first use of a day, and drop copies that later ones make needless.

    Copies count by the order in which they were made, never by the clock. One is dropped only where seven
    later ones hold at least as many records, so that no number of starts with an empty file costs a full
    copy; of these, every seventh stays besides.

    Args:
        database: the records.
        day: today; a day that has its copy gets no second one, nor does a state that has one already.

    Returns:
        The last copy; None where nothing was ever entered, so that there is nothing to copy.

    Raises:
        RecordsUnusable: the copy could not be written, or the records are damaged; older copies stay.
    """
    path = database.path
    copies = copies_of(path)
    if copies and (copies[0].day == day or _state_of(database) == _state_of(Database(copies[0].path))):
        return copies[0].path
    if not records_in(database):
        return copies[0].path if copies else None
    number = copies[0].number + 1 if copies else 1
    folder = path.parent / BACKUP_FOLDER
    copy = DayCopy(day, folder / f"{path.stem}-{day.isoformat()}-{number:04}.sqlite3", number)
    with said_plainly(copy.path):
        folder.mkdir(mode=0o700, exist_ok=True)
        copy_database(database, copy.path)
        for needless in _needless((copy, *copies)):
            needless.path.unlink(missing_ok=True)
    return copy.path


def _state_of(database: Database) -> tuple[object, ...]:
    try:
        with database.reading() as connection:
            return tuple(connection.execute(_STATE).fetchone())
    except RecordsUnusable:
        return (database.path,)  # equal to nothing else


def _needless(copies: Sequence[DayCopy]) -> list[DayCopy]:
    """Those that may go, of all copies, the last one made first."""
    weekly = [copy for copy in copies if copy.number and copy.number % WEEKLY == 0][:WEEKLY_KEPT]
    holds = [copy.holds() for copy in copies]
    return [
        copy
        for at, copy in enumerate(copies)
        if copy not in weekly and sum(later >= holds[at] for later in holds[:at]) >= COPIES_KEPT
    ]


def copy_database(database: Database, target: Path) -> None:
    """Copy the records to another file, which appears whole and checked, or not at all.

    Raises:
        RecordsUnusable: the copy could not be written, or the records are damaged.
    """
    with said_plainly(target), partial_file(target) as partial:
        with database.reading() as source, closing(sqlite3.connect(partial)) as copy:
            source.backup(copy)
            verdict = copy.execute("PRAGMA quick_check(1)").fetchone()[0]
        if verdict != "ok":
            said = f"{database.path}: the file is damaged and was not copied ({verdict})"
            raise RecordsDamaged(database.path, said)
        put_in_place(partial, target)


def sweep(folder: Path) -> None:
    """Remove what programs that were killed have left half written among the records and their copies.

    Args:
        folder: of the records. What was written to within the last minute may be another program's at work.
    """
    now = time.time()
    for place in (folder, folder / BACKUP_FOLDER):
        for partial in place.glob("tmp*.partial*"):
            try:
                if abs(now - partial.stat().st_mtime) > _ABANDONED_SECONDS:
                    partial.unlink()
            except OSError:
                continue  # another program was quicker, or nothing may be removed here: both do no harm
