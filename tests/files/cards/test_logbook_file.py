"""A logbook entry's file reads back the same, and tables and pages of outings are safe to open."""

import csv
import io
import re
from dataclasses import replace
from datetime import UTC, date, datetime
from html import unescape
from io import BytesIO, StringIO
from pathlib import Path
from typing import Any

import pandas as pd
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from pypdf import PdfReader

from tests.builders import make_household
from tests.planning.logbook.entries import make_entry
from tests.planning.logbook.test_against_plan import said
from tripplan.documents.logbook.entry import LogbookEntry
from tripplan.documents.logbook.settings import LogbookSettings
from tripplan.errors import Weight
from tripplan.files.cards.logbook_file import (
    load_logbook_entry,
    logbook_csv,
    read_logbook_entry,
    write_logbook_entry,
)
from tripplan.files.day_sheet.day_sheet_pdf import Paper
from tripplan.files.education_record.record_of_outings import record_csv, record_html
from tripplan.files.education_record.record_pdf import record_letters_lacking, record_pdf
from tripplan.planning.logbook.education_record import EducationRecord, education_record
from tripplan.planning.logbook.state_rules import RULES_DIFFER, state_rule
from tripplan.values.visible import shows_something

TODAY = date(2026, 11, 25)
NOON = datetime(2026, 11, 25, 12, tzinfo=UTC)
HOUSEHOLD = make_household()
HOSTILE = ("=1+1", "+1", "-1+1", "@SUM(A1)", "\t=1", "\r=1", "＝1", "＋1", "－1", "＠A1")  # noqa: RUF001 - meant


def record(*entries: LogbookEntry, **changes: Any) -> EducationRecord:
    """The record of some outings."""
    days = (date(2026, 7, 1), date(2027, 6, 30))
    return education_record(entries, HOUSEHOLD, LogbookSettings(), *days, **changes)


def test_an_entrys_file_reads_back_the_same() -> None:
    """Everything that an entry can hold survives TOML, the plan's figures included."""
    entry = make_entry(
        as_planned=said(),
        fuel={"amount": "4.3", "unit": "US gal"},
        receipts_total="55.10",
        food="both",
        study_unit="Water",
        weather="sleet",
        notes="first line\nsecond line",
    )
    read = read_logbook_entry(write_logbook_entry(entry), "entry.toml", TODAY, HOUSEHOLD)
    assert (read.value, read.findings) == (entry, ())


def test_every_fault_of_an_entry_is_told_at_once() -> None:
    """A wrong price, a wrong time, an unknown field and a missing party: each with its field."""
    text = write_logbook_entry(make_entry(km=None))
    bad = (
        text.replace("18.40", "18.405").replace("arrived = 10:25:00", 'arrived = "soon"')
        + '\n[fuel]\nunit = "tin"\n'
    )
    read = read_logbook_entry(bad, "entry.toml", TODAY)
    assert read.value is None
    assert {f.field for f in read.findings} >= {"paid[1].amount", "arrived", "fuel.unit", "fuel.amount"}


def test_the_logbook_tells_what_was_and_knows_who_is_who() -> None:
    """A day to come is a fault; a stranger and another currency bring warnings."""
    early = read_logbook_entry(write_logbook_entry(make_entry()), "entry.toml", date(2026, 11, 13))
    assert [(f.field, f.weight) for f in early.findings] == [("day", Weight.FAULT)]
    stranger = make_entry(party=["Ann", "Cy", "Di", "Uncle"], currency="EUR")
    read = read_logbook_entry(write_logbook_entry(stranger), "entry.toml", TODAY, HOUSEHOLD)
    assert read.value == stranger
    assert [(f.field, f.weight) for f in read.findings] == [
        ("party[3]", Weight.WARNING),
        ("currency", Weight.WARNING),
    ]


def test_a_file_that_is_not_there_is_told(tmp_path: Path) -> None:
    """In words, and with its name."""
    read = load_logbook_entry(tmp_path / "no.toml", TODAY)
    assert read.value is None
    assert "no.toml: cannot be opened" in str(read.findings[0])


def test_numbers_of_the_table_are_numbers_and_unknown_is_empty() -> None:
    """Read by pandas: amounts add up, what nobody noted is missing and no zero."""
    entries = (
        make_entry(as_planned=said()),
        make_entry(id="2026-11-15-walk", day="2026-11-15", paid=[], km=None, fullness=None),
    )
    table = pd.read_csv(StringIO(logbook_csv(entries)))
    assert table["paid in all"].sum() == 41.40
    assert list(table["paid in all"].isna()) == [False, True]
    assert table["paid for parking"].isna().all()
    assert table["minutes late in leaving"].iloc[0] == 15
    assert list(table["minutes there"]) == [135, 135]


