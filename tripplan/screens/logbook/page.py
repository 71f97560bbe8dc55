"""Afterwards: the outings to log, those that are logged, and a step further what they add up to and teach."""

import streamlit as st

from tripplan.documents.logbook.entry import LogbookEntry
from tripplan.documents.logbook.settings import LogbookSettings
from tripplan.documents.outings.planned import PlannedOuting
from tripplan.files.cards.logbook_file import logbook_csv
from tripplan.language import wording
from tripplan.language.sentences import say
from tripplan.planning.family.family import Family
from tripplan.planning.logbook.against_plan import against_plan
from tripplan.planning.logbook.draft import waiting
from tripplan.planning.logbook.sentences import entry_lines
from tripplan.records.store import StoredDocument
from tripplan.screens.logbook.all_entries import all_entries
from tripplan.screens.logbook.entry_card import against_table, entry_face, planned_in_short, scale_of
from tripplan.screens.logbook.entry_form import PAGE, KeptEntries, open_change, open_form, open_new
from tripplan.screens.logbook.learned import what_is_learned
from tripplan.screens.logbook.record import record_for_authorities
from tripplan.screens.logbook.year import year_of_outings
from tripplan.screens.look import cards
from tripplan.screens.look.drawings import kind_of
from tripplan.screens.look.folds import fold
from tripplan.screens.widgets.choices import open_or_close, place_named
from tripplan.screens.widgets.frame import family_or_stop
from tripplan.screens.widgets.markdown import bullets, plain
from tripplan.screens.widgets.notices import show_notice
from tripplan.screens.widgets.one_open import opener, part_if_open
from tripplan.screens.widgets.saving import remove_one, take_back_button
from tripplan.screens.widgets.view import View

SHOWN_AT_FIRST = 6
"""How many outings are listed before the parent asks for all [-]."""
_ALL = "show_all_entries"


def render(view: View) -> None:
    """Show the outings to log and those that are logged; while one is logged, that form alone."""
    if view.family is None:
        st.title(say("afterwards-how-was-yours"), anchor=False)
    family = family_or_stop(view)
    records = view.records
    entries, outings = all_entries(records), records.all(PlannedOuting)
    if open_form(view, family, entries, outings):
        return
    headline = st.empty()
    show_notice(PAGE)
    take_back_button(view, PAGE)
    planned = [kept.value for kept in outings.values()]
    over = waiting(planned, [kept.value for kept in entries.values()], view.services.clock())
    headline.title(_headline(family, over, len(entries)), anchor=False)
    for number, one in enumerate(over):
        _to_log(view, family, one, is_main=number == 0)
    st.button(
        say("afterwards-log-another") if over or entries else say("afterwards-log-first"),
        key="write_other",
        type="secondary" if over else "primary",
        on_click=open_new,
        args=(view,),
    )
    if entries:
        _entries(view, family, entries)
    settings = records.get(LogbookSettings)
    year_of_outings(view, family, entries, outings, settings)
    if not entries:
        return
    part = fold(say("afterwards-outings-show"), "open_learned")
    if part is not None:
        with part:
            what_is_learned(view, entries, settings)
    part = fold(say("afterwards-record"), "open_record")
    if part is not None:
        with part:
            record_for_authorities(view, family, entries, settings.value if settings else LogbookSettings())


def _headline(family: Family, over: tuple[PlannedOuting, ...], logged: int) -> str:
    if len(over) == 1:
        return plain(say("afterwards-headline-one", place=_name(family, over[0])))
    if over:
        return say("afterwards-to-log", outings=len(over))
    return say("afterwards-so-far", outings=logged) if logged else say("afterwards-how-was-yours")


def _name(family: Family, one: PlannedOuting) -> str:
    place = place_named(family, one.place)
    return place.name if place else one.place


def _to_log(view: View, family: Family, one: PlannedOuting, *, is_main: bool) -> None:
    place, name = place_named(family, one.place), _name(family, one)
    with st.container(border=True, key=f"card_waiting_{one.id}"):
        st.html(
            cards.face(
                cards.name(name, drawing="both" if place is None else kind_of(place)),
                cards.small(
                    wording.short_day(one.day),
                    planned_in_short(one.likely_total),
                ),
            )
        )
        st.button(
            plain(say("afterwards-log", place=name)),
            key=f"write_{one.id}",
            type="primary" if is_main else "secondary",
            on_click=open_new,
            args=(view, one.id),
        )


def _entries(view: View, family: Family, entries: KeptEntries) -> None:
    newest = sorted(entries.values(), key=lambda kept: (kept.value.day, kept.value.id), reverse=True)
    shown = newest if st.session_state.get(_ALL) else newest[:SHOWN_AT_FIRST]
    scale = scale_of([kept.value for kept in shown])
    with st.container(key="cards_entries"):
        for kept in shown:
            _entry(view, family, kept, scale)
    with st.container(horizontal=True):
        if len(newest) > SHOWN_AT_FIRST:
            st.button(
                say("afterwards-show-fewer")
                if st.session_state.get(_ALL)
                else say("afterwards-show-all", outings=len(newest)),
                key="more_entries",
                on_click=open_or_close,
                args=(_ALL,),
            )
        st.download_button(
            say("afterwards-table"),
            lambda: logbook_csv([kept.value for kept in newest]),
            file_name=view.file_name("logbook.csv"),
            mime="text/csv",
            key="download_logbook",
            type="tertiary",
            on_click="ignore",
        )


def _entry(view: View, family: Family, kept: StoredDocument[LogbookEntry], scale: float) -> None:
    entry = kept.value
    with st.container(border=True, key=f"card_{entry.id}"):
        st.html(entry_face(entry, place_named(family, entry.place or ""), scale, view.today))
        opener(view, PAGE, entry.id, say("afterwards-more-about", place=entry.title), about=entry.title)
        part = part_if_open(view, PAGE, entry.id)
        if part is None:
            return
        with part:
            st.markdown(bullets(entry_lines(entry)))
            against = against_plan(entry)
            if against is not None:
                st.markdown(against_table(against))
            said = say("afterwards-removed", place=entry.title, day=entry.day)
            with st.container(horizontal=True):
                st.button(
                    plain(say("afterwards-change", place=entry.title)),
                    key=f"change_{entry.id}",
                    on_click=open_change,
                    args=(view, entry.id),
                )
                st.button(
                    plain(say("afterwards-remove", place=entry.title)),
                    key=f"remove_{entry.id}",
                    on_click=remove_one,
                    args=(view, PAGE, LogbookEntry, entry.id, kept.revision, said),
                )
