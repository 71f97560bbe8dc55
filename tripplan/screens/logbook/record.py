"""The record for home-education authorities on Afterwards: what it covers, whose names it tells."""

from collections.abc import Mapping
from functools import partial

import streamlit as st

from tripplan.documents.logbook.entry import LogbookEntry
from tripplan.documents.logbook.settings import LogbookSettings
from tripplan.files.day_sheet.day_sheet_pdf import missing_sentence, usual_paper
from tripplan.files.education_record.record_of_outings import record_csv, record_html, total_cells
from tripplan.files.education_record.record_pdf import record_letters_lacking, record_pdf
from tripplan.language import wording
from tripplan.planning.family.family import Family
from tripplan.planning.logbook.education_record import EducationRecord, education_record
from tripplan.planning.logbook.state_rules import RULES_DIFFER, STATE_RULES, state_rule
from tripplan.records.store import StoredDocument
from tripplan.screens.widgets.markdown import bullets, plain
from tripplan.screens.widgets.view import View

_NO_STATE = "none"


def record_for_authorities(
    view: View, family: Family, entries: Mapping[str, StoredDocument[LogbookEntry]], settings: LogbookSettings
) -> None:
    """Let the parent say what the record covers, and hand it out as table, page and PDF."""
    st.caption(plain(RULES_DIFFER))
    first, last = settings.year_of(view.today)
    with st.container(horizontal=True):
        begins = st.date_input("From", value=first, format=wording.date_field(), key="record_first")
        ends = st.date_input(
            "To", value=min(last, view.today), format=wording.date_field(), key="record_last"
        )
    if begins is None or ends is None or ends < begins:
        st.warning("Pick a first day, and a last day that is no earlier.")
        return
    written = [kept.value for kept in entries.values()]
    people = list(dict.fromkeys(child.member for entry in written for child in entry.children))
    if not people:
        st.info("No child has an entry yet that says what it did or learned.")
        return
    ordered = [m.name for m in family.household.members if m.name in people]
    people = [*ordered, *(name for name in people if name not in ordered)]
    children = st.pills(
        "Whose record?", people, selection_mode="multi", default=people, key="record_children"
    )
    named = st.pills(
        "Whose names are written out?",
        people,
        selection_mode="multi",
        key="record_named",
        help="Everybody else stands there as initials, also in what you wrote.",
    )
    with_household = st.checkbox("Write the household's name on it", key="record_household")
    states = {_NO_STATE: "no state's figures", **{rule.state: rule.state for rule in STATE_RULES}}
    picked = st.selectbox(
        "Print one state's published figures below it (no advice)",
        list(states),
        format_func=states.__getitem__,
        key="record_state",
    )
    record = education_record(
        written,
        family.household,
        settings,
        begins,
        ends,
        children=children,
        named=named,
        with_household=with_household,
        state=state_rule(picked),
    )
    _totals(record)
    _downloads(view, family, record)


def _totals(record: EducationRecord) -> None:
    if not record.lines:
        st.info("Nothing is recorded in this period.")
        return
    lines = []
    for total in record.totals:
        child, days, away, hours, hours_away, subjects = total_cells(total)
        told = f": {subjects}" if subjects else ""
        lines.append(f"{child}: {days} days ({away} away from home), {hours} ({hours_away} away){told}")
    st.markdown(bullets(lines))
    if record.state is not None:
        rule = record.state
        st.caption(
            plain(f"{rule.state}: {rule.text} Source: {rule.source}, {rule.read}. It may have changed.")
        )


def _downloads(view: View, family: Family, record: EducationRecord) -> None:
    notice = family.household.notice
    name = f"record-{record.first}-{record.last}"
    paper = usual_paper(family.household.home.country)
    with st.container(horizontal=True):
        for label, what, ending, mime, made in (
            ("Page to print (.html)", "html", "html", "text/html", partial(record_html, record, notice)),
            (
                "PDF",
                "pdf",
                "pdf",
                "application/pdf",
                partial(record_pdf, record, paper, view.services.clock(), notice),
            ),
            ("Table (.csv)", "csv", "csv", "text/csv", partial(record_csv, record)),
        ):
            st.download_button(
                label,
                made,
                file_name=view.file_name(f"{name}.{ending}"),
                mime=mime,
                key=f"download_record_{what}",
                on_click="ignore",
            )
    lacking = record_letters_lacking(record)
    if lacking:
        st.caption(plain(missing_sentence(lacking)))
