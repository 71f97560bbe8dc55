"""Household: the people, the home, the car, and what the parent cares about."""

from datetime import date

import streamlit as st

from tripplan.documents.family.car import Car
from tripplan.documents.family.household import Household
from tripplan.documents.field_spec import asked
from tripplan.documents.places.offer_sentences import age_in_words
from tripplan.errors import Weight
from tripplan.files.cards.household_file import read_household
from tripplan.files.toml.toml_text import write_toml
from tripplan.language import wording
from tripplan.records.opening import Which
from tripplan.screens.forms.words import in_words
from tripplan.screens.household.first_household import first_form
from tripplan.screens.household.member_form import member_form, new_member_form
from tripplan.screens.household.pass_form import pass_form
from tripplan.screens.household.rush_hours import rush_form
from tripplan.screens.household.saving import CALLED, PAGE, raw_household, undo_household
from tripplan.screens.household.sections import (
    FOOD,
    HABITS,
    RATES,
    RESERVE,
    WEATHER,
    WORTH,
    car_form,
    home_form,
    section_form,
)
from tripplan.screens.household.stops import stops_form
from tripplan.screens.household.transfer import household_files
from tripplan.screens.records.whole_file import PAGE as RECORDS
from tripplan.screens.records.whole_file import whole_file
from tripplan.screens.widgets.markdown import bullets, plain
from tripplan.screens.widgets.notices import show_findings, show_notice
from tripplan.screens.widgets.view import View


def render(view: View) -> None:
    """Show the household with a form for each part of it, or the first form where there is none yet."""
    kept = view.records.get(Household)
    if kept is None:
        st.title("Your family")
        _where_it_lies(view)
        first_form(view)
        show_notice(PAGE)
        st.header("Or bring a file", anchor=False)
        household_files(view, None)
        show_notice(RECORDS)
        whole_file(view)
        return
    household = kept.value
    st.title(plain(household.name))
    st.markdown(bullets(_summary(household, view.today)))
    _where_it_lies(view)
    st.button(
        "Undo last change",
        key="undo_household",
        on_click=undo_household,
        args=(view, kept),
        disabled=kept.revision == 1,
        help="Once more takes back the change before it.",
    )
    show_notice(PAGE)
    _standing_warnings(view, household)
    st.header("People", anchor=False)
    for index in range(len(household.members)):
        member_form(view, kept, index)
    new_member_form(view, kept)
    st.header("Everything else", anchor=False)
    home_form(view, kept)
    car_form(view, kept)
    section_form(view, kept, FOOD)
    section_form(view, kept, HABITS)
    rush_form(view, kept)
    stops_form(view, kept)
    section_form(view, kept, WORTH)
    section_form(view, kept, RESERVE)
    section_form(view, kept, WEATHER)
    pass_form(view, kept)
    st.header("Files", anchor=False)
    household_files(view, kept)
    st.caption("One file with everything, copies of earlier days, and what was changed: on the Records page.")


def _summary(household: Household, today: date) -> list[str]:
    people = [f"{member.name} ({age_in_words(member.months_on(today))})" for member in household.members]
    home = household.home
    place = ", ".join(filter(None, (home.town, home.subdivision))) or "the coordinates you gave"
    car = household.car
    if car is None:
        driving = "No car is entered, so the cost of driving stays unknown."
    elif car.fuel in RATES:
        driving = f"You drive {car.name}, {car.seats} seats, at {car.rate} {household.currency} {car.fuel}."
    else:
        unit = asked(Car, "fuel").words[car.fuel]
        driving = f"You drive {car.name}, {car.seats} seats, {car.consumption} {unit}."
    return [f"{wording.listed(people)}.", f"Outings start in {place} ({home.time_zone}).", driving]


def _where_it_lies(view: View) -> None:
    said = (
        "Everything you enter stays on this computer. Nothing is sent anywhere unless you press the button "
        "below that says what it sends and where."
    )
    if view.which is Which.DEMO:
        said += " What you change here changes the demo only, never your own family."
    st.caption(plain(said))


def _standing_warnings(view: View, household: Household) -> None:
    """What is odd about the household as it is; it never holds a fault."""
    raw = raw_household(household)
    read = read_household(write_toml(raw), "", view.today)
    odd = [finding for finding in read.findings if finding.weight is Weight.WARNING]
    if odd:
        show_findings(in_words(odd, Household, raw, CALLED))
