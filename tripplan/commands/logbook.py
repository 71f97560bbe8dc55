"""`tripplan logbook`: outings written down, the year's account, the record, and what outings teach."""

from argparse import Namespace
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from pathlib import Path, PurePath
from typing import Literal

from tripplan.commands.answer_forms import MoneyTold
from tripplan.commands.console import Console
from tripplan.commands.logbook_forms import (
    ChildTotalTold,
    EntryTold,
    KindTold,
    LearnedTold,
    LogbookLearnedAnswer,
    LogbookListAnswer,
    LogbookRecordAnswer,
    LogbookYearAnswer,
    MinutesAgainstTold,
    MinutesOverYearTold,
    MoneyAgainstTold,
    MoneyOverYearTold,
    PurseTold,
    RecordLineTold,
    SubjectTold,
)
from tripplan.commands.question import asked_for, date_in, place_called, records_of, settings_from
from tripplan.commands.writing import PRINTED, write_file
from tripplan.errors import Finding, InputFaults, RecordConflict
from tripplan.files.day_sheet import DEMO_NOTICE
from tripplan.files.day_sheet_pdf import Paper, missing_sentence, usual_paper
from tripplan.files.logbook_file import load_logbook_entry, logbook_csv, write_logbook_entry
from tripplan.files.record_of_outings import closing_lines, record_csv, record_html, total_cells
from tripplan.files.record_pdf import record_letters_lacking, record_pdf
from tripplan.planning import wording
from tripplan.planning.logbook.against_plan import against_plan, year_against_plan
from tripplan.planning.logbook.as_planned import as_planned
from tripplan.planning.logbook.draft import draft, filled_as_planned
from tripplan.planning.logbook.education_record import EducationRecord, education_record
from tripplan.planning.logbook.entry import LogbookEntry
from tripplan.planning.logbook.learning import learned_figures
from tripplan.planning.logbook.sentences import (
    against_lines,
    entry_lines,
    entry_sentence,
    learned_sentence,
    year_against_lines,
    year_lines,
)
from tripplan.planning.logbook.settings import LogbookSettings
from tripplan.planning.logbook.state_rules import STATE_RULES, state_rule
from tripplan.planning.logbook.year import Purse, year_account
from tripplan.planning.money import Money
from tripplan.planning.outing import Family
from tripplan.planning.planned import PlannedOuting
from tripplan.planning.study.units import StudyUnit
from tripplan.records.opening import Which
from tripplan.records.store import Kept, Records
from tripplan.services import Clock, family_on_record, open_services

_ASKED = "command line"


@dataclass(frozen=True)
class _Logbook:
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
        return DEMO_NOTICE if self.data == "demo" else ""

    def say_whose(self, console: Console) -> None:
        """Tell in words that the family is invented, where it is."""
        if self.data == "demo":
            console.line("Demo: this family, its places and prices are invented.")
            console.line()


def run(options: Namespace, console: Console, environment: Mapping[str, str]) -> int:
    """Carry out one of the tasks."""
    tasks: Mapping[str, Callable[[Namespace, Console, _Logbook], int]] = {
        "draft": _draft,
        "write": _write,
        "remove": _remove,
        "list": _list,
        "year": _year,
        "record": _record,
        "learned": _learned,
    }
    settings = settings_from(options, environment)
    services = open_services(settings)
    which = asked_for(options, services)
    records = records_of(services, which)
    family = family_on_record(records)
    if family is None:
        message = "there is no household on record; enter it on the screens, or use --demo"
        raise InputFaults((Finding(_ASKED, "", "", message),))
    kept = records.get(LogbookSettings)
    entries = sorted((one.value for one in records.all(LogbookEntry).values()), key=lambda e: (e.day, e.id))
    logbook = _Logbook(
        family,
        records,
        "demo" if which is Which.DEMO else "own",
        kept.value if kept else LogbookSettings(),
        tuple(entries),
        services.today(family),
        services.clock,
    )
    return tasks[options.task](options, console, logbook)


# --- writing down -----------------------------------------------------------------------------------------


def _draft(options: Namespace, console: Console, logbook: _Logbook) -> int:
    """Write a file with all that is known before anybody tells how it was."""
    findings: list[Finding] = []
    planned, place, day = None, None, logbook.today
    if options.planned:
        outings = {one.value.id: one.value for one in logbook.records.all(PlannedOuting).values()}
        planned = outings.get(options.planned)
        if planned is None:
            known = ", ".join(outings) or "none"
            findings.append(
                Finding(_ASKED, "--planned", options.planned[:60], f"no such planned outing; known: {known}")
            )
        else:
            place = next((one for one in logbook.family.places if one.id == planned.place), None)
    if options.place:
        place = place_called(options.place, logbook.family.places, findings)
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
        console.line(f"Fill it in, then: tripplan logbook write {options.out}")
    return 0


