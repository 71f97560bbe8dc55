"""Time zones as calendar files carry them: a VTIMEZONE with yearly rules, only where it is true.

Every zone file of the IANA time zone database ends in one line (the POSIX TZ string) with the rule for the
future. Where that line is two plain yearly changes, it becomes two RRULEs that every calendar reader
understands; lists of single changes are read differently by different programs. The rules are compared with
zoneinfo over all years they speak about, because the line is silent on what was changed by decree lately.
"""

import calendar
import re
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from functools import lru_cache
from importlib import resources
from itertools import pairwise
from zoneinfo import ZoneInfo

from icalendar import Timezone, TimezoneDaylight, TimezoneStandard

_NAME = r"<[A-Za-z0-9+-]+>|[A-Za-z]+"
_SPAN = r"[+-]?\d{1,3}(?::\d{2}){0,2}"
_CHANGE = rf"M\d{{1,2}}\.[1-5]\.[0-6](?:/{_SPAN})?"
_FOOTER = re.compile(
    rf"(?P<name>{_NAME})(?P<offset>{_SPAN})"
    rf"(?:(?P<other_name>{_NAME})(?P<other_offset>{_SPAN})?,(?P<begins>{_CHANGE}),(?P<ends>{_CHANGE}))?"
)
_WEEKDAYS = ("SU", "MO", "TU", "WE", "TH", "FR", "SA")
_DAY = timedelta(days=1)


