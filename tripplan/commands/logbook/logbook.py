"""`tripplan logbook`: outings written down, the year's account, the record, and what outings teach."""

from collections.abc import Callable, Mapping
from datetime import date
from pathlib import Path

from tripplan.commands.answers.logbook import (
    FigureInUse,
    LogbookLearnedAnswer,
    LogbookListAnswer,
    LogbookYearAnswer,
    OutingWrittenDown,
)
from tripplan.commands.input.question import place_called
from tripplan.commands.input.settings import ASKED, date_in
from tripplan.commands.logbook.logbook_on_record import Logbook, opened_logbook, period
from tripplan.commands.logbook.logbook_record import write_record
from tripplan.commands.options.family import (
    LogbookDraftOptions,
    LogbookListOptions,
    LogbookRemoveOptions,
    LogbookWriteOptions,
    LogbookYearOptions,
)
from tripplan.commands.options.files import RecordsListOptions
from tripplan.commands.options.shared import TaskOptions
from tripplan.commands.output.console import Console
from tripplan.commands.output.writing import PRINTED, ending_faults, write_file
from tripplan.documents.logbook.entry import LogbookEntry
from tripplan.documents.outings.planned import PlannedOuting
from tripplan.documents.study.units import StudyUnit
from tripplan.errors import Finding, InputFaults, RecordConflict
from tripplan.files.cards.logbook_file import load_logbook_entry, logbook_csv, write_logbook_entry
from tripplan.language import wording
from tripplan.planning.logbook.against_plan import against_plan, year_against_plan
from tripplan.planning.logbook.as_planned import as_planned
from tripplan.planning.logbook.draft import draft, filled_as_planned
from tripplan.planning.logbook.learning import learned_figures
from tripplan.planning.logbook.sentences import (
    against_lines,
    entry_lines,
    entry_sentence,
    learned_sentence,
    year_against_lines,
    year_lines,
)
from tripplan.planning.logbook.year import year_account
from tripplan.records.store import StoredDocument


def run(task: str, options: TaskOptions, console: Console, environment: Mapping[str, str]) -> int:
    """Carry out one of the tasks."""
    tasks: Mapping[str, Callable[..., int]] = {
        "draft": _draft,
        "write": _write,
        "remove": _remove,
        "list": _list,
        "year": _year,
        "record": write_record,
        "learned": _learned,
    }
    return tasks[task](options, console, opened_logbook(options, environment))


def _draft(options: LogbookDraftOptions, console: Console, logbook: Logbook) -> int:
    """Write a file with all that is known before anybody tells how it was."""
    findings: list[Finding] = []
    planned, place, day = None, None, logbook.today
    if options.planned:
        outings = {one.value.id: one.value for one in logbook.records.all(PlannedOuting).values()}
        planned = outings.get(options.planned)
        if planned is None:
            known = ", ".join(outings) or "none"
            findings.append(
                Finding(ASKED, "--planned", options.planned[:60], f"no such planned outing; known: {known}")
            )
        else:
            place = next((one for one in logbook.family.places if one.id == planned.place), None)
    if options.place:
        place = place_called(options.place, logbook.family.places, findings)
    findings += ending_faults(options.out, "--out", "an outing to fill in", ".toml")
    if options.day:
        day = date_in(options.day, "DATE", findings) or day
    if findings:
        raise InputFaults(tuple(findings))
    entry = draft(
        logbook.family.household,
        day,
        place=place,
        planned=planned,
        said=as_planned(logbook.family, planned) if planned else None,
        ids_taken=[one.id for one in logbook.entries],
    )
    if options.as_planned:
        entry = filled_as_planned(entry)
    data = write_logbook_entry(entry).encode()
    if not write_file(options.out, data, console, replace=options.replace):
        return 1
    if options.out != PRINTED:
        console.whole_line(f"Fill it in, then: tripplan logbook write {options.out}")
    return 0


