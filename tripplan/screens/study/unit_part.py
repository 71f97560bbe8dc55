"""The study units: what each is, which places fit it and why, and the forms to add and change one."""

from datetime import timedelta

import streamlit as st

from tripplan.documents.study.units import StudyUnit
from tripplan.planning.family.family import Family
from tripplan.planning.study.sentences import (
    close_sentence,
    fit_sentence,
    nowhere_sentences,
    unit_sentences,
)
from tripplan.planning.topic_fit import CloseSpelling, Fits, fits_of, topics_on
from tripplan.records.store import StoredDocument
from tripplan.screens.forms.answers import Raw
from tripplan.screens.forms.form import Form, form_for
from tripplan.screens.forms.form_box import form_box, save_button
from tripplan.screens.forms.questions import Setting, questions
from tripplan.screens.look.folds import fold
from tripplan.screens.study.saving import remove_unit, save_unit
from tripplan.screens.widgets.choices import place_names
from tripplan.screens.widgets.fields import FieldValue
from tripplan.screens.widgets.markdown import bullets, plain
from tripplan.screens.widgets.notices import show_notice
from tripplan.screens.widgets.view import View

_USUAL_WEEKS = timedelta(weeks=6)
_NEW = "new_unit"


def unit_box(view: View, family: Family, number: int, kept: StoredDocument[StudyUnit]) -> None:
    """One unit with the places that fit it, and what can be done about it."""
    unit = kept.value
    fits = fits_of(unit, family.places)
    with st.container(border=True, key=f"unit_{number}"):
        st.markdown(f"**{plain(unit.name)}**")
        st.markdown(plain(" ".join(unit_sentences(unit))))
        _places(fits)
        for turn, close in enumerate(fits.close):
            _close(view, kept, close, f"same_{number}_{turn}")
        part = fold("Change this unit", f"open_unit_{number}")
        if part is None:
            return
        with part:
            _form(view, family, f"unit_{number}", unit, kept.revision)
            show_notice(f"unit_{number}")
            st.button(
                "Remove this unit", key=f"remove_unit_{number}", on_click=remove_unit, args=(view, kept)
            )


def new_unit_form(view: View, family: Family, *, expanded: bool) -> None:
    """The form for one more unit."""
    with st.expander("Add a study unit", expanded=expanded, key=f"open_new_unit_{expanded}"):
        _form(view, family, _NEW, None, 0)
        show_notice(_NEW)


def _places(fits: Fits) -> None:
    lines = [*map(fit_sentence, fits.places), *nowhere_sentences(fits)]
    if not fits.places:
        lines.insert(0, "No place fits yet: no card names one of its topics.")
    st.markdown(bullets(lines))


def _close(view: View, kept: StoredDocument[StudyUnit], close: CloseSpelling, key: str) -> None:
    st.caption(plain(close_sentence(close)))
    st.button(
        plain(f"'{close.on_cards}' counts too"),
        key=key,
        on_click=_take_spelling,
        args=(view, kept, close),
    )


def _take_spelling(view: View, kept: StoredDocument[StudyUnit], close: CloseSpelling) -> None:
    """Put the cards' spelling in the place of the unit's own."""
    unit = kept.value
    topics = [close.on_cards if topic == close.topic else topic for topic in unit.topics]
    values = unit.model_dump(mode="json", exclude_none=True) | {"topics": topics}
    save_unit(view, "study_units", values, kept.revision)


def _form(view: View, family: Family, name: str, unit: StudyUnit | None, revision: int) -> None:
    people = [member.name for member in family.household.members]
    offered = {
        "topics": {topic: topic for topic in topics_on(family.places)},
        "people": {person: person for person in people},
        "places": place_names(family),
    }
    setting = Setting(currency=family.household.currency, offered=offered)
    first = view.today + timedelta(days=1)
    weeks: dict[str, FieldValue] = {} if unit else {"first": first, "last": view.today + _USUAL_WEEKS}
    asked = questions(StudyUnit, leaving_out=("name",) if unit else ())
    form = form_for(name, asked, unit, setting, also=weeks)
    with form_box(form.fields):
        form.draw()
        save_button(
            form.fields,
            "Save this unit" if unit else "Add this unit",
            key=f"save_{name}",
            on_click=_save,
            args=(view, form, unit, revision),
        )


def _save(view: View, form: Form, unit: StudyUnit | None, revision: int) -> None:
    raw: Raw = unit.model_dump(mode="json", exclude_none=True) if unit else {}
    raw["currency"] = form.setting.currency
    form.put(raw)
    save_unit(view, form.name, raw, revision)
