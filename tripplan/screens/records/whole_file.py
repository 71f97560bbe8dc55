"""A file with everything on record, brought back in with a look before anything changes."""

import streamlit as st

from tripplan.language.sentences import say
from tripplan.planning.calendar_entry.planned_outing import with_next_sequence
from tripplan.records.export import import_all, read_export
from tripplan.records.merging.replacement import Replacement, replacement
from tripplan.records.opening import Which
from tripplan.screens.widgets.markdown import bullets, plain
from tripplan.screens.widgets.notices import refuse, show_findings, tell
from tripplan.screens.widgets.saving import report_errors
from tripplan.screens.widgets.view import View

PAGE = "records"
"""The spot at the top of the page."""


def bring_file(view: View) -> None:
    """Look at a file with everything, and put it in the place of everything."""
    turn = st.session_state.setdefault("records_upload_turn", 0)
    file = st.file_uploader(say("records-bring-file"), type=["json"], key=f"records_upload_{turn}")
    if file is None:
        return
    contents = read_export(file.getvalue(), file.name)
    show_findings(contents.findings)
    if contents.findings:
        return
    st.markdown(plain(say("records-file-holds", records=len(contents.documents), of=contents.of)))
    show_replacement(replacement(view.records, contents.documents))
    agreed = st.checkbox(say("records-agree"), key=f"records_agreed_{turn}")
    st.button(
        say("records-replace"),
        key="replace_records",
        disabled=not agreed,
        on_click=_replace,
        args=(view, file.getvalue(), file.name),
    )


def _replace(view: View, data: bytes, name: str) -> None:
    with report_errors(PAGE):
        findings = import_all(view.records, data, name, view.services.clock(), with_next_sequence)
        if findings:
            refuse(PAGE, findings=findings)
        else:
            tell(PAGE, say("records-replaced"))
            st.session_state["records_upload_turn"] += 1


def only_demo(view: View) -> bool:
    """Whether the demo is shown, which takes no files of one's own; says so."""
    if view.which is Which.DEMO:
        st.caption(say("records-own-first"))
        return True
    return False


def show_replacement(change: Replacement) -> None:
    """Say what would be different, document by document."""
    if not change.any:
        st.markdown(say("records-the-same"))
        return
    for heading, called in change.listed:
        if called:
            st.markdown(f"**{heading}**")
            st.markdown(bullets(called))
    st.caption(say("records-unchanged", records=change.unchanged))
