"""Repeating calendar entries, expanded within a span of days and within limits.

The recurrence library finds the occurrences; what it would take long over is sorted out before it is asked. A
rule that never matches would be followed to the year 9999, so only rules that match sooner or later pass.
"""

import calendar
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import date, datetime, timedelta
from typing import Any

import recurring_ical_events
from icalendar import Calendar, Event
from icalendar.prop import vRecur

When = date | datetime
"""A day, or a moment by the wall clock of the entry's own time zone, without the zone."""

MOST_STEPS = 30_000
"""Work for all repeating entries of one file, the time before the span included; a step takes about 5 us."""
MOST_OCCURRENCES = 6_000
"""Occurrences found in one file; about 50 us each."""
MOST_INTERVAL = 1_000
MOST_TIMES = 10_000
EARLIEST_YEAR = 1900
LONGEST = timedelta(days=62)
"""The longest entry that may repeat, and the farthest that all later occurrences may be moved."""

_PERIOD_DAYS = {"DAILY": 1.0, "WEEKLY": 7.0, "MONTHLY": 30.4, "YEARLY": 365.2}
_STEPS_EACH = {"DAILY": 1, "WEEKLY": 1, "MONTHLY": 8, "YEARLY": 6}
_RULE_STEPS = 60
_PARTS_BY_PERIOD = {
    "DAILY": {"BYDAY", "BYMONTH"},
    "WEEKLY": {"BYDAY", "BYMONTH"},
    "MONTHLY": {"BYDAY", "BYMONTH", "BYMONTHDAY", "BYSETPOS"},
    "YEARLY": {"BYDAY", "BYMONTH", "BYMONTHDAY", "BYSETPOS"},
}
_PARTS_ALWAYS = {"FREQ", "INTERVAL", "COUNT", "UNTIL", "WKST"}
_LEAP_YEAR = 2024


class CannotExpand(ValueError):
    """A repeating entry that cannot be expanded, and why, in words."""


@dataclass(frozen=True)
class WrittenEntry:
    """One entry as a file writes it; repeating ones share their UID with their exceptions.

    Attributes:
        number: which entry of the file it is.
        uid: names the entry and its exceptions.
        sequence: the highest one wins.
        start: a day or a wall-clock moment.
        end: likewise, not included.
        rules: how it repeats.
        added: further starts (RDATE).
        left_out: starts at which it does not happen (EXDATE).
        replaces: the occurrence that this entry stands in for (RECURRENCE-ID).
        and_later: whether it stands in for all later occurrences too.
    """

    number: int
    uid: str
    sequence: int
    start: When
    end: When
    rules: tuple[vRecur, ...] = field(default=(), hash=False)
    added: tuple[When, ...] = ()
    left_out: tuple[When, ...] = ()
    replaces: When | None = None
    and_later: bool = False

    @property
    def repeats(self) -> bool:
        """Whether it is more than a single entry on its own."""
        return bool(self.rules or self.added or self.replaces is not None)


def why_not(rule: Mapping[str, list[Any]], start: When) -> str:
    """Why a rule cannot be expanded, in words; empty when it can.

    Args:
        rule: as icalendar reads it, every part a list.
        start: of the entry.
    """
    frequency = str(rule.get("FREQ", [""])[0])
    if frequency not in _PERIOD_DAYS:
        return f"repeats by {frequency or 'no period'}; days, weeks, months and years can be used"
    if any(len(rule.get(part, [])) > 1 for part in ("BYHOUR", "BYMINUTE", "BYSECOND")):
        return "repeats several times a day"
    unknown = set(rule) - _PARTS_ALWAYS - _PARTS_BY_PERIOD[frequency] - {"BYHOUR", "BYMINUTE", "BYSECOND"}
    if unknown:
        return f"uses {', '.join(sorted(unknown))} with {frequency}, which is not understood here"
    interval, times = rule.get("INTERVAL", [1])[0], rule.get("COUNT", [1])[0]
    if not 1 <= interval <= MOST_INTERVAL or not 1 <= times <= MOST_TIMES:
        return f"repeats in steps beyond 1 to {MOST_INTERVAL}, or not 1 to {MOST_TIMES} times"
    if "COUNT" in rule and "UNTIL" in rule:
        return "ends both after a number of times and on a date"
    return (
        ""
        if _matches_some_day(rule, frequency, interval, start)
        else "names a day that never comes, or in a way that is not understood here"
    )


