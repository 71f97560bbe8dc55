"""`tripplan schools`: school calendars on record, built-in regions, and how far all of it reaches."""

import difflib
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import Literal
from zoneinfo import ZoneInfo

from tripplan.commands.answers.family import SchoolsListAnswer
from tripplan.commands.input.on_record import needed, opened
from tripplan.commands.input.reading import start_of, where_in
from tripplan.commands.input.settings import ASKED, settings_from
from tripplan.commands.options.shared import TaskOptions
from tripplan.commands.output.console import Console
from tripplan.documents.calendars.calendars import (
    MOST_PUPILS,
    DateSpan,
    SchoolCalendar,
    with_guess_kept,
    with_next_year_expected,
)
from tripplan.documents.where import Where
from tripplan.errors import Finding, InputFaults, UnknownName, Weight
from tripplan.files.calendar_reader.content import MOST_BYTES
from tripplan.files.calendars.school_calendar_file import ProposedEntry, SchoolProposal, school_calendar_from
from tripplan.files.calendars.school_file import SchoolFile, read_school_file
from tripplan.files.calendars.school_table_file import DateOrder
from tripplan.files.demo import READ_AHEAD, READ_BACK
from tripplan.language import wording
from tripplan.planning.family.family import Family
from tripplan.planning.holidays.coverage import (
    LOOK_AHEAD,
    calendar_coverage,
    place_coverage,
    typical_year_sentences,
)
from tripplan.planning.holidays.school_regions import (
    built_in_calendar,
    region_called,
    regions_near,
    school_regions,
)
from tripplan.records.store import Records, StoredDocument
from tripplan.regular_file import path_from
from tripplan.services import Services, family_in

_USUAL_PUPILS = 10_000
_TITLES = ("--no-school", "--short", "--school")
"""The options that say what entries of a title are."""


@dataclass(frozen=True)
class _Asked:
    """What every task has at hand."""

    options: TaskOptions
    console: Console
    services: Services
    records: Records
    family: Family | None
    today: date
    data: Literal["demo", "own"]

    @property
    def calendars(self) -> Mapping[str, StoredDocument[SchoolCalendar]]:
        return self.records.all(SchoolCalendar)

    def called(self, name: str) -> StoredDocument[SchoolCalendar]:
        """The calendar of that name, in any case of letters.

        Raises:
            UnknownName: there is none.
        """
        for known, kept in self.calendars.items():
            if known.casefold() == name.strip().casefold():
                return kept
        raise UnknownName("school calendar", name, tuple(self.calendars))


def run(task: str, options: TaskOptions, console: Console, environment: Mapping[str, str]) -> int:
    """Carry out one of the tasks."""
    on_record = opened(options, settings_from(options, environment))
    services, records = on_record.services, on_record.records
    family = family_in(records)
    asked = _Asked(options, console, services, records, family, services.today(family), on_record.data)
    return _TASKS[task](asked)


def _list(asked: _Asked) -> int:
    console, last = asked.console, asked.today + LOOK_AHEAD
    calendars = [kept.value for kept in asked.calendars.values()]
    places = asked.family.places if asked.family else ()
    covers = [place_coverage(calendars, place, asked.today, last) for place in places]
    homes = [asked.family.household.home.point] if asked.family else []
    points = [*homes, *(place.where.point for place in places)]
    near = [region for region in regions_near(points) if not _has(calendars, region.code)]
    if asked.options.json:
        console.json(
            SchoolsListAnswer(
                data=asked.data,
                today=asked.today,
                calendars=tuple(calendars),
                until=last,
                places=tuple(covers),
                built_in=tuple(region.code for region in near),
            )
        )
        return 0
    for calendar in calendars:
        console.line(f"{calendar.name}: {calendar.pupils:,} students.")
        console.line(calendar_coverage(calendar, asked.today, last), 2)
    if not calendars:
        console.line("There are no school calendars on record.")
    for cover in covers:
        console.line()
        console.line(f"{cover.place.name}: {cover.sentence}")
        for name, share in cover.districts:
            console.line(f"{name}: {share:.0%} of the students counted there", 2)
    for sentence in typical_year_sentences(covers):
        console.line()
        console.line(sentence)
    console.listed(
        "Built in for regions near home and the places, not on record yet:",
        [f"{region.code}: {region.name}" for region in near],
    )
    return 0


def _has(calendars: list[SchoolCalendar], code: str) -> bool:
    return any(calendar.region == code for calendar in calendars)


