"""The household's file, out of the program and back in, with a look before anything changes."""

from functools import partial

import streamlit as st

from tripplan.documents.family.household import Household
from tripplan.documents.places.offer_sentences import age_in_words
from tripplan.files.cards.household_file import read_household, write_household
from tripplan.language.sentences import fact, say
from tripplan.records.store import StoredDocument
from tripplan.screens.household.saving import PAGE
from tripplan.screens.look.folds import fold
from tripplan.screens.records.whole_file import only_demo
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.notices import show_findings
from tripplan.screens.widgets.saving import save_all
from tripplan.screens.widgets.view import View


def household_files(view: View, kept: StoredDocument[Household] | None) -> None:
    """Download the household's file; look at another one and take it over.

    Args:
        view: whose records.
        kept: the household on record, if there is one.
    """
    part = fold(say("household-file"), "open_household_file")
    if part is None:
        return
    with part:
        if kept is not None:
            st.caption(say("household-file-holds"))
            st.download_button(
                say("household-file-download"),
                partial(write_household, kept.value),
                file_name="household.toml",
                mime="application/toml",
                key="download_household",
                on_click="ignore",
            )
        if only_demo(view):
            return
        turn = st.session_state.setdefault("household_upload_turn", 0)
        file = st.file_uploader(say("household-file-bring"), type=["toml"], key=f"household_upload_{turn}")
        if file is None:
            return
        read = read_household(file.getvalue(), file.name, view.today)
        show_findings(read.findings)
        if read.value is None:
            return
        st.markdown(plain(_preview(read.value, view)))
        st.button(
            say("household-file-take"),
            key="take_household",
            type="primary",
            on_click=_take_over,
            args=(view, kept.revision if kept else 0, read.value),
            help=say("household-file-takes"),
        )


def _preview(household: Household, view: View) -> str:
    people = tuple(
        f"{member.name} ({age_in_words(member.months_on(view.today))})" for member in household.members
    )
    town = household.home.town or fact("household-file-coordinates")
    return say("household-file-preview", name=household.name, town=town, people=people)


def _take_over(view: View, expected: int, household: Household) -> None:
    said = say("household-file-taken")
    if save_all(view, PAGE, [(household, expected)], said, can_be_taken_back=False):
        st.session_state["household_upload_turn"] += 1
