"""The fields of a place card beside its price board: one form for a new card and for one on record."""

import re
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from enum import Enum
from typing import Any

import streamlit as st
from pydantic import BaseModel
from streamlit.delta_generator import DeltaGenerator

from tripplan.errors import Finding, Weight
from tripplan.planning import wording
from tripplan.planning.outing import Family
from tripplan.planning.place import Opening, Place, SpecialDay, Visit
from tripplan.screens.places.board.pieces import Row
from tripplan.screens.places.board.words import in_screen_words, on_board
from tripplan.screens.places.place_sentences import coming_days_sentences
from tripplan.screens.places.visit_fields import (
    FIRST_VISIT_FIELDS,
    VISIT_LABELS,
    put_visit,
    show_line,
    visit_inputs,
)
from tripplan.screens.widgets.fields import Fields, FieldValue, filled, lines_in, listed_in, put
from tripplan.screens.widgets.markdown import bullets
from tripplan.screens.widgets.notices import named, show_beside
from tripplan.screens.widgets.where_form import (
    where_inputs,
    where_labels,
    where_message,
    where_on_record,
    where_values,
)

_HOURS_EXAMPLES = (
    ("Tu-Su 10:00-17:00", "every day but Monday"),
    ("Apr-Oct Mo-Su 09:00-18:00; Nov-Mar Sa-Su 10:00-16:00", "two seasons"),
    ("Mo-Sa 10:00-17:00; PH off; Dec 24-25 off", "closed on Sundays, public holidays and at Christmas"),
)
_SPECIAL_DAY_EXAMPLE = "2026-12-12: Lantern night; 2.5 times"
_SPECIAL_DAY = re.compile(
    r"(?P<day>\d{4}-\d{2}-\d{2})\s*:\s*(?P<name>.+?)(?:\s*;\s*(?P<factor>\d+(?:\.\d+)?)\s*(?:times)?)?"
)
_MONTHS = [wording.month(number) for number in range(1, 13)]
_FORMS: Mapping[str, type[BaseModel]] = {"visit": Visit, "opening": Opening}


class _How(Enum):
    """How a field is filled in."""

    TEXT = "one line"
    NOTE = "several lines"
    TICK = "yes or no"
    CHOICE = "one of several"
    LINES = "a list, one entry a line"
    TIMES = "times of day with commas between"
    MONTHS = "any of the twelve months"
    SPECIAL_DAYS = "days unlike the rest, one a line"
    CODE = "a code of capital letters"


@dataclass(frozen=True)
class _Field:
    """One field of the form.

    Attributes:
        name: part of its widget's key.
        path: where it stands on the card.
        label: as on the screen.
        explained: the help beside it; may be empty.
        how: how it is filled in.
        choices: values and their words, where one of several is picked.
        example: what stands in it while it is empty.
    """

    name: str
    path: str
    label: str
    explained: str = ""
    how: _How = _How.TEXT
    choices: tuple[tuple[str, str], ...] = ()
    example: str | None = None


