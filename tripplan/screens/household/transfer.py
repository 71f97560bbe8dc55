"""Household files and whole records, out of the program and back in, with a look before anything changes."""

from collections import Counter
from functools import partial

import streamlit as st

from tripplan.files.household_file import read_household, write_household
from tripplan.planning import wording
from tripplan.planning.admission.sentences import age_in_words
from tripplan.planning.household import Household
from tripplan.records.export import export_all, import_all, read_export
from tripplan.records.kinds import kind_of
from tripplan.records.opening import Which
from tripplan.records.store import Kept
from tripplan.screens.household.saving import PAGE
from tripplan.screens.widgets.frame import View
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.notices import refuse, show_findings, show_notice, tell
from tripplan.screens.widgets.saving import records_of, save_all, trouble_said


def household_files(view: View, kept: Kept[Household] | None) -> None:
    """Download the household's file; look at another one and take it over.

    Args:
        view: whose records.
        kept: the household on record, if there is one.
    """
    with st.expander("The household's file", key="open_household_file"):
        if kept is not None:
            st.caption("The file holds names and birth dates; think about who gets it.")
            st.download_button(
                "Download the household file",
                partial(write_household, kept.value),
                file_name="household.toml",
                mime="application/toml",
                key="download_household",
                on_click="ignore",
            )
        if _only_demo(view):
            return
        turn = st.session_state.setdefault("household_upload_turn", 0)
        file = st.file_uploader("Bring a household file", type=["toml"], key=f"household_upload_{turn}")
        if file is None:
            return
        read = read_household(file.getvalue(), file.name, view.today)
        show_findings(read.findings)
        if read.value is None:
            return
        st.markdown(plain(_preview(read.value, view)))
        st.button(
            "Take this household over",
            key="take_household",
            type="primary",
            on_click=_take_over,
            args=(view, kept.revision if kept else 0, read.value),
            help="It takes the place of the one on record; places and calendars stay.",
        )


def _only_demo(view: View) -> bool:
    if view.which is Which.DEMO:
        st.caption("To bring files of your own, press 'Use my own family' at the top first.")
        return True
    return False


def _preview(household: Household, view: View) -> str:
    people = [f"{member.name} ({age_in_words(member.months_on(view.today))})" for member in household.members]
    return (
        f"{household.name}, in {household.home.town or 'a place by coordinates'}: {wording.listed(people)}."
    )


def _take_over(view: View, expected: int, household: Household) -> None:
    said = "The household from the file is taken over."
    if save_all(view, PAGE, [(household, expected)], said, can_be_taken_back=False):
        st.session_state["household_upload_turn"] += 1


def record_files(view: View) -> None:
    """Download everything on record; look at such a file and put it in the place of everything."""
    with st.expander("Everything in one file, for another computer or for safety", key="open_record_files"):
        st.caption(
            "Household, places, calendars, drives and planned outings. The file holds names and birth dates."
        )
        st.download_button(
            "Download everything",
            partial(export_all, records_of(view)),
            file_name=f"tripplan-{view.today}.json",
            mime="application/json",
            key="download_records",
            on_click="ignore",
        )
        show_notice("records")
        if _only_demo(view):
            return
        turn = st.session_state.setdefault("records_upload_turn", 0)
        file = st.file_uploader("Bring a file with everything", type=["json"], key=f"records_upload_{turn}")
        if file is None:
            return
        contents = read_export(file.getvalue(), file.name)
        show_findings(contents.findings)
        if contents.findings:
            return
        counted = Counter(kind_of(type(document)).called("").strip() for document in contents.documents)
        held = wording.listed([f"{kind}: {count}" for kind, count in sorted(counted.items())])
        st.markdown(plain(f"The file holds {held or 'nothing'}."))
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
    with trouble_said("records"):
        findings = import_all(records_of(view), data, name, view.services.clock())
        if findings:
            refuse("records", findings=findings)
        else:
            tell(PAGE, "Everything on record now comes from the file.")
            st.session_state["records_upload_turn"] += 1
