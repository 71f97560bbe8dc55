"""Copies of earlier days: what putting one back would change, and doing it."""

import streamlit as st

from tripplan.language.sentences import say
from tripplan.planning.calendar_entry.planned_outing import with_next_sequence
from tripplan.records.copies.listed import DayCopy, copies_of
from tripplan.records.merging.replacement import replacement
from tripplan.records.restoring import contents_of, put_back
from tripplan.screens.records.whole_file import PAGE, show_replacement
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.notices import tell
from tripplan.screens.widgets.saving import report_errors
from tripplan.screens.widgets.view import View


def day_copies(view: View) -> None:
    """Let the parent pick a copy, see what would be different, and put it back."""
    path = view.records.database.path
    copies = copies_of(path)
    st.caption(plain(say("records-copies-kept", folder=str(path.parent / "backups"))))
    if not copies:
        return
    days: dict[str, DayCopy] = {}
    for copy in copies:
        days.setdefault(copy.day.isoformat(), copy)
    picked = st.selectbox(
        say("records-copy-of"),
        list(days),
        index=None,
        placeholder=say("records-pick-day"),
        format_func={
            day: say("records-copy-on", day=copy.day, records=copy.holds()) for day, copy in days.items()
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
                say("records-put-back"),
                key="put_copy_back",
                on_click=_put_back,
                args=(view, copy),
            )
        return
    st.error(say("records-unreadable-copy"))


def _put_back(view: View, copy: DayCopy) -> None:
    with report_errors(PAGE):
        put_back(view.records, copy, view.services.clock(), with_next_sequence)
        tell(PAGE, say("records-is-back", day=copy.day))