_NAME = _Field("name", "name", "Name of the place")
_HOURS = _Field("hours", "opening.hours", "Opening hours", example=_HOURS_EXAMPLES[0][0])
_ENTRY = (
    _Field(
        "last_entry",
        "opening.last_entry_minutes_before_close",
        "Last entry, in minutes before closing",
        "0 if up to closing time.",
    ),
    _Field(
        "entry_times",
        "opening.entry_times",
        "People are let in only at these times",
        "With commas between, such as 10:00, 11:30. Empty if at any time.",
        _How.TIMES,
    ),
    _Field(
        "book_ahead",
        "opening.book_days_ahead",
        "A visit is to be booked so many days ahead",
        "0 if you can just go.",
    ),
    _Field(
        "hours_read",
        "opening.checked_on_site",
        "These hours were read at the place or on its own page",
        "Otherwise they are a guess, and are shown as one.",
        _How.TICK,
    ),
)
_VISIT = (
    _Field("topics", "visit.topics", "What can be studied there", "One topic a line.", _How.LINES),
    _Field("shortest", "visit.shortest_minutes", "Shortest stay worth the drive, in minutes"),
    _Field("comfortable", "visit.comfortable_minutes", "A comfortable stay, in minutes"),
    _Field("pushchairs", "visit.pushchairs", "A pushchair can go all the way round", how=_How.TICK),
    _Field("own_food", "visit.own_food", "You may eat what you bring", how=_How.TICK),
    _Field("food_sold", "visit.food_sold", "There is something to eat to buy", how=_How.TICK),
)
_CROWD = (
    _Field(
        "indoors",
        "visit.indoors",
        "Where the visit happens",
        how=_How.CHOICE,
        choices=(
            ("both", "both indoors and outdoors"),
            ("indoors", "indoors"),
            ("outdoors", "outdoors"),
        ),
    ),
    _Field(
        "who_comes",
        "visit.who_comes",
        "Who fills the place",
        "Decides how much fuller it is in school holidays.",
        _How.CHOICE,
        choices=(
            ("families", "mostly families with children, as in a zoo or on a farm"),
            ("everybody", "people of all ages, as in a gallery or on a beach"),
        ),
    ),
    _Field(
        "busiest",
        "busiest_months",
        "Busiest months",
        "If you know them; otherwise the time of year is guessed from how far north or south it lies.",
        _How.MONTHS,
    ),
    _Field(
        "school_groups",
        "opening.school_groups",
        "When school classes usually come, in term",
        "Written like opening hours, such as 'Tu-Fr 10:00-12:00'. Empty if you know of none.",
    ),
    _Field(
        "special_days",
        "special_days",
        "Days when more or fewer people come than usual",
        "One a line: the day as year-month-day, what happens, and how many times the usual number of "
        "visitors come (2 times if you leave it out).",
        _How.SPECIAL_DAYS,
        example=_SPECIAL_DAY_EXAMPLE,
    ),
)
_CHILDREN = (
    _Field(
        "cautions",
        "visit.cautions",
        "What to watch there",
        "One caution a line: steps, open water, animals, allergens.",
        _How.LINES,
    ),
    _Field("questions", "visit.questions", "Questions for the children", "One question a line.", _How.LINES),
)
_CONTACT = (
    _Field("web", "web", "Its own page on the internet"),
    _Field("telephone", "telephone", "Telephone"),
    _Field("notes", "notes", "Anything else you should know", how=_How.NOTE),
    _Field("currency", "currency", "Currency of its prices", "Three letters, such as USD.", _How.CODE),
)
_FIELDS = (_NAME, _HOURS, *_ENTRY, *_VISIT, *_CROWD, *_CHILDREN, *_CONTACT)

LABELS = {
    "id": "Name",
    "opening": "Opening hours",
    "where": "Location",
    "special_days": "Day when more or fewer people come",
    "visit.cautions": "Caution",
    "visit.questions": "Question",
    "opening.entry_times": "Entry time",
    **{field.path: field.label for field in _FIELDS if field.how not in (_How.LINES, _How.TIMES)},
    **VISIT_LABELS,
    **where_labels("where"),
}
"""How the fields of a card beside its board are called, by their paths without indices."""

_WHERE = tuple(where_on_record(None))
_MORE_OF_VISIT = {"shows": "shows", "stays": "stays", "quiet": "quiet_hours"}
"""The fields that `visit_fields` draws, and what they are called within the card's `visit`."""
_BESIDE = {
    "id": "name",
    "opening": "hours",
    "where": "where",
    **{field.path: field.name for field in _FIELDS},
    **{f"visit.{path}": name for name, path in _MORE_OF_VISIT.items()},
}
"""Beside which field of the form a finding is told, by the beginning of its path."""


# --- what stands in the fields ----------------------------------------------------------------------------


def on_record(place: Place | None, currency: str) -> dict[str, FieldValue]:
    """What the fields say for a card; what usually counts for a card that is yet to be made.

    Args:
        place: the card.
        currency: ISO 4217 code, for a new card's prices.
    """
    told = {field.name: _shown(field.how, _value(place, field.path)) for field in _FIELDS}
    if place is None:
        told["currency"] = currency
    where = place.where if place else None
    return {**told, **where_on_record(where), **_visit_on_record(place)}


def _value(place: Place | None, path: str) -> object:
    holder, _, name = path.rpartition(".")
    if place is not None:
        return getattr(getattr(place, holder) if holder else place, name)
    field = _FORMS.get(holder, Place).model_fields[name]
    return None if field.is_required() else field.get_default()


