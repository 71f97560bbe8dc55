"""A form for what the family stops for: fuel, somebody who comes along, an errand on the way back."""

import streamlit as st

from tripplan.documents.family.habits import PickUp, Stops
from tripplan.documents.family.household import Household
from tripplan.documents.where import Where
from tripplan.errors import Finding
from tripplan.files.locations.gazetteer import NotFound, locate
from tripplan.files.locations.where_text import read_where
from tripplan.language.sentences import say
from tripplan.records.store import StoredDocument
from tripplan.screens.forms.answers import Raw
from tripplan.screens.forms.form import Form, form_for
from tripplan.screens.forms.form_box import form_box, save_button
from tripplan.screens.forms.questions import Setting, questions
from tripplan.screens.household.saving import check_and_save, raw_household
from tripplan.screens.widgets.view import View

_UNDER = "habits.stops"
_WHERE = "pick_up.where"
_FUEL = questions(Stops, "fuel_range_km", "fuel_minutes")
_PICK_UP = questions(PickUp, under="pick_up", leaving_out=("latitude", "longitude"))
_WAY_BACK = questions(Stops, "way_back", "way_back_minutes")
_BY_PLACE = ("pick_up.extra_km", "pick_up.extra_minutes")
"""What says how much longer the way is where no place says it."""


def stops_form(view: View, kept: StoredDocument[Household]) -> None:
    """Fuel stops, a pick-up on the way there, and one stop on the way back."""
    stops = kept.value.habits.stops
    st.caption(say("household-lead-stops"))
    asked = (*_FUEL, *_PICK_UP, *_WAY_BACK)
    setting = Setting(units=kept.value.units)
    form = form_for("stops", asked, stops, setting, also={_WHERE: _place(stops)})
    with form_box(form.fields, border=False):
        st.markdown(f"**{say('household-fuel')}**")
        form.draw(*(one.name for one in _FUEL))
        st.markdown(f"**{say('household-comes-along')}**")
        form.draw("pick_up.name")
        st.text_input(
            say("household-picked-up-where"),
            key=form.fields.key(_WHERE),
            help=say("household-picked-up-help"),
        )
        form.draw(*(one.name for one in _PICK_UP[1:]))
        st.markdown(f"**{say('household-way-back')}**")
        form.draw(*(one.name for one in _WAY_BACK))
        st.caption(say("household-usual-figure"))
        save_button(
            form.fields,
            say("household-save", what=say("household-the-stops")),
            key="save_stops",
            on_click=_save,
            args=(view, kept, form),
        )


def _place(stops: Stops) -> str:
    at = stops.pick_up
    return "" if at is None or at.latitude is None else f"{at.latitude}, {at.longitude}"


def _save(view: View, kept: StoredDocument[Household], form: Form) -> None:
    raw = raw_household(kept.value)
    found = [
        Finding("", f"{_UNDER}.{one.field}", one.value, one.message)
        for one in _put_stops(raw["habits"]["stops"], form, kept.value)
    ]
    check_and_save(view, "stops", kept.revision, raw, found)


def _put_stops(raw: Raw, form: Form, household: Household) -> list[Finding]:
    typed, found = form.fields.typed(), form.put(raw)
    where = typed[_WHERE].strip()
    extra = any(typed[name].strip() not in ("", "0") for name in _BY_PLACE)
    if not (where or extra or typed["pick_up.name"].strip()):
        raw.pop("pick_up", None)
        return [one for one in found if not one.field.startswith("pick_up")]
    pick_up = raw.setdefault("pick_up", {})
    if where and extra:
        message = say("household-place-or-longer")
        found.append(Finding("", "pick_up", "", message))
    elif where != _place(household.habits.stops):
        point, why = _point(where, household.home) if where else ({}, "")
        raw["pick_up"] = {**{k: v for k, v in pick_up.items() if k not in ("latitude", "longitude")}, **point}
        if why:
            found.append(Finding("", _WHERE, where[:60], why))
    return found


def _point(text: str, home: Where) -> tuple[Raw, str]:
    """Coordinates of a place that a parent names, or why it was not found."""
    try:
        read = read_where(text)
    except ValueError as unreadable:
        return {}, str(unreadable)
    if read.point is None:
        named = Where(
            town=read.town, postal_code=read.postal_code, subdivision=read.subdivision, country=home.country
        )
        found = locate(named)
        if isinstance(found, NotFound):
            return {}, found.message
        return {"latitude": found.latitude, "longitude": found.longitude}, ""
    return {"latitude": read.point.latitude, "longitude": read.point.longitude}, ""
