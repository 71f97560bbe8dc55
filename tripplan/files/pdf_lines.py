"""Text broken into the lines of a column of a PDF, quickly however long it is.

The library measures a text letter by letter each time it is asked; here a word is measured once.
"""

from collections.abc import Iterator
from typing import TYPE_CHECKING

from tripplan.files.pdf_typeface import FAMILY

if TYPE_CHECKING:
    from fpdf import FPDF

_SPACE = " "


class LineBreaker:
    """Breaks texts into lines in the typeface of one PDF.

    Args:
        pdf: with the typeface added, see `pdf_typeface.blank_pdf`.
    """

    def __init__(self, pdf: "FPDF") -> None:
        self._pdf = pdf
        self._widths: dict[tuple[str, bool], float] = {}

    def lines(self, text: str, width: float, size: float, *, bold: bool = False) -> list[str]:
        """The lines of a text, at least one; a word longer than a line is broken anywhere.

        Args:
            text: on one line or several.
            width: of the column [mm].
            size: of the type [pt].
            bold: its weight.
        """
        room = width / size
        return [line for piece in text.split("\n") for line in self._broken(piece, room, bold)]

    def _broken(self, text: str, room: float, bold: bool) -> Iterator[str]:
        blank = self._width(_SPACE, bold)
        line: list[str] = []
        taken = 0.0
        for word in text.split():
            for part in self._parts(word, room, bold):
                wide = self._width(part, bold)
                if line and taken + blank + wide > room:
                    yield _SPACE.join(line)
                    line, taken = [], 0.0
                taken += wide + (blank if line else 0.0)
                line.append(part)
        yield _SPACE.join(line)

    def _parts(self, word: str, room: float, bold: bool) -> Iterator[str]:
        """A word as it is, or in parts that each fit into a line."""
        if self._width(word, bold) <= room:
            yield word
            return
        part, taken = "", 0.0
        for letter in word:
            wide = self._width(letter, bold)
            if part and taken + wide > room:
                yield part
                part, taken = "", 0.0
            part, taken = part + letter, taken + wide
        yield part

    def _width(self, word: str, bold: bool) -> float:
        """How wide a word is for each point of type [mm]."""
        known = self._widths.get((word, bold))
        if known is None:
            self._pdf.set_font(FAMILY, "B" if bold else "", 1.0)
            known = self._widths[word, bold] = self._pdf.get_string_width(word)
        return known
