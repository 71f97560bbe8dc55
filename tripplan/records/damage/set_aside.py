"""Documents that cannot be read as they stand: each named, with what is wrong, while all others open."""

import sqlite3
from dataclasses import dataclass

from tripplan.records.checksums import checksum
from tripplan.records.database import Database
from tripplan.records.kinds import MODELS, DemoShown, called, kind_of
from tripplan.records.migrations import COLUMNS
from tripplan.records.reading import read_document

LOST = "the disk has lost or changed it"
UNKNOWN = "this version of tripplan does not know this kind of record"


@dataclass(frozen=True)
class SetAside:
    """A document of which not all can be used.

    Attributes:
        kind: the name of its kind.
        key: tells it from others of its kind.
        revision: of the state that cannot be used.
        why: what is wrong with it, in words.
        is_used: whether it is used all the same, without the fields that `why` names.
    """

    kind: str
    key: str
    revision: int
    why: str
    is_used: bool = False

    @property
    def called(self) -> str:
        """How a sentence names it."""
        return called(self.kind, self.key)


class LookedThrough:
    """Looks every document of a file through, each state of one only once."""

    def __init__(self, database: Database) -> None:
        self._database = database
        self._seen: dict[tuple[str, str, int], SetAside | None] = {}

    def set_aside(self) -> tuple[SetAside, ...]:
        """What is set aside now, by kind and key.

        Raises:
            RecordsUnusable: the file cannot be read.
        """
        with self._database.reading() as connection:
            rows = connection.execute(
                "SELECT kind, key, revision FROM document WHERE kind <> ? ORDER BY kind, key",
                (kind_of(DemoShown).name,),  # without it, whether something was entered decides
            ).fetchall()
            now = {name: self._looked(connection, name) for name in map(tuple, rows)}
        self._seen = now  # as a whole, so that another thread never sees half of it
        return tuple(found for found in now.values() if found is not None)

    def _looked(self, connection: sqlite3.Connection, name: tuple[str, str, int]) -> SetAside | None:
        if name in self._seen:
            return self._seen[name]
        query = "SELECT * FROM version WHERE (kind, key, revision) = (?, ?, ?)"
        row = connection.execute(query, name).fetchone()
        if row is None or row["checksum"] != checksum(
            "version", *(row[column] for column in COLUMNS["version"])
        ):
            return SetAside(*name, LOST)
        if row["body"] is None:
            return None
        if row["kind"] not in MODELS:
            return SetAside(*name, UNKNOWN)
        read = read_document(MODELS[row["kind"]], row["body"])
        return SetAside(*name, read.why, is_used=read.value is not None) if read.why else None
