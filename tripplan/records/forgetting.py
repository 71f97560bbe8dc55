"""Deleting for good: earlier states, who left the household, copies, damaged files, unused pages."""

import json
import re
from contextlib import closing
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from tripplan.documents.family.household import Household
from tripplan.records.copies.daily import back_up
from tripplan.records.copies.listed import copies_of
from tripplan.records.damage.rebuild import BESIDE, damaged_files, remove_damaged_files
from tripplan.records.database import said_plainly
from tripplan.records.kinds import MODELS, called, kind_of
from tripplan.records.reading import read_document
from tripplan.records.store import RawDocument, Records
from tripplan.records.unsaved.unsaved_file import UnsavedFile

_EARLIER = "(kind, key, revision) NOT IN (SELECT kind, key, revision FROM document)"


@dataclass(frozen=True)
class Forgettable:
    """What deleting for good would take.

    Attributes:
        states: earlier states of records, which now can be taken back [-].
        removed: records that were removed, each by what it is called.
        people: who once was in the household and is not any more.
        naming: records still there that list one of them; the name is taken out.
        mentioning: records still there in whose texts such a name stands; they stay as they are.
        files: copies, damaged files and those from before an update.
    """

    states: int
    removed: tuple[str, ...]
    people: tuple[str, ...]
    naming: tuple[str, ...]
    mentioning: tuple[str, ...]
    files: tuple[Path, ...]

    @property
    def any(self) -> bool:
        """Whether there is anything to delete."""
        return bool(self.states or self.removed or self.naming or self.files)


def forgettable(records: Records) -> Forgettable:
    """What deleting for good would take; changes nothing.

    Raises:
        RecordsUnusable: the records cannot be read.
    """
    with records.database.reading() as connection:
        query = f"SELECT count(*) FROM version WHERE {_EARLIER}"
        states = int(connection.execute(query).fetchone()[0])
        query = "SELECT kind, key FROM document JOIN version USING (kind, key, revision) WHERE body IS NULL"
        removed = tuple(called(row["kind"], row["key"]) for row in connection.execute(query))
    people = _former_members(records)
    naming, mentioning = [], []
    for raw in records.raw_documents():
        changed = _without(raw, people)
        if changed is not None:
            naming.append(called(raw.kind, raw.key))
        if _mentions(raw.body if changed is None else changed, people):
            mentioning.append(called(raw.kind, raw.key))
    return Forgettable(states, removed, people, tuple(naming), tuple(mentioning), _files(records))


def forget(records: Records, at: datetime) -> None:
    """Delete for good: it cannot be taken back, and leaves no trace in the file.

    What stays is copied anew at once, so that there is a copy.

    Args:
        records: whose.
        at: now; zone-aware.

    Raises:
        RecordsUnusable: the file cannot be written; or a copy cannot be removed, and then all else is done.
    """
    people = _former_members(records)
    with records.change(at) as change:
        for raw in records.raw_documents():
            changed = _without(raw, people)
            if changed is not None:
                change.put(raw.kind, raw.key, changed)
    with records.database.writing() as connection:
        connection.execute(
            "DELETE FROM document WHERE (kind, key, revision) IN "
            "(SELECT kind, key, revision FROM version WHERE body IS NULL)"
        )
        connection.execute(f"DELETE FROM version WHERE {_EARLIER}")
        connection.execute("DELETE FROM change WHERE number NOT IN (SELECT change FROM version)")
        connection.execute("UPDATE change SET said = '', checksum = row_checksum('change', number, '')")
    with said_plainly(records.database.path), closing(records.database.connect()) as connection:
        connection.execute("PRAGMA secure_delete = ON")
        connection.execute("VACUUM")
        connection.execute("PRAGMA wal_checkpoint(TRUNCATE)")
    with said_plainly(records.database.path):
        for file in _files(records):
            for ending in BESIDE:
                file.with_name(file.name + ending).unlink(missing_ok=True)
        UnsavedFile(records.database.path).remove()
    remove_damaged_files(records.database.path)
    back_up(records.database, at.date())


def _files(records: Records) -> tuple[Path, ...]:
    path = records.database.path
    before = sorted(path.parent.glob(f"{path.stem}-before-*.sqlite3"))
    return (*(copy.path for copy in copies_of(path)), *damaged_files(path), *before)


def _former_members(records: Records) -> tuple[str, ...]:
    """Who was in the household once, and is not in it now."""
    with records.database.reading() as connection:
        rows = connection.execute(
            "SELECT body FROM version WHERE kind = ? AND body IS NOT NULL", (kind_of(Household).name,)
        ).fetchall()
    ever: dict[str, None] = {}
    for row in rows:
        household = read_document(Household, row["body"]).value
        ever |= dict.fromkeys(member.name for member in household.members) if household else {}
    now = records.get(Household)
    there = {member.name for member in now.value.members} if now else set()
    return tuple(name for name in ever if name not in there)


def _without(raw: RawDocument, names: tuple[str, ...]) -> str | None:
    """A document without the names where it lists them; None where it lists none or cannot do without."""
    if not names or not raw.is_sound or raw.kind not in MODELS:
        return None
    try:
        body = json.loads(raw.body)
    except ValueError:
        return None
    left = _taken_out(body, frozenset(names))
    if left == body:
        return None
    value = read_document(MODELS[raw.kind], json.dumps(left))
    return None if value.value is None or value.why else value.value.model_dump_json()


def _taken_out(value: object, names: frozenset[str]) -> object:
    if isinstance(value, dict):
        return {key: _taken_out(part, names) for key, part in value.items() if key not in names}
    if isinstance(value, list):
        return [_taken_out(part, names) for part in value if not _is_about(part, names)]
    return value


def _is_about(entry: object, names: frozenset[str]) -> bool:
    """Whether an entry of a list is one of the names, or says something of the person alone."""
    if isinstance(entry, dict):
        return any(isinstance(part, str) and part in names for part in entry.values())
    return isinstance(entry, str) and entry in names


def _mentions(body: str, names: tuple[str, ...]) -> bool:
    text = json.dumps(json.loads(body), ensure_ascii=False) if body.startswith("{") else body
    return any(re.search(rf"(?<!\w){re.escape(name)}(?!\w)", text) for name in names)
