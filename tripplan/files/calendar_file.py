"""Writes planned outings as a calendar file that every calendar program reads alike (RFC 5545)."""

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import UTC, datetime, timedelta
from enum import StrEnum
from uuid import UUID, uuid5
from zoneinfo import ZoneInfo

from icalendar import Alarm, Calendar, Event, Timezone, Todo
from icalendar.prop import vCategory, vText

from tripplan.documents.outings.planned import PlanStatus
from tripplan.documents.where import Point
from tripplan.errors import PlanError
from tripplan.files.plain_text import lines, one_line
from tripplan.files.time_zone_rules import vtimezone
from tripplan.version import __version__

_OUTINGS = UUID("6f0f5d1e-0c0c-4c54-9c3b-2f6d3a1b7e90")
_WEB = re.compile(r"https?://[!-~]+", re.IGNORECASE)
_THERE, _BACK, _TO_DO, _ENTRY = "-there", "-back", "-todo", "-entry"
_A_MOMENT = timedelta(minutes=15)
"""How long a thing to do shows on the calendar where it is an entry."""


class EntryLayout(StrEnum):
    """How an outing lies on the calendar."""

    WHOLE = "one entry"
    PARTS = "drive, visit and way home"


@dataclass(frozen=True)
class Reminder:
    """Something to be told in time.

    Attributes:
        minutes_before: before leaving home [min].
        text: what the reminder says.
    """

    minutes_before: int
    text: str


@dataclass(frozen=True)
class ToDo:
    """Something to be done before an outing.

    Attributes:
        ending: tells its UID from the outing's own.
        text: what is to be done.
        start: when it is reminded of; zone-aware.
        due: until when; zone-aware, later than the start.
        as_entry: whether it is written as a short entry, for programs that know no to-dos.
    """

    ending: str
    text: str
    start: datetime
    due: datetime
    as_entry: bool = False

    def __post_init__(self) -> None:
        if self.start.utcoffset() is None or self.due.utcoffset() is None:
            raise PlanError("a thing to do needs time zones")
        if self.start.astimezone(UTC) >= self.due.astimezone(UTC):
            raise PlanError("a thing to do is due after it is reminded of")


@dataclass(frozen=True)
class OutingEntry:
    """One outing as it goes onto a calendar. Nothing gets into the file that does not stand here.

    Attributes:
        uid: names the outing for good, see `outing_uid`; the same one moves the same entry.
        summary: the title.
        start: leaving home, load-up included.
        arrive: being let in.
        leave_place: setting out for the way home.
        end: everybody is home again. All four are zone-aware and in order.
        sequence: how often the entry was changed after it was first handed out.
        last_modified: when the outing was last changed; zone-aware.
        status: how firm it is; a cancelled one is taken off the calendar and reminds nobody.
        location: where, in words.
        point: where, for a map.
        url: the place's own page; left out unless it is a web address.
        description: everything else, in lines.
        categories: topics of study.
        reminders: in any order.
        layout: one entry, or one per part of the day.
        busy: whether it marks its time as taken.
        colour: a CSS colour keyword; the calendar's own colour when left out.
        to_dos: what is to be done before; each is an entry or a to-do of its own.
        withdrawn: endings of the UIDs of parts and to-dos that earlier files held; those that this one does
            not hold are written as cancelled.

    Raises:
        PlanError: a time has no zone, the times are out of order, or there is no uid.
    """

    uid: str
    summary: str
    start: datetime
    arrive: datetime
    leave_place: datetime
    end: datetime
    sequence: int = 0
    last_modified: datetime | None = None
    status: PlanStatus = PlanStatus.CONFIRMED
    location: str = ""
    point: Point | None = None
    url: str = ""
    description: str = ""
    categories: tuple[str, ...] = ()
    reminders: tuple[Reminder, ...] = ()
    layout: EntryLayout = EntryLayout.WHOLE
    busy: bool = True
    colour: str = ""
    to_dos: tuple[ToDo, ...] = ()
    withdrawn: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        times = (self.start, self.arrive, self.leave_place, self.end)
        if any(moment.utcoffset() is None for moment in times):
            raise PlanError("an entry's times need their time zones")
        instants = [moment.astimezone(UTC) for moment in times]
        if instants != sorted(instants) or instants[0] == instants[-1]:
            raise PlanError("an entry runs from leaving home over the visit to being home again")
        if not one_line(self.uid) or self.sequence < 0:
            raise PlanError("an entry needs a uid, and its sequence counts from 0")


def outing_uid(outing: str) -> str:
    """A UID for an outing, always the same for the same outing.

    Args:
        outing: whatever names the outing in the family's records; it cannot be read back from the UID.

    Source: RFC 7986, section 5.3 (a UID says nothing about what it names); RFC 9562, section 5.5.
    """
    return str(uuid5(_OUTINGS, outing))


