"""The family's records: documents that are saved, removed and brought back, never overwritten unseen."""

import sqlite3
from collections.abc import Callable, Iterable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, replace
from datetime import UTC, datetime
from typing import Generic, TypeVar

from tripplan.documents.model import Written
from tripplan.errors import RecordConflict, UnknownName
from tripplan.records.checksums import checksum
from tripplan.records.damage.rebuild import MadeAnew
from tripplan.records.damage.set_aside import LookedThrough, SetAside
from tripplan.records.database import Database
from tripplan.records.history import PastChange, edits_in, latest_changes
from tripplan.records.kinds import MODELS, ONLY, STAYS_HERE, kind_of
from tripplan.records.migrations import COLUMNS
from tripplan.records.reading import read_document

T = TypeVar("T", bound=Written)

Retold = Callable[[Written, Written, datetime], Written]
"""How an earlier state of a document reads once it is put back: from that state, the last one, and now."""

_CURRENT = """
    SELECT kind, key, revision, content_of, body, saved_at, change, version.checksum
    FROM document LEFT JOIN version USING (kind, key, revision)"""
"""Each document in the state that counts; without a body where it is removed, or where that state is lost."""
_LAST = "SELECT * FROM version WHERE kind = ? AND key = ? AND body IS NOT NULL ORDER BY revision DESC LIMIT 1"
_REMOVED = f"{_CURRENT} WHERE kind = ? AND body IS NULL ORDER BY key"
_NEW_VERSION = """
    INSERT INTO version VALUES (?, ?, ?, ?, ?, ?, ?,
        row_checksum('version', ?, ?, ?, ?, ?, ?, ?))"""
_NEW_DOCUMENT = """
    INSERT INTO document VALUES (?, ?, ?, row_checksum('document', ?, ?, ?))
    ON CONFLICT DO UPDATE SET revision = excluded.revision, checksum = excluded.checksum"""


@dataclass(frozen=True)
class StoredDocument(Generic[T]):
    """A document as it is on record.

    Attributes:
        value: the document.
        revision: counts its changes; hand it back on the next save, so that nothing is overwritten unseen.
        saved_at: when it was saved [UTC].
    """

    value: T
    revision: int
    saved_at: datetime


@dataclass(frozen=True)
class RawDocument:
    """A document as it stands in the file, unread.

    Attributes:
        kind: the name of its kind.
        key: tells it from others of its kind.
        revision: counts its changes.
        body: JSON text.
        is_sound: whether that is what was saved; not where the disk has changed it since.
    """

    kind: str
    key: str
    revision: int
    body: str
    is_sound: bool = True


def is_sound(row: sqlite3.Row) -> bool:
    """Whether a state is what was saved, and not something that the disk made of it."""
    return bool(row["checksum"] == checksum("version", *row[: len(COLUMNS["version"])]))


def _kept(model: type[T], row: sqlite3.Row) -> StoredDocument[T] | None:
    """What a row holds; None where it cannot be read."""
    value = read_document(model, row["body"]).value if is_sound(row) else None
    return (
        None
        if value is None
        else StoredDocument(value, row["revision"], datetime.fromisoformat(row["saved_at"]))
    )


def _same(kept: StoredDocument[T] | None, row: sqlite3.Row) -> StoredDocument[T] | None:
    """What was made of a row before, if it is still that row."""
    if kept is None or (kept.revision, kept.saved_at.isoformat()) != (row["revision"], row["saved_at"]):
        return None
    return kept


def _get(connection: sqlite3.Connection, model: type[T], key: str) -> StoredDocument[T] | None:
    query = f"{_CURRENT} WHERE kind = ? AND key = ? AND body IS NOT NULL"
    row = connection.execute(query, (kind_of(model).name, key)).fetchone()
    return None if row is None else _kept(model, row)


def _raw_documents(connection: sqlite3.Connection) -> tuple[RawDocument, ...]:
    rows = connection.execute(f"{_CURRENT} WHERE body IS NOT NULL ORDER BY kind, key").fetchall()
    return tuple(
        RawDocument(row["kind"], row["key"], row["revision"], row["body"], is_sound=is_sound(row))
        for row in rows
        if row["kind"] not in STAYS_HERE
    )


def _readable(found: Iterable[tuple[str, StoredDocument[T] | None]]) -> dict[str, StoredDocument[T]]:
    return {key: kept for key, kept in found if kept is not None}


