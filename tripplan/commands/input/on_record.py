"""The records that a command works on: whose they are, and the family in them."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from tripplan.commands.input.settings import ASKED
from tripplan.commands.options.shared import RecordsOptions
from tripplan.commands.output.console import Console
from tripplan.documents.family.household import Household
from tripplan.errors import Finding, InputFaults
from tripplan.language.locales import speak
from tripplan.planning.family.family import Family
from tripplan.records.opening import Which
from tripplan.records.store import Records
from tripplan.services import Services, open_services


@dataclass(frozen=True)
class OnRecord:
    """What is opened.

    Attributes:
        services: the clock and the rest.
        which: whose records the options name; else those that the screens show.
    """

    services: Services
    which: Which

    @property
    def records(self) -> Records:
        """The family's own records, or the invented family's."""
        return self.services.records_of(self.which)

    @property
    def data(self) -> Literal["demo", "own"]:
        """Whose they are, as answers for programs say it."""
        return "demo" if self.which is Which.DEMO else "own"


def opened(options: RecordsOptions, settings: Mapping[str, str]) -> OnRecord:
    """Open the records that the options ask for.

    Args:
        options: as the parser read them.
        settings: as `question.settings_from` gives them.

    Raises:
        TripplanError: the records cannot be used.
    """
    services = open_services(settings)
    on_record = OnRecord(services, Which(options.which) if options.which else services.which)
    household = on_record.records.get(Household)
    if household is not None:
        speak(household.value.locale)
    return on_record


def needed(family: Family | None, *beside: Finding) -> Family:
    """The family, which a task cannot do without.

    Args:
        family: the one on record, if there is one.
        beside: faults that were found before, to be told with this one.

    Raises:
        InputFaults: there is none.
    """
    if family is None:
        message = "there is no household on record; enter one on the screens, or use --demo"
        raise InputFaults((*beside, Finding(ASKED, "--own", "", message)))
    return family


def say_whose(household: Household, console: Console) -> None:
    """Tell in words that the family is invented, where it is."""
    if household.notice:
        console.line(household.notice)
        console.line()
