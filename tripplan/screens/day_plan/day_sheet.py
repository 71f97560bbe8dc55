"""The day sheet on the Day plan page: what stands on it, and the files to print or take along."""

from collections.abc import Mapping
from functools import partial
from typing import Any

import streamlit as st

from tripplan.documents.model import Written
from tripplan.documents.outings.emergency_contacts import EmergencyContacts
from tripplan.documents.outings.packing_changes import PackingChanges
from tripplan.documents.outings.sheet_entries import SheetDetails, SheetTicks
from tripplan.documents.places.own_questions import OwnQuestions
from tripplan.errors import Finding
from tripplan.files.day_sheet.day_sheet import DaySheet, day_sheet, trip_of
from tripplan.files.day_sheet.day_sheet_html import day_sheet_html
from tripplan.files.day_sheet.day_sheet_pdf import (
    Paper,
    day_sheet_pdf,
    missing_letters,
    missing_sentence,
    usual_paper,
)
from tripplan.files.toml.toml_text import write_toml
from tripplan.files.toml.written import read_form
from tripplan.language.sentences import said, say
from tripplan.planning.day_sheet.packing import suggested_items
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import Outing
from tripplan.records.kinds import kind_of
from tripplan.records.sheet_entries import sheet_entries_in
from tripplan.records.store import StoredDocument
from tripplan.screens.forms.form_box import form_box, save_button
from tripplan.screens.widgets.fields import Fields, FieldValue, filled, lines_in, refill
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.notices import named, refuse
from tripplan.screens.widgets.saving import save_all, take_back_button
from tripplan.screens.widgets.view import View

_LABELS = {
    "bookings": "dayplan-sheet-booking",
    "bookings.what": "dayplan-sheet-what",
    "bookings.number": "dayplan-sheet-number",
    "contacts": "dayplan-sheet-who-to-call",
    "contacts.name": "dayplan-sheet-who",
    "contacts.telephone": "dayplan-sheet-number",
    "questions": "dayplan-sheet-questions",
    "added": "dayplan-sheet-also",
    "left_out": "dayplan-sheet-without",
}


Documents = Mapping[type[Written], StoredDocument[Written] | None]
"""What is on record of each kind that the sheet shows."""


def render_day_sheet(view: View, family: Family, outing: Outing) -> None:
    """Offer the day sheet of an outing, and let the parent write what stands on it.

    Args:
        view: whose records.
        family: the family in use.
        outing: one place on one day, with its answers.
    """
    with st.expander(say("dayplan-sheet"), key="open_day_sheet"):
        st.caption(say("dayplan-sheet-lead"))
        entries = sheet_entries_in(view.records, outing.place.id, outing.day)
        notice = family.household.notice
        sheet = day_sheet(outing, family.household, entries, notice=notice)
        _downloads(view, family, outing, sheet)
        _what_to_pack(sheet)
        _form(view, family, outing)


def print_button(view: View, family: Family, outing: Outing) -> None:
    """The day sheet as a PDF, made when it is pressed for.

    Args:
        view: whose records.
        family: the family in use.
        outing: one place on one day, with its answers.
    """
    entries = sheet_entries_in(view.records, outing.place.id, outing.day)
    sheet = day_sheet(outing, family.household, entries, notice=family.household.notice)
    paper = usual_paper(family.household.home.country)
    st.download_button(
        say("dayplan-print"),
        partial(day_sheet_pdf, sheet, paper, view.services.clock()),
        file_name=f"{outing.place.id}-{outing.day}.pdf",
        mime="application/pdf",
        key="print_sheet",
        type="tertiary",
        on_click="ignore",
        help=say("dayplan-print-help"),
    )


def _what_to_pack(sheet: DaySheet) -> None:
    """The packing list as it stands, so that the parent sees what to leave out or add."""
    things = [line.text for section in sheet.sections if section.ticked_off for line in section.lines]
    st.markdown(f"**{say('dayplan-sheet-to-pack')}** {plain('; '.join(things))}.")


def _downloads(view: View, family: Family, outing: Outing, sheet: DaySheet) -> None:
    name = f"{outing.place.id}-{outing.day}"
    usual = usual_paper(family.household.home.country)
    papers = {Paper.A4.value: "A4", Paper.LETTER.value: say("dayplan-sheet-letter")}
    paper = st.radio(
        say("dayplan-sheet-paper"),
        list(papers),
        index=list(papers).index(usual.value),
        format_func=papers.__getitem__,
        horizontal=True,
        key="sheet_paper",
    )
    with st.container(horizontal=True):
        st.download_button(
            say("dayplan-sheet-html"),
            day_sheet_html(sheet),
            file_name=f"{name}.html",
            mime="text/html",
            key="download_sheet_html",
            on_click="ignore",
        )
        st.download_button(
            say("dayplan-sheet-pdf"),
            partial(day_sheet_pdf, sheet, Paper(paper), view.services.clock()),
            file_name=f"{name}.pdf",
            mime="application/pdf",
            key="download_sheet_pdf",
            on_click="ignore",
        )
    missing = missing_letters(sheet)
    if missing:
        st.caption(plain(missing_sentence(missing)))


