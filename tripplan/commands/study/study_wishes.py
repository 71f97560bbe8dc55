"""The tasks of `tripplan study` that change what a term's programme keeps to."""

from collections.abc import Sequence

from tripplan.commands.answers.study import StudyLimitsAnswer
from tripplan.commands.input.question import Question, place_called
from tripplan.commands.input.reading import as_asked
from tripplan.commands.input.settings import ASKED
from tripplan.commands.options.study import (
    NONE,
    StudyFixOptions,
    StudyLimitsOptions,
    StudyRuleOutOptions,
    UnitOptions,
)
from tripplan.commands.output.console import Console
from tripplan.documents.outings.planned import PlannedOuting
from tripplan.documents.study.units import StudyUnit
from tripplan.documents.study.wishes import ProgrammeWishes
from tripplan.errors import Finding, InputFaults, UnknownName
from tripplan.files.toml.toml_text import write_toml
from tripplan.files.toml.written import read_form
from tripplan.language import wording
from tripplan.planning.outing.sentences import span_sentence
from tripplan.planning.study.options import planned_for, term_of
from tripplan.planning.study.sentences import limit_sentences, pick_sentences
from tripplan.records.store import Records, StoredDocument

_OPTIONS = {"budget": "--budget", "first": "--from", "last": "--to", "without": "--without"}


def unit_called(name: str, records: Records) -> StoredDocument[StudyUnit]:
    """The study unit of a name, in any case of letters.

    Raises:
        UnknownName: there is none; those on record are named.
    """
    units = records.all(StudyUnit)
    said = name.strip().casefold()
    kept = next((one for unit, one in units.items() if unit.casefold() == said), None)
    if kept is None:
        raise UnknownName("study unit", name, tuple(units))
    return kept


def wishes_on_record(question: Question, records: Records) -> ProgrammeWishes:
    """What the programme keeps to; the usual limits where nothing is on record."""
    kept, currency = records.get(ProgrammeWishes), question.family.household.currency
    return kept.value.in_currency(currency) if kept else ProgrammeWishes(currency=currency)


def _save(wishes: ProgrammeWishes, question: Question, records: Records) -> None:
    kept = records.get(ProgrammeWishes)
    records.save(wishes, question.clock(), kept.revision if kept else 0)


def limits(options: StudyLimitsOptions, console: Console, question: Question, records: Records) -> int:
    """Change the limits that are named, then tell them all."""
    wishes = wishes_on_record(question, records)
    said = {
        "budget": options.budget,
        "first": options.first_day,
        "last": options.last_day,
        "careful": options.careful,
        "several_a_week": options.two_a_week,
        "same_place_again": options.place_twice,
        "weigh": options.least,
        "without": _names(options.without, records) if options.without else None,
    }
    named = {field: value for field, value in said.items() if value is not None}
    if named:
        values = wishes.model_dump(mode="json", exclude_none=True) | named
        given = {field: value for field, value in values.items() if value != NONE}
        wishes = as_asked(read_form(write_toml(given), ASKED, ProgrammeWishes), _OPTIONS)
        _save(wishes, question, records)
    units = [kept.value for kept in records.all(StudyUnit).values()]
    if options.json:
        console.json(StudyLimitsAnswer(data=question.whose, today=question.today, wishes=wishes))
        return 0
    console.listed("The term keeps to:", limit_sentences(wishes, units))
    names = {place.id: place.name for place in question.family.places}
    console.listed("Picked by you:", pick_sentences(wishes, names))
    return 0


def _names(said: Sequence[str], records: Records) -> list[str]:
    if list(said) == [NONE]:
        return []
    return list(dict.fromkeys(unit_called(name, records).value.name for name in said))


def fix(options: StudyFixOptions, console: Console, question: Question, records: Records) -> int:
    """Fix where a unit's outing goes, when it is, or both; the other one stays as it was fixed before."""
    unit = unit_called(options.name, records).value
    wishes = wishes_on_record(question, records)
    before = wishes.settled_for(unit.name)
    findings: list[Finding] = []
    place_id, day = (before.place, before.day) if before else (None, None)
    if options.fixed_place is None and options.fixed_day is None:
        findings.append(Finding(ASKED, "--place", "", "say where to with --place, when with --on, or both"))
    if options.fixed_place is not None:
        place = place_called(options.fixed_place, question.family.places, findings, "--place")
        place_id = place.id if place else None
    if options.fixed_day is not None:
        day = options.fixed_day
        span = term_of(unit, wishes, question.today)
        if span is None or day not in span:
            weeks = span_sentence(span) if span else "no day that is left of its weeks"
            message = f"'{unit.name}' can have its outing on {weeks}"
            findings.append(Finding(ASKED, "--on", str(day), message))
    planned = _planned(unit, question, records)
    if planned is not None and place_id not in (None, planned.place):
        findings.append(_stays("--place", planned, question))
    if planned is not None and day not in (None, planned.day):
        findings.append(_stays("--on", planned, question))
    if findings:
        raise InputFaults(tuple(findings))
    _save(wishes.settling(unit.name, place_id, day), question, records)
    where = f" to {_called(place_id, question)}" if place_id else ""
    console.line(f"'{unit.name}' is fixed{where}{f' on {wording.day(day)}' if day else ''}.")
    return 0


def rule_out(options: StudyRuleOutOptions, console: Console, question: Question, records: Records) -> int:
    """Rule a place out for a unit, at all or on some days."""
    unit = unit_called(options.name, records).value
    wishes = wishes_on_record(question, records)
    findings: list[Finding] = []
    place = place_called(options.without_place, question.family.places, findings)
    if place is None:
        raise InputFaults(tuple(findings))
    planned = _planned(unit, question, records)
    if planned is not None and place.id == planned.place and planned.day in (options.days or (planned.day,)):
        raise InputFaults((_stays("PLACE", planned, question),))
    for day in options.days or (None,):
        wishes = wishes.ruling_out(unit.name, place.id, day)
    _save(wishes, question, records)
    on_days = wording.listed([wording.day(day) for day in options.days or ()])
    console.line(f"'{unit.name}' does not go to {place.name}{f' on {on_days}' if on_days else ''}.")
    return 0


def free(options: UnitOptions, console: Console, question: Question, records: Records) -> int:
    """Forget all that was said of a unit."""
    unit = unit_called(options.name, records).value
    _save(wishes_on_record(question, records).forgetting(unit.name), question, records)
    planned = _planned(unit, question, records)
    console.line(f"'{unit.name}' is free again.")
    if planned is not None:
        console.line(f"Its planned outing stays: {_outing(planned, question)}.")
    return 0


def _planned(unit: StudyUnit, question: Question, records: Records) -> PlannedOuting | None:
    """The outing that is planned for a unit; a programme takes it as it is."""
    return planned_for(unit, (one.value for one in records.all(PlannedOuting).values()), question.today)


def _stays(option: str, planned: PlannedOuting, question: Question) -> Finding:
    """The fault of wanting another outing for a unit than the one that is planned."""
    message = (
        f"its outing is planned already: {_outing(planned, question)}; "
        "move it or call it off on the Calendar page first"
    )
    return Finding(ASKED, option, "", message)


def _outing(planned: PlannedOuting, question: Question) -> str:
    return f"{_called(planned.place, question)}, {wording.day(planned.day)}"


def _called(place_id: str, question: Question) -> str:
    return next((place.name for place in question.family.places if place.id == place_id), place_id)
