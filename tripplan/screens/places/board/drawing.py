"""A price board to type in: rows of fields that are added and removed."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

import streamlit as st
from streamlit.delta_generator import DeltaGenerator

from tripplan.documents.places.offers import Pass, Ticket
from tripplan.planning.family.family import Family
from tripplan.screens.places.board.draft import (
    Draft,
    DraftRow,
    add_row,
    collect,
    entry_key,
    field_key,
    remove_row,
    row_prefix,
)
from tripplan.screens.places.board.kinds import (
    ACCOMPANIED,
    ADD_ON,
    BUNDLE,
    FEE,
    KINDS,
    PASS,
    TAX,
    TICKET,
    VOUCHER,
)
from tripplan.screens.places.board.pieces import (
    Entries,
    Field,
    Part,
    Piece,
    Row,
    RowKind,
    Shape,
    Typed,
    Words,
)
from tripplan.screens.places.board.rows import blank
from tripplan.screens.widgets.markdown import plain

_NOTE_HEIGHT = 68
"""The least that Streamlit draws for several lines [px]."""
_USUAL_STATUSES = ("educator", "home educated", "student", "senior", "benefit card", "member", "resident")
_OFFERS_TO_ADD = (
    ("ticket", "Add another ticket", blank(TICKET)),
    (
        "beside",
        "Add 'free with a paying adult'",
        blank(TICKET, name="Child with a paying adult", price="0", ages="under 6", companions=True),
    ),
    ("group", "Add a group price", blank(TICKET, name="Group", at_least="10")),
    (
        "bundle",
        "Add a family ticket",
        blank(
            BUNDLE,
            name="Family",
            seats=[{"count": "2", "ages": "18+"}, {"count": "3", "ages": "under 18"}],
        ),
    ),
    (
        "pass",
        "Add a pass",
        blank(PASS, name="Annual pass", months="12", seats=[{"count": "6", "ages": "any"}]),
    ),
)
_OTHERS_TO_ADD = (
    ("add_on", "Add something beside entry", blank(ADD_ON)),
    ("fee", "Add a fee", blank(FEE, name="Booking fee")),
    ("tax", "Add sales tax", blank(TAX)),
    ("voucher", "Add a voucher", blank(VOUCHER)),
    ("accompanied", "Add 'not without an older visitor'", blank(ACCOMPANIED, ages="under 14")),
)


@dataclass(frozen=True)
class Known:
    """What is offered to pick from.

    Attributes:
        statuses: what may change a ticket's price, in the words of the household and the cards.
        places: the other places' names by their ids.
    """

    statuses: tuple[str, ...]
    places: Mapping[str, str]


def known_to(family: Family, place_id: str = "") -> Known:
    """What a family's household and cards offer to pick from.

    Args:
        family: whose.
        place_id: of the card that is being changed, which is no other place.
    """
    of_members = (status for member in family.household.members for status in member.statuses)
    of_cards = (
        status
        for place in family.places
        for offer in place.offers
        if not isinstance(offer, Pass)
        for status in (*offer.needs, *_companions_need(offer))
    )
    statuses = tuple(dict.fromkeys((*of_members, *of_cards, *_USUAL_STATUSES)))
    return Known(statuses, {place.id: place.name for place in family.places if place.id != place_id})


def _companions_need(offer: object) -> tuple[str, ...]:
    return offer.companions.needs if isinstance(offer, Ticket) and offer.companions is not None else ()


@dataclass(frozen=True)
class FaultSlots:
    """Where the faults of a drawn board are shown, once it has been checked.

    Attributes:
        rows: beside each row.
        board: below all of them.
    """

    rows: tuple[DeltaGenerator, ...]
    board: DeltaGenerator


def draw_board(spot: str, draft: Draft, known: Known, currency: str) -> FaultSlots:
    """Draw every row and the buttons for more, and take over what stands in them.

    Args:
        spot: names the editor.
        draft: its board.
        known: what is offered to pick from.
        currency: ISO 4217 code of the prices.
    """
    collect(spot, draft)
    st.caption(
        plain(
            f"Prices in {currency}, such as 12.50; 0 is free. Ages are those on the day of the visit, such "
            "as 3-12, 65+ or under 2; both ends count."
        )
    )
    offers = [one for one in draft.rows if KINDS[one.kind].holder == "offers"]
    slots = {one.number: _draw_row(spot, draft, one, known) for one in offers}
    _buttons(spot, _OFFERS_TO_ADD)
    board = st.container()
    beside = [kind for kind in KINDS.values() if kind.holder != "offers"]
    for always in (False, True):
        for kind in beside:
            if kind.always is always:
                mine = [one for one in draft.rows if one.kind == kind.name]
                slots |= {one.number: _draw_row(spot, draft, one, known) for one in mine}
        if not always:
            there = {one.kind for one in draft.rows}
            _buttons(spot, [add for add in _OTHERS_TO_ADD if not (add[2].kind.alone and add[0] in there)])
    collect(spot, draft)
    return FaultSlots(tuple(slots[one.number] for one in draft.rows), board)


def _buttons(spot: str, offered: Sequence[tuple[str, str, Row]]) -> None:
    with st.container(horizontal=True):
        for name, label, row in offered:
            st.button(label, key=f"{spot}_add_{name}", on_click=add_row, args=(spot, row))


def _draw_row(spot: str, draft: Draft, one: DraftRow, known: Known) -> DeltaGenerator:
    kind, prefix = KINDS[one.kind], row_prefix(spot, one)
    with st.container(border=True, key=f"{prefix}_row"):
        if kind.main[0].path != "name":
            st.markdown(f"**{kind.called}**")
        _draw_pieces(prefix, one.typed, kind.main, draft, known)
        if not kind.always:
            _row_switches(spot, one, kind)
        slot = st.container()
        if kind.more and st.session_state[f"{prefix}_more"]:
            _draw_pieces(prefix, one.typed, kind.more, draft, known)
    return slot


def _row_switches(spot: str, one: DraftRow, kind: RowKind) -> None:
    prefix = row_prefix(spot, one)
    with st.container(horizontal=True, vertical_alignment="center"):
        if kind.more:
            unusual = _unusual(one, kind)
            st.session_state.setdefault(f"{prefix}_more", bool(unusual) and one.first is not None)
            count = f" ({unusual} set)" if unusual else ""
            st.toggle(f"More rules{count}", key=f"{prefix}_more")
        st.button(
            "Remove",
            key=f"{prefix}_remove",
            type="tertiary",
            on_click=remove_row,
            args=(spot, one.number),
            help=plain(f"Take {one.row.title} off the board."),
        )


def _unusual(one: DraftRow, kind: RowKind) -> int:
    """How many of its rarer rules a row has."""
    usual = blank(kind).typed
    return sum(one.typed[piece.path] not in (usual[piece.path], "") for piece in kind.more)


def _draw_pieces(prefix: str, typed: Typed, pieces: Sequence[Piece], draft: Draft, known: Known) -> None:
    """Draw fields; those of a fixed width stand side by side as far as there is room."""
    line: DeltaGenerator | None = None
    for piece in pieces:
        if isinstance(piece, Field):
            beside = piece.width is not None or piece.path == "name"
            if beside and line is None:
                line = st.container(horizontal=True, vertical_alignment="bottom")
            with line if beside and line is not None else st.container():
                _draw_field(field_key(prefix, piece.path), piece, typed[piece.path], draft, known)
            line = line if beside else None
            continue
        line = None
        if isinstance(piece, Part):
            _draw_part(prefix, typed, piece, draft, known)
        else:
            _draw_entries(prefix, typed, piece, draft, known)


def _draw_part(prefix: str, typed: Typed, part: Part, draft: Draft, known: Known) -> None:
    key = field_key(prefix, part.path)
    st.session_state.setdefault(key, typed[part.path])
    if st.checkbox(part.label, key=key):
        with st.container(horizontal=True, vertical_alignment="bottom"):
            for field_ in part.fields:
                path = f"{part.path}.{field_.path}"
                _draw_field(field_key(prefix, path), field_, typed[path], draft, known)


def _draw_entries(prefix: str, typed: Typed, entries: Entries, draft: Draft, known: Known) -> None:
    told = typed[entries.path]
    st.markdown(f"{entries.label}:")
    for index in range(min(len(told) + 1, entries.most)):
        with st.container(horizontal=True, vertical_alignment="bottom"):
            for field_ in entries.fields:
                key = entry_key(prefix, entries, index, field_.path)
                value = told[index][field_.path] if index < len(told) else ""
                _draw_field(key, field_, value, draft, known, headed=index == 0)


def _draw_field(
    key: str, field_: Field, value: object, draft: Draft, known: Known, *, headed: bool = True
) -> None:
    # A widget's own state is dropped while it is out of sight, so it is filled where it is missing.
    st.session_state.setdefault(key, value)
    label = field_.label
    explained = field_.explained or None
    width: int | Literal["stretch"] = field_.width or "stretch"
    now = st.session_state[key]
    if field_.shape is Shape.TICK:
        st.checkbox(label, key=key, help=explained)
    elif field_.shape is Shape.NOTE:
        st.text_area(label, key=key, help=explained, height=_NOTE_HEIGHT, width=width)
    elif field_.shape is Shape.DAY:
        st.date_input(label, value=None, key=key, help=explained, width=width)
    elif field_.shape is Shape.WORDS:
        offered = known.statuses if field_.offered is Words.STATUSES else _offer_names(draft)
        st.multiselect(
            label,
            list(dict.fromkeys((*offered, *now))),
            key=key,
            help=explained,
            accept_new_options=field_.offered is Words.STATUSES,
            placeholder="anybody" if field_.offered is Words.STATUSES else "all of them",
        )
    elif field_.shape is Shape.CHOICE:
        choices: dict[str, str] = dict(field_.choices) or {"": "none", **known.places}
        choices.setdefault(now, now)
        st.selectbox(
            label,
            list(choices),
            format_func=choices.__getitem__,
            key=key,
            help=explained,
            label_visibility="visible" if headed else "collapsed",
            width=width,
        )
    else:
        st.text_input(
            label,
            key=key,
            help=explained,
            label_visibility="visible" if headed else "collapsed",
            placeholder=None if headed else label,
            width=width,
        )


def _offer_names(draft: Draft) -> tuple[str, ...]:
    offers = (one for one in draft.rows if KINDS[one.kind].holder == "offers")
    return tuple(name for one in offers if (name := str(one.typed["name"]).strip()))
