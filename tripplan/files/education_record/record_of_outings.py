"""The record for home-education authorities as CSV, and as one HTML page to read and print."""

from collections.abc import Iterable, Iterator
from decimal import Decimal

from tripplan.files.html_page import escape, page_head
from tripplan.files.tables import Cell, csv_table
from tripplan.language import wording
from tripplan.planning.logbook.education_record import ChildTotal, EducationRecord, RecordLine

TITLE = "Record of outings"
COLUMNS = ("Day", "Child", "Where", "Hours", "Subjects", "Did and learned")
TOTAL_COLUMNS = ("Child", "Days", "of them away", "Hours", "of them away", "Subjects")

_STYLE = """
body { max-width: 72rem; font-size: 1rem; line-height: 1.4; overflow-wrap: break-word; }
h2 { font-size: 1.1em; margin: 1.4em 0 .4em; }
table { border-collapse: collapse; width: 100%; }
th, td { text-align: left; vertical-align: top; padding: .3em .6em .3em 0;
  border-bottom: 1px solid var(--rule); }
td.number { font-variant-numeric: tabular-nums; white-space: nowrap; }
@media screen and (max-width: 40rem) {
  thead { display: none; }
  tr { display: block; border-bottom: 1px solid var(--rule); padding: .4em 0; }
  td { display: block; border: 0; padding: .1em 0; }
  td::before { content: attr(data-name) ": "; color: var(--quiet); }
}
@media print {
  @page { margin: 12mm; }
  body { font-size: 9pt; }
  thead { display: table-header-group; }
  tr { break-inside: avoid; }
}
"""


def record_csv(record: EducationRecord) -> str:
    """One row for each child on each outing; hours are numbers, and empty where none are counted."""
    columns = (
        "day",
        "child",
        "grade band",
        "where",
        "away from home",
        "counts as day",
        "hours",
        "subjects",
        "did",
        "learned",
    )
    return csv_table(columns, (tuple(_row(line)) for line in record.lines))


def _row(line: RecordLine) -> Iterable[Cell]:
    yield from (line.day, line.child, line.grade_band, line.where)
    yield "away" if line.away else "home"
    yield 1 if line.counts_as_day else 0
    yield line.hours
    yield from (subjects_told(line), line.did, line.learned)


def subjects_told(line: RecordLine) -> str:
    """The subjects of a line, such as 'science (1.5 h), Algebra 1'; a name may end in a number."""
    return ", ".join(
        name if hours is None else f"{name} ({hours_told(hours)})" for name, hours in line.subjects
    )


def hours_told(hours: Decimal | None) -> str:
    """Hours, such as '2.5 h'; 'not counted' where there are none."""
    return "not counted" if hours is None else f"{hours.normalize():f} h"


def period_told(record: EducationRecord) -> str:
    """The period in words."""
    return f"{wording.day(record.first)} to {wording.day(record.last)}"


def line_cells(line: RecordLine) -> tuple[str, ...]:
    """What a line says under `COLUMNS`."""
    where = line.where if line.away else f"{line.where} (at home)"
    hours = hours_told(line.hours) if line.counts_as_day else f"{hours_told(line.hours)}; no school day"
    child = f"{line.child}, {line.grade_band}" if line.grade_band else line.child
    learned = f"Learned: {_sentence(line.learned)}" if line.learned.strip() else ""
    told = " ".join(filter(None, (_sentence(line.did), learned)))
    return (wording.day(line.day), child, where, hours, subjects_told(line), told)


def _sentence(text: str) -> str:
    words = " ".join(text.split())
    if not words:
        return ""
    words = wording.capital(words)
    return words if words.endswith((".", "!", "?")) else f"{words}."


def total_cells(total: ChildTotal) -> tuple[str, ...]:
    """What a child's totals say under `TOTAL_COLUMNS`."""
    child = f"{total.child}, {total.grade_band}" if total.grade_band else total.child
    lacking = f" ({total.days_without_hours} days without hours)" if total.days_without_hours else ""
    subjects = ", ".join(
        f"{one.subject} ({wording.counted(one.days, 'day')}"
        + (f", {hours_told(one.hours)})" if one.hours is not None else ")")
        for one in total.subjects
    )
    return (
        child,
        str(total.days),
        str(total.days_away),
        f"{hours_told(total.hours)}{lacking}",
        hours_told(total.hours_away),
        subjects,
    )


def closing_lines(record: EducationRecord) -> Iterator[str]:
    """What stands below the tables: the note on rules, and a state's figures where they were asked for."""
    yield record.rules_differ
    if record.state is not None:
        rule = record.state
        yield (
            f"{rule.state}, as published and no advice: {rule.text} Source: {rule.source}, {rule.read}. "
            "It may have changed since."
        )


def record_html(record: EducationRecord, notice: str = "") -> str:
    """The record as a whole HTML document that loads nothing and prints on paper.

    Args:
        record: what it says.
        notice: a line below the title, such as that the family is invented.
    """
    head = [period_told(record), *filter(None, (record.household, notice))]
    lines = "".join(f'<p class="quiet">{escape(text)}</p>\n' for text in head)
    closing = "".join(f'<p class="quiet">{escape(text)}</p>\n' for text in closing_lines(record))
    return f"""{page_head(f"{TITLE}, {period_told(record)}", _STYLE)}<body>
<h1>{TITLE}</h1>
{lines}<h2>In all</h2>
{_table(TOTAL_COLUMNS, map(total_cells, record.totals))}<h2>Day by day</h2>
{_table(COLUMNS, map(line_cells, record.lines))}{closing}</body>
</html>
"""


def _table(columns: tuple[str, ...], rows: Iterable[tuple[str, ...]]) -> str:
    head = "".join(f'<th scope="col">{escape(name)}</th>' for name in columns)
    body = "".join(
        "<tr>"
        + "".join(
            f'<td data-name="{escape(name)}">{escape(cell)}</td>'
            for name, cell in zip(columns, row, strict=True)
        )
        + "</tr>\n"
        for row in rows
    )
    if not body:
        return '<p class="quiet">Nothing was recorded in this period.</p>\n'
    return f"<table>\n<thead><tr>{head}</tr></thead>\n<tbody>\n{body}</tbody>\n</table>\n"
