"""`tripplan check`: every fault in place cards and household files."""

from collections.abc import Mapping, Sequence
from datetime import date
from pathlib import Path

from tripplan.clock import clock_from
from tripplan.commands.answers.files import CheckAnswer, Checked
from tripplan.commands.input.card_files import card_files, file_kind
from tripplan.commands.input.settings import settings_from
from tripplan.commands.options.files import CheckOptions
from tripplan.commands.output.console import Console
from tripplan.errors import Finding, Weight
from tripplan.files.cards.household_file import load_household
from tripplan.files.cards.place_card import load_place_card


def run(options: CheckOptions, console: Console, environment: Mapping[str, str]) -> int:
    """Tell every finding; 2 where one is a fault."""
    today = clock_from(settings_from(options, environment))().date()
    beside: list[Finding] = []
    paths = card_files(options.file, beside)
    checked = _check(paths, today, all_households=options.household)
    if options.json:
        console.json(CheckAnswer(tuple(checked)))
    else:
        for one in checked:
            _say(one, console)
    for finding in beside:
        console.remark(f"{'warning: ' if finding.weight is Weight.WARNING else ''}{finding}")
    no_fault = all(finding.weight is Weight.WARNING for finding in beside)
    return 0 if no_fault and all(one.usable for one in checked) else 2


def _check(paths: Sequence[Path], today: date, *, all_households: bool) -> list[Checked]:
    checked: list[Checked] = []
    first_file: dict[str, Path] = {}
    for path in paths:
        if all_households or file_kind(path) == "household":
            checked.append(Checked(str(path), "household", load_household(path, today).findings))
            continue
        read = load_place_card(path, today)
        findings = read.findings
        if read.value is not None:
            twin = first_file.setdefault(read.value.id, path)
            if twin != path:
                findings = (
                    *findings,
                    Finding(path.name, "id", read.value.id, f"{twin.name} has the same id"),
                )
        checked.append(Checked(str(path), "place", findings))
    return checked


def _say(checked: Checked, console: Console) -> None:
    called = "household file" if checked.kind == "household" else "place card"
    faults = sum(finding.weight is Weight.FAULT for finding in checked.findings)
    warnings = len(checked.findings) - faults
    counts = [
        f"{count} {word}{'' if count == 1 else 's'}"
        for count, word in ((faults, "fault"), (warnings, "warning"))
        if count
    ]
    console.whole_line(f"{checked.file}: {called}, {' and '.join(counts) or 'nothing wrong'}")
    for finding in checked.findings:
        where = f"{finding.field}: " if finding.field else ""
        found = f" (found: {finding.value})" if finding.value else ""
        console.line(f"{finding.weight}: {where}{finding.message}{found}", 2)
