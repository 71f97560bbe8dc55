"""The demo: an invented family, its places and calendars, read from files as any parent's are."""

from dataclasses import dataclass
from datetime import date, timedelta
from pathlib import Path
from typing import Annotated
from zoneinfo import ZoneInfo

from pydantic import Field

from tripplan.documents.calendars.calendars import DateSpan, FamilyCalendar, SchoolCalendar
from tripplan.documents.calendars.family_days import FamilyDays
from tripplan.documents.family.household import Household
from tripplan.documents.logbook.settings import LogbookSettings
from tripplan.documents.model import Name, Written
from tripplan.documents.places.place import PlaceId
from tripplan.documents.study.units import StudyUnit
from tripplan.documents.study.wishes import ProgrammeWishes
from tripplan.documents.where import Where
from tripplan.errors import Finding, InputFaults, Weight
from tripplan.files.calendar_reader.content import CalendarContent
from tripplan.files.calendar_reader.reading import read_here
from tripplan.files.calendars.family_calendar_file import family_calendar_from
from tripplan.files.calendars.school_calendar_file import propose_school_calendar, school_calendar_from
from tripplan.files.cards.household_file import load_household
from tripplan.files.cards.logbook_file import load_logbook_entry
from tripplan.files.cards.place_card import load_place_cards
from tripplan.files.toml.written import read_form

READ_AHEAD = timedelta(days=550)
"""How far ahead calendars are read; a plan reaches 18 months at most."""
READ_BACK = timedelta(days=366)
_ALL_YEARS = DateSpan(first=date(2000, 1, 1), last=date(2100, 12, 31))
"""The demo's school calendars are read whole, so that in later years it shows where they ended."""


class _CalendarFile(Written):
    """A calendar file of the demo."""

    file: Name
    name: Name


class _SchoolFile(_CalendarFile):
    """A school district's calendar file, with what the file itself does not say."""

    where: Where
    pupils: Annotated[int, Field(ge=1)]


class _Contents(Written):
    """What the demo is made of; the file demo.toml."""

    compare: tuple[PlaceId, ...]
    school_calendars: tuple[_SchoolFile, ...] = ()
    family_calendars: tuple[_CalendarFile, ...] = ()
    own_week: FamilyDays = FamilyDays()
    study_units: tuple[StudyUnit, ...] = ()
    programme: ProgrammeWishes | None = None
    logbook: LogbookSettings = LogbookSettings()


@dataclass(frozen=True)
class Demo:
    """Everything the demo puts on record.

    Attributes:
        documents: household, places, school and family calendars, the family's own week, study units,
            outings that are over.
        compared: ids of the places that stand side by side at first.
    """

    documents: tuple[Written, ...]
    compared: tuple[PlaceId, ...]


def read_demo(folder: Path, today: date) -> Demo:
    """Read the demo's files.

    Args:
        folder: holds demo.toml, household.toml, places/, logbook/ and the calendars demo.toml names.
        today: the family's calendar is read from a year back to 18 months ahead of it; later outings are left
            out of the logbook.

    Raises:
        InputFaults: a file is missing or damaged; names every fault of that file.
    """
    contents = read_form(_bytes(folder / "demo.toml"), "demo.toml", _Contents).usable()
    household = _born_by(today, load_household(folder / "household.toml", date.max).usable())
    cards = load_place_cards(folder / "places", today)
    faults = tuple(finding for finding in cards.findings if finding.weight is Weight.FAULT)
    if faults or not cards.places:
        raise InputFaults(faults or (Finding(str(folder / "places"), "", "", "holds no place card"),))
    window = DateSpan(first=today - READ_BACK, last=today + READ_AHEAD)
    zone = household.home.zone
    schools = (_school(folder, listed, zone) for listed in contents.school_calendars)
    families = (_family(folder, listed, window, zone) for listed in contents.family_calendars)
    logbook = (load_logbook_entry(path, date.max) for path in sorted((folder / "logbook").glob("*.toml")))
    entries = (entry for read in logbook if (entry := read.usable()).day <= today)
    known = {place.id for place in cards.places}
    return Demo(
        documents=(
            household,
            *cards.places,
            *schools,
            *families,
            contents.own_week,
            contents.logbook,
            *entries,
            *contents.study_units,
            *((contents.programme,) if contents.programme else ()),
        ),
        compared=tuple(place_id for place_id in contents.compare if place_id in known),
    )


def _born_by(today: date, household: Household) -> Household:
    """The household as it was on a day; a computer's clock may stand before the youngest is born."""
    members = tuple(member for member in household.members if member.born.earliest <= today)
    names = {member.name for member in members}
    passes = tuple(held for held in household.passes if names.issuperset(held.holders))
    return household.model_copy(update={"members": members, "passes": passes})


def _bytes(path: Path) -> bytes:
    try:
        return path.read_bytes()
    except OSError as unreadable:
        finding = Finding(path.name, "", "", f"cannot be opened: {unreadable.strerror}")
        raise InputFaults((finding,)) from unreadable


def _content(folder: Path, listed: _CalendarFile, window: DateSpan, zone: ZoneInfo) -> CalendarContent:
    return read_here(_bytes(folder / listed.file), listed.file, window, zone).usable()


def _school(folder: Path, listed: _SchoolFile, zone: ZoneInfo) -> SchoolCalendar:
    proposal = propose_school_calendar(_content(folder, listed, _ALL_YEARS, zone), listed.file).usable()
    point = listed.where.point
    return school_calendar_from(
        proposal,
        name=listed.name,
        country=listed.where.country,
        subdivision=listed.where.subdivision,
        latitude=point.latitude,
        longitude=point.longitude,
        pupils=listed.pupils,
        source=listed.file,
    )


def _family(folder: Path, listed: _CalendarFile, window: DateSpan, zone: ZoneInfo) -> FamilyCalendar:
    content = _content(folder, listed, window, zone)
    return family_calendar_from(content, name=listed.name, source=listed.file, covers=window, keep_names=True)
