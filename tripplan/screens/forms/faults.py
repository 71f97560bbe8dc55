"""The faults of a form that could not be saved, each told again at the field that it is about."""

import re
from collections.abc import Sequence
from dataclasses import dataclass, field

import streamlit as st

from tripplan.errors import Finding
from tripplan.screens.forms.questions import Question
from tripplan.screens.widgets.fields import Fields

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


def faults_at(fields: Fields, question: Question) -> list[Finding]:
    """What is to be told at a question; nothing once something else is typed there."""
    kept = st.session_state.get(_key(fields.form))
    if not isinstance(kept, _Kept):
        return []
    path = _INDEX.sub("", question.path)
    found = [told for at, told in kept.found if f".{at}.".find(f".{path}.") >= 0]
    now = {name: value for name, value in fields.typed().items() if name.startswith(question.name)}
    return found if found and kept.typed.setdefault(question.name, now) == now else []


def _key(form: str) -> str:
    return f"{form}_faults"
