"""Parts of a page that are worked out and sent only once they are opened."""

from collections.abc import Callable

import streamlit as st
from streamlit.delta_generator import DeltaGenerator

ALL_OPENED = "all_parts_opened"
"""Where the session says so, every part counts as opened; a test that looks at all of them sets it."""


def fold(label: str, key: str) -> DeltaGenerator | None:
    """A part that is closed at first; None until it is opened for the first time.

    From then on it stays drawn, so that closing it loses nothing that was typed.

    Args:
        label: Markdown.
        key: of the part.
    """
    part = st.expander(label, key=key, on_change="rerun")
    seen = f"seen_{key}"
    if part.open:
        st.session_state[seen] = True
    return part if st.session_state.get(seen) or st.session_state.get(ALL_OPENED) else None


def chip(label: str, key: str, draw: Callable[[], object]) -> None:
    """A small button that says what something is set to, and changes it while it is open.

    Args:
        label: Markdown.
        key: of the part.
        draw: draws what is in it.
    """
    with st.popover(label, key=key, on_change="rerun") as part:
        if part.open:
            draw()
