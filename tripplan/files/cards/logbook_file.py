"""A logbook entry as a file, and the family's outings as tables for a spreadsheet."""

from collections.abc import Collection, Iterable, Iterator
from datetime import date
from functools import partial
from pathlib import Path
from typing import Any

from tripplan.documents.family.household import Household
from tripplan.documents.logbook.entry import LogbookEntry
from tripplan.errors import Finding, Weight
from tripplan.files.tables import Cell, csv_table
from tripplan.files.toml.form_schema import schema_of
from tripplan.files.toml.reading_result import ReadResult
from tripplan.files.toml.toml_text import write_toml
from tripplan.files.toml.written import Rule, form_text, read_form, start_of_file
from tripplan.planning.logbook.against_plan import against_plan
from tripplan.planning.logbook.draft import PAID_FOR


def read_logbook_entry(
    source: str | bytes, file: str, today: date, household: Household | None = None
) -> ReadResult[LogbookEntry]:
    """Read an entry and find every fault in one go.

    Args:
        source: TOML text, or a file's bytes.
        file: what findings call it.
        today: an outing of a later day is a fault.
        household: whose members it names; strangers bring a warning. Not checked when left out.

    Returns:
        The entry and its warnings, or every fault.
    """
    rules: list[Rule[LogbookEntry]] = [partial(_not_yet, today=today)]
    if household is not None:
        rules.append(partial(_unlike_household, household=household))
    return read_form(source, file, LogbookEntry, rules)


def load_logbook_entry(
    path: Path, today: date, household: Household | None = None
) -> ReadResult[LogbookEntry]:
    """Read the entry in a file; as `read_logbook_entry`."""
    try:
        source = start_of_file(path)
    except OSError as unreadable:
        return ReadResult(None, (Finding(path.name, "", "", f"cannot be opened: {unreadable.strerror}"),))
    return read_logbook_entry(source, path.name, today, household)


def entry_from_values(values: dict[str, Any], today: date, household: Household) -> ReadResult[LogbookEntry]:
    """Read an entry from what a form's fields say; texts stand for numbers, times and dates as in a file."""
    return read_logbook_entry(write_toml(values), "", today, household)


def write_logbook_entry(entry: LogbookEntry) -> str:
    """An entry as TOML, without what it leaves at its default; reading it gives the same entry."""
    return form_text(entry)


def logbook_entry_schema() -> dict[str, Any]:
    """The JSON schema of an entry's file (draft 2020-12), with each field's description."""
    return schema_of(LogbookEntry, "Logbook entry")


def _not_yet(entry: LogbookEntry, file: str, today: date) -> Iterator[Finding]:
    if entry.day > today:
        message = f"this day is still to come (today is {today}); the logbook tells what was"
        yield Finding(file, "day", str(entry.day), message)


def _unlike_household(entry: LogbookEntry, file: str, household: Household) -> Iterator[Finding]:
    members = {member.name for member in household.members}
    for index, name in enumerate(entry.party):
        if name not in members:
            message = "nobody of the household has this name; the outing counts all the same"
            yield Finding(file, f"party[{index}]", name, message, Weight.WARNING)
    if entry.currency != household.currency:
        message = f"the household counts in {household.currency}; this outing stays out of its sums"
        yield Finding(file, "currency", entry.currency, message, Weight.WARNING)


def logbook_csv(entries: Collection[LogbookEntry]) -> str:
    """Every outing as one row of CSV: its money by item, kilometres, minutes, planned and real.

    What nobody noted is an empty cell, never a zero.
    """
    columns = (
        "day",
        "outing",
        "study unit",
        "people",
        "currency",
        "paid in all",
        *(f"paid for {kind}" for kind in PAID_FOR),
        "planned in all",
        "km",
        "minutes late in leaving",
        "minutes there",
        "minutes there as planned",
        "how full",
        "outdoors",
        "notes",
    )
    return csv_table(columns, (tuple(_row(entry)) for entry in sorted(entries, key=lambda e: (e.day, e.id))))


def _row(entry: LogbookEntry) -> Iterable[Cell]:
    spent, said = entry.spent, against_plan(entry)
    minutes = {line.what: line for line in said.minutes} if said else {}
    late, stay = minutes.get("leaving home late"), minutes.get("the stay")
    paid = (entry.paid_for(kind) for kind in PAID_FOR)
    yield from (entry.day, entry.title, entry.study_unit, len(entry.party), entry.currency)
    yield None if spent is None else spent.amount
    yield from (None if amount is None else amount.amount for amount in paid)
    yield entry.as_planned.likely_amount if entry.as_planned else None
    yield entry.km_driven
    yield late.real if late else None
    yield entry.moments.stay_minutes
    yield stay.planned if stay else None
    yield entry.fullness.value if entry.fullness else None
    yield entry.outdoors.value if entry.outdoors else None
    yield entry.notes
