"""The price board to type in: rows of fields that are added and removed, each with its faults beside it."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any, Literal

import streamlit as st
from streamlit.delta_generator import DeltaGenerator

from tripplan.errors import Finding, Weight
from tripplan.planning.admission.sentences import sentence
from tripplan.planning.offers import Pass, Ticket
from tripplan.planning.outing import Family
from tripplan.planning.place import Place
from tripplan.screens.places.board_rows import (
    ACCOMPANIED,
    ADD_ON,
    BUNDLE,
    FEE,
    KINDS,
    PASS,
    TAX,
    TICKET,
    VOUCHER,
    Entries,
    Field,
    Part,
    Piece,
    Row,
    RowKind,
    Shape,
    Typed,
    Words,
    blank,
    in_screen_words,
    on_board,
    row_of,
)
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.notices import show_beside

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
        rows: in the order of the card.
        pressed: whether saving was tried, so that even rows nobody has got round to yet are called faulty.
    """

    revision: int
    rows: list[DraftRow] = field(default_factory=list)
    pressed: bool = False

    def as_rows(self) -> tuple[Row, ...]:
        """The rows as they are now."""
        return tuple(one.row for one in self.rows)


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


# --- the draft between two runs ---------------------------------------------------------------------------


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
    draft = Draft(revision)
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


def _add(spot: str, row: Row) -> None:
    draft = draft_on(spot)
    if draft is not None:
        collect(spot, draft)
        _append(spot, draft, row, new=True)


def _remove(spot: str, number: int) -> None:
    draft = draft_on(spot)
    if draft is not None:
        collect(spot, draft)
        draft.rows = [one for one in draft.rows if one.number != number]


def collect(spot: str, draft: Draft) -> None:
    """Take over into the draft what stands in the fields now; fields out of sight keep what they said."""
    for one in draft.rows:
        for piece in KINDS[one.kind].pieces:
            _collect_piece(_prefix(spot, one), one.typed, piece)


def _collect_piece(prefix: str, typed: Typed, piece: Piece) -> None:
    state = st.session_state
    if isinstance(piece, Entries):
        entries = [dict(entry) for entry in typed[piece.path]]
        for index in range(min(len(entries) + 1, piece.most)):
            blank_entry = {inner.path: "" for inner in piece.fields}
            entry = entries[index] if index < len(entries) else blank_entry
            now = {
                name: state.get(_entry_key(prefix, piece, index, name), value)
                for name, value in entry.items()
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
        typed[path] = state.get(_key(prefix, path), typed[path])


def _prefix(spot: str, one: DraftRow) -> str:
    return f"{spot}_{one.number}"


def _key(prefix: str, path: str) -> str:
    return f"{prefix}_{path}"


def _entry_key(prefix: str, entries: Entries, index: int, name: str) -> str:
    return f"{prefix}_{entries.path}{index}_{name}"


# --- drawing ----------------------------------------------------------------------------------------------


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
            st.button(label, key=f"{spot}_add_{name}", on_click=_add, args=(spot, row))


def _draw_row(spot: str, draft: Draft, one: DraftRow, known: Known) -> DeltaGenerator:
    kind, prefix = KINDS[one.kind], _prefix(spot, one)
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
    prefix = _prefix(spot, one)
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
            on_click=_remove,
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
                _draw_field(_key(prefix, piece.path), piece, typed[piece.path], draft, known)
            line = line if beside else None
            continue
        line = None
        if isinstance(piece, Part):
            _draw_part(prefix, typed, piece, draft, known)
        else:
            _draw_entries(prefix, typed, piece, draft, known)


def _draw_part(prefix: str, typed: Typed, part: Part, draft: Draft, known: Known) -> None:
    key = _key(prefix, part.path)
    st.session_state.setdefault(key, typed[part.path])
    if st.checkbox(part.label, key=key):
        with st.container(horizontal=True, vertical_alignment="bottom"):
            for field_ in part.fields:
                path = f"{part.path}.{field_.path}"
                _draw_field(_key(prefix, path), field_, typed[path], draft, known)


def _draw_entries(prefix: str, typed: Typed, entries: Entries, draft: Draft, known: Known) -> None:
    told = typed[entries.path]
    st.markdown(f"{entries.label}:")
    for index in range(min(len(told) + 1, entries.most)):
        with st.container(horizontal=True, vertical_alignment="bottom"):
            for field_ in entries.fields:
                key = _entry_key(prefix, entries, index, field_.path)
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


# --- faults -----------------------------------------------------------------------------------------------


def shown_now(draft: Draft, findings: Sequence[Finding]) -> list[Finding]:
    """The findings without those in rows that were added and that nobody has touched yet."""
    rows = draft.as_rows()

    def waits(finding: Finding) -> bool:
        at = row_of(finding.field, rows)
        return at is not None and draft.rows[at[0]].untouched

    return [finding for finding in findings if draft.pressed or not waits(finding)]


def show_faults(
    slots: FaultSlots, draft: Draft, findings: Sequence[Finding], understood: Place | None
) -> None:
    """Show every finding about the board at the row where it stands, or below the tickets.

    Args:
        slots: where they are shown.
        draft: the board.
        findings: of the card.
        understood: the card as it was read, if it could be; each offer then also stands there as a sentence.
    """
    rows = draft.as_rows()
    if understood is not None:
        offers = [slot for slot, row in zip(slots.rows, rows, strict=True) if row.kind.holder == "offers"]
        for slot, offer in zip(offers, understood.offers, strict=True):
            slot.caption(plain(sentence(offer, understood.currency)))
    visible = [finding for finding in shown_now(draft, findings) if on_board(finding.field)]
    for number, slot in enumerate((*slots.rows, slots.board)):
        here = [in_screen_words(finding, rows) for finding in visible if _slot_of(finding, rows) == number]
        show_beside(slot, here)


def _slot_of(finding: Finding, rows: Sequence[Row]) -> int:
    """The number of a finding's row; the one after the last for what no single row is to blame for."""
    at = row_of(finding.field, rows)
    return len(rows) if at is None else at[0]


def to_put_right(draft: Draft, findings: Sequence[Finding]) -> str:
    """Say, in place of what it comes to for the family, what the board still needs; the same sentence."""
    faults = [finding for finding in findings if finding.weight is Weight.FAULT]
    if any(finding in faults for finding in shown_now(draft, findings)):
        count = "One thing is" if len(faults) == 1 else f"{len(faults)} things are"
        said = f"{count} to be put right before it can be said what it comes to for us."
    else:
        said = "Type the prices in; what it comes to for us then stands here."
    st.info(said)
    return said
