"""Deleting for good: what would go, said before the press, and what this program cannot delete."""

import streamlit as st

from tripplan.language import wording
from tripplan.records.forgetting import Forgettable, forget, forgettable
from tripplan.records.opening import Which
from tripplan.screens.records.whole_file import PAGE
from tripplan.screens.widgets.lasting import let_go_of_all
from tripplan.screens.widgets.markdown import bullets, plain
from tripplan.screens.widgets.notices import tell
from tripplan.screens.widgets.saving import report_errors
from tripplan.screens.widgets.view import View

_MOST_NAMED = 8


def deleting(view: View) -> None:
    """Say who can read the records, and offer to delete for good what was removed or changed."""
    if view.which is Which.DEMO:
        return
    with st.expander("Who can read this, and deleting for good", key="open_deleting"):
        st.markdown(
            "Your records are **not encrypted**: whoever uses this computer under your name, or takes its "
            "disk, can read them. Turn on your operating system's disk encryption, with a password of your "
            "own, and lock the screen. Copies on a stick or in an online folder are only as safe as those."
        )
        what = forgettable(view.records)
        if not what.any:
            st.caption("Nothing was removed or changed, so there is nothing to delete for good.")
            return
        st.markdown(
            "What you removed or changed can be taken back, so it is still there. To delete a child, remove "
            "the child on Household first. Deleting for good takes:"
        )
        st.markdown(bullets(_said(what)))
        if what.mentioning:
            names = wording.listed(list(what.people))
            st.warning(plain(f"{names}: the name stands in {_few(what.mentioning)}. Change that yourself."))
        st.caption("Files you exported, sheets and calendar entries elsewhere stay; delete those yourself.")
        agreed = st.checkbox("Delete all of this for good; it cannot be taken back", key="forget_agreed")
        st.button("Delete for good", key="forget", disabled=not agreed, on_click=_forget, args=(view,))


def _said(what: Forgettable) -> list[str]:
    said = []
    if what.states:
        said.append(f"earlier states of what is on record ({what.states}), with the list of what was changed")
    if what.removed:
        said.append(f"what was removed: {_few(what.removed)}")
    if what.people:
        said.append(f"everything of {wording.listed(list(what.people))}, no longer in the household")
    if what.naming:
        said.append(f"the name in {_few(what.naming)}")
    if what.files:
        said.append(f"copies and files kept from before ({len(what.files)}); what stays is copied anew")
    return said


def _few(names: tuple[str, ...]) -> str:
    more = len(names) - _MOST_NAMED
    return wording.listed([*names[:_MOST_NAMED], *([f"{more} more"] if more > 0 else [])])


def _forget(view: View) -> None:
    with report_errors(PAGE):
        forget(view.records, view.services.clock())
        let_go_of_all()
        st.session_state["forget_agreed"] = False
        tell(PAGE, "Deleted for good. What is left on record was copied anew.")