def _regions(asked: _Asked) -> int:
    wanted = (asked.options.country or "").upper()
    rows = [
        (region.code, region.name, f"{region.pupils:,}", _reach(region.code, asked.today))
        for region in school_regions()
        if wanted in ("", region.country)
    ]
    if not rows:
        known = tuple(dict.fromkeys(region.country for region in school_regions()))
        raise UnknownName("country with built-in school breaks", asked.options.country, known)
    asked.console.table(("region", "name", "students, a guess", "known"), rows)
    return 0


def _reach(code: str, today: date) -> str:
    calendar = _region_calendar(code, today)
    if calendar is None:
        return "nothing for these years"
    guess = f", a guess to {calendar.expected_within.last}" if calendar.expected_within else ""
    return f"{calendar.known.first} to {calendar.known.last}{guess}"


def _region_calendar(code: str, today: date) -> SchoolCalendar | None:
    return built_in_calendar(region_called(code), today.year - 1, (today + LOOK_AHEAD).year)


def _show(asked: _Asked) -> int:
    calendar, console = asked.called(asked.options.name).value, asked.console
    console.line(
        f"{calendar.name}: {calendar.pupils:,} students; from {calendar.source or 'an unnamed source'}."
    )
    console.line(calendar_coverage(calendar, asked.today, asked.today + LOOK_AHEAD))
    for heading, spans in (
        ("No school:", calendar.no_school),
        ("Short days, with school:", calendar.short_days),
        ("Likely no school, a guess:", calendar.expected),
    ):
        console.listed(heading, [_span(span) for span in spans])
    return 0


def _span(span: DateSpan) -> str:
    days = f"{span.first}" if span.first == span.last else f"{span.first} to {span.last}"
    return f"{days}  {span.name}".rstrip()


def _add(asked: _Asked) -> int:
    options = asked.options
    path = path_from(options.source)
    read = _from_file(asked, path) if path.suffix else _from_region(asked)
    kept = asked.calendars.get(read.name)
    calendar = with_guess_kept(read, kept.value if kept else None)
    _save(asked, calendar)
    short = wording.counted(len(calendar.short_days), "short day with school", "short days with school")
    days = f"{_days_off(calendar.no_school)}{f', {short}' if calendar.short_days else ''}"
    said = f"{calendar.name}: {days}, {calendar.pupils:,} students."
    asked.console.line(f"{said} {calendar_coverage(calendar, asked.today, asked.today + LOOK_AHEAD)}")
    return 0


def _days_off(spans: Sequence[DateSpan]) -> str:
    return wording.counted(len(spans), "break or day off", "breaks and days off")


def _save(asked: _Asked, calendar: SchoolCalendar) -> None:
    kept = asked.calendars.get(calendar.name)
    asked.records.save(calendar, asked.services.clock(), kept.revision if kept else 0)


def _from_region(asked: _Asked) -> SchoolCalendar:
    options, findings = asked.options, _too_many_pupils(asked.options.pupils)
    calendar = _region_calendar(options.source, asked.today)
    if calendar is None:
        message = "has no school breaks on record for these years"
        findings.append(Finding(ASKED, "REGION", options.source, message))
    if calendar is None or findings:
        raise InputFaults(tuple(findings))
    changes: dict[str, object] = {}
    if options.name:
        changes["name"] = options.name
    if options.pupils:
        changes["pupils"] = options.pupils
    if options.at:
        point = _where(asked, []).point
        changes |= {"latitude": point.latitude, "longitude": point.longitude, "towns": ()}
    return SchoolCalendar.model_validate({**calendar.model_dump(), **changes})


def _too_many_pupils(pupils: int | None) -> list[Finding]:
    if pupils is None or pupils <= MOST_PUPILS:
        return []
    return [Finding(ASKED, "--students", f"{pupils:,}", f"a calendar has at most {MOST_PUPILS:,} students")]


def _from_file(asked: _Asked, path: Path) -> SchoolCalendar:
    options, findings = asked.options, _too_many_pupils(asked.options.pupils)
    data = start_of(path, MOST_BYTES, findings)
    if data is None:
        raise InputFaults(tuple(findings))
    where = _where(asked, findings)
    if findings:
        raise InputFaults(tuple(findings))
    found = _read_file(asked, path, data, where.zone)
    ticked, short = _ticks(found.proposal, options)
    before = found.before
    own_place = before is not None and not options.at
    return school_calendar_from(
        found.proposal,
        name=options.name or (before.name if before else found.proposal.name[:80] or path.stem[:80]),
        country=before.country if before and own_place else where.country,
        subdivision=before.subdivision if before and own_place else where.subdivision,
        latitude=before.latitude if before and own_place else where.point.latitude,
        longitude=before.longitude if before and own_place else where.point.longitude,
        pupils=options.pupils or (before.pupils if before else _USUAL_PUPILS),
        ticked=ticked,
        short=short,
        source=path.name,
    )


