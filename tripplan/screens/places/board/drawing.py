"""A price board to type in: rows of fields that are added and removed."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import streamlit as st
from streamlit.delta_generator import DeltaGenerator

from tripplan.documents.places.offers import Ticket
from tripplan.planning.family.family import Family
from tripplan.screens.forms.drawing import draw
from tripplan.screens.forms.questions import Setting
from tripplan.screens.places.board.draft import Draft, DraftRow, add_row, remove_row
from tripplan.screens.places.board.kinds import KINDS, Row, RowKind
from tripplan.screens.places.board.rows import blank, raw_row
from tripplan.screens.widgets.markdown import plain

_USUAL_STATUSES = ("educator", "home educated", "student", "senior", "benefit card", "member", "resident")
_OFFERS_TO_ADD = (
    ("ticket", "Add another ticket", blank(KINDS["ticket"])),
    (
        "beside",
        "Add 'free with a paying adult'",
        blank(KINDS["ticket"], name="Child with a paying adult", price="0", ages="under 6", companions=True),
    ),
    ("group", "Add a group price", blank(KINDS["ticket"], name="Group", at_least="10")),
    (
        "bundle",
        "Add a family ticket",
        blank(
            KINDS["bundle"],
            name="Family",
            seats0_count="2",
            seats0_ages="18+",
            seats1_count="3",
            seats1_ages="under 18",
        ),
    ),
    (
        "discount",
        "Add a percentage off, as for residents",
        blank(KINDS["discount"], name="Residents", percent_off="25", needs=["resident"]),
    ),
    (
        "pass",
        "Add a pass",
        blank(KINDS["pass"], name="Annual pass", months="12", seats0_count="6", seats0_ages="any"),
    ),
)
_OTHERS_TO_ADD = (
    ("add_on", "Add an extra", blank(KINDS["add_ons"])),
    ("fee", "Add a fee", blank(KINDS["fees"], name="Booking fee")),
    ("tax", "Add sales tax", blank(KINDS["sales_tax"])),
    ("voucher", "Add a voucher", blank(KINDS["vouchers"])),
    (
        "accompanied",
        "Add 'child needs an adult'",
        blank(KINDS["must_be_accompanied"], ages="under 14"),
    ),
)


@dataclass(frozen=True)
class PickLists:
    """What is offered to pick from.

    Attributes:
        offered: what may change a ticket's price, in the words of the household and the cards; and the other
            places' names by their ids.
    """

    offered: Mapping[str, Mapping[str, str]]


def pick_lists_for(family: Family, place_id: str = "") -> PickLists:
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
        for status in (*getattr(offer, "needs", ()), *_companions_need(offer))
    )
    statuses = tuple(dict.fromkeys((*of_members, *of_cards, *_USUAL_STATUSES)))
    places = {place.id: place.name for place in family.places if place.id != place_id}
    return PickLists({"statuses": {one: one for one in statuses}, "places": {"": "none", **places}})


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


def draw_board(spot: str, draft: Draft, known: PickLists, currency: str) -> FaultSlots:
    """Draw every row and the buttons for more, and take over what stands in them.

    Args:
        spot: names the editor.
        draft: its board.
        known: what is offered to pick from.
        currency: ISO 4217 code of the prices.
    """
    setting = Setting(offered={**known.offered, "offers": {name: name for name in _offer_names(draft)}})
    st.caption(
        plain(
            f"Prices in {currency}, such as 12.50; 0 is free. Ages are those on the day of the visit, such "
            "as 3-12, 65+ or under 2; both ends count."
        )
    )
    offers = [one for one in draft.rows if KINDS[one.kind].holder == "offers"]
    slots = {one.number: _draw_row(spot, one, setting) for one in offers}
    _buttons(spot, _OFFERS_TO_ADD)
    board = st.container()
    beside = [kind for kind in KINDS.values() if kind.holder != "offers"]
    for always in (False, True):
        for kind in beside:
            if kind.always is always:
                mine = [one for one in draft.rows if one.kind == kind.name]
                slots |= {one.number: _draw_row(spot, one, setting) for one in mine}
        if not always:
            there = {one.kind for one in draft.rows}
            _buttons(
                spot, [add for add in _OTHERS_TO_ADD if not (add[2].kind.alone and add[2].kind.name in there)]
            )
    return FaultSlots(tuple(slots[one.number] for one in draft.rows), board)


def _buttons(spot: str, offered: Sequence[tuple[str, str, Row]]) -> None:
    with st.container(horizontal=True):
        for name, label, row in offered:
            st.button(label, key=f"{spot}_add_{name}", on_click=add_row, args=(spot, row))


def _draw_row(spot: str, one: DraftRow, setting: Setting) -> DeltaGenerator:
    kind, fields = KINDS[one.kind], one.fields
    with st.container(border=True, key=f"{one.name}_row"):
        if kind.main[0].path != "name":
            st.markdown(f"**{kind.called}**")
        draw(fields, kind.main, setting)
        if kind.more or not kind.always:
            _row_switches(spot, one, kind)
        slot = st.container()
        if kind.more and st.session_state[f"{one.name}_more"]:
            draw(fields, kind.more, setting)
    return slot


def _row_switches(spot: str, one: DraftRow, kind: RowKind) -> None:
    with st.container(horizontal=True, vertical_alignment="center"):
        if kind.more:
            unusual = _unusual(one, kind)
            st.session_state.setdefault(f"{one.name}_more", bool(unusual) and not one.new)
            count = f" ({unusual} set)" if unusual else ""
            st.toggle(f"More rules{count}", key=f"{one.name}_more")
        if not kind.always:
            st.button(
                "Remove",
                key=f"{one.name}_remove",
                type="tertiary",
                on_click=remove_row,
                args=(spot, one.number),
                help=plain(f"Take {one.row.title} off the board."),
            )


def _unusual(one: DraftRow, kind: RowKind) -> int:
    """How many of its rarer rules a row has."""
    usual, written = raw_row(blank(kind)), raw_row(one.row)
    return sum(written.get(rule.path) not in (None, [], usual.get(rule.path)) for rule in kind.more)


def _offer_names(draft: Draft) -> tuple[str, ...]:
    offers = (one for one in draft.rows if KINDS[one.kind].holder == "offers")
    return tuple(name for one in offers if (name := str(one.row.typed["name"]).strip()))
