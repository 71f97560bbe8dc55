"""A price board while it is being typed, kept from run to run."""

from collections.abc import Mapping, Sequence
from dataclasses import asdict, dataclass, field
from typing import Any

import streamlit as st

from tripplan.screens.forms.form import with_waiting
from tripplan.screens.forms.questions import Setting
from tripplan.screens.places.board.kinds import KINDS, Row
from tripplan.screens.places.board.rows import raw_board
from tripplan.screens.widgets.fields import Fields, FieldValue, filled, refill
from tripplan.screens.widgets.lasting import let_go, let_last


@dataclass
class DraftRow:
    """A row while it is being typed.

    Attributes:
        spot: names the editor.
        number: tells it from all other rows that the editor ever had.
        kind: the name of its kind.
        first: what stood in its fields at first.
        new: whether it was added, and is no row of a card.
    """

    spot: str
    number: int
    kind: str
    first: Mapping[str, FieldValue]
    new: bool

    @property
    def name(self) -> str:
        """With what the keys of its fields begin."""
        return f"{self.spot}_{self.number}"

    @property
    def fields(self) -> Fields:
        """Its fields, filled; what is out of sight keeps what it said."""
        return filled(self.name, with_waiting(self.name, KINDS[self.kind].asked, self.first, Setting()))

    @property
    def row(self) -> Row:
        """The row as it is now."""
        return Row(KINDS[self.kind], self.fields.typed())

    @property
    def untouched(self) -> bool:
        """Whether nothing was typed into a row that was added."""
        return self.new and self.fields.typed() == self.first


@dataclass
class Draft:
    """A price board while it is being typed; it outlives the page and the window.

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
    if isinstance(draft, Draft):
        return draft
    kept: dict[str, Any] | None = st.session_state.get(_lasting(spot))
    if kept is None:
        return None
    draft = Draft(kept["revision"], kept["begun_with"], [DraftRow(**row) for row in kept["rows"]])
    st.session_state[f"{spot}_draft"] = draft
    return draft


def _lasting(spot: str) -> str:
    return f"{spot}_board"


def _let_last(spot: str, draft: Draft) -> None:
    """Keep which rows there are; what is typed into them is kept as with every form."""
    let_last({_lasting(spot): asdict(draft), _rows_made(spot): st.session_state.get(_rows_made(spot), 0)})


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
    _let_last(spot, draft)
    return draft


def forget_draft(spot: str) -> None:
    """Leave the board that is being typed at a spot."""
    draft = draft_on(spot)
    for row in draft.rows if draft else ():
        refill(row.name)
    st.session_state.pop(f"{spot}_draft", None)
    let_go(_lasting(spot))


def _rows_made(spot: str) -> str:
    return f"{spot}_rows_made"


def _append(spot: str, draft: Draft, row: Row, *, new: bool) -> None:
    number = int(st.session_state.get(_rows_made(spot), 0))
    st.session_state[_rows_made(spot)] = number + 1
    first = with_waiting(f"{spot}_{number}", row.kind.asked, row.typed, Setting())
    draft.rows.append(DraftRow(spot, number, row.kind.name, first, new))


def add_row(spot: str, row: Row) -> None:
    """Add a row to the board at a spot."""
    draft = draft_on(spot)
    if draft is not None:
        _append(spot, draft, row, new=True)
        _let_last(spot, draft)


def remove_row(spot: str, number: int) -> None:
    """Take a row off the board at a spot."""
    draft = draft_on(spot)
    if draft is not None:
        draft.rows = [one for one in draft.rows if one.number != number]
        _let_last(spot, draft)
