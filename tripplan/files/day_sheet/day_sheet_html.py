"""The day sheet as one HTML file: big type with the times first on a telephone, two columns on paper.

The file stands alone: no script, nothing loaded from anywhere, every text escaped.
"""

from math import ceil

from tripplan.files.day_sheet.day_sheet import DaySheet, SheetLine, SheetSection
from tripplan.files.html_page import escape, page_head

NOTES = "Room for notes"

SIZES = (9.5, 9.0, 8.5, 8.0, 7.5, 7.0, 6.5)
"""Sizes of type on paper that are tried, largest first [pt]."""
COLUMN_WIDTH, COLUMN_HEIGHT = 92.0, 232.0
"""The narrower of A4's and Letter's columns, and the lower, with some room to spare [mm]."""
NOTES_HEIGHT = 24.0
"""Kept free for notes on paper [mm]."""
LETTER_EMS = 0.53
"""Width of an average letter of a wide typeface, so that narrower ones fit as well [size of type]."""

_STYLE = """
body { max-width: 68rem; font-size: 1.25rem; line-height: 1.45; overflow-wrap: anywhere; }
h1 { line-height: 1.2; }
h2 { font-size: 1.05em; margin: 0 0 .25em; border-bottom: .06em solid var(--rule); }
p { margin: .2em 0; }
section { margin: 1.2em 0; }
ul { list-style: none; margin: 0; padding: 0; }
li { display: flex; gap: .6em; align-items: baseline; margin: .3em 0; }
li > b { flex: none; min-width: var(--lead); font-variant-numeric: tabular-nums; }
#times { font-size: 1.35em; }
label { display: flex; gap: .6em; align-items: baseline; }
input { width: 1em; height: 1em; flex: none; margin: 0; accent-color: var(--ink); }
a { color: inherit; }
.room { display: none; }
@media screen and (min-width: 60rem) {
  body { font-size: 1rem; }
  main { columns: 2; column-gap: 2.5rem; }
  section { break-inside: avoid; margin: 0 0 1.2em; }
}
@media print {
  @page { margin: 9mm; }
  body { font-size: var(--print-size); line-height: 1.3; }
  main { columns: 2; column-gap: 7mm; }
  section { margin: 0 0 2mm; }
  h2 { break-after: avoid; }
  li { margin: .25mm 0; break-inside: avoid; }
  #times { font-size: inherit; }
  #times, #emergency { break-inside: avoid; }
  input { width: .85em; height: .85em; }
  a { text-decoration: none; }
  .room { display: block; height: 22mm; break-inside: avoid; }
}
"""


def day_sheet_html(sheet: DaySheet) -> str:
    """The sheet as a whole HTML document.

    Args:
        sheet: what it says.
    """
    notice = f'<p class="quiet">{escape(sheet.notice)}</p>\n' if sheet.notice else ""
    head = page_head(f"{sheet.title}, {sheet.day}", _STYLE)
    return f"""{head}<body style="--print-size: {_print_size(sheet)}pt">
<header>
<h1>{escape(sheet.title)}</h1>
<p><b>{escape(sheet.day)}</b></p>
<p>{escape(sheet.going)}</p>
{notice}</header>
<main>
{"".join(map(section_html, sheet.sections))}<section class="room">
<h2>{NOTES}</h2>
</section>
</main>
<p class="quiet">{escape(sheet.closing)}</p>
</body>
</html>
"""


def section_html(section: SheetSection) -> str:
    """One section of the sheet as HTML."""
    lines = "".join(f"<li>{_line(line, ticked_off=section.ticked_off)}</li>\n" for line in section.lines)
    name, heading = escape(section.name), escape(section.heading)
    # A digit's width for each letter, and a tenth more, as capitals are wider.
    lead = f"--lead: {_lead_letters(section) * 1.1:.1f}ch"
    return f'<section id="{name}">\n<h2>{heading}</h2>\n<ul style="{lead}">\n{lines}</ul>\n</section>\n'


def _lead_letters(section: SheetSection) -> int:
    return max(len(line.lead) for line in section.lines)


def _print_size(sheet: DaySheet) -> float:
    """The largest size of type with which the sheet should fit one page of either paper [pt]."""
    return next((size for size in SIZES if _columns_filled(sheet, size) <= 1), SIZES[-1])


def _columns_filled(sheet: DaySheet, size: float) -> float:
    """How much of the two columns of a page the sheet takes up in type of some size [-]; 1 is all."""
    em = size * 25.4 / 72
    rows = 0.0
    for section in sheet.sections:
        room = COLUMN_WIDTH / em - 0.65 * _lead_letters(section) - (2 if section.ticked_off else 1)
        rows += 2.1 + sum(ceil(len(line.text) * LETTER_EMS / room) for line in section.lines)
        rows += 0.1 * len(section.lines)
    return (rows * 1.3 * em + NOTES_HEIGHT) / (2 * COLUMN_HEIGHT)


def _line(line: SheetLine, *, ticked_off: bool) -> str:
    lead, text = escape(line.lead), escape(line.text)
    if line.dial:
        dial = f'<a href="tel:{escape(line.dial)}">'
        lead, text = (f"{dial}{lead}</a>", text) if lead else (lead, f"{dial}{text}</a>")
    told = f"<b>{lead}</b> <span>{text}</span>" if lead else f"<span>{text}</span>"
    return f'<label><input type="checkbox"> {told}</label>' if ticked_off else told
