"""A week of opening times as a parent types it, as opening hours in OpenStreetMap's syntax."""

import calendar
import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, tzinfo
from itertools import groupby

from tripplan.documents.model import Weekday
from tripplan.documents.where import Point
from tripplan.planning.travel.daylight import daylight
from tripplan.reading.hours.clock_times import clock, span_at
from tripplan.reading.hours.pieces import days_from
from tripplan.reading.vocabulary import plain_text

DAYS: tuple[Weekday, ...] = ("Mo", "Tu", "We", "Th", "Fr", "Sa", "Su")
HOLIDAYS: Mapping[str, Mapping[str, str]] = {
    "US": {
        "New Year's Day": "Jan 01", "Easter": "easter", "Memorial Day": "May Mo[-1]", "July 4": "Jul 04",
        "Labor Day": "Sep Mo[1]", "Thanksgiving": "Nov Th[4]", "Christmas Eve": "Dec 24",
        "Christmas": "Dec 25",
    },
    "": {
        "public holidays": "PH", "New Year's Day": "Jan 01", "Easter": "easter", "Christmas Eve": "Dec 24",
        "Christmas": "Dec 25", "New Year's Eve": "Dec 31",
    },
}  # fmt: skip
"""Days on which a place may be closed, as opening_hours rules, by country; those of '' anywhere else."""
SUN = "sun"
"""Stands for a day from dawn to dusk."""
_CLOSED = re.compile(r"(?:closed?|off|no|none|-|geschlossen|zu)?", re.IGNORECASE)
_ALL_DAY = re.compile(r"(?:24 ?h(?:ou)?rs?|24/7|all day|always|ganztägig)", re.IGNORECASE)
_BY_SUN = re.compile(
    r"(?:dawn|sunrise|sun ?up|daylight(?: hours)?)(?:\s*(?:-|to|until|till)\s*(?:dusk|sunset|sun ?down))?"
    r"|(?:sonnenaufgang)\s*(?:-|bis)\s*(?:sonnenuntergang)|daytime",
    re.IGNORECASE,
)
_MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")
_SEASON = re.compile(
    rf"(?P<first>{'|'.join(_MONTHS)})(?: (?P<first_day>\d\d))?"
    rf"-(?P<last>{'|'.join(_MONTHS)})(?: (?P<last_day>\d\d))?"
)
_ALL_YEAR = re.compile(r"(?:all year|year[- ]?round|ganzjährig|always)?", re.IGNORECASE)


@dataclass(frozen=True)
class WeekFault:
    """A field of the week that cannot be read.

    Attributes:
        field: the day, or 'season'.
        typed: what stood there.
        message: how it is written.
    """

    field: str
    typed: str
    message: str


def times_of(text: str) -> str | None:
    """One day's times, such as '10:00-17:00', 'off' or `SUN`; None where they cannot be read.

    Args:
        text: as typed, such as '10-5', '10am to noon, 1-5', 'dawn to dusk', 'closed' or nothing.
    """
    told = " ".join(plain_text(text).split())
    if _CLOSED.fullmatch(told):
        return "off"
    if _ALL_DAY.fullmatch(told):
        return "00:00-24:00"
    if _BY_SUN.fullmatch(told):
        return SUN
    spans: list[str] = []
    at, afternoon = 0, 0
    while at < len(told):
        found = span_at(told, at)
        if found is None:
            return None
        span, at = found
        # '10-12, 1-5': what comes later on the line comes later in the day.
        later = 720 if span.opens < afternoon <= span.opens + 720 and span.closes + 720 <= 1440 else 0
        spans.append(f"{clock(span.opens + later)}-{clock(span.closes + later)}")
        afternoon = span.closes + later
        at += len(re.match(r"\s*(?:,|;|&|and|und)?\s*", told[at:])[0])  # type: ignore[index]  # it matches nothing too
    return ",".join(spans)


def gaps_filled(typed: Mapping[str, str]) -> dict[str, str]:
    """The same week with every empty day like the day above it; days before the first stay as they are."""
    filled, above = dict(typed), ""
    for day in DAYS:
        above = filled.get(day, "").strip() or above
        filled[day] = above
    return filled


