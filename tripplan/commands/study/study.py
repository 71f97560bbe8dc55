"""`tripplan study`: study units, the places that fit them, and a term's programme of outings."""

from collections.abc import Callable, Mapping, Sequence

from tripplan.commands.answers.study import StudyListAnswer, StudyProgrammeAnswer, UnitWithPlaces
from tripplan.commands.input.question import Question, ask, place_called
from tripplan.commands.input.reading import as_asked
from tripplan.commands.input.settings import ASKED
from tripplan.commands.options.shared import TaskOptions
from tripplan.commands.options.study import (
    NONE,
    StudyAddOptions,
    StudyListOptions,
    StudyProgrammeOptions,
    UnitOptions,
)
from tripplan.commands.output.console import Console
from tripplan.commands.study.study_wishes import fix, free, limits, rule_out, unit_called, wishes_on_record
from tripplan.documents.calendars.calendars import DateSpan
from tripplan.documents.outings.planned import PlannedOuting
from tripplan.documents.places.place import Place
from tripplan.documents.study.units import StudyUnit
from tripplan.errors import Finding, InputFaults
from tripplan.files.toml.toml_text import write_toml
from tripplan.files.toml.written import read_form
from tripplan.language import wording
from tripplan.planning.calendar_entry.planned_outing import tentative_outings
from tripplan.planning.outing.idea_notes import asking
from tripplan.planning.outing.outing import Outing, plan_outing
from tripplan.planning.outing.place_facts import place_facts
from tripplan.planning.study.options import party_of
from tripplan.planning.study.programme import Programme, programme_of, term_from
from tripplan.planning.study.sentences import (
    close_sentence,
    fit_sentence,
    limit_sentences,
    nowhere_sentences,
    option_sentence,
    programme_sentences,
    unit_sentences,
)
from tripplan.planning.sweep.sweeping import sweep
from tripplan.planning.sweep.table import DayTable
from tripplan.planning.topic_fit import fits_of
from tripplan.records.planned_outings import outings_ever
from tripplan.records.store import Records
from tripplan.records.study_units import remove_unit

_OPTIONS = {"name": "NAME", "topics": "--topic", "first": "--from", "last": "--to", "budget": "--budget"}


def run(task: str, options: TaskOptions, console: Console, environment: Mapping[str, str]) -> int:
    """Carry out one of the tasks; 1 where a programme cannot be."""
    question = ask(options, console, environment)
    if question.records is None:
        message = "study units stand in the records; leave --household or --places out"
        raise InputFaults((Finding(ASKED, "--household", "", message),))
    if not getattr(options, "json", False):
        question.say_whose(console)
    return _TASKS[task](options, console, question, question.records)


def _units(records: Records) -> list[StudyUnit]:
    units = [kept.value for kept in records.all(StudyUnit).values()]
    return sorted(units, key=lambda unit: (unit.first, unit.name))


def _list(options: StudyListOptions, console: Console, question: Question, records: Records) -> int:
    found = [UnitWithPlaces(unit, fits_of(unit, question.family.places)) for unit in _units(records)]
    if options.json:
        console.json(StudyListAnswer(data=question.whose, today=question.today, units=tuple(found)))
        return 0
    if not found:
        console.line("There is no study unit on record; 'tripplan study add' adds one.")
    for unit, fits in ((one.unit, one.fits) for one in found):
        said = [*map(fit_sentence, fits.places), *map(close_sentence, fits.close), *nowhere_sentences(fits)]
        console.listed(f"{unit.name}. {' '.join(unit_sentences(unit))}", said)
    return 0


def _add(options: StudyAddOptions, console: Console, question: Question, records: Records) -> int:
    """Add a unit, or change the one of this name; of that one stays what is not named."""
    name = options.name.strip()
    units = records.all(StudyUnit)
    kept = next((one for unit, one in units.items() if unit.casefold() == name.casefold()), None)
    before = kept.value.model_dump(mode="json", exclude_none=True) if kept else {}
    values = {
        "name": kept.value.name if kept else name,
        "topics": options.topic,
        "first": options.from_day,
        "last": options.to_day,
        # The currency is that of the budget: one that stays keeps its own.
        "currency": question.family.household.currency if options.budget or not kept else None,
        "budget": options.budget,
        "members": [member.name for member in question.party] if options.party else None,
        "also_places": _also(options.also, question) if options.also else None,
    }
    named = before | {field: value for field, value in values.items() if value is not None}
    given = {field: value for field, value in named.items() if (field, value) != ("budget", NONE)}
    unit = as_asked(read_form(write_toml(given), ASKED, StudyUnit), _OPTIONS)
    records.save(unit, question.clock(), kept.revision if kept else 0)
    console.line(f"The unit '{unit.name}' is {'changed' if kept else 'added'}.")
    return 0


