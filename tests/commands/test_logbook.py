"""`tripplan logbook`: written, told, added up and handed out from the command line."""

import json
import tomllib
from pathlib import Path

import jsonschema  # type: ignore[import-untyped]
import pandas as pd
import pytest

from tests.commands.conftest import NOON, Run
from tests.planning.logbook.entries import make_entry
from tripplan.documents.logbook.entry import LogbookEntry
from tripplan.files.cards.logbook_file import write_logbook_entry
from tripplan.records.store import Records


@pytest.fixture
def entry_file(tmp_path: Path) -> Path:
    """An entry in a file, as somebody filled it in."""
    path = tmp_path / "entry.toml"
    entry = make_entry(party=["Ann", "Bo"], naps=[], children=[])
    path.write_text(write_logbook_entry(entry), encoding="utf-8")
    return path


def test_an_entry_goes_in_once_and_changes_only_when_asked(
    run: Run, own_records: Records, entry_file: Path
) -> None:
    """Written, it is on record; a second time it is refused, and with --replace it is changed."""
    said = run("logbook", "write", entry_file)
    assert (said.status, said.err) == (0, "")
    assert "$41.40 paid; 2 h 15 min there; 80 mi; some company." in said.out
    text = entry_file.read_text(encoding="utf-8")
    entry_file.write_text(text.replace("18.40", "19.40"), encoding="utf-8")
    assert run("logbook", "write", entry_file).status == 1
    assert run("logbook", "write", entry_file, "--replace").status == 0
    kept = own_records.get(LogbookEntry, "2026-11-14-test-museum")
    assert kept is not None
    assert (kept.revision, str(kept.value.paid[1].amount)) == (2, "19.40")


def test_an_entry_is_taken_out_and_stays_in_the_history(
    run: Run, own_records: Records, entry_file: Path
) -> None:
    """Removed, it can be brought back from the records; an unknown id is told with the known ones."""
    run("logbook", "write", entry_file)
    said = run("logbook", "remove", "2026-11-14-test-museum")
    assert (said.status, "is out of the logbook" in said.out) == (0, True)
    assert own_records.all(LogbookEntry) == {}
    assert own_records.undo(LogbookEntry, "2026-11-14-test-museum", NOON, 2) is not None
    again = run("logbook", "remove", "never")
    assert again.status == 2
    assert "known: 2026-11-14-test-museum" in again.err


def test_one_bad_file_keeps_all_out(run: Run, own_records: Records, entry_file: Path, tmp_path: Path) -> None:
    """Every fault is told with its file, and nothing is written."""
    bad = tmp_path / "bad.toml"
    bad.write_text('id = "x"\nday = 2027-01-01\n', encoding="utf-8")
    said = run("logbook", "write", entry_file, bad)
    assert said.status == 2
    assert "bad.toml: id" in said.err
    assert own_records.all(LogbookEntry) == {}


def test_a_draft_can_be_filled_in_and_written(run: Run, own_records: Records, tmp_path: Path) -> None:
    """What draft writes is a valid entry already; with a figure added it goes in."""
    path = tmp_path / "draft.toml"
    assert run("logbook", "draft", "test-museum", "2026-11-20", "--out", path).status == 0
    assert tomllib.loads(path.read_text(encoding="utf-8"))["party"] == ["Ann", "Bo"]
    path.write_text("receipts_total = 33.10\n" + path.read_text(encoding="utf-8"), encoding="utf-8")
    assert "$33.10 paid" in run("logbook", "write", path).out
    assert own_records.get(LogbookEntry, "2026-11-20-test-museum") is not None


def test_the_year_of_the_demo_adds_up(run: Run) -> None:
    """By hand from the six files: 42.00 + 59.50 + 137.00 + 47.35 + 0 + 60.30 = 346.15 of 900.00."""
    answer = json.loads(run("logbook", "year", "--demo", "--json").out)
    assert answer["year"]["spent"]["amount"] == "346.15"
    assert answer["year"]["left"]["amount"] == "553.85"
    assert [unit["name"] for unit in answer["study_units"]][-2:] == [
        "Water at work",
        "Seed, soil and harvest",
    ]
    assert run("logbook", "year", "--demo", "--of", "2020-01-01").status == 0


