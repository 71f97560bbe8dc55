"""`tripplan restore`: the copy of an earlier day in the place of the own records, after a look."""

from collections.abc import Mapping
from datetime import date
from pathlib import Path

from tripplan.clock import clock_from
from tripplan.commands.input.settings import ASKED, settings_from
from tripplan.commands.options.files import RestoreOptions
from tripplan.commands.output.console import Console
from tripplan.errors import Finding, InputFaults, RecordsDamaged
from tripplan.language import wording
from tripplan.planning.calendar_entry.planned_outing import with_next_sequence
from tripplan.records.copies.listed import DayCopy, copies_of, copy_of
from tripplan.records.location import data_folder
from tripplan.records.merging.replacement import replacement
from tripplan.records.opening import Which
from tripplan.records.restoring import contents_of, put_back, recover
from tripplan.services import Services, open_services


def run(options: RestoreOptions, console: Console, environment: Mapping[str, str]) -> int:
    """List the copies, or tell what one would change, and put it back if that is asked for."""
    settings = settings_from(options, environment)
    path = data_folder(settings) / f"{Which.FAMILY}.sqlite3"
    if options.day is None:
        return _list(path, console)
    try:
        day = date.fromisoformat(options.day)
    except ValueError:
        message = "a date reads like 2026-11-24"
        raise InputFaults((Finding(ASKED, "DATE", options.day, message),)) from None
    copy = copy_of(path, day)
    try:
        services = open_services(settings)
    except RecordsDamaged as damaged:
        if damaged.path != path:
            raise
        return _in_place_of_damage(path, copy, damaged, options, console, settings)
    if services.lost_copy() is not None:
        return _in_place_of_nothing(copy, options, console, services)
    contents = contents_of(copy, services.clock())
    change = replacement(services.own, contents.documents, contents.unread)
    for heading, called in change.listed:
        console.listed(heading, called)
    if not change.any:
        console.line("The copy holds exactly what is on record now.")
    elif options.yes:
        put_back(services.own, copy, services.clock(), with_next_sequence)
        console.line(
            f"Done: your records are those of {wording.day(day)}. The Records page can take that back."
        )
    else:
        console.line("Nothing was changed. Add --yes to carry it out.")
    return 0


def _list(path: Path, console: Console) -> int:
    copies = copies_of(path)
    if not copies:
        console.line("There are no copies yet. One is made at the first start of every day.")
    for copy in copies:
        console.whole_line(f"{copy.day} ({copy.holds()} records): {copy.path}")
    return 0


def _in_place_of_nothing(copy: DayCopy, options: RestoreOptions, console: Console, services: Services) -> int:
    console.line(f"Nothing is on record. The copy holds {copy.holds()} records and what was changed before.")
    if not options.yes:
        console.line("Nothing was changed. Add --yes to put the copy in its place.")
        return 1
    services.put_lost_copy_back(copy)
    console.line(f"Done: your records are those of {wording.day(copy.day)}.")
    return 0


def _in_place_of_damage(
    path: Path,
    copy: DayCopy,
    damaged: RecordsDamaged,
    options: RestoreOptions,
    console: Console,
    settings: Mapping[str, str],
) -> int:
    console.whole_line(f"{damaged}.")
    if not options.yes:
        console.line("Nothing was changed. Add --yes to put the copy in its place.")
        return 1
    aside = recover(path, copy, clock_from(settings)())
    console.line(f"Done: your records are those of {wording.day(copy.day)}. The damaged file is kept:")
    console.whole_line(str(aside))
    return 0
