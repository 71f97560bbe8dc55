"""`tripplan calendar`: an outing, or all that are planned, as a calendar file."""

from argparse import Namespace
from collections.abc import Mapping

from tripplan.commands.console import Console
from tripplan.commands.day import planned, say_no
from tripplan.commands.question import Question, ask
from tripplan.commands.writing import PRINTED, write_file
from tripplan.errors import Finding, InputFaults
from tripplan.files.calendar_file import calendar_file, outing_uid
from tripplan.files.outing_entry import entry_for_outing
from tripplan.files.planned_entry import coming, entry_of, planned_again
from tripplan.planning import wording
from tripplan.planning.outing import NoOuting, Outing
from tripplan.planning.planned import COLOURS, EntryTicks, PlannedOuting, PlanStatus, ThingsToDo


def run(options: Namespace, console: Console, environment: Mapping[str, str]) -> int:
    """Write the calendar file; 1 where the day cannot be done, or where a file would be overwritten."""
    _check(options)
    question = ask(options, console, environment)
    return _all_planned(options, console, question) if options.planned else _one(options, console, question)


def _check(options: Namespace) -> None:
    named = options.place is not None
    if options.planned == named or (named and options.day is None):
        message = "name a place and a day, or ask for all that are planned with --planned"
        raise InputFaults((Finding("command line", "PLACE", options.place or "", message),))
    if options.colour and options.colour not in COLOURS:
        message = f"the colour is one of {', '.join(COLOURS)}"
        raise InputFaults((Finding("command line", "--colour", options.colour[:60], message),))


def _one(options: Namespace, console: Console, question: Question) -> int:
    answer = planned(question)
    if isinstance(answer, NoOuting):
        say_no(answer, console.aside())
        return 1
    uid, sequence = _named(question, answer)
    entry = entry_for_outing(
        answer,
        question.family.household,
        uid=uid,
        ticked=_ticks(options),
        sequence=sequence,
        status=PlanStatus.TENTATIVE if options.tentative else PlanStatus.CONFIRMED,
    )
    written = calendar_file([entry], written_at=question.clock())
    if not write_file(options.out, written, console, replace=options.replace):
        return 1
    aside = console.aside() if options.out == PRINTED else console
    question.say_whose(aside)
    plan = answer.plan
    aside.line(
        f"{answer.place.name}, {wording.day(answer.day)}: leave home {wording.clock(plan.leave_home)}, "
        f"home again {wording.clock(plan.home)}."
    )
    return 0


def _ticks(options: Namespace) -> EntryTicks:
    reminded = not options.no_reminders
    return EntryTicks(
        in_parts=options.parts,
        names=options.names,
        home_address=options.home,
        costs=not options.no_costs,
        busy=not options.free,
        colour=options.colour or "",
        booking_reminder=reminded,
        packing_reminder=reminded,
        leaving_reminder_minutes=60 if reminded else None,
        leave_now_reminder=reminded,
        things_to_do=ThingsToDo(options.to_do),
    )


def _named(question: Question, outing: Outing) -> tuple[str, int]:
    """The entry's UID and sequence: those on record, else one that is the same every time."""
    for kept in question.records.all(PlannedOuting).values() if question.records else ():
        if (kept.value.place, kept.value.day) == (outing.place.id, outing.day):
            return kept.value.uid, kept.value.sequence
    return outing_uid(f"{question.family.household.name} {outing.place.id} {outing.day}"), 0


def _all_planned(options: Namespace, console: Console, question: Question) -> int:
    """All outings on record in the year to come, as the screens put them on the calendar."""
    kept = question.records.all(PlannedOuting) if question.records else {}
    outings = coming((one.value for one in kept.values()), question.today)
    if not outings:
        console.remark("No outing is planned in the year to come; nothing was written.")
        return 1
    family = question.family
    places = {place.id: place for place in family.places}
    entries = [
        entry_of(
            outing, family.household, places.get(outing.place), planned_again(family, outing, question.today)
        )
        for outing in outings
    ]
    written = calendar_file(entries, written_at=question.clock())
    if not write_file(options.out, written, console, replace=options.replace):
        return 1
    aside = console.aside() if options.out == PRINTED else console
    question.say_whose(aside)
    for entry in entries:
        aside.line(f"{wording.day(entry.start)}: {entry.summary}; {entry.status}.")
    return 0
