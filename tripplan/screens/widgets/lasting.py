"""Choices and half-written forms that last: over a reload, a locked phone, in another window, a restart."""

from collections.abc import Mapping
from datetime import date
from pathlib import Path

import streamlit as st

from tripplan.records.unsaved.as_text import Unsaved
from tripplan.records.unsaved.unsaved_file import UnsavedFile
from tripplan.screens.widgets.view import View

_BESIDE, _TODAY, _NAMES = "lasting_beside", "lasting_today", "lasting_names"
FILLED, TYPED = "filled_", "typed_"
"""How the names begin under which a form is kept: as it was on record, and as it was typed."""


def bring_back(view: View) -> None:
    """Bring back what was chosen and typed, in a new window or where another family's records are shown now.

    What was chosen of one family is never shown of another.
    """
    state, path = st.session_state, str(view.records.database.path)
    state[_TODAY] = view.today
    if state.get(_BESIDE) == path:
        return
    if _BESIDE in state:
        forms = [name for name in map(str, state) if name.startswith((FILLED, TYPED))]
        for name in {*state[_NAMES], *forms}:
            state.pop(name, None)
    kept = UnsavedFile(Path(path)).all(view.today)
    state[_BESIDE], state[_NAMES] = path, list(kept)
    for name, value in kept.items():
        state.setdefault(name, value)


def let_last(values: Mapping[str, Unsaved]) -> None:
    """Keep values in the window's memory and beyond it, each under its name there."""
    st.session_state.update(values)
    if _BESIDE in st.session_state:
        file, today = _file()
        file.keep(values, today)
        st.session_state[_NAMES] = list({*st.session_state[_NAMES], *values})


def let_go(*names: str) -> None:
    """Drop what was kept under some names."""
    for name in names:
        st.session_state.pop(name, None)
    lasting = set(names) & set(st.session_state.get(_NAMES, ()))
    if lasting:
        _file()[0].drop(lasting)
        st.session_state[_NAMES] = [name for name in st.session_state[_NAMES] if name not in lasting]


def let_go_of_all() -> None:
    """Drop everything that is chosen and half written; its file is gone already."""
    let_go(*st.session_state[_NAMES])


def _file() -> tuple[UnsavedFile, date]:
    return UnsavedFile(Path(st.session_state[_BESIDE])), st.session_state[_TODAY]
