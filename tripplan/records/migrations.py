"""How the records file came to have the tables it has: named steps, each taken once."""

import sqlite3
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

from tripplan.errors import RecordsDamaged, RecordsUnusable
from tripplan.records.copies.daily import copy_database
from tripplan.records.database import Database


@dataclass(frozen=True)
class Migration:
    """One step from one set of tables to the next.

    Attributes:
        name: recorded in the file once the step is taken; never changes.
        statements: SQL, run in order.
    """

    name: str
    statements: tuple[str, ...]


COLUMNS = {
    "migration": ("name", "applied_at"),
    "change": ("number", "said"),
    "version": ("kind", "key", "revision", "content_of", "body", "saved_at", "change"),
    "document": ("kind", "key", "revision"),
}
"""The columns of each table, in order; the last one is the `checksum` of these."""


def summed(table: str) -> str:
    """SQL for the checksum that a row of a table should have."""
    return f"row_checksum('{table}', {', '.join(COLUMNS[table])})"


MIGRATIONS = (
    Migration(
        "0001-documents",
        (
            # Every state a document ever had. `body` is JSON, NULL once removed; `content_of` is the
            # revision the content was first saved as, which differs from `revision` after an undo.
            """
            CREATE TABLE version (
                kind TEXT NOT NULL,
                key TEXT NOT NULL,
                revision INTEGER NOT NULL CHECK (revision > 0),
                content_of INTEGER NOT NULL CHECK (content_of BETWEEN 0 AND revision),
                body TEXT,
                saved_at TEXT NOT NULL,
                PRIMARY KEY (kind, key, revision)
            ) STRICT
            """,
            # Which state counts.
            """
            CREATE TABLE document (
                kind TEXT NOT NULL,
                key TEXT NOT NULL,
                revision INTEGER NOT NULL,
                PRIMARY KEY (kind, key),
                FOREIGN KEY (kind, key, revision) REFERENCES version
            ) STRICT
            """,
        ),
    ),
    Migration(
        "0002-changes",
        (
            # What was saved together, in order, and the sentence that told of it.
            "CREATE TABLE change (number INTEGER PRIMARY KEY, said TEXT NOT NULL) STRICT",
            "ALTER TABLE version ADD COLUMN change INTEGER REFERENCES change",
            # Of older states it is not known what was saved together: each is a change of its own.
            "INSERT INTO change SELECT rowid, '' FROM version ORDER BY rowid",
            "UPDATE version SET change = rowid",
            "CREATE INDEX version_by_change ON version (change)",
        ),
    ),
    Migration(
        "0003-checksums",
        (
            # What `checksums.checksum` says of a row; of rows written before this step, as they were then.
            *(f"ALTER TABLE {table} ADD COLUMN checksum INTEGER" for table in COLUMNS),
            *(f"UPDATE {table} SET checksum = {summed(table)}" for table in COLUMNS),
        ),
    ),
)


def migrate(database: Database, applied_at: datetime, migrations: Sequence[Migration] = MIGRATIONS) -> None:
    """Bring a file up to date: all missing steps and the record of them in one transaction.

    A file that already had tables is first copied to a file beside it.

    Args:
        database: the file; it must exist, but may be empty.
        applied_at: what to record as the time of the steps; zone-aware.
        migrations: every step this program knows, oldest first.

    Raises:
        RecordsUnusable: a newer program has been at the file, or it cannot be written.
    """
    with database.reading() as connection:
        if not _missing(connection, database, migrations):
            return
    with database.writing() as connection:
        missing = _missing(connection, database, migrations)
        if missing and len(missing) < len(migrations):
            name = f"{database.path.stem}-before-{missing[0].name}.sqlite3"
            copy_database(database, database.path.with_name(name))
        run_steps(connection, missing, applied_at)


def run_steps(connection: sqlite3.Connection, steps: Sequence[Migration], applied_at: datetime) -> None:
    """Take steps and record them.

    Args:
        connection: within a transaction; it knows `row_checksum`.
        steps: which, in order.
        applied_at: what to record as the time of the steps; zone-aware.
    """
    connection.execute(
        "CREATE TABLE IF NOT EXISTS migration (name TEXT PRIMARY KEY, applied_at TEXT NOT NULL) STRICT"
    )
    for step in steps:
        for statement in step.statements:
            connection.execute(statement)
        connection.execute(
            "INSERT INTO migration (name, applied_at) VALUES (?, ?)", (step.name, applied_at.isoformat())
        )
    if has_checksums(connection):
        connection.execute(f"UPDATE migration SET checksum = {summed('migration')} WHERE checksum IS NULL")


def has_checksums(connection: sqlite3.Connection) -> bool:
    """Whether the step was taken that gave every row its checksum."""
    return any(column["name"] == "checksum" for column in connection.execute("PRAGMA table_info(version)"))


def _missing(
    connection: sqlite3.Connection, database: Database, migrations: Sequence[Migration]
) -> tuple[Migration, ...]:
    if connection.execute("SELECT 1 FROM sqlite_master WHERE name = 'migration'").fetchone() is None:
        return tuple(migrations)
    taken = {row["name"] for row in connection.execute("SELECT name FROM migration")}
    unknown = taken - {migration.name for migration in migrations}
    if any(name > migrations[-1].name for name in unknown):
        raise RecordsUnusable(
            f"{database.path}: a newer tripplan has used these records; update tripplan to open them"
        )
    if unknown:
        said = f"{database.path}: the file is damaged: nobody ever took the step {min(unknown)!r}"
        raise RecordsDamaged(database.path, said)
    return tuple(migration for migration in migrations if migration.name not in taken)