def _read_file(asked: _Asked, path: Path, data: bytes, zone: ZoneInfo) -> SchoolFile:
    """A file's proposal; what is odd about it is remarked."""
    order = asked.options.dates
    read = read_school_file(
        data,
        path.name,
        DateSpan(first=asked.today - READ_BACK, last=asked.today + READ_AHEAD),
        zone,
        calendars=[kept.value for kept in asked.calendars.values()],
        order=DateOrder(order.replace("-", " ")) if order else None,
    )
    for finding in read.findings:
        if finding.weight is Weight.WARNING:
            asked.console.remark(f"warning: {finding}")
    return read.usable()


def _ticks(proposal: SchoolProposal, options: TaskOptions) -> tuple[frozenset[str], frozenset[str]]:
    """The keys of the entries without school, and of those on short days, with what the options say.

    Raises:
        InputFaults: no entry is called as an option says, or two say otherwise of one.
    """
    keys: dict[str, set[str]] = {}
    for one in proposal.entries:
        keys.setdefault(one.entry.summary.casefold(), set()).add(one.entry.key)
    findings: list[Finding] = []
    said: dict[str, str] = {}
    for option, titles in zip(_TITLES, (options.no_school, options.short, options.school), strict=True):
        for title in titles:
            called = " ".join(title.casefold().split())
            if called not in keys:
                near = difflib.get_close_matches(called, keys, n=2)
                hint = f"; did you mean {' or '.join(near)}?" if near else ""
                findings.append(Finding(ASKED, option, title[:60], f"no entry is called that{hint}"))
            elif said.setdefault(called, option) != option:
                message = f"{said[called]} says otherwise of it"
                findings.append(Finding(ASKED, option, title[:60], message))
    if findings:
        raise InputFaults(tuple(findings))
    told: dict[str, set[str]] = {option: set() for option in _TITLES}
    for title, option in said.items():
        told[option] |= keys[title]
    ticked = (proposal.ticked | told["--no-school"]) - told["--short"] - told["--school"]
    return ticked, (proposal.short | told["--short"]) - told["--no-school"] - told["--school"]


def _look(asked: _Asked) -> int:
    """Tell what each entry of a file is taken for; nothing is changed."""
    path, findings = path_from(asked.options.source), list[Finding]()
    data = start_of(path, MOST_BYTES, findings)
    if data is None:
        raise InputFaults(tuple(findings))
    zone = needed(asked.family).household.home.zone
    proposal = _read_file(asked, path, data, zone).proposal
    ticked, short = _ticks(proposal, asked.options)
    asked.console.line(
        f"It speaks about {wording.day(proposal.known.first)} to {wording.day(proposal.known.last)}."
    )
    for heading, entries in (
        ("No school:", [one for one in proposal.entries if one.entry.key in ticked]),
        ("Short days, with school:", [one for one in proposal.entries if one.entry.key in short]),
        ("School as always:", [one for one in proposal.entries if one.entry.key not in ticked | short]),
    ):
        asked.console.listed(heading, [_entry(one) for one in entries])
    return 0


def _entry(one: ProposedEntry) -> str:
    days = DateSpan(first=one.entry.first_day, last=one.entry.last_day, name=one.entry.summary)
    return f"{_span(days)} ({one.reason})"


def _where(asked: _Asked, findings: list[Finding]) -> Where:
    """Where the pupils live: as the option says, else at home."""
    home, text = needed(asked.family, *findings).household.home, asked.options.at
    found = where_in(text, "--at", home, findings) if text else home
    if found is None:
        raise InputFaults(tuple(findings))
    return found


def _guess(asked: _Asked) -> int:
    calendar = with_next_year_expected(asked.called(asked.options.name).value)
    _save(asked, calendar)
    said = f"Guessed for {calendar.name}: {_days_off(calendar.expected)}."
    asked.console.line(f"{said} {calendar_coverage(calendar, asked.today, asked.today + LOOK_AHEAD)}")
    return 0


def _remove(asked: _Asked) -> int:
    kept = asked.called(asked.options.name)
    asked.records.remove(SchoolCalendar, kept.value.name, asked.services.clock(), kept.revision)
    asked.console.line(f"{kept.value.name} is removed.")
    return 0


_TASKS: Mapping[str, Callable[[_Asked], int]] = {
    "list": _list,
    "regions": _regions,
    "show": _show,
    "add": _add,
    "look": _look,
    "guess": _guess,
    "remove": _remove,
}