@dataclass(frozen=True)
class YearlyChange:
    """One change of the clock that comes every year by the same rule.

    Attributes:
        month: 1 to 12.
        week: which of the weekdays in the month, 1 to 4, or -1 for the last.
        weekday: 0 for Sunday to 6 for Saturday.
        at: time of day by the clock before the change, less than a day.
        offset_from, offset_to: from UTC, east positive, before and after.
        name: what the time is called after the change, such as CDT.
    """

    month: int
    week: int
    weekday: int
    at: timedelta
    offset_from: timedelta
    offset_to: timedelta
    name: str

    def onset(self, year: int) -> datetime:
        """The moment of the change by the clock before it, without zone."""
        monday_first, days = calendar.monthrange(year, self.month)
        first = 1 + (self.weekday - (monday_first + 1)) % 7
        day = first + 7 * (self.week - 1) if self.week > 0 else first + 7 * ((days - first) // 7)
        return datetime(year, self.month, day) + self.at  # noqa: DTZ001 (a local time by definition)

    def instant(self, year: int) -> datetime:
        """The moment of the change in UTC."""
        return (self.onset(year) - self.offset_from).replace(tzinfo=UTC)


@dataclass(frozen=True)
class ZoneRules:
    """How a zone's clock runs, by plain yearly rules.

    Attributes:
        offset: from UTC, east positive, where the clock never changes.
        name: what that time is called.
        changes: the two changes of a year; none where the clock never changes.
    """

    offset: timedelta
    name: str
    changes: tuple[YearlyChange, ...] = ()

    @property
    def always_utc(self) -> bool:
        """Whether the clock shows UTC all year."""
        return not self.offset and not self.changes


def _span(text: str) -> timedelta:
    """A POSIX time or offset such as '-3:30' as a span."""
    parts = [int(part) for part in text.lstrip("+-").split(":")]
    hours, minutes, seconds = (*parts, 0, 0)[:3]
    span = timedelta(hours=hours, minutes=minutes, seconds=seconds)
    return -span if text.startswith("-") else span


def _change(rule: str, offset_from: timedelta, offset_to: timedelta, name: str) -> YearlyChange | None:
    when, _, time_of_day = rule.partition("/")
    month, week, weekday = (int(part) for part in when[1:].split("."))
    at = _span(time_of_day or "2")
    if not timedelta(0) <= at < _DAY:
        return None  # falls on a neighbouring day, which no plain weekday rule can say
    return YearlyChange(month, -1 if week == 5 else week, weekday, at, offset_from, offset_to, name)


def rules_from_footer(footer: str) -> ZoneRules | None:
    """A zone's rules from the POSIX TZ string at the end of its file.

    Args:
        footer: such as 'CST6CDT,M3.2.0,M11.1.0'.

    Returns:
        The rules; None where they are not two plain changes on the n-th weekday of a month.

    Source: RFC 9636 (The Time Zone Information Format, 2024), section 3.3 and 3.3.1.
    """
    read = _FOOTER.fullmatch(footer)
    if read is None:
        return None
    offset = -_span(read["offset"])  # POSIX counts west positive
    name = read["name"].strip("<>")
    if read["begins"] is None:
        return ZoneRules(offset, name)
    other = -_span(read["other_offset"]) if read["other_offset"] else offset + timedelta(hours=1)
    begins = _change(read["begins"], offset, other, read["other_name"].strip("<>"))
    ends = _change(read["ends"], other, offset, name)
    return None if begins is None or ends is None else ZoneRules(offset, name, (begins, ends))


def _footer(key: str) -> str | None:
    file = resources.files("tzdata").joinpath("zoneinfo", *key.split("/"))
    try:
        content = file.read_bytes()
    except OSError:
        return None
    return content.rsplit(b"\n", 2)[1].decode("ascii", errors="replace") if content.endswith(b"\n") else None


def _agree(rules: ZoneRules, zone: ZoneInfo, first_year: int, last_year: int) -> bool:
    """Whether the rules give zoneinfo's offset from their first onset to the end of the last year."""
    changes = (
        sorted(
            (change.instant(year), change)
            for year in range(first_year, last_year + 1)
            for change in rules.changes
        )
        if rules.changes
        else []
    )
    end = datetime(last_year + 1, 1, 1, tzinfo=UTC)
    spans = [
        (since, until, change.offset_to)
        for (since, change), (until, _) in pairwise([*changes, (end, None)])
        if change is not None
    ] or [(datetime(first_year, 1, 1, tzinfo=UTC), end, rules.offset)]
    return all(
        moment.astimezone(zone).utcoffset() == offset
        for since, until, offset in spans
        for moment in _probes(since, until)
    )


def _probes(since: datetime, until: datetime) -> list[datetime]:
    days = (until - since - timedelta(seconds=1)) // _DAY
    return [*(since + number * _DAY for number in range(days + 1)), until - timedelta(seconds=1)]


@lru_cache(maxsize=256)
def vtimezone(zone: ZoneInfo, first_year: int, last_year: int) -> Timezone | None:
    """A VTIMEZONE that is true for some years, made of yearly rules.

    It begins a year early, so that a reader finds a change of the clock before the first entry.

    Args:
        zone: the zone; its key becomes the TZID.
        first_year: of the first entry in the file.
        last_year: of the last one.

    Returns:
        The component, to be written and not to be changed; None where the zone has no plain rules, where
        zoneinfo disagrees with them in those years, and where the clock always shows UTC. Times then belong
        into the file in UTC.

    Source: RFC 5545, section 3.6.5.
    """
    footer = _footer(zone.key) if zone.key else None
    rules = rules_from_footer(footer) if footer else None
    begin = first_year - 1
    if rules is None or rules.always_utc or not _agree(rules, zone, begin, last_year):
        return None
    component = Timezone()
    component.add("TZID", zone.key)
    for change in rules.changes:
        component.add_component(_observance(change, begin))
    if not rules.changes:
        always = TimezoneStandard()
        always.add("DTSTART", datetime(begin, 1, 1))  # noqa: DTZ001 (a local time by definition)
        always.add("TZOFFSETFROM", rules.offset)
        always.add("TZOFFSETTO", rules.offset)
        always.add("TZNAME", rules.name)
        component.add_component(always)
    return component


def _observance(change: YearlyChange, first_year: int) -> TimezoneStandard | TimezoneDaylight:
    forward = change.offset_to > change.offset_from
    observance = TimezoneDaylight() if forward else TimezoneStandard()
    observance.add("DTSTART", change.onset(first_year))
    observance.add(
        "RRULE",
        {"FREQ": "YEARLY", "BYMONTH": change.month, "BYDAY": f"{change.week}{_WEEKDAYS[change.weekday]}"},
    )
    observance.add("TZOFFSETFROM", change.offset_from)
    observance.add("TZOFFSETTO", change.offset_to)
    observance.add("TZNAME", change.name)
    return observance
