"""The fields of a card as they stand on the page: one form for a new card and for one on record."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date

import streamlit as st
from streamlit.delta_generator import DeltaGenerator

from tripplan.documents.places.place import Place
from tripplan.planning.family.family import Family
from tripplan.screens.forms.drawing import Slots, draw
from tripplan.screens.forms.form import with_waiting
from tripplan.screens.forms.questions import Question, Setting
from tripplan.screens.places.card.fields import (
    CARD,
    CROWD,
    ENTRY,
    HOURS,
    HOURS_EXAMPLES,
    NAME,
    RARE,
    REST,
    VISIT,
)
from tripplan.screens.places.card.values import on_record
from tripplan.screens.places.place_sentences import coming_days_sentences
from tripplan.screens.widgets.fields import Fields, FieldValue, filled
from tripplan.screens.widgets.locations.where_form import where_inputs
from tripplan.screens.widgets.locations.where_lookup import where_lookup
from tripplan.screens.widgets.markdown import bullets
from tripplan.screens.widgets.view import View


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


def draw_card(
    view: View,
    spot: str,
    place: Place | None,
    currency: str,
    suggested: Mapping[str, FieldValue] | None = None,
    *,
    folded: bool = False,
) -> DrawnCard:
    """Draw the fields; what is typed outlives a look at another page.

    Args:
        view: whose records keep what was looked up.
        spot: names the form.
        place: the card on record; None for a new one.
        currency: ISO 4217 code, for a new card's prices.
        suggested: what the fields say at first, where that is not what is usual.
        folded: whether only name and location are in sight.
    """
    setting = Setting()
    at_first = {**on_record(place, currency), **(suggested or {})}
    fields = filled(spot, with_waiting(spot, CARD, at_first, setting))
    slots: Slots = {}

    def ask(listed: tuple[Question, ...]) -> None:
        slots.update(draw(fields, listed, setting))

    ask(NAME)
    if folded:
        st.text_input("Town or address", key=fields.key("where"), placeholder="12 Mill St, Galena, IL")
        slots["where"] = st.container()
        preview = st.container()
        return DrawnCard(fields, slots, preview)
    where_inputs(fields, with_address=True, with_metropolitan=True)
    slots["where"] = st.container()
    where_lookup(view, fields)
    st.markdown("**When it is open**")
    ask(HOURS)
    preview = st.container()
    with st.expander("How hours are written", key=f"{spot}_hours_written"):
        st.markdown("\n".join(f"- `{written}` {meant}" for written, meant in HOURS_EXAMPLES))
    ask(ENTRY)
    st.markdown("**What a visit is like**")
    ask(VISIT)
    with st.expander("Shows, quiet hours, stays by age"):
        ask(RARE)
    st.markdown("**Crowds**")
    ask(CROWD)
    st.markdown("**Contact and notes**")
    ask(REST)
    return DrawnCard(fields, slots, preview)


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
