"""A damaged records file made anew from every row that can still be read; the damaged one is kept."""

import json
import os
from contextlib import closing
from dataclasses import dataclass, field
from datetime import datetime
from pathlib import Path
from typing import TypeGuard

from tripplan.errors import RecordsDamaged
from tripplan.records.checksums import checksum
from tripplan.records.damage.pages import Cell, Row, rows_in
from tripplan.records.database import COPIES_LIE_THERE, Database, partial_file, put_in_place, said_plainly
from tripplan.records.migrations import COLUMNS, MIGRATIONS, run_steps

Name = tuple[str, str]
"""The kind and key of a record."""
State = tuple[str, str, int, int, str | None, str, int]
"""A row of `version`, its checksum left out."""

BESIDE = ("", "-wal", "-shm")
"""What SQLite adds to a file's name for the files that it keeps for one database."""


@dataclass(frozen=True)
class MadeAnew:
    """That a damaged file was made anew.

    Attributes:
        trouble: what was wrong with it.
        aside: where the damaged file lies now.
    """

    trouble: str
    aside: Path

    def __str__(self) -> str:
        return (
            f"The records file was damaged ({self.trouble}) and was made anew from all that could be read. "
            f"The damaged file is kept: {self.aside}."
        )


@dataclass
class Found:
    """What could be read of a damaged file.

    Attributes:
        with_checksums: whether its rows have checksums; those of an older program have none.
        states: every state of a record, by kind, key and revision.
        current: the revision that each record showed, as far as it is known.
        said: the sentence of each change, by its number.
    """

    with_checksums: bool
    states: dict[tuple[str, str, int], State] = field(default_factory=dict)
    current: dict[Name, int] = field(default_factory=dict)
    said: dict[int, str] = field(default_factory=dict)

    def take(self, row: Row) -> bool:
        """Take a row in, if it is one that the records once saved; whether it was."""
        cells = row.cells[:-1] if self.with_checksums else row.cells
        if self._is("version", row, cells) and _is_state(cells):
            self.states.setdefault(cells[:3], cells)
        elif self._is("document", row, cells) and _is_document(cells):
            self.current[cells[:2]] = max(cells[2], self.current.get(cells[:2], 0))
        elif self._is("change", row, (row.rowid, *cells[1:])) and isinstance(cells[1], str):
            self.said.setdefault(row.rowid, cells[1])
        else:
            return False
        return True

    def _is(self, table: str, row: Row, cells: tuple[Cell, ...]) -> bool:
        if len(cells) != len(COLUMNS[table]):
            return False
        if not self.with_checksums:
            return row.listed
        values = [cell for cell in cells if not isinstance(cell, float)]
        return len(values) == len(cells) and checksum(table, *values) == row.cells[-1]


def _is_state(cells: tuple[Cell, ...]) -> TypeGuard[State]:
    """Whether columns hold what those of a state do; without a checksum that is all there is to go by."""
    kinds = (str, str, int, int, str | None, str, int)
    if not all(isinstance(cell, kind) for cell, kind in zip(cells, kinds, strict=True)):
        return False
    try:
        datetime.fromisoformat(str(cells[5]))
        return cells[4] is None or isinstance(json.loads(str(cells[4])), dict)
    except ValueError:
        return False


def _is_document(cells: tuple[Cell, ...]) -> TypeGuard[tuple[str, str, int]]:
    return all(isinstance(cell, kind) for cell, kind in zip(cells, (str, str, int), strict=True))


def found_in(path: Path) -> Found:
    """Every row of a damaged file that was certainly saved so."""
    with said_plainly(path):
        for with_checksums in (True, False):
            found = Found(with_checksums)
            for _ in rows_in(path, found.take):
                pass
            if found.states:
                break
    return found


def rebuild(database: Database, trouble: str, known: dict[Name, int], at: datetime) -> Path:
    """Make a damaged file anew from all that can be read of it.

    A record whose last state is lost stays listed without one, so that it is named as set aside.

    Args:
        database: the damaged file.
        trouble: what is wrong with it, for where nothing can be read.
        known: records that were there by the newest copy, with the revision they showed.
        at: now; names the damaged file.

    Returns:
        Where the damaged file lies now.

    Raises:
        RecordsDamaged: not one row can be read; nothing was changed.
        RecordsUnusable: nothing can be written; nothing was changed.
    """
    path = database.path
    with said_plainly(path):
        before = path.stat()
        found = found_in(path)
        if not found.states:
            said = f"{path}: {trouble}, and nothing in it can be read; {COPIES_LIE_THERE}"
            raise RecordsDamaged(path, said)
        with partial_file(path) as fresh:
            _write(Database(fresh), found, known, at)
            if _differs(path, before):
                return path  # another program that met the same damage was quicker
            aside = set_aside(path, at)
            put_in_place(fresh, path)
    return aside


def _differs(path: Path, before: os.stat_result) -> bool:
    now = path.stat()
    return (now.st_ino, now.st_mtime_ns, now.st_size) != (before.st_ino, before.st_mtime_ns, before.st_size)


def set_aside(path: Path, at: datetime) -> Path:
    """Rename a records file and what SQLite keeps beside it; where it lies afterwards."""
    stem = f"{path.stem}-damaged-{at:%Y-%m-%d-%H%M%S}"
    taken = {other.name for other in path.parent.glob(f"{path.stem}-damaged-*")}
    number = next(n for n in range(1, len(taken) + 2) if _numbered(stem, n) not in taken)
    aside = path.with_name(_numbered(stem, number))
    for ending in BESIDE:
        old = path.with_name(path.name + ending)
        if old.exists():
            os.replace(old, aside.with_name(aside.name + ending))
    return aside


def _numbered(stem: str, number: int) -> str:
    return f"{stem}.sqlite3" if number == 1 else f"{stem}-{number}.sqlite3"


def _write(database: Database, found: Found, known: dict[Name, int], at: datetime) -> None:
    last: dict[Name, int] = dict(known)
    for kind, key, revision in found.states:
        last[kind, key] = max(revision, last.get((kind, key), 0))
    for name, revision in found.current.items():
        last[name] = max(revision, last.get(name, 0))
    changes = {state[6]: found.said.get(state[6], "") for state in found.states.values()}
    with closing(database.connect()) as connection:
        connection.execute("PRAGMA journal_mode = WAL")
        connection.execute("BEGIN IMMEDIATE")
        run_steps(connection, MIGRATIONS, at)
        connection.executemany(
            "INSERT INTO change VALUES (?, ?, row_checksum('change', ?, ?))",
            (change * 2 for change in sorted(changes.items())),
        )
        connection.executemany(
            "INSERT INTO version VALUES (?, ?, ?, ?, ?, ?, ?, row_checksum('version', ?, ?, ?, ?, ?, ?, ?))",
            (found.states[name] * 2 for name in sorted(found.states)),
        )
        connection.executemany(
            "INSERT INTO document VALUES (?, ?, ?, row_checksum('document', ?, ?, ?))",
            ((*name, revision) * 2 for name, revision in sorted(last.items())),
        )
        connection.execute("COMMIT")


def damaged_files(path: Path) -> tuple[Path, ...]:
    """The damaged files that are kept beside a records file, oldest first."""
    return tuple(sorted(path.parent.glob(f"{path.stem}-damaged-*.sqlite3")))


def remove_damaged_files(path: Path) -> None:
    """Remove them for good.

    Raises:
        RecordsUnusable: one cannot be removed.
    """
    with said_plainly(path):
        for file in damaged_files(path):
            for ending in BESIDE:
                file.with_name(file.name + ending).unlink(missing_ok=True)
