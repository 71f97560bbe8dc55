"""A card on record, changed field by field; its prices have an editor of their own."""

from typing import Any

import streamlit as st

from tripplan.documents.places.place import Place
from tripplan.errors import Finding
from tripplan.files.cards.place_card import read_place_card
from tripplan.files.toml.toml_text import write_toml
from tripplan.planning.family.family import Family
from tripplan.records.store import StoredDocument
from tripplan.screens.places.adding.every_field import read_with_stand_ins
from tripplan.screens.places.board.rows import rows_of
from tripplan.screens.places.card.drawing import draw_card, show_hours
from tripplan.screens.places.card.faults import faults_in_words, hours_are_read, show_card_faults
from tripplan.screens.places.card.values import put_fields
from tripplan.screens.widgets.fields import Fields, refill
from tripplan.screens.widgets.lasting import let_go, let_last
from tripplan.screens.widgets.notices import refuse, show_notice
from tripplan.screens.widgets.saving import save_all, take_back_button
from tripplan.screens.widgets.view import View


def change_card(view: View, family: Family, kept: StoredDocument[Place]) -> bool:
    """Offer to change what a card says beside its prices, or let it be changed.

    Args:
        view: whose records.
        family: by whose home the hours are shown while the location cannot be read.
        kept: the card.

    Returns:
        Whether the card is being changed, so that it need not be told otherwise.
    """
    spot = f"card_{view.which}_{kept.value.id}"
    if st.session_state.get(_open(spot)):
        _editor(view, family, kept, spot)
        show_notice(spot)
        return True
    show_notice(spot)
    with st.container(horizontal=True):
        st.button("Change the rest of the card", key=f"{spot}_change", on_click=_begin, args=(spot,))
        take_back_button(view, spot)
    return False


def _open(spot: str) -> str:
    return f"{spot}_open"


def _begin(spot: str) -> None:
    let_last({_open(spot): True})


def _leave(spot: str) -> None:
    let_go(_open(spot))
    refill(spot)


@st.fragment
def _editor(view: View, family: Family, kept: StoredDocument[Place], spot: str) -> None:
    drawn = draw_card(view, spot, kept.value, kept.value.currency)
    values, found = changed_values(kept.value, drawn.fields.typed())
    read = read_with_stand_ins(values, family, view.today)
    show_card_faults(drawn, (*found, *read.findings))
    if read.value is not None and hours_are_read(read.findings):
        show_hours(drawn, family, read.value, view.today)
    with st.container(horizontal=True):
        saved = st.button(
            "Save the card",
            key=f"{spot}_save",
            type="primary",
            on_click=_save,
            args=(view, kept, drawn.fields),
        )
        left_it = st.button("Leave it as it was", key=f"{spot}_leave", on_click=_leave, args=(spot,))
    if saved or left_it:  # which is to be seen outside this part of the page too
        st.rerun()


def changed_values(place: Place, typed: dict[str, Any]) -> tuple[dict[str, Any], list[Finding]]:
    """A changed card as its file would hold it, and what the form itself could not read.

    Args:
        place: the card on record; what the fields do not show stays.
        typed: the fields of the form.
    """
    values = place.model_dump(mode="json", exclude_none=True)
    return values, put_fields(values, typed, place)


def _save(view: View, kept: StoredDocument[Place], fields: Fields) -> None:
    spot = fields.form
    values, found = changed_values(kept.value, fields.typed())
    read = read_place_card(write_toml(values), "", view.today)
    if read.value is None or found:
        refuse(spot, findings=faults_in_words((*found, *read.findings), rows_of(kept.value)))
        return
    if save_all(view, spot, [(read.value, kept.revision)], f"The card of {read.value.name} is saved."):
        _leave(spot)
