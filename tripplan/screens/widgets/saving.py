"""Saving, removing and taking back on the records that a page shows; trouble is said in words."""

from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass

import streamlit as st

from tripplan.errors import RecordConflict
from tripplan.planning.model import Written
from tripplan.records.kinds import MODELS, kind_of
from tripplan.records.opening import Which
from tripplan.records.store import Records
from tripplan.screens.widgets.frame import EXPECTED_TROUBLE, View
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.notices import refuse, tell


@dataclass(frozen=True)
class Step:
    """One change that can be taken back.

    Attributes:
        kind: the name of the document's kind.
        key: tells it from others of its kind.
        revision: the one that the change made.
    """

    kind: str
    key: str
    revision: int


def records_of(view: View) -> Records:
    """The records that the page shows, even if another window has switched to the other ones meanwhile."""
    return view.services.demo if view.which is Which.DEMO else view.services.own


@contextmanager
def trouble_said(spot: str) -> Iterator[None]:
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
    view: View, spot: str, values: Sequence[tuple[Written, int]], said: str, *, can_be_taken_back: bool = True
) -> bool:
    """Save documents together or not at all, say so and offer to take it back.

    Args:
        view: whose records.
        spot: where to say what came of it.
        values: each document with the revision it was made from, 0 for a new one.
        said: the sentence where it worked.
        can_be_taken_back: whether to offer that.

    Returns:
        Whether they were saved.
    """
    with trouble_said(spot):
        steps = []
        with records_of(view).change(view.services.clock()) as change:
            for value, expected in values:
                kept = change.save(value, expected)
                if kept.revision != expected:
                    kind = kind_of(type(value))
                    steps.append(Step(kind.name, kind.key(value), kept.revision))
        offer_to_take_back(view, spot, said, steps if can_be_taken_back else ())
        tell(spot, said)
        return True
    return False


def remove_one(view: View, spot: str, model: type[Written], key: str, expected: int, said: str) -> None:
    """Remove a document, say so and offer to take it back; the arguments are those of `save_all`."""
    with trouble_said(spot):
        revision = records_of(view).remove(model, key, view.services.clock(), expected)
        offer_to_take_back(view, spot, said, [Step(kind_of(model).name, key, revision)])
        tell(spot, said)


def _state(view: View, spot: str) -> str:
    return f"take_back_{view.which}_{spot}"


def offer_to_take_back(view: View, spot: str, said: str, steps: Sequence[Step]) -> None:
    """Remember the last change made at a spot, so that `take_back_button` can take it back."""
    st.session_state[_state(view, spot)] = (said, tuple(steps))


def take_back_button(view: View, spot: str) -> None:
    """Offer to take back the last change made at this spot, if there was one."""
    offered = st.session_state.get(_state(view, spot))
    if offered is None:
        return
    said, steps = offered
    if not steps:
        return
    st.button(
        plain(f"Take back: {said}"),
        key=f"take_back_{spot}",
        on_click=_take_back,
        args=(view, spot, steps),
    )


def _take_back(view: View, spot: str, steps: tuple[Step, ...]) -> None:
    st.session_state.pop(_state(view, spot), None)
    with trouble_said(spot):
        with records_of(view).change(view.services.clock()) as change:
            for step in reversed(steps):
                change.undo(MODELS[step.kind], step.key, step.revision)
        tell(spot, "Taken back; everything is as it was before.")
