"""What is asked: whose outing, which places and which days, from options, records and files."""

import difflib
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, time, timedelta
from typing import Literal

from tripplan.clock import Clock, clock_from
from tripplan.commands.input.on_record import opened, say_whose
from tripplan.commands.input.reading import household_in, places_in, school_calendars_in
from tripplan.commands.input.settings import ASKED, date_in, settings_from
from tripplan.commands.options.shared import USUAL_WEEKS, PlanningOptions
from tripplan.commands.output.console import Console
from tripplan.documents.calendars.calendars import DateSpan
from tripplan.documents.family.member import Member
from tripplan.documents.places.place import Place
from tripplan.errors import Finding, InputFaults, Weight
from tripplan.language.locales import speak
from tripplan.planning.family.family import Family
from tripplan.records.location import data_folder
from tripplan.records.store import Records
from tripplan.roads.network import RoadNetwork
from tripplan.services import family_in, with_roads

LONGEST_SPAN_DAYS = 549
"""Eighteen months [days]."""
_LONGEST_SHOWN = 60
_CLOCK = re.compile(r"([01]?\d|2[0-3]):([0-5]\d)")

Whose = Literal["demo", "own", "files"]


@dataclass(frozen=True)
class Question:
    """What every command of the planning is asked about.

    Attributes:
        family: people, places, calendars.
        party: who goes.
        places: those that are named; none where no place is.
        span: the days that may be chosen; one for a fixed day.
        today: the date by the clock at home.
        clock: the present moment.
        whose: the invented family, the one on record, or one from a file.
        records: those that were opened, if any.
    """

    family: Family
    party: tuple[Member, ...]
    places: tuple[Place, ...]
    span: DateSpan
    today: date
    clock: Clock
    whose: Whose
    records: Records | None

    def say_whose(self, console: Console) -> None:
        """Tell in words that the family is invented, where it is."""
        say_whose(self.family.household, console)


def ask(
    options: PlanningOptions,
    console: Console,
    environment: Mapping[str, str],
    place: str | Sequence[str] | None = None,
) -> Question:
    """Gather what the options ask about.

    A household file stands for the family on record and for all it knows: its calendars and its known
    drives. Place cards stand for the places on record. With both, the records are not opened.

    Args:
        options: as the parser read them.
        console: told of warnings.
        environment: environment variables.
        place: ids or names of places that are meant.

    Raises:
        InputFaults: what is asked cannot be understood; every fault at once.
        TripplanError: the records cannot be used.
    """
    settings = settings_from(options, environment)
    clock = clock_from(settings)
    whose: Whose = "files"
    records: Records | None = None
    if not (options.household and options.places):
        on_record = opened(options, settings)
        for warning in on_record.services.warnings():
            console.remark(f"warning: {warning}")
        copy = on_record.services.lost_copy()
        if copy is not None:
            console.remark(f"To put that copy back: tripplan restore {copy.day} --yes")
        records = on_record.records
        if not options.household:
            whose = on_record.data
    findings: list[Finding] = []
    family = _family(options, records, clock, findings)
    today = _today(clock, family)
    party = _party(options.party, family, findings)
    places = _places(place or (), family, findings)
    span = _span(options, today, findings)
    for finding in findings:
        if finding.weight is Weight.WARNING:
            console.remark(f"warning: {finding}")
    faults = tuple(finding for finding in findings if finding.weight is Weight.FAULT)
    if faults or family is None or span is None:
        raise InputFaults(faults)
    family = with_roads(family, RoadNetwork(data_folder(settings))).at(clock())
    return Question(family, party, places, span, today, clock, whose, records)


def _today(clock: Clock, family: Family | None) -> date:
    return clock().astimezone(family.household.home.zone if family else None).date()


def _family(
    options: PlanningOptions, records: Records | None, clock: Clock, findings: list[Finding]
) -> Family | None:
    family = family_in(records) if records else None
    today = _today(clock, family)
    if options.household:
        household = household_in(options.household, today, findings)
        family = Family(household, family.places if family else ()) if household else None
        if household:
            speak(household.locale)
    elif family is None:
        message = "there is no household on record; name a household file, or use --demo"
        findings.append(Finding(ASKED, "--household", "", message))
    if options.places:
        places = places_in(options.places, today, findings)
        family = replace(family, places=places) if family else None
    if options.school_calendar and family:
        home = family.household.home
        schools = school_calendars_in(options.school_calendar, home, today, findings)
        family = replace(family, school_calendars=(*family.school_calendars, *schools))
    if family and not family.places and not options.places:
        message = "there are no places on record; name place cards, or a folder of them"
        findings.append(Finding(ASKED, "--places", "", message))
    return family


