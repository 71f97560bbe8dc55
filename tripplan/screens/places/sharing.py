"""Handing cards to another family: any choice of them as one file."""

from collections.abc import Mapping

import streamlit as st

from tripplan.documents.places.place import Place
from tripplan.files.cards.shared_cards import MOST_CARDS, write_shared
from tripplan.language.sentences import say
from tripplan.records.store import StoredDocument
from tripplan.screens.widgets.view import View


def share_cards(view: View, cards: Mapping[str, StoredDocument[Place]]) -> None:
    """Let the parent pick cards and download them as one file.

    Args:
        view: whose places.
        cards: what is on record, by id.
    """
    if not cards:
        return
    with st.expander(say("places-share"), key="open_sharing"):
        names = {key: kept.value.name for key, kept in cards.items()}
        picked = st.multiselect(
            say("places-share-which"),
            sorted(names, key=names.__getitem__),
            format_func=names.__getitem__,
            placeholder=say("places-share-all"),
            max_selections=MOST_CARDS,
            key="share_places",
        )
        chosen = [cards[key].value for key in picked or list(names)[:MOST_CARDS]]
        st.caption(say("places-share-only"))
        st.download_button(
            say("places-share-download", cards=len(chosen)),
            lambda: write_shared(chosen),
            file_name=view.file_name("places.toml"),
            mime="application/toml",
            key="share_file",
            on_click="ignore",
        )
