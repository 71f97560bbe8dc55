"""`tripplan busy`: when the family is busy: its calendars and its own week."""

from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from tripplan.commands.answers.family import BusyListAnswer, CalendarInShort
from tripplan.commands.input.on_record import OnRecord, opened
from tripplan.commands.input.reading import as_asked, start_of
from tripplan.commands.input.settings import ASKED, settings_from
from tripplan.commands.options.shared import TaskOptions
from tripplan.commands.output.console import Console
from tripplan.documents.calendars.calendars import DateSpan, FamilyCalendar
from tripplan.documents.calendars.family_days import FamilyDays
from tripplan.documents.family.household import Household
from tripplan.errors import Finding, InputFaults, UnknownName
from tripplan.files.calendar_reader.content import MOST_BYTES, CalendarContent
from tripplan.files.calendar_reader.reading import read_calendar
from tripplan.files.calendars.family_calendar_file import (
    busy_times,
    family_calendar_from,
    not_taken_sentences,
)
from tripplan.files.demo import READ_AHEAD, READ_BACK
from tripplan.files.toml.toml_text import write_toml
from tripplan.files.toml.written import read_form
from tripplan.planning.family.own_week_sentences import block_sentence, late_sentence, work_sentence
from tripplan.records.store import Records
from tripplan.services import Services, family_in

_NEVER = "never"
"""Said in the place of a time: late evenings do nothing."""


_OPTIONS = {
    "name": "NAME",
    "member": "MEMBER",
    "start": "START",
    "end": "END",
    "days": "DAY",
    "first": "--from",
    "last": "--to",
    "every_weeks": "--every-weeks",
    "not_during": "--not-during",
    "after": "TIME",
    "not_before": "--not-before",
}


def run(task: str, options: TaskOptions, console: Console, environment: Mapping[str, str]) -> int:
    """Carry out one of the tasks."""
    on_record = opened(options, settings_from(options, environment))
    services, records = on_record.services, on_record.records
    if task == "file":
        return _file(options, console, services, records)
    kept = records.get(FamilyDays)
    week, revision = (kept.value, kept.revision) if kept else (FamilyDays(), 0)
    if task == "list":
        if options.json:
            console.json(_list_answer(on_record, week))
        else:
            _list(console, records, week)
        return 0
    if task == "remove":
        return _remove(options.name, console, services, records)
    stranger = _stranger(options.member, records) if task == "work" else ()
    read = read_form(write_toml(_changed(task, options, week)), ASKED, FamilyDays)
    changed = as_asked(read, _OPTIONS, stranger)
    records.save(changed, services.clock(), revision)
    console.line("Your own week is changed.")
    _list(console, records, changed)
    return 0


def _list(console: Console, records: Records, week: FamilyDays) -> None:
    calendars = [kept.value for kept in records.all(FamilyCalendar).values()]
    console.listed(
        "Family calendars:",
        [f"{one.name}: {busy_times(one)}, from {one.source or 'no file'}" for one in calendars],
    )
    console.listed("Every week:", [*map(block_sentence, week.weekly), *map(work_sentence, week.work)])
    console.line()
    console.line(late_sentence(week.late_evening))


def _list_answer(on_record: OnRecord, week: FamilyDays) -> BusyListAnswer:
    services, records = on_record.services, on_record.records
    calendars = [kept.value for kept in records.all(FamilyCalendar).values()]
    return BusyListAnswer(
        data=on_record.data,
        today=services.today(family_in(records)),
        calendars=tuple(
            CalendarInShort(name=one.name, source=one.source, busy=len(one.busy), covers=one.covers)
            for one in calendars
        ),
        own_week=week,
    )


def _remove(name: str, console: Console, services: Services, records: Records) -> int:
    """Take off what is called so: a fixed block, a family calendar, or a member's working hours.

    Raises:
        UnknownName: nothing is.
    """
    wanted = name.strip().casefold()
    kept = records.get(FamilyDays)
    week = kept.value if kept else FamilyDays()
    weekly = tuple(one for one in week.weekly if one.name.casefold() != wanted)
    work = tuple(one for one in week.work if one.member.casefold() != wanted)
    calendars = records.all(FamilyCalendar)
    gone = [one for one in calendars.values() if one.value.name.casefold() == wanted]
    left = week.model_copy(update={"weekly": weekly, "work": work})
    if left == week and not gone:
        known = (*(one.name for one in week.weekly), *(one.member for one in week.work), *calendars)
        raise UnknownName("fixed block, working hours or family calendar", name, tuple(dict.fromkeys(known)))
    with records.change(services.clock(), f"{name.strip()} is removed.") as change:
        if kept is not None and left != week:
            change.save(left, kept.revision)
        for one in gone:
            change.remove(FamilyCalendar, one.value.name, one.revision)
    console.line(f"{name.strip()} is removed.")
    _list(console, records, left)
    return 0


