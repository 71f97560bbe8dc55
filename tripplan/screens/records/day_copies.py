"""Copies of earlier days: what putting one back would change, and doing it."""

import streamlit as st

from tripplan.language import wording
from tripplan.planning.calendar_entry.planned_outing import with_next_sequence
from tripplan.records.copies.listed import DayCopy, copies_of
from tripplan.records.merging.replacement import replacement
from tripplan.records.opening import Which
from tripplan.records.restoring import contents_of, put_back
from tripplan.screens.records.whole_file import PAGE, show_replacement
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.notices import tell
from tripplan.screens.widgets.saving import report_errors
from tripplan.screens.widgets.view import View


def day_copies(view: View) -> None:
    """Let the parent pick a copy, see what would be different, and put it back."""
    st.header("Copies of earlier days", anchor=False)
    if view.which is Which.DEMO:
        st.caption("Of the demo there are no copies; 'Show the demo' puts it back as it was at first.")
        return
    path = view.records.database.path
    copies = copies_of(path)
    st.caption(
        plain(
            "Every day on which something changed, your records are copied. The last seven copies stay, and "
            "of those before them every seventh; a full one never goes for emptier ones. They lie in the "
            f"folder {path.parent / 'backups'}; a copy on another disk is safer still."
        )
    )
    if not copies:
        return
    days: dict[str, DayCopy] = {}
    for copy in copies:
        days.setdefault(copy.day.isoformat(), copy)
    picked = st.selectbox(
        "Put back the copy of",
        list(days),
        index=None,
        placeholder="pick a day",
        format_func={
            day: f"{wording.day(copy.day)} ({copy.holds()} records)" for day, copy in days.items()
        }.__getitem__,
        key="copy_picked",
    )
    if picked is None:
        return
    copy = days[picked]
    with report_errors(PAGE):
        contents = contents_of(copy, view.services.clock())
        change = replacement(view.records, contents.documents, contents.unread)
        show_replacement(change)
        if change.any:
            st.button(
                "Put this copy back",
                key="put_copy_back",
                type="primary",
                on_click=_put_back,
                args=(view, copy),
            )
        return
    st.error("This copy cannot be read. Please pick another day.")


def _put_back(view: View, copy: DayCopy) -> None:
    with report_errors(PAGE):
        put_back(view.records, copy, view.services.clock(), with_next_sequence)
        tell(PAGE, f"The copy of {wording.day(copy.day)} is put back.")
