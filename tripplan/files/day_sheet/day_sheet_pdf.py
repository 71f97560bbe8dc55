"""The day sheet as a PDF of one page: two columns, in the largest type that fits."""

import tempfile
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from enum import StrEnum
from functools import lru_cache
from io import BytesIO
from pathlib import Path
from textwrap import wrap

from pymupdf_fonts import fontbuffers

from tripplan.files.day_sheet.day_sheet import DaySheet, SheetLine
from tripplan.files.day_sheet.day_sheet_html import NOTES
from tripplan.files.pdf_lines import LineBreaker
from tripplan.files.pdf_typeface import FACES, FAMILY, blank_pdf

MARGIN, GUTTER, GAP = 10.0, 6.0, 1.8
"""Around the page, between the columns, and above a heading [mm]."""
ROOM = 22.0
"""Kept free for notes at least [mm]."""
RULE = 7.0
"""Between the lines to write on [mm]."""
SIZES = (10.0, 9.5, 9.0, 8.5, 8.0, 7.5, 7.0)
"""Sizes of type that are tried, largest first [pt]."""
_LONGEST_PIECE = 1500
"""What is longer is parted, so that no part is higher than a page [characters]."""
_LINE = 1.28 * 25.4 / 72
"""Height of a line for each point of type [mm]."""

SURELY_KNOWN = frozenset(map(chr, range(0x20, 0x180))) - frozenset(map(chr, range(0x7F, 0xA0)))
"""Letters for which the typeface need not be looked into: Latin of Western and Central Europe."""


class Paper(StrEnum):
    """The paper to print on."""

    A4 = "a4"
    LETTER = "letter"


LETTER_COUNTRIES = frozenset({"US", "CA", "MX", "CL", "CO", "CR", "DO", "GT", "PA", "PH", "PR", "SV", "VE"})
"""Where people print on Letter (Unicode CLDR, territory data, paper size; from memory)."""


def usual_paper(country: str) -> Paper:
    """The paper of a country (ISO 3166-1)."""
    return Paper.LETTER if country in LETTER_COUNTRIES else Paper.A4


@lru_cache(maxsize=1)
def _known_letters() -> frozenset[int]:
    from fontTools.ttLib import TTFont  # heavy, and rarely needed

    with TTFont(BytesIO(fontbuffers[FACES[""]]()), lazy=True) as typeface:
        return frozenset(typeface.getBestCmap())


def missing_letters(sheet: DaySheet) -> str:
    """Letters of a sheet that the PDF's typeface lacks, each once, in order; the HTML sheet shows them."""
    lines = [line for section in sheet.sections for line in section.lines]
    return letters_lacking(
        "".join((sheet.title, sheet.going, sheet.notice, *(line.lead + line.text for line in lines)))
    )


def letters_lacking(told: str) -> str:
    """Letters of a text that the PDF's typeface lacks, each once, in order."""
    rare = {letter for letter in told if letter not in SURELY_KNOWN}
    return "".join(sorted(letter for letter in rare if ord(letter) not in _known_letters()))


def missing_sentence(letters: str) -> str:
    """What to say of letters that the PDF's typeface lacks."""
    return f"The PDF's typeface lacks {' '.join(letters)}; print the HTML sheet instead, which shows them."


@dataclass(frozen=True)
class _Piece:
    """What stays together: a line, the first one with its heading.

    Attributes:
        heading: above the line; empty for the further lines of a section.
        line: what is said.
        lead_width: room for the leads of the section, in parts of the type's size [-].
        boxed: whether there is a box to tick.
    """

    heading: str
    line: SheetLine
    lead_width: float
    boxed: bool


@dataclass(frozen=True)
class _Spot:
    """Where a piece stands: page and column from 0, and the height [mm] of its upper edge."""

    page: int
    column: int
    y: float


def day_sheet_pdf(sheet: DaySheet, paper: Paper, written_at: datetime) -> bytes:
    """Draw the sheet on one page, or on several where even small type does not fit.

    Args:
        sheet: what it says.
        paper: what it is printed on.
        written_at: noted in the file; zone-aware.

    Returns:
        The file. Letters that its typeface lacks (`missing_letters`) are drawn as empty boxes.
    """
    with tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as folder:
        drawing = _Drawing(sheet, paper, Path(folder))
        drawing.pdf.set_creation_date(written_at)
        drawing.draw()
        return bytes(drawing.pdf.output())