def _also(names: Sequence[str], question: Question) -> list[str]:
    """The ids of places that fit because the parent says so."""
    if list(names) == [NONE]:
        return []
    findings: list[Finding] = []
    found = [place_called(name, question.family.places, findings, "--also") for name in names]
    if findings:
        raise InputFaults(tuple(findings))
    return list(dict.fromkeys(place.id for place in found if place is not None))


def _remove(options: UnitOptions, console: Console, question: Question, records: Records) -> int:
    """Take a unit off, with what was settled or ruled out for it."""
    kept = unit_called(options.name, records)
    name = kept.value.name
    with records.change(question.clock(), f"The unit '{name}' is removed.") as change:
        remove_unit(change, kept)
    console.line(f"The unit '{name}' is removed.")
    return 0


def _programme(options: StudyProgrammeOptions, console: Console, question: Question, records: Records) -> int:
    if options.keep and question.whose == "files":
        message = "outings are kept for the household on record; leave --household out"
        raise InputFaults((Finding(ASKED, "--keep", "", message),))
    family = question.family
    wishes = wishes_on_record(question, records)

    def swept(party: tuple[str, ...], places: tuple[Place, ...], span: DateSpan) -> DayTable:
        asked = family.with_nothing_planned()
        return sweep(asked, family.party(party), places, span, today=question.today)

    units = _units(records)
    outings = [one.value for one in records.all(PlannedOuting).values()]
    found = programme_of(term_from(family, units, wishes, outings, swept, today=question.today))
    said = _keep(found, question, records) if options.keep else ""
    if options.json:
        limits = tuple(limit_sentences(wishes, units))
        console.json(
            StudyProgrammeAnswer(data=question.whose, today=question.today, limits=limits, programme=found)
        )
        return 0 if found.outings else 1
    names = {place.id: place.name for place in family.places}
    console.listed("The term keeps to:", limit_sentences(wishes, units))
    console.listed("In the way:", found.obstacles)
    for one in found.without:
        console.listed(f"No outing for {one.unit.name}:", one.reasons)
    if not found.outings:
        console.line()
        console.line("There is no programme.")
        return 1
    console.listed(
        "The term's outings:",
        [f"{one.unit.name}: {option_sentence(one.option, names)}" for one in found.outings],
    )
    console.listed("In all:", programme_sentences(found, wishes))
    places = [
        place for one in found.outings for place in question.family.places if place.id == one.option.place
    ]
    months = [member.months_on(question.today) for member in question.family.household.members]
    console.listed("Only ideas so far:", asking(places, months))
    if said:
        console.line()
        console.line(said)
    return 0


def _keep(found: Programme, question: Question, records: Records) -> str:
    """Put those outings on record as planned that are not; says how many."""
    family, ever = question.family, outings_ever(records)
    places = {place.id: place for place in family.places}
    ready: list[tuple[StudyUnit, Outing]] = []
    for one in found.outings:
        if one.planned is not None:
            continue
        day, party = one.option.day, family.party(party_of(one.unit, family.household))
        facts = place_facts(family, places[one.option.place], (day.year,))
        outing = plan_outing(family, party, facts, day, today=question.today)
        if isinstance(outing, Outing):
            ready.append((one.unit, outing))
    if not ready:
        return "All of them are planned already."
    planned = tentative_outings(
        ready, family.household, before=ever.before, ids_taken=ever.ids, at=question.clock()
    )
    outings = wording.counted(len(planned), "outing is", "outings are")
    said = f"{outings} planned; tripplan calendar has an entry for each."
    with records.change(question.clock(), said) as change:
        for kept in planned:
            change.save(kept, ever.revision_of(kept))
    return said


_TASKS: Mapping[str, Callable[..., int]] = {
    "list": _list,
    "add": _add,
    "remove": _remove,
    "programme": _programme,
    "limits": limits,
    "fix": fix,
    "rule-out": rule_out,
    "free": free,
}
