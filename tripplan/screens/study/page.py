"""For our studies: the semester's outings as a line of dates, and a card for each topic."""

import streamlit as st

from tripplan.documents.outings.planned import PlannedOuting
from tripplan.documents.study.units import UNITS_AT_MOST, StudyUnit
from tripplan.errors import PlanError
from tripplan.language.sentences import say
from tripplan.planning.family.family import Family
from tripplan.planning.study.programme import Programme, Term, programme_of, term_from
from tripplan.planning.topic_fit import fits_of
from tripplan.screens.study.limits import limits_part
from tripplan.screens.study.saving import PAGE, Wanted, wanted
from tripplan.screens.study.semester import SHEET, dates_line, keep_all, summary, swept
from tripplan.screens.study.topic_card import Topic, new_topic, topic_card
from tripplan.screens.widgets.frame import family_or_stop, places_or_stop
from tripplan.screens.widgets.markdown import bullets, plain
from tripplan.screens.widgets.notices import show_notice
from tripplan.screens.widgets.saving import take_back_button
from tripplan.screens.widgets.view import View


def render(view: View) -> None:
    """Show the outings of the semester first, then each topic with the places that fit."""
    if view.family is None:
        st.title(say("studies-what"), anchor=False)
    family = family_or_stop(view)
    places_or_stop(family, say("studies-what"))
    kept = view.records.all(StudyUnit)
    in_order = sorted(kept.values(), key=lambda one: (one.value.first, one.value.name))
    units = [one.value for one in in_order]
    headline = st.empty()
    show_notice(PAGE)
    take_back_button(view, PAGE)
    if not units:
        headline.title(say("studies-what"), anchor=False)
        st.markdown(say("studies-begin"))
        new_topic(view, family, is_first=True)
        return
    wishes = wanted(view, family.household.currency)
    worked_out = _worked_out(view, family, units, wishes)
    count = len(worked_out[1].outings) if worked_out else 0
    headline.title(say("studies-headline", outings=count), anchor=False)
    limits_part(view, family, units, wishes)
    if worked_out is not None:
        found = worked_out[1]
        if found.obstacles:
            st.warning(f"**{say('studies-obstacles')}**\n\n{bullets(found.obstacles)}")
        if found.outings:
            st.caption(plain(summary(found, wishes.wishes)))
            keep_all(view, family, found)
            st.html(f"<style>{SHEET}</style>{dates_line(found, family)}")
    with st.container(key="cards_topics"):
        for number, one in enumerate(in_order):
            topic = Topic(number, one, fits_of(one.value, family.places))
            topic_card(view, family, topic, worked_out, wishes)
        new_topic(view, family, is_first=False)
    if len(units) >= UNITS_AT_MOST:
        st.caption(say("studies-at-most-units", units=UNITS_AT_MOST))


def _worked_out(
    view: View, family: Family, units: list[StudyUnit], wishes: Wanted
) -> tuple[Term, Programme] | None:
    outings = [kept.value for kept in view.records.all(PlannedOuting).values()]
    try:
        term = term_from(family, units, wishes.wishes, outings, swept(view, family), today=view.today)
        return term, programme_of(term)
    except PlanError as trouble:
        st.warning(plain(say("studies-none-worked-out", why=str(trouble))))
        return None
