"""Whether a records file is as it was written: its head, its pages, its tables, and every row."""

import sqlite3
from collections.abc import Iterator
from contextlib import closing
from datetime import UTC, datetime
from functools import cache

from tripplan.errors import RecordsUnusable
from tripplan.records.checksums import checksum
from tripplan.records.database import Database
from tripplan.records.migrations import COLUMNS, MIGRATIONS, has_checksums, run_steps, summed

_MAGIC = b"SQLite format 3\0"
_USUAL = (b"\0\x40\x20\x20", b"\0\0\0\x04", b"\0\0\0\x01")
"""Bytes 20 to 23, 44 to 47 and 56 to 59: fixed fractions, format of the schema, UTF-8."""
_EMPTY = (_USUAL[0], bytes(4), bytes(4))
"""The same before there is a table."""
_SURROUNDINGS = {
    sqlite3.SQLITE_BUSY,
    sqlite3.SQLITE_CANTOPEN,
    sqlite3.SQLITE_FULL,
    sqlite3.SQLITE_LOCKED,
    sqlite3.SQLITE_NOMEM,
    sqlite3.SQLITE_PERM,
    sqlite3.SQLITE_READONLY,
}
"""Troubles that come from around the file: nothing is wrong with what is in it."""
_CROSS_CHECKS = {
    "a state belongs to no record": """
        SELECT 1 FROM version LEFT JOIN document USING (kind, key) WHERE document.kind IS NULL""",
    "a record does not show its last state": """
        SELECT 1 FROM document JOIN version USING (kind, key) WHERE version.revision > document.revision""",
    "a change is missing": """
        SELECT 1 FROM version LEFT JOIN change ON change.number = version.change
        WHERE change.number IS NULL""",
}


def damage_in(database: Database) -> str:
    """What is wrong with a file, in words; empty where all of it is as it was written.

    A file that an older program wrote has no checksums: of it only the pages are looked at.

    Raises:
        RecordsUnusable: the file cannot be opened for a reason that lies outside of it.
    """
    try:
        head = database.path.read_bytes()[:100] if database.path.stat().st_size < 100 else _head(database)
        if not head:
            return ""  # a new file, in which nothing was written yet
        return _wrong_head(head) or next(_wrong(database), "")
    except RecordsUnusable as trouble:
        if not is_damage(trouble):
            raise
        return "it cannot be read as a database"
    except OSError as trouble:
        raise RecordsUnusable(f"{database.path}: {trouble.strerror or trouble}") from trouble


def is_damage(trouble: RecordsUnusable) -> bool:
    """Whether a trouble comes from what is in the file, and not from the disk or another program."""
    cause = trouble.__cause__
    code = getattr(cause, "sqlite_errorcode", 0)
    if code == sqlite3.SQLITE_IOERR_SHORT_READ:
        return True
    return isinstance(cause, sqlite3.Error) and code & 0xFF not in {*_SURROUNDINGS, sqlite3.SQLITE_IOERR}


def _head(database: Database) -> bytes:
    with database.path.open("rb") as file:
        return file.read(100)


def _wrong_head(head: bytes) -> str:
    """What SQLite would stumble over later or not at all (Database File Format, section 1.3)."""
    ways = head[18:20]
    layout = head[20:24], head[44:48], head[56:60]
    if head[:16] != _MAGIC:
        return "it is no records file"
    if ways not in (b"\x01\x01", b"\x02\x02") or layout not in (_USUAL, _EMPTY):
        return "its head is not what this program wrote"
    return ""


def _wrong(database: Database) -> Iterator[str]:
    with database.reading() as connection:
        verdict = connection.execute("PRAGMA integrity_check(1)").fetchone()[0]
        if verdict != "ok":
            yield f"SQLite finds {verdict}"
        if not has_checksums(connection):
            return
        taken = {row["name"] for row in connection.execute("SELECT name FROM migration")}
        known = {migration.name for migration in MIGRATIONS}
        for table in COLUMNS:
            if connection.execute(f"SELECT 1 FROM {table} WHERE checksum IS NOT {summed(table)}").fetchone():
                yield f"something in it is not what was saved (in '{table}')"
        if taken - known:
            return  # a newer program has been at it, and knows better
        if taken == known and _schema(connection) != _expected():
            yield "its tables are not those that this program made"
        for said, query in _CROSS_CHECKS.items():
            if connection.execute(query).fetchone():
                yield said


def _schema(connection: sqlite3.Connection) -> dict[str, str]:
    rows = connection.execute("SELECT name, sql FROM sqlite_master WHERE sql IS NOT NULL")
    return {row[0]: row[1] for row in rows}


@cache
def _expected() -> dict[str, str]:
    with closing(sqlite3.connect(":memory:")) as connection:
        connection.row_factory = sqlite3.Row
        connection.create_function("row_checksum", -1, checksum, deterministic=True)
        run_steps(connection, MIGRATIONS, datetime.fromtimestamp(0, UTC))
        return _schema(connection)
