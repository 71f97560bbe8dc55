"""Text for people: lines that fit, tables that stay in line, nothing that moves the cursor."""

import io
import os
import subprocess
import sys
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from rich.cells import cell_len

from tripplan.commands.output.console import NARROWEST, WIDEST, Console, aligned, terminal_width, wrapped

ROOT = Path(__file__).resolve().parents[2]
TEXT = st.text(st.characters(codec="utf-8"), max_size=60)


def said(width: int, heads: list[str], rows: list[list[str]]) -> str:
    """A table as the console says it."""
    out = io.StringIO()
    Console(out, io.StringIO(), width).table(heads, rows)
    return out.getvalue()


@given(TEXT, st.integers(20, 60), st.integers(0, 6))
def test_no_line_is_longer_than_the_terminal(text: str, width: int, indent: int) -> None:
    """However a paragraph is written, its lines fit."""
    assert all(len(line) <= width for line in wrapped(text, width, indent, hanging=2))


@given(st.lists(st.lists(TEXT, min_size=3, max_size=3), max_size=4), st.integers(20, 90))
def test_no_table_is_wider_than_the_terminal(rows: list[list[str]], width: int) -> None:
    """Columns give way, and where they cannot, each row becomes a block."""
    lines = said(width, ["day", "place", "in all"], rows).splitlines()
    assert all(cell_len(line) <= width for line in lines)  # a combining mark takes no column


def test_columns_stand_below_each_other() -> None:
    """Every column begins at the same place on every line."""
    lines = aligned(["day", "cost"], [["Mon", "$5"], ["Wednesday", "$12"]], 40)
    assert lines == ["day        cost", "---------  ----", "Mon        $5", "Wednesday  $12"]


def test_scripts_of_double_width_stay_in_line() -> None:
    """A character that takes two columns of the terminal counts as two."""
    lines = aligned(["place", "cost"], [["博物館", "$5"], ["Museum", "$7"]], 40)
    assert lines == ["place   cost", "------  ----", "博物館  $5", "Museum  $7"]


def test_a_long_cell_is_wrapped_in_its_column() -> None:
    """The widest column gives way first."""
    lines = aligned(["a", "b"], [["x", "one two three four"]], 14)
    assert lines == ["a  b", "-  -----------", "x  one two", "   three four"]


def test_too_narrow_a_terminal_gets_blocks() -> None:
    """Where words would have to be cut, each row is told line by line."""
    assert said(18, ["place", "full house"], [["Lighthouse", "almost none"], ["Mill", "some company"]]) == (
        "place: Lighthouse\nfull house: almost\n  none\n\nplace: Mill\nfull house: some\n  company\n"
    )


def test_comparison_blocks_keep_each_place_together() -> None:
    """Side by side turns into one block a column, not one a row."""
    out = io.StringIO()
    heads, rows = ["", "Lighthouse", "Watermill"], [["in all", "$100", "$90"]]
    Console(out, io.StringIO(), 20).side_by_side(heads, rows)
    assert out.getvalue() == "Lighthouse\nin all: $100\n\nWatermill\nin all: $90\n"


def test_a_name_cannot_move_the_cursor() -> None:
    """Control characters and turned directions do not reach the terminal."""
    out = io.StringIO()
    console = Console(out, out, 60)
    for text in ("red \x1b[31m", "bell \x07", "back \u202egnp", "c1 \x9b2J", "two\nlines"):
        console.line(text)
        console.remark(text)
        console.table(["place"], [[text]])
    assert not set(out.getvalue()) & set("\x1b\x07\u202e\x9b")


@pytest.mark.parametrize(
    ("columns", "width"), [("72", 72), ("3", NARROWEST), ("99999", WIDEST)], ids=["said", "tiny", "huge"]
)
def test_width_is_what_the_environment_says(columns: str, width: int) -> None:
    """`COLUMNS` is believed within reason."""
    assert terminal_width({"COLUMNS": columns}) == width


@pytest.mark.parametrize("columns", ["", "0", "wide", "-5", "9" * 30])
def test_a_width_that_makes_no_sense_is_passed_over(columns: str) -> None:
    """Nonsense in `COLUMNS` is like nothing, and so is 0, by which a terminal says that it does not know."""
    assert terminal_width({"COLUMNS": columns}) == terminal_width({})


def _settings(tmp_path: Path, **more: str) -> dict[str, str]:
    return {**os.environ, "TRIPPLAN_DATA": str(tmp_path), "PYTHONPATH": str(ROOT), **more}


def test_a_terminal_without_unicode_shows_stand_ins(tmp_path: Path) -> None:
    """A place's name that the terminal's encoding lacks is no reason to fail."""
    name = tmp_path / "Schloß.toml"
    name.write_text("id = 1\n", encoding="utf-8")
    result = subprocess.run(
        [sys.executable, "-m", "tripplan", "check", str(name)],
        capture_output=True,
        env=_settings(tmp_path, PYTHONIOENCODING="ascii", COLUMNS="200"),
        check=False,
    )
    assert (result.returncode, result.stderr) == (2, b"")
    assert b"Schlo?.toml: place card" in result.stdout


def test_a_reader_that_has_had_enough_is_no_error(tmp_path: Path) -> None:
    """With the pipe closed at the other end the command ends without a word."""
    process = subprocess.Popen(
        [sys.executable, "-m", "tripplan", "schema", "compare"],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        env=_settings(tmp_path),
    )
    assert process.stdout is not None
    assert process.stderr is not None
    process.stdout.close()
    complaints = process.stderr.read()
    process.stderr.close()
    assert (process.wait(), complaints) == (1, b"")


def test_an_answer_that_cannot_be_written_is_told() -> None:
    """Where the disk that the answer is sent to is full there is a sentence, status 1, and no traceback."""
    full = Path("/dev/full")
    if not full.is_char_device():
        pytest.skip("this system has no device that is always full")
    command = [sys.executable, "-m", "tripplan", "--version"]
    with full.open("w") as out:
        done = subprocess.run(command, cwd=ROOT, stdout=out, stderr=subprocess.PIPE, text=True)
    said = "The answer could not be written: No space left on device\n"
    assert (done.returncode, done.stderr) == (1, said)


@pytest.mark.parametrize(
    ("closed", "status", "said"),
    [(">&-", 1, "The answer could not be written: the standard output is closed\n"), ("2>&-", 0, "")],
)
def test_a_stream_that_is_closed_is_no_traceback(tmp_path: Path, closed: str, status: int, said: str) -> None:
    """Without an output there is a sentence and status 1; without a place for remarks the answer comes."""
    command = f"exec {sys.executable} -m tripplan --version {closed}"
    done = subprocess.run(
        ["sh", "-c", command], capture_output=True, text=True, env=_settings(tmp_path), check=False
    )
    assert (done.returncode, done.stderr) == (status, said)
    assert bool(done.stdout) is (status == 0)
