"""When the family is busy: its calendars, its own week, and one place to add to them."""

from collections import Counter
from collections.abc import Mapping
from dataclasses import replace
from datetime import date, timedelta
from functools import partial
from pathlib import PurePath

import streamlit as st

from tripplan.documents.calendars.calendars import FamilyCalendar
from tripplan.documents.model import Name, Written
from tripplan.files.calendar_reader.content import CalendarContent
from tripplan.files.calendars.family_calendar_file import (
    busy_times,
    family_calendar_from,
    not_taken_sentences,
)
from tripplan.files.toml.toml_text import write_toml
from tripplan.files.toml.written import read_form
from tripplan.language import wording
from tripplan.language.sentences import fact, say
from tripplan.language.sentences import told as sentences
from tripplan.planning.family.family import Family
from tripplan.records.store import StoredDocument
from tripplan.screens.calendar.own_week import own_week
from tripplan.screens.calendar.upload import calendar_uploaded, window_around
from tripplan.screens.calendar.ways import one_way
from tripplan.screens.look import cards
from tripplan.screens.look.cards import Chip
from tripplan.screens.look.folds import fold
from tripplan.screens.widgets.fields import Fields, filled, listed_in, put, refill
from tripplan.screens.widgets.markdown import bullets, plain
from tripplan.screens.widgets.notices import named, refuse, show_findings, show_notice
from tripplan.screens.widgets.saving import remove_one, save_all
from tripplan.screens.widgets.view import View

_PAGE = "calendar"
_TURN = "family_upload_turn"
_LOOK_AHEAD_DAYS = 14


class _Called(Written):
    """What the parent calls a calendar."""

    name: Name
    """What the calendar is called."""


def family_part(view: View, family: Family) -> str:
    """When the family is busy: its calendars and its own week; the headline is returned."""
    calendars = view.records.all(FamilyCalendar)
    for name, kept in calendars.items():
        with st.container(border=True, key=f"card_family_{name}"):
            st.html(
                cards.face(
                    cards.name(name, drawing="day"), cards.facts([Chip("clock", _covered(kept.value))])
                )
            )
            st.button(
                plain(say("calendar-remove-named", name=name)),
                key=f"remove_family_{name}",
                type="tertiary",
                on_click=remove_one,
                args=(
                    view,
                    _PAGE,
                    FamilyCalendar,
                    name,
                    kept.revision,
                    say("calendar-is-removed", name=name),
                ),
            )
    ways = own_week(view, family)
    st.markdown(say("calendar-not-over"))
    part = fold(say("calendar-add-busy"), "open_add_busy")
    if part is not None:
        with part:
            ways = {say("calendar-a-file"): partial(_from_file, view, family, calendars), **ways}
            one_way(say("calendar-how-known"), "add_busy_how", ways)
    return _headline(family, view.today)


def _headline(family: Family, today: date) -> str:
    """On how many of the coming days something of the family's own is in the way."""
    busy = replace(family.with_nothing_planned(), now=None).busy_days
    names = [member.name for member in family.household.members]
    zone = family.household.home.zone
    days = [today + timedelta(days=ahead) for ahead in range(_LOOK_AHEAD_DAYS)]
    taken = [
        day
        for day in days
        if any(
            one.start.astimezone(zone).date() <= day <= one.end.astimezone(zone).date()
            for one in busy.on(day, names)
        )
    ]
    if not taken:
        return say("calendar-nothing-in-way")
    return say("calendar-busy-on", taken=len(taken), days=len(days))


def _from_file(view: View, family: Family, calendars: Mapping[str, StoredDocument[FamilyCalendar]]) -> None:
    """Offer to add a calendar from a file."""
    turn = st.session_state.setdefault(_TURN, 0)
    addresses = st.text_input(
        say("calendar-addresses"),
        key="family_addresses",
        help=say("calendar-addresses-help"),
    )
    uploaded = calendar_uploaded(
        view,
        family,
        say("calendar-family-file"),
        f"family_upload_{turn}",
        tuple(listed_in(addresses or "")),
    )
    if uploaded is not None:
        file, content = uploaded
        show_findings(content.findings)
        if content.value is not None:
            _offer(view, calendars, file, content.value)
    show_notice("family_file")


