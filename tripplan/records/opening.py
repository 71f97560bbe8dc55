"""Opening the records: the family's own, or those of the invented family that shows how it all works."""

from datetime import datetime
from enum import StrEnum
from pathlib import Path

from tripplan.records.damage.examine import damage_in
from tripplan.records.damage.rebuild import MadeAnew, rebuild
from tripplan.records.database import Database
from tripplan.records.kinds import DemoShown
from tripplan.records.migrations import migrate
from tripplan.records.restoring import known_by_copies
from tripplan.records.store import Records


class Which(StrEnum):
    """Whose records; each has a file of its own, so neither can touch the other."""

    FAMILY = "family"
    DEMO = "demo"


def open_records(folder: Path, which: Which, opened_at: datetime) -> Records:
    """Records ready for use; made where there are none, brought up to date where they are old.

    A damaged file is made anew from all that can be read of it, and kept beside under another name.

    Args:
        folder: where the records lie.
        which: the family's own, or the invented family's.
        opened_at: recorded where tables are made or changed; zone-aware.

    Raises:
        RecordsDamaged: the file is damaged, and nothing in it can be read.
        RecordsUnusable: the file cannot be made or opened, or a newer program has used it.
    """
    database = Database(folder / f"{which}.sqlite3")
    database.create()
    trouble = damage_in(database)
    if not trouble:
        migrate(database, opened_at)
        return Records(database)
    aside = rebuild(database, trouble, known_by_copies(database.path), opened_at)
    return Records(database, MadeAnew(trouble, aside))


def shown(family: Records) -> Which:
    """Whose records the screens show; the invented family's until something was entered.

    Args:
        family: the family's own records, where the choice is kept.
    """
    choice = family.get(DemoShown)
    demo = family.is_fresh() if choice is None else choice.value.shown
    return Which.DEMO if demo else Which.FAMILY


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
