"""Writes planned outings as a calendar file that every calendar program reads alike (RFC 5545)."""

import re
from collections.abc import Iterable, Mapping, Sequence
from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

from icalendar import Alarm, Calendar, Event, Timezone, Todo
from icalendar.prop import vCategory, vText

from tripplan.documents.outings.planned import PlanStatus
from tripplan.errors import PlanError
from tripplan.files.calendars.time_zone_rules import vtimezone
from tripplan.planning.calendar_entry.entry import EntryPart, OutingEntry, Reminder, parts_of, withdrawn_parts
from tripplan.values.plain_text import lines, one_line
from tripplan.version import __version__

_WEB = re.compile(r"https?://[!-~]+", re.IGNORECASE)


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
    return _file(
        [part for entry in entries for part in (*parts_of(entry), *withdrawn_parts(entry))], written_at
    )


def calendar_objects(entry: OutingEntry, *, written_at: datetime) -> Mapping[str, bytes]:
    """One outing as a calendar server keeps it: a file for every UID, without those that are withdrawn.

    Args:
        entry: the outing.
        written_at: zone-aware; becomes DTSTAMP.

    Returns:
        The files by their UIDs.

    Source: RFC 4791, section 4.1 (one UID and one kind of component in a calendar object, no METHOD).
    """
    return {part.uid: _file([part], written_at) for part in parts_of(entry)}


def _file(parts: Sequence[EntryPart], written_at: datetime) -> bytes:
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


def _component(part: EntryPart, zones: Mapping[str, Timezone], written_at: datetime) -> Event | Todo:
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
