"""A typical school year where no calendar is known: for every day the chance that pupils have no school.

Nothing here is a fact about a district. Districts of one state differ by weeks, so a break has no edges but a
chance that rises and falls; where nobody publishes when breaks are taken, as for spring break in the United
States, the chance is spread evenly over the weeks in question.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import date, timedelta
from functools import lru_cache

import numpy as np
from dateutil.easter import easter

from tripplan.errors import UnknownName
from tripplan.planning.holidays.day_marks import (
    SATURDAY,
    Chances,
    days_in,
    weekdays_from,
    weekends_by_neighbours,
)
from tripplan.planning.holidays.public_holidays import is_observed, public_holidays
from tripplan.planning.holidays.school_regions import built_in_calendar, regions_of

OUT_ON_A_WEEKDAY = 0.3
"""Share of weekdays without school, where not even the country's habits are on record [-]: 180 to 190 days of
school (common practice in the US and in England, no source) out of 261 weekdays."""
_SINGLE_DAY = 0.03
"""Chance that a district has one of its own days off on a weekday in term, five in 180 [0-1]. Common
practice, no source."""
_REGION_HOLDS, _REGION_MISSES = 0.95, 0.03
"""Chance of no school on a day that the country's own table calls free, and on one it does not [0-1]: schools
move a few days of their own. No source, our choice."""
_NATIONAL_HOLIDAY, _REGIONAL_HOLIDAY = 0.9, 0.3
"""Chance that schools are closed on a public holiday on a weekday [0-1]. No source, our choice."""
_MARGIN = timedelta(days=3)
_DAY, _WEEK = timedelta(days=1), timedelta(weeks=1)

Points = tuple[tuple[date, float], ...]


@dataclass(frozen=True, eq=False)
class TypicalDays:
    """The chances for a row of days, one array entry a day.

    Attributes:
        out: chance of no school, 1 at weekends [0-1].
        on_break: chance of a break or a day off; at a weekend, that it lies inside a break [0-1].
        source: what the chances rest on, in words.
    """

    out: Chances
    on_break: Chances
    source: str


def typical_days(country: str, subdivision: str, first: date, last: date) -> TypicalDays:
    """The chances for every day from first to last, where no school calendar is known.

    Args:
        country: ISO 3166-1 code; where nothing is on record for it, every weekday has the same chance.
        subdivision: ISO 3166-2 code without the country; may be empty.
        first: the first date.
        last: the last date, which counts.

    Returns:
        The same arrays, not to be written to, for everybody who asks the same.
    """
    return _typical_days(country, subdivision, first, last)


@lru_cache(maxsize=256)
def _typical_days(country: str, subdivision: str, first: date, last: date) -> TypicalDays:
    start, end = first - _MARGIN, last + _MARGIN
    pattern = _PATTERNS.get(country)
    if pattern is not None:
        years = range(start.year - 1, end.year + 1)
        chance = _chances([s for year in years for s in pattern.year(subdivision, year)], start, end)
        source = pattern.source
    elif (of_table := _from_table(country, subdivision, start, end)) is not None:
        chance, source = of_table, "the country's own table of school breaks, with a doubt"
    else:
        chance = np.full(days_in(start, end), OUT_ON_A_WEEKDAY)
        source = "180 to 190 days of school a year; nothing more is on record for this country"
    closed = _closed_for_holidays(country, subdivision, start, end)
    chance = weekends_by_neighbours(chance + closed - chance * closed, start)
    weekend = weekdays_from(start, len(chance)) >= SATURDAY
    kept = slice(_MARGIN.days, len(chance) - _MARGIN.days)
    out, on_break = np.where(weekend, 1.0, chance)[kept], chance[kept]
    for array in (out, on_break):
        array.setflags(write=False)
    return TypicalDays(out, on_break, source)


def _chances(stretches: list[Points], start: date, end: date) -> Chances:
    """That a stretch covers a day, rising and falling in straight lines, or the district takes it off."""
    days = np.arange(days_in(start, end), dtype=float)
    in_school = np.full(len(days), 1 - _SINGLE_DAY)
    for stretch in stretches:
        at = [float((day - start).days) for day, _ in stretch]
        in_school *= 1 - np.interp(days, at, [chance for _, chance in stretch], left=0.0, right=0.0)
    return 1 - in_school


def _from_table(country: str, subdivision: str, start: date, end: date) -> Chances | None:
    """By the built-in holidays of the regions there, each as likely as its pupils are many."""
    regions = regions_of(country, subdivision) or regions_of(country, "")
    if not regions:
        return None
    total, weights = np.zeros(days_in(start, end)), 0.0
    for region in regions:
        calendar = built_in_calendar(region, start.year, end.year)
        chance = np.full(len(total), OUT_ON_A_WEEKDAY)
        if calendar is not None:
            chance[_inside(calendar.known.first, calendar.known.last, start, len(chance))] = _REGION_MISSES
            for off in (*calendar.no_school, *calendar.expected):
                chance[_inside(off.first, off.last, start, len(chance))] = _REGION_HOLDS
        total += region.pupils * chance
        weights += region.pupils
    return total / weights


def _inside(first: date, last: date, start: date, length: int) -> slice:
    return slice(max(0, (first - start).days), min(length, max(0, (last - start).days + 1)))


def _closed_for_holidays(country: str, subdivision: str, start: date, end: date) -> Chances:
    """Chance that schools are closed because of a public holiday."""
    closed = np.zeros(days_in(start, end))
    years = range(start.year, end.year + 1)
    try:
        national = public_holidays(country, "", years)
        regional = public_holidays(country, subdivision, years)
    except UnknownName:
        return closed
    rare = _PATTERNS[country].often_open if country in _PATTERNS else {}
    for day, name in regional.items():
        if start <= day <= end and not (is_observed(name) and country not in ("US", "CA")):
            usual = _NATIONAL_HOLIDAY if day in national else _REGIONAL_HOLIDAY
            closed[(day - start).days] = next((c for words, c in rare.items() if words in name), usual)
    return closed


# --- the patterns of single countries ---------------------------------------------------------------------


@dataclass(frozen=True)
class _Pattern:
    """How a country's school years usually run.

    Attributes:
        year: the stretches without school that begin in a calendar year, by subdivision.
        often_open: public holidays on which schools are often open: words of the name, chance of being shut.
        source: in words.
    """

    year: Callable[[str, int], Iterator[Points]]
    often_open: dict[str, float]
    source: str


def _monday_of(day: date) -> date:
    return day - timedelta(days=day.weekday())


def _nth(year: int, month: int, weekday: int, nth: int) -> date:
    """The nth such weekday of a month; 0 is the last of the month before it."""
    first = date(year, month, 1)
    return first + timedelta(days=(weekday - first.weekday()) % 7) + (nth - 1) * _WEEK


def _week(monday: date, chance: float, *, weeks: int = 1) -> Points:
    return ((monday, chance), (monday + weeks * _WEEK - 3 * _DAY, chance))


def _ramps(begins: date, all_off: date, still_off: date, over: date) -> Points:
    """From nobody off to everybody and back."""
    return ((begins, 0.0), (all_off, 1.0), (still_off, 1.0), (over, 0.0))


_NORTH_EAST = frozenset(("CT", "ME", "MA", "NH", "RI", "VT", "NJ", "NY", "PA"))
_EAST_SOUTH_CENTRAL = frozenset(("AL", "KY", "MS", "TN"))
_SOUTHERN_BAND = frozenset(("AR", "AZ", "FL", "GA", "LA", "NC", "NM", "OK", "SC", "TX"))


def _united_states(state: str, year: int) -> Iterator[Points]:
    # Back to school: start dates of districts, Pew Research Center, 2019 and 2023. No district of the
    # north-east before 26 August; nearly all of AL, KY, MS, TN by the middle of August, 79 % in the southern
    # band; 70 % of the nation's pupils by 25 August, which leaves three quarters elsewhere. The states of the
    # band beyond those four, and all last days of school: common practice, no source.
    if state in _NORTH_EAST:
        ends = ((6, 8), (6, 27))
        back: tuple[tuple[int, int, float], ...] = ((8, 25, 1.0), (9, 2, 0.5), (9, 10, 0.0))
    elif state in _EAST_SOUTH_CENTRAL:
        ends, back = ((5, 18), (6, 4)), ((7, 25, 1.0), (8, 7, 0.5), (8, 16, 0.05), (8, 24, 0.0))
    elif state in _SOUTHERN_BAND:
        ends, back = ((5, 18), (6, 8)), ((7, 25, 1.0), (8, 10, 0.5), (8, 16, 0.21), (8, 28, 0.0))
    else:
        # Fairfax County, Virginia, was in school until 17 June 2026.
        ends, back = ((5, 22), (6, 22)), ((8, 1, 1.0), (8, 18, 0.5), (8, 25, 0.24), (9, 9, 0.0))
    (first_month, first_day), (last_month, last_day) = ends
    yield (
        (date(year, first_month, first_day), 0.0),
        (date(year, last_month, last_day), 1.0),
        *((date(year, month, day), chance) for month, day, chance in back),
    )
    # Four large districts in 2025-26 began on 22 or 24 December and were back after 2 January.
    yield (
        (date(year, 12, 18), 0.0),
        (date(year, 12, 22), 0.75),
        (date(year, 12, 24), 1.0),
        (date(year + 1, 1, 1), 1.0),
        (date(year + 1, 1, 2), 0.9),
        (date(year + 1, 1, 8), 0.0),
    )
    thanksgiving = _nth(year, 11, 3, 4)
    # Common practice, no source: the Friday nearly everywhere, the Wednesday often, the whole week in part.
    yield (
        (thanksgiving - 3 * _DAY, 0.4),
        (thanksgiving - 2 * _DAY, 0.4),
        (thanksgiving - _DAY, 0.6),
        (thanksgiving, 1.0),
        (thanksgiving + _DAY, 0.95),
    )
    # One week of the eight from March to the end of April: no statistic says which, so all are alike.
    march = _nth(year, 3, 0, 1)
    yield _week(march, 0.125, weeks=8)
    good_friday = easter(year) - 2 * _DAY
    yield ((good_friday, 0.5), (good_friday, 0.5))


def _england(year: int) -> Iterator[Points]:
    # Half terms and breaks of 2025-26 and 2026-27 as schools in England list them; their edges by a few days,
    # and the second week of an October break, common practice, no source.
    summer_ends = _nth(year, 9, 0, 1)
    yield _ramps(date(year, 7, 17), date(year, 7, 23), date(year, 8, 31), summer_ends + 4 * _DAY)
    october = _monday_of(date(year, 10, 29))
    yield _week(october, 0.93)
    yield _week(october - _WEEK, 0.12)
    yield _week(_nth(year, 2, 0, 3), 0.93)
    yield _week(_nth(year, 6, 0, 1) - _WEEK, 0.95)
    yield (
        (date(year, 12, 18), 0.0),
        (date(year, 12, 22), 0.95),
        (date(year, 12, 24), 1.0),
        (date(year + 1, 1, 2), 1.0),
        (date(year + 1, 1, 6), 0.0),
    )
    sunday = easter(year)
    early = sunday < date(year, 4, 1)
    yield _week(sunday - 6 * _DAY, 0.35 if early else 0.9)
    yield ((sunday - 2 * _DAY, 0.95), (sunday - 2 * _DAY, 0.95))
    yield _week(sunday + _DAY, 0.95)
    yield _week(sunday + _DAY + _WEEK, 0.8 if early else 0.2)


def _scotland(year: int) -> Iterator[Points]:
    # From memory: late June to the middle of August, two weeks in October and at Easter, two at Christmas.
    yield _ramps(date(year, 6, 24), date(year, 7, 1), date(year, 8, 11), date(year, 8, 21))
    yield _week(_nth(year, 10, 0, 2), 0.9)
    yield _week(_nth(year, 10, 0, 3), 0.5)
    yield _ramps(date(year, 12, 19), date(year, 12, 24), date(year + 1, 1, 3), date(year + 1, 1, 8))
    yield _week(_nth(year, 2, 0, 2), 0.4)
    yield _week(_nth(year, 4, 0, 1), 0.85, weeks=2)


def _great_britain(nation: str, year: int) -> Iterator[Points]:
    return _scotland(year) if nation == "SCT" else _england(year)


def _ireland(_: str, year: int) -> Iterator[Points]:
    # Standardised breaks of the Department of Education, from memory; secondary schools also have June.
    yield (
        (date(year, 5, 30), 0.0),
        (date(year, 6, 5), 0.4),
        (date(year, 6, 24), 0.4),
        (date(year, 7, 1), 1.0),
        (date(year, 8, 25), 1.0),
        (date(year, 9, 3), 0.0),
    )
    yield _week(_monday_of(_nth(year, 11, 0, 0)), 0.95)
    yield _ramps(date(year, 12, 19), date(year, 12, 23), date(year + 1, 1, 3), date(year + 1, 1, 7))
    february = _nth(year, 2, 0, 3)
    yield (
        (february, 0.5),
        (february + 2 * _DAY, 0.5),
        (february + 3 * _DAY, 0.9),
        (february + 4 * _DAY, 0.9),
    )
    yield _week(easter(year) - 6 * _DAY, 0.93, weeks=2)


def _canada(_: str, year: int) -> Iterator[Points]:
    # From memory: July, August and the days to Labour Day; two weeks at Christmas; a week in March.
    labour_day = _nth(year, 9, 0, 1)
    yield (
        (date(year, 6, 22), 0.0),
        (date(year, 6, 30), 1.0),
        (date(year, 8, 26), 1.0),
        (labour_day, 0.8),
        (labour_day + 2 * _DAY, 0.0),
    )
    yield _ramps(date(year, 12, 18), date(year, 12, 24), date(year + 1, 1, 2), date(year + 1, 1, 7))
    yield _week(_nth(year, 3, 0, 1), 0.22, weeks=4)
    yield ((easter(year) + _DAY, 0.6), (easter(year) + _DAY, 0.6))


def _new_zealand(_: str, year: int) -> Iterator[Points]:
    # From memory: four terms with two weeks between, the summer from before Christmas to early February.
    yield _ramps(date(year, 12, 12), date(year, 12, 20), date(year + 1, 1, 26), date(year + 1, 2, 8))
    for month, nth in ((4, 2), (7, 1), (9, 4)):
        monday = _nth(year, month, 0, nth)
        yield ((monday - _WEEK, 0.2), (monday, 0.8), (monday + _WEEK, 0.8), (monday + 2 * _WEEK, 0.2))


_PATTERNS = {
    "US": _Pattern(
        _united_states,
        # Common practice, no source; the nation's other holidays close nearly all schools.
        {"Columbus": 0.45, "Veterans": 0.55, "Washington": 0.8, "Juneteenth": 0.85},
        "start dates by region (Pew Research Center, 2019 and 2023), federal holidays, and common practice",
    ),
    "GB": _Pattern(_great_britain, {}, "breaks as schools in England list them for 2025 to 2027, and memory"),
    "IE": _Pattern(_ireland, {}, "the usual breaks, from memory"),
    "CA": _Pattern(_canada, {"Remembrance": 0.3}, "the usual breaks, from memory"),
    "NZ": _Pattern(_new_zealand, {}, "the usual terms, from memory"),
}
