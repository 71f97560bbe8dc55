"""A price board as rows of plain fields: from a card to rows, and from rows to what a card's file holds."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from datetime import date
from decimal import Decimal
from typing import Any

from tripplan.documents.model import Written
from tripplan.documents.places.place import Place
from tripplan.screens.places.board.kinds import BUNDLE, KINDS, PASS, TICKET
from tripplan.screens.places.board.pieces import Entries, Field, Part, Piece, Row, RowKind, Shape, Typed
from tripplan.screens.widgets.fields import put


def rows_of(place: Place) -> tuple[Row, ...]:
    """A card's board as rows, in the order of the screen; parking always has one."""
    offers = tuple(Row(kind, _typed(kind, offer)) for offer in place.offers for kind in _kinds_of(offer))
    beside = (
        Row(kind, _typed(kind, one))
        for kind in KINDS.values()
        if kind.holder != "offers"
        for one in _held(place, kind)
    )
    return (*offers, *beside)


def _kinds_of(offer: Written) -> Iterator[RowKind]:
    yield from (kind for kind in (TICKET, BUNDLE, PASS) if type(offer) is kind.form)


def _held(place: Place, kind: RowKind) -> tuple[Written, ...]:
    held = getattr(place, kind.holder)
    if kind.alone:
        return () if held is None else (held,)
    return tuple(held)


def blank(kind: RowKind, **changes: object) -> Row:
    """A new row, with every field at what counts when it is left out, but for the changes."""
    return Row(kind, {**_usual(kind.pieces, kind.form), **changes})


def _usual(pieces: Iterable[Piece], form: type[Written]) -> Typed:
    typed: Typed = {}
    for piece in pieces:
        if isinstance(piece, Field):
            field = form.model_fields[piece.path]
            typed[piece.path] = _shown(piece, None if field.is_required() else field.get_default())
        elif isinstance(piece, Part):
            typed[piece.path] = False
            typed |= _under(piece.path, _usual(piece.fields, piece.form))
        else:
            typed[piece.path] = []
    return typed


def _typed(kind: RowKind, written: Written) -> Typed:
    typed: Typed = {}
    for piece in kind.pieces:
        value = getattr(written, piece.path)
        if isinstance(piece, Field):
            typed[piece.path] = _shown(piece, value)
        elif isinstance(piece, Part):
            typed[piece.path] = value is not None
            inner = (
                _usual(piece.fields, piece.form)
                if value is None
                else {field.path: _shown(field, getattr(value, field.path)) for field in piece.fields}
            )
            typed |= _under(piece.path, inner)
        else:
            typed[piece.path] = [
                {field.path: _shown(field, getattr(entry, field.path)) for field in piece.fields}
                for entry in value
            ]
    return typed


def _under(path: str, inner: Typed) -> Typed:
    return {f"{path}.{name}": value for name, value in inner.items()}


def _shown(field: Field, value: object) -> object:
    """A value as its field shows it."""
    if field.shape is Shape.TICK:
        return bool(value)
    if field.shape is Shape.DAY:
        return value if isinstance(value, date) else None
    if field.shape is Shape.WORDS:
        return list(value) if isinstance(value, tuple) else []
    if value is None:
        return ""
    # An exponent, as in 1E+2, is no price that somebody would type.
    return f"{value:f}" if isinstance(value, Decimal) else str(value)


def raw_board(rows: Sequence[Row]) -> dict[str, Any]:
    """The board as a card's file would hold it, before it is checked; nothing typed is left out."""
    raw: dict[str, Any] = {}
    for row in rows:
        written = _raw(row.kind.pieces, row.typed)
        if row.kind.holder == "offers":
            written = {"kind": row.kind.name, **written}
        if row.kind.alone:
            raw[row.kind.holder] = written
        else:
            raw.setdefault(row.kind.holder, []).append(written)
    return raw


def _raw(pieces: Iterable[Piece], typed: Mapping[str, Any]) -> dict[str, Any]:
    raw: dict[str, Any] = {}
    for piece in pieces:
        value = typed[piece.path]
        if isinstance(piece, Part):
            if value:
                inner = {field.path: typed[f"{piece.path}.{field.path}"] for field in piece.fields}
                raw[piece.path] = _raw(piece.fields, inner)
        elif isinstance(piece, Entries):
            raw[piece.path] = [_raw(piece.fields, entry) for entry in value if any(entry.values())]
        elif value is not None:
            put(raw, piece.path, value)
    return raw
