"""Several ways to the same thing, one drawn at a time."""

from collections.abc import Callable, Mapping

import streamlit as st

from tripplan.screens.look.folds import ALL_OPENED


def one_way(label: str, key: str, ways: Mapping[str, Callable[[], None]]) -> None:
    """Ask which way, and draw that one alone.

    Args:
        label: what is asked.
        key: of the question.
        ways: what draws each, by its name; the first at first.
    """
    names = list(ways)
    picked = st.segmented_control(label, names, default=names[0], required=True, key=key)
    for name, draw in ways.items():
        if name == picked or st.session_state.get(ALL_OPENED):
            draw()
