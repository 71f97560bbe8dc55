"""Opening the records: the family's own, or those of the invented family that shows how it all works."""

from datetime import datetime
from enum import StrEnum
from pathlib import Path

from tripplan.records.database import Database
from tripplan.records.kinds import DemoShown
from tripplan.records.migrations import migrate
from tripplan.records.store import Records


class Which(StrEnum):
    """Whose records; each has a file of its own, so neither can touch the other."""

    FAMILY = "family"
    DEMO = "demo"


def open_records(folder: Path, which: Which, opened_at: datetime) -> Records:
    """Records ready for use; made where there are none, brought up to date where they are old.

    Args:
        folder: where the records lie.
        which: the family's own, or the invented family's.
        opened_at: recorded where tables are made or changed; zone-aware.

    Raises:
        RecordsUnusable: the file cannot be made or opened, or a newer program has used it.
    """
    database = Database(folder / f"{which}.sqlite3")
    database.create()
    migrate(database, opened_at)
    return Records(database)


def shown(family: Records) -> Which:
    """Whose records the screens show; at first, the invented family's.

    Args:
        family: the family's own records, where the choice is kept.
    """
    choice = family.get(DemoShown)
    return Which.DEMO if choice is None or choice.value.shown else Which.FAMILY


def show(family: Records, which: Which, chosen_at: datetime) -> None:
    """Choose whose records the screens show; no other record changes.

    Args:
        family: the family's own records, where the choice is kept.
        which: whose to show from now on.
        chosen_at: when it was chosen; zone-aware.
    """
    with family.change(chosen_at) as change:
        before = change.get(DemoShown)
        change.save(DemoShown(shown=which is Which.DEMO), before.revision if before else 0)