def _special_days_written(days: Sequence[SpecialDay]) -> str:
    return "\n".join(f"{one.day}: {one.name}; {one.crowd_factor.normalize():f} times" for one in days)


_AS_SHOWN: Mapping[_How, Callable[[Any], FieldValue]] = {
    _How.TICK: bool,
    _How.LINES: "\n".join,
    _How.TIMES: lambda clocks: ", ".join(f"{clock:%H:%M}" for clock in clocks),
    _How.MONTHS: lambda months: [_MONTHS[month - 1] for month in months],
    _How.SPECIAL_DAYS: _special_days_written,
}
_AS_ON_CARD: Mapping[_How, Callable[[Any], object]] = {
    _How.LINES: lines_in,
    _How.TIMES: lambda text: [f"{clock:0>5}" for clock in listed_in(text)],
    _How.MONTHS: lambda months: sorted(_MONTHS.index(month) + 1 for month in months),
    _How.CODE: lambda text: text.strip().upper(),
}


def _shown(how: _How, value: object) -> FieldValue:
    if how in _AS_SHOWN:
        return _AS_SHOWN[how](value)
    return "" if value is None else str(value)


def _visit_on_record(place: Place | None) -> dict[str, FieldValue]:
    if place is None:
        return dict(FIRST_VISIT_FIELDS)
    visit = place.visit
    shows = [show_line(show) for show in visit.shows]
    stays = [
        f"{stay.ages}: {stay.shortest_minutes} to {stay.comfortable_minutes} min" for stay in visit.stays
    ]
    return {"shows": "\n".join(shows), "stays": "\n".join(stays), "quiet": visit.quiet_hours or ""}


def put_fields(values: dict[str, Any], typed: Mapping[str, Any], before: Place | None) -> list[Finding]:
    """Write the fields into a card as its file would hold it.

    What was not changed is left as it stands there, so that nothing is lost that a field cannot show.

    Args:
        values: the card; changed.
        typed: the fields.
        before: the card that they were filled from; None for a new one.

    Returns:
        What the form itself could not read.
    """
    said_before = {} if before is None else on_record(before, before.currency)
    changed = {name for name, value in typed.items() if before is None or value != said_before[name]}
    findings: list[Finding] = []
    if changed & set(_WHERE):
        where = before.where if before else None
        values["where"], findings = where_values(dict(typed), where, "where")
    for field in (field for field in _FIELDS if field.name in changed):
        read = _AS_ON_CARD.get(field.how)
        put(values, field.path, read(typed[field.name]) if read else typed[field.name])
    if "special_days" in changed:
        values["special_days"] = list(_special_days(typed["special_days"], findings))
    if changed & FIRST_VISIT_FIELDS.keys():
        findings += _put_visit(values, typed, changed)
    return findings


def _special_days(text: str, findings: list[Finding]) -> Iterator[dict[str, str]]:
    for line in lines_in(text):
        match = _SPECIAL_DAY.fullmatch(line)
        if match is None:
            findings.append(
                Finding("", "special_days", line[:60], f"a line reads like '{_SPECIAL_DAY_EXAMPLE}'")
            )
            continue
        factor = {"crowd_factor": match["factor"]} if match["factor"] else {}
        yield {"day": match["day"], "name": match["name"], **factor}


def _put_visit(values: dict[str, Any], typed: Mapping[str, Any], changed: set[str]) -> list[Finding]:
    """Shows, stays and quiet hours, as far as they were changed."""
    told: dict[str, Any] = {}
    findings = [found for found in put_visit(told, typed) if _beside(found.field) in changed]
    new, visit = told.get("visit", {}), values.setdefault("visit", {})
    for path in (path for name, path in _MORE_OF_VISIT.items() if name in changed):
        visit.pop(path, None)
        if path in new:
            visit[path] = new[path]
    return findings


# --- drawing ----------------------------------------------------------------------------------------------


@dataclass(frozen=True)
class DrawnCard:
    """The fields as they stand on the page.

    Attributes:
        fields: the fields.
        slots: where a fault is told, by the name of the field that it stands beside.
        preview: where the hours are told in words.
    """

    fields: Fields
    slots: Mapping[str, DeltaGenerator]
    preview: DeltaGenerator


