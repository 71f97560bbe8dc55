"""The logbook that a command works on, and the span of days it is asked about."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from typing import Literal

from tripplan.clock import Clock
from tripplan.commands.input.on_record import needed, opened, say_whose
from tripplan.commands.input.settings import ASKED, date_in, settings_from
from tripplan.commands.options.family import PeriodOptions
from tripplan.commands.options.shared import OwnRecordsOptions
from tripplan.commands.output.console import Console
from tripplan.documents.logbook.entry import LogbookEntry
from tripplan.documents.logbook.settings import LogbookSettings
from tripplan.errors import Finding, InputFaults
from tripplan.planning.family.family import Family
from tripplan.records.store import Records
from tripplan.services import family_on_record


@dataclass(frozen=True)
class Logbook:
    """What every task works on.

    Attributes:
        family: with the household's and the cards' own figures.
        records: whose.
        data: the same in one word.
        settings: budget, year, what is learned.
        entries: what was written down, oldest first.
        today: the date at home.
        clock: the present moment.
    """

    family: Family
    records: Records
    data: Literal["demo", "own"]
    settings: LogbookSettings
    entries: tuple[LogbookEntry, ...]
    today: date
    clock: Clock

    @property
    def notice(self) -> str:
        """What a page says of an invented family."""
        return self.family.household.notice

    def say_whose(self, console: Console) -> None:
        """Tell in words that the family is invented, where it is."""
        say_whose(self.family.household, console)


def opened_logbook(options: OwnRecordsOptions, environment: Mapping[str, str]) -> Logbook:
    """The logbook that the options ask for.

    Raises:
        InputFaults: there is no household on record.
    """
    on_record = opened(options, settings_from(options, environment))
    services, records = on_record.services, on_record.records
    family = needed(family_on_record(records))
    kept = records.get(LogbookSettings)
    entries = sorted((one.value for one in records.all(LogbookEntry).values()), key=lambda e: (e.day, e.id))
    return Logbook(
        family,
        records,
        on_record.data,
        kept.value if kept else LogbookSettings(),
        tuple(entries),
        services.today(family),
        services.clock,
    )


def period(options: PeriodOptions, usual: tuple[date, date]) -> tuple[date, date]:
    """The first and last day that are asked about; both count.

    Args:
        options: with `first` and `last`, which may be empty.
        usual: what counts for an empty one.

    Raises:
        InputFaults: one of them is no date, or they are the wrong way round.
    """
    findings: list[Finding] = []
    first = date_in(options.first, "--from", findings) if options.first else usual[0]
    last = date_in(options.last, "--to", findings) if options.last else max(usual[1], first or usual[1])
    if first and last and last < first:
        findings.append(
            Finding(ASKED, "--to", str(last), f"a period ends no earlier than it begins ({first})")
        )
    if findings or first is None or last is None:
        raise InputFaults(tuple(findings))
    return first, last
