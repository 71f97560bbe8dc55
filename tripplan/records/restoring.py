"""Earlier days' copies of the records: what is in them, and putting one back, whole or one record of it."""

import shutil
import tempfile
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from tripplan.documents.model import Written
from tripplan.errors import RecordsDamaged, RecordsUnusable
from tripplan.records.copies.listed import DayCopy, copies_of
from tripplan.records.damage.examine import damage_in
from tripplan.records.damage.rebuild import BESIDE, set_aside
from tripplan.records.damage.set_aside import SetAside
from tripplan.records.database import Database, partial_file, put_in_place, said_plainly
from tripplan.records.kinds import MODELS
from tripplan.records.migrations import migrate
from tripplan.records.reading import read_document
from tripplan.records.store import RawDocument, Records, Retold, is_sound


@dataclass(frozen=True)
class CopyContents:
    """What a copy holds.

    Attributes:
        documents: what this version can read.
        unread: what it cannot; it goes back as it is.
    """

    documents: tuple[Written, ...]
    unread: tuple[RawDocument, ...]


def contents_of(copy: DayCopy, read_at: datetime) -> CopyContents:
    """Everything a copy holds, even where an older program wrote it; the copy itself stays as it is.

    Args:
        copy: the copy.
        read_at: now; zone-aware.

    Raises:
        RecordsUnusable: the copy is damaged, or from a newer program.
    """
    with said_plainly(copy.path), tempfile.TemporaryDirectory() as folder:
        aside = Database(Path(shutil.copy(copy.path, folder)))
        _complain_of_damage(copy, damage_in(aside))
        migrate(aside, read_at)
        raws = Records(aside).raw_documents()
    read = [
        (raw, read_document(MODELS[raw.kind], raw.body).value if raw.kind in MODELS else None) for raw in raws
    ]
    return CopyContents(
        documents=tuple(value for _, value in read if value is not None),
        unread=tuple(raw for raw, value in read if value is None),
    )


def _complain_of_damage(copy: DayCopy, trouble: str) -> None:
    if trouble:
        raise RecordsDamaged(copy.path, f"{copy.path}: the copy is damaged: {trouble}")


def known_by_copies(path: Path) -> dict[tuple[str, str], int]:
    """The records that the last copy of a file holds, each with its revision; none where no copy can be read.

    Args:
        path: the records file.
    """
    for copy in copies_of(path):
        try:
            with Database(copy.path).reading() as connection:
                rows = connection.execute(
                    "SELECT kind, key, revision FROM document JOIN version USING (kind, key, revision) "
                    "WHERE body IS NOT NULL"
                )
                return {(row["kind"], row["key"]): row["revision"] for row in rows}
        except RecordsUnusable:
            continue
    return {}


def put_back(records: Records, copy: DayCopy, saved_at: datetime, retold: Retold | None = None) -> None:
    """Put what a copy holds in the place of everything on record; that can be taken back like any change.

    Args:
        records: where to; what is on record there need not be readable.
        copy: one of its copies.
        saved_at: now; zone-aware.
        retold: how an earlier state reads now; to the letter as it was where left out.

    Raises:
        RecordsUnusable: the copy or the records cannot be used; nothing was changed.
    """
    contents = contents_of(copy, saved_at)
    with records.change(saved_at, f"The copy of {copy.day} was put back.") as change:
        change.replace_all(contents.documents, retold, contents.unread)


def recover(path: Path, copy: DayCopy | None, at: datetime) -> Path:
    """Put a copy in the place of a records file that is damaged or gone; what was there is kept beside it.

    Args:
        path: the damaged file.
        copy: one of its copies, which is read first, so that one bad file is not replaced by another;
            None to leave the place empty, so that fresh records are made there.
        at: now; names the damaged file.

    Returns:
        Where the damaged file lies now.

    Raises:
        RecordsUnusable: the copy is damaged too, or the folder cannot be written; nothing was changed.
    """
    if copy is not None:
        contents_of(copy, at)
    with said_plainly(path), partial_file(path) as fresh:
        if copy is not None:
            shutil.copyfile(copy.path, fresh)
        aside = set_aside(path, at)
        if copy is not None:
            put_in_place(fresh, path)
    return aside


def lost(records: Records) -> DayCopy | None:
    """The copy to put back where a records file has gone: nothing was ever entered, but there is a copy.

    Returns:
        The last copy that holds something; None where nothing is lost.
    """
    if records.was_ever_used():
        return None
    return next((copy for copy in copies_of(records.database.path) if copy.holds()), None)


def bring_back(path: Path, copy: DayCopy, at: datetime) -> None:
    """Put a copy, with its history, in the place of a records file that has gone and was made empty.

    Raises:
        RecordsUnusable: the copy is damaged, or the folder cannot be written; nothing was changed.
    """
    contents_of(copy, at)
    with said_plainly(path), partial_file(path) as fresh:
        shutil.copyfile(copy.path, fresh)
        for ending in BESIDE[1:]:
            path.with_name(path.name + ending).unlink(missing_ok=True)
        put_in_place(fresh, path)


@dataclass(frozen=True)
class Earlier:
    """A state of a document from before the one that is set aside.

    Attributes:
        value: the document.
        revision: of that state.
        saved_at: when it was saved [UTC].
    """

    value: Written
    revision: int
    saved_at: datetime


def earlier_state(records: Records, aside: SetAside) -> Earlier | None:
    """What can take the place of a document that is set aside: its last state that can be read.

    It is looked for in the file itself and in the copies, which may know a later one.

    Args:
        records: where it is set aside.
        aside: what.
    """
    here = _last_readable(records.database, aside)
    for copy in copies_of(records.database.path):  # the last ones may have been made after the damage
        there = _last_readable(Database(copy.path), aside)
        if there is not None:
            return there if here is None or there.revision > here.revision else here
    return here


def _last_readable(database: Database, aside: SetAside) -> Earlier | None:
    model = MODELS.get(aside.kind)
    if model is None:
        return None
    try:
        with database.reading() as connection:
            rows = connection.execute(
                "SELECT *, checksum FROM version WHERE kind = ? AND key = ? AND body IS NOT NULL "
                "ORDER BY revision DESC",
                (aside.kind, aside.key),
            ).fetchall()
    except RecordsUnusable:
        return None
    for row in rows:
        value = read_document(model, row["body"]).value if is_sound(row) else None
        if value is not None:
            return Earlier(value, row["revision"], datetime.fromisoformat(row["saved_at"]))
    return None
