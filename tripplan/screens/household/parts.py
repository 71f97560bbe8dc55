"""A card of the household: its facts, and for each part of it a press that opens the form."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

import streamlit as st

from tripplan.language.sentences import say
from tripplan.screens.household.saving import PAGE
from tripplan.screens.widgets.notices import show_notice
from tripplan.screens.widgets.one_open import opener, part_if_open
from tripplan.screens.widgets.view import View


@dataclass(frozen=True)
class Part:
    """What one press opens.

    Attributes:
        name: names the form, and where its notices are told.
        about: what it is about, as a button says it.
        draw: draws the form.
        label: what the button says; 'Change' and what it is about where that is left out.
    """

    name: str
    about: str
    draw: Callable[[], None]
    label: str = ""


def card(view: View, name: str, face: str, parts: Sequence[Part]) -> None:
    """Draw a card with its parts, of which the open one is drawn.

    Args:
        view: whose household.
        name: names the card.
        face: its inside, of the parts that `look.cards` makes.
        parts: what can be changed.
    """
    with st.container(border=True, key=f"card_{name}"):
        if face:
            st.html(face)
        with st.container(horizontal=True, gap="small"):
            for part in parts:
                label = part.label or say("household-change", what=part.about)
                opener(view, PAGE, part.name, label, about=part.about)
        for part in parts:
            where = part_if_open(view, PAGE, part.name)
            if where is None:
                show_notice(part.name)
                continue
            with where:
                part.draw()