def _write(options: LogbookWriteOptions, console: Console, logbook: Logbook) -> int:
    """Put files into the logbook, all of them or none."""
    findings: list[Finding] = []
    entries: list[LogbookEntry] = []
    for name in options.file:
        read = load_logbook_entry(Path(name), logbook.today, logbook.family.household)
        findings += read.findings
        if read.value is not None:
            entries.append(read.value)
    if len(entries) < len(options.file):
        raise InputFaults(tuple(findings))
    for finding in findings:
        console.remark(f"warning: {finding}")
    try:
        with logbook.records.change(logbook.clock()) as change:
            for entry in entries:
                before: StoredDocument[LogbookEntry] | None = change.get(LogbookEntry, entry.id)
                change.save(entry, before.revision if before and options.replace else 0)
    except RecordConflict as there:
        console.remark(f"{there.what} is there already; nothing was written. Add --replace to change it.")
        return 1
    for entry in entries:
        console.line(entry_sentence(entry, logbook.family.household.units))
    return 0


def _remove(options: LogbookRemoveOptions, console: Console, logbook: Logbook) -> int:
    """Take one entry out of the logbook."""
    kept = logbook.records.get(LogbookEntry, options.id)
    if kept is None:
        known = ", ".join(entry.id for entry in logbook.entries) or "none"
        message = f"no entry has this id; known: {known}"
        raise InputFaults((Finding(ASKED, "ID", options.id[:60], message),))
    logbook.records.remove(LogbookEntry, options.id, logbook.clock(), kept.revision)
    console.line(f"{kept.value.title} on {wording.day(kept.value.day)} is out of the logbook.")
    return 0


def _list(options: LogbookListOptions, console: Console, logbook: Logbook) -> int:
    """Tell outings and how they went against their plans; 1 where there is none."""
    first, last = period(options, (date.min, date.max))
    entries = [entry for entry in logbook.entries if first <= entry.day <= last]
    if options.csv:
        if faults := ending_faults(options.csv, "--csv", "a table", ".csv"):
            raise InputFaults(faults)
        written = write_file(options.csv, logbook_csv(entries).encode(), console, replace=options.replace)
        return 0 if written else 1
    if options.json:
        told = tuple(OutingWrittenDown(entry, against_plan(entry)) for entry in entries)
        console.json(LogbookListAnswer(data=logbook.data, today=logbook.today, entries=told))
        return 0 if entries else 1
    logbook.say_whose(console)
    if not entries:
        console.line("No outing is written down for these days.")
        return 1
    for entry in entries:
        console.line(entry_sentence(entry, logbook.family.household.units))
        if options.why:
            against = against_plan(entry)
            console.listed("As it was:", list(entry_lines(entry)))
            console.listed("Against the plan:", list(against_lines(against)) if against else [])
            console.line()
    return 0


def _year(options: LogbookYearOptions, console: Console, logbook: Logbook) -> int:
    """Tell what a year has cost, what is left, and how the plans have held."""
    findings: list[Finding] = []
    day = date_in(options.of, "--of", findings) if options.of else logbook.today
    if findings:
        raise InputFaults(tuple(findings))
    account = year_account(
        logbook.entries,
        [kept.value for kept in logbook.records.all(PlannedOuting).values()],
        [kept.value for kept in logbook.records.all(StudyUnit).values()],
        logbook.settings,
        currency=logbook.family.household.currency,
        today=logbook.today,
        year_with=day,
    )
    mine = [entry for entry in logbook.entries if account.first <= entry.day <= account.last]
    against = year_against_plan(mine, account.purse.spent.currency)
    if options.json:
        console.json(
            LogbookYearAnswer(data=logbook.data, today=logbook.today, account=account, against=against)
        )
        return 0
    logbook.say_whose(console)
    for line in year_lines(account):
        console.line(line)
    console.listed("Planned against real:", list(year_against_lines(against)))
    return 0


def _learned(options: RecordsListOptions, console: Console, logbook: Logbook) -> int:
    """Tell every own figure beside the usual one; 1 where no outing tells any."""
    figures = learned_figures(logbook.family, logbook.entries)
    if options.json:
        told = tuple(FigureInUse(figure, logbook.settings.learns(figure.what)) for figure in figures)
        console.json(LogbookLearnedAnswer(data=logbook.data, today=logbook.today, figures=told))
        return 0 if figures else 1
    logbook.say_whose(console)
    if not figures:
        console.line("No outing tells a figure yet.")
        return 1
    for what in dict.fromkeys(figure.what for figure in figures):
        on = (
            "plans are made with it"
            if logbook.settings.learns(what)
            else "switched off; plans keep the usual"
        )
        mine = [learned_sentence(figure) for figure in figures if figure.what is what]
        console.listed(f"{wording.capital(what.value)} ({on}):", mine)
    return 0
