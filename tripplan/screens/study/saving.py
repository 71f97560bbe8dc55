"""Saving study units and what the parent wants of a programme, with every fault at once."""

from dataclasses import dataclass
from typing import Any

from tripplan.documents.study.units import StudyUnit
from tripplan.documents.study.wishes import ProgrammeWishes
from tripplan.errors import Finding, Weight
from tripplan.files.toml_text import write_toml
from tripplan.files.written import read_form
from tripplan.records import study_units
from tripplan.records.store import Kept
from tripplan.screens.widgets.frame import View
from tripplan.screens.widgets.notices import named, refuse, tell
from tripplan.screens.widgets.saving import offer_to_take_back, records_of, save_all, trouble_said

PAGE = "study_units"
"""The spot at the top of the page."""

LABELS = {
    "name": "What is the unit called?",
    "topics": "Topics",
    "first": "First day",
    "last": "Last day",
    "budget": "Budget",
    "members": "Who goes?",
    "also_places": "Places that fit all the same",
}


def save_unit(view: View, spot: str, values: dict[str, Any], expected: int) -> bool:
    """Check a unit as a form and save it, or say every fault.

    Args:
        view: whose records.
        spot: where to say what came of it.
        values: the unit as a file would hold it; days as dates, None where left out.
        expected: the revision it was made from; 0 for a new one.

    Returns:
        Whether it was saved.
    """
    found = [
        Finding("", LABELS[name], "", "pick a day") for name in ("first", "last") if values.get(name) is None
    ]
    given = {name: value for name, value in values.items() if value is not None}
    today = {"first": view.today, "last": view.today}
    read = read_form(write_toml(today | given), "", StudyUnit)
    if read.value is None or found:
        faults = [finding for finding in read.findings if finding.weight is Weight.FAULT]
        refuse(spot, findings=(*found, *named(faults, LABELS)))
        return False
    unit = read.value
    if not expected and unit.name in records_of(view).all(StudyUnit):
        message = "there is a unit of this name already; change it below, or give this one another name"
        refuse(spot, findings=(Finding("", LABELS["name"], unit.name, message),))
        return False
    return save_all(
        view, PAGE, [(unit, expected)], f"The unit '{unit.name}' is {'changed' if expected else 'added'}."
    )


def remove_unit(view: View, kept: Kept[StudyUnit]) -> None:
    """Remove a unit and what was settled or ruled out for it, and offer to take that back."""
    name = kept.value.name
    said = f"The unit '{name}' is removed."
    with trouble_said(PAGE):
        with records_of(view).change(view.services.clock(), said) as change:
            study_units.remove_unit(change, kept)
        offer_to_take_back(view, PAGE, said, change.number)
        tell(PAGE, said)


@dataclass(frozen=True)
class Wanted:
    """What the parent wants of a programme, as the page found it.

    Attributes:
        view: whose records.
        wishes: the usual ones where nothing is on record.
        revision: the one on record, 0 for none.
    """

    view: View
    wishes: ProgrammeWishes
    revision: int

    def save(self, wishes: ProgrammeWishes, said: str) -> None:
        """Save changed wishes, and offer to take that back."""
        save_all(self.view, PAGE, [(wishes, self.revision)], said)


def wanted(view: View, currency: str) -> Wanted:
    """What the parent wants; a budget in another currency than the household's is not taken over."""
    kept = records_of(view).get(ProgrammeWishes)
    if kept is None:
        return Wanted(view, ProgrammeWishes(currency=currency), 0)
    return Wanted(view, kept.value.in_currency(currency), kept.revision)
