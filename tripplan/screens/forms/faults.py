"""The faults of a form that could not be saved, each told again at the field that it is about."""

import re
from collections.abc import Sequence
from dataclasses import dataclass, field, replace

import streamlit as st
from streamlit.delta_generator import DeltaGenerator

from tripplan.errors import Finding
from tripplan.screens.widgets.fields import Fields
from tripplan.screens.widgets.notices import show_beside

_INDEX = re.compile(r"\[\d+\]")


@dataclass
class _Kept:
    """What a form was refused for.

    Attributes:
        found: the path and the finding in the parent's words.
        typed: what stood in the fields of a question when its fault was first told, by the question's name.
    """

    found: Sequence[tuple[str, Finding]]
    typed: dict[str, object] = field(default_factory=dict)


def keep_faults(form: str, findings: Sequence[Finding], told: Sequence[Finding]) -> None:
    """Tell faults at their fields from now on.

    Args:
        form: names the form.
        findings: with their paths.
        told: the same in the parent's words.
    """
    paths = (_INDEX.sub("", finding.field) for finding in findings)
    st.session_state[_key(form)] = _Kept(tuple(zip(paths, told, strict=True)))


def forget_faults(form: str) -> None:
    """Tell none any more."""
    st.session_state.pop(_key(form), None)


def tell_faults_at(fields: Fields, name: str, path: str = "", slot: DeltaGenerator | None = None) -> None:
    """Tell at a field what it was refused for; nothing once something else is typed there.

    Args:
        fields: of the form.
        name: of the field; of several, what their names begin with.
        path: where it stands in its document, with dots; as it is named when left out.
        slot: where to tell it; here when left out.
    """
    kept = st.session_state.get(_key(fields.form))
    if not isinstance(kept, _Kept):
        return
    path = _INDEX.sub("", path or name)
    found = [replace(told, field="") for at, told in kept.found if f".{at}.".find(f".{path}.") >= 0]
    now = {one: value for one, value in fields.typed().items() if one.startswith(name)}
    if found and kept.typed.setdefault(name, now) == now:
        show_beside(slot or st.container(), found)


def _key(form: str) -> str:
    return f"{form}_faults"
