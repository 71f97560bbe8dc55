"""The cupboard: what is set up once and looked at now and then, a line each."""

import streamlit as st

from tripplan.records.opening import Which
from tripplan.screens.widgets.frame import demo_button
from tripplan.screens.widgets.view import View
from tripplan.screens.widgets.visitor import is_this_computer

_INSIDE = {
    "household": ("The family", "Who we are, naps, home, car, money"),
    "calendar": ("School and family calendars", "School days off, what else we do"),
    "passes": ("Passes", "Is a membership worth it?"),
    "together": ("With others", "Going with another family, and settling between us"),
    "records": ("Records", "What was changed, copies, everything in one file"),
    "phones": ("Phones", "Let a phone show these pages"),
    "guide": ("Guide", "How to use all this"),
}


def render(view: View) -> None:
    """Link to each page, with what it is for."""
    st.title("Cupboard", anchor=False)
    for page, (name, what) in _INSIDE.items():
        if page != "phones" or is_this_computer():  # a phone lets no other phone in
            with st.container(border=True, key=f"card_{page}"):
                st.page_link(f"screens/pages/{page}.py", label=f"**{name}**  \n{what}", width="stretch")
    if view.which is Which.FAMILY and view.family is not None:
        demo_button(view.services)