def draw_card(spot: str, place: Place | None, currency: str) -> DrawnCard:
    """Draw the fields; what is typed outlives a look at another page.

    Args:
        spot: names the form.
        place: the card on record; None for a new one.
        currency: ISO 4217 code, for a new card's prices.
    """
    fields = filled(spot, on_record(place, currency))
    slots: dict[str, DeltaGenerator] = {}

    def draw(*listed: _Field) -> None:
        for field in listed:
            _input(fields.key(field.name), field)
            slots[field.name] = st.container()

    draw(_NAME)
    where_inputs(fields, with_address=True, with_metropolitan=True)
    slots["where"] = st.container()
    st.markdown("**When it is open**")
    draw(_HOURS)
    preview = st.container()
    with st.expander("How hours are written", key=f"{spot}_hours_written"):
        st.markdown("\n".join(f"- `{written}` {meant}" for written, meant in _HOURS_EXAMPLES))
    draw(*_ENTRY)
    st.markdown("**What a visit is like**")
    draw(*_VISIT, *_CHILDREN)
    visit_inputs(fields)
    slots |= {name: st.container() for name in FIRST_VISIT_FIELDS}
    st.markdown("**What fills it**")
    draw(*_CROWD)
    st.markdown("**Whom to ask, and the rest**")
    draw(*_CONTACT)
    fields.remember()
    return DrawnCard(fields, slots, preview)


def _input(key: str, field: _Field) -> None:
    explained = field.explained or None
    if field.how is _How.TICK:
        st.checkbox(field.label, key=key, help=explained)
    elif field.how is _How.CHOICE:
        words = dict(field.choices)
        st.selectbox(field.label, list(words), format_func=words.__getitem__, key=key, help=explained)
    elif field.how is _How.MONTHS:
        st.multiselect(field.label, _MONTHS, key=key, help=explained)
    elif field.how in (_How.LINES, _How.SPECIAL_DAYS, _How.NOTE):
        st.text_area(field.label, key=key, help=explained, placeholder=field.example, height="content")
    else:
        st.text_input(field.label, key=key, help=explained, placeholder=field.example)


def show_hours(drawn: DrawnCard, family: Family, place: Place, today: date) -> None:
    """Say below the hours what they mean for the next days.

    Args:
        drawn: the fields.
        family: with school calendars and local days, for hours that differ on them.
        place: the card as it was read.
        today: the first of those days.
    """
    said = coming_days_sentences(place, family.school_calendars, today, family.local_days)
    drawn.preview.markdown(bullets(said))


# --- faults -----------------------------------------------------------------------------------------------


def hours_are_read(findings: Sequence[Finding]) -> bool:
    """Whether no fault keeps the opening hours from being read."""
    return not any(
        finding.weight is Weight.FAULT and finding.field.startswith("opening") for finding in findings
    )


def show_card_faults(
    drawn: DrawnCard, findings: Sequence[Finding], waiting: Mapping[str, FieldValue] | None = None
) -> None:
    """Tell every finding beside the field that it is about.

    Args:
        drawn: the fields.
        findings: of the whole card.
        waiting: what the fields of a new card said at first; those that still say it are not called faulty.
    """
    typed = drawn.fields.typed()
    for name, slot in drawn.slots.items():
        members = _WHERE if name == "where" else (name,)
        if waiting is not None and all(typed[member] == waiting[member] for member in members):
            continue
        show_beside(slot, [_in_words(finding) for finding in findings if _beside(finding.field) == name])


def _beside(path: str) -> str:
    """The name of the field beside which a finding is told; empty for none."""
    path = re.sub(r"\[\d+\]", "", path)
    while path and path not in _BESIDE:
        path = path.rpartition(".")[0]
    return _BESIDE.get(path, "")


def faults_in_words(findings: Sequence[Finding], rows: Sequence[Row]) -> tuple[Finding, ...]:
    """The faults of a card with its rows and fields called as on the screen.

    Args:
        findings: of the whole card.
        rows: its board.
    """
    return tuple(
        in_screen_words(finding, rows) if on_board(finding.field) else _in_words(finding)
        for finding in findings
        if finding.weight is Weight.FAULT
    )


def _in_words(finding: Finding) -> Finding:
    """A finding about a field beside the board, called as on the screen."""
    return named([replace(finding, message=where_message(finding.message))], LABELS)[0]
