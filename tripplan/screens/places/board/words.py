"""What was found about a price board, told at the row where it stands and in the words of the screen."""

import re
from collections.abc import Sequence
from dataclasses import replace

from tripplan.errors import Finding
from tripplan.screens.forms.words import in_words
from tripplan.screens.places.board.kinds import HOLDERS, Row
from tripplan.screens.places.board.rows import raw_row

_IN_LIST = re.compile(r"(\w+)\[(\d+)\]\.?(.*)")


def row_of(field: str, rows: Sequence[Row]) -> tuple[int, str] | None:
    """The row in which a finding stands, by its index, and the rest of the path; None for no single row."""
    match = _IN_LIST.fullmatch(field)
    if match:
        holder, number, rest = match[1], int(match[2]), match[3]
        held = [index for index, row in enumerate(rows) if row.kind.holder == holder]
        return (held[number], rest) if number < len(held) else None
    holder, _, rest = field.partition(".")
    alone = [index for index, row in enumerate(rows) if row.kind.holder == holder and row.kind.alone]
    return (alone[0], rest) if alone else None


def on_board(field: str) -> bool:
    """Whether a finding is about the board."""
    return re.split(r"[.\[]", field, maxsplit=1)[0] in HOLDERS


def in_screen_words(finding: Finding, rows: Sequence[Row]) -> Finding:
    """A finding about the board with the row and its field called as on the screen."""
    found = row_of(finding.field, rows)
    if found is None:
        return replace(finding, file="", field="Tickets")
    index, rest = found
    row = rows[index]
    (told,) = in_words([replace(finding, field=rest)], row.kind.form, raw_row(row))
    return replace(told, field=": ".join(filter(None, (row.title, told.field))))