def calendar_file(entries: Sequence[OutingEntry], *, written_at: datetime) -> bytes:
    """A calendar file (.ics) with one outing or many.

    There is no METHOD, so programs import the entries instead of treating them as an invitation. Times
    stand in their own zone where the file can say its rules truly, else in UTC; never without a zone.

    Args:
        entries: at least one; no two share a UID.
        written_at: zone-aware; becomes every entry's DTSTAMP.

    Raises:
        PlanError: there is no entry, two share a UID, or `written_at` has no zone.

    Source: RFC 5545, sections 3.4, 3.6.1, 3.6.2, 3.6.5 and 3.6.6; RFC 7986, section 5.9 (COLOR).
    """
    if not entries:
        raise PlanError("a calendar file needs at least one entry")
    if len({one_line(entry.uid) for entry in entries}) < len(entries):
        raise PlanError("two entries share a UID; a calendar would keep only one of them")
    if written_at.utcoffset() is None:
        raise PlanError("the time of writing needs its time zone")
    return _file([part for entry in entries for part in (*_parts(entry), *_gone(entry))], written_at)


def calendar_objects(entry: OutingEntry, *, written_at: datetime) -> Mapping[str, bytes]:
    """One outing as a calendar server keeps it: a file for every UID, without those that are withdrawn.

    Args:
        entry: the outing.
        written_at: zone-aware; becomes DTSTAMP.

    Returns:
        The files by their UIDs.

    Source: RFC 4791, section 4.1 (one UID and one kind of component in a calendar object, no METHOD).
    """
    return {part.uid: _file([part], written_at) for part in _parts(entry)}


def endings(entry: OutingEntry) -> tuple[str, ...]:
    """What the UIDs of an outing's parts and to-dos have after the outing's own."""
    uid = one_line(entry.uid)
    return tuple(part.uid.removeprefix(uid) for part in _parts(entry) if part.uid != uid)


@dataclass(frozen=True)
class _Part:
    """One component of the file: a whole outing, a part of it, or something to do before it."""

    uid: str
    summary: str
    start: datetime
    end: datetime
    entry: OutingEntry
    status: PlanStatus
    described: bool = True
    busy: bool = True
    is_to_do: bool = False
    reminders: tuple[Reminder, ...] = ()


def _parts(entry: OutingEntry) -> list[_Part]:
    # The visit keeps the outing's own UID, so that changing the layout moves the entry and makes no twin.
    name = one_line(entry.summary)
    uid = one_line(entry.uid)
    whole = _Part(
        uid, name, entry.start, entry.end, entry, entry.status, busy=entry.busy, reminders=entry.reminders
    )
    to_dos = [_to_do(entry, to_do) for to_do in entry.to_dos]
    if entry.layout is EntryLayout.WHOLE:
        return [whole, *to_dos]
    way = replace(whole, described=False, reminders=())
    parts = [
        replace(way, uid=f"{uid}{_THERE}", summary=f"Leave home: {name}", end=entry.arrive),
        replace(whole, start=entry.arrive, end=entry.leave_place, reminders=()),
        replace(way, uid=f"{uid}{_BACK}", summary=f"Way home: {name}", start=entry.leave_place),
    ]
    first, *rest = (part for part in parts if part.start.astimezone(UTC) < part.end.astimezone(UTC))
    return [replace(first, reminders=entry.reminders), *rest, *to_dos]


def _to_do(entry: OutingEntry, to_do: ToDo) -> _Part:
    end = to_do.due
    if to_do.as_entry:
        end = min(end, (to_do.start.astimezone(UTC) + _A_MOMENT).astimezone(to_do.start.tzinfo))
    return _Part(
        # A to-do cannot become an entry under one UID, so each has its own.
        f"{one_line(entry.uid)}-{one_line(to_do.ending)}{_ENTRY if to_do.as_entry else _TO_DO}",
        one_line(to_do.text),
        to_do.start,
        end,
        entry,
        entry.status,
        described=False,
        busy=False,
        is_to_do=not to_do.as_entry,
        reminders=(Reminder(0, to_do.text),),
    )


def _gone(entry: OutingEntry) -> list[_Part]:
    """Parts and to-dos that an earlier file held and this one takes back."""
    uid, here = one_line(entry.uid), endings(entry)
    return [
        _Part(
            f"{uid}{one_line(ending)}",
            one_line(entry.summary),
            entry.start,
            entry.end,
            entry,
            PlanStatus.CANCELLED,
            described=False,
            busy=False,
            is_to_do=ending.endswith(_TO_DO),
        )
        for ending in dict.fromkeys(entry.withdrawn)
        if ending not in here
    ]


