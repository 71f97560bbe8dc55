"""`tripplan import`: an exported file in the place of the own records, after a look at what changes."""

from argparse import Namespace
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from tripplan.commands.answer_forms import ImportAnswer
from tripplan.commands.console import Console
from tripplan.commands.question import settings_from
from tripplan.commands.reading import start_of
from tripplan.errors import Finding, InputFaults
from tripplan.planning.model import Written
from tripplan.records.export import MOST_BYTES, import_all, read_export
from tripplan.records.kinds import MODELS, kind_of
from tripplan.records.opening import Which
from tripplan.records.store import Records
from tripplan.services import open_services


@dataclass(frozen=True)
class _Changes:
    """What would be different, each document by what it is called."""

    added: tuple[str, ...]
    changed: tuple[str, ...]
    removed: tuple[str, ...]
    unchanged: int

    @property
    def any(self) -> bool:
        return bool(self.added or self.changed or self.removed)


def run(options: Namespace, console: Console, environment: Mapping[str, str]) -> int:
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
    changes = _changes(services.own, contents.documents)
    if options.yes:
        findings = import_all(services.own, data, path.name, services.clock())
        if findings:
            raise InputFaults(findings)
        services.use(Which.FAMILY)
    if options.json:
        answer = ImportAnswer(
            carried_out=options.yes,
            added=changes.added,
            changed=changes.changed,
            removed=changes.removed,
            unchanged=changes.unchanged,
        )
        console.json(answer.model_dump(mode="json"))
    else:
        _say(changes, console, carried_out=options.yes)
    return 0


def _changes(records: Records, documents: Sequence[Written]) -> _Changes:
    kept = {(raw.kind, raw.key): raw.body for raw in records.raw_documents()}
    new = {
        (kind_of(type(document)).name, kind_of(type(document)).key(document)): document.model_dump_json()
        for document in documents
    }
    return _Changes(
        added=_called(new.keys() - kept.keys()),
        changed=_called({name for name in new.keys() & kept.keys() if new[name] != kept[name]}),
        removed=_called(kept.keys() - new.keys()),
        unchanged=sum(new[name] == kept[name] for name in new.keys() & kept.keys()),
    )


def _called(names: set[tuple[str, str]]) -> tuple[str, ...]:
    return tuple(kind_of(MODELS[kind]).called(key) for kind, key in sorted(names))


def _say(changes: _Changes, console: Console, *, carried_out: bool) -> None:
    for heading, called in (
        ("New:", changes.added),
        ("Changed:", changes.changed),
        ("Removed:", changes.removed),
    ):
        console.listed(heading, called)
    console.line()
    if not changes.any:
        console.line("The file holds exactly what is on record already.")
    elif carried_out:
        console.line("Done. Your own records now hold this, and nothing else; the screens show them.")
    else:
        console.line("Nothing was changed. Add --yes to carry it out.")
