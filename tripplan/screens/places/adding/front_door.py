"""The one way in for a new place: a name, a pasted text, a saved page or a card, told apart by itself."""

from collections.abc import Mapping

import streamlit as st
from pydantic import ValidationError

from tripplan.documents.places.idea import Idea
from tripplan.documents.places.place import Place
from tripplan.documents.where import Where
from tripplan.errors import Finding
from tripplan.files.locations.gazetteer import NotFound
from tripplan.files.locations.where_text import locate_text
from tripplan.planning.family.family import Family
from tripplan.reading.idea_line import idea_of, read_idea
from tripplan.reading.saved_page import LARGEST
from tripplan.records.store import StoredDocument
from tripplan.screens.places.adding.card_preview import preview_cards, upload_turn
from tripplan.screens.places.adding.every_field import every_field
from tripplan.screens.places.adding.from_text import read_saved_page, read_text
from tripplan.screens.places.adding.short_form import begin, short_form
from tripplan.screens.places.adding.what_it_is import What, is_card, what_is
from tripplan.screens.widgets.notices import refuse, show_notice
from tripplan.screens.widgets.saving import save_all, take_back_button
from tripplan.screens.widgets.view import View

_MEGABYTE = 1024 * 1024


def add_place(view: View, family: Family, cards: Mapping[str, StoredDocument[Place]]) -> None:
    """Ask for a place in whatever form the parent has it.

    Args:
        view: whose places.
        family: gives country and currency.
        cards: what is on record, by id.
    """
    spot = f"new_card_{view.which}"
    with st.form(f"{spot}_door", border=False):
        st.text_area(
            "Where would you like to go?",
            key=f"{spot}_pasted",
            placeholder="A name is enough. Or paste its prices and hours as the place writes them.",
            height="content",
        )
        with st.container(horizontal=True):
            st.form_submit_button(
                "Add", key=f"{spot}_read", type="primary", on_click=_take, args=(view, family, spot)
            )
            st.form_submit_button("Type it in", key=f"{spot}_type", on_click=_type_in, args=(spot,))
    turn = upload_turn()
    st.file_uploader(
        "Or bring a file: cards (.toml), or its web page as you saved it (.html, .mhtml)",
        type=["toml", "html", "htm", "mhtml", "mht"],
        accept_multiple_files=True,
        key=f"card_upload_{turn}",
        max_upload_size=LARGEST // _MEGABYTE,
        on_change=_bring,
        args=(view, family, spot, f"card_upload_{turn}"),
        help="Nothing in a page is run, and nothing is fetched.",
    )
    brought = [(file.name, file.getvalue()) for file in st.session_state[f"card_upload_{turn}"] or ()]
    files = [(name, content) for name, content in brought if is_card(content) or name.endswith(".toml")]
    pasted = st.session_state.get(_card_text(spot))
    if pasted:
        files.append(("pasted card", pasted))
    if files:
        preview_cards(view, cards, files)
    way = st.session_state.get(f"{spot}_way", "")
    if way == "short":
        short_form(view, family, cards, spot)
    elif way:
        every_field(view, family, cards, spot, folded=way == "read")
    show_notice(spot)
    take_back_button(view, spot)


def _card_text(spot: str) -> str:
    return f"{spot}_card_text"


def _type_in(spot: str) -> None:
    """The short form, begun with what stands in the field where that is a line."""
    line = read_idea(str(st.session_state[f"{spot}_pasted"] or ""))
    begin(spot, line.name if line else "", line.where if line else "")
    if line is not None:
        st.session_state[f"{spot}_pasted"] = ""


def _take(view: View, family: Family, spot: str) -> None:
    """Take what stands in the field for what it is."""
    text = str(st.session_state[f"{spot}_pasted"] or "")
    st.session_state.pop(_card_text(spot), None)
    match what_is(text, family.household.home.country):
        case What.NOTHING:
            refuse(spot, "Write a name first, or paste a text.")
        case What.IDEA:
            _keep_idea(view, family, spot, text)
        case What.CARD:
            st.session_state[_card_text(spot)] = text.encode()
        case What.PAGE:
            read_saved_page(view, family, spot, "The pasted page", text.encode())
        case What.TEXT:
            read_text(view, family, spot, text)


def _bring(view: View, family: Family, spot: str, key: str) -> None:
    """Read a saved page as soon as it is there; cards are looked at further down."""
    for file in st.session_state[key] or ():
        content = file.getvalue()
        if not file.name.endswith(".toml") and not is_card(content):
            read_saved_page(view, family, spot, file.name, content)


def _keep_idea(view: View, family: Family, spot: str, text: str) -> None:
    line = read_idea(text)
    if line is None:
        return
    where = _located(line.where, family.household.home)
    taken = {*view.records.all(Place), *view.records.all(Idea)}
    try:
        idea = idea_of(line, taken, view.today, where)
    except ValidationError as faults:
        found = [
            Finding("", str(one["loc"][0]), str(one["input"])[:60], one["msg"]) for one in faults.errors()
        ]
        refuse(spot, findings=found)
        return
    if save_all(view, spot, [(idea, 0)], f"{idea.name} is on the wish list."):
        st.session_state[f"{spot}_pasted"] = ""


def _located(text: str, home: Where) -> Where | None:
    """Where a part of a line lies; None where nobody knows, and the words stay with the idea."""
    if not text:
        return None
    try:
        found = locate_text(text, home)
    except ValueError:
        return None
    return None if isinstance(found, NotFound) else found
