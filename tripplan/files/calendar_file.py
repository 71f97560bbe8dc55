"""Writes planned outings as a calendar file that every calendar program reads alike (RFC 5545)."""

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import UTC, datetime, time, timedelta
from enum import StrEnum
from uuid import UUID, uuid5
from zoneinfo import ZoneInfo

from icalendar import Alarm, Calendar, Event, Timezone

from tripplan.errors import PlanError
from tripplan.files.plain_text import lines, one_line
from tripplan.files.time_zone_rules import vtimezone
from tripplan.planning.planned import PlanStatus
from tripplan.planning.where import Point
from tripplan.version import __version__

_OUTINGS = UUID("6f0f5d1e-0c0c-4c54-9c3b-2f6d3a1b7e90")
_WEB = re.compile(r"https?://[!-~]+", re.IGNORECASE)
_EVENING = time(19, 0)


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


def usual_reminders(leave_home: datetime) -> tuple[Reminder, ...]:
    """To pack at seven the evening before, and to get going an hour before leaving.

    Args:
        leave_home: zone-aware, by the clock at home.
    """
    evening = datetime.combine(leave_home.date() - timedelta(days=1), _EVENING, leave_home.tzinfo)
    ahead = leave_home.astimezone(UTC) - evening.astimezone(UTC)
    return (
        Reminder(int(ahead.total_seconds() // 60), "Pack for tomorrow's outing"),
        Reminder(60, "Leave in an hour"),
    )


def calendar_file(entries: Sequence[OutingEntry], *, written_at: datetime) -> bytes:
    """A calendar file (.ics) with one outing or many.

    There is no METHOD, so programs import the entries instead of treating them as an invitation. Times
    stand in their own zone where the file can say its rules truly, else in UTC; never without a zone.

    Args:
        entries: at least one; no two share a UID.
        written_at: zone-aware; becomes every entry's DTSTAMP.

    Raises:
        PlanError: there is no entry, two share a UID, or `written_at` has no zone.

    Source: RFC 5545, sections 3.4, 3.6.1, 3.6.5 and 3.6.6.
    """
    if not entries:
        raise PlanError("a calendar file needs at least one entry")
    if len({entry.uid for entry in entries}) < len(entries):
        raise PlanError("two entries share a UID; a calendar would keep only one of them")
    if written_at.utcoffset() is None:
        raise PlanError("the time of writing needs its time zone")
    parts = [part for entry in entries for part in _parts(entry)]
    zones = _zones(moment for part in parts for moment in (part.start, part.end))
    calendar = Calendar()
    calendar.add("VERSION", "2.0")
    calendar.add("PRODID", f"-//tripplan//tripplan {__version__}//EN")
    calendar.add("CALSCALE", "GREGORIAN")
    for _, component in sorted(zones.items()):
        calendar.add_component(component)
    for part in parts:
        calendar.add_component(_event(part, zones, written_at))
    written: bytes = calendar.to_ical()
    return written


@dataclass(frozen=True)
class _Part:
    """One entry of the file: a whole outing or a part of it."""

    uid: str
    summary: str
    start: datetime
    end: datetime
    entry: OutingEntry
    described: bool = True
    reminders: tuple[Reminder, ...] = ()


def _parts(entry: OutingEntry) -> list[_Part]:
    # The visit keeps the outing's own UID, so that changing the layout moves the entry and makes no twin.
    name = one_line(entry.summary)
    uid = one_line(entry.uid)
    if entry.layout is EntryLayout.WHOLE:
        return [_Part(uid, name, entry.start, entry.end, entry, reminders=entry.reminders)]
    parts = [
        _Part(f"{uid}-there", f"Leave home: {name}", entry.start, entry.arrive, entry, described=False),
        _Part(uid, name, entry.arrive, entry.leave_place, entry),
        _Part(f"{uid}-back", f"Way home: {name}", entry.leave_place, entry.end, entry, described=False),
    ]
    first, *rest = (part for part in parts if part.start.astimezone(UTC) < part.end.astimezone(UTC))
    return [replace(first, reminders=entry.reminders), *rest]


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


def _event(part: _Part, zones: Mapping[str, Timezone], written_at: datetime) -> Event:
    entry = part.entry
    cancelled = entry.status is PlanStatus.CANCELLED
    start, end = _written((part.start, part.end), zones)
    event = Event()
    event.add("UID", part.uid)
    event.add("DTSTAMP", written_at.astimezone(UTC).replace(microsecond=0))
    event.add("DTSTART", start.replace(microsecond=0))
    event.add("DTEND", end.replace(microsecond=0))
    event.add("SUMMARY", part.summary)
    event.add("SEQUENCE", entry.sequence)
    event.add("STATUS", entry.status.upper())
    event.add("TRANSP", "TRANSPARENT" if cancelled else "OPAQUE")
    if entry.last_modified is not None:
        event.add("LAST-MODIFIED", entry.last_modified.astimezone(UTC).replace(microsecond=0))
    if entry.location:
        event.add("LOCATION", one_line(entry.location))
    if entry.point is not None:
        event.add("GEO", (_degrees(entry.point.latitude), _degrees(entry.point.longitude)))
    if _WEB.fullmatch(entry.url):
        event.add("URL", entry.url)
    if entry.description and part.described:
        event.add("DESCRIPTION", lines(entry.description))
    topics = [topic for topic in map(one_line, entry.categories) if topic]
    if topics:
        event.add("CATEGORIES", topics)
    for reminder in () if cancelled else part.reminders:
        event.add_component(_alarm(reminder))
    return event


def _alarm(reminder: Reminder) -> Alarm:
    alarm = Alarm()
    alarm.add("ACTION", "DISPLAY")
    alarm.add("DESCRIPTION", one_line(reminder.text))
    alarm.add("TRIGGER", -timedelta(minutes=reminder.minutes_before))
    return alarm


def _degrees(value: float) -> float:
    """To about a metre, and never small enough for an exponent, which a calendar file cannot hold."""
    return round(value, 5) if abs(value) >= 0.0001 else 0.0
