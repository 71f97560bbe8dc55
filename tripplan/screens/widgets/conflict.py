"""When two windows changed the same: both changes side by side, and a choice in which nothing is lost."""

import json
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any

import streamlit as st
from pydantic import ValidationError

from tripplan.documents.family.household import Household
from tripplan.documents.model import Written
from tripplan.documents.places.place import Place
from tripplan.errors import RecordConflict
from tripplan.files.cards.household_file import read_household
from tripplan.files.cards.place_card import read_place_card
from tripplan.files.toml.reading_result import ReadResult
from tripplan.files.toml.toml_text import write_toml
from tripplan.planning.calendar_entry.planned_outing import with_next_sequence
from tripplan.records.kinds import kind_of
from tripplan.records.merging.differences import Difference, differences
from tripplan.records.merging.merging import merged
from tripplan.screens.widgets.fields import refill
from tripplan.screens.widgets.markdown import bullets, plain
from tripplan.screens.widgets.notices import tell
from tripplan.screens.widgets.pending_save import PendingSave, discard_pending, pending_save
from tripplan.screens.widgets.saving import offer_to_take_back, report_errors
from tripplan.screens.widgets.view import View

_FILES: dict[type[Written], Callable[[str, str, date], ReadResult[Any]]] = {
    Household: read_household,
    Place: read_place_card,
}
"""What is checked as its file is checked, beyond the rules of its form."""


@dataclass(frozen=True)
class Clash:
    """One document that two windows changed from the same beginning.

    Attributes:
        called: the document's name.
        base: what both began from; None where both made it anew.
        mine: what this window wants to save.
        theirs: what is on record now; None where the other window removed it.
        revision: of what is on record now; 0 where it was removed.
    """

    called: str
    base: Written | None
    mine: Written
    theirs: Written | None
    revision: int

    @property
    def is_one(self) -> bool:
        """Whether the other window changed the document at all."""
        return self.theirs != self.base


def show_conflict(view: View) -> None:
    """Ask what to do about a save that met another window's; draws nothing where there is none."""
    held = pending_save(view.which)
    if held is not None:
        _ask(view, held)


@st.dialog("Changed in another window meanwhile", width="large", dismissible=False)
def _ask(view: View, held: PendingSave) -> None:
    with report_errors(held.spot):
        clashes = [_clash(view, value, expected) for value, expected in held.values]
        together = [brought_together(clash, view.today) for clash in clashes]
        st.markdown("Nothing is lost and nothing of yours is saved yet. Please choose.")
        for clash in clashes:
            if clash.is_one:
                _show(clash)
        fits = all(value is not None for value in together)
        mine = "Save mine as well" if fits else "Save mine instead"
        said = (
            "Yours is saved, and what only the other window changed stays. Where both changed the same, "
            "yours counts."
            if fits
            else "The two changes do not go together, so only one of them can stay."
        )
        st.caption(f"{said} The other choice drops yours. Either can be taken back on the Records page.")
        with st.container(horizontal=True):
            values = [value or clash.mine for value, clash in zip(together, clashes, strict=True)]
            kept_mine = st.button(
                mine,
                key="conflict_mine",
                type="primary",
                on_click=_save_mine,
                args=(view, held, values, clashes),
            )
            kept_theirs = st.button(
                "Keep the other window's", key="conflict_theirs", on_click=_keep_theirs, args=(held,)
            )
        if kept_mine or kept_theirs:  # which is to be seen on the whole page
            st.rerun()


def _clash(view: View, mine: Written, expected: int) -> Clash:
    kind, records = kind_of(type(mine)), view.records
    key = kind.key(mine)
    base = records.as_of(type(mine), key, expected) if expected else None
    theirs = records.get(type(mine), key)
    if theirs is None:
        return Clash(kind.called(key), base, mine, None, 0)
    return Clash(kind.called(key), base, mine, theirs.value, theirs.revision)


def brought_together(clash: Clash, today: date) -> Written | None:
    """Both changes in one document, mine where both changed the same; None where that breaks a rule.

    Args:
        clash: the two changes.
        today: on which what is brought together is checked.
    """
    if clash.base is None or clash.theirs is None:
        return clash.mine
    states = [
        state.model_dump(mode="json", exclude_none=True) for state in (clash.base, clash.mine, clash.theirs)
    ]
    both = merged(*states)
    form = type(clash.mine)
    if form in _FILES:
        read: ReadResult[Written] = _FILES[form](write_toml(both), "", today)
        return read.value
    try:
        return form.model_validate_json(json.dumps(both))
    except ValidationError:
        return None


def _show(clash: Clash) -> None:
    st.markdown(plain(f"The {clash.called}:"))
    if clash.theirs is None:
        st.markdown(plain("The other window removed it. Yours would bring it back as you typed it."))
        return
    if clash.base is None:
        st.markdown("Both windows made it anew.")
        st.markdown(
            bullets(
                f"{found.field}: there it says {found.before}, yours says {found.after}"
                for found in differences(clash.theirs, clash.mine)
            )
        )
        return
    st.markdown(bullets(told(differences(clash.base, clash.mine), differences(clash.base, clash.theirs))))


def told(mine: Sequence[Difference], theirs: Sequence[Difference]) -> list[str]:
    """Two changes field by field: what both changed first, then what only one of them did.

    Args:
        mine: what this window changed.
        theirs: what the other window changed.
    """
    others = {found.path: found for found in theirs}
    both, alone = [], []
    for found in mine:
        other = others.pop(found.path, None)
        if other is None:
            alone.append(f"{found.field}: only yours changed, from {found.before} to {found.after}")
        elif other.after == found.after:
            alone.append(f"{found.field}: both changed it to {found.after}")
        else:
            both.append(
                f"{found.field}: it was {found.before}; the other window says {other.after}, "
                f"yours says {found.after}"
            )
    only_theirs = [
        f"{found.field}: only the other window changed it, from {found.before} to {found.after}"
        for found in others.values()
    ]
    return [*both, *alone, *only_theirs]


def _save_mine(view: View, held: PendingSave, values: Sequence[Written], clashes: Sequence[Clash]) -> None:
    with report_errors(held.spot):
        try:
            now = view.services.clock()
            with view.records.change(now, held.said) as change:
                for value, clash in zip(values, clashes, strict=True):
                    after = value if clash.theirs is None else with_next_sequence(value, clash.theirs, now)
                    change.save(after, clash.revision)
        except RecordConflict:
            return  # changed once more meanwhile: the question is asked anew, with the newest
        discard_pending()
        refill(held.spot)
        offer_to_take_back(view, held.spot, held.said, change.number)
        tell(held.spot, held.said)


def _keep_theirs(held: PendingSave) -> None:
    discard_pending()
    refill(held.spot)
    tell(held.spot, "What the other window saved stays; yours was dropped.")