def _write(options: Namespace, console: Console, logbook: _Logbook) -> int:
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
                before: Kept[LogbookEntry] | None = change.get(LogbookEntry, entry.id)
                change.save(entry, before.revision if before and options.replace else 0)
    except RecordConflict as there:
        console.remark(f"{there.what} is there already; nothing was written. Add --replace to change it.")
        return 1
    for entry in entries:
        console.line(entry_sentence(entry, logbook.family.household.units))
    return 0


def _remove(options: Namespace, console: Console, logbook: _Logbook) -> int:
    """Take one entry out of the logbook."""
    kept = logbook.records.get(LogbookEntry, options.id)
    if kept is None:
        known = ", ".join(entry.id for entry in logbook.entries) or "none"
        message = f"no entry has this id; known: {known}"
        raise InputFaults((Finding(_ASKED, "ID", options.id[:60], message),))
    logbook.records.remove(LogbookEntry, options.id, logbook.clock(), kept.revision)
    console.line(f"{kept.value.title} on {wording.day(kept.value.day)} is out of the logbook.")
    return 0


# --- looking back -----------------------------------------------------------------------------------------


def _list(options: Namespace, console: Console, logbook: _Logbook) -> int:
    """Tell outings and how they went against their plans; 1 where there is none."""
    first, last = _period(options, (date.min, date.max))
    entries = [entry for entry in logbook.entries if first <= entry.day <= last]
    if options.csv:
        written = write_file(options.csv, logbook_csv(entries).encode(), console, replace=options.replace)
        return 0 if written else 1
    if options.json:
        told = tuple(_entry_told(entry) for entry in entries)
        answer = LogbookListAnswer(data=logbook.data, today=logbook.today, entries=told)
        console.json(answer.model_dump(mode="json"))
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


def _entry_told(entry: LogbookEntry) -> EntryTold:
    against = against_plan(entry)
    return EntryTold(
        entry=entry,
        spent=_told(entry.spent),
        stay_minutes=entry.moments.stay_minutes,
        km=entry.km_driven,
        money=tuple(
            MoneyAgainstTold(
                what=line.what,
                planned=_told(line.planned),
                real=_told(line.real),
                worked_out=line.worked_out,
            )
            for line in (against.money if against else ())
        ),
        minutes=tuple(
            MinutesAgainstTold(what=line.what, planned=line.planned, real=line.real)
            for line in ((*against.minutes, *against.naps) if against else ())
        ),
        unknown=against.unknown if against else (),
    )


def _told(amount: Money | None) -> MoneyTold | None:
    return None if amount is None else _money(amount)


def _money(amount: Money) -> MoneyTold:
    return MoneyTold(amount=amount.rounded().amount, currency=amount.currency)


def _year(options: Namespace, console: Console, logbook: _Logbook) -> int:
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
        answer = LogbookYearAnswer(
            data=logbook.data,
            today=logbook.today,
            first=account.first,
            last=account.last,
            year=_purse_told("year", account.purse),
            by_kind=tuple(KindTold(kind=kind, amount=_money(amount)) for kind, amount in account.by_kind),
            not_itemised=_money(account.not_itemised),
            study_units=tuple(_purse_told(name, purse) for name, purse in account.units),
            money_against_plan=tuple(
                MoneyOverYearTold(
                    what=line.what,
                    planned=_money(line.planned),
                    real=_money(line.real),
                    outings=line.outings,
                    unknown=line.unknown,
                )
                for line in against.money
            ),
            minutes_against_plan=tuple(
                MinutesOverYearTold(
                    what=line.what, mean_more=line.mean_more, outings=line.outings, unknown=line.unknown
                )
                for line in against.minutes
            ),
        )
        console.json(answer.model_dump(mode="json"))
        return 0
    logbook.say_whose(console)
    for line in year_lines(account):
        console.line(line)
    console.listed("Planned against real:", list(year_against_lines(against)))
    return 0


def _purse_told(name: str, purse: Purse) -> PurseTold:
    return PurseTold(
        name=name,
        budget=_told(purse.budget),
        spent=_money(purse.spent),
        planned=_money(purse.planned),
        left=_told(purse.left),
        left_after_planned=_told(purse.left_after_planned),
        outings=purse.outings,
        to_come=purse.to_come,
        unknown=purse.unknown,
        other_currency=purse.other_currency,
    )


# --- the record for authorities ---------------------------------------------------------------------------


