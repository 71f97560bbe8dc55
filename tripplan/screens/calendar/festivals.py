"""Public holidays at home and the places, long weekends, and the festival days that the parent adds."""

from collections.abc import Iterator
from datetime import date

import pandas as pd
import streamlit as st

from tripplan.documents.calendars.local_days import LocalDay, LocalDays
from tripplan.documents.field_spec import asked
from tripplan.documents.where import Where
from tripplan.errors import Finding
from tripplan.files.locations.gazetteer import NotFound
from tripplan.files.locations.where_text import locate_text
from tripplan.files.toml.toml_text import write_toml
from tripplan.files.toml.written import read_form
from tripplan.language import wording
from tripplan.language.sentences import say
from tripplan.planning.family.family import Family
from tripplan.planning.holidays.coming_holidays import coming_holidays, holiday_source_sentences
from tripplan.planning.holidays.local_days import local_day_sentence
from tripplan.planning.outing.sentences import span_sentence
from tripplan.records.store import StoredDocument
from tripplan.screens.forms.answers import Raw
from tripplan.screens.forms.form import Form, form_for
from tripplan.screens.forms.form_box import form_box, save_button
from tripplan.screens.forms.questions import Setting, questions
from tripplan.screens.forms.words import in_words
from tripplan.screens.look.folds import fold
from tripplan.screens.widgets.choices import place_names
from tripplan.screens.widgets.fields import FieldValue, refill
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.notices import refuse
from tripplan.screens.widgets.saving import save_all
from tripplan.screens.widgets.view import View

_PAGE = "calendar"
_FORM = "festival"
_A_TOWN = ""
_REACH = {"mi": "15", "km": "25"}
"""What is usually taken to be near a town, in the household's unit."""
_BEFORE_TOWN = ("name", "first", "last", "every_year", "place")


def festivals(view: View, family: Family) -> None:
    """The year's public holidays, and a short list of local days to add to and take from."""
    part = fold(say("calendar-holidays"), "open_holidays")
    if part is not None:
        with part:
            rows = list(_holiday_rows(family, view.today))
            if rows:
                st.dataframe(pd.DataFrame(rows), hide_index=True)
            else:
                st.caption(say("calendar-no-holidays"))
            places = [place.where for place in family.places]
            st.caption(plain(" ".join(holiday_source_sentences(family.household.home, places))))
    kept = view.records.get(LocalDays)
    days = kept.value.days if kept else ()
    part = fold(
        say("calendar-fairs-listed", days=len(days)) if days else say("calendar-fairs"), "open_festival"
    )
    if part is None:
        return
    with part:
        st.caption(say("calendar-fairs-lead"))
        _listed(view, family, kept, days)
        _form(view, family, kept)


def _listed(
    view: View, family: Family, kept: StoredDocument[LocalDays] | None, days: tuple[LocalDay, ...]
) -> None:
    names = place_names(family)
    for number, local in enumerate(days):
        st.markdown(plain(local_day_sentence(local, names, family.household.units)))
        st.button(
            plain(say("calendar-remove-named", name=local.name)),
            key=f"remove_festival_{number}",
            on_click=_save,
            args=(
                view,
                kept,
                (*days[:number], *days[number + 1 :]),
                say("calendar-is-removed", name=local.name),
            ),
        )


def _holiday_rows(family: Family, today: date) -> Iterator[dict[str, str]]:
    """A row for each public holiday and bridge day, with where it is one and the days off in a row."""
    places = (place.where for place in family.places)
    for one in coming_holidays(family.household.home, places, today):
        yield {
            say("calendar-column-day"): wording.day(one.day),
            say("calendar-column-holiday"): one.name,
            say("calendar-column-where"): ", ".join(one.where),
            say("calendar-column-row"): span_sentence(one.row) if one.row else "",
        }


def _form(view: View, family: Family, kept: StoredDocument[LocalDays] | None) -> None:
    units = family.household.units
    spots = {_A_TOWN: say("calendar-around-town"), **{str(place.id): place.name for place in family.places}}
    also: dict[str, FieldValue] = {
        "first": view.today,
        "last": view.today,
        "town": "",
        "reach_km": _REACH[units],
    }
    setting = Setting(units, offered={"places": spots})
    form = form_for(_FORM, questions(LocalDay, plain=True), None, setting, also=also)
    with form_box(form.fields):
        form.draw(*_BEFORE_TOWN)
        town = asked(LocalDay, "town").spoken()
        st.text_input(town.label, key=form.fields.key("town"), help=town.help)
        form.draw(*(one.name for one in form.listed if one.name not in _BEFORE_TOWN))
        save_button(
            form.fields,
            say("calendar-add-day"),
            key="save_festival",
            on_click=_add,
            args=(view, family, kept, form),
        )


def _add(view: View, family: Family, kept: StoredDocument[LocalDays] | None, form: Form) -> None:
    typed = form.fields.typed()
    raw: Raw = {}
    found = form.put(raw)
    if typed["last"] == view.today and typed["first"]:  # left as it was
        raw["last"] = typed["first"]
    if not typed["place"]:
        town = _town(str(typed["town"]), family.household.home)
        if isinstance(town, str):
            found.append(Finding("", "town", str(typed["town"])[:60], town))
            # Stands for it, so that the other faults are told along with this one.
            town = family.household.home
        raw["town"] = town.model_dump(exclude_none=True)
    read = read_form(write_toml(raw), "", LocalDay)
    if read.value is None or found:
        refuse(_FORM, findings=in_words((*found, *read.findings), LocalDay, raw))
        return
    days = (*(kept.value.days if kept else ()), read.value)
    _save(view, kept, days, say("calendar-is-added", name=read.value.name))
    refill(_FORM)


def _town(text: str, home: Where) -> Where | str:
    """Where a town lies, or why it cannot be said."""
    if not text.strip():
        return say("calendar-name-a-town")
    try:
        found = locate_text(text, home)
    except ValueError as trouble:
        return str(trouble)
    return found.message if isinstance(found, NotFound) else found


def _save(view: View, kept: StoredDocument[LocalDays] | None, days: tuple[LocalDay, ...], said: str) -> None:
    save_all(view, _PAGE, [(LocalDays(days=days), kept.revision if kept else 0)], said)
