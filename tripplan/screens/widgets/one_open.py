"""Parts of a page of which one is open at a time; which one it is outlives the window."""

import streamlit as st
from streamlit.delta_generator import DeltaGenerator

from tripplan.screens.look.folds import ALL_OPENED
from tripplan.screens.widgets.lasting import let_go, let_last
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.view import View


def part_if_open(view: View, page: str, part: str) -> DeltaGenerator | None:
    """Where an open part of a page is drawn; None where it is closed: then it is neither worked out nor sent.

    Args:
        view: whose page.
        page: names the page.
        part: names the part.
    """
    if not (st.session_state.get(_name(view, page)) == part or st.session_state.get(ALL_OPENED)):
        return None
    return st.container(key=f"part_{part}")


def opener(view: View, page: str, part: str, label: str, *, about: str, is_main: bool = False) -> None:
    """The button that opens a part, and closes it again.

    Args:
        view: whose page.
        page: names the page.
        part: names the part.
        label: what it says while the part is closed; names what it is about.
        about: what is closed, such as a person's name.
        is_main: whether it is the filled one.
    """
    is_open = st.session_state.get(_name(view, page)) == part
    st.button(
        plain(f"Close {about}" if is_open else label),
        key=f"turn_{part}",
        type="tertiary" if is_open else "primary" if is_main else "secondary",
        on_click=close_part if is_open else open_part,
        args=(view, page) if is_open else (view, page, part),
    )


def open_part(view: View, page: str, part: str) -> None:
    """Open one part of a page; another that was open is closed, and keeps what was typed."""
    let_last({_name(view, page): part})


def close_part(view: View, page: str) -> None:
    """Close what is open on a page."""
    let_go(_name(view, page))


def _name(view: View, page: str) -> str:
    return f"open_on_{page}_{view.which}"
