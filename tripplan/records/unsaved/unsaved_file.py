"""What is chosen and half written: in a file of its own beside the records, until it is saved or dropped.

It is no record: it has no history and is part of no copy and no export. So it lies apart from the records,
where each field that is left would else be a change to the family's file. Losing it harms nothing.
"""

from collections.abc import Iterable, Mapping
from contextlib import suppress
from datetime import date, timedelta
from pathlib import Path

from tripplan.errors import RecordsDamaged, RecordsUnusable
from tripplan.records.damage.rebuild import BESIDE
from tripplan.records.database import Database
from tripplan.records.unsaved.as_text import Unsaved, read, written

KEPT_FOR = timedelta(days=30)
"""What nobody touched for so long is dropped."""
_PATIENCE_SECONDS = 2.0
_TABLE = """
    CREATE TABLE IF NOT EXISTS unsaved (
        name TEXT PRIMARY KEY, value TEXT NOT NULL, kept_on TEXT NOT NULL
    ) STRICT"""


class UnsavedFile:
    """Choices and drafts of one family; where the file cannot be read or written, there are none.

    Attributes:
        path: the file.
    """

    def __init__(self, records: Path) -> None:
        """Open nothing yet.

        Args:
            records: the family's records file, beside which it lies.
        """
        self.path = records.with_name(f"{records.stem}-unsaved.sqlite3")
        self._database = Database(self.path, _PATIENCE_SECONDS)

    def all(self, today: date) -> dict[str, Unsaved]:
        """Everything by its name, except what nobody touched for `KEPT_FOR`."""
        if not self.path.exists():
            return {}
        since = (today - KEPT_FOR).isoformat()
        try:
            with self._database.reading() as connection:
                query = "SELECT name, value FROM unsaved WHERE kept_on >= ?"
                rows = connection.execute(query, (since,)).fetchall()
        except RecordsDamaged:
            self.remove()
            return {}
        except RecordsUnusable:
            return {}
        return {row["name"]: read(row["value"]) for row in rows}

    def keep(self, values: Mapping[str, Unsaved], today: date) -> None:
        """Keep values under their names, in place of what was there; and drop what is too old.

        A tuple comes back as a list.

        Raises:
            TypeError: a value is of another type than `Unsaved` says.
        """
        rows = [(name, written(value), today.isoformat()) for name, value in values.items()]
        with suppress(RecordsUnusable):
            self._database.create()
            with self._database.writing() as connection:
                connection.execute(_TABLE)
                connection.executemany("INSERT OR REPLACE INTO unsaved VALUES (?, ?, ?)", rows)
                connection.execute("DELETE FROM unsaved WHERE kept_on < ?", ((today - KEPT_FOR).isoformat(),))

    def drop(self, names: Iterable[str]) -> None:
        """Drop what is kept under some names, without a trace in the file."""
        if self.path.exists():
            with suppress(RecordsUnusable), self._database.writing() as connection:
                connection.execute(_TABLE)
                connection.executemany("DELETE FROM unsaved WHERE name = ?", [(name,) for name in names])

    def remove(self) -> None:
        """Drop everything, with the file.

        Raises:
            OSError: the file may not be removed.
        """
        for ending in BESIDE:
            self.path.with_name(self.path.name + ending).unlink(missing_ok=True)
