"""`tripplan passes`: which annual passes pay for a list of visits."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from tripplan.clock import clock_from
from tripplan.commands.answers.passes import PassesAnswer
from tripplan.commands.input.question import Question, ask, place_called
from tripplan.commands.input.settings import ASKED, date_in, settings_from
from tripplan.commands.options.outings import PassesOptions
from tripplan.commands.output.console import Console
from tripplan.documents.outings.planned import PlannedOuting
from tripplan.documents.outings.planned_visits import VISITS_AT_MOST, ListedVisit, PlannedVisits
from tripplan.errors import Finding, InputFaults
from tripplan.language.sentences import told
from tripplan.planning.passes.listed import ComingVisits, coming_visits, last_day_listed
from tripplan.planning.passes.sentences import pass_plan_sentences, visit_fact
from tripplan.planning.passes.which_pays import which_pass_pays


@dataclass(frozen=True)
class _Named:
    """What one `--visit` says.

    Attributes:
        place: the id or name of a place.
        days: when.
    """

    place: str
    days: tuple[date, ...]


def run(options: PassesOptions, console: Console, environment: Mapping[str, str]) -> int:
    """Find the passes and single visits that cost least; 1 where none of the visits can be."""
    findings: list[Finding] = []
    named = [_named(words, findings) for words in options.visit]
    if sum(len(one.days) for one in named) > VISITS_AT_MOST:
        findings.append(Finding(ASKED, "--visit", "", f"at most {VISITS_AT_MOST} visits can be asked about"))
    places = [one.place for one in named]
    try:
        question = ask(options, console, environment, places)
    except InputFaults as faults:
        # Where --today is no date, that is told, and this raises it once more.
        today = clock_from(settings_from(options, environment))().date()
        findings += _out_of_reach(named, today)
        raise InputFaults((*faults.findings, *findings)) from faults
    findings += _out_of_reach(named, question.today)
    coming = _coming(question, named, on_record=options.planned or not options.visit)
    if not findings and not coming.visits:
        message = "there is no visit in the coming twelve months; name some with --visit PLACE DATE"
        findings.append(Finding(ASKED, "--visit", "", message))
    if findings:
        raise InputFaults(tuple(findings))
    plan = which_pass_pays(question.family, coming.visits, today=question.today)
    if options.json:
        console.json(PassesAnswer(question=question, plan=plan, notes=(*coming.notes, *plan.notes)))
        return 0 if plan.visits else 1
    question.say_whose(console)
    for sentence in (*coming.notes, *pass_plan_sentences(plan)):
        console.line(sentence)
    console.listed("Visit by visit:", told(map(visit_fact, plan.visits)))
    return 0 if plan.visits else 1


def _named(words: Sequence[str], findings: list[Finding]) -> _Named:
    place, *texts = words
    if not texts:
        findings.append(Finding(ASKED, "--visit", place[:60], "a place is followed by the days of visits"))
    days = [date_in(text, "--visit", findings) for text in texts]
    return _Named(place, tuple(day for day in days if day is not None))


def _out_of_reach(named: Sequence[_Named], today: date) -> Iterator[Finding]:
    """Days that are over, or more than twelve months ahead."""
    last = last_day_listed(today)
    for day in (day for one in named for day in one.days):
        if not today <= day <= last:
            yield Finding(ASKED, "--visit", str(day), f"passes are weighed for days from {today} to {last}")


def _coming(question: Question, named: Sequence[_Named], *, on_record: bool) -> ComingVisits:
    """The visits named, and where it is wanted those on record."""
    party = tuple(member.name for member in question.party)
    listed = [
        ListedVisit(place=place.id, day=day, party=party)
        for one in named
        if (place := place_called(one.place, question.family.places, [])) is not None
        for day in one.days
    ]
    outings: list[PlannedOuting] = []
    if on_record and question.records:
        outings = [kept.value for kept in question.records.all(PlannedOuting).values()]
        kept_visits = question.records.get(PlannedVisits)
        listed += kept_visits.value.visits if kept_visits else ()
    return coming_visits(question.family, outings, listed, question.today)
