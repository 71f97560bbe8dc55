"""`tripplan calendar`: an outing, or all that are planned, as a calendar file or straight to a server."""

import sys
from collections.abc import Mapping
from getpass import getpass

from tripplan.calendar_server.addresses import host_of
from tripplan.calendar_server.outbox import send_waiting, to_be_sent, waiting
from tripplan.calendar_server.passwords import kept_password
from tripplan.commands.day import planned, say_no
from tripplan.commands.input.question import Question, ask
from tripplan.commands.input.settings import ASKED
from tripplan.commands.options.outings import CalendarOptions
from tripplan.commands.output.console import Console
from tripplan.commands.output.writing import PRINTED, ending_faults, write_file
from tripplan.documents.calendars.server_calendar import ServerCalendar
from tripplan.documents.outings.planned import (
    COLOURS,
    EntryTicks,
    PlannedOuting,
    PlanStatus,
    ThingsToDo,
    same_day,
)
from tripplan.errors import Finding, InputFaults
from tripplan.files.calendars.calendar_file import calendar_file
from tripplan.language import wording
from tripplan.planning.calendar_entry.entry import OutingEntry, outing_uid
from tripplan.planning.calendar_entry.outing_entry import entry_for_outing
from tripplan.planning.calendar_entry.planned_outing import coming, entry_of, planned_again, planned_from
from tripplan.planning.outing.outing import NoOuting, Outing
from tripplan.planning.outing.sentences import leaving_sentence
from tripplan.records.planned_outings import outings_ever
from tripplan.records.store import Records


def run(options: CalendarOptions, console: Console, environment: Mapping[str, str]) -> int:
    """Write the calendar file, or send; 1 where the day cannot be done or something stays undone."""
    _check(options)
    question = ask(options, console, environment, options.place)
    if options.send:
        return _send(options, console, question)
    return _all_planned(options, console, question) if options.planned else _one(options, console, question)


def _check(options: CalendarOptions) -> None:
    findings = []
    named = options.place is not None
    if options.planned == named or (named and options.day is None):
        message = "name a place and a day, or ask for all that are planned with --planned"
        findings.append(Finding(ASKED, "PLACE", options.place or "", message))
    if options.planned:
        times = {"--leave-home": options.leave_home, "--leave-place": options.leave_place}
        message = "what is planned keeps its own times; name a place and a day for others"
        findings += [Finding(ASKED, name, at, message) for name, at in times.items() if at is not None]
    if options.colour and options.colour not in COLOURS:
        message = f"the color is one of {', '.join(COLOURS)}"
        findings.append(Finding(ASKED, "--color", options.colour[:60], message))
    if options.out is not None:
        findings += ending_faults(options.out, "--out", "a calendar", ".ics")
    if findings:
        raise InputFaults(tuple(findings))


def _one(options: CalendarOptions, console: Console, question: Question) -> int:
    answer = planned(question, options)
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
    if not write_file(options.out or PRINTED, written, console, replace=options.replace):
        return 1
    aside = console.aside() if options.out == PRINTED else console
    question.say_whose(aside)
    plan = answer.plan
    aside.line(
        f"{answer.place.name}, {wording.day(answer.day)}: {leaving_sentence(plan)}, "
        f"home again {wording.clock(plan.home)}."
    )
    return 0


def _ticks(options: CalendarOptions) -> EntryTicks:
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
    kept = outings_ever(question.records).on(outing.place.id, outing.day) if question.records else None
    if kept is not None:
        return kept.value.uid, kept.value.sequence
    return outing_uid(f"{question.family.household.name} {outing.place.id} {outing.day}"), 0


def _all_planned(options: CalendarOptions, console: Console, question: Question) -> int:
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
    if not write_file(options.out or PRINTED, written, console, replace=options.replace):
        return 1
    aside = console.aside() if options.out == PRINTED else console
    question.say_whose(aside)
    for entry in entries:
        aside.line(f"{wording.day(entry.start)}: {entry.summary}; {entry.status}.")
    return 0


# --- to the calendar server -------------------------------------------------------------------------------


def _send(options: CalendarOptions, console: Console, question: Question) -> int:
    """Send to the family's calendar server what is planned, and note what lies there."""
    records, server = _server(question)
    family, now = question.family, question.clock()
    ever, places = outings_ever(records), {place.id: place for place in family.places}
    if options.planned:
        outings = coming((one.value for one in ever.planned.values()), question.today)
    else:
        answer = planned(question, options)
        if isinstance(answer, NoOuting):
            say_no(answer, console.aside())
            return 1
        one = planned_from(
            answer,
            family.household,
            _ticks(options),
            PlanStatus.TENTATIVE if options.tentative else PlanStatus.CONFIRMED,
            before=ever.before(answer.place.id, answer.day),
            ids_taken=ever.ids,
            at=now,
        )
        for other in same_day(one, family.planned):
            called = places.get(other.place)
            console.remark(f"warning: {called.name if called else other.place} is planned for that day, too")
        records.save(one, now, ever.revision_of(one))
        outings = [one]
    with records.change(now) as change:
        for outing in outings:
            to_be_sent(change, outing.id, server.calendar)
    due = waiting(records, server)
    where = f"'{server.name}' on {host_of(server.calendar)}"
    if not due:
        console.line(f"Nothing waits to be sent to {where}.")
        return 0
    console.line(f"Sending to {where}: {wording.listed(due)}.")
    console.stdout.flush()

    def entry(outing: PlannedOuting) -> OutingEntry:
        again = planned_again(family, outing, question.today)
        return entry_of(outing, family.household, places.get(outing.place), again)

    sending = send_waiting(records, server, _password(server), entry, now)
    (console.line if sending.complete else console.remark)(sending.in_words())
    return 0 if sending.complete else 1


def _server(question: Question) -> tuple[Records, ServerCalendar]:
    """The family's own records and its calendar server.

    Raises:
        InputFaults: the outing is not the own family's, or no server is set up.
    """
    if question.whose != "own" or question.records is None:
        message = "only your own family's outings can be sent, not the demo's and not those of files"
        raise InputFaults((Finding(ASKED, "--send", "", message),))
    server = question.records.get(ServerCalendar)
    if server is None:
        message = "no calendar server is set up yet; the Calendar page does that"
        raise InputFaults((Finding(ASKED, "--send", "", message),))
    return question.records, server.value


def _password(server: ServerCalendar) -> str:
    """The password from the system's keyring, else typed in.

    Raises:
        InputFaults: it is in no keyring, and there is nobody to ask.
    """
    kept = kept_password(server.server, server.user)
    if kept is not None:
        return kept
    if not sys.stdin.isatty():
        message = "the password is in no keyring, and there is no terminal to ask for it"
        raise InputFaults((Finding(ASKED, "--send", "", message),))
    return getpass(f"Password of {server.user} on {host_of(server.calendar)}: ")
