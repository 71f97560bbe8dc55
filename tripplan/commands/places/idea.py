"""`tripplan idea`: places of which little more is known than the name."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import date

from pydantic import TypeAdapter, ValidationError

from tripplan.commands.answers.ideas import IdeaListAnswer, IdeaTold
from tripplan.commands.input.on_record import OnRecord, needed, opened
from tripplan.commands.input.reading import where_in
from tripplan.commands.input.settings import ASKED, settings_from
from tripplan.commands.options.shared import TaskOptions
from tripplan.commands.output.console import Console
from tripplan.documents.family.household import Household
from tripplan.documents.places.idea import Idea
from tripplan.documents.places.place import Place
from tripplan.errors import Finding, InputFaults, UnknownName
from tripplan.language.sentences import InTurn, say, told
from tripplan.planning.outing.idea_notes import assumed, to_ask
from tripplan.reading.hours.hours import read_hours
from tripplan.reading.idea_line import idea_of, read_idea
from tripplan.services import family_in
from tripplan.values.opening_hours import HoursText

_HOURS: TypeAdapter[str] = TypeAdapter(HoursText)


@dataclass(frozen=True)
class _Asked:
    """What every task has at hand."""

    options: TaskOptions
    console: Console
    on_record: OnRecord
    household: Household
    today: date


def run(task: str, options: TaskOptions, console: Console, environment: Mapping[str, str]) -> int:
    """Carry out one of the tasks."""
    on_record = opened(options, settings_from(options, environment))
    family = needed(family_in(on_record.records))
    today = on_record.services.today(family)
    return _TASKS[task](_Asked(options, console, on_record, family.household, today))


def _add(asked: _Asked) -> int:
    options, records, home = asked.options, asked.on_record.records, asked.household.home
    findings: list[Finding] = []
    line = read_idea(options.line)
    if line is None:
        findings.append(
            Finding(ASKED, "IDEA", options.line[:60], "an idea is one line that begins with a name")
        )
        raise InputFaults(tuple(findings))
    where = None
    if options.where is not None:
        where = where_in(options.where, "--where", home, findings)
    elif line.where:
        where = where_in(line.where, "IDEA", home, findings)
    hours = _hours(options.hours, findings) if options.hours else None
    more = {"topics": tuple(options.topics), "hours": hours, "web": options.web or ""}
    taken = {*records.all(Place), *records.all(Idea)}
    try:
        idea = idea_of(line, taken, asked.today, where, **more)
    except ValidationError as faults:
        findings += [
            Finding(ASKED, "IDEA", str(fault["input"])[:60], f"{fault['loc'][0]}: {fault['msg']}")
            for fault in faults.errors()
        ]
    if findings:
        raise InputFaults(tuple(findings))
    records.save(idea, asked.on_record.services.clock(), 0)
    asked.console.line(f"{idea.name} is on the wish list.")
    _say(_told(idea, asked), asked.console)
    return 0


def _hours(text: str, findings: list[Finding]) -> str | None:
    """Hours in opening_hours syntax, or as venues write them."""
    try:
        return _HOURS.validate_python(text)
    except ValidationError:
        read = read_hours(text)
        if not read.opening_hours:
            findings.append(
                Finding(ASKED, "--hours", text[:60], "hours read like Tue-Sat 10-5, closed Mondays")
            )
        return read.opening_hours or None


def _list(asked: _Asked) -> int:
    kept = asked.on_record.records.all(Idea).values()
    told = [_told(one.value, asked) for one in sorted(kept, key=lambda one: one.value.name.casefold())]
    if asked.options.json:
        asked.console.json(IdeaListAnswer(data=asked.on_record.data, today=asked.today, ideas=tuple(told)))
        return 0
    if not told:
        asked.console.line("There are no ideas yet.")
    for one in told:
        asked.console.line(one.idea.name)
        _say(one, asked.console)
    return 0


def _told(idea: Idea, asked: _Asked) -> IdeaTold:
    place = idea.as_place(asked.household.home, asked.household.currency)
    months = [member.months_on(asked.today) for member in asked.household.members]
    return IdeaTold(idea, assumed(place), to_ask(place, months))


def _say(one: IdeaTold, console: Console) -> None:
    for sentence in (*filter(None, (", ".join(one.idea.topics), one.idea.notes)), *told(one.assumed)):
        console.line(sentence, 2)
    console.line(say("notes-to-ask", questions=InTurn(one.to_ask)), 2)


def _remove(asked: _Asked) -> int:
    said = asked.options.name.strip().casefold()
    ideas = asked.on_record.records.all(Idea)
    for key, kept in ideas.items():
        if said in (key, kept.value.name.casefold()):
            with asked.on_record.records.change(
                asked.on_record.services.clock(), f"{kept.value.name} is off the wish list."
            ) as change:
                change.remove(Idea, key, kept.revision)
            asked.console.line(f"{kept.value.name} is off the wish list.")
            return 0
    raise UnknownName("idea", asked.options.name, tuple(kept.value.name for kept in ideas.values()))


_TASKS: Mapping[str, Callable[[_Asked], int]] = {"add": _add, "list": _list, "remove": _remove}
