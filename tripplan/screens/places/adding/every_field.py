"""A new place card without writing TOML: its fields and its price board, checked as a card's file is."""

import re
from collections.abc import Mapping, Sequence
from datetime import date
from typing import Any

import streamlit as st

from tripplan.documents.places.idea import Idea, place_id
from tripplan.documents.places.place import FORMAT, Place
from tripplan.errors import Finding, Weight
from tripplan.files.cards.place_card import read_place_card
from tripplan.files.toml.reading_result import ReadResult
from tripplan.files.toml.toml_text import write_toml
from tripplan.planning.family.family import Family
from tripplan.records.store import StoredDocument
from tripplan.screens.places.adding.from_text import show_what_was_read
from tripplan.screens.places.adding.handing_on import first_rows, forget_suggested, suggested_for
from tripplan.screens.places.board.draft import begin_draft, draft_on, forget_draft
from tripplan.screens.places.board.drawing import draw_board, pick_lists_for
from tripplan.screens.places.board.faults import show_faults, to_put_right
from tripplan.screens.places.board.kinds import Row
from tripplan.screens.places.board.rows import raw_board
from tripplan.screens.places.card.drawing import draw_card, show_hours
from tripplan.screens.places.card.faults import faults_in_words, hours_are_read, show_card_faults
from tripplan.screens.places.card.values import on_record, put_fields
from tripplan.screens.places.for_us import show_for_us
from tripplan.screens.widgets.fields import Fields, put, refill
from tripplan.screens.widgets.lasting import let_last
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.notices import refuse
from tripplan.screens.widgets.saving import save_all
from tripplan.screens.widgets.view import View


@st.fragment
def every_field(
    view: View, family: Family, cards: Mapping[str, StoredDocument[Place]], spot: str, *, folded: bool
) -> None:
    """Ask for everything a card needs, and make the card.

    Args:
        view: whose places.
        family: gives the currency; for it the prices are worked out.
        cards: what is on record, by id.
        spot: names the form.
        folded: whether only what was read, name and location are in sight, and the rest opens on demand.
    """
    currency = family.household.currency
    if folded:
        show_what_was_read(spot)
    drawn = draw_card(view, spot, None, currency, suggested_for(spot), folded=folded)
    typed = drawn.fields.typed()
    draft = draft_on(spot) or begin_draft(spot, first_rows(view.today), 0, new=True)
    values, found = card_values(typed, draft.as_rows())
    board = read_with_stand_ins(values, family, view.today)
    if folded:
        right = st.container(border=True)
    else:
        st.markdown("**What it costs**")
        left, right = st.columns([3, 2])
        with left:
            slots = draw_board(spot, draft, pick_lists_for(family), typed["currency"])
        values, found = card_values(typed, draft.as_rows())
        board = read_with_stand_ins(values, family, view.today)
        show_faults(slots, draft, board.findings, board.value)
    waiting = None if draft.pressed else on_record(None, currency)
    show_card_faults(drawn, _worth_telling((*found, *board.findings), typed), waiting)
    with right:
        if board.value is None:
            said = to_put_right(draft, board.findings)
        else:
            if hours_are_read(board.findings):
                show_hours(drawn, family, board.value, view.today)
            else:
                st.caption("Until the opening hours can be read, every day from ten to five counts.")
            said = show_for_us(view, family, board.value, spot)
    st.caption(plain(said))
    if place_id(typed["name"]) in cards:
        st.checkbox("If I already have a place of that name, replace it", key=f"{spot}_replace")
    with st.container(horizontal=True):
        # What these buttons do is seen outside this part of the page too.
        pressed = st.button(
            "Add this place",
            key="save_new_card",
            type="primary",
            on_click=_save,
            args=(view, cards, drawn.fields),
        )
        if folded:
            pressed |= st.button("Change anything else", key=f"{spot}_open", on_click=_unfold, args=(spot,))
        pressed |= st.button("Cancel", key=f"{spot}_cancel", type="tertiary", on_click=_leave, args=(spot,))
    if pressed:
        st.rerun()


def _unfold(spot: str) -> None:
    let_last({f"{spot}_way": "long"})


def _leave(spot: str) -> None:
    forget_draft(spot)
    refill(spot)
    forget_suggested(spot)
    st.session_state[f"{spot}_replace"] = False


def _save(view: View, cards: Mapping[str, StoredDocument[Place]], fields: Fields) -> None:
    spot = fields.form
    typed, draft = fields.typed(), draft_on(spot)
    if draft is None:
        return
    draft.pressed = True
    values, found = card_values(typed, draft.as_rows())
    kept = cards.get(str(values.get("id")))
    if kept is not None and not st.session_state.get(f"{spot}_replace"):
        message = f"there is '{kept.value.name}' already; tick below to replace it, or change the name"
        found.append(Finding("", "name", typed["name"], message))
    read = read_place_card(write_toml(values), "", view.today)
    if read.value is None or found:
        told = _worth_telling((*found, *read.findings), typed)
        refuse(spot, findings=faults_in_words(told, draft.as_rows()))
        return
    idea = view.records.all(Idea).get(str(read.value.id))
    grown = [(Idea, str(read.value.id), idea.revision)] if idea else []
    value = (read.value, kept.revision if kept else 0)
    if save_all(view, spot, [value], f"{read.value.name} is added.", removing=grown):
        _leave(spot)
        st.session_state[f"{spot}_pasted"] = ""


def _worth_telling(findings: Sequence[Finding], typed: Mapping[str, Any]) -> list[Finding]:
    """An id is made from the name, so that a missing name would be told twice."""
    named = bool(typed["name"].strip())
    return [finding for finding in findings if named or finding.field != "id"]


def card_values(typed: Mapping[str, Any], rows: Sequence[Row]) -> tuple[dict[str, Any], list[Finding]]:
    """A new place card as its file would hold it, and what the form itself could not read.

    Args:
        typed: the fields of the form.
        rows: the price board.
    """
    values: dict[str, Any] = {"format": FORMAT, **raw_board(rows)}
    put(values, "id", place_id(typed["name"]))
    return values, put_fields(values, typed, None)


def read_with_stand_ins(values: Mapping[str, Any], family: Family, today: date) -> ReadResult[Place]:
    """A card whose board may be complete before the rest is: what is not, is replaced for the time being.

    Args:
        values: the card as its file would hold it.
        family: the household, whose home and currency stand in; by its clock the place is then open from ten
            to five.
        today: on which the prices were read, where that is not said yet.
    """
    read = read_place_card(write_toml(values), "", today)
    wrong = {
        re.split(r"[.\[]", finding.field, maxsplit=1)[0]
        for finding in read.findings
        if finding.weight is Weight.FAULT
    }
    stand_ins: dict[str, Any] = {
        "id": "not-named-yet",
        "name": "not named yet",
        "currency": family.household.currency,
        "where": family.household.home.model_dump(mode="json", exclude_none=True),
        "opening": {"hours": "Mo-Su 10:00-17:00"},
        "visit": {},
        "special_days": [],
        "prices_read": {"on": today, "source": "not said yet"},
    }
    if not wrong & stand_ins.keys():
        return read
    mended = {**values, **{name: stand_ins[name] for name in wrong if name in stand_ins}}
    again = read_place_card(write_toml(mended), "", today)
    return ReadResult(again.value, read.findings)
