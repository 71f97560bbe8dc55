"""A price board as rows of plain fields: from a card to rows, and from rows to what a card's file holds."""

from collections.abc import Sequence
from typing import Any

from tripplan.documents.model import Written
from tripplan.documents.places.place import Place
from tripplan.screens.forms.answers import on_record, put_changes
from tripplan.screens.forms.questions import Setting
from tripplan.screens.places.board.kinds import KINDS, Row, RowKind


def rows_of(place: Place) -> tuple[Row, ...]:
    """A card's board as rows, in the order of the screen; parking always has one."""
    offers = [row_of(offer) for offer in place.offers]
    beside = [row_of(one) for kind in KINDS.values() if kind.holder != "offers" for one in _held(place, kind)]
    return (*offers, *beside)


def row_of(part: Written) -> Row:
    """One part of a board, such as a ticket or the parking, as a row."""
    kind = next(kind for kind in KINDS.values() if type(part) is kind.form)
    return Row(kind, on_record(kind.asked, part, Setting()))


def _held(place: Place, kind: RowKind) -> tuple[Written, ...]:
    held = getattr(place, kind.holder)
    if kind.alone:
        return () if held is None else (held,)
    return tuple(held)


def blank(kind: RowKind, **changes: object) -> Row:
    """A new row, with every field at what counts when it is left out, but for the changes."""
    return Row(kind, {**on_record(kind.asked, None, Setting()), **changes})


def raw_row(row: Row) -> dict[str, Any]:
    """A row as a card's file would hold it; nothing typed is left out."""
    written: dict[str, Any] = {"kind": row.kind.name} if row.kind.holder == "offers" else {}
    put_changes(written, row.kind.asked, row.typed, {}, Setting())
    return written


def raw_board(rows: Sequence[Row]) -> dict[str, Any]:
    """The board as a card's file would hold it, before it is checked."""
    raw: dict[str, Any] = {}
    for row in rows:
        if row.kind.alone:
            raw[row.kind.holder] = raw_row(row)
        else:
            raw.setdefault(row.kind.holder, []).append(raw_row(row))
    return raw
