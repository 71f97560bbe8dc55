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
from tripplan.records.store import Kept
from tripplan.screens.study.saving import LABELS, remove_unit, save_unit
from tripplan.screens.widgets.choices import place_names
from tripplan.screens.widgets.fields import Fields, filled, refill
from tripplan.screens.widgets.frame import View
from tripplan.screens.widgets.markdown import bullets, plain
from tripplan.screens.widgets.notices import show_notice

_USUAL_WEEKS = timedelta(weeks=6)
_NEW = "new_unit"


def unit_box(view: View, family: Family, number: int, kept: Kept[StudyUnit]) -> None:
    """One unit with the places that fit it, and what can be done about it."""
    unit = kept.value
    fits = fits_of(unit, family.places)
    with st.container(border=True, key=f"unit_{number}"):
        st.markdown(f"**{plain(unit.name)}**")
        st.markdown(plain(" ".join(unit_sentences(unit))))
        _places(fits)
        for turn, close in enumerate(fits.close):
            _close(view, kept, close, f"same_{number}_{turn}")
        with st.expander("Change this unit", key=f"open_unit_{number}"):
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


def _close(view: View, kept: Kept[StudyUnit], close: CloseSpelling, key: str) -> None:
    st.caption(plain(close_sentence(close)))
    st.button(
        plain(f"'{close.on_cards}' counts too"),
        key=key,
        on_click=_take_spelling,
        args=(view, kept, close),
    )


def _take_spelling(view: View, kept: Kept[StudyUnit], close: CloseSpelling) -> None:
    """Put the cards' spelling in the place of the unit's own."""
    unit = kept.value
    topics = [close.on_cards if topic == close.topic else topic for topic in unit.topics]
    values = unit.model_dump(mode="python") | {"topics": topics}
    save_unit(view, "study_units", values, kept.revision)


def _form(view: View, family: Family, form: str, unit: StudyUnit | None, revision: int) -> None:
    currency = family.household.currency
    names = [member.name for member in family.household.members]
    fields = filled(
        form,
        {
            **({} if unit else {"name": ""}),
            "topics": list(unit.topics) if unit else [],
            "first": unit.first if unit else view.today + timedelta(days=1),
            "last": unit.last if unit else view.today + _USUAL_WEEKS,
            "budget": "" if unit is None or unit.budget is None else str(unit.budget),
            "members": [name for name in unit.members if name in names] if unit else [],
            "also_places": [p.id for p in family.places if unit and p.id in unit.also_places],
        },
    )
    with st.form(f"{form}_form"):
        if unit is None:
            st.text_input(LABELS["name"], key=fields.key("name"), placeholder="such as: From grain to bread")
        st.multiselect(
            LABELS["topics"],
            list(dict.fromkeys((*topics_on(family.places), *st.session_state[fields.key("topics")]))),
            accept_new_options=True,
            key=fields.key("topics"),
            placeholder="pick some, or type your own",
            help="The words that place cards use are listed; a place fits where its card names one of them.",
        )
        left, right = st.columns(2)
        left.date_input(LABELS["first"], key=fields.key("first"))
        right.date_input(LABELS["last"], key=fields.key("last"))
        st.text_input(
            f"{LABELS['budget']} for its outing, in {currency}",
            key=fields.key("budget"),
            help="Left empty, the unit has no limit of its own.",
        )
        st.pills(
            LABELS["members"],
            names,
            selection_mode="multi",
            key=fields.key("members"),
            help="With nobody picked it is for everybody. Pick the adults who come along, too.",
        )
        st.multiselect(
            LABELS["also_places"],
            [place.id for place in family.places],
            format_func=place_names(family).__getitem__,
            key=fields.key("also_places"),
            placeholder="none",
        )
        st.form_submit_button(
            "Save this unit" if unit else "Add this unit",
            key=f"save_{form}",
            type="primary",
            on_click=_save,
            args=(view, form, fields, unit, revision, currency),
        )


def _save(
    view: View, form: str, fields: Fields, unit: StudyUnit | None, revision: int, currency: str
) -> None:
    typed = fields.typed()
    values = {
        "name": unit.name if unit else typed["name"],
        "topics": typed["topics"],
        "first": typed["first"],
        "last": typed["last"],
        "currency": currency,
        "budget": typed["budget"].strip() or None,
        "members": typed["members"],
        "also_places": typed["also_places"],
    }
    if save_unit(view, form, values, revision):
        refill(form)
