"""School calendars: from a district's file, or typed in; listed with the days they cover."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from functools import partial
from hashlib import sha256
from itertools import islice
from typing import Annotated, Any
from zoneinfo import ZoneInfo

import streamlit as st
from pydantic import Field

from tripplan.errors import Finding, PlanError
from tripplan.files.gazetteer import NotFound, locate
from tripplan.files.reading_result import Read
from tripplan.files.school_calendar_file import (
    ProposedEntry,
    SchoolProposal,
    school_calendar_from,
)
from tripplan.files.school_file import SchoolFile, is_table, read_school_file
from tripplan.files.school_table_file import DateOrder, dates_to_ask_about
from tripplan.files.toml_text import shown, write_toml
from tripplan.files.written import read_form
from tripplan.planning import wording
from tripplan.planning.calendars import (
    MOST_PUPILS,
    DateSpan,
    SchoolCalendar,
    with_guess_kept,
    with_next_year_expected,
)
from tripplan.planning.crowds.coverage import LOOK_AHEAD, calendar_coverage
from tripplan.planning.household import Name
from tripplan.planning.model import Written
from tripplan.planning.outing import Family
from tripplan.planning.where import Where
from tripplan.records.store import Kept
from tripplan.screens.calendar.built_in_regions import built_in_regions
from tripplan.screens.calendar.coverage_chart import show_coverage
from tripplan.screens.calendar.typed_days import days_typed_in, line_called
from tripplan.screens.calendar.upload import window_around
from tripplan.screens.widgets.fields import Fields, FieldValue, filled, put, refill
from tripplan.screens.widgets.frame import View
from tripplan.screens.widgets.markdown import bullets, plain
from tripplan.screens.widgets.notices import named, refuse, show_findings, show_notice
from tripplan.screens.widgets.saving import records_of, remove_one, save_all
from tripplan.screens.widgets.where_form import where_inputs, where_labels, where_on_record, where_values

_PAGE = "calendar"
_TURN = "school_upload_turn"
_MOST_SHOWN = 100
"""So many entries of a kind are offered: a year has fewer, and thousands would hold up the page."""
_A_YEAR = timedelta(days=365)
_DAYS_TYPED = {"no_school": "Days without school", "short_days": "Short days"}
"""The lists of a calendar that is typed in, and how they are called."""

LABELS = {
    "name": "Name of the district",
    "pupils": "Pupils",
    "known": "The days it speaks about",
    "known.first": "First day it speaks about",
    "known.last": "Last day it speaks about",
    **{
        f"{days}.{end}": words
        for days in _DAYS_TYPED
        for end, words in (("first", "first day"), ("last", "last day"))
    },
    **where_labels("where"),
    "where": "Where its pupils live",
}


class District(Written):
    """What the parent says of a district, beside its days off."""

    name: Name
    """What the district is called."""
    where: Where
    """Where its pupils live, roughly the middle."""
    pupils: Annotated[int, Field(ge=1, le=MOST_PUPILS)]
    """How many pupils follow the calendar."""
    known: DateSpan
    """The days the calendar speaks about."""
    no_school: tuple[DateSpan, ...] = ()
    """Breaks and days off."""
    short_days: tuple[DateSpan, ...] = ()
    """Days on which pupils go home early or come late."""


def school_calendars(view: View, family: Family) -> None:
    """List the school calendars on record, and offer to add one from a file or by hand."""
    calendars = records_of(view).all(SchoolCalendar)
    st.caption(
        "On days when schools near a place are out, it is fuller. Bring the calendar of your district and of "
        "districts near the places. One of the same name takes the place of the one before."
    )
    for name, kept in calendars.items():
        calendar = kept.value
        days_off = wording.counted(len(calendar.no_school), "break or day off", "breaks and days off")
        short = wording.counted(len(calendar.short_days), "short day with school", "short days with school")
        st.markdown(
            plain(
                f"{name}: {wording.day(calendar.known.first)} to {wording.day(calendar.known.last)}, "
                f"{days_off}{f', {short}' if calendar.short_days else ''}, "
                f"{calendar.pupils:,} pupils. "
                f"{calendar_coverage(calendar, view.today, view.today + LOOK_AHEAD)}"
            )
        )
        with st.container(horizontal=True):
            st.button(
                plain(f"Remove {name}"),
                key=f"remove_school_{name}",
                on_click=remove_one,
                args=(view, _PAGE, SchoolCalendar, name, kept.revision, f"{name} is removed."),
            )
            if calendar.known.last < view.today + LOOK_AHEAD and calendar.expected_within is None:
                st.button(
                    "Guess the year after from this one",
                    key=f"guess_school_{name}",
                    on_click=_guess,
                    args=(view, kept),
                    help="Breaks move to the same weekdays a year on. A guess is a chance, never a fact.",
                )
    show_coverage(family, view.today)
    built_in_regions(view, family, calendars)
    _from_file(view, family, calendars)
    _by_hand(view, family, calendars)


def _guess(view: View, kept: Kept[SchoolCalendar]) -> None:
    try:
        guessed = with_next_year_expected(kept.value)
    except PlanError as trouble:
        refuse(_PAGE, f"Nothing was guessed: {trouble}.")
        return
    save_all(view, _PAGE, [(guessed, kept.revision)], f"The year after is guessed for {guessed.name}.")


# --- from a district's file -------------------------------------------------------------------------------


def _from_file(view: View, family: Family, calendars: Mapping[str, Kept[SchoolCalendar]]) -> None:
    with st.expander("Add a school calendar from a file", key="open_school_upload"):
        turn = st.session_state.setdefault(_TURN, 0)
        label = "A district's calendar (.ics), or a table (.csv)"
        file = st.file_uploader(label, type=["ics", "csv"], key=f"school_upload_{turn}")
        st.caption(
            "A table has the columns first day, last day, name and kind; dates read like 2026-12-24. The "
            "last day may be empty, and so may the kind: no school, short day, first day of school, last "
            "day of school, other."
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
) -> Read[SchoolFile]:
    window = DateSpan(first=first, last=last)
    return read_school_file(data, file, window, ZoneInfo(zone), calendars=_calendars, order=order)


def _proposal(
    view: View,
    family: Family,
    calendars: Mapping[str, Kept[SchoolCalendar]],
    file: str,
    read: SchoolFile,
) -> None:
    proposal = read.proposal
    if read.before is not None:
        st.info(plain(f"Ticks and pupils are as you left them in {read.before.name}."))
    offered = _offered(proposal)
    fields = filled(
        "school_file",
        {
            **_district_on_record(family, proposal.name[:80], proposal.known, read.before),
            **dict.fromkeys((*offered.off, *offered.short), True),
            offered.also_off: [],
            offered.also_short: [],
        },
    )
    with st.form("school_file_form"):
        _boxes(fields, "Ticked entries count as days without school.", offered.off, len(proposal.ticked))
        heading = "Short days, with school: pupils go home early or come late."
        _boxes(fields, heading, offered.short, len(proposal.short))
        _left_out(fields, offered, len(proposal.entries) - len(proposal.ticked) - len(proposal.short))
        for summer in proposal.summer:
            st.caption(
                plain(f"Summer, {wording.day(summer.first)} to {wording.day(summer.last)}, counts as well.")
            )
        _district_inputs(fields)
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


def _boxes(fields: Fields, heading: str, shown: Mapping[str, ProposedEntry], count: int) -> None:
    if shown:
        st.markdown(f"**{heading}**")
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
    calendars: Mapping[str, Kept[SchoolCalendar]],
    file: str,
    proposal: SchoolProposal,
    fields: Fields,
    offered: _Offered,
) -> None:
    typed = fields.typed()
    district = _read_district(typed, {})
    if district.value is None:
        refuse("school_file", findings=_named(district.findings))
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
    if _save(view, "school_file", calendars, calendar):
        st.session_state[_TURN] += 1


def _save(
    view: View, form: str, calendars: Mapping[str, Kept[SchoolCalendar]], calendar: SchoolCalendar
) -> bool:
    kept = calendars.get(calendar.name)
    done = "replaced" if kept else "added"
    calendar = with_guess_kept(calendar, kept.value if kept else None)
    saved = save_all(view, _PAGE, [(calendar, kept.revision if kept else 0)], f"{calendar.name} is {done}.")
    if saved:
        refill(form)
    return saved


# --- what both ways ask for -------------------------------------------------------------------------------


def _district_on_record(
    family: Family, name: str, known: DateSpan, before: SchoolCalendar | None = None
) -> dict[str, FieldValue]:
    where = {**where_on_record(None), "country": family.household.home.country}
    if before is not None:
        where = where_on_record(
            Where(
                country=before.country,
                subdivision=before.subdivision,
                latitude=before.latitude,
                longitude=before.longitude,
            )
        )
    return {
        "name": before.name if before else name,
        "pupils": str(before.pupils) if before else "10000",
        "first": known.first,
        "last": known.last,
        **where,
    }


def _district_inputs(fields: Fields) -> None:
    st.text_input(LABELS["name"], key=fields.key("name"))
    st.markdown("**Where its pupils live**, roughly the middle")
    where_inputs(fields, with_address=False)
    st.text_input(
        "Pupils, roughly", key=fields.key("pupils"), help="The weight beside other districts' calendars."
    )
    left, right = st.columns(2)
    left.date_input("First day it speaks about", key=fields.key("first"))
    right.date_input("Last day it speaks about", key=fields.key("last"))


def _read_district(typed: Mapping[str, Any], days: Mapping[str, list[dict[str, str]]]) -> Read[District]:
    where, found = where_values(dict(typed), None, "where")
    values: dict[str, Any] = {"where": where, "known": {}, **days}
    put(values, "name", typed["name"])
    put(values, "pupils", typed["pupils"])
    for end in ("first", "last"):
        put(values, f"known.{end}", typed[end] or "")
    read = read_form(write_toml(values), "", District, (_where_findings, _days_elsewhere))
    if found:
        return Read(None, (*found, *read.findings))
    return read.map(_located)


def _where_findings(district: District, file: str) -> Iterator[Finding]:
    found = locate(district.where)
    if isinstance(found, NotFound):
        value = shown(getattr(district.where, found.field))
        yield Finding(file, f"where.{found.field}", value, found.message)


def _days_elsewhere(district: District, file: str) -> Iterator[Finding]:
    """Days that the calendar does not speak about; most often somebody mistyped the year."""
    known = district.known
    for field in _DAYS_TYPED:
        for number, days in enumerate(getattr(district, field)):
            if days.last < known.first or days.first > known.last:
                message = f"lies outside the days the calendar speaks about, {known.first} to {known.last}"
                yield Finding(file, f"{field}[{number}]", wording.days(days.first, days.last), message)


def _located(district: District) -> District:
    where = locate(district.where)
    return district if isinstance(where, NotFound) else district.model_copy(update={"where": where})


def _named(
    findings: Sequence[Finding], lines: Mapping[str, Sequence[int]] | None = None
) -> tuple[Finding, ...]:
    entries = {field: partial(_line, _DAYS_TYPED[field], numbers) for field, numbers in (lines or {}).items()}
    return named(findings, LABELS, entries)


def _line(field: str, numbers: Sequence[int], index: int) -> str:
    return line_called(field, numbers[index])


# --- by hand ----------------------------------------------------------------------------------------------


def _by_hand(view: View, family: Family, calendars: Mapping[str, Kept[SchoolCalendar]]) -> None:
    with st.expander("Type a school calendar in instead", key="open_school_typed"):
        coming = DateSpan(first=view.today, last=view.today + _A_YEAR)
        fields = filled(
            "school_typed", {**_district_on_record(family, "", coming), **dict.fromkeys(_DAYS_TYPED, "")}
        )
        with st.form("school_typed_form"):
            st.text_area(
                f"{_DAYS_TYPED['no_school']}, one break a line",
                key=fields.key("no_school"),
                placeholder="2026-12-21 to 2027-01-01 winter break\n2027-01-18 staff day",
            )
            st.caption("Such as: 2026-12-21 to 2027-01-01 winter break. Weekends need not be listed.")
            st.text_area(
                f"{_DAYS_TYPED['short_days']}, one a line (may be left empty)",
                key=fields.key("short_days"),
                placeholder="2026-12-18 early release\n2027-03-10 late start",
                help="Pupils go home early or come late. They are at school in the morning, and out "
                "earlier than usual.",
            )
            _district_inputs(fields)
            st.form_submit_button(
                "Save this school calendar",
                key="save_school_typed",
                type="primary",
                on_click=_save_typed,
                args=(view, calendars, fields),
            )
        show_notice("school_typed")


def _save_typed(view: View, calendars: Mapping[str, Kept[SchoolCalendar]], fields: Fields) -> None:
    typed = fields.typed()
    found: list[Finding] = []
    days: dict[str, dict[int, dict[str, str]]] = {}
    for field, called in _DAYS_TYPED.items():
        days[field], unreadable = days_typed_in(typed[field], called)
        found.extend(unreadable)
    if not days["no_school"] and not found:
        found.append(Finding("", _DAYS_TYPED["no_school"], "", "list at least one break or day off"))
    district = _read_district(typed, {field: list(by_line.values()) for field, by_line in days.items()})
    if district.value is None or found:
        lines = {field: tuple(by_line) for field, by_line in days.items()}
        refuse("school_typed", findings=_named([*found, *district.findings], lines))
        return
    told = district.value
    calendar = SchoolCalendar(
        name=told.name,
        country=told.where.country,
        subdivision=told.where.subdivision,
        latitude=told.where.point.latitude,
        longitude=told.where.point.longitude,
        pupils=told.pupils,
        known=told.known,
        no_school=_in_order(told.no_school),
        short_days=_in_order(told.short_days),
        source=f"typed in on {view.today}",
    )
    _save(view, "school_typed", calendars, calendar)


def _in_order(days: Iterable[DateSpan]) -> tuple[DateSpan, ...]:
    return tuple(sorted(days, key=lambda span: (span.first, span.last)))
