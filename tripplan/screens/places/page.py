"""Ideas: the places the family keeps, nearest first, and by its address one of them in full."""

import streamlit as st

from tripplan.documents.places.idea import Idea
from tripplan.documents.places.own_figures import OwnFigures
from tripplan.documents.places.typed_drive import TypedDrive
from tripplan.files.cards.format_guide import example_card, format_guide
from tripplan.language.sentences import say
from tripplan.planning.outing.place_facts import drive_from_home
from tripplan.screens.places.adding.front_door import add_place
from tripplan.screens.places.from_map import from_map
from tripplan.screens.places.ideas import wish_list
from tripplan.screens.places.map_chart import places_map
from tripplan.screens.places.place_details import PAGE, render_place
from tripplan.screens.places.place_list import place_list
from tripplan.screens.places.roads import render_roads
from tripplan.screens.places.sharing import share_cards
from tripplan.screens.widgets.frame import family_or_stop
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.notices import show_notice
from tripplan.screens.widgets.saving import take_back_button
from tripplan.screens.widgets.view import View
from tripplan.services import cards_on_record


def render(view: View) -> None:
    """List the places and offer to add others, or show the one that the address names by `?place=`."""
    family = family_or_stop(view)
    cards = cards_on_record(view.records)
    named = st.query_params.get("place", "")
    if named in cards:
        kept = cards[named]
        st.title(plain(kept.value.name))
        st.page_link("screens/pages/places.py", label=say("places-all"))
        show_notice(PAGE)
        take_back_button(view, PAGE)
        render_place(
            view,
            family,
            kept,
            drive_from_home(family, kept.value),
            view.records.get(TypedDrive, named),
            view.records.get(OwnFigures, named),
        )
        return
    st.title(say("doors-page-places"))
    if named:
        st.warning(plain(say("places-no-such-place", name=named)))
    show_notice(PAGE)
    take_back_button(view, PAGE)
    add_place(view, family, cards)
    ideas = view.records.all(Idea)
    wish_list(view, family, {key: kept for key, kept in ideas.items() if key not in cards})
    from_map(view, family)
    if cards:
        places = {place_id: kept.value for place_id, kept in cards.items()}
        drives = {place_id: drive_from_home(family, place) for place_id, place in places.items()}
        household = family.household
        places_map(household.home, [(places[key], drive) for key, drive in drives.items()], household.units)
        place_list(view, family, places, drives)
    else:
        st.info(say("places-none-yet"))
    share_cards(view, cards)
    _guide()
    render_roads(view)


# --- the format of a card ---------------------------------------------------------------------------------


def _guide() -> None:
    with st.expander(say("places-card-guide"), key="open_guide", on_change="rerun") as part:
        if not part.open:
            return
        st.caption(say("places-card-guide-lead"))
        st.code(example_card(), language="toml", wrap_lines=True)
        st.download_button(
            say("places-card-guide-download"),
            format_guide,
            file_name="place-card-guide.md",
            mime="text/markdown",
            key="download_guide",
            on_click="ignore",
        )
