"""The frame of a form and its buttons; what is typed is kept field by field, as each is left."""

from collections.abc import Callable
from contextlib import AbstractContextManager
from typing import Any

import streamlit as st

from tripplan.screens.widgets.fields import Fields, refill
from tripplan.screens.widgets.notices import show_notice


def form_box(fields: Fields, *, border: bool = True) -> AbstractContextManager[Any]:
    """A frame around the fields of a form.

    Streamlit's own form hands nothing over before it is sent, so that a reload would lose what was typed.
    """
    return st.container(border=border, key=f"{fields.form}_form")


def save_button(
    fields: Fields,
    label: str,
    *,
    key: str,
    on_click: Callable[..., None],
    args: tuple[Any, ...],
    is_main: bool = True,
) -> None:
    """The button that saves a form, one that puts its fields back while something unsaved stands there.

    Below them stands what came of the last press.

    Args:
        fields: of the form.
        label: of the button.
        key: its key.
        on_click: what saves; called with `args`.
        args: its arguments.
        is_main: whether it is the filled one.
    """
    with st.container(horizontal=True, vertical_alignment="center"):
        st.button(label, key=key, type="primary" if is_main else "secondary", on_click=on_click, args=args)
        if fields.unsaved:
            st.button(
                "Start over",
                key=f"{fields.form}_start_over",
                type="tertiary",
                help="Empties what you typed here since you last saved.",
                on_click=refill,
                args=(fields.form,),
            )
    show_notice(fields.form)
