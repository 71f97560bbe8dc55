"""Forms for the home, the car, food, and the other parts of a household."""

from dataclasses import dataclass, replace

import streamlit as st

from tripplan.documents.family.car import Car, Fuel
from tripplan.documents.family.food import Food
from tripplan.documents.family.habits import Habits
from tripplan.documents.family.household import Household
from tripplan.documents.family.worth import Worth
from tripplan.planning.travel.rests import (
    ADVISED_REST_MINUTES,
    ADVISED_STRETCH_MINUTES,
    SMALL_CHILD_STRETCH_MINUTES,
)
from tripplan.records.store import StoredDocument
from tripplan.screens.forms.form import Form, form_for
from tripplan.screens.forms.form_box import form_box, save_button
from tripplan.screens.forms.questions import Question, Setting, questions
from tripplan.screens.household.saving import check_and_save, raw_household
from tripplan.screens.look.folds import fold
from tripplan.screens.widgets.locations.where_form import where_inputs, where_on_record, where_values
from tripplan.screens.widgets.locations.where_lookup import where_lookup
from tripplan.screens.widgets.notices import show_notice
from tripplan.screens.widgets.view import View


@dataclass(frozen=True)
class Section:
    """Some fields that are saved together.

    Attributes:
        name: names the form.
        title: its heading.
        lead: a sentence above the fields.
        asked: in order; whatever the household's form asks for there.
    """

    name: str
    title: str
    lead: str
    asked: tuple[Question, ...]


FOOD = Section(
    "food", "Food", "What eating costs on an outing, for each person.", questions(Food, under="food")
)
HABITS = Section(
    "habits",
    "How you travel",
    f"Rests, lunch and the earliest start that suits your family. After {ADVISED_STRETCH_MINUTES} minutes of "
    f"driving a rest of at least {ADVISED_REST_MINUTES} minutes is advised (The Highway Code, Great "
    "Britain, rule 91), and the plan never drives longer without one. With a child under two it rests "
    f"after {SMALL_CHILD_STRETCH_MINUTES} minutes at the latest; small children often need one sooner.",
    questions(Habits, under="habits", plain=True),
)
WORTH = Section(
    "worth",
    "What matters to you",
    "With these, days are weighed against money: what would you gladly pay to be spared each of them? "
    "They change the order of the days, never the cost.",
    questions(Worth, under="worth"),
)
_HOME = ("name", "currency", "units", "language", "invented")
RESERVE = Section(
    "reserve",
    "Reserve and treats",
    "What nobody thought of, and souvenirs you plan for.",
    questions(Household, leaving_out=(*_HOME, "usual_weather"), plain=True),
)
WEATHER = Section(
    "usual_weather",
    "The weather around home",
    "Weather stations tell it in the United States, the Netherlands and around Dublin. Elsewhere what you "
    "type here counts for places within 80 km (50 mi) of home.",
    questions(Household, "usual_weather"),
)
SECTIONS = (FOOD, HABITS, WORTH, RESERVE, WEATHER)
RATES = (Fuel.RATE_PER_MILE, Fuel.RATE_PER_KM)


def section_form(view: View, kept: StoredDocument[Household], section: Section) -> None:
    """A section of plain fields, saved together."""
    part = fold(section.title, f"open_{section.name}")
    if part is None:
        return
    with part:
        st.caption(section.lead)
        form = form_for(section.name, section.asked, kept.value, Setting(country=kept.value.home.country))
        with form_box(form.fields):
            form.draw()
            st.caption("A field left empty goes back to the usual figure.")
            save_button(
                form.fields,
                "Save",
                key=f"save_{section.name}",
                on_click=_save_section,
                args=(view, kept, form),
            )
        show_notice(section.name)


def _save_section(view: View, kept: StoredDocument[Household], form: Form) -> None:
    raw = raw_household(kept.value)
    check_and_save(view, form.name, kept.revision, raw, form.put(raw))


def home_form(view: View, kept: StoredDocument[Household]) -> None:
    """Name, home, currency, units and language."""
    household = kept.value
    part = fold("Name, home and money", "open_home")
    if part is None:
        return
    with part:
        asked = questions(Household, *_HOME)
        form = form_for("home", asked, household, also=where_on_record(household.home))
        with form_box(form.fields):
            form.draw("name")
            where_inputs(form.fields, with_address=True, with_metropolitan=True)
            form.draw("currency", "units", "language", "invented")
            save_button(form.fields, "Save", key="save_home", on_click=_save_home, args=(view, kept, form))
        show_notice("home")
        where_lookup(view, form.fields)


def _save_home(view: View, kept: StoredDocument[Household], form: Form) -> None:
    raw = raw_household(kept.value)
    raw["home"], found = where_values(form.fields.typed(), kept.value.home, "home")
    check_and_save(view, "home", kept.revision, raw, [*found, *form.put(raw)])


def car_form(view: View, kept: StoredDocument[Household]) -> None:
    """The car and what driving it costs; no car at all where the box is not ticked."""
    household = kept.value
    part = fold("Car", "open_car")
    if part is None:
        return
    with part:
        has = household.car is not None
        form = form_for(
            "car",
            questions(Car, under="car"),
            household,
            Setting(country=household.home.country),
            also={"has": has},
        )
        with form_box(form.fields):
            st.checkbox("We go by car", key=form.fields.key("has"))
            form.draw()
            st.caption("A field left empty goes back to the usual figure.")
            save_button(form.fields, "Save", key="save_car", on_click=_save_car, args=(view, kept, form))
        show_notice("car")


def _save_car(view: View, kept: StoredDocument[Household], form: Form) -> None:
    raw = raw_household(kept.value)
    if kept.value.car is None:
        form = replace(form, before={})
    found = form.put(raw)
    if not form.fields.typed()["has"]:
        raw.pop("car", None)
    elif Fuel(raw["car"]["fuel"]) in RATES:
        of_consumption = ("consumption", "consumption_from", "fuel_price", "fuel_price_give_or_take_percent")
        raw["car"] = {name: value for name, value in raw["car"].items() if name not in of_consumption}
    else:
        raw["car"].pop("rate", None)
    check_and_save(view, "car", kept.revision, raw, found)
