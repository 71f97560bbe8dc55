"""A blank PDF that is set in a typeface with letters of many languages."""

from pathlib import Path
from typing import TYPE_CHECKING

from pymupdf_fonts import fontbuffers

if TYPE_CHECKING:
    from fpdf import FPDF

FACES = {"": "notos", "B": "notosbo"}
"""Noto Sans (SIL Open Font License 1.1), regular and bold: Latin, Greek and Cyrillic letters."""
FAMILY = "Noto Sans"


def blank_pdf(title: str, paper: str, folder: Path) -> "FPDF":
    """A PDF without a page, which knows the typeface.

    Args:
        title: noted in the file.
        paper: 'a4' or 'letter'.
        folder: the typeface is put here for as long as the PDF is in the making.
    """
    from fpdf import FPDF  # heavy, and needed only once a PDF is asked for
    from fpdf.fonts import TTFFont

    pdf = FPDF(format=paper)
    for style, name in FACES.items():
        file = folder / f"{name}.ttf"
        file.write_bytes(fontbuffers[name]())
        pdf.add_font(FAMILY, style, file)
        typeface = pdf.fonts[f"{FAMILY.lower()}{style}"]
        # Notes of the program that made the typeface; taking letters out of it would complain about them.
        if isinstance(typeface, TTFFont):
            del typeface.ttfont["TTFA"]
    pdf.set_title(title)
    pdf.set_lang("en")
    return pdf
