"""Public holidays at home and the places, long weekends, and the festival days that the parent adds."""

from collections.abc import Iterator
from datetime import date
from typing import Any

import pandas as pd
import streamlit as st

from tripplan.documents.calendars.local_days import LocalDay, LocalDays
from tripplan.documents.where import Where
from tripplan.errors import Finding
from tripplan.files.locations.gazetteer import NotFound
from tripplan.files.locations.where_text import locate_text
from tripplan.files.toml.toml_text import write_toml
from tripplan.files.toml.written import read_form
from tripplan.planning.family.family import Family
from tripplan.planning.holidays.coming_holidays import coming_holidays, holiday_source_sentences
from tripplan.planning.holidays.local_days import local_day_sentence
from tripplan.planning.outing.sentences import span_sentence
from tripplan.records.store import StoredDocument
from tripplan.screens.widgets.choices import place_names
from tripplan.screens.widgets.fields import Fields, filled, put, refill
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.notices import named, refuse, show_notice
from tripplan.screens.widgets.saving import save_all
from tripplan.screens.widgets.view import View
from tripplan.values import wording
from tripplan.values.units import KM_PER_MILE

_PAGE = "calendar"
_FORM = "festival"
_A_TOWN = ""
_TICKED = ("every_year", "day_off", "hours_as_on_holidays")
_REACH = {"mi": "15", "km": "25"}
"""What is usually taken to be near a town, in the household's unit."""
_LABELS = {
    "name": "What is it?",
    "first": "First day",
    "last": "Last day",
    "crowd_factor": "How many times the usual visitors",
    "reach_km": "How far around the town",
}


def festivals(view: View, family: Family) -> None:
    """The year's public holidays, and a short list of local days to add to and take from."""
    with st.expander("Public holidays and long weekends of the coming year", key="open_holidays"):
        rows = list(_holiday_rows(family, view.today))
        if rows:
            st.dataframe(pd.DataFrame(rows), hide_index=True)
        else:
            st.caption("No public holidays are on record for these countries.")
        places = [place.where for place in family.places]
        st.caption(plain(" ".join(holiday_source_sentences(family.household.home, places))))
    kept = view.records.get(LocalDays)
    days = kept.value.days if kept else ()
    st.caption("A fair, a parade or a local day off makes the places near it fuller. Add those you know of.")
    names = place_names(family)
    for number, local in enumerate(days):
        st.markdown(plain(local_day_sentence(local, names, family.household.units)))
        st.button(
            plain(f"Remove {local.name}"),
            key=f"remove_festival_{number}",
            on_click=_save,
            args=(view, kept, (*days[:number], *days[number + 1 :]), f"{local.name} is removed."),
        )
    with st.expander("Add a festival or local day off", key="open_festival"):
        _form(view, family, kept)
        show_notice(_FORM)


def _holiday_rows(family: Family, today: date) -> Iterator[dict[str, str]]:
    """A row for each public holiday and bridge day, with where it is one and the days off in a row."""
    places = (place.where for place in family.places)
    for one in coming_holidays(family.household.home, places, today):
        yield {
            "day": wording.day(one.day),
            "holiday": one.name,
            "where": ", ".join(one.where),
            "days off in a row": span_sentence(one.row) if one.row else "",
        }


def _form(view: View, family: Family, kept: StoredDocument[LocalDays] | None) -> None:
    units = family.household.units
    fields = filled(
        _FORM,
        {
            "name": "",
            "first": view.today,
            "last": view.today,
            "every_year": False,
            "place": _A_TOWN,
            "town": "",
            "reach": _REACH[units],
            "crowd_factor": "1.5",
            "day_off": False,
            "hours_as_on_holidays": False,
        },
    )
    unit = "miles" if units == "mi" else "km"
    spots = {_A_TOWN: "in and around a town", **{str(place.id): place.name for place in family.places}}
    with st.form("festival_form"):
        st.text_input(_LABELS["name"], key=fields.key("name"))
        left, right = st.columns(2)
        left.date_input(_LABELS["first"], key=fields.key("first"))
        right.date_input(_LABELS["last"], key=fields.key("last"), help="Left as it is, the first day alone.")
        st.checkbox("It comes back on these dates every year", key=fields.key("every_year"))
        st.selectbox("Where?", list(spots), format_func=spots.__getitem__, key=fields.key("place"))
        left, right = st.columns(2)
        left.text_input(
            "Which town?",
            key=fields.key("town"),
            help="A town with its state, a ZIP code, or coordinates; only where no place is picked.",
        )
        right.text_input(f"{_LABELS['reach_km']}, in {unit}", key=fields.key("reach"))
        st.text_input(
            _LABELS["crowd_factor"], key=fields.key("crowd_factor"), help="1.5 is a guess; 1 changes nothing."
        )
        st.checkbox(
            "People there are off work, as on a public holiday",
            key=fields.key("day_off"),
            help="Where your home is within reach of the town, your own working hours are free as well.",
        )
        st.checkbox(
            "Places there keep the hours and prices of a public holiday",
            key=fields.key("hours_as_on_holidays"),
            help="Usually they do not: a card's public holidays are those of its country and state. Tick it "
            "where a place tells you that it closes, or opens as on a holiday, on this day.",
        )
        st.form_submit_button(
            "Add this day",
            key="save_festival",
            type="primary",
            on_click=_add,
            args=(view, family, kept, fields),
        )


def _add(view: View, family: Family, kept: StoredDocument[LocalDays] | None, fields: Fields) -> None:
    typed = fields.typed()
    values: dict[str, Any] = {name: typed[name] for name in _TICKED}
    for name in ("name", "crowd_factor", "place"):
        put(values, name, typed[name])
    untouched = typed["last"] == view.today
    put(values, "first", typed["first"] or "")
    put(values, "last", (typed["first"] if untouched else typed["last"]) or "")
    found: list[Finding] = []
    if not typed["place"]:
        town = _town(str(typed["town"]), family.household.home)
        if isinstance(town, str):
            found.append(Finding("", "Which town?", str(typed["town"])[:60], town))
            # Stands for it, so that the other faults are told along with this one.
            town = family.household.home
        values["town"] = town.model_dump(exclude_none=True)
    units = family.household.units
    try:
        reach = float(typed["reach"])
        values["reach_km"] = reach * float(KM_PER_MILE) if units == "mi" else reach
    except ValueError:
        message = f"a number, such as {_REACH[units]}"
        found.append(Finding("", _LABELS["reach_km"], str(typed["reach"])[:60], message))
    read = read_form(write_toml(values), "", LocalDay)
    if read.value is None or found:
        refuse(_FORM, findings=(*found, *named(read.findings, _LABELS)))
        return
    days = (*(kept.value.days if kept else ()), read.value)
    _save(view, kept, days, f"{read.value.name} is added.")
    refill(_FORM)


def _town(text: str, home: Where) -> Where | str:
    """Where a town lies, or why it cannot be said."""
    if not text.strip():
        return "name a town with its state, a ZIP code or coordinates, or pick a place"
    try:
        found = locate_text(text, home)
    except ValueError as trouble:
        return str(trouble)
    return found.message if isinstance(found, NotFound) else found


def _save(view: View, kept: StoredDocument[LocalDays] | None, days: tuple[LocalDay, ...], said: str) -> None:
    save_all(view, _PAGE, [(LocalDays(days=days), kept.revision if kept else 0)], said)
