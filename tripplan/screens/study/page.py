"""Study units: what is studied when, which places fit, and a term's programme of outings."""

import streamlit as st

from tripplan.documents.study.units import UNITS_AT_MOST, StudyUnit
from tripplan.screens.study.programme_part import programme
from tripplan.screens.study.saving import PAGE, wanted
from tripplan.screens.study.unit_part import new_unit_form, unit_box
from tripplan.screens.widgets.frame import family_or_stop, places_or_stop
from tripplan.screens.widgets.notices import show_notice
from tripplan.screens.widgets.saving import take_back_button
from tripplan.screens.widgets.view import View


def render(view: View) -> None:
    """Show the term's programme, then its units, with forms for all of it."""
    family = family_or_stop(view)
    st.title("What are you studying?")
    places_or_stop(family)
    kept = view.records.all(StudyUnit)
    in_order = sorted(kept.values(), key=lambda one: (one.value.first, one.value.name))
    units = [one.value for one in in_order]
    st.markdown(
        "Write down what the children study and when. Each unit can be closed with an outing to a place that "
        "fits; the outings of a term are chosen together, within your budget and on days that are free."
    )
    show_notice(PAGE)
    take_back_button(view, PAGE)
    if units:
        programme(view, family, units, wanted(view, family.household.currency))
        st.header("The units, and the places that fit", anchor=False)
        for number, one in enumerate(in_order):
            unit_box(view, family, number, one)
        if len(units) >= UNITS_AT_MOST:
            st.caption(f"A programme has at most {UNITS_AT_MOST} units; leave some out this time.")
    else:
        st.info("There is no study unit yet. Add the first one below.")
    new_unit_form(view, family, expanded=not units)
