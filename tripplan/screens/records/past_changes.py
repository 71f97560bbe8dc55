"""What was changed, the newest first: each change field by field, and taken back by one press."""

from collections.abc import Mapping
from textwrap import shorten

import streamlit as st

from tripplan.documents.model import Written
from tripplan.documents.outings.planned import PlannedOuting
from tripplan.language import wording
from tripplan.language.sentences import say
from tripplan.records.history import Edit, PastChange
from tripplan.records.kinds import MODELS, kind_of
from tripplan.records.merging.differences import differences
from tripplan.records.reading import read_document
from tripplan.screens.look import cards
from tripplan.screens.records.whole_file import PAGE
from tripplan.screens.widgets.choices import place_names
from tripplan.screens.widgets.markdown import bullets, plain
from tripplan.screens.widgets.saving import take_back
from tripplan.screens.widgets.view import View

_AT_FIRST = 10
_MORE = 30
_DOCUMENTS_TOLD = 12
_LABEL = 60
"""So much of what was said stands on a button [characters]."""
_SAYS_LITTLE = ("", "Saved.")


def past_changes(view: View) -> None:
    """List what was changed lately, each with a button that takes it back."""
    shown = st.session_state.setdefault("changes_shown", _AT_FIRST)
    changes = view.records.past_changes(shown + 1)
    for change in changes[:shown]:
        _one(view, change)
    if len(changes) > shown:
        st.button(say("records-older"), key="older_changes", on_click=_show_more)


def _show_more() -> None:
    st.session_state["changes_shown"] += _MORE


def said_of(change: PastChange, places: Mapping[str, str]) -> str:
    """The sentence that told of a change; where there was none, what it touched.

    Args:
        change: the change.
        places: the names of the family's places, by their ids.
    """
    if change.said not in (*_SAYS_LITTLE, say("household-saved")):
        return change.said
    names = [called(edit, places) for edit in change.edits]
    if len(names) > _DOCUMENTS_TOLD:
        names = [*names[:3], say("records-and-more", count=len(names) - 3)]
    return say("records-changed", what=tuple(names))


def _one(view: View, change: PastChange) -> None:
    zone = view.family.household.home.zone if view.family else None
    places = place_names(view.family) if view.family else {}
    at, said = change.saved_at.astimezone(zone), said_of(change, places)
    with st.container(border=True, key=f"change_{change.number}"):
        st.html(cards.face(cards.small(f"{wording.day(at.date())}, {wording.clock(at)}"), cards.said(said)))
        st.markdown(
            bullets(
                f"{called(edit, places)}: {line}"
                for edit in change.edits[:_DOCUMENTS_TOLD]
                for line in told(edit)
            )
        )
        left = len(change.edits) - _DOCUMENTS_TOLD
        if left > 0:
            st.caption(say("records-also-more", count=left))
        st.button(
            plain(say("records-take-back", said=shorten(said, _LABEL, placeholder=" …"))),
            key=f"take_back_change_{change.number}",
            disabled=not change.stands,
            help=None if change.stands else say("records-taken-back-already"),
            on_click=take_back,
            args=(view, PAGE, change.number, said),
        )


def called(edit: Edit, places: Mapping[str, str]) -> str:
    """What an edit is about; an outing by its place and day.

    Args:
        edit: the document before and after.
        places: the names of the family's places, by their ids.
    """
    if edit.kind == kind_of(PlannedOuting).name:
        value = _read(edit.kind, edit.after or edit.before or "")
        if isinstance(value, PlannedOuting):
            place, day = places.get(value.place, value.place), wording.short_day(value.day)
            return say("records-outing", place=place, day=day)
    return edit.called


def told(edit: Edit) -> list[str]:
    """What a change did to one document, one sentence a field.

    Args:
        edit: the document before and after.
    """
    if edit.before is None:
        return [say("records-new")]
    if edit.after is None:
        return [say("records-removed")]
    before, after = _read(edit.kind, edit.before), _read(edit.kind, edit.after)
    if before is None or after is None:
        return [say("records-cannot-read")]
    found = differences(before, after)
    changed = [say("records-from-to", field=one.field, before=one.before, after=one.after) for one in found]
    return changed or [say("records-order")]


def _read(kind: str, body: str) -> Written | None:
    return read_document(MODELS[kind], body).value if kind in MODELS else None
