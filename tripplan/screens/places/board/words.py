"""What was found about a price board, told at the row where it stands and in the words of the screen."""

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence

from tripplan.errors import Finding
from tripplan.screens.places.board.kinds import HOLDERS
from tripplan.screens.places.board.pieces import Field, Piece, Row
from tripplan.screens.widgets.notices import field_in_words, without_description

_IN_LIST = re.compile(r"(\w+)\[(\d+)\]\.?(.*)")
_CODED = re.compile(r"\b[a-z]+(?:_[a-z]+)+\b")


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
        return Finding("", "Tickets", finding.value, finding.message, finding.weight)
    index, rest = found
    labels = dict(_labels(rows[index].kind.pieces))
    where = ": ".join(filter(None, (rows[index].title, field_in_words(rest, labels, {}))))
    message = _CODED.sub(lambda code: _uncoded(code[0], labels), without_description(finding.message))
    return Finding("", where, finding.value, message, finding.weight)


def _labels(pieces: Iterable[Piece]) -> Iterator[tuple[str, str]]:
    for piece in pieces:
        yield piece.path, piece.label
        if not isinstance(piece, Field):
            yield from ((f"{piece.path}.{field.path}", field.label) for field in piece.fields)


def _uncoded(name: str, labels: Mapping[str, str]) -> str:
    return f"'{labels[name]}'" if name in labels else name.replace("_", " ")