@pytest.mark.parametrize("text", HOSTILE)
def test_no_cell_of_any_table_is_run_or_adds_a_line(text: str) -> None:
    """Formula starts, full-width ones too, in names, titles and notes get an apostrophe; breaks vanish."""
    nasty = f"{text}\nsecond\r\nthird"
    entry = make_entry(
        title=f"x{text}" if not text.strip() else text.strip(),
        party=["Ann", "=Cy\n2", "Di"],
        children=[{"member": "=Cy\n2", "did": nasty, "learned": nasty, "subjects": [{"subject": text}]}],
        notes=nasty,
    )
    for table in (logbook_csv([entry]), record_csv(record(entry, named=["=Cy\n2"]))):
        rows = list(csv.reader(io.StringIO(table, newline="")))
        assert len(rows) == 2
        assert len(table.splitlines()) == 2
        starts = ("=", "+", "-", "@", "\t", "\r", "＝", "＋", "－", "＠")  # noqa: RUF001 - meant
        assert not any(cell.startswith(starts) for cell in rows[1])
        assert len(pd.read_csv(StringIO(table))) == 1


@settings(max_examples=60)
@given(st.text(min_size=1, max_size=40), st.text(max_size=60))
def test_whatever_is_written_the_table_keeps_its_shape(title: str, did: str) -> None:
    """One outing is one row with as many cells as the heading, read by the standard library."""
    if not shows_something(title) or any("\ud800" <= letter <= "\udfff" for letter in title + did):
        return
    entry = make_entry(title=title, children=[{"member": "Cy", "did": did, "hours": "1.5"}])
    for table in (logbook_csv([entry]), record_csv(record(entry))):
        heading, row = csv.reader(io.StringIO(table, newline=""))
        assert len(row) == len(heading)


def test_hours_of_the_record_add_up_in_pandas() -> None:
    """Hours and counted days are numbers; a child without hours leaves its cell empty."""
    without = {"member": "Di", "did": "waded", "counts_as_day": False}
    entry = make_entry(children=[{"member": "Cy", "hours": "2.25"}, without])
    table = pd.read_csv(StringIO(record_csv(record(entry))))
    assert table["hours"].sum() == 2.25
    assert list(table["hours"].isna()) == [False, True]
    assert list(table["counts as day"]) == [1, 0]


def test_the_page_loads_nothing_and_escapes_everything() -> None:
    """No script of what somebody wrote is one; the note on rules and a state's source are there."""
    entry = make_entry(children=[{"member": "Cy", "did": "<script>alert(1)</script>"}])
    page = record_html(record(entry, state=state_rule("New York")), "Invented.")
    assert "<script" not in page
    assert "&lt;script&gt;alert(1)" in page
    assert "default-src 'none'" in page
    assert "http://" not in page.replace("http-equiv", "")
    assert RULES_DIFFER in unescape(page)
    assert "8 NYCRR 100.10" in page
    assert "Invented." in page
    assert "@media print" in page


def test_the_pdf_can_be_read_back_over_several_pages() -> None:
    """A long year's record repeats its heading on each page and ends with the note on rules."""
    entries = [
        make_entry(id=f"2026-{month:02}-{day:02}-trip", day=f"2026-{month:02}-{day:02}", title="Žďár mill")
        for month in (9, 10)
        for day in range(1, 21)
    ]
    year = record(*entries, named=["Cy"])
    pages = PdfReader(BytesIO(record_pdf(year, Paper.LETTER, NOON))).pages
    assert len(pages) > 1
    texts = [" ".join(page.extract_text().split()) for page in pages]
    assert all("Did and learned" in text for text in texts[:-1])
    assert "Rules on home education differ" in texts[-1]
    assert "Žďár mill" in texts[0]
    assert "Cy 40 40" in texts[0]  # days in all, days away


def test_a_row_that_is_higher_than_a_page_goes_on_on_the_next() -> None:
    """As much as a form can hold of what was learned is printed whole, under a head on each page."""
    words = [f"w{number}" for number in range(700)]
    told = record(make_entry(), named=["Cy"])
    long = replace(told, lines=tuple(replace(line, learned=" ".join(words)) for line in told.lines))
    pages = PdfReader(BytesIO(record_pdf(long, Paper.A4, NOON))).pages
    texts = [page.extract_text() for page in pages]
    assert len(texts) > 1
    assert set(re.findall(r"w\d+", " ".join(texts).lower())).issuperset(words)
    assert sum("Did and learned" in " ".join(text.split()) for text in texts) >= len(texts) - 1


def test_letters_that_the_pdf_lacks_are_told() -> None:
    """Chinese characters are not in its typeface."""
    assert record_letters_lacking(record(make_entry(title="石臼"))) == "".join(sorted("石臼"))
    empty = replace(record(), lines=())
    assert record_pdf(empty, Paper.A4, NOON).startswith(b"%PDF")
    assert "Nothing was recorded" in record_html(empty)
