"""Tables as CSV that a spreadsheet shows as they are, and never runs."""

import csv
import io
from collections.abc import Iterable, Sequence
from datetime import date, datetime, time
from decimal import Decimal

from tripplan.values.plain_text import one_line

Cell = str | int | float | Decimal | date | datetime | time | None

# What makes a spreadsheet take a text for a formula; full-width forms count in some countries.
_FORMULA_STARTS = ("=", "+", "-", "@", "＝", "＋", "－", "＠")  # noqa: RUF001 - meant
_INVISIBLE = "\ufeff\u200b\u2060"


def csv_table(columns: Sequence[str], rows: Iterable[Sequence[Cell]]) -> str:
    """A table as CSV after RFC 4180, a heading first.

    A text that a spreadsheet would take for a formula gets an apostrophe in front; numbers stay numbers. A
    cell never holds a line break.

    Args:
        columns: the headings.
        rows: as many cells each as there are columns.

    Raises:
        ValueError: a row has another number of cells.

    Source: OWASP Foundation, CSV Injection (the starting characters; from memory).
    """
    text = io.StringIO()
    # All texts are quoted, so that a reader which splits at semicolons finds no formula behind one either.
    writer = csv.writer(text, lineterminator="\r\n", quoting=csv.QUOTE_NONNUMERIC)
    writer.writerow([_harmless(name) for name in columns])
    for row in rows:
        if len(row) != len(columns):
            raise ValueError(f"a row has {len(row)} cells, the table {len(columns)} columns")
        writer.writerow([_harmless(cell) for cell in row])
    return text.getvalue()


def _harmless(cell: Cell) -> object:
    if not isinstance(cell, str):
        return cell.isoformat() if isinstance(cell, date | time) else cell
    line = one_line(cell.lstrip(_INVISIBLE))
    return f"'{line}" if line.startswith(_FORMULA_STARTS) else line