def _party(names: Sequence[str] | None, family: Family | None, findings: list[Finding]) -> tuple[Member, ...]:
    if family is None:
        return ()
    called = {member.name.casefold(): member.name for member in family.household.members}
    wanted = names or tuple(called)
    for name in wanted:
        if name.casefold() not in called:
            message = f"nobody of that name; the household is {', '.join(called.values())}"
            findings.append(Finding(ASKED, "--party", name[:_LONGEST_SHOWN], message))
    return family.party([called[name.casefold()] for name in wanted if name.casefold() in called] or None)


def _places(names: str | Sequence[str], family: Family | None, findings: list[Finding]) -> tuple[Place, ...]:
    """The places with these ids or names, each once."""
    if family is None or not family.places:
        return ()
    named = (names,) if isinstance(names, str) else names
    found = [place_called(name, family.places, findings) for name in named]
    return tuple({place.id: place for place in found if place is not None}.values())


def place_called(
    name: str, places: Sequence[Place], findings: list[Finding], option: str = "PLACE"
) -> Place | None:
    """The place with an id or a name; a beginning that fits only one is enough. Else the option's fault."""
    said = name.strip().casefold()
    fitting = [place for place in places if said in (place.id, place.name.casefold())]
    if not fitting and said:
        fitting = [p for p in places if p.id.startswith(said) or p.name.casefold().startswith(said)]
    if len(fitting) == 1:
        return fitting[0]
    if fitting:
        message = f"several places are called that: {', '.join(place.id for place in fitting)}"
    else:
        ids = {place.id: place.id for place in places}
        ids |= {place.name.casefold(): place.id for place in places}
        near = dict.fromkeys(ids[word] for word in difflib.get_close_matches(said, ids, cutoff=0.5))
        known = ", ".join(place.id for place in places)
        hint = f"did you mean {' or '.join(near)}?" if near else f"known: {known}"
        message = f"no place is called that; {hint}"
    findings.append(Finding(ASKED, option, name[:_LONGEST_SHOWN], message))
    return None


def _span(options: PlanningOptions, today: date, findings: list[Finding]) -> DateSpan | None:
    """The days asked about; six weeks from tomorrow when none are given."""
    fields = {"first": "--from", "last": "--to", "on": "--on", "day": "DATE"}
    asked = {name: getattr(options, name, None) for name in fields}
    read = {name: date_in(text, fields[name], findings) for name, text in asked.items() if text is not None}
    if None in read.values():
        return None
    dates = {name: day for name, day in read.items() if day is not None}
    fixed = dates.get("day") or dates.get("on")
    if fixed and len(dates) > 1:
        message = "one day, or a span with --from and --to, not both"
        findings.append(Finding(ASKED, "--on", str(fixed), message))
        return None
    if fixed:
        return DateSpan(first=fixed, last=fixed)
    tomorrow, length = today + timedelta(days=1), timedelta(weeks=USUAL_WEEKS, days=-1)
    last = dates.get("last")
    first = dates.get("first") or (min(tomorrow, last) if last else tomorrow)
    last = last or first + length
    if first <= last < first + timedelta(days=LONGEST_SPAN_DAYS):
        return DateSpan(first=first, last=last)
    message = f"a span ends no earlier than it begins ({first}) and has at most {LONGEST_SPAN_DAYS} days"
    findings.append(Finding(ASKED, "--to", str(last), message))
    return None


def clock_in(text: str | None, field: str, findings: list[Finding]) -> time | None:
    """A time of day, such as 16:30; None where there is none, with a finding where it cannot be read."""
    if text is None:
        return None
    found = _CLOCK.fullmatch(text)
    if found is None:
        findings.append(Finding(ASKED, field, text[:_LONGEST_SHOWN], "a time of day reads like 16:30"))
        return None
    return time(int(found[1]), int(found[2]))