class _Drawing:
    """One PDF in the making."""

    def __init__(self, sheet: DaySheet, paper: Paper, folder: Path) -> None:
        self.sheet = sheet
        self.pdf = pdf = blank_pdf(f"{sheet.title}, {sheet.day}", paper.value, folder)
        pdf.set_margin(MARGIN)
        pdf.set_auto_page_break(False)
        pdf.c_margin = 0
        pdf.add_page()
        self.breaker = LineBreaker(pdf)
        self.width = (pdf.w - 2 * MARGIN - GUTTER) / 2
        self.bottom = pdf.h - MARGIN
        self.pieces = tuple(self._pieces())

    def draw(self) -> None:
        """Take the largest type that fits, and draw everything."""
        for size in SIZES:
            spots, end = self._placed(size)
            if end.page == 0:
                break
        else:
            size = SIZES[2]
            spots, end = self._placed(size)
        self._head(size)
        for piece, spot in zip(self.pieces, spots, strict=True):
            self._turn_to(spot.page)
            self._piece(piece, size, self._left(spot.column), spot.y)
        self._turn_to(end.page)
        self._notes(size, end)

    def _turn_to(self, page: int) -> None:
        if self.pdf.page <= page:
            self.pdf.add_page()

    def _pieces(self) -> Iterator[_Piece]:
        self._type(1.0, bold=True)
        for section in self.sheet.sections:
            widths = [self.pdf.get_string_width(line.lead) for line in section.lines if line.lead]
            for number, line in enumerate(section.lines):
                first, *rest = wrap(line.text, _LONGEST_PIECE) or [line.text]
                heading = "" if number else section.heading
                yield _Piece(heading, replace(line, text=first), max(widths, default=0.0), section.ticked_off)
                yield from (_Piece("", SheetLine(text), 0.0, False) for text in rest)

    def _type(self, size: float, *, bold: bool = False) -> None:
        self.pdf.set_font(FAMILY, "B" if bold else "", size)

    def _left(self, column: int) -> float:
        return MARGIN + column * (self.width + GUTTER)

    # --- where everything goes -----------------------------------------------------------------------------

    def _placed(self, size: float) -> tuple[Sequence[_Spot], _Spot]:
        """Where each piece goes in type of some size, and where the notes begin."""
        top = self._head(size, draw=False)
        spots: list[_Spot] = []
        page, column, y = 0, 0, top
        for height, above in (
            *((self._height(p, size), GAP * bool(p.heading)) for p in self.pieces),
            (ROOM, GAP),
        ):
            at_top = y == (MARGIN if page else top)
            if not at_top and y + above + height > self.bottom:
                page, column = (page, 1) if column == 0 else (page + 1, 0)
                y, at_top = MARGIN if page else top, True
            y += 0 if at_top else above
            spots.append(_Spot(page, column, y))
            y += height
        return spots[:-1], spots[-1]

    def _height(self, piece: _Piece, size: float) -> float:
        below = self._text(piece.line.text, size, 0, 0, self.width - self._indent(piece, size), draw=False)
        return below + size * _LINE * bool(piece.heading)

    @staticmethod
    def _indent(piece: _Piece, size: float) -> float:
        box = 1.3 * size * _LINE if piece.boxed else 0.0
        lead = piece.lead_width * size + 2 if piece.line.lead else 0.0
        return box + lead

    # --- drawing -------------------------------------------------------------------------------------------

    def _head(self, size: float, *, draw: bool = True) -> float:
        """The lines across the page; returns where the columns begin [mm]."""
        sheet, y = self.sheet, MARGIN
        across = (
            (sheet.title, 1.7, True),
            (sheet.day, 1.15, True),
            (sheet.going, 1.0, False),
            (sheet.notice, 1.0, False),
            (sheet.closing, 0.85, False),
        )
        for text, larger, bold in across:
            if text:
                y += self._text(text, size * larger, MARGIN, y, self.pdf.epw, bold=bold, draw=draw)
        return y + 2 * GAP

    def _text(
        self,
        text: str,
        size: float,
        x: float,
        y: float,
        width: float,
        *,
        bold: bool = False,
        draw: bool = True,
    ) -> float:
        """A text in lines; returns how high it is [mm]."""
        height, lines = size * _LINE, self.breaker.lines(text, width, size, bold=bold)
        if draw:
            self._type(size, bold=bold)
            for number, line in enumerate(lines):
                self.pdf.set_xy(x, y + number * height)
                self.pdf.cell(width, height, line)
        return height * len(lines)

    def _piece(self, piece: _Piece, size: float, x: float, y: float) -> None:
        if piece.heading:
            self._heading(piece.heading, size, x, y)
            y += size * _LINE
        if piece.boxed:
            side = 0.6 * size * _LINE
            self.pdf.rect(x, y + 0.22 * size * _LINE, side, side)
        indent = self._indent(piece, size)
        if piece.line.lead:
            self._text(piece.line.lead, size, x, y, self.width, bold=True)
        self._text(piece.line.text, size, x + indent, y, self.width - indent)

    def _heading(self, heading: str, size: float, x: float, y: float) -> None:
        self._text(heading, size, x, y, self.width, bold=True)
        line = y + size * _LINE
        self.pdf.set_line_width(0.2)
        self.pdf.line(x, line, x + self.width, line)

    def _notes(self, size: float, spot: _Spot) -> None:
        """Lines to write on, down to the end of the column."""
        x = self._left(spot.column)
        self._heading(NOTES, size, x, spot.y)
        y = spot.y + size * _LINE + RULE
        self.pdf.set_line_width(0.1)
        while y <= self.bottom:
            self.pdf.line(x, y, x + self.width, y)
            y += RULE