class Change:
    """Several saves that happen together or not at all; made by `Records.change`."""

    def __init__(self, connection: sqlite3.Connection, saved_at: datetime, said: str = "") -> None:
        self._connection = connection
        self._saved_at = saved_at
        self._said = said
        self._number: int | None = None

    @property
    def number(self) -> int | None:
        """What `take_back` and the history call this change; None while nothing is different."""
        return self._number

    def get(self, model: type[T], key: str = ONLY) -> StoredDocument[T] | None:
        """One document as this change sees it, or None."""
        return _get(self._connection, model, key)

    def last(self, model: type[T], key: str) -> T | None:
        """One document as it was last, even where it is removed; None where there is none to be read."""
        row = self._connection.execute(_LAST, (kind_of(model).name, key)).fetchone()
        kept = None if row is None else _kept(model, row)
        return None if kept is None else kept.value

    def save(self, value: T, expected: int = 0) -> StoredDocument[T]:
        """Save a document; one that says what is on record already adds no revision.

        Args:
            value: the document.
            expected: the revision the change was made from; 0 for a document that is new, or that cannot be
                read any more.

        Raises:
            RecordConflict: there is another revision by now.
            pydantic.ValidationError: the document was changed past its own rules and could not be read again.
        """
        kind = kind_of(type(value))
        key, body = kind.key(value), value.model_dump_json()
        value = type(value).model_validate_json(body)
        current = self._row(kind.name, key)
        there = current if current is not None and current["body"] is not None else None
        if there is not None and not expected and _kept(type(value), there) is None:
            there = None  # what cannot be read stands in nobody's way
        if expected != (there["revision"] if there else 0):
            raise RecordConflict(kind.called(key))
        if there is not None and there["body"] == body and is_sound(there):
            return StoredDocument(value, there["revision"], datetime.fromisoformat(there["saved_at"]))
        return StoredDocument(value, self._append(kind.name, key, current, body), self._saved_at)

    def remove(self, model: type[Written], key: str, expected: int) -> int:
        """Remove a document; `undo` brings it back.

        Args:
            model: its type.
            key: its key.
            expected: its revision, as last seen.

        Returns:
            The revision to hand to `undo`.

        Raises:
            RecordConflict: there is another revision by now, or the document is gone.
        """
        kind = kind_of(model)
        current = self._row(kind.name, key)
        if current is None or current["body"] is None or current["revision"] != expected:
            raise RecordConflict(kind.called(key))
        return self._append(kind.name, key, current, None)

    def undo(self, model: type[T], key: str, expected: int) -> StoredDocument[T] | None:
        """Take back the last change of a document; once more takes back the one before it.

        Args:
            model: its type.
            key: its key.
            expected: its revision, as last seen or as `remove` answered.

        Returns:
            The document as it was before; None where it was not there before.

        Raises:
            RecordConflict: there is another revision by now.
            UnknownName: no change is left to take back.
        """
        kind = kind_of(model)
        current = self._row(kind.name, key)
        if current is not None and current["revision"] != expected:
            raise RecordConflict(kind.called(key))
        if current is None or not current["content_of"]:
            raise UnknownName("change to undo in", kind.called(key))
        before = self._connection.execute(
            "SELECT content_of, body FROM version WHERE kind = ? AND key = ? AND revision = ?",
            (kind.name, key, current["content_of"] - 1),
        ).fetchone()
        if before is None and current["content_of"] > 1:
            raise UnknownName("change to undo in", kind.called(key))  # what was before it is lost
        content_of, body = before or (0, None)
        self._append(kind.name, key, current, body, content_of)
        return _get(self._connection, model, key)

    def replace_all(
        self, values: Iterable[Written], retold: Retold | None = None, unread: Iterable[RawDocument] = ()
    ) -> None:
        """Make these the only documents on record, apart from choices about this computer.

        Whatever was on record stays in the history.

        Args:
            values: documents, no two of the same kind and key.
            retold: how one reads that comes after another state of it; to the letter as it is where left out.
            unread: documents that this version cannot read; they go in as they are.

        Raises:
            ValueError: two are of the same kind and key.
        """
        documents, raws = tuple(values), tuple(unread)
        wanted = {(kind_of(type(value)).name, kind_of(type(value)).key(value)) for value in documents}
        wanted |= {(raw.kind, raw.key) for raw in raws}
        if len(wanted) < len(documents) + len(raws):
            raise ValueError("two documents of the same kind share a key")
        rows = self._connection.execute(f"{_CURRENT} ORDER BY kind, key").fetchall()
        there = {(row["kind"], row["key"]): row for row in rows if row["kind"] not in STAYS_HERE}
        for name in there.keys() - wanted:
            if there[name]["body"] is not None or there[name]["checksum"] is None:
                self._append(*name, there[name], None)
        for value in documents:
            kind = kind_of(type(value))
            key = kind.key(value)
            last = self.last(type(value), key) if retold is not None else None
            after = value if last is None or retold is None else retold(value, last, self._saved_at)
            body = after.model_dump_json()
            type(value).model_validate_json(body)  # what could not be read again is not saved
            self.put(kind.name, key, body)
        for raw in raws:
            self.put(raw.kind, raw.key, raw.body)

    def put(self, kind: str, key: str, body: str) -> None:
        """Make a text what is on record under a kind and key, unread and whatever was there."""
        current = self._row(kind, key)
        if current is None or current["body"] != body or not is_sound(current):
            self._append(kind, key, current, body)

    def let_go(self, kind: str, key: str) -> None:
        """Take a document off the records that cannot be read; what is left of it stays in the history.

        Args:
            kind: the name of its kind.
            key: its key.

        Raises:
            UnknownName: there is no such document.
        """
        current = self._row(kind, key)
        if current is None:
            raise UnknownName("record", key)
        self._append(kind, key, current, None)

    def take_back(self, number: int, retold: Retold | None = None) -> None:
        """Put every document of a change back to what it was before it; that is a change of its own.

        Args:
            number: of the change, as `Change.number` or the history told it.
            retold: how an earlier state reads now; to the letter as it was where left out.

        Raises:
            RecordConflict: a document was changed again since.
            UnknownName: there is no such change.
        """
        past = edits_in(self._connection, [number])
        if not past:
            raise UnknownName("change", str(number))
        for edit in past[number].edits:
            if not edit.stands:
                raise RecordConflict(edit.called)
            current = self._row(edit.kind, edit.key)
            body = edit.before
            if retold is not None and body is not None:
                body = self._read_anew(edit.kind, edit.key, body, retold)
            self._append(edit.kind, edit.key, current, body, edit.before_content_of)

    def _read_anew(self, kind: str, key: str, body: str, retold: Retold) -> str:
        model = MODELS.get(kind)
        if model is None:
            return body  # of another version of the program; it goes back unread
        earlier, last = read_document(model, body).value, self.last(model, key)
        if earlier is None or last is None:
            return body
        return retold(earlier, last, self._saved_at).model_dump_json()

    def _row(self, kind: str, key: str) -> sqlite3.Row | None:
        rows = self._connection.execute(f"{_CURRENT} WHERE kind = ? AND key = ?", (kind, key))
        row: sqlite3.Row | None = rows.fetchone()
        return row

    def _append(
        self, kind: str, key: str, before: sqlite3.Row | None, body: str | None, content_of: int | None = None
    ) -> int:
        revision: int = before["revision"] + 1 if before else 1
        if self._number is None:
            self._number = self._next_number()
        version = (
            kind,
            key,
            revision,
            revision if content_of is None else content_of,
            body,
            self._saved_at.isoformat(),
            self._number,
        )
        self._connection.execute(_NEW_VERSION, version * 2)
        self._connection.execute(_NEW_DOCUMENT, (kind, key, revision) * 2)
        return revision

    def _next_number(self) -> int:
        last: int = self._connection.execute("SELECT coalesce(max(number), 0) FROM change").fetchone()[0]
        self._connection.execute(
            "INSERT INTO change VALUES (?, ?, row_checksum('change', ?, ?))", (last + 1, self._said) * 2
        )
        return last + 1


