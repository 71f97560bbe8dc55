"""`tripplan restore`: the copies are listed, looked at, and put back when that is said."""

from datetime import date
from pathlib import Path

import pytest

from tests.builders import make_household
from tests.commands.conftest import NOON, Run
from tripplan.documents.family.household import Household
from tripplan.records.copies.daily import back_up
from tripplan.records.opening import Which, open_records
from tripplan.records.store import Records

DAY = date(2026, 11, 20)


@pytest.fixture
def copied(own_records: Records) -> Records:
    """Own records that were renamed after a copy was made."""
    back_up(own_records.database, DAY)
    kept = own_records.get(Household)
    assert kept is not None
    own_records.save(make_household(name="Renamed"), NOON, kept.revision)
    return own_records


def name_on_record(folder: Path) -> str:
    """What the household is called."""
    kept = open_records(folder, Which.FAMILY, NOON).get(Household)
    assert kept is not None
    return kept.value.name


def test_copies_are_listed(run: Run, copied: Records) -> None:
    """Each with its day and its file, the path in one piece; where there are none that is said."""
    said = run("restore", COLUMNS="40")
    assert said.status == 0
    assert f"2026-11-20 (3 records): {copied.database.path.parent}" in said.out
    assert "no copies yet" in run("restore", "--data", copied.database.path.parent / "elsewhere").out


def test_a_copy_is_only_looked_at_until_it_is_told(run: Run, copied: Records) -> None:
    """What would change is named; with `--yes` it is done, and again it says that nothing differs."""
    folder = copied.database.path.parent
    said = run("restore", str(DAY))
    assert (said.status, said.err) == (0, "")
    assert "Changed:\n  - household" in said.out
    assert "Nothing was changed." in said.out
    assert name_on_record(folder) == "Renamed"
    assert run("restore", str(DAY), "--yes").status == 0
    assert name_on_record(folder) == make_household().name
    assert "exactly what is on record" in run("restore", str(DAY)).out


def test_a_damaged_file_gives_way_to_a_copy(run: Run, copied: Records) -> None:
    """Without `--yes` the damage is told and nothing done; with it the records open again."""
    path = copied.database.path
    for beside in path.parent.glob("family.sqlite3*"):
        beside.unlink()
    path.write_bytes(b"only some words" * 900)
    said = run("restore", str(DAY))
    assert said.status == 1
    assert "no records file" in " ".join(said.out.split())
    assert path.read_bytes().startswith(b"only")
    done = run("restore", str(DAY), "--yes", COLUMNS="40")
    assert done.status == 0
    (aside,) = path.parent.glob("family-damaged-*.sqlite3")
    assert str(aside) in done.out.splitlines()
    assert name_on_record(path.parent) == make_household().name


@pytest.mark.parametrize("day", ["2026-01-01", "soon", "2026-13-40"])
def test_a_day_without_a_copy_is_bad_input(run: Run, copied: Records, day: str) -> None:
    """Nothing changes, and the days that would have worked are named where the date can be read."""
    before = copied.raw_documents()
    said = run("restore", day, "--yes")
    assert (said.status, said.out) == (2, "")
    assert "2026-11-2" in said.err
    assert copied.raw_documents() == before


def test_a_file_that_has_gone_is_told_and_its_copy_put_back(run: Run, copied: Records) -> None:
    """Every command says that there is a copy; `restore` puts it back, history and all."""
    path = copied.database.path
    for beside in path.parent.glob("family.sqlite3*"):
        beside.unlink()
    told = " ".join(run("compare", "--demo").err.split())
    assert "holds 3 records" in told
    assert "tripplan restore 2026-11-20 --yes" in told
    looked = run("restore", str(DAY))
    assert (looked.status, "Nothing was changed." in looked.out) == (1, True)
    assert run("restore", str(DAY), "--yes").status == 0
    assert name_on_record(path.parent) == make_household().name
    assert "holds 3 records" not in " ".join(run("compare", "--demo").err.split())
    assert open_records(path.parent, Which.FAMILY, NOON).past_changes(9)


def test_damage_is_told_and_the_rest_is_there(run: Run, copied: Records) -> None:
    """One place is damaged on the disk: commands answer with the others, name it, and export them."""
    path = copied.database.path
    raw = path.read_bytes()
    assert raw.count(b"Test museum") == 1
    path.write_bytes(raw.replace(b"Test museum", b"Best museum"))
    said = run("export", path.parent / "all.json", "--own")
    assert said.status == 0
    assert "place test-museum" in " ".join(run("compare", "--own").err.split())
    assert "2 records written" in " ".join(run("export", path.parent / "again.json", "--own").out.split())
    assert run("restore", str(DAY), "--yes").status == 0
    assert "place test-museum" not in run("compare", "--own").err
