"""Saving study units and what the parent wants of a programme, with every fault at once."""

from dataclasses import dataclass

from tripplan.documents.study.units import StudyUnit
from tripplan.documents.study.wishes import ProgrammeWishes
from tripplan.errors import Finding
from tripplan.files.toml.toml_text import write_toml
from tripplan.files.toml.written import read_form
from tripplan.records import study_units
from tripplan.records.store import StoredDocument
from tripplan.screens.forms.answers import Raw
from tripplan.screens.forms.form import save
from tripplan.screens.widgets.notices import tell
from tripplan.screens.widgets.saving import offer_to_take_back, report_errors, save_all
from tripplan.screens.widgets.view import View

PAGE = "study_units"
"""The spot at the top of the page."""


def save_unit(view: View, spot: str, values: Raw, expected: int) -> bool:
    """Check a unit as a form and save it, or say every fault.

    Args:
        view: whose records.
        spot: where to say what came of it.
        values: the unit as a file would hold it.
        expected: the revision it was made from; 0 for a new one.

    Returns:
        Whether it was saved.
    """
    read = read_form(write_toml(values), "", StudyUnit)
    found = []
    if not expected and read.value is not None and read.value.name in view.records.all(StudyUnit):
        message = "there is a unit of this name already; change it below, or give this one another name"
        found.append(Finding("", "name", read.value.name, message))
    said = f"The unit '{values.get('name', '')}' is {'changed' if expected else 'added'}."
    return save(view, spot, read, values, StudyUnit, expected, said, found, told_at=PAGE)


def remove_unit(view: View, kept: StoredDocument[StudyUnit]) -> None:
    """Remove a unit and what was settled or ruled out for it, and offer to take that back."""
    name = kept.value.name
    said = f"The unit '{name}' is removed."
    with report_errors(PAGE):
        with view.records.change(view.services.clock(), said) as change:
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
    kept = view.records.get(ProgrammeWishes)
    if kept is None:
        return Wanted(view, ProgrammeWishes(currency=currency), 0)
    return Wanted(view, kept.value.in_currency(currency), kept.revision)