def _matches_some_day(rule: Mapping[str, list[Any]], frequency: str, interval: int, start: When) -> bool:
    """Whether a rule matches some day, read strictly: a doubtful rule counts as one that does not."""
    weekdays, months = rule.get("BYDAY", []), rule.get("BYMONTH", [])
    month_days, positions = rule.get("BYMONTHDAY", []), rule.get("BYSETPOS", [])
    nth = [abs(day.relative) for day in weekdays if day.relative]
    if not _some(months, 1, 12) or not _some([abs(day) for day in month_days], 1, 31):
        return False
    if frequency in ("DAILY", "WEEKLY"):
        return not nth and (interval == 1 or not (months or (weekdays and frequency == "DAILY")))
    if frequency == "MONTHLY" and interval > 1 and (months or min(map(abs, month_days), default=1) > 28):
        return False
    if nth and (month_days or max(nth) > (4 if months or interval > 1 else 5)):
        return False
    if positions and (month_days or nth or not weekdays or max(map(abs, positions)) > 4 * len(weekdays)):
        return False
    if weekdays and month_days:
        # Every Friday the 13th comes soon enough; in a single month only a whole week of days always does.
        whole_week = len({day % 7 for day in month_days if 1 <= day <= 28}) == 7
        return whole_week or (interval == 1 and not months and min(map(abs, month_days)) <= 28)
    days = month_days or ([] if weekdays else [start.day])
    if frequency == "YEARLY" and not months and not weekdays and not month_days:
        months = [start.month]
    longest = max(calendar.monthrange(_LEAP_YEAR, month)[1] for month in months or range(1, 13))
    # A longer step may step over 29 February for ever.
    reach = 28 if interval > 1 and longest == 29 else longest
    return not days or min(abs(day) for day in days) <= reach


def _some(numbers: Sequence[int], low: int, high: int) -> bool:
    return all(low <= number <= high for number in numbers)


def _per_period(rule: Mapping[str, list[Any]]) -> int:
    """About how many occurrences a period holds at most."""
    weekdays = rule.get("BYDAY", [])
    days = sum(1 if day.relative else 5 for day in weekdays) + len(rule.get("BYMONTHDAY", []))
    match str(rule["FREQ"][0]):
        case "DAILY":
            return 1
        case "WEEKLY":
            return max(1, len(weekdays))
        case "MONTHLY":
            return max(1, days)
        case _:
            return max(1, days) * max(1, len(rule.get("BYMONTH", [])) or (12 if weekdays else 1))


def _period_days(rule: Mapping[str, list[Any]]) -> float:
    days = _PERIOD_DAYS[str(rule["FREQ"][0])]
    return days * int(rule.get("INTERVAL", [1])[0])


