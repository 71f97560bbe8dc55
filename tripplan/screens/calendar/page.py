"""Calendar, in three parts: our outings, when schools are out, when the family is busy."""

import streamlit as st

from tripplan.language.sentences import say
from tripplan.screens.calendar.family_part import family_part
from tripplan.screens.calendar.outings import our_outings
from tripplan.screens.calendar.school.part import school_part
from tripplan.screens.look.folds import ALL_OPENED
from tripplan.screens.widgets.frame import family_or_stop
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.notices import show_notice
from tripplan.screens.widgets.saving import take_back_button
from tripplan.screens.widgets.view import View

PAGE = "calendar"
_PART = "part"
_PARTS = {"outings": our_outings, "school": school_part, "family": family_part}
_NAMES = {"outings": "calendar-our-outings", "school": "calendar-school", "family": "calendar-family"}


def show_our_outings() -> None:
    """Let the page open on the part with the outing that was taken, whichever was picked last."""
    st.session_state[_PART] = "outings"


def render(view: View) -> None:
    """Draw the part that is picked, which the page's address names, with its answer as the headline."""
    family = family_or_stop(view)
    headline = st.empty()
    headline.title(say("calendar-title"), anchor=False)
    picked = st.segmented_control(
        say("calendar-which"),
        list(_NAMES),
        format_func={name: say(code) for name, code in _NAMES.items()}.__getitem__,
        default="outings",
        required=True,
        key=_PART,
        bind="query-params",
        label_visibility="collapsed",
    )
    show_notice(PAGE)
    take_back_button(view, PAGE)
    every = st.session_state.get(ALL_OPENED)
    for name in sorted(_PARTS, key=lambda name: name == picked):
        if every or name == picked:
            headline.title(plain(_PARTS[name](view, family)), anchor=False)