def _file(parts: Sequence[_Part], written_at: datetime) -> bytes:
    zones = _zones(moment for part in parts for moment in (part.start, part.end))
    calendar = Calendar()
    calendar.add("VERSION", "2.0")
    calendar.add("PRODID", f"-//tripplan//tripplan {__version__}//EN")
    calendar.add("CALSCALE", "GREGORIAN")
    for _, component in sorted(zones.items()):
        calendar.add_component(component)
    for part in parts:
        calendar.add_component(_component(part, zones, written_at))
    written: bytes = calendar.to_ical()
    return written


def _zones(moments: Iterable[datetime]) -> Mapping[str, Timezone]:
    """The time zones the file can carry, by name."""
    years: dict[ZoneInfo, list[int]] = {}
    for moment in moments:
        if isinstance(moment.tzinfo, ZoneInfo):
            years.setdefault(moment.tzinfo, []).append(moment.year)
    carried = {zone.key: vtimezone(zone, min(found), max(found)) for zone, found in years.items()}
    return {key: component for key, component in carried.items() if component is not None}


def _written(moments: tuple[datetime, datetime], zones: Mapping[str, Timezone]) -> list[datetime]:
    """Times by their own clocks, or both in UTC where a clock would leave a doubt.

    A local time that comes twice when the clock goes back should mean the first one (RFC 5545, 3.3.5), but
    common readers differ; and one that the clock leaps over means nothing certain.
    """
    clocks = [moment.astimezone(UTC).astimezone(moment.tzinfo) for moment in moments]
    plain = all(
        isinstance(clock.tzinfo, ZoneInfo)
        and clock.tzinfo.key in zones
        and clock.replace(fold=0).utcoffset() == clock.replace(fold=1).utcoffset()
        for clock in clocks
    )
    return clocks if plain else [clock.astimezone(UTC) for clock in clocks]


class _Text(vText):
    """Text that keeps a backslash before a capital N, which the library writes as a line break."""

    def to_ical(self) -> bytes:
        """As in the file; a backslash is doubled (RFC 5545, 3.3.11)."""
        return rb"\\N".join(vText(part).to_ical() for part in self.split(r"\N"))


def _component(part: _Part, zones: Mapping[str, Timezone], written_at: datetime) -> Event | Todo:
    entry = part.entry
    cancelled = part.status is PlanStatus.CANCELLED
    start, end = _written((part.start, part.end), zones)
    made = Todo() if part.is_to_do else Event()
    made.add("UID", part.uid)
    made.add("DTSTAMP", written_at.astimezone(UTC).replace(microsecond=0))
    made.add("DTSTART", start.replace(microsecond=0))
    made.add("DUE" if part.is_to_do else "DTEND", end.replace(microsecond=0))
    made.add("SUMMARY", _Text(part.summary))
    made.add("SEQUENCE", entry.sequence)
    if part.is_to_do:
        made.add("STATUS", "CANCELLED" if cancelled else "NEEDS-ACTION")
    else:
        made.add("STATUS", part.status.upper())
        made.add("TRANSP", "OPAQUE" if part.busy and not cancelled else "TRANSPARENT")
    if part.uid != one_line(entry.uid):
        made.add("RELATED-TO", one_line(entry.uid))
    if entry.colour:
        made.add("COLOR", entry.colour)
    if entry.last_modified is not None:
        made.add("LAST-MODIFIED", entry.last_modified.astimezone(UTC).replace(microsecond=0))
    if entry.location:
        made.add("LOCATION", _Text(one_line(entry.location)))
    if entry.point is not None:
        made.add("GEO", (_degrees(entry.point.latitude), _degrees(entry.point.longitude)))
    if _WEB.fullmatch(entry.url):
        made.add("URL", entry.url)
    if entry.description and part.described:
        made.add("DESCRIPTION", _Text(lines(entry.description)))
    topics = vCategory([])
    topics.cats += [_Text(topic) for topic in map(one_line, entry.categories) if topic]
    if topics.cats:
        made.add("CATEGORIES", topics)
    for reminder in () if cancelled else part.reminders:
        made.add_component(_alarm(reminder))
    return made


def _alarm(reminder: Reminder) -> Alarm:
    alarm = Alarm()
    alarm.add("ACTION", "DISPLAY")
    alarm.add("DESCRIPTION", _Text(one_line(reminder.text)))
    alarm.add("TRIGGER", -timedelta(minutes=reminder.minutes_before))
    return alarm


def _degrees(value: float) -> float:
    """To about a metre, and never small enough for an exponent, which a calendar file cannot hold."""
    return round(value, 5) if abs(value) >= 0.0001 else 0.0
