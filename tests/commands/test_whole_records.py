"""`tripplan export` and `tripplan import`: whole records to one file and back."""

import json
from pathlib import Path

import pytest

from tests.builders import make_household, make_place
from tests.commands.conftest import NOON, Run, assert_fits_schema
from tests.sealed import Sealed, sealed
from tripplan.documents.family.household import Household
from tripplan.records.opening import Which, open_records, shown
from tripplan.records.store import Records


@pytest.mark.usefixtures("own_records")
def test_what_is_exported_comes_back_elsewhere(run: Run, tmp_path: Path) -> None:
    """Carried to another folder, the records say the same, and the screens show them."""
    file, elsewhere = tmp_path / "ours.json", tmp_path / "elsewhere"
    assert run("export", file).status == 0
    said = run("import", file, "--yes", "--data", elsewhere)
    assert (said.status, said.err) == (0, "")
    again = run("export", "-", "--data", elsewhere)
    assert again.out.encode() == file.read_bytes()
    assert shown(open_records(elsewhere, Which.FAMILY, NOON)) is Which.FAMILY


def test_an_import_only_looks_until_it_is_told(run: Run, own_records: Records, tmp_path: Path) -> None:
    """Without `--yes` it is told what would change, by name, and nothing does."""
    file = tmp_path / "ours.json"
    run("export", file)
    household = own_records.get(Household)
    assert household is not None
    own_records.save(make_household(name="Changed since"), NOON, household.revision)
    own_records.save(make_place(id="new-place"), NOON)
    said = run("import", file)
    assert said.status == 0
    assert "Changed:\n  - household\n" in said.out
    assert "Removed:\n  - place new-place\n" in said.out
    assert "Nothing was changed." in said.out
    told = json.loads(run("import", file, "--json").out)
    assert_fits_schema(told, "import")
    assert (told["changed"], told["carried_out"], told["unchanged"]) == (["household"], False, 2)
    kept = own_records.get(Household)
    assert kept is not None
    assert kept.value.name == "Changed since"


@pytest.mark.usefixtures("own_records")
def test_importing_the_same_changes_nothing(run: Run, tmp_path: Path) -> None:
    """A file of what is on record already says so."""
    file = tmp_path / "ours.json"
    run("export", file)
    assert "exactly what is on record already" in run("import", file, "--yes").out


@pytest.mark.usefixtures("own_records")
def test_no_export_is_overwritten_unseen(run: Run, tmp_path: Path) -> None:
    """A file that is there already stays as it is unless `--replace` is said."""
    file = tmp_path / "ours.json"
    file.write_text("mine", encoding="utf-8")
    assert run("export", file).status == 1
    assert file.read_text(encoding="utf-8") == "mine"
    assert run("export", file, "--replace").status == 0


def test_the_demo_can_be_exported_by_name(run: Run, tmp_path: Path) -> None:
    """`--demo` and `--own` say whose records are meant, whatever the screens show."""
    file = tmp_path / "records.json"
    assert "the invented demo family's" in run("export", file, "--demo").out
    assert "0 records written, your own" in run("export", file, "--own", "--replace").out


@pytest.mark.parametrize(
    "content",
    [
        b"",
        b"{}",
        b"[1, 2",
        b"\xff\xfe",
        b"[" * 100_000,
        b'{"tripplan_records": 99, "documents": []}',
        b"x" * 20_000_000,
    ],
    ids=["empty", "no records", "cut short", "not text", "deep", "newer", "20 MB"],
)
def test_a_file_that_is_no_export_changes_nothing(
    run: Run, own_records: Records, tmp_path: Path, content: bytes
) -> None:
    """Whatever stands in it, it is refused with a reason."""
    before = own_records.raw_documents()
    file = tmp_path / "odd.json"
    file.write_bytes(content)
    said = run("import", file, "--yes")
    assert (said.status, said.out) == (2, "")
    assert said.err.startswith("odd.json: ")
    assert own_records.raw_documents() == before


def test_an_import_file_that_is_not_there_is_a_fault(run: Run, tmp_path: Path) -> None:
    """A missing file and a folder are told as what they are."""
    for file in (tmp_path / "missing.json", tmp_path):
        said = run("import", file)
        assert (said.status, said.out) == (2, "")
        assert "cannot be opened" in said.err


@pytest.mark.parametrize("what", ["files", "folder"])
def test_write_protected_records_are_planned_with_and_exported(
    run: Run, reachable_folder: Path, what: Sealed
) -> None:
    """Reading commands answer; one that writes ends with a sentence and status 2, and changes nothing."""
    folder = reachable_folder / "data"
    run("compare", "--demo", "--data", folder)  # the demo is there, and all that is used has been loaded
    exported = run("export", "-", "--demo", "--data", folder).out
    open_records(folder, Which.FAMILY, NOON).save(make_household(), NOON)  # there is something to copy
    with sealed(folder, what):
        compared = run("compare", "--demo", "--data", folder)
        out = run("export", "-", "--demo", "--data", folder)
        written = run("busy", "block", "Piano", "16:00", "17:00", "Tu", "--demo", "--data", folder)
        next_day = run("compare", "--demo", "--data", folder, "--today", "2026-11-26")
    assert (compared.status, out.status, out.out) == (0, 0, exported)
    assert (written.status, "write-protected" in written.err) == (2, True)
    assert next_day.status == 0
    assert ("there may be no copy of today" in next_day.err) == (what == "folder")
    assert run("export", "-", "--demo", "--data", folder).out == exported


@pytest.mark.usefixtures("own_records")
def test_a_full_disk_is_told_and_what_a_link_leads_to_stays(run: Run, tmp_path: Path) -> None:
    """A device is written to and nothing takes its place; a link stays, and its file is written."""
    full = Path("/dev/full")
    if not full.is_char_device():
        pytest.skip("this system has no device that is always full")
    link = tmp_path / "full.json"
    link.symlink_to(full)
    said = run("export", link, "--replace")
    assert (said.status, "cannot be written: No space left" in said.err) == (2, True)
    assert (link.is_symlink(), full.is_char_device()) == (True, True)
    link.unlink()
    file = tmp_path / "ours.json"
    link.symlink_to(file)
    assert run("export", link).status == 0
    assert link.is_symlink()
    assert json.loads(file.read_bytes())["tripplan_records"] == 1
