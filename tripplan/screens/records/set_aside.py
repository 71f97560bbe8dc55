"""What cannot be read as it was saved: what is wrong with it, and what can take its place."""

import streamlit as st

from tripplan.documents.model import Written
from tripplan.language import wording
from tripplan.records.damage.rebuild import damaged_files, remove_damaged_files
from tripplan.records.damage.set_aside import SetAside
from tripplan.records.kinds import MODELS
from tripplan.records.restoring import earlier_state
from tripplan.screens.records.whole_file import PAGE
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.notices import tell
from tripplan.screens.widgets.saving import report_errors, save_all
from tripplan.screens.widgets.view import View


def what_is_set_aside(view: View) -> None:
    """Name each record of which not all can be read, with a way on; draws nothing where there is none."""
    asides = view.records.set_aside()
    files = damaged_files(view.records.database.path)
    if asides:
        st.header("What cannot be read", anchor=False)
        st.caption("Everything else is as you saved it.")
    for number, aside in enumerate(asides):
        with st.container(border=True, key=f"aside_{number}"):
            _one(view, number, aside)
    if files:
        st.caption(plain(f"Kept from a damage: {wording.listed([str(file) for file in files])}."))
        st.button(
            "Remove what is kept from a damage",
            key="remove_damaged_files",
            on_click=_remove_files,
            args=(view,),
        )


def _one(view: View, number: int, aside: SetAside) -> None:
    st.markdown(plain(f"{aside.called}: {aside.why}."))
    with st.container(horizontal=True, key=f"aside_ways_{number}"):
        if aside.is_used:
            st.button(
                plain(f"Keep {aside.called} without that"),
                key=f"aside_keep_{number}",
                on_click=_keep_without,
                args=(view, aside),
            )
            return
        earlier = earlier_state(view.records, aside)
        if earlier is not None:
            day = wording.day(earlier.saved_at.date())
            st.button(
                plain(f"Use {aside.called} as it was saved on {day}"),
                key=f"aside_earlier_{number}",
                on_click=_use,
                args=(view, earlier.value, f"{aside.called} is as it was saved on {day}."),
            )
        st.button(
            plain(f"Do without {aside.called}"),
            key=f"aside_let_go_{number}",
            on_click=_let_go,
            args=(view, aside),
        )


def _use(view: View, value: Written, said: str) -> None:
    save_all(view, PAGE, [(value, 0)], said)


def _keep_without(view: View, aside: SetAside) -> None:
    kept = view.records.get(MODELS[aside.kind], aside.key)
    if kept is not None:
        save_all(view, PAGE, [(kept.value, kept.revision)], f"{aside.called} is kept without what was wrong.")


def _let_go(view: View, aside: SetAside) -> None:
    with report_errors(PAGE):
        said = f"{aside.called} is off the records."
        with view.records.change(view.services.clock(), said) as change:
            change.let_go(aside.kind, aside.key)
        tell(PAGE, said)


def _remove_files(view: View) -> None:
    with report_errors(PAGE):
        remove_damaged_files(view.records.database.path)
        tell(PAGE, "What was kept from a damage is removed.")
