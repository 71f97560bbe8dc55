"""Saving, removing and taking back on the records that a page shows; trouble is said in words."""

from collections.abc import Iterator, Sequence
from contextlib import contextmanager

import streamlit as st

from tripplan.documents.model import Written
from tripplan.errors import InputFaults, PlanError, RecordConflict, RecordsUnusable, UnknownName
from tripplan.planning.calendar_entry.planned_outing import with_next_sequence
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.notices import refuse, tell
from tripplan.screens.widgets.pending_save import PendingSave, keep_pending
from tripplan.screens.widgets.view import View

EXPECTED_TROUBLE = (InputFaults, PlanError, RecordConflict, RecordsUnusable, UnknownName)
"""Errors that carry a sentence for the parent."""


@contextmanager
def report_errors(spot: str) -> Iterator[None]:
    """Say in words, at a spot of the page, why a change could not be made."""
    try:
        yield
    except RecordConflict as conflict:
        refuse(
            spot,
            f"The {conflict.what} was changed in another window meanwhile, so nothing was saved. What is "
            "shown now is the newest; please look it over and try again.",
        )
    except EXPECTED_TROUBLE as trouble:
        refuse(spot, f"Nothing was changed: {trouble}")


def save_all(
    view: View,
    spot: str,
    values: Sequence[tuple[Written, int]],
    said: str,
    *,
    can_be_taken_back: bool = True,
    removing: Sequence[tuple[type[Written], str, int]] = (),
) -> bool:
    """Save documents together or not at all, say so and offer to take it back.

    Where another window has changed one of them meanwhile nothing is saved, what was typed is held back, and
    the page asks what to do.

    Args:
        view: whose records.
        spot: where to say what came of it.
        values: each document with the revision it was made from, 0 for a new one.
        said: the sentence where it worked.
        can_be_taken_back: whether to offer that.
        removing: what goes in the same change: type, key and the revision that is meant.

    Returns:
        Whether they were saved.
    """
    with report_errors(spot):
        try:
            with view.records.change(view.services.clock(), said) as change:
                for value, expected in values:
                    change.save(value, expected)
                for model, key, expected in removing:
                    change.remove(model, key, expected)
        except RecordConflict:
            keep_pending(PendingSave(view.which, spot, tuple(values), said))
            return False
        offer_to_take_back(view, spot, said, change.number if can_be_taken_back else None)
        tell(spot, said)
        return True
    return False


def remove_one(view: View, spot: str, model: type[Written], key: str, expected: int, said: str) -> None:
    """Remove a document, say so and offer to take it back; the arguments are those of `save_all`."""
    with report_errors(spot):
        with view.records.change(view.services.clock(), said) as change:
            change.remove(model, key, expected)
        offer_to_take_back(view, spot, said, change.number)
        tell(spot, said)


def _state(view: View, spot: str) -> str:
    return f"take_back_{view.which}_{spot}"


def offer_to_take_back(view: View, spot: str, said: str, number: int | None) -> None:
    """Remember the last change made at a spot, so that `take_back_button` can take it back.

    Args:
        view: whose records.
        spot: where it was made.
        said: the sentence that told of it.
        number: of the change; None for nothing to take back.
    """
    st.session_state[_state(view, spot)] = (said, number)


def take_back_button(view: View, spot: str) -> None:
    """Offer to take back the last change made at this spot, if there was one."""
    said, number = st.session_state.get(_state(view, spot), ("", None))
    if number is None:
        return
    st.button(
        plain(f"Undo: {said}"),
        key=f"take_back_{spot}",
        on_click=take_back,
        args=(view, spot, number, said),
    )


def take_back(view: View, spot: str, number: int, said: str) -> None:
    """Put everything that a change touched back to what it was before it, or say why that cannot be.

    Args:
        view: whose records.
        spot: where to say what came of it.
        number: of the change.
        said: the sentence that told of it.
    """
    st.session_state.pop(_state(view, spot), None)
    with report_errors(spot):
        with view.records.change(view.services.clock(), f"Taken back: {said}") as change:
            change.take_back(number, with_next_sequence)
        tell(spot, "Taken back; everything is as it was before.")
