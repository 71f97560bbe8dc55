"""`tripplan together`: several households at one place on one day."""

import re
from collections.abc import Mapping, Sequence
from typing import Any

from tripplan.commands.answers.together import TogetherAnswer
from tripplan.commands.day import say_no
from tripplan.commands.input.question import Question, ask
from tripplan.commands.input.settings import ASKED
from tripplan.commands.options.outings import TogetherOptions
from tripplan.commands.output.console import Console
from tripplan.documents.outings.going_together import GoingTogether, people_listed
from tripplan.errors import Finding, InputFaults
from tripplan.files.toml.toml_text import write_toml
from tripplan.files.toml.written import read_form
from tripplan.language import wording
from tripplan.planning.outing.outing import NoOuting
from tripplan.planning.outing.sentences import purchase_sentence
from tripplan.planning.together.sentences import together_facts
from tripplan.planning.together.shapes import Together
from tripplan.planning.together.visit import visit_together

_PARTS = ("name", "people", "seats", "paid")
_IN_GROUP = re.compile(r"households\[(\d+)\]\.?(\w*)(?:\[(\d+)\])?.*")
_CALLED = {"name": "name", "people": "ages", "seats": "seats", "paid": "paid"}

Raw = dict[str, Any]


def run(options: TogetherOptions, console: Console, environment: Mapping[str, str]) -> int:
    """Work out an outing of several households; 1 where it cannot be."""
    findings: list[Finding] = []
    groups = [_group(words, findings) for words in options.group]
    try:
        question = ask(options, console, environment, options.place)
    except InputFaults as faults:
        _read({**_own(options), "households": groups}, findings)
        raise InputFaults((*faults.findings, *findings)) from faults
    with_others = _read(_raw(question, options, groups), findings)
    household = question.family.household
    if household.name in [group.get("name") for group in groups]:
        findings.append(Finding(ASKED, "--group", household.name, "that is your own household"))
    if with_others is not None and options.payer is not None:
        names = [household.name, *(one.name for one in with_others.households)]
        if options.payer not in names:
            message = f"no household is called that; known: {', '.join(names)}"
            findings.append(Finding(ASKED, "--payer", options.payer[:60], message))
    if with_others is not None and not with_others.households:
        findings.append(Finding(ASKED, "--group", "", "nobody comes along; name a household with --group"))
    if with_others is None or findings:
        raise InputFaults(tuple(findings))
    (place,) = question.places
    answer = visit_together(
        question.family.about(place.id, question.span.first),
        question.party,
        with_others,
        place,
        question.span.first,
        today=question.today,
        payer=options.payer,
    )
    if options.json:
        console.json(
            TogetherAnswer(
                question=question,
                place=place,
                day=question.span.first,
                outing=answer if isinstance(answer, Together) else None,
                passed_over=answer if isinstance(answer, NoOuting) else None,
            )
        )
    else:
        question.say_whose(console)
        if isinstance(answer, NoOuting):
            say_no(answer, console)
        else:
            _say(question, answer, console)
    return 1 if isinstance(answer, NoOuting) else 0


def _group(words: Sequence[str], findings: list[Finding]) -> Raw:
    """One `--group` as it is written in a form."""
    if not 2 <= len(words) <= len(_PARTS):
        message = "a name, the ages in quotation marks, and perhaps seats and what was paid"
        findings.append(Finding(ASKED, "--group", " ".join(words)[:60], message))
    group: Raw = dict(zip(_PARTS, words, strict=False))
    return {**group, "people": people_listed(group.get("people", ""))}


def _own(options: TogetherOptions) -> Raw:
    return {name: value for name in ("seats", "paid") if (value := getattr(options, name)) is not None}


def _raw(question: Question, options: TogetherOptions, groups: Sequence[Raw]) -> Raw:
    """The groups named, else those on record, with what the options say of the own household."""
    currency = question.family.household.currency
    raw: Raw = {"currency": currency}
    kept = question.records.get(GoingTogether) if question.records and not groups else None
    if kept is not None and kept.value.currency == currency:
        raw = kept.value.model_dump(mode="json", exclude_none=True)
    return {**raw, **({"households": list(groups)} if groups else {}), **_own(options)}


def _read(raw: Raw, findings: list[Finding]) -> GoingTogether | None:
    read = read_form(write_toml(raw), ASKED, GoingTogether)
    names = [str(group.get("name", "")) for group in raw.get("households", ())]
    for found in read.findings:
        if found.field == "currency":  # It is the household's, which could not be read; that is told already.
            continue
        findings.append(Finding(found.file, _option(found.field, names), found.value, found.message))
    return read.value


def _option(field: str, names: Sequence[str]) -> str:
    """The option in which a field of the form was typed, such as '--group Marsh, ages no. 2'."""
    match = _IN_GROUP.fullmatch(field)
    if match is None:
        return "--group" if not field or field == "households" else f"--{field}"
    part = f", {_CALLED[match[2]]}" if match[2] else ""
    number = f" no. {int(match[3]) + 1}" if match[3] else ""
    return f"--group {names[int(match[1])][:60]}{part}{number}"


def _say(question: Question, outing: Together, console: Console) -> None:
    (place,) = question.places
    console.line(f"{place.name}, {wording.day(question.span.first)}")
    console.line()
    for found in together_facts(outing):
        console.line(found.text)
    for order in outing.orders:
        console.line()
        console.line(f"Tickets for {wording.listed(order.groups)}: {wording.money(order.admission.total)}")
        for purchase in order.admission.purchases:
            console.line(f"{purchase_sentence(purchase)}: {wording.money(purchase.total)}", 2)
            console.line(purchase.rule, 6)
        console.listed("Good to know:", order.admission.notes)
