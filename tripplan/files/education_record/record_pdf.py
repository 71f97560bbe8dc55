"""The record for home-education authorities as a PDF of as many pages as it takes."""

import tempfile
from collections.abc import Iterable, Sequence
from datetime import datetime
from itertools import zip_longest
from pathlib import Path
from typing import TYPE_CHECKING

from tripplan.files.day_sheet.day_sheet_pdf import Paper, letters_lacking
from tripplan.files.education_record.record_of_outings import (
    COLUMNS,
    TITLE,
    TOTAL_COLUMNS,
    closing_lines,
    line_cells,
    period_told,
    total_cells,
)
from tripplan.files.pdf_lines import LineBreaker
from tripplan.files.pdf_typeface import FAMILY, blank_pdf
from tripplan.planning.logbook.education_record import EducationRecord

if TYPE_CHECKING:
    from fpdf import FPDF

MARGIN = 12.0
"""Around the page [mm]."""
_SIZE, _LINE = 8.5, 4.2
"""Size of type [pt] and height of a line [mm]."""
_ABOVE, _BESIDE = 0.8, 1.2
"""Room above and below a row, and between two columns [mm]."""
_WIDTHS, _TOTAL_WIDTHS = (22, 20, 34, 20, 36, 58), (28, 14, 20, 30, 20, 78)
"""Widths of the columns, in parts of the page's."""


def record_pdf(record: EducationRecord, paper: Paper, written_at: datetime, notice: str = "") -> bytes:
    """Set the record in tables whose head stands on each page.

    Args:
        record: what it says.
        paper: what it is printed on.
        written_at: noted in the file; zone-aware.
        notice: a line below the title, such as that the family is invented.

    Returns:
        The file. Letters that its typeface lacks (`record_letters_lacking`) are drawn as empty boxes.
    """
    with tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as folder:
        pdf = blank_pdf(f"{TITLE}, {period_told(record)}", paper.value, Path(folder))
        pdf.set_creation_date(written_at)
        pdf.set_margin(MARGIN)
        pdf.set_auto_page_break(True, MARGIN)
        pdf.add_page()
        _lines(pdf, [TITLE], 1.8, bold=True)
        _lines(pdf, [period_told(record), *filter(None, (record.household, notice))])
        _lines(pdf, ["", "In all"], 1.2, bold=True)
        _table(pdf, TOTAL_COLUMNS, _TOTAL_WIDTHS, map(total_cells, record.totals))
        _lines(pdf, ["", "Day by day"], 1.2, bold=True)
        _table(pdf, COLUMNS, _WIDTHS, map(line_cells, record.lines))
        _lines(pdf, ["", *closing_lines(record)])
        return bytes(pdf.output())


def record_letters_lacking(record: EducationRecord) -> str:
    """Letters of a record that the PDF's typeface lacks, each once, in order; the HTML page shows them."""
    cells = (cell for line in record.lines for cell in line_cells(line))
    return letters_lacking("".join((record.household, *cells)))


def _lines(pdf: "FPDF", texts: Iterable[str], larger: float = 1.0, *, bold: bool = False) -> None:
    pdf.set_font(FAMILY, "B" if bold else "", _SIZE * larger)
    for text in texts:
        pdf.multi_cell(0, _LINE * larger, text, align="L", new_x="LMARGIN", new_y="NEXT")


def _table(pdf: "FPDF", columns: Sequence[str], widths: Sequence[int], rows: Iterable[Sequence[str]]) -> None:
    """A table whose head stands on each page; a row that is higher than what is left goes on on the next."""
    told = list(rows)
    if not told:
        _lines(pdf, ["Nothing was recorded in this period."])
        return
    breaker, part = LineBreaker(pdf), pdf.epw / sum(widths)

    def row(cells: Sequence[str], *, bold: bool = False) -> None:
        broken = [
            breaker.lines(cell, width * part - _BESIDE, _SIZE, bold=bold)
            for cell, width in zip(cells, widths, strict=True)
        ]
        pdf.set_y(pdf.y + _ABOVE)
        for line in zip_longest(*broken, fillvalue=""):
            if not bold and pdf.y + _LINE + _ABOVE > pdf.h - MARGIN:
                pdf.add_page()
                row(columns, bold=True)
                pdf.set_y(pdf.y + _ABOVE)
            pdf.set_font(FAMILY, "B" if bold else "", _SIZE)
            for text, width in zip(line, widths, strict=True):
                pdf.cell(width * part, _LINE, text)
            pdf.ln(_LINE)
        pdf.set_y(pdf.y + _ABOVE)
        pdf.line(pdf.l_margin, pdf.y, pdf.w - pdf.r_margin, pdf.y)

    for number, cells in enumerate((columns, *told)):
        row(cells, bold=number == 0)
