"""Earlier days' copies of the records: which there are, what is in them, and putting one back."""

import os
import shutil
import tempfile
from dataclasses import dataclass
from datetime import date, datetime
from pathlib import Path

from pydantic import ValidationError

from tripplan.documents.model import Written
from tripplan.errors import RecordsUnusable, UnknownName
from tripplan.records.database import BACKUP_FOLDER, Database, said_plainly
from tripplan.records.kinds import MODELS
from tripplan.records.migrations import migrate
from tripplan.records.store import Records, Retold

_BESIDE = ("", "-wal", "-shm")
"""The files that SQLite keeps for one database."""


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


def documents_in(copy: DayCopy, read_at: datetime) -> tuple[Written, ...]:
    """Everything a copy holds, even where an older program wrote it; the copy itself stays as it is.

    Args:
        copy: the copy.
        read_at: now; zone-aware.

    Raises:
        RecordsUnusable: the copy is damaged, or from a newer program.
    """
    with said_plainly(copy.path), tempfile.TemporaryDirectory() as folder:
        aside = Database(Path(shutil.copy(copy.path, folder)))
        migrate(aside, read_at)
        raw_documents = Records(aside).raw_documents()
    try:
        return tuple(MODELS[raw.kind].model_validate_json(raw.body) for raw in raw_documents)
    except (KeyError, ValidationError) as error:
        raise RecordsUnusable(f"{copy.path}: this version of tripplan cannot read all of it") from error


def put_back(records: Records, copy: DayCopy, saved_at: datetime, retold: Retold | None = None) -> None:
    """Put what a copy holds in the place of everything on record; that can be taken back like any change.

    Args:
        records: where to.
        copy: one of its copies.
        saved_at: now; zone-aware.
        retold: how an earlier state reads now; to the letter as it was where left out.

    Raises:
        RecordsUnusable: the copy or the records cannot be used; nothing was changed.
    """
    documents = documents_in(copy, saved_at)
    with records.change(saved_at, f"The copy of {copy.day} was put back.") as change:
        change.replace_all(documents, retold)


def recover(path: Path, copy: DayCopy | None, at: datetime) -> Path:
    """Put a copy in the place of a records file that is damaged; the damaged file is kept beside it.

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
        documents_in(copy, at)
    aside = path.with_name(f"{path.stem}-damaged-{at:%Y-%m-%d-%H%M%S}.sqlite3")
    with said_plainly(path):
        handle, fresh = tempfile.mkstemp(dir=path.parent, suffix=".partial")  # for the user's eyes only
        os.close(handle)
        try:
            if copy is not None:
                shutil.copyfile(copy.path, fresh)
            for beside in _BESIDE:
                old = path.with_name(path.name + beside)
                if old.exists():
                    os.replace(old, aside.with_name(aside.name + beside))
            if copy is not None:
                os.replace(fresh, path)
        finally:
            Path(fresh).unlink(missing_ok=True)
    return aside
