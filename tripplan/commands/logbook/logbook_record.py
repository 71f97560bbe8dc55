"""`tripplan logbook record`: the record of outings for home-education authorities."""

from collections.abc import Sequence
from pathlib import PurePath

from tripplan.commands.answers.logbook import LogbookRecordAnswer
from tripplan.commands.input.settings import ASKED
from tripplan.commands.logbook.logbook_on_record import Logbook, period
from tripplan.commands.options.family import LogbookRecordOptions
from tripplan.commands.output.console import Console
from tripplan.commands.output.writing import PRINTED, write_file
from tripplan.errors import Finding, InputFaults
from tripplan.files.day_sheet.day_sheet_pdf import Paper, missing_sentence, usual_paper
from tripplan.files.education_record.record_of_outings import (
    closing_lines,
    period_told,
    record_csv,
    record_html,
    total_cells,
)
from tripplan.files.education_record.record_pdf import record_letters_lacking, record_pdf
from tripplan.planning.logbook.education_record import EducationRecord, education_record
from tripplan.planning.logbook.state_rules import STATE_RULES, state_rule


def write_record(options: LogbookRecordOptions, console: Console, logbook: Logbook) -> int:
    """Write or tell the record; 1 where nothing is recorded or a file would be overwritten."""
    begins, ends = logbook.settings.year_of(logbook.today)
    first, last = period(options, (begins, min(ends, logbook.today)))
    findings: list[Finding] = []
    children = _called(options.children, logbook, "--children", findings)
    named = _called(options.names, logbook, "--names", findings)
    state = next((r.state for r in STATE_RULES if r.state.casefold() == (options.state or "").casefold()), "")
    if options.state and not state:
        known = ", ".join(rule.state for rule in STATE_RULES)
        findings.append(Finding(ASKED, "--state", options.state[:60], f"figures are on record of {known}"))
    kind = PurePath(options.out).suffix.lower() if options.out else ""
    if options.out and options.out != PRINTED and kind not in (".csv", ".html", ".htm", ".pdf"):
        message = "a record is a file that ends in .csv, .html or .pdf"
        findings.append(Finding(ASKED, "--out", options.out[:60], message))
    if findings:
        raise InputFaults(tuple(findings))
    record = education_record(
        logbook.entries,
        logbook.family.household,
        logbook.settings,
        first,
        last,
        children=children or None,
        named=named,
        with_household=options.household_name,
        state=state_rule(state),
    )
    if options.out:
        if not write_file(
            options.out, _bytes(options, kind, record, logbook), console, replace=options.replace
        ):
            return 1
        lacking = record_letters_lacking(record) if kind == ".pdf" else ""
        if lacking:
            console.remark(missing_sentence(lacking))
        console = console.aside() if options.out == PRINTED else console
    if options.json:
        notes = tuple(closing_lines(record))
        console.json(LogbookRecordAnswer(data=logbook.data, today=logbook.today, record=record, notes=notes))
    else:
        _say_record(record, logbook, console)
    return 0 if record.lines else 1


def _bytes(options: LogbookRecordOptions, kind: str, record: EducationRecord, logbook: Logbook) -> bytes:
    if kind == ".pdf":
        usual = usual_paper(logbook.family.household.home.country)
        paper = Paper(options.paper) if options.paper else usual
        return record_pdf(record, paper, logbook.clock(), logbook.notice)
    if kind in (".html", ".htm"):
        return record_html(record, logbook.notice).encode()
    return record_csv(record).encode()


def _say_record(record: EducationRecord, logbook: Logbook, console: Console) -> None:
    logbook.say_whose(console)
    console.line(f"Record of outings, {period_told(record)}.")
    for total in record.totals:
        child, days, away, hours, hours_away, subjects = total_cells(total)
        told = f": {subjects}" if subjects else ""
        console.line(f"{child}, days {days} (away {away}), {hours} (away {hours_away}){told}", 2)
    if not record.lines:
        console.line("Nothing was recorded in this period.", 2)
    console.line()
    for line in closing_lines(record):
        console.line(line)


def _called(
    names: Sequence[str] | None, logbook: Logbook, field: str, findings: list[Finding]
) -> tuple[str, ...]:
    """The people with these names, whatever their case."""
    members = [member.name for member in logbook.family.household.members]
    people = {name.casefold(): name for entry in logbook.entries for name in entry.party}
    people |= {name.casefold(): name for name in members}
    found = []
    for name in names or ():
        if name.casefold() in people:
            found.append(people[name.casefold()])
        else:
            message = f"nobody of that name; known: {', '.join(people.values())}"
            findings.append(Finding(ASKED, field, name[:60], message))
    return tuple(found)
