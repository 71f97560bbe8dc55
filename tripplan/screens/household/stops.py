"""A form for what the family stops for: fuel, somebody who comes along, an errand on the way back."""

from decimal import Decimal, InvalidOperation
from typing import Any

import streamlit as st

from tripplan.errors import Finding
from tripplan.files.gazetteer import NotFound, locate
from tripplan.files.where_text import read_where
from tripplan.planning import wording
from tripplan.planning.habits import PickUp, Stops
from tripplan.planning.household import Household
from tripplan.planning.units import KM_PER_MILE
from tripplan.planning.where import Where
from tripplan.records.store import Kept
from tripplan.screens.household.saving import Raw, check_and_save, raw_household
from tripplan.screens.household.words import STOPS
from tripplan.screens.widgets.fields import Fields, FieldValue, filled, put
from tripplan.screens.widgets.frame import View
from tripplan.screens.widgets.notices import show_notice

_FUEL_RANGE_KM = (20.0, 5000.0)
_EXTRA_KM = (0.0, 1000.0)
_IN_WORDS = {"mi": "in miles", "km": "in km"}


def stops_form(view: View, kept: Kept[Household]) -> None:
    """Fuel stops, a pick-up on the way there, and one stop on the way back."""
    units = kept.value.units
    with st.expander("Stops on the way", key="open_stops"):
        st.caption(
            "They are planned beside the rests, and a stop that is as long as a rest counts as one. Belts "
            "and child seats follow the law where you drive, also for those who are picked up."
        )
        fields = filled("stops", _on_record(kept.value.habits.stops, units))
        with st.form("stops_form"):
            st.markdown("**Fuel**")
            _text(fields, "fuel_range_km", "Empty where fuel is no matter, such as for short drives.", units)
            _text(fields, "fuel_minutes", "Ten minutes are common practice.")
            st.markdown("**Somebody who comes along**")
            _text(fields, "pick_up.name", "A grandparent, another family; empty for nobody.")
            _text(
                fields,
                "pick_up.where",
                "Town and state, ZIP code, coordinates or a map's link; the detour is then estimated.",
            )
            _text(fields, "pick_up.extra_km", "Instead of where.", units)
            _text(fields, "pick_up.extra_minutes", "Instead of where.")
            _text(fields, "pick_up.stop_minutes", "Ten minutes are common practice.")
            st.checkbox(STOPS["pick_up.brought_home"], key=fields.key("pick_up.brought_home"))
            st.markdown("**On the way back**")
            _text(fields, "way_back", "An errand, supper, a playground.")
            _text(fields, "way_back_minutes", "Empty or 0 for no such stop.")
            st.caption("A field left empty goes back to the usual figure.")
            st.form_submit_button(
                "Save", key="save_stops", type="primary", on_click=_save, args=(view, kept, fields)
            )
        show_notice("stops")


def _text(fields: Fields, name: str, explained: str, units: str = "") -> None:
    label = f"{STOPS[name]}, {_IN_WORDS[units]}" if units else STOPS[name]
    st.text_input(label, key=fields.key(name), help=explained)


def _on_record(stops: Stops, units: str) -> dict[str, FieldValue]:
    pick_up = stops.pick_up
    shown: dict[str, FieldValue] = {
        "fuel_range_km": "" if stops.fuel_range_km is None else _in_units(stops.fuel_range_km, units),
        "fuel_minutes": str(stops.fuel_minutes),
        "way_back": stops.way_back,
        "way_back_minutes": str(stops.way_back_minutes),
    }
    if pick_up is None:
        usual = str(PickUp.model_fields["stop_minutes"].default)
        empty = dict.fromkeys(("name", "where", "extra_km", "extra_minutes"), "")
        picked: dict[str, FieldValue] = {**empty, "stop_minutes": usual, "brought_home": True}
    else:
        by_place = pick_up.latitude is not None
        picked = {
            "name": pick_up.name,
            "where": f"{pick_up.latitude}, {pick_up.longitude}" if by_place else "",
            "extra_km": "" if by_place else _in_units(pick_up.extra_km, units),
            "extra_minutes": "" if by_place else str(pick_up.extra_minutes),
            "stop_minutes": str(pick_up.stop_minutes),
            "brought_home": pick_up.brought_home,
        }
    return shown | {f"pick_up.{name}": value for name, value in picked.items()}


def _in_units(km: float, units: str) -> str:
    """A distance as a field shows it, to a tenth."""
    value = Decimal(str(km)) / (KM_PER_MILE if units == "mi" else 1)
    return f"{value:.1f}".removesuffix(".0")


def _save(view: View, kept: Kept[Household], fields: Fields) -> None:
    typed = fields.typed()
    raw = raw_household(kept.value)
    raw["habits"]["stops"], found = _typed_stops(typed, kept.value)
    check_and_save(view, "stops", kept.revision, raw, found)


def _typed_stops(typed: dict[str, Any], household: Household) -> tuple[Raw, list[Finding]]:
    before, units = household.habits.stops, household.units
    found: list[Finding] = []
    stops: Raw = {}

    def distance(name: str, was: float | None, ends: tuple[float, float]) -> None:
        text = typed[name].strip()
        if was is not None and text == _in_units(was, units):
            put(stops, name, was)
        elif text:
            km = _km(text, units)
            if km is None or not ends[0] <= km <= ends[1]:
                low, high = (wording.distance(end, units) for end in ends)
                message = f"a distance from {low} to {high}, as a number such as 12.5"
                found.append(Finding("", f"habits.stops.{name}", text[:60], message))
            else:
                put(stops, name, km)

    distance("fuel_range_km", before.fuel_range_km, _FUEL_RANGE_KM)
    for name in ("fuel_minutes", "way_back", "way_back_minutes"):
        put(stops, name, typed[name])
    about_pick_up = ("name", "where", "extra_km", "extra_minutes")
    if not any(typed[f"pick_up.{name}"].strip() for name in about_pick_up):
        return stops, found
    stops["pick_up"] = {"brought_home": typed["pick_up.brought_home"]}
    for name in ("name", "extra_minutes", "stop_minutes"):
        put(stops, f"pick_up.{name}", typed[f"pick_up.{name}"])
    was = before.pick_up
    distance("pick_up.extra_km", was.extra_km if was else None, _EXTRA_KM)
    where = typed["pick_up.where"].strip()
    if where and (typed["pick_up.extra_km"].strip() or typed["pick_up.extra_minutes"].strip()):
        message = "give a place, or how much longer it makes the way and the drive, not both"
        found.append(Finding("", "habits.stops.pick_up", "", message))
    elif where:
        point, why = _point(where, household.home)
        stops["pick_up"] |= point
        if why:
            found.append(Finding("", "habits.stops.pick_up.where", where[:60], why))
    return stops, found


def _km(text: str, units: str) -> float | None:
    """A typed distance [km]; None where it is no number."""
    try:
        value = Decimal(text)
    except InvalidOperation:
        return None
    if not value.is_finite():
        return None
    return float(round(value * (KM_PER_MILE if units == "mi" else 1), 3))


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
