"""When an entry of a calendar file happens: every moment with its zone, every end and rule within bounds."""

from datetime import UTC, date, datetime, time, timedelta, tzinfo
from typing import Any
from zoneinfo import ZoneInfo

from icalendar import Component, Event
from icalendar.prop import vDDDTypes

_DAY, _HOUR = timedelta(days=1), timedelta(hours=1)
_MOMENT = timedelta(microseconds=1)
_LONGEST = 366 * _DAY
"""How far an entry may reach beyond the span; a longer one is cut there."""
_MIDNIGHTS = (time(), time(23, 59), time(23, 59, 59))
"""How a day's end is written."""
_ZONES_APART = 4 * _HOUR
"""How far the clocks of one country's parts may lie apart [h]; Hawaii and the Midwest do."""
_CLOCK_CHANGES = (timedelta(0), _HOUR, 23 * _HOUR)
"""By how much some whole days miss a multiple of 24 hours, where the clock is changed between."""
_TIMES = ("DTSTART", "DTEND", "RECURRENCE-ID", "RDATE", "EXDATE")

When = date | datetime
"""A day, or a moment with its time zone."""


class Unreadable(ValueError):
    """An entry that cannot be understood; says which of its lines, or what stands in the way."""


def give_zones(event: Event, home: ZoneInfo) -> str:
    """Give every moment without a zone that of the start, or that at home.

    Returns:
        The name of a zone that nobody knows; the library leaves it out, and its moments are read by the clock
        at home.
    """
    own = _zone_of(time_of(event, "DTSTART")) or home
    unknown = ""
    for name in _TIMES:
        for prop in listed(event, name):
            zone_name = str(prop.params.get("TZID", ""))
            for one in getattr(prop, "dts", (prop,)):
                # A period counts where it begins.
                at = one.dt[0] if isinstance(one.dt, tuple) else one.dt
                if isinstance(at, datetime) and at.tzinfo is None:
                    unknown = unknown or zone_name
                    at = at.replace(tzinfo=home if zone_name else own)
                one.dt = at
    return unknown


def give_end(event: Event, last_day: date) -> None:
    """Give an entry its end by the clock of its start, never before it and not for ever.

    Source: RFC 5545, section 3.6.1 (without an end, a day lasts that day and a moment no time at all).
    """
    start = time_of(event, "DTSTART")
    if "DTEND" in event:
        event.pop("DURATION", None)
        end = time_of(event, "DTEND")
    else:
        end = event.end
    limit = max(_day_of(start), last_day) + _LONGEST
    if isinstance(start, datetime):
        zone = start.tzinfo
        end = min(moment_of(end, zone).astimezone(zone), moment_of(limit, zone))
    else:
        end = min(max(start + _DAY, _day_of(end)), limit)
    event.pop("DURATION", None)
    event["DTEND"] = vDDDTypes(max(start, end))


def give_until(event: Event, home: ZoneInfo, last_day: date) -> None:
    """Give every rule an UNTIL of the kind that the start calls for (RFC 5545, 3.3.10), not for ever on."""
    start = time_of(event, "DTSTART")
    zone = _zone_of(start) or home
    for rule in listed(event, "RRULE"):
        for until in rule.get("UNTIL", [])[:1]:
            if _day_of(until) > last_day + _DAY or not isinstance(until, datetime):
                until = datetime.combine(min(_day_of(until), last_day + 2 * _DAY), time(23, 59, 59), zone)
            elif until.tzinfo is None:
                until = until.replace(tzinfo=zone)
            in_time = isinstance(start, datetime)
            rule["UNTIL"] = [until.astimezone(UTC) if in_time else until.astimezone(zone).date()]


def time_of(event: Component, name: str) -> When:
    """The day or moment of a property.

    Raises:
        Unreadable: there is none, several, or it is something else.
    """
    found = event.get(name)
    if not isinstance(found, vDDDTypes) or not isinstance(found.dt, date):
        raise Unreadable(f"no {name}" if found is None else name)
    return found.dt


def clock_text(when: When) -> str:
    """A day or moment by its own clock, such as 2026-12-08T10:00:00."""
    return (when.replace(tzinfo=None) if isinstance(when, datetime) else when).isoformat()


def listed(event: Component, name: str) -> list[Any]:
    """The properties of a name, however many there are."""
    found = event.get(name, [])
    return found if isinstance(found, list) else [found]


def _zone_of(when: When) -> tzinfo | None:
    return when.tzinfo if isinstance(when, datetime) else None


def _day_of(when: When) -> date:
    return when.date() if isinstance(when, datetime) else when


def moment_of(when: When, zone: tzinfo | None) -> datetime:
    """A moment as it is, a day as its midnight in a zone."""
    return when if isinstance(when, datetime) else datetime.combine(when, time(), zone)


def whole_days(start: When, end: When, begins: datetime, ends: datetime) -> tuple[date, date] | None:
    """The days that a timed entry means, where it runs from midnight to midnight by somebody's clock.

    That clock is the one it is written by. Many programs write every time in UTC; then it may also be one
    that lies a few hours from that at home.

    Args:
        start: by the clock it is written by.
        end: likewise.
        begins: the same moment in the home's zone.
        ends: likewise.
    """
    if not isinstance(start, datetime) or not isinstance(end, datetime) or start >= end:
        return None
    if start.time() == time() and end.time() in _MIDNIGHTS:
        return start.date(), (end - _MOMENT).date()
    opens, closes = (_nearest_midnight(moment) for moment in (begins, ends))
    near = start.tzname() == "UTC" and all(
        abs(moment.replace(tzinfo=None) - midnight) <= _ZONES_APART
        for moment, midnight in ((begins, opens), (ends, closes))
    )
    if near and (end - start) % _DAY in _CLOCK_CHANGES and opens < closes:
        return opens.date(), closes.date() - _DAY
    return None


def _nearest_midnight(moment: datetime) -> datetime:
    return datetime.combine((moment + _DAY / 2).date(), time())
