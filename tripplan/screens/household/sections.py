"""Forms for the home, the car, food, and the other parts of a household."""

from collections.abc import Callable, Sequence
from functools import partial
from typing import Any

import streamlit as st

from tripplan.planning.car import Fuel
from tripplan.planning.household import Household
from tripplan.records.store import Kept
from tripplan.screens.household.saving import Raw, check_and_save, clock_text, raw_household
from tripplan.screens.household.words import (
    CAR,
    CONSUMPTION,
    FOOD,
    FUELS,
    LABELS,
    RATE,
    RATES,
    Field,
    Section,
)
from tripplan.screens.widgets.fields import CLOCK_STEP, Fields, FieldValue, filled, put
from tripplan.screens.widgets.frame import View
from tripplan.screens.widgets.notices import show_notice
from tripplan.screens.widgets.where_form import where_inputs, where_on_record, where_values
from tripplan.screens.widgets.where_lookup import where_lookup


def _inputs(fields: Fields, listed: Sequence[Field]) -> None:
    for field in listed:
        draw: Callable[..., object] = (
            partial(st.time_input, step=CLOCK_STEP) if field.clock else st.text_input
        )
        draw(field.label, key=fields.key(field.path), help=field.explained or None)


def _on_record(household: Household, listed: Sequence[Field]) -> dict[str, FieldValue]:
    on_record: dict[str, FieldValue] = {}
    for field in listed:
        value: Any = household
        for step in field.path.split("."):
            value = getattr(value, step, None)
        on_record[field.path] = value if field.clock else "" if value is None else str(value)
    return on_record


def _put_all(raw: Raw, typed: dict[str, Any], listed: Sequence[Field]) -> None:
    for field in listed:
        put(raw, field.path, clock_text(typed[field.path]) if field.clock else typed[field.path])


def plain_section(view: View, kept: Kept[Household], section: Section) -> None:
    """A section of plain fields, saved together."""
    with st.expander(section.title, key=f"open_{section.name}"):
        st.caption(section.lead)
        fields = filled(section.name, _on_record(kept.value, section.fields))
        with st.form(f"{section.name}_form"):
            _inputs(fields, section.fields)
            _save_button(section.name, _save_plain, (view, kept, section, fields))
        show_notice(section.name)


def _save_button(name: str, save: Callable[..., None], args: tuple[object, ...]) -> None:
    st.caption("A field left empty goes back to the usual figure.")
    st.form_submit_button("Save", key=f"save_{name}", type="primary", on_click=save, args=args)


def _save_plain(view: View, kept: Kept[Household], section: Section, fields: Fields) -> None:
    raw = raw_household(kept.value)
    _put_all(raw, fields.typed(), section.fields)
    check_and_save(view, section.name, kept.revision, raw)


def home_form(view: View, kept: Kept[Household]) -> None:
    """Name, home, currency and units."""
    household = kept.value
    with st.expander("Name, home and money", key="open_home"):
        fields = filled(
            "home",
            {
                "name": household.name,
                **where_on_record(household.home),
                "currency": household.currency,
                "units": household.units,
            },
        )
        with st.form("home_form"):
            st.text_input(LABELS["name"], key=fields.key("name"))
            where_inputs(fields, with_address=True, with_metropolitan=True)
            st.text_input(LABELS["currency"], key=fields.key("currency"), help="Three letters, such as USD.")
            st.radio(
                LABELS["units"],
                ("mi", "km"),
                format_func={"mi": "miles", "km": "kilometres"}.__getitem__,
                key=fields.key("units"),
            )
            st.form_submit_button(
                "Save", key="save_home", type="primary", on_click=_save_home, args=(view, kept, fields)
            )
        show_notice("home")
        where_lookup(view, fields)


def _save_home(view: View, kept: Kept[Household], fields: Fields) -> None:
    typed = fields.typed()
    raw = raw_household(kept.value)
    raw["home"], found = where_values(typed, kept.value.home, "home")
    put(raw, "name", typed["name"])
    put(raw, "currency", typed["currency"].strip().upper())
    raw["units"] = typed["units"]
    check_and_save(view, "home", kept.revision, raw, found)


def car_form(view: View, kept: Kept[Household]) -> None:
    """The car and what driving it costs; no car at all where the box is not ticked."""
    household = kept.value
    every = (*CAR, *CONSUMPTION, *RATE)
    with st.expander("Car", key="open_car"):
        fuel = household.car.fuel if household.car else Fuel.MILES_PER_US_GALLON
        fields = filled(
            "car",
            {"has": household.car is not None, "fuel": fuel.value, **_on_record(household, every)},
        )
        with st.form("car_form"):
            st.checkbox("We go by car", key=fields.key("has"))
            _inputs(fields, CAR)
            st.selectbox(
                LABELS["car.fuel"],
                [fuel.value for fuel in FUELS],
                format_func={fuel.value: said for fuel, said in FUELS.items()}.__getitem__,
                key=fields.key("fuel"),
            )
            _inputs(fields, CONSUMPTION)
            _inputs(fields, RATE)
            _save_button("car", _save_car, (view, kept, fields))
        show_notice("car")


def _save_car(view: View, kept: Kept[Household], fields: Fields) -> None:
    typed = fields.typed()
    raw = raw_household(kept.value)
    raw.pop("car", None)
    if typed["has"]:
        raw["car"] = {"fuel": typed["fuel"]}
        _put_all(raw, typed, (*CAR, *(RATE if Fuel(typed["fuel"]) in RATES else CONSUMPTION)))
    check_and_save(view, "car", kept.revision, raw)


def food_form(view: View, kept: Kept[Household]) -> None:
    """Whether food is packed or bought, and what it costs."""
    with st.expander("Food", key="open_food"):
        st.caption("What eating costs on an outing, for each person.")
        fields = filled("food", {"way": kept.value.food.way, **_on_record(kept.value, FOOD)})
        with st.form("food_form"):
            st.radio(
                LABELS["food.way"],
                ("packed", "bought"),
                format_func={"packed": "packed at home", "bought": "bought there"}.__getitem__,
                key=fields.key("way"),
            )
            _inputs(fields, FOOD)
            _save_button("food", _save_food, (view, kept, fields))
        show_notice("food")


def _save_food(view: View, kept: Kept[Household], fields: Fields) -> None:
    typed = fields.typed()
    raw = raw_household(kept.value)
    raw["food"]["way"] = typed["way"]
    _put_all(raw, typed, FOOD)
    check_and_save(view, "food", kept.revision, raw)
