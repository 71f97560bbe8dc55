"""The fields of a form: filled from what is on record, kept while the parent types, read when she saves."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, time, timedelta
from typing import Any

import streamlit as st

from tripplan.screens.widgets.lasting import FILLED, TYPED, let_go, let_last
from tripplan.screens.widgets.pending_save import is_held_back

CLOCK_STEP = timedelta(minutes=5)
"""How finely a time of day can be picked."""

NEVER_WRITTEN = frozenset({"password"})
"""Fields that are in the window's memory only."""

FieldValue = str | bool | int | date | time | list[Any] | None


@dataclass(frozen=True)
class Fields:
    """The fields of one form, each a widget with a key of its own.

    Attributes:
        form: names the form; part of every key.
        names: the fields.
    """

    form: str
    names: tuple[str, ...]

    def key(self, name: str) -> str:
        """The key of a field's widget."""
        return f"{self.form}_{name}"

    def typed(self) -> dict[str, Any]:
        """What stands in the fields now; to be called when the form is sent."""
        remembered = st.session_state.get(_remembered(self.form), {})
        return {name: st.session_state.get(self.key(name), remembered.get(name)) for name in self.names}

    @property
    def unsaved(self) -> bool:
        """Whether something stands in the fields that is not on record."""
        at_first = st.session_state[_mark(self.form)]
        return any(repr(value) != at_first[name] for name, value in self.typed().items())

    def remember(self) -> None:
        """Keep what stands in the fields; what is not on record also outlives the window."""
        state, typed = st.session_state, self.typed()
        if typed == state.get(_remembered(self.form)):
            return
        at_first = state[_mark(self.form)]
        if self.unsaved:
            written = {name: value for name, value in typed.items() if name not in NEVER_WRITTEN}
            let_last({_mark(self.form): at_first, _remembered(self.form): written})
        else:
            let_go(_mark(self.form), _remembered(self.form))
        state[_mark(self.form)], state[_remembered(self.form)] = at_first, typed


def remember_all() -> None:
    """Keep what stands in the fields of every form; as a page begins, for then all still stand there.

    What is typed last before another page is opened arrives together with that.
    """
    for name in [name for name in map(str, st.session_state) if name.startswith(FILLED)]:
        Fields(name.removeprefix(FILLED), tuple(st.session_state[name])).remember()


def filled(form: str, on_record: Mapping[str, FieldValue]) -> Fields:
    """The fields of a form; each is filled anew when its value on record has changed since it was filled.

    While what was typed is held back, because another window changed the same, the fields keep it.

    Args:
        form: names the form.
        on_record: what the fields say at first.
    """
    fields = Fields(form, tuple(on_record))
    before = st.session_state.get(_mark(form), {})
    now = {name: repr(value) for name, value in on_record.items()}
    if is_held_back(form) and before.keys() == now.keys():
        now = before
    remembered = st.session_state.get(_remembered(form), {})
    for name, value in on_record.items():
        if before.get(name) != now[name]:
            st.session_state[fields.key(name)] = value
        elif fields.key(name) not in st.session_state:
            # A widget's own state is dropped when its page is left, so it is filled where it is missing.
            st.session_state[fields.key(name)] = remembered.get(name, value)
    st.session_state[_mark(form)] = now
    fields.remember()
    return fields


def typed_now(form: str, name: str, at_first: object) -> object:
    """What stands in one field of a form now, also while it is not drawn; else what it says at first."""
    remembered = st.session_state.get(_remembered(form), {})
    return st.session_state.get(f"{form}_{name}", remembered.get(name, at_first))


def refill(form: str) -> None:
    """Fill a form anew at the next run, whatever was typed into it."""
    let_go(_mark(form), _remembered(form))


def _mark(form: str) -> str:
    return f"{FILLED}{form}"


def _remembered(form: str) -> str:
    return f"{TYPED}{form}"


def listed_in(text: str) -> list[str]:
    """The parts of a text with commas between them, without blanks and empty parts."""
    return [part.strip() for part in text.replace("\n", ",").split(",") if part.strip()]


def lines_in(text: str) -> list[str]:
    """The lines of a text, without empty ones."""
    return [line.strip() for line in text.splitlines() if line.strip()]


def put(values: dict[str, Any], path: str, value: object) -> None:
    """Set a value at a dotted path; an empty text takes the field out, so that its usual value counts."""
    *holders, name = path.split(".")
    for holder in holders:
        values = values.setdefault(holder, {})
    if isinstance(value, str) and not value.strip():
        values.pop(name, None)
    else:
        values[name] = value
