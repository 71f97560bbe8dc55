"""The cupboard: what is set up once and looked at now and then, a line each."""

import streamlit as st

from tripplan.language.sentences import say
from tripplan.records.opening import Which
from tripplan.screens.widgets.frame import demo_button
from tripplan.screens.widgets.view import View
from tripplan.screens.widgets.visitor import is_this_computer

_INSIDE = {
    "household": ("doors-page-household", "doors-household-what"),
    "calendar": ("doors-calendars", "doors-calendars-what"),
    "passes": ("doors-page-passes", "doors-passes-what"),
    "together": ("doors-page-together", "doors-together-what"),
    "records": ("doors-page-records", "doors-records-what"),
    "phones": ("doors-page-phones", "doors-phones-what"),
    "guide": ("doors-page-guide", "doors-guide-what"),
}


def render(view: View) -> None:
    """Link to each page, with what it is for."""
    st.title(say("doors-cupboard"), anchor=False)
    for page, (name, what) in _INSIDE.items():
        if page != "phones" or is_this_computer():  # a phone lets no other phone in
            with st.container(border=True, key=f"card_{page}"):
                st.page_link(
                    f"screens/pages/{page}.py", label=f"**{say(name)}**  \n{say(what)}", width="stretch"
                )
    if view.which is Which.FAMILY and view.family is not None:
        demo_button(view.services)
