"""A save that met another window's: kept as it was typed until the parent has chosen."""

from dataclasses import dataclass

import streamlit as st

from tripplan.documents.model import Written
from tripplan.records.opening import Which

_STATE = "held_back"


@dataclass(frozen=True)
class PendingSave:
    """Documents that were not saved, because one of them was changed elsewhere meanwhile.

    Attributes:
        which: whose records they belong to.
        spot: the form or page they come from.
        values: each with the revision it was made from; 0 for a new one.
        said: the sentence for when they are saved.
    """

    which: Which
    spot: str
    values: tuple[tuple[Written, int], ...]
    said: str


def keep_pending(held: PendingSave) -> None:
    """Keep what could not be saved; a later one takes its place."""
    st.session_state[_STATE] = held


def pending_save(which: Which) -> PendingSave | None:
    """What waits for the parent's choice, if anything does."""
    held = st.session_state.get(_STATE)
    return held if isinstance(held, PendingSave) and held.which is which else None


def is_held_back(spot: str) -> bool:
    """Whether what was typed into a form waits, so that the form goes on showing it."""
    held = st.session_state.get(_STATE)
    return isinstance(held, PendingSave) and held.spot == spot


def discard_pending() -> None:
    """The parent has chosen."""
    st.session_state.pop(_STATE, None)
