"""A school calendar that is typed in, one break or short day a line."""

from collections.abc import Iterable, Mapping
from datetime import timedelta

import streamlit as st

from tripplan.documents.calendars.calendars import DateSpan, SchoolCalendar
from tripplan.errors import Finding
from tripplan.planning.family.family import Family
from tripplan.records.store import StoredDocument
from tripplan.screens.calendar.school.district import (
    DAYS_TYPED,
    district_inputs,
    district_on_record,
    named_in_form,
    read_district,
    save_calendar,
)
from tripplan.screens.calendar.typed_days import days_typed_in
from tripplan.screens.forms.form_box import form_box, save_button
from tripplan.screens.widgets.fields import Fields, filled
from tripplan.screens.widgets.notices import refuse
from tripplan.screens.widgets.view import View

_A_YEAR = timedelta(days=365)


def by_hand(view: View, family: Family, calendars: Mapping[str, StoredDocument[SchoolCalendar]]) -> None:
    """A form to type a calendar into."""
    coming = DateSpan(first=view.today, last=view.today + _A_YEAR)
    fields = filled(
        "school_typed", {**district_on_record(family, "", coming), **dict.fromkeys(DAYS_TYPED, "")}
    )
    with form_box(fields):
        st.text_area(
            f"{DAYS_TYPED['no_school']}, one break a line",
            key=fields.key("no_school"),
            placeholder="2026-12-21 to 2027-01-01 winter break\n2027-01-18 staff day",
        )
        st.caption("Such as: 2026-12-21 to 2027-01-01 winter break. Weekends need not be listed.")
        st.text_area(
            f"{DAYS_TYPED['short_days']}, one a line (may be left empty)",
            key=fields.key("short_days"),
            placeholder="2026-12-18 early release\n2027-03-10 late start",
            help="Students go home early or come late. They are at school in the morning, and out "
            "earlier than usual.",
        )
        district_inputs(fields)
        save_button(
            fields,
            "Save this school calendar",
            key="save_school_typed",
            on_click=_save_typed,
            args=(view, calendars, fields),
        )


def _save_typed(view: View, calendars: Mapping[str, StoredDocument[SchoolCalendar]], fields: Fields) -> None:
    typed = fields.typed()
    found: list[Finding] = []
    days: dict[str, dict[int, dict[str, str]]] = {}
    for field, called in DAYS_TYPED.items():
        days[field], unreadable = days_typed_in(typed[field], called)
        found.extend(unreadable)
    if not days["no_school"] and not found:
        found.append(Finding("", DAYS_TYPED["no_school"], "", "list at least one break or day off"))
    district = read_district(typed, {field: list(by_line.values()) for field, by_line in days.items()})
    if district.value is None or found:
        lines = {field: tuple(by_line) for field, by_line in days.items()}
        refuse("school_typed", findings=named_in_form([*found, *district.findings], lines))
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
    save_calendar(view, "school_typed", calendars, calendar)


def _in_order(days: Iterable[DateSpan]) -> tuple[DateSpan, ...]:
    return tuple(sorted(days, key=lambda span: (span.first, span.last)))
