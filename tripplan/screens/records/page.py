"""Records: what was changed, copies of earlier days, and everything in one file."""

import streamlit as st

from tripplan.screens.records.day_copies import day_copies
from tripplan.screens.records.deleting import deleting
from tripplan.screens.records.past_changes import past_changes
from tripplan.screens.records.set_aside import what_is_set_aside
from tripplan.screens.records.whole_file import PAGE, whole_file
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.notices import show_notice
from tripplan.screens.widgets.view import View


def render(view: View) -> None:
    """Show how to get back what was there, and how to take everything along."""
    st.title("Records")
    path = view.records.database.path
    st.caption(plain(f"Everything you enter stays on this computer, in the file {path}."))
    show_notice(PAGE)
    what_is_set_aside(view)
    past_changes(view)
    day_copies(view)
    whole_file(view)
    deleting(view)