def _form(view: View, family: Family, outing: Outing) -> None:
    spot = f"sheet_{view.which}_{outing.place.id}_{outing.day}"
    fields = filled(spot, _on_record(view, outing))
    kept = _documents(view, outing)
    suggested = [said(item.what) for item in suggested_items(trip_of(outing, family.household))]
    with form_box(fields):
        st.text_area(
            say("dayplan-sheet-bookings-field"),
            key=fields.key("bookings"),
            placeholder=say("dayplan-sheet-bookings-example"),
        )
        st.text_area(
            say("dayplan-sheet-contacts-field"),
            key=fields.key("contacts"),
            placeholder=say("dayplan-sheet-contacts-example"),
        )
        st.text_area(
            plain(say("dayplan-sheet-questions-field", place=outing.place.name)),
            key=fields.key("questions"),
            help=say("dayplan-sheet-questions-help"),
        )
        st.multiselect(
            say("dayplan-sheet-without-field"),
            list(dict.fromkeys((*suggested, *st.session_state[fields.key("left_out")]))),
            key=fields.key("left_out"),
            placeholder=say("dayplan-sheet-nothing"),
        )
        st.text_area(say("dayplan-sheet-also-field"), key=fields.key("added"))
        st.caption(say("dayplan-sheet-privacy"))
        st.checkbox(say("dayplan-sheet-needs"), key=fields.key("needs"))
        st.checkbox(say("dayplan-sheet-birth-dates"), key=fields.key("birth_dates"))
        st.checkbox(say("dayplan-sheet-address"), key=fields.key("home_address"))
        st.checkbox(
            say("dayplan-sheet-names"),
            key=fields.key("names"),
            help=say("dayplan-sheet-names-help"),
        )
        save_button(
            fields,
            say("dayplan-sheet-save"),
            key=f"{spot}_save",
            on_click=_save,
            args=(view, outing, fields, kept),
        )
    take_back_button(view, spot)


def _on_record(view: View, outing: Outing) -> dict[str, FieldValue]:
    entries = sheet_entries_in(view.records, outing.place.id, outing.day)
    ticked = entries.ticked
    return {
        "bookings": "\n".join(f"{booking.what}: {booking.number}" for booking in entries.bookings),
        "contacts": "\n".join(f"{one.name}: {one.telephone}" for one in entries.contacts.contacts),
        "questions": "\n".join(entries.questions.questions if entries.questions else ()),
        "left_out": list(entries.packing.left_out),
        "added": "\n".join(entries.packing.added),
        "needs": ticked.needs,
        "birth_dates": ticked.birth_dates,
        "home_address": ticked.home_address,
        "names": ticked.names,
    }


def _unwritten(outing: Outing) -> tuple[Written, ...]:
    """The documents of a sheet for which nobody has written anything."""
    place = outing.place.id
    return (
        SheetDetails(place=place, day=outing.day),
        OwnQuestions(place=place),
        PackingChanges(),
        EmergencyContacts(),
    )


def _documents(view: View, outing: Outing) -> Documents:
    records = view.records
    return {type(one): records.get(type(one), kind_of(type(one)).key(one)) for one in _unwritten(outing)}


def _typed_values(outing: Outing, typed: Mapping[str, Any]) -> Mapping[type[Written], Mapping[str, Any]]:
    """What was typed in, by the document it belongs to."""
    place = outing.place.id
    return {
        SheetDetails: {
            "place": place,
            "day": outing.day,
            "bookings": [_pair(line, "what", "number") for line in lines_in(typed["bookings"])],
            "ticked": {name: typed[name] for name in SheetTicks.model_fields},
        },
        OwnQuestions: {"place": place, "questions": lines_in(typed["questions"])},
        PackingChanges: {"added": lines_in(typed["added"]), "left_out": list(typed["left_out"])},
        EmergencyContacts: {
            "contacts": [_pair(line, "name", "telephone") for line in lines_in(typed["contacts"])]
        },
    }


def _pair(line: str, first: str, second: str) -> dict[str, str]:
    """A line such as 'Tour at noon: K7-3312' in its two parts."""
    before, _, after = line.partition(":")
    return {first: before.strip(), second: after.strip()}


def _save(view: View, outing: Outing, fields: Fields, kept: Documents) -> None:
    spot = fields.form
    values: list[tuple[Written, int]] = []
    findings: list[Finding] = []
    typed = _typed_values(outing, fields.typed())
    for unwritten in _unwritten(outing):
        model = type(unwritten)
        read, before = read_form(write_toml(typed[model]), "", model), kept[model]
        findings.extend(read.findings)
        if read.value is not None and (before is not None or read.value != unwritten):
            values.append((read.value, before.revision if before else 0))
    if findings:
        refuse(spot, findings=named(findings, {path: say(code) for path, code in _LABELS.items()}))
    elif save_all(view, spot, values, say("dayplan-sheet-saved", place=outing.place.name)):
        refill(spot)
