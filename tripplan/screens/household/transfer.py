"""The household's file, out of the program and back in, with a look before anything changes."""

from functools import partial

import streamlit as st

from tripplan.documents.family.household import Household
from tripplan.documents.places.offer_sentences import age_in_words
from tripplan.files.cards.household_file import read_household, write_household
from tripplan.language import wording
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
    part = fold("The household's file", "open_household_file")
    if part is None:
        return
    with part:
        if kept is not None:
            st.caption("The file holds names and birth dates; think about who gets it.")
            st.download_button(
                "Download the household file",
                partial(write_household, kept.value),
                file_name="household.toml",
                mime="application/toml",
                key="download_household",
                on_click="ignore",
            )
        if only_demo(view):
            return
        turn = st.session_state.setdefault("household_upload_turn", 0)
        file = st.file_uploader("Bring a household file", type=["toml"], key=f"household_upload_{turn}")
        if file is None:
            return
        read = read_household(file.getvalue(), file.name, view.today)
        show_findings(read.findings)
        if read.value is None:
            return
        st.markdown(plain(_preview(read.value, view)))
        st.button(
            "Take this household over",
            key="take_household",
            type="primary",
            on_click=_take_over,
            args=(view, kept.revision if kept else 0, read.value),
            help="It takes the place of the one on record; places and calendars stay.",
        )


def _preview(household: Household, view: View) -> str:
    people = [f"{member.name} ({age_in_words(member.months_on(view.today))})" for member in household.members]
    return (
        f"{household.name}, in {household.home.town or 'a place by coordinates'}: {wording.listed(people)}."
    )


def _take_over(view: View, expected: int, household: Household) -> None:
    said = "The household from the file is taken over."
    if save_all(view, PAGE, [(household, expected)], said, can_be_taken_back=False):
        st.session_state["household_upload_turn"] += 1