def _covered(calendar: FamilyCalendar) -> str:
    told = [fact("calendar-never-busy")]
    if calendar.busy:
        first, last = calendar.busy[0].start, max(busy.end for busy in calendar.busy)
        told = [
            fact(
                "calendar-busy-from-to",
                times=busy_times(calendar),
                first=wording.day(first),
                last=wording.day(last),
                named=any(busy.name for busy in calendar.busy),
            )
        ]
    if calendar.source:
        told.append(fact("calendar-from-source", source=calendar.source))
    if calendar.covers is not None:
        told.append(fact("calendar-read-up-to", day=calendar.covers.last))
    return " ".join(sentences(told))


def _offer(
    view: View, calendars: Mapping[str, StoredDocument[FamilyCalendar]], file: str, content: CalendarContent
) -> None:
    before = next((kept.value for kept in calendars.values() if kept.value.source == file), None)
    if not content.entries and before is None:
        # Kept, it would say that the family is free on all these days.
        st.caption(say("calendar-nothing-to-keep"))
        return
    window = window_around(view.today)
    taken = [entry for entry in content.entries if entry.takes_time and entry.start < entry.end]
    st.markdown(plain(say("calendar-busy-times", times=len(taken))))
    with st.expander(say("calendar-entries", entries=len(content.entries))):
        st.markdown(plain(say("calendar-window", first=window.first, last=window.last)))
        st.markdown(bullets(not_taken_sentences(content)))
    if before is not None:
        st.markdown(plain(say("calendar-read-before", name=before.name)))
    titles = Counter(entry.summary for entry in taken)
    fields = filled(
        "family_file",
        {
            "name": before.name if before else content.name[:80] or PurePath(file).stem[:80],
            "keep_names": before is not None and any(busy.name for busy in before.busy),
            "not_busy": [],
        },
    )
    with st.form("family_file_form"):
        st.text_input(say("calendar-what-called"), key=fields.key("name"))
        st.checkbox(say("calendar-keep-names"), key=fields.key("keep_names"))
        st.multiselect(
            say("calendar-not-in-way"),
            list(titles),
            format_func={title: _counted(title, count) for title, count in titles.items()}.__getitem__,
            key=fields.key("not_busy"),
            placeholder=say("calendar-none-of-them"),
            help=say("calendar-not-in-way-help"),
        )
        st.caption(say("calendar-same-name"))
        st.form_submit_button(
            say("calendar-save-calendar"),
            key="save_family_file",
            type="primary",
            on_click=_save,
            args=(view, calendars, file, content, fields),
        )


def _counted(title: str, count: int) -> str:
    named = title or say("calendar-no-title")
    return named if count == 1 else say("calendar-so-often", title=named, times=count)


def _save(
    view: View,
    calendars: Mapping[str, StoredDocument[FamilyCalendar]],
    file: str,
    content: CalendarContent,
    fields: Fields,
) -> None:
    typed = fields.typed()
    values: dict[str, object] = {}
    put(values, "name", typed["name"])
    called = read_form(write_toml(values), "", _Called)
    if called.value is None:
        refuse("family_file", findings=named(called.findings, {"name": say("calendar-name-of")}))
        return
    name = called.value.name
    left_out = {entry.key for entry in content.entries if entry.summary in typed["not_busy"]}
    calendar = family_calendar_from(
        content,
        name=name,
        source=file,
        covers=window_around(view.today),
        keep_names=typed["keep_names"],
        left_out=left_out,
    )
    kept = calendars.get(name)
    done = say("calendar-is-replaced" if kept else "calendar-is-added", name=name)
    if save_all(view, _PAGE, [(calendar, kept.revision if kept else 0)], done):
        refill("family_file")
        st.session_state[_TURN] += 1