def _brought_near(entry: WrittenEntry, first: date) -> WrittenEntry:
    """The same entry begun later by whole periods, where that changes nothing from `first` on."""
    if len(entry.rules) != 1 or "COUNT" in entry.rules[0]:
        return entry
    frequency, interval = str(entry.rules[0]["FREQ"][0]), int(entry.rules[0].get("INTERVAL", [1])[0])
    near = first - LONGEST - timedelta(days=7)
    if frequency in ("DAILY", "WEEKLY"):
        period = interval * int(_PERIOD_DAYS[frequency])
        start = entry.start + timedelta(days=max(0, (near - _day(entry.start)).days // period * period))
    elif entry.start.day <= 28:
        years = max(0, (near.year - 1 - entry.start.year) // interval * interval)
        start = entry.start.replace(year=entry.start.year + years)
    else:
        return entry
    return replace(entry, start=start, end=start + _between(entry.start, entry.end))


def _day(when: When) -> date:
    return when.date() if isinstance(when, datetime) else when


def _between(start: When, end: When) -> timedelta:
    if isinstance(start, datetime) and isinstance(end, datetime):
        return end - start
    return _day(end) - _day(start)


class Expansion:
    """Expands series of one file, counting what all of them take together.

    Attributes:
        first: the first day looked at.
        last: the last one.
    """

    def __init__(self, first: date, last: date) -> None:
        self.first, self.last = first, last
        self._steps_left, self._occurrences_left = MOST_STEPS, MOST_OCCURRENCES

    def occurrences(self, series: Sequence[WrittenEntry]) -> Iterator[tuple[int, When, When]]:
        """The occurrences of one entry and its exceptions that touch the span of days.

        Args:
            series: entries that share a UID, by the wall clock of one time zone.

        Yields:
            The number of the entry an occurrence comes from, its start and its end.

        Raises:
            CannotExpand: a rule is outside what can be expanded, or the file's limits are used up.
        """
        calendar_ = Calendar()
        for entry in series:
            self._admit(entry)
            calendar_.add_component(_event(_brought_near(entry, self.first), self.first, self.last))
        found = recurring_ical_events.of(calendar_, components=["VEVENT"])
        after = self.last + timedelta(days=1)
        begin, end = (datetime(day.year, day.month, day.day) for day in (self.first, after))  # noqa: DTZ001
        for occurrence in found.between(begin, end):
            self._occurrences_left -= 1
            yield int(occurrence["X-NUMBER"]), occurrence["DTSTART"].dt, occurrence["DTEND"].dt

    def _admit(self, entry: WrittenEntry) -> None:
        for rule in entry.rules:
            reason = why_not(rule, entry.start)
            if reason:
                raise CannotExpand(reason)
        moved = abs(_between(entry.start, entry.replaces or entry.start))
        length = _between(entry.start, entry.end)
        if length > LONGEST or (entry.and_later and moved > LONGEST):
            raise CannotExpand(f"repeats but is longer, or moved farther, than {LONGEST.days} days")
        near = _brought_near(entry, self.first)
        for rule in entry.rules:
            days_ahead = max(0, (self.last - _day(near.start)).days)
            rate = _per_period(rule) / _period_days(rule)
            self._steps_left -= _RULE_STEPS + int(days_ahead * rate) * _STEPS_EACH[str(rule["FREQ"][0])]
            span = min(days_ahead, (self.last - self.first).days + length.days + 1)
            if self._steps_left < 0 or self._occurrences_left < span * rate:
                raise CannotExpand("repeats, and all repeating entries together come too often for one file")


def _event(entry: WrittenEntry, first: date, last: date) -> Event:
    """A clean entry for the recurrence library: its times and rules, nothing else of the file."""

    def near(whens: tuple[When, ...]) -> list[When]:
        margin = LONGEST + timedelta(days=1)
        return [when for when in whens if first - margin <= _day(when) <= last + margin]

    event = Event()
    event.add("UID", entry.uid)
    event.add("SEQUENCE", entry.sequence)
    event.add("DTSTART", entry.start)
    event.add("DTEND", entry.end)
    event["X-NUMBER"] = str(entry.number)
    for rule in entry.rules:
        event.add("RRULE", rule)
    if near(entry.added):
        event.add("RDATE", near(entry.added))
    if near(entry.left_out):
        event.add("EXDATE", near(entry.left_out))
    if entry.replaces is not None:
        event.add("RECURRENCE-ID", entry.replaces, {"RANGE": "THISANDFUTURE"} if entry.and_later else {})
    return event
