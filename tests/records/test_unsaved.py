"""What is chosen and half written lies beside the records, comes back as it was, and goes when it should."""

from datetime import date, time, timedelta
from pathlib import Path

import pytest

from tests.builders import make_household
from tests.records.conftest import NOON
from tripplan.records.copies.daily import back_up
from tripplan.records.export import export_all
from tripplan.records.forgetting import forget
from tripplan.records.store import Records
from tripplan.records.unsaved.unsaved_file import KEPT_FOR, UnsavedFile

TODAY = date(2026, 11, 25)
TYPED = {
    "text": "Tern “7”",
    "day": date(2026, 12, 3),
    "at": time(9, 5),
    "some": [True, None, 3],
    "in": {"a": []},
}


@pytest.fixture
def unsaved(records: Records) -> UnsavedFile:
    """The file beside the family's own records."""
    return UnsavedFile(records.database.path)


def test_what_is_kept_comes_back_as_it_was(unsaved: UnsavedFile, records: Records) -> None:
    """Every type that a field can hold, read through another object; nothing is there before."""
    assert unsaved.all(TODAY) == {}
    unsaved.keep({"form": TYPED, "pair": ("a", 1)}, TODAY)
    assert UnsavedFile(records.database.path).all(TODAY) == {"form": TYPED, "pair": ["a", 1]}
    unsaved.drop(["form"])
    assert unsaved.all(TODAY) == {"pair": ["a", 1]}


def test_what_nobody_touches_for_a_month_is_dropped(unsaved: UnsavedFile) -> None:
    """It is there on the last day and not on the next; what was touched since stays."""
    unsaved.keep({"old": 1, "new": 1}, TODAY)
    unsaved.keep({"new": 2}, TODAY + timedelta(days=1))
    assert unsaved.all(TODAY + KEPT_FOR) == {"old": 1, "new": 2}
    assert unsaved.all(TODAY + KEPT_FOR + timedelta(days=1)) == {"new": 2}


def test_it_is_no_part_of_exports_and_copies_and_goes_for_good(
    unsaved: UnsavedFile, records: Records
) -> None:
    """A name that was typed and never saved stands in no export and no copy; deleting for good takes it."""
    records.save(make_household(), NOON)
    unsaved.keep({"form": {"name": "Zephyrine"}}, TODAY)
    copy = back_up(records.database, TODAY)
    assert copy is not None
    assert b"Zephyrine" not in export_all(records) + copy.read_bytes()
    forget(records, NOON)
    lying = (path for path in records.database.path.parent.rglob("*") if path.is_file())
    assert not [path for path in lying if b"Zephyrine" in path.read_bytes()]


def test_a_damaged_file_costs_what_is_in_it_and_nothing_else(unsaved: UnsavedFile, tmp_path: Path) -> None:
    """It is begun anew; where none can be written nothing is kept, and nobody hears of it."""
    unsaved.keep({"form": 1}, TODAY)
    unsaved.path.write_bytes(b"no database" * 100)
    assert unsaved.all(TODAY) == {}
    unsaved.keep({"form": 2}, TODAY)
    assert unsaved.all(TODAY) == {"form": 2}
    nowhere = UnsavedFile(tmp_path / "a file" / "family.sqlite3")
    (tmp_path / "a file").write_text("")
    nowhere.keep({"form": 1}, TODAY)
    assert nowhere.all(TODAY) == {}