class Records:
    """The records of one family (or of the invented one); holds no connection, so sessions may share it.

    Every method raises `RecordsUnusable` where the file cannot be opened, read or, for changes, written.

    Attributes:
        database: the file behind it.
        made_anew: what was wrong with the file when it was opened; None where nothing was.
    """

    def __init__(self, database: Database, made_anew: MadeAnew | None = None) -> None:
        self.database = database
        self.made_anew = made_anew
        self._looked_through = LookedThrough(database)

    def set_aside(self) -> tuple[SetAside, ...]:
        """Every document of which not all can be read; all others are as they were saved."""
        return self._looked_through.set_aside()

    def all(
        self, model: type[T], known: Mapping[str, StoredDocument[T]] | None = None
    ) -> dict[str, StoredDocument[T]]:
        """Every document of a type by its key, in order of the keys.

        Args:
            model: the type.
            known: what an earlier call answered; only what has changed since is made anew, which saves nine
                tenths of the time.
        """
        query = f"{_CURRENT} WHERE kind = ? AND body IS NOT NULL ORDER BY key"
        with self.database.reading() as connection:
            rows = connection.execute(query, (kind_of(model).name,)).fetchall()
        before = known or {}
        return _readable(
            (row["key"], _same(before.get(row["key"]), row) or _kept(model, row)) for row in rows
        )

    def removed(self, model: type[T]) -> dict[str, StoredDocument[T]]:
        """Every document of a type that is on record no more, as it was last, by its key.

        Their revision is 0: what is handed back to save such a document anew.
        """
        name = kind_of(model).name
        with self.database.reading() as connection:
            keys = [row["key"] for row in connection.execute(_REMOVED, (name,))]
            rows = [connection.execute(_LAST, (name, key)).fetchone() for key in keys]
        found = _readable((row["key"], _kept(model, row)) for row in rows if row is not None)
        return {key: replace(kept, revision=0) for key, kept in found.items()}

    def newest(self, model: type[T], most: int) -> dict[str, StoredDocument[T]]:
        """The documents of a type with the last keys, in order of the keys; for keys that begin with a day.

        Args:
            model: the type.
            most: how many at most [-].
        """
        query = f"{_CURRENT} WHERE kind = ? AND body IS NOT NULL ORDER BY key DESC LIMIT ?"
        with self.database.reading() as connection:
            rows = connection.execute(query, (kind_of(model).name, most)).fetchall()
        return _readable((row["key"], _kept(model, row)) for row in reversed(rows))

    def get(self, model: type[T], key: str = ONLY) -> StoredDocument[T] | None:
        """One document, or None; the key may be left out for a type of which there is one."""
        with self.database.reading() as connection:
            return _get(connection, model, key)

    def as_of(self, model: type[T], key: str, revision: int) -> T | None:
        """A document as it was at one of its revisions; None where none can be read."""
        query = "SELECT * FROM version WHERE kind = ? AND key = ? AND revision = ? AND body IS NOT NULL"
        with self.database.reading() as connection:
            row = connection.execute(query, (kind_of(model).name, key, revision)).fetchone()
        kept = None if row is None else _kept(model, row)
        return None if kept is None else kept.value

    def past_changes(self, most: int) -> tuple[PastChange, ...]:
        """What was changed, the newest first; choices about this computer are left out.

        Args:
            most: how many changes at most [-].
        """
        with self.database.reading() as connection:
            return latest_changes(connection, most)

    @contextmanager
    def change(self, saved_at: datetime, said: str = "") -> Iterator[Change]:
        """Several changes that happen together, at the end of the block, or not at all.

        Args:
            saved_at: what to record as the time of the change; zone-aware.
            said: a sentence for the history, such as 'Tern Landing is removed.'

        Raises:
            ValueError: `saved_at` has no zone.
        """
        if saved_at.tzinfo is None:
            raise ValueError("the time of a change needs a time zone")
        with self.database.writing() as connection:
            yield Change(connection, saved_at.astimezone(UTC), said)

    def save(self, value: T, saved_at: datetime, expected: int = 0) -> StoredDocument[T]:
        """Save one document; as `Change.save`."""
        with self.change(saved_at) as change:
            return change.save(value, expected)

    def remove(self, model: type[Written], key: str, saved_at: datetime, expected: int) -> int:
        """Remove one document; as `Change.remove`."""
        with self.change(saved_at) as change:
            return change.remove(model, key, expected)

    def undo(self, model: type[T], key: str, saved_at: datetime, expected: int) -> StoredDocument[T] | None:
        """Take back the last change of one document; as `Change.undo`."""
        with self.change(saved_at) as change:
            return change.undo(model, key, expected)

    def is_fresh(self) -> bool:
        """Whether nothing was entered yet, choices about this computer apart."""
        with self.database.reading() as connection:
            rows = connection.execute(
                f"SELECT DISTINCT kind FROM ({_CURRENT}) WHERE body IS NOT NULL OR checksum IS NULL"
            )
            return all(row["kind"] in STAYS_HERE for row in rows)

    def was_ever_used(self) -> bool:
        """Whether anything was ever entered, even if it was removed since; choices apart."""
        with self.database.reading() as connection:
            rows = connection.execute("SELECT DISTINCT kind FROM document")
            return any(row["kind"] not in STAYS_HERE for row in rows)

    def raw_documents(self) -> tuple[RawDocument, ...]:
        """Everything that travels, by kind and key, unread: even what this version cannot read gets out."""
        with self.database.reading() as connection:
            return _raw_documents(connection)
