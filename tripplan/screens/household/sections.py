"""Forms for the home, the car, food, and the other parts of a household."""

from dataclasses import dataclass, replace

import streamlit as st

from tripplan.documents.family.car import Car, Fuel
from tripplan.documents.family.food import Food
from tripplan.documents.family.habits import Habits
from tripplan.documents.family.household import Household
from tripplan.documents.family.worth import Worth
from tripplan.language.sentences import say
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
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.view import View


@dataclass(frozen=True)
class Section:
    """Some fields that are saved together.

    Attributes:
        name: names the form.
        called: what its button says it saves; a code.
        asked: in order; whatever the household's form asks for there.
        lead: a sentence above the fields; a code, empty for none.
        front: the fields that are seen at once; all where none is named.
    """

    name: str
    called: str
    asked: tuple[Question, ...]
    lead: str = ""
    front: tuple[str, ...] = ()


FOOD = Section("food", "household-the-food", questions(Food, under="food"), "household-lead-food")
HABITS = Section(
    "habits",
    "household-the-habits",
    questions(Habits, under="habits", plain=True),
    "household-lead-habits",
    (
        "habits.earliest_departure",
        "habits.home_by",
        "habits.drive_at_most_minutes",
        "habits.rest_minutes",
        "habits.lunch",
        "habits.usual_delay_minutes",
    ),
)
WORTH = Section(
    "worth",
    "household-the-worth",
    questions(Worth, under="worth"),
    "household-lead-worth",
    ("worth.lost_nap_hour", "worth.full_house", "worth.hour_in_car", "worth.hour_early_departure"),
)
_HOME = ("name", "currency", "units", "language", "invented")
RESERVE = Section(
    "reserve",
    "household-the-reserve",
    questions(Household, leaving_out=(*_HOME, "usual_weather"), plain=True),
)
WEATHER = Section(
    "usual_weather",
    "household-the-weather",
    questions(Household, "usual_weather"),
    "household-lead-weather",
)
SECTIONS = (FOOD, HABITS, WORTH, RESERVE, WEATHER)
_CAR = questions(Car, under="car")
_CAR_FRONT = tuple(f"car.{name}" for name in ("name", "seats", "fuel", "consumption", "rate", "fuel_price"))
_REST = {
    "stretch": ADVISED_STRETCH_MINUTES,
    "rest": ADVISED_REST_MINUTES,
    "small": SMALL_CHILD_STRETCH_MINUTES,
}
RATES = (Fuel.RATE_PER_MILE, Fuel.RATE_PER_KM)


def section_form(view: View, kept: StoredDocument[Household], section: Section) -> None:
    """A section of plain fields, saved together."""
    if section.lead:
        st.caption(plain(say(section.lead, **_REST)))
    form = form_for(section.name, section.asked, kept.value, Setting(country=kept.value.home.country))
    with form_box(form.fields, border=False):
        form.draw(*section.front)
        behind = tuple(one.name for one in section.asked if section.front and one.name not in section.front)
        more = fold(say("household-more"), f"open_more_{section.name}") if behind else None
        if more is not None:
            with more:
                form.draw(*behind)
        st.caption(say("household-usual-figure"))
        save_button(
            form.fields,
            say("household-save", what=say(section.called)),
            key=f"save_{section.name}",
            on_click=_save_section,
            args=(view, kept, form),
        )


def _save_section(view: View, kept: StoredDocument[Household], form: Form) -> None:
    raw = raw_household(kept.value)
    check_and_save(view, form.name, kept.revision, raw, form.put(raw))


def home_form(view: View, kept: StoredDocument[Household]) -> None:
    """Name, home, currency, units and language."""
    household = kept.value
    asked = questions(Household, *_HOME)
    form = form_for("home", asked, household, also=where_on_record(household.home))
    with form_box(form.fields, border=False):
        form.draw("name")
        where_inputs(form.fields, with_address=True, with_metropolitan=True)
        form.draw("currency", "units", "language", "invented")
        save_button(
            form.fields,
            say("household-save", what=say("household-the-home")),
            key="save_home",
            on_click=_save_home,
            args=(view, kept, form),
        )
    where_lookup(view, form.fields)


def _save_home(view: View, kept: StoredDocument[Household], form: Form) -> None:
    raw = raw_household(kept.value)
    raw["home"], found = where_values(form.fields.typed(), kept.value.home, "home")
    check_and_save(view, "home", kept.revision, raw, [*found, *form.put(raw)])


def car_form(view: View, kept: StoredDocument[Household]) -> None:
    """The car and what driving it costs; no car at all where the box is not ticked."""
    household = kept.value
    has = household.car is not None
    form = form_for(
        "car",
        _CAR,
        household,
        Setting(country=household.home.country),
        also={"has": has},
    )
    with form_box(form.fields, border=False):
        st.checkbox(say("household-go-by-car"), key=form.fields.key("has"))
        form.draw(*_CAR_FRONT)
        more = fold(say("household-more"), "open_more_car")
        if more is not None:
            with more:
                form.draw(*(one.name for one in _CAR if one.name not in _CAR_FRONT))
        st.caption(say("household-usual-figure"))
        save_button(
            form.fields,
            say("household-save", what=say("household-the-car")),
            key="save_car",
            on_click=_save_car,
            args=(view, kept, form),
        )


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
