"""Household: a card a person, then home, car, money, habits and passes, each with a press to change."""

from collections import defaultdict

import streamlit as st

from tripplan.documents.family.household import Household
from tripplan.errors import Weight
from tripplan.files.cards.household_file import read_household
from tripplan.files.toml.toml_text import write_toml
from tripplan.language import wording
from tripplan.language.fault_words import on_screen
from tripplan.language.sentences import say
from tripplan.records.opening import Which
from tripplan.screens.household.first_household import first_form
from tripplan.screens.household.person import SHEET, new_person_card, person_card
from tripplan.screens.household.saving import PAGE, raw_household, undo_household
from tripplan.screens.household.things import car_card, habits_card, home_card, money_card, passes_card
from tripplan.screens.household.transfer import household_files
from tripplan.screens.look.folds import fold
from tripplan.screens.records.whole_file import PAGE as RECORDS
from tripplan.screens.records.whole_file import bring_file
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.notices import show_notice
from tripplan.screens.widgets.view import View


def render(view: View) -> None:
    """Show the household in cards, or the first form where there is none yet."""
    kept = view.records.get(Household)
    if kept is None:
        st.title(say("household-your-family"), anchor=False)
        first_form(view)
        st.caption(say("household-stays-here"))
        show_notice(PAGE)
        st.header(say("household-or-file"), anchor=False)
        household_files(view, None)
        show_notice(RECORDS)
        part = fold(say("records-bring-file"), "open_record_files")
        if part is not None:
            with part:
                bring_file(view)
        return
    household = kept.value
    st.title(plain(household.name), anchor=False)
    demo = say("household-demo-only") if view.which is Which.DEMO else ""
    st.caption(f"{say('household-stays-here')} {demo}")
    show_notice(PAGE)
    asked = _asked_about(view, household)
    for question in asked["members"]:
        st.warning(plain(question))
    st.html(f"<style>{SHEET}</style>")
    with st.container(key="cards_people"):
        for index in range(len(household.members)):
            person_card(view, kept, index, asked[f"members[{index}]"])
        new_person_card(view, kept)
    with st.container(key="cards_things"):
        home_card(view, kept)
        car_card(view, kept, asked["car"])
        money_card(view, kept)
        habits_card(view, kept)
        passes_card(view, kept, asked["passes"])
    if kept.revision > 1:
        st.button(
            say("household-undo"),
            key="undo_household",
            type="tertiary",
            on_click=undo_household,
            args=(view, kept),
            help=say("household-undo-help"),
        )
    household_files(view, kept)


def _asked_about(view: View, household: Household) -> dict[str, list[str]]:
    """What is unlikely about the household, as questions, by the part of it that they are about."""
    read = read_household(write_toml(raw_household(household)), "", view.today)
    asked: dict[str, list[str]] = defaultdict(list)
    for one in read.findings:
        if one.weight is Weight.WARNING:
            part = one.field.partition(".")[0]
            about = part if part.startswith("members") else part.partition("[")[0]
            asked[about].append(wording.capital(on_screen(one.message)))
    return asked
