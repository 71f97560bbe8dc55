"""A table is read by a spreadsheet as it was meant, and nothing in it is run."""

import csv
import io
import tomllib
from datetime import date, datetime
from decimal import Decimal
from pathlib import Path

import pandas as pd
import pytest
from hypothesis import given
from hypothesis import strategies as st
from streamlit.config import get_config_options

from tripplan.files.tables import csv_table

ROOT = Path(__file__).resolve().parents[2]


def read(text: str, delimiter: str = ",") -> list[list[str]]:
    """The table as the standard library reads it."""
    return list(csv.reader(io.StringIO(text, newline=""), delimiter=delimiter))


def test_numbers_stay_numbers() -> None:
    """Amounts, also negative ones, are read as numbers by an independent reader."""
    text = csv_table(
        ("what", "cost"), [("parking", Decimal("5.00")), ("voucher", Decimal("-2.50")), ("hours", 3)]
    )
    table = pd.read_csv(io.StringIO(text))
    assert list(table["cost"]) == [5.0, -2.5, 3.0]
    assert list(table["what"]) == ["parking", "voucher", "hours"]


def test_dates_are_written_by_iso_8601_and_nothing_is_an_empty_cell() -> None:
    """Days and moments are written from year to second; what is not known stays empty."""
    rows = [(date(2026, 12, 18), datetime(2026, 12, 18, 9, 5), None)]  # noqa: DTZ001 - a wall clock
    assert read(csv_table(("day", "leave", "note"), rows))[1] == ["2026-12-18", "2026-12-18T09:05:00", ""]


@pytest.mark.parametrize(
    "text",
    [
        "=cmd|' /C calc'!A0",
        "+1+1",
        "-1+1",
        "@SUM(A1)",
        "\t=1+1",
        "\r=1+1",
        "  =1+1",
        "\ufeff=1+1",
        "\u200b=1+1",
        "\uff1d1+1",
        '=HYPERLINK("http://x.example","a")',
    ],
)
def test_no_cell_is_a_formula(text: str) -> None:
    """Whatever a spreadsheet would take for a formula gets an apostrophe in front, headings too."""
    heading, row = read(csv_table((text,), [(text,)]))
    assert heading[0].startswith("'")
    assert row[0].startswith("'")


def test_a_reader_that_splits_at_semicolons_finds_no_formula_either() -> None:
    """A formula behind a semicolon stays inside its quoted cell."""
    rows = read(csv_table(("name", "price"), [("mill;=1+1", 3)]), delimiter=";")
    assert not any(cell.startswith("=") for row in rows for cell in row)


@given(st.lists(st.tuples(st.text(max_size=20), st.text(max_size=20)), max_size=5))
def test_no_text_adds_a_line_or_a_cell(rows: list[tuple[str, str]]) -> None:
    """Whatever the cells hold, there are as many lines and cells as there were rows and columns."""
    text = csv_table(("one", "two"), rows)
    assert text.count("\r\n") == len(rows) + 1
    assert len(text.splitlines()) == len(rows) + 1
    table = read(text)
    assert [len(row) for row in table] == [2] * (len(rows) + 1)
    assert not any(cell.startswith(("=", "+", "-", "@", "\t", "\r")) for row in table for cell in row)


def test_markup_passes_as_text() -> None:
    """Quotation marks and angle brackets read back unchanged."""
    assert read(csv_table(("name",), [('<script>"x", y</script>',)]))[1] == ['<script>"x", y</script>']


def test_a_row_of_another_length_is_refused() -> None:
    """A table has the same number of cells in each row."""
    with pytest.raises(ValueError, match="a row has 1 cells, the table 2 columns"):
        csv_table(("a", "b"), [("x",)])


def test_tables_on_the_screen_hand_out_nothing_by_themselves() -> None:
    """Streamlit's own export of a table would let formulas through, so it is switched off."""
    settings = tomllib.loads((ROOT / ".streamlit" / "config.toml").read_text(encoding="utf-8"))
    assert settings["client"]["disableDataExport"] is True
    assert "client.disableDataExport" in get_config_options()
