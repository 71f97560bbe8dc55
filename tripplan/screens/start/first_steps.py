"""The first start: who, where, first idea; each step leads on to the next, and the demo is one press away."""

import streamlit as st

from tripplan.language.sentences import say
from tripplan.screens.household.first_household import first_form
from tripplan.screens.look import cards
from tripplan.screens.places.adding.front_door import add_place
from tripplan.screens.widgets.view import View

_STEPS = ("start-step-who", "start-step-where", "start-step-idea")


def render_first_steps(view: View) -> None:
    """Ask for what is missing next: the family and its home, then a place to go.

    Args:
        view: whose records; without a household or without a place.
    """
    family = view.family
    st.title(say("start-three-steps"), anchor=False)
    done = 0 if family is None else 2
    marks = [
        f"{'✓' if number <= done else number} {say(step)}" for number, step in enumerate(_STEPS, start=1)
    ]
    st.html(cards.face(cards.small("   ·   ".join(marks))))
    if family is None:
        first_form(view)
    else:
        add_place(view, family, {})
