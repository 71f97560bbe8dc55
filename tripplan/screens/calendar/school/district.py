"""A district of a school calendar: what a parent says of it, whichever way its days come in."""

from collections.abc import Iterator, Mapping, Sequence
from functools import partial
from typing import Annotated, Any

import streamlit as st
from pydantic import Field

from tripplan.documents.calendars.calendars import MOST_PUPILS, DateSpan, SchoolCalendar, with_guess_kept
from tripplan.documents.model import Name, Written
from tripplan.documents.where import Where
from tripplan.errors import Finding
from tripplan.files.locations.gazetteer import NotFound, locate
from tripplan.files.toml.reading_result import ReadResult
from tripplan.files.toml.toml_text import shown, write_toml
from tripplan.files.toml.written import read_form
from tripplan.language import wording
from tripplan.planning.family.family import Family
from tripplan.records.store import StoredDocument
from tripplan.screens.calendar.typed_days import line_called
from tripplan.screens.widgets.fields import Fields, FieldValue, put, refill
from tripplan.screens.widgets.locations.where_form import (
    where_inputs,
    where_labels,
    where_on_record,
    where_values,
)
from tripplan.screens.widgets.notices import named
from tripplan.screens.widgets.saving import save_all
from tripplan.screens.widgets.view import View

_PAGE = "calendar"
DAYS_TYPED = {"no_school": "Days without school", "short_days": "Short days"}
"""The lists of a calendar that is typed in, and how they are called."""

_LABELS = {
    "name": "Name of the district",
    "pupils": "Students",
    "known": "The days it speaks about",
    "known.first": "First day it speaks about",
    "known.last": "Last day it speaks about",
    **{
        f"{days}.{end}": words
        for days in DAYS_TYPED
        for end, words in (("first", "first day"), ("last", "last day"))
    },
    **where_labels("where"),
    "where": "Where its students live",
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


def district_on_record(
    family: Family, name: str, known: DateSpan, before: SchoolCalendar | None = None
) -> dict[str, FieldValue]:
    """What the fields of a district say at first.

    Args:
        family: in whose country it lies, until said otherwise.
        name: what the file calls itself; may be empty.
        known: the days the calendar speaks about.
        before: the calendar on record that it takes the place of, if any.
    """
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


def district_inputs(fields: Fields) -> None:
    """Draw the fields of a district."""
    st.text_input(_LABELS["name"], key=fields.key("name"))
    st.markdown("**Where its students live**, roughly the middle")
    where_inputs(fields, with_address=False)
    st.text_input(
        "Students, roughly", key=fields.key("pupils"), help="The weight beside other districts' calendars."
    )
    left, right = st.columns(2)
    left.date_input("First day it speaks about", key=fields.key("first"), format=wording.date_field())
    right.date_input("Last day it speaks about", key=fields.key("last"), format=wording.date_field())


def read_district(typed: Mapping[str, Any], days: Mapping[str, list[dict[str, str]]]) -> ReadResult[District]:
    """What was typed, with every fault at once.

    Args:
        typed: the fields of `district_on_record`.
        days: the lists of `DAYS_TYPED`, as a file would hold them; empty where a file brings its own.
    """
    where, found = where_values(dict(typed), None, "where")
    values: dict[str, Any] = {"where": where, "known": {}, **days}
    put(values, "name", typed["name"])
    put(values, "pupils", typed["pupils"])
    for end in ("first", "last"):
        put(values, f"known.{end}", typed[end] or "")
    read = read_form(write_toml(values), "", District, (_where_findings, _days_elsewhere))
    if found:
        return ReadResult(None, (*found, *read.findings))
    return read.map(_located)


def _where_findings(district: District, file: str) -> Iterator[Finding]:
    found = locate(district.where)
    if isinstance(found, NotFound):
        value = shown(getattr(district.where, found.field))
        yield Finding(file, f"where.{found.field}", value, found.message)


def _days_elsewhere(district: District, file: str) -> Iterator[Finding]:
    """Days that the calendar does not speak about; most often somebody mistyped the year."""
    known = district.known
    for field in DAYS_TYPED:
        for number, days in enumerate(getattr(district, field)):
            if days.last < known.first or days.first > known.last:
                message = f"lies outside the days the calendar speaks about, {known.first} to {known.last}"
                yield Finding(file, f"{field}[{number}]", wording.days(days.first, days.last), message)


def _located(district: District) -> District:
    where = locate(district.where)
    return district if isinstance(where, NotFound) else district.model_copy(update={"where": where})


def named_in_form(
    findings: Sequence[Finding], lines: Mapping[str, Sequence[int]] | None = None
) -> tuple[Finding, ...]:
    """Findings of a district with its fields called as on the screen.

    Args:
        findings: as `read_district` gives them.
        lines: of the lists that were typed, the number of each entry's line.
    """
    entries = {field: partial(_line, DAYS_TYPED[field], numbers) for field, numbers in (lines or {}).items()}
    return named(findings, _LABELS, entries)


def _line(field: str, numbers: Sequence[int], index: int) -> str:
    return line_called(field, numbers[index])


def save_calendar(
    view: View, form: str, calendars: Mapping[str, StoredDocument[SchoolCalendar]], calendar: SchoolCalendar
) -> bool:
    """Put a calendar on record in the place of its namesake, and empty its form; whether that worked."""
    kept = calendars.get(calendar.name)
    done = "replaced" if kept else "added"
    calendar = with_guess_kept(calendar, kept.value if kept else None)
    saved = save_all(view, _PAGE, [(calendar, kept.revision if kept else 0)], f"{calendar.name} is {done}.")
    if saved:
        refill(form)
    return saved
