"""What next? The outing planned next, else three compared; ideas that wait; what is left of the budget."""

from datetime import timedelta

import streamlit as st

from tripplan.documents.logbook.entry import LogbookEntry
from tripplan.documents.places.idea import Idea
from tripplan.language import wording
from tripplan.language.sentences import say
from tripplan.planning.family.family import Family
from tripplan.screens.choose_day.free_today import render_free_today
from tripplan.screens.compare import compared_outings
from tripplan.screens.look import cards
from tripplan.screens.start.budget import render_budget
from tripplan.screens.start.first_steps import render_first_steps
from tripplan.screens.start.next_outing import render_next_outing
from tripplan.screens.widgets.choices import next_outing, place_named, planned_outings
from tripplan.screens.widgets.view import View

_LOG_WITHIN = timedelta(days=14)
"""So long after an outing the page asks how it was."""


def render(view: View) -> None:
    """Say what comes next, and lead there."""
    family = view.family
    if family is None or not family.places:
        render_first_steps(view)
        return
    coming = next_outing(view, family)
    if coming is None:
        compared_outings(view, family)
    else:
        render_next_outing(view, family, coming)
    render_free_today(view, family)
    _to_write_down(view, family)
    _ideas(view)
    render_budget(view, family)


def _to_write_down(view: View, family: Family) -> None:
    """The last outing that nobody has written down yet."""
    now = view.services.clock()
    written = {kept.value.planned for kept in view.records.all(LogbookEntry).values()}
    over = [
        one
        for one in planned_outings(view)
        if one.takes_time and one.home <= now < one.home + _LOG_WITHIN and one.id not in written
    ]
    place = place_named(family, over[-1].place) if over else None
    if place is not None:
        with st.container(border=True, key="card_to_write_down"):
            st.html(
                cards.face(
                    cards.name(say("start-how-was", place=place.name)),
                    cards.small(wording.short_day(over[-1].day)),
                )
            )
            st.page_link("screens/pages/logbook.py", label=say("start-log-it"))


def _ideas(view: View) -> None:
    """The ideas that wait for their hours and prices."""
    names = sorted((kept.value.name for kept in view.records.all(Idea).values()), key=str.casefold)
    if names:
        with st.container(border=True, key="card_ideas"):
            head = cards.name(say("start-ideas-waiting", ideas=len(names)), drawing="ideas")
            st.html(cards.face(head, cards.small(wording.listed(names[:4]))))
            st.page_link("screens/pages/places.py", label=say("start-look-at-ideas"))