def _changed(task: str, options: TaskOptions, week: FamilyDays) -> dict[str, Any]:
    """The week after a task, as a file would hold it."""
    raw: dict[str, Any] = week.model_dump(mode="json", exclude_none=True)
    if task == "late" and options.after.casefold() == _NEVER:
        return {name: value for name, value in raw.items() if name != "late_evening"}
    if task == "late":
        late = {"after": options.after, "not_before": options.not_before}
        return {**raw, "late_evening": {name: value for name, value in late.items() if value}}
    if task == "work":
        then = "without" if options.without else "wait"
        new = {"member": options.member, **_hours(options), "then": then}
        new["public_holidays_off"] = not options.on_holidays
        return {**raw, "work": [*raw.get("work", []), new]}
    others = [one for one in raw.get("weekly", []) if one["name"].casefold() != options.name.casefold()]
    return {**raw, "weekly": [*others, {"name": options.name, **_hours(options)}]}


def _hours(options: TaskOptions) -> dict[str, Any]:
    breaks = [{"first": first, "last": last} for first, last in options.not_during or ()]
    hours = {
        "first": options.from_day,
        "last": options.to_day,
        "start": options.start,
        "end": options.end,
        "every_weeks": options.every_weeks,
        "not_during": breaks or None,
    }
    return {"days": options.days, **{name: value for name, value in hours.items() if value is not None}}


def _stranger(name: str, records: Records) -> tuple[Finding, ...]:
    """The fault of a name that nobody of the household has."""
    household = records.get(Household)
    if household is None or household.value.member(name) is None:
        return (Finding(ASKED, "MEMBER", name[:60], "nobody of that name is in the household"),)
    return ()


def _file(options: TaskOptions, console: Console, services: Services, records: Records) -> int:
    """Read a calendar file into the records; one that was read before takes the place of what it held."""
    path, findings = Path(options.file), list[Finding]()
    data = start_of(path, MOST_BYTES, findings)
    household = records.get(Household)
    if household is None:
        findings.append(Finding(ASKED, "", "", "there is no household on record"))
    if data is None or household is None:
        raise InputFaults(tuple(findings))
    zone = household.value.home.zone
    today = services.clock().astimezone(zone).date()
    window = DateSpan(first=today - READ_BACK, last=today + READ_AHEAD)
    read = read_calendar(data, path.name, window, zone, own_addresses=options.addresses)
    if read.value is None:
        raise InputFaults(read.findings)
    left_out = _called(read.value, options.not_busy)
    calendars = records.all(FamilyCalendar)
    before = next((one.value.name for one in calendars.values() if one.value.source == path.name), "")
    if not read.value.entries and not before:
        # Kept, it would say that the family is free on all these days.
        raise InputFaults(read.findings)
    for finding in read.findings:
        console.remark(f"warning: {finding}")
    calendar = family_calendar_from(
        read.value,
        name=options.name or before or read.value.name[:80] or path.stem[:80],
        source=path.name,
        covers=window,
        keep_names=options.keep_names,
        left_out=left_out,
    )
    kept = calendars.get(calendar.name)
    records.save(calendar, services.clock(), kept.revision if kept else 0)
    console.line(f"{calendar.name} is {'replaced' if kept else 'added'}: {busy_times(calendar)}.")
    for sentence in not_taken_sentences(read.value):
        console.line(sentence)
    return 0


def _called(content: CalendarContent, titles: Sequence[str]) -> frozenset[str]:
    """The keys of the entries with these titles, in any case of letters.

    Raises:
        InputFaults: no entry has one of them.
    """
    wanted = {" ".join(title.casefold().split()): title for title in titles}
    found = {entry.summary.casefold() for entry in content.entries}
    strangers = [title for called, title in wanted.items() if called not in found]
    if strangers:
        message = "no entry is called that"
        raise InputFaults(tuple(Finding(ASKED, "--not-busy", title[:60], message) for title in strangers))
    return frozenset(entry.key for entry in content.entries if entry.summary.casefold() in wanted)
