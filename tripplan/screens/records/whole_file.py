"""Everything on record in one file, and back in, with a look before anything changes."""

from functools import partial

import streamlit as st

from tripplan.planning.calendar_entry.planned_outing import with_next_sequence
from tripplan.records.export import export_all, import_all, read_export
from tripplan.records.merging.replacement import Replacement, replacement
from tripplan.records.opening import Which
from tripplan.screens.widgets.markdown import bullets, plain
from tripplan.screens.widgets.notices import refuse, show_findings, tell
from tripplan.screens.widgets.saving import report_errors
from tripplan.screens.widgets.view import View

PAGE = "records"
"""The spot at the top of the page."""


def whole_file(view: View) -> None:
    """Download everything on record; look at such a file and put it in the place of everything."""
    with st.expander("Everything in one file, for another computer or for safety", key="open_record_files"):
        st.caption("All that you entered, on every page. The file holds names and birth dates.")
        st.download_button(
            "Download everything",
            partial(export_all, view.records),
            file_name=view.file_name(f"tripplan-{view.today}.json"),
            mime="application/json",
            key="download_records",
            on_click="ignore",
        )
        if only_demo(view):
            return
        turn = st.session_state.setdefault("records_upload_turn", 0)
        file = st.file_uploader("Bring a file with everything", type=["json"], key=f"records_upload_{turn}")
        if file is None:
            return
        contents = read_export(file.getvalue(), file.name)
        show_findings(contents.findings)
        if contents.findings:
            return
        held = f"The file holds {len(contents.documents)} records of {contents.of}."
        st.markdown(plain(f"{held} With it in their place:"))
        show_replacement(replacement(view.records, contents.documents))
        agreed = st.checkbox(
            "Put this in the place of everything on record here", key=f"records_agreed_{turn}"
        )
        st.button(
            "Replace everything",
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
            tell(PAGE, "Everything on record now comes from the file.")
            st.session_state["records_upload_turn"] += 1


def only_demo(view: View) -> bool:
    """Whether the demo is shown, which takes no files of one's own; says so."""
    if view.which is Which.DEMO:
        st.caption("To bring files of your own, press 'Use my own family' at the top first.")
        return True
    return False


def show_replacement(change: Replacement) -> None:
    """Say what would be different, document by document."""
    if not change.any:
        st.markdown("It holds exactly what is on record now.")
        return
    for heading, called in change.listed:
        if called:
            st.markdown(f"**{heading}**")
            st.markdown(bullets(called))
    st.caption(f"{change.unchanged} stay as they are. It can be taken back afterwards.")
