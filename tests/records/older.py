"""Records files as earlier versions of the program left them."""

import sqlite3
from collections.abc import Iterable
from contextlib import closing
from datetime import datetime
from pathlib import Path

from tripplan.documents.model import Written
from tripplan.records.kinds import kind_of
from tripplan.records.migrations import MIGRATIONS

BEFORE_CHECKSUMS = MIGRATIONS[:2]


def write_before_checksums(path: Path, documents: Iterable[Written], at: datetime) -> None:
    """Make a records file from before rows had checksums; each document is saved in a change of its own."""
    with closing(sqlite3.connect(path)) as connection:
        connection.execute("PRAGMA journal_mode = WAL")
        connection.execute("CREATE TABLE migration (name TEXT PRIMARY KEY, applied_at TEXT NOT NULL) STRICT")
        for step in BEFORE_CHECKSUMS:
            for statement in step.statements:
                connection.execute(statement)
            connection.execute("INSERT INTO migration VALUES (?, ?)", (step.name, at.isoformat()))
        for number, document in enumerate(documents, start=1):
            kind = kind_of(type(document))
            name = (kind.name, kind.key(document))
            connection.execute("INSERT INTO change VALUES (?, 'Saved.')", (number,))
            connection.execute(
                "INSERT INTO version VALUES (?, ?, 1, 1, ?, ?, ?)",
                (*name, document.model_dump_json(), at.isoformat(), number),
            )
            connection.execute("INSERT INTO document VALUES (?, ?, 1)", name)
        connection.commit()
