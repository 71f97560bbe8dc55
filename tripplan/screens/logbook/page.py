"""Logbook: what really happened, the year's money, the record for authorities, and what the outings teach."""

import streamlit as st

from tripplan.documents.logbook.entry import LogbookEntry
from tripplan.documents.logbook.settings import LogbookSettings
from tripplan.documents.outings.planned import PlannedOuting
from tripplan.files.cards.logbook_file import logbook_csv
from tripplan.language import wording
from tripplan.planning.family.family import Family
from tripplan.planning.logbook.against_plan import against_plan
from tripplan.planning.logbook.draft import waiting
from tripplan.planning.logbook.sentences import against_lines, entry_lines, entry_sentence
from tripplan.records.store import StoredDocument
from tripplan.screens.logbook.all_entries import all_entries
from tripplan.screens.logbook.entry_form import (
    PAGE,
    KeptEntries,
    KeptOutings,
    open_change,
    open_form,
    open_new,
)
from tripplan.screens.logbook.learned import what_is_learned
from tripplan.screens.logbook.record import record_for_authorities
from tripplan.screens.logbook.year import year_of_outings
from tripplan.screens.look.folds import fold
from tripplan.screens.widgets.choices import place_named
from tripplan.screens.widgets.frame import family_or_stop
from tripplan.screens.widgets.markdown import bullets, plain
from tripplan.screens.widgets.notices import show_notice
from tripplan.screens.widgets.saving import remove_one, take_back_button
from tripplan.screens.widgets.view import View

SHOWN_AT_FIRST = 8
"""How many outings are listed before the parent asks for all [-]."""


def render(view: View) -> None:
    """Let outings be written down, and show what they add up to."""
    family = family_or_stop(view)
    st.title("Logbook")
    st.markdown("What outings really cost, how long they took and what was learned.")
    records = view.records
    entries, outings = all_entries(records), records.all(PlannedOuting)
    settings = records.get(LogbookSettings)
    show_notice(PAGE)
    take_back_button(view, PAGE)
    if not open_form(view, family, entries, outings):
        _what_to_write(view, family, entries, outings)
    _entries(view, family, entries)
    year_of_outings(view, family, entries, outings, settings)
    record_for_authorities(view, family, entries, settings.value if settings else LogbookSettings())
    what_is_learned(view, entries, settings)


def _what_to_write(view: View, family: Family, entries: KeptEntries, outings: KeptOutings) -> None:
    planned = [kept.value for kept in outings.values()]
    written = [kept.value for kept in entries.values()]
    for one in waiting(planned, written, view.services.clock()):
        place = place_named(family, one.place)
        name = place.name if place else one.place
        with st.container(border=True, horizontal=True, vertical_alignment="center", key=f"waiting_{one.id}"):
            st.markdown(plain(f"{wording.day(one.day)}: {name}. How was it?"))
            st.button("Log it", key=f"write_{one.id}", type="primary", on_click=open_new, args=(view, one.id))
    st.button("Write down another outing", key="write_other", on_click=open_new, args=(view,))


def _entries(view: View, family: Family, entries: KeptEntries) -> None:
    st.header("Outings so far", anchor=False)
    if not entries:
        st.caption("None yet. After an outing, write it down here; two minutes on the phone are enough.")
        return
    newest = sorted(entries.values(), key=lambda kept: (kept.value.day, kept.value.id), reverse=True)
    everything = len(newest) <= SHOWN_AT_FIRST or st.toggle(
        f"Show all {len(newest)} outings", key="show_all_entries"
    )
    for kept in newest if everything else newest[:SHOWN_AT_FIRST]:
        _entry(view, family, kept)
    st.download_button(
        "Download all outings as a table (.csv)",
        lambda: logbook_csv([kept.value for kept in newest]),
        file_name=view.file_name("logbook.csv"),
        mime="text/csv",
        key="download_logbook",
        on_click="ignore",
    )


def _entry(view: View, family: Family, kept: StoredDocument[LogbookEntry]) -> None:
    entry = kept.value
    part = fold(plain(entry_sentence(entry, family.household.units)), f"entry_{entry.id}")
    if part is None:
        return
    with part:
        st.markdown(bullets(entry_lines(entry)))
        against = against_plan(entry)
        if against is None:
            st.caption("It was not planned here, so there is nothing to compare it with.")
        else:
            st.markdown("**Against the plan**")
            st.markdown(bullets(against_lines(against)))
        with st.container(horizontal=True):
            st.button("Change", key=f"change_{entry.id}", on_click=open_change, args=(view, entry.id))
            st.button(
                "Remove",
                key=f"remove_{entry.id}",
                on_click=remove_one,
                args=(
                    view,
                    PAGE,
                    LogbookEntry,
                    entry.id,
                    kept.revision,
                    f"{entry.title} on {wording.day(entry.day)} is out of the logbook.",
                ),
            )
