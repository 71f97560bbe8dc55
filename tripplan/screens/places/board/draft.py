"""A price board while it is being typed, kept from run to run."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

import streamlit as st

from tripplan.screens.places.board.kinds import KINDS
from tripplan.screens.places.board.pieces import Entries, Part, Piece, Row, Typed
from tripplan.screens.places.board.rows import raw_board


@dataclass
class DraftRow:
    """A row while it is being typed.

    Attributes:
        number: tells it from all other rows that the editor ever had; part of its fields' keys.
        kind: the name of its kind.
        typed: what stands in its fields.
        first: what stood there when it was added; None for a row of a card.
    """

    number: int
    kind: str
    typed: Typed
    first: Typed | None

    @property
    def row(self) -> Row:
        """The row as it is now."""
        return Row(KINDS[self.kind], self.typed)

    @property
    def untouched(self) -> bool:
        """Whether nothing was typed into a row that was added."""
        return self.typed == self.first


@dataclass
class Draft:
    """A price board while it is being typed; kept from run to run, also while another page is open.

    Attributes:
        revision: of the card it was made from; 0 for a new card.
        begun_with: the board of that card, as its file would hold it.
        rows: in the order of the card.
        pressed: whether saving was tried, so that even rows nobody has got round to yet are called faulty.
    """

    revision: int
    begun_with: dict[str, Any]
    rows: list[DraftRow] = field(default_factory=list)
    pressed: bool = False

    def as_rows(self) -> tuple[Row, ...]:
        """The rows as they are now."""
        return tuple(one.row for one in self.rows)


def draft_on(spot: str) -> Draft | None:
    """The board that is being typed at a spot, if one is."""
    draft = st.session_state.get(f"{spot}_draft")
    return draft if isinstance(draft, Draft) else None


def begin_draft(spot: str, rows: Sequence[Row], revision: int, *, new: bool) -> Draft:
    """Begin a board at a spot, in place of any that was there.

    Args:
        spot: names the editor; part of every key.
        rows: what it begins with.
        revision: of the card they come from; 0 for a new card.
        new: whether these rows are suggestions, which are not called faulty before they are touched.
    """
    draft = Draft(revision, raw_board(rows))
    st.session_state[f"{spot}_draft"] = draft
    for row in rows:
        _append(spot, draft, row, new=new)
    return draft


def forget_draft(spot: str) -> None:
    """Leave the board that is being typed at a spot."""
    st.session_state.pop(f"{spot}_draft", None)


def _append(spot: str, draft: Draft, row: Row, *, new: bool) -> None:
    counter = f"{spot}_rows_made"
    number = int(st.session_state.get(counter, 0))
    st.session_state[counter] = number + 1
    typed = _copied(row.typed)
    draft.rows.append(DraftRow(number, row.kind.name, typed, _copied(typed) if new else None))


def _copied(typed: Mapping[str, Any]) -> Typed:
    return {
        path: [dict(entry) if isinstance(entry, dict) else entry for entry in value]
        if isinstance(value, list)
        else value
        for path, value in typed.items()
    }


def add_row(spot: str, row: Row) -> None:
    """Add a row to the board at a spot."""
    draft = draft_on(spot)
    if draft is not None:
        collect(spot, draft)
        _append(spot, draft, row, new=True)


def remove_row(spot: str, number: int) -> None:
    """Take a row off the board at a spot."""
    draft = draft_on(spot)
    if draft is not None:
        collect(spot, draft)
        draft.rows = [one for one in draft.rows if one.number != number]


def collect(spot: str, draft: Draft) -> None:
    """Take over into the draft what stands in the fields now; fields out of sight keep what they said."""
    for one in draft.rows:
        for piece in KINDS[one.kind].pieces:
            _collect_piece(row_prefix(spot, one), one.typed, piece)


def _collect_piece(prefix: str, typed: Typed, piece: Piece) -> None:
    state = st.session_state
    if isinstance(piece, Entries):
        entries = [dict(entry) for entry in typed[piece.path]]
        for index in range(min(len(entries) + 1, piece.most)):
            blank_entry = {inner.path: "" for inner in piece.fields}
            entry = entries[index] if index < len(entries) else blank_entry
            now = {
                name: state.get(entry_key(prefix, piece, index, name), value) for name, value in entry.items()
            }
            if index < len(entries):
                entries[index] = now
            elif any(now.values()):
                entries.append(now)
        while entries and not any(entries[-1].values()):
            entries.pop()
        typed[piece.path] = entries
        return
    paths = [piece.path]
    if isinstance(piece, Part):
        paths += [f"{piece.path}.{inner.path}" for inner in piece.fields]
    for path in paths:
        typed[path] = state.get(field_key(prefix, path), typed[path])


def row_prefix(spot: str, one: DraftRow) -> str:
    """With what the keys of a row's fields begin."""
    return f"{spot}_{one.number}"


def field_key(prefix: str, path: str) -> str:
    """The key of a field's widget."""
    return f"{prefix}_{path}"


def entry_key(prefix: str, entries: Entries, index: int, name: str) -> str:
    """The key of a field's widget within an entry of a list."""
    return f"{prefix}_{entries.path}{index}_{name}"
