"""A school calendar from a district's file: its entries are looked through before it is kept."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from hashlib import sha256
from itertools import islice
from zoneinfo import ZoneInfo

import streamlit as st

from tripplan.documents.calendars.calendars import DateSpan, SchoolCalendar
from tripplan.files.calendars.school_calendar_file import ProposedEntry, SchoolProposal, school_calendar_from
from tripplan.files.calendars.school_file import SchoolFile, is_table, read_school_file
from tripplan.files.calendars.school_table_file import DateOrder, dates_to_ask_about
from tripplan.files.toml.reading_result import ReadResult
from tripplan.language import wording
from tripplan.language.sentences import say
from tripplan.planning.family.family import Family
from tripplan.records.store import StoredDocument
from tripplan.screens.calendar.school.district import (
    district_inputs,
    district_on_record,
    named_in_form,
    read_district,
    save_calendar,
)
from tripplan.screens.calendar.upload import window_around
from tripplan.screens.widgets.fields import Fields, filled
from tripplan.screens.widgets.markdown import bullets, plain
from tripplan.screens.widgets.notices import refuse, show_findings, show_notice
from tripplan.screens.widgets.view import View

_TURN = "school_upload_turn"
_MOST_SHOWN = 100
"""So many entries of a kind are offered: a year has fewer, and thousands would hold up the page."""


def from_file(view: View, family: Family, calendars: Mapping[str, StoredDocument[SchoolCalendar]]) -> None:
    """Read a file, show what its entries are taken for, and keep it as the parent says."""
    turn = st.session_state.setdefault(_TURN, 0)
    file = st.file_uploader(
        say("calendar-school-file"),
        type=["ics", "csv"],
        key=f"school_upload_{turn}",
        help=say("calendar-school-table"),
    )
    if file is None:
        return
    data, order = file.getvalue(), None
    if is_table(file.name) and (asked := dates_to_ask_about(data)):
        st.radio(
            plain(f"In this table ({', '.join(asked)}), what comes first?"),
            [order.value for order in DateOrder],
            index=None,
            key=f"school_dates_{turn}",
        )
        picked = st.session_state[f"school_dates_{turn}"]
        if picked is None:
            return
        order = DateOrder(picked)
    window, zone = window_around(view.today), family.household.home.zone
    on_record = [kept.value for kept in calendars.values()]
    revisions = tuple((name, kept.revision) for name, kept in calendars.items())
    read = _read_file(data, file.name, window.first, window.last, zone.key, order, revisions, on_record)
    show_findings(read.findings)
    if read.value is not None:
        _proposal(view, family, calendars, file.name, read.value)
    show_notice("school_file")


@st.cache_resource(max_entries=4, show_spinner="Reading the calendar ...")
def _read_file(
    data: bytes,
    file: str,
    first: date,
    last: date,
    zone: str,
    order: DateOrder | None,
    revisions: tuple[tuple[str, int], ...],  # noqa: ARG001 - stands for the calendars in the cache
    _calendars: list[SchoolCalendar],
) -> ReadResult[SchoolFile]:
    window = DateSpan(first=first, last=last)
    return read_school_file(data, file, window, ZoneInfo(zone), calendars=_calendars, order=order)


def _proposal(
    view: View,
    family: Family,
    calendars: Mapping[str, StoredDocument[SchoolCalendar]],
    file: str,
    read: SchoolFile,
) -> None:
    proposal = read.proposal
    if read.before is not None:
        st.info(plain(f"Ticks and students are as you left them in {read.before.name}."))
    offered = _offered(proposal)
    fields = filled(
        "school_file",
        {
            **district_on_record(family, proposal.name[:80], proposal.known, read.before),
            **dict.fromkeys((*offered.off, *offered.short), True),
            offered.also_off: [],
            offered.also_short: [],
        },
    )
    with st.form("school_file_form"):
        _boxes(fields, "calendar-days-off", offered.off, len(proposal.ticked))
        _boxes(fields, "calendar-short-days", offered.short, len(proposal.short))
        _left_out(fields, offered, len(proposal.entries) - len(proposal.ticked) - len(proposal.short))
        for summer in proposal.summer:
            st.caption(
                plain(f"Summer, {wording.day(summer.first)} to {wording.day(summer.last)}, counts as well.")
            )
        district_inputs(fields)
        st.form_submit_button(
            "Save this school calendar",
            key="save_school_file",
            type="primary",
            on_click=_save_file,
            args=(view, calendars, file, proposal, fields, offered),
        )


@dataclass(frozen=True)
class _Offered:
    """The entries of a file as its form offers them, by the names of their fields.

    Attributes:
        off: those ticked as days without school.
        short: those ticked as short days.
        left: those ticked as neither.
        also_off: the field in which some of `left` are picked as days without school.
        also_short: likewise, as short days.
    """

    off: Mapping[str, ProposedEntry]
    short: Mapping[str, ProposedEntry]
    left: Mapping[str, ProposedEntry]
    also_off: str
    also_short: str


def _offered(proposal: SchoolProposal) -> _Offered:
    # Ticks belong to these entries; another file gets ticks of its own.
    form = sha256("\n".join(one.entry.key for one in proposal.entries).encode()).hexdigest()[:12]
    named = {f"{form}_{number}": one for number, one in enumerate(proposal.entries)}
    off, short, left = (
        dict(
            islice(
                ((name, one) for name, one in named.items() if (one.ticked, one.short) == kind), _MOST_SHOWN
            )
        )
        for kind in ((True, False), (False, True), (False, False))
    )
    return _Offered(off, short, left, f"{form}_also_off", f"{form}_also_short")


def _boxes(fields: Fields, code: str, shown: Mapping[str, ProposedEntry], count: int) -> None:
    """Entries of one kind to look through, each with its tick; closed, they are told by their number."""
    if not shown:
        return
    with st.expander(say(code, days=count)):
        for name, one in shown.items():
            st.checkbox(plain(_in_words(one)), key=fields.key(name))
        if count > len(shown):
            st.caption(f"The first {len(shown)} of {count} are shown; the others count as well.")


def _left_out(fields: Fields, offered: _Offered, count: int) -> None:
    """Offer what is ticked as neither."""
    left = {name: _in_words(one) for name, one in offered.left.items()}
    if not left:
        return
    with st.expander(f"{count} other {'entry' if count == 1 else 'entries'}, with school as always"):
        st.markdown(bullets(left.values()))
        if count > len(left):
            st.caption(f"The first {len(left)} are shown; the rest count as school days.")
    for label, key in (
        ("Which of these are days without school?", offered.also_off),
        ("Which of these are short days?", offered.also_short),
    ):
        st.multiselect(
            label,
            list(left),
            format_func=left.__getitem__,
            key=fields.key(key),
            placeholder="none of these",
        )


def _in_words(one: ProposedEntry) -> str:
    days = wording.days(one.entry.first_day, one.entry.last_day)
    return f"{days}: {one.entry.summary or 'without a title'} ({one.reason})"


def _save_file(
    view: View,
    calendars: Mapping[str, StoredDocument[SchoolCalendar]],
    file: str,
    proposal: SchoolProposal,
    fields: Fields,
    offered: _Offered,
) -> None:
    typed = fields.typed()
    district = read_district(typed, {})
    if district.value is None:
        refuse("school_file", findings=named_in_form(district.findings))
        return
    told = district.value
    ticked, short = (
        (counted - {one.entry.key for name, one in shown.items() if not typed[name]})
        | {offered.left[name].entry.key for name in typed[also]}
        for counted, shown, also in (
            (proposal.ticked, offered.off, offered.also_off),
            (proposal.short, offered.short, offered.also_short),
        )
    )
    calendar = school_calendar_from(
        proposal,
        name=told.name,
        country=told.where.country,
        subdivision=told.where.subdivision,
        latitude=told.where.point.latitude,
        longitude=told.where.point.longitude,
        pupils=told.pupils,
        ticked=ticked,
        short=short,
        known=told.known,
        source=file,
    )
    if save_calendar(view, "school_file", calendars, calendar):
        st.session_state[_TURN] += 1
