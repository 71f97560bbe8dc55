"""What was changed on record, and what stood there before."""

import sqlite3
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

from tripplan.records.kinds import STAYS_HERE, called

_EDITS = """
    SELECT after.kind, after.key, after.revision, after.content_of, after.body, after.saved_at,
        change.number, change.said,
        before.body AS before, before.kind IS NULL AND after.revision > 1 AS before_is_lost,
        coalesce(before.content_of, 0) AS before_content_of,
        now.content_of AS now_content_of
    FROM change
    JOIN version AS after ON after.change = change.number
    LEFT JOIN version AS before
        ON (before.kind, before.key, before.revision) = (after.kind, after.key, after.revision - 1)
    JOIN document ON (document.kind, document.key) = (after.kind, after.key)
    JOIN version AS now
        ON (now.kind, now.key, now.revision) = (document.kind, document.key, document.revision)
    WHERE change.number IN ({numbers})
    ORDER BY change.number DESC, after.kind, after.key, after.revision
"""


@dataclass(frozen=True)
class Edit:
    """What a change did to one document.

    Attributes:
        kind: the name of the document's kind.
        key: tells it from others of its kind.
        before: JSON text as it was before; None where the document was not there.
        before_content_of: the revision in which that was first saved; 0 where it was not there.
        after: JSON text as the change left it; None where it was removed.
        stands: whether the document is still as the change left it, and what was before it is still known.
    """

    kind: str
    key: str
    before: str | None
    before_content_of: int
    after: str | None
    stands: bool

    @property
    def called(self) -> str:
        """How a sentence names the document."""
        return called(self.kind, self.key)


@dataclass(frozen=True)
class PastChange:
    """Something that was saved as a whole.

    Attributes:
        number: grows with every change.
        said: the sentence that told of it; may be empty.
        saved_at: when [UTC].
        edits: what it did, by kind and key.
    """

    number: int
    said: str
    saved_at: datetime
    edits: tuple[Edit, ...]

    @property
    def stands(self) -> bool:
        """Whether nothing it touched was changed again since, so that it can be taken back."""
        return all(edit.stands for edit in self.edits)


def latest_changes(connection: sqlite3.Connection, most: int) -> tuple[PastChange, ...]:
    """The latest changes, the newest first; choices about this computer are left out.

    Args:
        connection: within a transaction.
        most: how many at most [-].
    """
    hidden = ", ".join("?" * len(STAYS_HERE))
    query = f"SELECT DISTINCT change FROM version WHERE kind NOT IN ({hidden}) ORDER BY change DESC LIMIT ?"
    numbers = [row["change"] for row in connection.execute(query, (*sorted(STAYS_HERE), most))]
    return tuple(edits_in(connection, numbers).values())


def edits_in(connection: sqlite3.Connection, numbers: Sequence[int]) -> dict[int, PastChange]:
    """Changes by their number, the newest first; a number that was never given is left out."""
    marks = ", ".join("?" * len(numbers))
    rows = connection.execute(_EDITS.format(numbers=marks), tuple(numbers)).fetchall()
    changes: dict[int, PastChange] = {}
    for number in dict.fromkeys(row["number"] for row in rows):
        own = [row for row in rows if row["number"] == number]
        edits: dict[tuple[str, str], Edit] = {}
        for row in own:
            name = (row["kind"], row["key"])
            first = edits.get(name)  # a change may have saved a document more than once
            edits[name] = Edit(
                *name,
                before=first.before if first else row["before"],
                before_content_of=first.before_content_of if first else row["before_content_of"],
                after=row["body"],
                stands=row["now_content_of"] == row["content_of"] and not row["before_is_lost"],
            )
        saved_at = datetime.fromisoformat(own[0]["saved_at"])
        changes[number] = PastChange(number, own[0]["said"], saved_at, tuple(edits.values()))
    return changes