def test_the_record_leaves_as_table_page_and_pdf(run: Run, tmp_path: Path) -> None:
    """Three kinds of file from one question; names only where they were asked for."""
    for ending in ("csv", "html", "pdf"):
        path = tmp_path / f"record.{ending}"
        said = run("logbook", "record", "--demo", "--names", "ivo", "--state", "New York", "--out", path)
        assert (said.status, said.err) == (0, "")
        assert run("logbook", "record", "--demo", "--out", path).status == 1  # it is there already
    table = pd.read_csv(tmp_path / "record.csv")
    assert set(table["child"]) == {"Ivo", "P.", "O."}
    assert table[table["child"] == "Ivo"]["hours"].sum() == 14.5
    page = (tmp_path / "record.html").read_text(encoding="utf-8")
    assert "invented" in page
    assert not any(name in page for name in ("Petra", "Odile", "Quillmarsh"))
    assert (tmp_path / "record.pdf").read_bytes().startswith(b"%PDF")


@pytest.mark.parametrize(
    ("form", "asked"),
    [
        ("logbook-list", ("list",)),
        ("logbook-year", ("year",)),
        ("logbook-record", ("record", "--names", "Ivo", "--household-name")),
        ("logbook-learned", ("learned",)),
    ],
)
def test_answers_fit_their_schema(run: Run, form: str, asked: tuple[str, ...]) -> None:
    """An answer in JSON is valid by the schema that is printed for it."""
    told = json.loads(run("logbook", *asked, "--demo", "--json").out)
    schema = json.loads(run("schema", form).out)
    jsonschema.validate(told, schema, cls=jsonschema.Draft202012Validator)
    assert told["data"] == "demo"


def test_the_list_tells_everything_and_leaves_as_a_table(run: Run, tmp_path: Path) -> None:
    """With --why each outing stands against its plan; the table has one row an outing."""
    told = run("logbook", "list", "--demo", "--why", "--from", "2026-11-01", COLUMNS="200").out
    assert "Against the plan:" in told
    assert "Food: planned $12.50, was $14.80 ($2.30 more)." in told
    assert "Wren's Turn" not in told
    path = tmp_path / "all.csv"
    assert run("logbook", "list", "--demo", "--csv", path).status == 0
    assert len(pd.read_csv(path)) == 6


@pytest.mark.usefixtures("own_records")
def test_what_is_learned_says_whether_plans_use_it(run: Run, entry_file: Path) -> None:
    """Switched off in the demo, on in the family's own records; without outings there is nothing to tell."""
    assert "switched off; plans keep the usual" in run("logbook", "learned", "--demo").out
    assert run("logbook", "learned").status == 1
    run("logbook", "write", entry_file)
    assert "plans are made with it" in run("logbook", "learned").out


@pytest.mark.parametrize(
    ("asked", "fault"),
    [
        (("record", "--names", "Nobody"), "--names"),
        (("record", "--state", "Atlantis"), "--state"),
        (("record", "--out", "record.docx"), "--out"),
        (("record", "--from", "2026-12-01", "--to", "2026-11-01"), "--to"),
        (("list", "--from", "soon"), "--from"),
        (("year", "--of", "soon"), "--of"),
        (("draft", "--planned", "never"), "--planned"),
        (("draft", "nowhere"), "PLACE"),
    ],
)
def test_bad_input_is_told_with_its_option(run: Run, asked: tuple[str, ...], fault: str) -> None:
    """Status 2 and the option's name, never a traceback."""
    said = run("logbook", *asked, "--demo")
    assert said.status == 2
    assert fault in said.err


def test_without_a_household_there_is_no_logbook(run: Run) -> None:
    """The way out is told."""
    said = run("logbook", "list", "--own")
    assert said.status == 2
    assert "no household on record" in said.err
