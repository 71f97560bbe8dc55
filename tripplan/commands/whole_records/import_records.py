"""`tripplan import`: an exported file in the place of the own records, after a look at what changes."""

from collections.abc import Mapping
from pathlib import Path

from tripplan.commands.answers.files import ImportAnswer
from tripplan.commands.input.reading import start_of
from tripplan.commands.input.settings import settings_from
from tripplan.commands.options.files import ImportOptions
from tripplan.commands.output.console import Console
from tripplan.errors import Finding, InputFaults
from tripplan.planning.calendar_entry.planned_outing import with_next_sequence
from tripplan.records.export import MOST_BYTES, import_all, read_export
from tripplan.records.merging.replacement import Replacement, replacement
from tripplan.records.opening import Which
from tripplan.services import open_services


def run(options: ImportOptions, console: Console, environment: Mapping[str, str]) -> int:
    """Tell what would change, and carry it out if that is asked for."""
    path = Path(options.file)
    unreadable: list[Finding] = []
    data = start_of(path, MOST_BYTES, unreadable)
    if data is None:
        raise InputFaults(tuple(unreadable))
    contents = read_export(data, path.name)
    if contents.findings:
        raise InputFaults(contents.findings)
    services = open_services(settings_from(options, environment))
    changes = replacement(services.own, contents.documents)
    if options.yes:
        findings = import_all(services.own, data, path.name, services.clock(), with_next_sequence)
        if findings:
            raise InputFaults(findings)
        services.use(Which.FAMILY)
    if options.json:
        parts = (changes.added, changes.changed, changes.removed, changes.unchanged)
        console.json(ImportAnswer(options.yes, *parts))
    else:
        _say(changes, contents.of, console, carried_out=options.yes)
    return 0


def _say(changes: Replacement, of: str, console: Console, *, carried_out: bool) -> None:
    console.line(f"The file is of {of}.")
    for heading, called in changes.listed:
        console.listed(heading, called)
    console.line()
    if not changes.any:
        console.line("The file holds exactly what is on record already.")
    elif carried_out:
        console.line("Done. Your own records now hold this, and nothing else; the screens show them.")
    else:
        console.line("Nothing was changed. Add --yes to carry it out.")
