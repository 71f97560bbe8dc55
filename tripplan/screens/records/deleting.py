"""Deleting for good: what would go, said before the press, and what this program cannot delete."""

import streamlit as st

from tripplan.language import wording
from tripplan.language.sentences import say
from tripplan.records.forgetting import Forgettable, forget, forgettable
from tripplan.screens.records.whole_file import PAGE
from tripplan.screens.widgets.lasting import let_go_of_all
from tripplan.screens.widgets.markdown import bullets, plain
from tripplan.screens.widgets.notices import tell
from tripplan.screens.widgets.saving import report_errors
from tripplan.screens.widgets.view import View

_MOST_NAMED = 8


def deleting(view: View) -> None:
    """Say who can read the records, and offer to delete for good what was removed or changed."""
    st.markdown(say("records-not-encrypted"))
    what = forgettable(view.records)
    if not what.any:
        st.caption(say("records-nothing-to-delete"))
        return
    st.markdown(say("records-deleting-takes"))
    st.markdown(bullets(_said(what)))
    if what.mentioning:
        st.warning(plain(say("records-name-stands", people=what.people, what=_few(what.mentioning))))
    st.caption(say("records-elsewhere"))
    agreed = st.checkbox(say("records-agree-delete"), key="forget_agreed")
    st.button(say("records-delete"), key="forget", disabled=not agreed, on_click=_forget, args=(view,))


def _said(what: Forgettable) -> list[str]:
    said = []
    if what.states:
        said.append(say("records-earlier-states", count=what.states))
    if what.removed:
        said.append(say("records-was-removed", what=_few(what.removed)))
    if what.people:
        said.append(say("records-everything-of", people=what.people))
    if what.naming:
        said.append(say("records-name-in", what=_few(what.naming)))
    if what.files:
        said.append(say("records-copies-before", count=len(what.files)))
    return said


def _few(names: tuple[str, ...]) -> str:
    more = len(names) - _MOST_NAMED
    return wording.listed(
        [*names[:_MOST_NAMED], *([say("records-and-more", count=more)] if more > 0 else [])]
    )


def _forget(view: View) -> None:
    with report_errors(PAGE):
        forget(view.records, view.services.clock())
        let_go_of_all()
        st.session_state["forget_agreed"] = False
        tell(PAGE, say("records-deleted"))
