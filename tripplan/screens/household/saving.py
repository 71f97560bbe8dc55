"""Saving a household that was changed in a form: checked as its file is, every fault at once."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import time
from typing import Any

from tripplan.errors import Finding, UnknownName, Weight
from tripplan.files.household_file import read_household
from tripplan.files.toml_text import write_toml
from tripplan.planning.household import Household
from tripplan.records.kinds import ONLY
from tripplan.records.store import Kept
from tripplan.screens.household.words import LABELS
from tripplan.screens.widgets.fields import refill
from tripplan.screens.widgets.frame import View
from tripplan.screens.widgets.notices import NamedEntry, named, refuse, tell
from tripplan.screens.widgets.saving import records_of, save_all, trouble_said
from tripplan.screens.widgets.where_form import where_message

PAGE = "household"
"""The spot at the top of the page."""

Raw = dict[str, Any]
"""A household, or a part of one, as its file would hold it, before it is checked."""


def raw_household(household: Household) -> Raw:
    """A household as its file would hold it, with all that is usually left out."""
    return household.model_dump(mode="json", exclude_none=True)


def clock_text(value: time | None) -> str:
    """A time of day as a file holds it; empty for none."""
    return "" if value is None else f"{value:%H:%M}"


def faults_in_words(findings: Sequence[Finding], raw: Raw) -> tuple[Finding, ...]:
    """Findings with the fields called as on the screen and the people by their names."""

    def member(index: int) -> str:
        return str(raw["members"][index].get("name") or f"Person {index + 1}")

    entries: dict[str, NamedEntry] = {
        "members": member,
        "members.naps": lambda index: f"nap {index + 1}",
        "habits.rush_hours": lambda index: f"Rush hours {index + 1}",
    }
    worded = [replace(finding, message=where_message(finding.message)) for finding in findings]
    return named(worded, LABELS, entries)


def check_and_save(
    view: View, spot: str, expected: int, raw: Raw, found: Sequence[Finding] = (), said: str = "Saved."
) -> bool:
    """Check a household as its file is checked, and save it; or say every fault at once.

    Args:
        view: whose records.
        spot: where to say what came of it; also names the form, which is filled anew.
        expected: the revision the change was made from; 0 for the first household.
        raw: the household with its changes.
        found: what the form itself could not read.
        said: the sentence where it worked.

    Returns:
        Whether it was saved.
    """
    read = read_household(write_toml(raw), "", view.today)
    if read.value is None or found:
        faults = [finding for finding in read.findings if finding.weight is Weight.FAULT]
        refuse(spot, findings=faults_in_words([*found, *faults], raw))
        return False
    saved = save_all(view, spot, [(read.value, expected)], said, can_be_taken_back=False)
    if saved:
        refill(spot)
    return saved


def undo_household(view: View, kept: Kept[Household]) -> None:
    """Take back the last change of the household; once more takes back the one before it."""
    with trouble_said(PAGE):
        with records_of(view).change(view.services.clock()) as change:
            before = change.undo(Household, ONLY, kept.revision)
            if before is None:
                raise UnknownName("change to take back in", "household")
        tell(PAGE, "The last change is taken back.")