def _record(options: Namespace, console: Console, logbook: _Logbook) -> int:
    """Write or tell the record; 1 where nothing is recorded or a file would be overwritten."""
    begins, ends = logbook.settings.year_of(logbook.today)
    first, last = _period(options, (begins, min(ends, logbook.today)))
    findings: list[Finding] = []
    children = _called(options.children, logbook, "--children", findings)
    named = _called(options.names, logbook, "--names", findings)
    state = next((r.state for r in STATE_RULES if r.state.casefold() == (options.state or "").casefold()), "")
    if options.state and not state:
        known = ", ".join(rule.state for rule in STATE_RULES)
        findings.append(Finding(_ASKED, "--state", options.state[:60], f"figures are on record of {known}"))
    kind = PurePath(options.out).suffix.lower() if options.out else ""
    if options.out and options.out != PRINTED and kind not in (".csv", ".html", ".htm", ".pdf"):
        message = "a record is a file that ends in .csv, .html or .pdf"
        findings.append(Finding(_ASKED, "--out", options.out[:60], message))
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
        console.json(_record_told(record, logbook).model_dump(mode="json"))
    else:
        _say_record(record, logbook, console)
    return 0 if record.lines else 1


def _bytes(options: Namespace, kind: str, record: EducationRecord, logbook: _Logbook) -> bytes:
    if kind == ".pdf":
        usual = usual_paper(logbook.family.household.home.country)
        paper = Paper(options.paper) if options.paper else usual
        return record_pdf(record, paper, logbook.clock(), logbook.notice)
    if kind in (".html", ".htm"):
        return record_html(record, logbook.notice).encode()
    return record_csv(record).encode()


def _say_record(record: EducationRecord, logbook: _Logbook, console: Console) -> None:
    logbook.say_whose(console)
    console.line(f"Record of outings, {wording.day(record.first)} to {wording.day(record.last)}.")
    for total in record.totals:
        child, days, away, hours, hours_away, subjects = total_cells(total)
        told = f": {subjects}" if subjects else ""
        console.line(f"{child}, days {days} (away {away}), {hours} (away {hours_away}){told}", 2)
    if not record.lines:
        console.line("Nothing was recorded in this period.", 2)
    console.line()
    for line in closing_lines(record):
        console.line(line)


def _record_told(record: EducationRecord, logbook: _Logbook) -> LogbookRecordAnswer:
    return LogbookRecordAnswer(
        data=logbook.data,
        today=logbook.today,
        first=record.first,
        last=record.last,
        household=record.household,
        lines=tuple(
            RecordLineTold(
                day=line.day,
                child=line.child,
                grade_band=line.grade_band,
                where=line.where,
                away=line.away,
                counts_as_day=line.counts_as_day,
                hours=line.hours,
                subjects=tuple(SubjectTold(subject=name, hours=hours) for name, hours in line.subjects),
                did=line.did,
                learned=line.learned,
            )
            for line in record.lines
        ),
        totals=tuple(
            ChildTotalTold(
                child=total.child,
                grade_band=total.grade_band,
                days=total.days,
                days_away=total.days_away,
                hours=total.hours,
                hours_away=total.hours_away,
                days_without_hours=total.days_without_hours,
                subjects=tuple(SubjectTold(subject=one.subject, hours=one.hours) for one in total.subjects),
            )
            for total in record.totals
        ),
        notes=tuple(closing_lines(record)),
    )


def _called(
    names: Sequence[str] | None, logbook: _Logbook, field: str, findings: list[Finding]
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
            findings.append(Finding(_ASKED, field, name[:60], message))
    return tuple(found)


def _period(options: Namespace, usual: tuple[date, date]) -> tuple[date, date]:
    findings: list[Finding] = []
    first = date_in(options.first, "--from", findings) if options.first else usual[0]
    last = date_in(options.last, "--to", findings) if options.last else max(usual[1], first or usual[1])
    if first and last and last < first:
        findings.append(
            Finding(_ASKED, "--to", str(last), f"a period ends no earlier than it begins ({first})")
        )
    if findings or first is None or last is None:
        raise InputFaults(tuple(findings))
    return first, last


# --- what outings teach -----------------------------------------------------------------------------------


def _learned(options: Namespace, console: Console, logbook: _Logbook) -> int:
    """Tell every own figure beside the usual one; 1 where no outing tells any."""
    figures = learned_figures(logbook.family, logbook.entries)
    if options.json:
        told = tuple(
            LearnedTold(
                what=figure.what,
                label=figure.label,
                place=figure.place,
                unit=figure.unit,
                usual=figure.usual,
                own=figure.own,
                low=figure.likely.low,
                high=figure.likely.high,
                outings=figure.outings,
                told_by=figure.told_by,
                planned_with=logbook.settings.learns(figure.what),
            )
            for figure in figures
        )
        answer = LogbookLearnedAnswer(data=logbook.data, today=logbook.today, figures=told)
        console.json(answer.model_dump(mode="json"))
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
        console.listed(f"{what.value[0].upper()}{what.value[1:]} ({on}):", mine)
    return 0
