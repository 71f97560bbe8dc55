"""Who looks at a page, and which pages that leaves."""

import streamlit as st
from streamlit.runtime.scriptrunner import get_script_run_ctx

from tripplan.app_server.pairing import Access
from tripplan.app_server.phone_link import phone_link
from tripplan.app_server.visitor import THIS_COMPUTER, visitor_in


def is_this_computer() -> bool:
    """Whether the page is open on the computer that runs the app."""
    return visitor_in(st.context.headers) == THIS_COMPUTER


def access() -> Access | None:
    """What the visitor sees; None where that is nothing: no guard let him in, or his phone was removed."""
    visitor = visitor_in(st.context.headers)
    if visitor in (None, THIS_COMPUTER):
        return None if visitor is None else Access.EVERYTHING
    phone = phone_link.pairing.phone(visitor)
    return None if phone is None else phone.access


def sees_everything() -> bool:
    """Whether all pages are open to the visitor."""
    return access() is Access.EVERYTHING


def note_window() -> None:
    """Let a phone come back to this window after it was out of reach."""
    visitor, context = visitor_in(st.context.headers), get_script_run_ctx()
    if visitor not in (None, THIS_COMPUTER) and context is not None:
        phone_link.pairing.note_session(visitor, context.session_id)


def page_link(page: str, label: str) -> None:
    """A link to a page, where the visitor may open it."""
    if sees_everything():
        st.page_link(page, label=label)
