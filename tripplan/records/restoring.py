"""Earlier days' copies of the records: which there are, what is in them, and putting one back."""

import os
import shutil
import tempfile
from dataclasses import dataclass
from datetime import date, datetime
from pathlib import Path

from tripplan.documents.model import Written
from tripplan.errors import RecordsDamaged, RecordsUnusable, UnknownName
from tripplan.records.damage.examine import damage_in
from tripplan.records.damage.rebuild import set_aside
from tripplan.records.database import BACKUP_FOLDER, Database, put_in_place, said_plainly
from tripplan.records.kinds import MODELS
from tripplan.records.migrations import migrate
from tripplan.records.reading import read_document
from tripplan.records.store import RawDocument, Records, Retold


@dataclass(frozen=True)
class DayCopy:
    """The records as they were at the first start of a day.

    Attributes:
        day: the day.
        path: the file.
    """

    day: date
    path: Path


def copies_of(path: Path) -> tuple[DayCopy, ...]:
    """The copies of a records file, the newest first.

    Args:
        path: the records file, which may be damaged or gone.
    """
    found = []
    for copy in (path.parent / BACKUP_FOLDER).glob(f"{path.stem}-????-??-??.sqlite3"):
        try:
            day = date.fromisoformat(copy.stem.removeprefix(f"{path.stem}-"))
        except ValueError:
            continue  # a file of the parent's own
        found.append(DayCopy(day, copy))
    return tuple(sorted(found, key=lambda copy: copy.day, reverse=True))


def copy_of(path: Path, day: date) -> DayCopy:
    """The copy of one day.

    Raises:
        UnknownName: there is none of that day.
    """
    known = copies_of(path)
    for copy in known:
        if copy.day == day:
            return copy
    raise UnknownName("copy", day.isoformat(), tuple(one.day.isoformat() for one in known))


@dataclass(frozen=True)
class Contents:
    """What a copy holds.

    Attributes:
        documents: what this version can read.
        unread: what it cannot; it goes back as it is.
    """

    documents: tuple[Written, ...]
    unread: tuple[RawDocument, ...]


def contents_of(copy: DayCopy, read_at: datetime) -> Contents:
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
    return Contents(
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
    with said_plainly(path):
        handle, name = tempfile.mkstemp(dir=path.parent, suffix=".partial")  # for the user's eyes only
        os.close(handle)
        fresh = Path(name)
        try:
            if copy is not None:
                shutil.copyfile(copy.path, fresh)
            aside = set_aside(path, at)
            if copy is not None:
                put_in_place(fresh, path)
        finally:
            fresh.unlink(missing_ok=True)
    return aside
