"""`tripplan calendar`: an outing as a calendar file."""

from argparse import Namespace
from collections.abc import Mapping

from tripplan.commands.console import Console
from tripplan.commands.day import planned, say_no
from tripplan.commands.question import Question, ask
from tripplan.commands.writing import PRINTED, write_file
from tripplan.files.calendar_file import EntryLayout, calendar_file, outing_uid
from tripplan.files.outing_entry import entry_for_outing
from tripplan.planning import wording
from tripplan.planning.outing import NoOuting, Outing
from tripplan.planning.planned import PlannedOuting, PlanStatus


def run(options: Namespace, console: Console, environment: Mapping[str, str]) -> int:
    """Write the calendar file; 1 where the day cannot be done, or where a file would be overwritten."""
    question = ask(options, console, environment)
    answer = planned(question)
    if isinstance(answer, NoOuting):
        say_no(answer, console.aside())
        return 1
    uid, sequence = _named(question, answer)
    entry = entry_for_outing(
        answer,
        question.family.household,
        uid=uid,
        sequence=sequence,
        status=PlanStatus.TENTATIVE if options.tentative else PlanStatus.CONFIRMED,
        layout=EntryLayout.PARTS if options.parts else EntryLayout.WHOLE,
        reminders=() if options.no_reminders else None,
        include_names=options.names,
        include_home=options.home,
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


def _named(question: Question, outing: Outing) -> tuple[str, int]:
    """The entry's UID and sequence: those on record, else one that is the same every time."""
    for kept in question.records.all(PlannedOuting).values() if question.records else ():
        if (kept.value.place, kept.value.day) == (outing.place.id, outing.day):
            return kept.value.uid, kept.value.sequence
    return outing_uid(f"{question.family.household.name} {outing.place.id} {outing.day}"), 0
