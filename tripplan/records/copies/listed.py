"""Which copies of the records there are, in the order in which they were made."""

import re
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from tripplan.errors import RecordsUnusable, UnknownName
from tripplan.records.database import BACKUP_FOLDER, Database
from tripplan.records.kinds import STAYS_HERE


@dataclass(frozen=True)
class DayCopy:
    """The records as they were at the first use of a day.

    Attributes:
        day: the day, by the clock of that day.
        path: the file.
        number: counts the copies up, whatever the clock says; 0 for one from before they were counted [-].
    """

    day: date
    path: Path
    number: int = 0

    def holds(self) -> int:
        """How many records it holds; 0 where it cannot be read [-]."""
        try:
            return records_in(Database(self.path))
        except RecordsUnusable:
            return 0


def records_in(database: Database) -> int:
    """How many records a file holds, choices about this computer apart [-].

    Raises:
        RecordsUnusable: it cannot be read.
    """
    query = (
        "SELECT count(*) FROM document JOIN version USING (kind, key, revision) "
        f"WHERE body IS NOT NULL AND kind NOT IN ({', '.join('?' * len(STAYS_HERE))})"
    )
    with database.reading() as connection:
        return int(connection.execute(query, sorted(STAYS_HERE)).fetchone()[0])


def copies_of(path: Path) -> tuple[DayCopy, ...]:
    """The copies of a records file, the last one made first.

    Args:
        path: the records file, which may be damaged or gone.
    """
    found = []
    for copy in (path.parent / BACKUP_FOLDER).glob(f"{path.stem}-*.sqlite3"):
        named = re.fullmatch(r"-(\d{4}-\d\d-\d\d)(?:-(\d{4,9}))?", copy.stem.removeprefix(path.stem))
        try:
            day = date.fromisoformat(named[1] if named else "")
        except ValueError:
            continue  # a file of the parent's own
        found.append(DayCopy(day, copy, int(named[2] or 0) if named else 0))
    return tuple(sorted(found, key=lambda copy: (copy.number, copy.day), reverse=True))


def copy_of(path: Path, day: date) -> DayCopy:
    """The copy of one day; the last one, where a clock that was set back made two.

    Raises:
        UnknownName: there is none of that day.
    """
    known = copies_of(path)
    for copy in known:
        if copy.day == day:
            return copy
    raise UnknownName("copy", day.isoformat(), tuple(one.day.isoformat() for one in known))
