"""The faults of a card, each beside the field that it is about."""

from collections.abc import Mapping, Sequence
from dataclasses import replace

from tripplan.errors import Finding, Weight
from tripplan.screens.places.board.pieces import Row
from tripplan.screens.places.board.words import in_screen_words, on_board
from tripplan.screens.places.card.drawing import DrawnCard
from tripplan.screens.places.card.fields import LABELS, WHERE, field_beside
from tripplan.screens.widgets.fields import FieldValue
from tripplan.screens.widgets.notices import named, show_beside
from tripplan.screens.widgets.where_form import where_message


def hours_are_read(findings: Sequence[Finding]) -> bool:
    """Whether no fault keeps the opening hours from being read."""
    return not any(
        finding.weight is Weight.FAULT and finding.field.startswith("opening") for finding in findings
    )


def faults_in_words(findings: Sequence[Finding], rows: Sequence[Row]) -> tuple[Finding, ...]:
    """The faults of a card with its rows and fields called as on the screen.

    Args:
        findings: of the whole card.
        rows: its board.
    """
    return tuple(
        in_screen_words(finding, rows) if on_board(finding.field) else in_words(finding)
        for finding in findings
        if finding.weight is Weight.FAULT
    )


def in_words(finding: Finding) -> Finding:
    """A finding about a field beside the board, called as on the screen."""
    return named([replace(finding, message=where_message(finding.message))], LABELS)[0]


def show_card_faults(
    drawn: DrawnCard, findings: Sequence[Finding], waiting: Mapping[str, FieldValue] | None = None
) -> None:
    """Tell every finding beside the field that it is about.

    Args:
        drawn: the fields.
        findings: of the whole card.
        waiting: what the fields of a new card said at first; those that still say it are not called faulty.
    """
    typed = drawn.fields.typed()
    for name, slot in drawn.slots.items():
        members = WHERE if name == "where" else (name,)
        if waiting is not None and all(typed[member] == waiting[member] for member in members):
            continue
        show_beside(slot, [in_words(finding) for finding in findings if field_beside(finding.field) == name])
