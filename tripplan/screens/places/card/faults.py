"""The faults of a card, each beside the field that it is about."""

import re
from collections.abc import Mapping, Sequence

from tripplan.documents.places.place import Place
from tripplan.errors import Finding, Weight
from tripplan.screens.forms.words import in_words
from tripplan.screens.places.board.kinds import Row
from tripplan.screens.places.board.words import in_screen_words, on_board
from tripplan.screens.places.card.drawing import DrawnCard
from tripplan.screens.places.card.fields import CALLED, WHERE, field_beside
from tripplan.screens.widgets.fields import FieldValue
from tripplan.screens.widgets.notices import show_beside


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
        in_screen_words(finding, rows) if on_board(finding.field) else called_on_screen(finding)
        for finding in findings
        if finding.weight is Weight.FAULT
    )


def called_on_screen(finding: Finding) -> Finding:
    """A finding about a field beside the board, called as on the screen."""
    return in_words([finding], Place, {}, CALLED)[0]


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
    changed = set(typed) if waiting is None else {name for name in typed if typed[name] != waiting.get(name)}
    for name, slot in drawn.slots.items():
        members = set(WHERE) if name == "where" else {one for one in typed if re.match(rf"{name}(\d|$)", one)}
        if not changed & members:
            continue
        show_beside(
            slot, [called_on_screen(finding) for finding in findings if field_beside(finding.field) == name]
        )
