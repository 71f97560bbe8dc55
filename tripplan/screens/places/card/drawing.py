"""The fields of a card as they stand on the page: one form for a new card and for one on record."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date

import streamlit as st
from streamlit.delta_generator import DeltaGenerator

from tripplan.documents.places.place import Place
from tripplan.planning.family.family import Family
from tripplan.screens.places.card.fields import (
    CHILDREN,
    CONTACT,
    CROWD,
    ENTRY,
    HOURS,
    HOURS_EXAMPLES,
    MONTHS,
    NAME,
    VISIT,
    CardField,
    How,
)
from tripplan.screens.places.card.values import on_record
from tripplan.screens.places.card.visit_fields import FIRST_VISIT_FIELDS, visit_inputs
from tripplan.screens.places.place_sentences import coming_days_sentences
from tripplan.screens.widgets.fields import Fields, filled
from tripplan.screens.widgets.frame import View
from tripplan.screens.widgets.markdown import bullets
from tripplan.screens.widgets.where_form import where_inputs
from tripplan.screens.widgets.where_lookup import where_lookup


@dataclass(frozen=True)
class DrawnCard:
    """The fields as they stand on the page.

    Attributes:
        fields: the fields.
        slots: where a fault is told, by the name of the field that it stands beside.
        preview: where the hours are told in words.
    """

    fields: Fields
    slots: Mapping[str, DeltaGenerator]
    preview: DeltaGenerator


def draw_card(view: View, spot: str, place: Place | None, currency: str) -> DrawnCard:
    """Draw the fields; what is typed outlives a look at another page.

    Args:
        view: whose records keep what was looked up.
        spot: names the form.
        place: the card on record; None for a new one.
        currency: ISO 4217 code, for a new card's prices.
    """
    fields = filled(spot, on_record(place, currency))
    slots: dict[str, DeltaGenerator] = {}

    def draw(*listed: CardField) -> None:
        for field in listed:
            _input(fields.key(field.name), field)
            slots[field.name] = st.container()

    draw(NAME)
    where_inputs(fields, with_address=True, with_metropolitan=True)
    slots["where"] = st.container()
    where_lookup(view, fields)
    st.markdown("**When it is open**")
    draw(HOURS)
    preview = st.container()
    with st.expander("How hours are written", key=f"{spot}_hours_written"):
        st.markdown("\n".join(f"- `{written}` {meant}" for written, meant in HOURS_EXAMPLES))
    draw(*ENTRY)
    st.markdown("**What a visit is like**")
    draw(*VISIT, *CHILDREN)
    visit_inputs(fields)
    slots |= {name: st.container() for name in FIRST_VISIT_FIELDS}
    st.markdown("**What fills it**")
    draw(*CROWD)
    st.markdown("**Whom to ask, and the rest**")
    draw(*CONTACT)
    fields.remember()
    return DrawnCard(fields, slots, preview)


def _input(key: str, field: CardField) -> None:
    explained = field.explained or None
    if field.how is How.TICK:
        st.checkbox(field.label, key=key, help=explained)
    elif field.how is How.CHOICE:
        words = dict(field.choices)
        st.selectbox(field.label, list(words), format_func=words.__getitem__, key=key, help=explained)
    elif field.how is How.MONTHS:
        st.multiselect(field.label, MONTHS, key=key, help=explained)
    elif field.how in (How.LINES, How.SPECIAL_DAYS, How.NOTE):
        st.text_area(field.label, key=key, help=explained, placeholder=field.example, height="content")
    else:
        st.text_input(field.label, key=key, help=explained, placeholder=field.example)


def show_hours(drawn: DrawnCard, family: Family, place: Place, today: date) -> None:
    """Say below the hours what they mean for the next days.

    Args:
        drawn: the fields.
        family: with school calendars and local days, for hours that differ on them.
        place: the card as it was read.
        today: the first of those days.
    """
    said = coming_days_sentences(place, family.school_calendars, today, family.local_days)
    drawn.preview.markdown(bullets(said))
