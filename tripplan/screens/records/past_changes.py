"""What was changed, the newest first: each change told field by field, and taken back by one press."""

import streamlit as st

from tripplan.documents.model import Written
from tripplan.language import wording
from tripplan.records.history import Edit, PastChange
from tripplan.records.kinds import MODELS
from tripplan.records.merging.differences import differences
from tripplan.records.reading import read_document
from tripplan.screens.records.whole_file import PAGE
from tripplan.screens.widgets.markdown import bullets, plain
from tripplan.screens.widgets.saving import take_back
from tripplan.screens.widgets.view import View

_AT_FIRST = 10
_MORE = 30
_DOCUMENTS_TOLD = 12
_SAYS_LITTLE = ("", "Saved.")


def past_changes(view: View) -> None:
    """List what was changed lately, each with a button that takes it back."""
    st.header("What was changed", anchor=False)
    shown = st.session_state.setdefault("changes_shown", _AT_FIRST)
    changes = view.records.past_changes(shown + 1)
    if not changes:
        st.info("Nothing was entered yet.")
    for change in changes[:shown]:
        _one(view, change)
    if len(changes) > shown:
        st.button("Show older ones", key="older_changes", on_click=_show_more)


def _show_more() -> None:
    st.session_state["changes_shown"] += _MORE


def _one(view: View, change: PastChange) -> None:
    zone = view.family.household.home.zone if view.family else None
    at = change.saved_at.astimezone(zone)
    said = f"Changed: {wording.listed(_called(change))}." if change.said in _SAYS_LITTLE else change.said
    with st.expander(
        plain(f"{wording.day(at.date())}, {wording.clock(at)}: {said}"), key=f"open_change_{change.number}"
    ):
        for edit in change.edits[:_DOCUMENTS_TOLD]:
            st.markdown(plain(f"{edit.called}:"))
            st.markdown(bullets(told(edit)))
        left = len(change.edits) - _DOCUMENTS_TOLD
        if left > 0:
            st.caption(f"And {left} more.")
        st.button(
            "Take this back",
            key=f"take_back_change_{change.number}",
            disabled=not change.stands,
            on_click=take_back,
            args=(view, PAGE, change.number, said),
        )
        if not change.stands:
            st.caption("It was changed again since, or is taken back already.")


def _called(change: PastChange) -> list[str]:
    names = [edit.called for edit in change.edits]
    return names if len(names) <= _DOCUMENTS_TOLD else [*names[:3], f"{len(names) - 3} more"]


def told(edit: Edit) -> list[str]:
    """What a change did to one document, one sentence a field.

    Args:
        edit: the document before and after.
    """
    if edit.before is None:
        return ["new"]
    if edit.after is None:
        return ["removed"]
    before, after = _read(edit.kind, edit.before), _read(edit.kind, edit.after)
    if before is None or after is None:
        return ["changed; this version of tripplan cannot read what it was"]
    found = differences(before, after)
    return [f"{one.field}: from {one.before} to {one.after}" for one in found] or ["only the order changed"]


def _read(kind: str, body: str) -> Written | None:
    return read_document(MODELS[kind], body).value if kind in MODELS else None
