"""The faults of a price board, each beside its row, and what is said while there are any."""

from collections.abc import Sequence

import streamlit as st

from tripplan.documents.places.offer_sentences import sentence
from tripplan.documents.places.place import Place
from tripplan.errors import Finding, Weight
from tripplan.screens.places.board.draft import Draft
from tripplan.screens.places.board.drawing import FaultSlots
from tripplan.screens.places.board.kinds import Row
from tripplan.screens.places.board.words import in_screen_words, on_board, row_of
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.notices import show_beside


def shown_now(draft: Draft, findings: Sequence[Finding]) -> list[Finding]:
    """The findings without those in rows that were added and that nobody has touched yet."""
    rows = draft.as_rows()

    def waits(finding: Finding) -> bool:
        at = row_of(finding.field, rows)
        return at is not None and draft.rows[at[0]].untouched

    return [finding for finding in findings if draft.pressed or not waits(finding)]


def show_faults(
    slots: FaultSlots, draft: Draft, findings: Sequence[Finding], understood: Place | None
) -> None:
    """Show every finding about the board at the row where it stands, or below the tickets.

    Args:
        slots: where they are shown.
        draft: the board.
        findings: of the card.
        understood: the card as it was read, if it could be; each offer then also stands there as a sentence.
    """
    rows = draft.as_rows()
    if understood is not None:
        offers = [slot for slot, row in zip(slots.rows, rows, strict=True) if row.kind.holder == "offers"]
        for slot, offer in zip(offers, understood.offers, strict=True):
            slot.caption(plain(sentence(offer, understood.currency)))
    visible = [finding for finding in shown_now(draft, findings) if on_board(finding.field)]
    for number, slot in enumerate((*slots.rows, slots.board)):
        here = [in_screen_words(finding, rows) for finding in visible if _slot_of(finding, rows) == number]
        show_beside(slot, here)


def _slot_of(finding: Finding, rows: Sequence[Row]) -> int:
    """The number of a finding's row; the one after the last for what no single row is to blame for."""
    at = row_of(finding.field, rows)
    return len(rows) if at is None else at[0]


def to_put_right(draft: Draft, findings: Sequence[Finding]) -> str:
    """Say, in place of what it comes to for the family, what the board still needs; the same sentence."""
    faults = [finding for finding in findings if finding.weight is Weight.FAULT]
    if any(finding in faults for finding in shown_now(draft, findings)):
        count = "one thing" if len(faults) == 1 else f"{len(faults)} things"
        said = f"Please fix {count} to see what it costs us."
    else:
        said = "Type in the prices to see what it costs us."
    st.info(said)
    return said