def hours_of_week(
    typed: Mapping[str, str],
    season: str,
    closed_on: Sequence[str],
    where: tuple[Point, tzinfo] | None,
    year: int,
) -> tuple[str, list[WeekFault]]:
    """Opening hours from what was typed; empty where no day has times.

    Args:
        typed: by day.
        season: when it is open at all, such as 'April to October'; empty for all year.
        closed_on: rules of the holidays on which it is closed, as in `HOLIDAYS`.
        where: the place and its zone, for dawn and dusk; None while it is not known.
        year: in which the sun is looked up.

    Returns:
        The hours in opening_hours syntax, and what cannot be read.
    """
    faults: list[WeekFault] = []
    by_day: dict[Weekday, str] = {}
    for day in DAYS:
        times = times_of(typed.get(day, ""))
        if times is None:
            message = "times read like 10-5, 10am-noon, dawn to dusk, or closed"
            faults.append(WeekFault(day, typed[day].strip(), message))
        else:
            by_day[day] = times
    months = _season_of(season, faults)
    if faults or all(times == "off" for times in by_day.values()):
        return "", faults
    rules = [
        " ".join(filter(None, (part, days, times)))
        for days, times in _groups(by_day)
        for part, times in _by_sun(months, times, where, year)
    ]
    return "; ".join([*rules, *(f"{day} off" for day in closed_on)]), faults


def _groups(by_day: Mapping[Weekday, str]) -> Iterator[tuple[str, str]]:
    """Days in a row with the same times as one rule; closed days need none."""
    place = 0
    for times, row in groupby(DAYS, by_day.__getitem__):
        count = len(list(row))
        if times != "off":
            first, last = DAYS[place], DAYS[place + count - 1]
            yield (first if count == 1 else f"{first}-{last}"), times
        place += count


def _season_of(season: str, faults: list[WeekFault]) -> str:
    told = " ".join(plain_text(season).split())
    if _ALL_YEAR.fullmatch(told):
        return ""
    read = days_from(re.sub(r"\bonly\b|\bnur\b", "", told, flags=re.IGNORECASE).strip(" .,")) or ""
    if not re.fullmatch(rf"(?:{'|'.join(_MONTHS)})\b.*", read):
        faults.append(
            WeekFault("season", told, "a season reads like April to October, or May 15 to Labor Day")
        )
        return ""
    return read


def _by_sun(
    season: str, times: str, where: tuple[Point, tzinfo] | None, year: int
) -> Iterator[tuple[str, str]]:
    """A part of the year and its times; from dawn to dusk is written month by month, on the safe side."""
    if times != SUN:
        yield season, times
        return
    if where is None:
        yield season, "09:00-16:00"  # daylight anywhere between the polar circles, nearly all year
        return
    for part, month, first, last in _months_of(season):
        days = [
            date(year, month, day) for day in range(first, min(last, calendar.monthrange(year, month)[1]) + 1)
        ]
        light = [daylight(where[0], day, where[1]) for day in days]
        rises = [one.rises.hour * 60 + one.rises.minute for one in light if one.rises]
        sets = [one.sets.hour * 60 + one.sets.minute for one in light if one.sets]
        if rises and sets and max(rises) < min(sets):
            yield part, f"{clock(-(-max(rises) // 5) * 5)}-{clock(min(sets) // 5 * 5)}"


def _months_of(season: str) -> Iterator[tuple[str, int, int, int]]:
    """The months of a season: how each is written, its number, first and last day."""
    match = _SEASON.fullmatch(season)
    single = season if season in _MONTHS else ""
    first = _MONTHS.index(match["first"] if match else single or "Jan")
    last = _MONTHS.index(match["last"] if match else single or "Dec")
    begins = int(match["first_day"] or 1) if match else 1
    ends = int(match["last_day"] or 31) if match else 31
    count = (last - first) % 12 + 1
    for step in range(count):
        month = (first + step) % 12
        start, end = (begins if step == 0 else 1), (ends if step == count - 1 else 31)
        name = _MONTHS[month]
        whole = (start, end) == (1, 31)
        length = calendar.monthrange(2028, month + 1)[1]
        yield (name if whole else f"{name} {start:02}-{min(end, length):02}"), month + 1, start, end
