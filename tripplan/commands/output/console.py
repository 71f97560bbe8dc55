"""Where a command's words go: terminals of any width and encoding, pipes and tests."""

import json
import shutil
import textwrap
import unicodedata
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import TextIO

from tripplan.values import plain_text
from tripplan.values.plain_text import one_line

NARROWEST, WIDEST = 20, 200
_LONGEST_WORD = 16
"""Longer words may be cut to keep a table together [characters]."""
_GAP = 2


def terminal_width(environment: Mapping[str, str]) -> int:
    """How many characters fit on a line; `COLUMNS` wins unless it is 0, and 80 where nothing is known."""
    told = environment.get("COLUMNS", "")
    wanted = int(told) if told.isdecimal() and len(told) < 6 else 0
    width = wanted or shutil.get_terminal_size((80, 24)).columns
    return min(max(width, NARROWEST), WIDEST)


@dataclass(frozen=True)
class Console:
    """The streams of one run.

    Attributes:
        stdout: for the answer.
        stderr: for faults and remarks.
        width: of the terminal [characters].
    """

    stdout: TextIO
    stderr: TextIO
    width: int = 80

    def line(self, text: str = "", indent: int = 0) -> None:
        """Say one paragraph of the answer, wrapped; what somebody wrote cannot move the cursor."""
        self.stdout.write("\n".join(wrapped(text, self.width, indent)) + "\n")

    def whole_line(self, text: str) -> None:
        """Say a line that is never broken, such as one with the path of a file, so that it can be copied."""
        self.stdout.write(plain_text.lines(text).replace("\n", " ") + "\n")

    def listed(self, heading: str, texts: Sequence[object]) -> None:
        """Say a heading and a list under it; nothing for an empty list."""
        if texts:
            self.line()
            self.line(heading)
        for text in texts:
            self.stdout.write("\n".join(wrapped(f"- {one_line(str(text))}", self.width, 2, hanging=2)) + "\n")

    def table(self, heads: Sequence[str], rows: Sequence[Sequence[str]]) -> None:
        """Say a table; where it does not fit, one block a row."""
        lines = aligned(heads, rows, self.width)
        if lines is None:
            lines = _blocks(heads, rows, self.width)
        self.stdout.write("\n".join(lines) + "\n")

    def side_by_side(self, heads: Sequence[str], rows: Sequence[Sequence[str]]) -> None:
        """Say a table whose columns are what is compared; where it does not fit, one block a column."""
        lines = aligned(heads, rows, self.width)
        if lines is None:
            names, *columns = zip(heads, *rows, strict=True)
            lines = _blocks(names, columns, self.width)
        self.stdout.write("\n".join(lines) + "\n")

    def document(self, markdown: str) -> None:
        """Say a text in Markdown, as a terminal can show it."""
        from rich.console import Console as Terminal  # takes its time, and only the guide needs it
        from rich.markdown import Markdown

        Terminal(file=self.stdout, width=self.width).print(Markdown(markdown))

    def aside(self) -> "Console":
        """The same console with everything said beside the answer."""
        return Console(self.stderr, self.stderr, self.width)

    def json(self, answer: object) -> None:
        """Say the answer as JSON, in plain ASCII so that no terminal's encoding can spoil it."""
        from tripplan.commands.answers.json_keys import to_json  # loads pydantic, which help does without

        self.stdout.write(json.dumps(to_json(answer), indent=2) + "\n")

    def remark(self, text: str) -> None:
        """Say something beside the answer."""
        self.stderr.write(f"{one_line(text)}\n")

    def data(self, data: bytes) -> None:
        """Hand out a file's bytes as they are, or as text where the stream takes nothing else."""
        raw = getattr(self.stdout, "buffer", None)
        if raw is None:
            self.stdout.write(data.decode())
        else:
            self.stdout.flush()
            raw.write(data)
            raw.flush()


def wrapped(text: str, width: int, indent: int = 0, *, hanging: int = 0) -> list[str]:
    """A paragraph in lines no longer than a width, words whole where they fit.

    Args:
        text: the paragraph.
        width: of a line, indent included [characters].
        indent: spaces before every line [-].
        hanging: further spaces before every line but the first [-].
    """
    lines = _broken(one_line(text), max(1, width - indent), hanging)
    return [f"{' ' * indent}{line}" if line else "" for line in lines]


def aligned(heads: Sequence[str], rows: Sequence[Sequence[str]], width: int) -> list[str] | None:
    """A table in aligned columns, its cells wrapped.

    Args:
        heads: one a column.
        rows: as many cells each.
        width: of the terminal [characters].

    Returns:
        Its lines; None where the columns would get too slim for their words.
    """
    cells = [[one_line(cell) for cell in row] for row in (heads, *rows)]
    columns = _column_widths(cells, width - _GAP * (len(heads) - 1))
    if columns is None:
        return None
    ruler = (" " * _GAP).join("-" * column for column in columns)
    return [*_row(cells[0], columns), ruler, *(line for row in cells[1:] for line in _row(row, columns))]


def _column_widths(rows: Sequence[Sequence[str]], room: int) -> list[int] | None:
    """Widths that fill the room at most; the widest columns give way first, down to their longest word."""
    columns = list(zip(*rows, strict=True))
    widths = [max(1, *map(_cells, column)) for column in columns]
    slimmest = [
        min(_LONGEST_WORD, max(map(_cells, " ".join(column).split()), default=1)) for column in columns
    ]
    if sum(slimmest) > room:
        return None
    while sum(widths) > room:
        widest = max(range(len(widths)), key=lambda index: (widths[index] > slimmest[index], widths[index]))
        widths[widest] -= 1
    return widths


def _row(cells: Sequence[str], columns: Sequence[int]) -> list[str]:
    broken = [_broken(cell, column) for cell, column in zip(cells, columns, strict=True)]
    height = max(map(len, broken))
    padded = [lines + [""] * (height - len(lines)) for lines in broken]
    return [
        (" " * _GAP)
        .join(line + " " * (column - _cells(line)) for line, column in zip(lines, columns, strict=True))
        .rstrip()
        for lines in zip(*padded, strict=True)
    ]


def _blocks(heads: Sequence[str], rows: Sequence[Sequence[str]], width: int) -> list[str]:
    lines: list[str] = []
    for row in rows:
        for head, cell in zip(heads, row, strict=True):
            lines += wrapped(f"{head}: {cell}" if head else cell, width, hanging=2 if head else 0)
        lines.append("")
    return lines[:-1]


def _broken(text: str, width: int, hanging: int = 0) -> list[str]:
    """A text in lines that take no more room than a width; scripts of double width count double."""
    room = width
    while True:
        indent = " " * min(hanging, max(0, room - 1))
        lines = textwrap.wrap(text, room, subsequent_indent=indent, break_on_hyphens=False) or [""]
        if room == 1 or max(map(_cells, lines)) <= width:
            return lines
        room = max(1, room - 1)


def _cells(text: str) -> int:
    """How many columns of a terminal a text takes up [-]."""
    wide = sum(unicodedata.east_asian_width(character) in "WF" for character in text)
    unseen = sum(unicodedata.combining(character) > 0 for character in text)
    return len(text) + wide - unseen
