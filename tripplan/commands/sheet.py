"""`tripplan sheet`: an outing as a page to print and take along."""

from collections.abc import Mapping
from dataclasses import replace
from pathlib import PurePath

from tripplan.commands.day import planned, say_no
from tripplan.commands.input.question import Question, ask
from tripplan.commands.input.settings import ASKED
from tripplan.commands.options.outings import SheetOptions
from tripplan.commands.output.console import Console
from tripplan.commands.output.writing import PRINTED, write_file
from tripplan.documents.outings.sheet_entries import SheetEntries, SheetTicks
from tripplan.errors import Finding, InputFaults
from tripplan.files.day_sheet.day_phone_html import day_phone_html
from tripplan.files.day_sheet.day_sheet import DaySheet, day_sheet
from tripplan.files.day_sheet.day_sheet_html import day_sheet_html
from tripplan.files.day_sheet.day_sheet_pdf import (
    Paper,
    day_sheet_pdf,
    missing_letters,
    missing_sentence,
    usual_paper,
)
from tripplan.language import wording
from tripplan.planning.outing.outing import NoOuting, Outing
from tripplan.records.sheet_entries import sheet_entries_in

_PDF, _HTML = ".pdf", (".html", ".htm")


def run(options: SheetOptions, console: Console, environment: Mapping[str, str]) -> int:
    """Write the day sheet; 1 where the day cannot be done, or where a file would be overwritten."""
    kind = PurePath(options.out).suffix.lower()
    if options.out != PRINTED and kind not in (_PDF, *_HTML):
        message = "a day sheet is a file that ends in .html or .pdf"
        raise InputFaults((Finding(ASKED, "--out", options.out[:60], message),))
    if options.phone and kind == _PDF:
        message = "the page for the phone is a file that ends in .html"
        raise InputFaults((Finding(ASKED, "--out", options.out[:60], message),))
    question = ask(options, console, environment, options.place)
    answer = planned(question, options)
    if isinstance(answer, NoOuting):
        say_no(answer, console.aside())
        return 1
    household, entries = question.family.household, _entries(options, question, answer)
    sheet = day_sheet(answer, household, entries, notice=household.notice)
    if kind == _PDF:
        data = _pdf(options, question, sheet)
    else:
        for_phone = day_phone_html(answer, sheet, names=entries.ticked.names)
        data = (for_phone if options.phone else day_sheet_html(sheet)).encode()
    if not write_file(options.out, data, console, replace=options.replace):
        return 1
    missing = missing_letters(sheet) if kind == _PDF else ""
    if missing:
        console.remark(missing_sentence(missing))
    aside = console.aside() if options.out == PRINTED else console
    question.say_whose(aside)
    what = "Page for the phone: " if options.phone else "Day sheet for "
    aside.line(f"{what}{answer.place.name}, {wording.day(answer.day)}.")
    return 0


def _entries(options: SheetOptions, question: Question, outing: Outing) -> SheetEntries:
    """What the parent wrote for the sheet, with what is ticked on the command line."""
    records = question.records if question.whose != "files" else None
    entries = sheet_entries_in(records, outing.place.id, outing.day) if records else SheetEntries()
    ticked = SheetTicks(
        names=options.names or entries.ticked.names,
        needs=options.needs or entries.ticked.needs,
        birth_dates=options.birth_dates or entries.ticked.birth_dates,
        home_address=options.home or entries.ticked.home_address,
    )
    return replace(entries, ticked=ticked)


def _pdf(options: SheetOptions, question: Question, sheet: DaySheet) -> bytes:
    usual = usual_paper(question.family.household.home.country)
    return day_sheet_pdf(sheet, Paper(options.paper) if options.paper else usual, question.clock())
