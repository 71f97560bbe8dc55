"""The price board of a card on record: changed in place, with what it means for the family beside it."""

from typing import Any

import streamlit as st

from tripplan.documents.places.place import Place
from tripplan.files.cards.place_card import read_place_card
from tripplan.files.toml.reading_result import ReadResult
from tripplan.files.toml.toml_text import write_toml
from tripplan.planning.family.family import Family
from tripplan.records.store import StoredDocument
from tripplan.screens.places.board.draft import Draft, begin_draft, draft_on, forget_draft
from tripplan.screens.places.board.drawing import draw_board, pick_lists_for
from tripplan.screens.places.board.faults import show_faults, to_put_right
from tripplan.screens.places.board.kinds import HOLDERS
from tripplan.screens.places.board.rows import raw_board, rows_of
from tripplan.screens.places.card.faults import faults_in_words
from tripplan.screens.places.for_us import show_for_us
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.notices import refuse, show_notice
from tripplan.screens.widgets.saving import save_all, take_back_button
from tripplan.screens.widgets.view import View


def board_spot(view: View, place_id: str) -> str:
    """What names the editor of a card's board, apart from the other records' editors."""
    return f"board_{view.which}_{place_id}"


def change_board(view: View, family: Family, kept: StoredDocument[Place]) -> bool:
    """Offer to change the prices of a card, or let them be changed.

    Args:
        view: whose records.
        family: for whom the prices are worked out.
        kept: the card.

    Returns:
        Whether the board is being changed, so that it need not be shown otherwise.
    """
    spot = board_spot(view, kept.value.id)
    draft = draft_on(spot)
    if draft is not None:
        if draft.begun_with == raw_board(rows_of(kept.value)):
            draft.revision = kept.revision  # if anything, only the rest of the card was changed meanwhile
        if draft.revision != kept.revision:
            begin_draft(spot, rows_of(kept.value), kept.revision, new=False)
            st.info("This card was changed elsewhere meanwhile. This is the newest; please look it over.")
        _editor(view, family, kept, spot)
        show_notice(spot)
        return True
    show_notice(spot)
    with st.container(horizontal=True):
        st.button("Change the prices", key=f"{spot}_change", on_click=_begin, args=(spot, kept))
        take_back_button(view, spot)
    return False


def _begin(spot: str, kept: StoredDocument[Place]) -> None:
    begin_draft(spot, rows_of(kept.value), kept.revision, new=False)


@st.fragment
def _editor(view: View, family: Family, kept: StoredDocument[Place], spot: str) -> None:
    draft = draft_on(spot)
    if draft is None:
        return
    left, right = st.columns([3, 2])
    with left:
        slots = draw_board(spot, draft, pick_lists_for(family, kept.value.id), kept.value.currency)
    read = changed_card(kept.value, draft, view)
    show_faults(slots, draft, read.findings, read.value)
    with right, st.container(border=True):
        if read.value is None:
            said = to_put_right(draft, read.findings)
        else:
            said = show_for_us(view, family, read.value, spot)
    with left:
        st.caption(plain(said))
        with st.container(horizontal=True):
            saved = st.button(
                "Save the prices",
                key=f"{spot}_save",
                type="primary",
                on_click=_save,
                args=(view, kept, spot),
            )
            left_it = st.button(
                "Leave them as they were", key=f"{spot}_leave", on_click=forget_draft, args=(spot,)
            )
        if saved or left_it:  # which is to be seen outside this part of the page too
            st.rerun()


def changed_card(place: Place, draft: Draft, view: View) -> ReadResult[Place]:
    """The card with the board that is being typed, checked as its file would be."""
    raw: dict[str, Any] = place.model_dump(mode="json", exclude_none=True)
    unchanged = {name: value for name, value in raw.items() if name not in HOLDERS}
    return read_place_card(write_toml({**unchanged, **raw_board(draft.as_rows())}), "", view.today)


def _save(view: View, kept: StoredDocument[Place], spot: str) -> None:
    draft = draft_on(spot)
    if draft is None:
        return
    draft.pressed = True
    read = changed_card(kept.value, draft, view)
    if read.value is None:
        refuse(spot, findings=faults_in_words(read.findings, draft.as_rows()))
        return
    # Saved or refused because of another window: either way the newest card counts from now on.
    save_all(view, spot, [(read.value, draft.revision)], f"The prices of {read.value.name} are saved.")
    forget_draft(spot)
