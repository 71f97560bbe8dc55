"""Saving a household that was changed in a form: checked as its file is, every fault at once."""

from collections.abc import Sequence

from tripplan.documents.family.household import Household
from tripplan.documents.field_spec import asked
from tripplan.errors import Finding, UnknownName
from tripplan.files.cards.household_file import read_household
from tripplan.files.toml.toml_text import write_toml
from tripplan.language.sentences import say
from tripplan.records.kinds import ONLY
from tripplan.records.store import StoredDocument
from tripplan.screens.forms.answers import Raw
from tripplan.screens.forms.form import save
from tripplan.screens.widgets.locations.where_form import where_labels
from tripplan.screens.widgets.notices import tell
from tripplan.screens.widgets.one_open import close_part
from tripplan.screens.widgets.saving import report_errors
from tripplan.screens.widgets.view import View

PAGE = "household"
"""The spot at the top of the page."""


def called() -> dict[str, str]:
    """What the page calls the fields that stand for several of a household's own."""
    return {
        **where_labels("home"),
        "home": asked(Household, "home").spoken().label,
        "habits.stops.pick_up.where": say("household-picked-up-where"),
    }


def raw_household(household: Household) -> Raw:
    """A household as its file would hold it, with all that is usually left out."""
    return household.model_dump(mode="json", exclude_none=True)


def check_and_save(
    view: View, spot: str, expected: int, raw: Raw, found: Sequence[Finding] = (), said: str = ""
) -> bool:
    """Check a household as its file is checked, and save it; the arguments are those of `forms.form.save`."""
    said = said or say("household-saved")
    read = read_household(write_toml(raw), "", view.today)
    saved = save(view, spot, read, raw, Household, expected, said, found, called(), can_be_taken_back=False)
    if saved:
        close_part(view, PAGE)
    return saved


def undo_household(view: View, kept: StoredDocument[Household]) -> None:
    """Take back the last change of the household; once more takes back the one before it."""
    with report_errors(PAGE):
        with view.records.change(view.services.clock()) as change:
            before = change.undo(Household, ONLY, kept.revision)
            if before is None:
                raise UnknownName("change to undo in", "household")
        tell(PAGE, say("household-undone"))
