"""School calendars from tables: what is read, what is asked, and every fault at once."""

from datetime import date
from zoneinfo import ZoneInfo

import pytest

from tests.builders import out_of_school
from tripplan.documents.calendars.calendars import DateSpan, SchoolCalendar
from tripplan.errors import Weight
from tripplan.files.calendars.school_calendar_file import (
    Meaning,
    propose_school_calendar,
    school_calendar_from,
)
from tripplan.files.calendars.school_table_file import (
    MOST_FAULTS,
    DateOrder,
    SchoolTable,
    dates_to_ask_about,
    read_school_table,
)
from tripplan.files.toml.reading_result import ReadResult

CHICAGO = ZoneInfo("America/Chicago")
WINDOW = DateSpan(first=date(2026, 7, 1), last=date(2027, 12, 31))
TABLE = """first day,last day,name,kind
2026-08-24,,School begins,first day of school
2026-12-21,2027-01-01,Winter rest,no school
2026-10-14,,Early release,
2027-02-12,,Conferences,short day
2027-03-15,2027-03-19,Spring break,
2027-06-04,,Classes end,last day of school
"""


def read(table: str | bytes, order: DateOrder | None = None) -> ReadResult[SchoolTable]:
    """What is made of a table."""
    return read_school_table(
        table if isinstance(table, bytes) else table.encode(), "days.csv", WINDOW, CHICAGO, order
    )


def messages(result: ReadResult[SchoolTable]) -> str:
    """Everything that was found, in one text."""
    return "\n".join(map(str, result.findings))


def calendar(table: str) -> SchoolCalendar:
    """The school calendar a table becomes."""
    found = read(table).usable()
    proposal = propose_school_calendar(found.content, "days.csv", told=found.told).usable()
    return school_calendar_from(proposal, country="US", latitude=40, longitude=-89)


@pytest.mark.parametrize("between", [",", ";", "\t"])
@pytest.mark.parametrize("line_end", ["\n", "\r\n"])
def test_a_table_becomes_a_calendar(between: str, line_end: str) -> None:
    """Whatever lies between the cells: breaks, short days apart, and the span from first to last day."""
    made = calendar(TABLE.replace(",", between).replace("\n", line_end))
    assert made.known == DateSpan(first=date(2026, 8, 24), last=date(2027, 6, 4))
    assert [span.name for span in made.no_school] == ["Winter rest", "Spring break"]
    assert [span.name for span in made.short_days] == ["Early release", "Conferences"]
    assert out_of_school(made, date(2027, 2, 12)) is False


def test_what_the_table_says_beats_the_guess_from_the_name() -> None:
    """'Winter rest' sounds like nothing, but its kind says no school; 'Spring break' is guessed."""
    found = read(TABLE).usable()
    assert set(found.told.values()) == {
        Meaning.FIRST_DAY, Meaning.NO_SCHOOL, Meaning.SHORT_DAY, Meaning.LAST_DAY,
    }  # fmt: skip
    other = TABLE.replace("Spring break,", "Spring break,other")
    assert [span.name for span in calendar(other).no_school] == ["Winter rest"]


def test_dates_with_the_day_first_are_asked_about_and_never_guessed() -> None:
    """Even 25/12/2026, which could be only one thing: the next row's 03/04/2027 could be two."""
    table = "first day,name\n25/12/2026,Christmas\n03/04/2027,Break\n"
    assert dates_to_ask_about(table.encode()) == ("25/12/2026", "03/04/2027")
    refused = read(table)
    assert refused.value is None
    assert messages(refused).count("say whether the day or the month comes first") == 2
    day_first = read(table, DateOrder.DAY_FIRST).usable().content.entries
    assert [entry.first_day for entry in day_first] == [date(2026, 12, 25), date(2027, 4, 3)]
    wrong = read(table, DateOrder.MONTH_FIRST)
    assert wrong.value is None
    assert "row 2, first day" in messages(wrong)
    assert dates_to_ask_about(TABLE.encode()) == ()


def test_every_fault_of_a_table_is_told_with_its_row() -> None:
    """Nothing is read of a table with faults, and all of them are named."""
    bad = (
        "first day;last day;name;kind\n"
        "2026-13-01;;Break;\n2026-12-21;2026-12-20;Backwards;\n2026-09-07;;;\n"
        "2026-10-01;;Odd;holiday perhaps\n;;Nothing;\n2026-06-01;2027-06-01;Endless;\n24.12.26;;Short year;\n"
    )
    result = read(bad)
    assert result.value is None
    assert all(finding.weight is Weight.FAULT for finding in result.findings)
    for row, said in (
        (2, "is no date"), (3, "before the first day"), (4, "is empty; say what"), (5, "is one of no school"),
        (6, "is empty; a date"), (7, "more than 150 days"), (8, "is no date"),
    ):  # fmt: skip
        assert any(f"row {row}," in str(f) and said in str(f) for f in result.findings), row


def test_a_table_without_its_columns_says_which() -> None:
    """The first row names the columns."""
    assert "has no column 'first day'" in messages(read("date,name\n2026-09-07,Labor Day\n"))
    assert "names a column twice" in messages(read("first day,name,name\n2026-09-07,a,b\n"))
    extra = read("First_Day,NAME,colour\n2026-09-07,Labor Day,blue\n")
    assert extra.value is not None
    assert "colour" in messages(extra)


@pytest.mark.parametrize(
    ("data", "said"),
    [
        (b"", "has nothing in it"),
        (b"\n\n", "has nothing in it"),
        (b"\x00\x01", "is no table"),
        (b"first day,name\n", "has no rows"),
        (b"first day,name\n2019-03-01,Old\n", "one row lies outside"),
        (b'first day,name\n2026-12-01,"never closed\n2026-12-02,x\n', "cannot be read as a table"),
        (b"x" * 1_000_001, "is larger than"),
        (b"first day,name\n" + b"2026-12-01,x\n" * 40_000, "has more than 2000 rows"),
    ],
)
def test_tables_that_are_wrong_altogether_are_refused_in_words(data: bytes, said: str) -> None:
    """Empty, binary, of another year, with a quote that is never closed, or huge."""
    assert said in messages(read(data))


def test_a_thousand_faults_are_listed_as_far_as_one_reads() -> None:
    """The rest are counted."""
    result = read("first day,name\n" + "never,x\n" * 1000)
    assert len(result.findings) == MOST_FAULTS + 1
    assert "and 900 more faults" in messages(result)


def test_letters_of_an_old_encoding_are_read_and_said() -> None:
    """A spreadsheet may write é the old way."""
    result = read("first day,name\n2026-10-19,Congé\n".encode("cp1252"))
    assert result.usable().content.entries[0].summary == "Congé"
    assert "is not UTF-8" in messages(result)
