"""Files that stand in for records: a household, place cards, school calendars.

What is wrong with them goes to a list of findings, so that every fault of a command is told at once.
"""

import re
from collections.abc import Mapping, Sequence
from datetime import date
from pathlib import Path

from tripplan.commands.input.card_files import card_files
from tripplan.commands.input.settings import ASKED
from tripplan.documents.calendars.calendars import DateSpan, SchoolCalendar
from tripplan.documents.family.household import Household
from tripplan.documents.places.place import Place
from tripplan.documents.where import Where
from tripplan.errors import Finding, InputFaults, Weight
from tripplan.files.calendar_reader.content import MOST_BYTES
from tripplan.files.calendars.school_calendar_file import school_calendar_from
from tripplan.files.calendars.school_file import read_school_file
from tripplan.files.cards.household_file import load_household
from tripplan.files.cards.place_card import load_place_card
from tripplan.files.demo import READ_AHEAD, READ_BACK
from tripplan.files.locations.gazetteer import NotFound
from tripplan.files.locations.where_text import locate_text
from tripplan.files.toml.reading_result import ReadResult, Value
from tripplan.regular_file import open_regular


def as_asked(read: ReadResult[Value], options: Mapping[str, str], found: Sequence[Finding] = ()) -> Value:
    """What options say, read as a form; its faults are told by the options.

    Args:
        read: the form.
        options: the option that each field comes from, by the last named step of the field's path.
        found: faults that were found elsewhere.

    Raises:
        InputFaults: the form has a fault, or one was found elsewhere.
    """
    if read.value is not None and not found:
        return read.value
    raise InputFaults(
        (
            *found,
            *(
                Finding(ASKED, _option_of(fault.field, options), fault.value, fault.message)
                for fault in read.findings
                if fault.weight is Weight.FAULT
            ),
        )
    )


def _option_of(field: str, options: Mapping[str, str]) -> str:
    steps = re.sub(r"\[\d+\]", "", field).split(".")
    return next((options[step] for step in reversed(steps) if step in options), "")


def household_in(path: str, today: date, findings: list[Finding]) -> Household | None:
    """The household in a file."""
    read = load_household(Path(path), today)
    findings.extend(read.findings)
    return read.value


def places_in(paths: Sequence[str], today: date, findings: list[Finding]) -> tuple[Place, ...]:
    """The places on cards and in folders of cards."""
    places: dict[str, Place] = {}
    for path in card_files(paths, findings):
        read = load_place_card(path, today)
        findings.extend(read.findings)
        if read.value is None:
            continue
        if read.value.id in places:
            message = "another card that was named has the same id"
            findings.append(Finding(path.name, "id", read.value.id, message))
        places[read.value.id] = read.value
    return tuple(places.values())


def school_calendars_in(
    paths: Sequence[str], home: Where, today: date, findings: list[Finding]
) -> tuple[SchoolCalendar, ...]:
    """The school calendars in files, taken to be those of districts around the home.

    Which entries mean days without school is guessed from their titles.
    """
    found = (_school_calendar(Path(path), home, today, findings) for path in paths)
    return tuple(calendar for calendar in found if calendar is not None)


def _school_calendar(path: Path, home: Where, today: date, findings: list[Finding]) -> SchoolCalendar | None:
    data = start_of(path, MOST_BYTES, findings)
    if data is None:
        return None
    window = DateSpan(first=today - READ_BACK, last=today + READ_AHEAD)
    read = read_school_file(data, path.name, window, home.zone)
    findings.extend(read.findings)
    if read.value is None:
        return None
    return school_calendar_from(
        read.value.proposal,
        name=path.stem[:80],
        country=home.country,
        subdivision=home.subdivision,
        latitude=home.point.latitude,
        longitude=home.point.longitude,
        source=path.name,
    )


def where_in(text: str, field: str, home: Where, findings: list[Finding]) -> Where | None:
    """The location that a text names, near home where it may be several; else a fault of that field."""
    try:
        found = locate_text(text, home)
    except ValueError as trouble:
        findings.append(Finding(ASKED, field, text[:60], str(trouble)))
        return None
    if isinstance(found, NotFound):
        findings.append(Finding(ASKED, field, text[:60], found.message))
        return None
    return found


def start_of(path: Path, most: int, findings: list[Finding]) -> bytes | None:
    """A file's bytes, no more than are needed to see that it is too large; None where it cannot be opened.

    Args:
        path: the file.
        most: the size up to which it is wanted [bytes].
        findings: told where it cannot be opened.
    """
    try:
        with open_regular(path) as file:
            return file.read(most + 1)
    except OSError as unreadable:
        findings.append(Finding(path.name, "", "", f"cannot be opened: {unreadable.strerror}"))
        return None
