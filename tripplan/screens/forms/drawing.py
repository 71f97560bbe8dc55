"""The widgets of a form's fields."""

from collections.abc import Mapping, Sequence
from typing import Any, Literal

import streamlit as st
from streamlit.delta_generator import DeltaGenerator

from tripplan.documents.field_spec import Control
from tripplan.language import wording
from tripplan.language.sentences import say
from tripplan.screens.forms.answers import rows_in
from tripplan.screens.forms.faults import tell_faults_at
from tripplan.screens.forms.questions import Question, Setting
from tripplan.screens.widgets.fields import CLOCK_STEP, Fields
from tripplan.screens.widgets.markdown import plain

Slots = dict[str, DeltaGenerator]
"""Where a fault is told, by the name of the question that it stands beside."""


def draw(
    fields: Fields,
    listed: Sequence[Question],
    setting: Setting,
    examples: Mapping[str, str] | None = None,
) -> Slots:
    """Draw the fields of some questions; those of a fixed width stand side by side as far as there is room.

    Args:
        fields: filled with what is on record.
        listed: the questions.
        setting: the family's units and words.
        examples: what stands in an empty field, where that is not always the same, by the field's name.
    """
    slots: Slots = {}
    line: DeltaGenerator | None = None
    for question in listed:
        if question.control in (Control.PART, Control.ROWS):
            line = None
            group = _draw_part if question.control is Control.PART else _draw_rows
            group(fields, question, setting)
        else:
            beside = question.asked.width is not None
            if not beside:
                line = None
            elif line is None:
                line = st.container(horizontal=True, vertical_alignment="bottom")
            example = (examples or {}).get(question.name, "")
            with line or st.container():
                _draw_one(fields.key(question.name), question, setting, example=example)
        slots[question.name] = st.container()
        tell_faults_at(fields, question.name, question.path, slots[question.name])
    return slots


def _draw_part(fields: Fields, question: Question, setting: Setting) -> None:
    asked = question.asked.spoken()
    if st.checkbox(asked.label, key=fields.key(question.name), help=asked.help or None):
        with st.container(horizontal=True, vertical_alignment="bottom"):
            for inner in question.inner:
                _draw_one(fields.key(f"{question.name}.{inner.name}"), inner, setting)


def _draw_rows(fields: Fields, question: Question, setting: Setting) -> None:
    """A list that entries are ticked out of stands one below the other; a short one is a table of fields."""
    count = rows_in(question, fields.names)
    asked = question.asked.spoken()
    label = asked.label
    if question.leave_out:
        for index in range(count):
            st.divider()
            for inner in question.inner:
                key = fields.key(question.of_entry(index, inner.name))
                _draw_one(key, inner, setting, before=f"{label} {index + 1}: ")
            gone = fields.key(question.of_entry(index, "gone"))
            st.checkbox(f"{label} {index + 1}: {say(question.leave_out)}", key=gone)
        return
    st.markdown(f"{plain(label)}:", help=asked.help or None)
    for index in range(count):
        with st.container(horizontal=True, vertical_alignment="bottom"):
            for inner in question.inner:
                _draw_one(fields.key(question.of_entry(index, inner.name)), inner, setting, headed=index == 0)


def _draw_one(
    key: str,
    question: Question,
    setting: Setting,
    *,
    before: str = "",
    headed: bool = True,
    example: str = "",
) -> None:
    asked = question.asked.spoken()
    label = f"{before}{asked.label_in(setting.units, setting.currency)}"
    help_ = asked.help or None
    width: int | Literal["stretch"] = asked.width or "stretch"
    seen: Literal["visible", "collapsed"] = "visible" if headed else "collapsed"
    example = example or asked.example or ("" if headed else label)
    match question.control:
        case Control.TICK:
            st.checkbox(label, key=key, help=help_)
        case Control.NOTE | Control.LINES:
            st.text_area(label, key=key, help=help_, placeholder=example, height="content")
        case Control.CLOCK:
            st.time_input(
                label, key=key, help=help_, step=CLOCK_STEP, format=wording.clock_field(), width=width
            )
        case Control.DAY:
            st.date_input(label, value=None, key=key, help=help_, format=wording.date_field(), width=width)
        case Control.CHOICE:
            words = _words(question, setting, st.session_state[key])
            st.selectbox(
                label,
                list(words),
                format_func=words.__getitem__,
                key=key,
                help=help_,
                label_visibility=seen,
                width=width,
            )
        case Control.RADIO:
            words = _words(question, setting)
            st.radio(label, list(words), format_func=words.__getitem__, key=key, help=help_)
        case Control.PILLS:
            words = _words(question, setting)
            st.pills(label, list(words), format_func=words.__getitem__, key=key, help=help_)
        case Control.SOME:
            words = _words(question, setting, *st.session_state[key])
            st.pills(
                label,
                list(words),
                selection_mode="multi",
                format_func=words.__getitem__,
                key=key,
                help=help_,
            )
        case Control.WORDS | Control.OWN_WORDS:
            words = _words(question, setting, *st.session_state[key])
            st.multiselect(
                label,
                list(words),
                format_func=words.__getitem__,
                key=key,
                help=help_,
                accept_new_options=question.control is Control.OWN_WORDS,
                placeholder=example or "none",
            )
        case _:
            st.text_input(
                label, key=key, help=help_, placeholder=example or None, label_visibility=seen, width=width
            )


def _words(question: Question, setting: Setting, *now: object) -> dict[Any, str]:
    """What can be picked, in words: what is always or by the family offered, and what is picked now."""
    asked = question.asked.spoken()
    words: dict[Any, str] = {**asked.words} or {**setting.offered.get(asked.offered, {})}
    for one in now:
        words.setdefault(one, str(one) or "none")
    return words
