"""How far school calendars reach: what is known, what is guessed and what nobody has said, in words."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from enum import StrEnum
from itertools import groupby

import numpy as np
from numpy.typing import NDArray

from tripplan.documents.calendars.calendars import SchoolCalendar
from tripplan.documents.places.place import Place
from tripplan.language import wording
from tripplan.planning.holidays.day_marks import days_in, marked, with_weekends_inside
from tripplan.planning.holidays.schools import SchoolDays, pupil_weights, school_days
from tripplan.planning.holidays.typical_year import typical_days

LOOK_AHEAD = timedelta(days=548)
"""How far ahead coverage is told: eighteen months, as far as a plan reaches."""
_DAY = timedelta(days=1)
_SATURDAY = 6
_MOST = 0.5
"""Share of the pupils that stands for most of them [-]."""


class SchoolState(StrEnum):
    """What a calendar says of a day; weekends in term count as term."""

    OUT = "no school"
    SCHOOL = "school"
    LIKELY_OUT = "likely no school"
    LIKELY_SCHOOL = "likely school"
    UNKNOWN = "not known"


@dataclass(frozen=True)
class CoveragePeriod:
    """Some days in a row of which a calendar says the same.

    Attributes:
        first: the first day.
        last: the last one, which counts.
        state: what it says.
    """

    first: date
    last: date
    state: SchoolState


def stretches(calendar: SchoolCalendar, first: date, last: date) -> tuple[CoveragePeriod, ...]:
    """What a calendar says of every day from first to last, days alike in a row as one."""
    margin = 3
    start, length = first - margin * _DAY, days_in(first, last) + 2 * margin
    known = marked((calendar.known,), start, length)
    off = with_weekends_inside(marked(calendar.no_school, start, length), start)
    guessed = np.zeros(length, dtype=bool)
    if calendar.expected_within is not None:
        guessed = marked((calendar.expected_within,), start, length)
    likely = with_weekends_inside(marked((*calendar.no_school, *calendar.expected), start, length), start)
    states = np.select(
        [known & off, known, guessed & likely, guessed],
        [SchoolState.OUT, SchoolState.SCHOOL, SchoolState.LIKELY_OUT, SchoolState.LIKELY_SCHOOL],
        default=SchoolState.UNKNOWN,
    )[margin : length - margin]
    return _in_a_row(states, first)


def days_off(calendars: Iterable[SchoolCalendar], first: date, last: date) -> int:
    """On how many days, Monday to Friday, at least one calendar says or guesses that there is no school."""
    return len(
        {
            day
            for calendar in calendars
            for one in stretches(calendar, first, last)
            if one.state in (SchoolState.OUT, SchoolState.LIKELY_OUT)
            for day in (one.first + ahead * _DAY for ahead in range(days_in(one.first, one.last)))
            if day.isoweekday() < _SATURDAY
        }
    )


def place_stretches(days: SchoolDays) -> tuple[CoveragePeriod, ...]:
    """What is known of most pupils around a place, day by day; what stands in for a calendar is 'likely'."""
    on_break = days.on_break >= _MOST
    at_school = 1 - days.on_break - days.unknown >= _MOST
    likely = days.on_break + days.unknown * days.chance_on_break >= _MOST
    states = np.select(
        [on_break, at_school, likely],
        [SchoolState.OUT, SchoolState.SCHOOL, SchoolState.LIKELY_OUT],
        default=SchoolState.LIKELY_SCHOOL,
    )
    return _in_a_row(states, days.first)


def _in_a_row(states: Iterable[str], first: date) -> tuple[CoveragePeriod, ...]:
    """Days alike in a row as one stretch."""
    found = []
    for state, days in groupby(enumerate(states), key=lambda day: str(day[1])):
        numbers = [number for number, _ in days]
        found.append(
            CoveragePeriod(first + numbers[0] * _DAY, first + numbers[-1] * _DAY, SchoolState(state))
        )
    return tuple(found)


def calendar_coverage(calendar: SchoolCalendar, first: date, last: date) -> str:
    """How far one calendar reaches within a span, as a sentence."""
    parts = []
    known, guess = calendar.known, calendar.expected_within
    if known.last >= first and known.first <= last:
        parts.append(
            f"known from {wording.day(max(first, known.first))} to {wording.day(min(last, known.last))}"
        )
    if guess and guess.last >= first and guess.first <= last:
        span = f"{wording.day(max(first, guess.first))} to {wording.day(min(last, guess.last))}"
        parts.append(f"a guess from {span}")
    if not parts and known.first > last:
        return f"Nothing is known until {wording.day(last)}: the calendar begins {wording.day(known.first)}."
    if not parts:
        return f"Nothing is known from {wording.day(first)} on: the calendar ended {wording.day(known.last)}."
    ends = max(known.last, guess.last if guess else known.last)
    if ends < last:
        parts.append("nothing after that")
    sentence = ", then ".join(parts)
    return f"{wording.capital(sentence)}."


@dataclass(frozen=True, eq=False)
class PlaceCoverage:
    """How far the calendars reach at one place.

    Attributes:
        place: the card.
        days: the shares, day by day.
        districts: the calendars that count there, heaviest first, each with its share of the pupils [-].
        sentence: what is known, guessed and unknown, in words.
        typical_source: what the typical year rests on that stands in where nothing is known; empty where all
            is known.
    """

    place: Place
    days: SchoolDays
    districts: tuple[tuple[str, float], ...]
    sentence: str
    typical_source: str


def place_coverage(
    calendars: Sequence[SchoolCalendar], place: Place, first: date, last: date
) -> PlaceCoverage:
    """How far the calendars reach at a place from first to last.

    Args:
        calendars: those on record.
        place: the card.
        first: the first date.
        last: the last date, which counts.
    """
    where = place.where
    days = school_days(
        calendars, where.point, first, last, country=where.country, subdivision=where.subdivision
    )
    weights = pupil_weights(calendars, where.point)
    total = float(weights.sum())
    heaviest = sorted(zip(calendars, weights, strict=True), key=lambda pair: -pair[1])
    districts = tuple((c.name, float(weight) / total) for c, weight in heaviest if weight > 0.005 * total)
    certain = np.round(1 - days.unknown, 2)
    source = typical_days(where.country, where.subdivision, first, last).source if certain.min() < 1 else ""
    return PlaceCoverage(place, days, districts, _sentence(first, certain, any_near=bool(districts)), source)


def typical_year_sentences(covers: Sequence[PlaceCoverage]) -> tuple[str, ...]:
    """What stands in where nothing is known, each source once, with its places where there are several."""
    places: dict[str, list[str]] = {}
    for cover in covers:
        if cover.typical_source:
            places.setdefault(cover.typical_source, []).append(cover.place.name)
    return tuple(
        f"Where nothing is known{'' if len(places) == 1 else f', for {wording.listed(names)},'} a guess made "
        f"of last year's calendar stands in, or a typical year: {source}."
        for source, names in places.items()
    )


def _sentence(first: date, certain: NDArray[np.float64], *, any_near: bool) -> str:
    if not certain.any():
        none = (
            "No school calendar near here reaches these days" if any_near else "No school calendar near here"
        )
        return f"{none}. None of it is certain: a guess or a typical year stands in."
    parts: list[str] = []
    for share, group in groupby(enumerate(certain), key=lambda day: float(day[1])):
        numbers = [number for number, _ in group]
        ends = wording.day(first + numbers[-1] * _DAY)
        whose = " of the students nearby" if not parts else ""
        parts.append(f"of {share:.0%}{whose} until {ends}" if share else f"of none until {ends}")
    if len(parts) > 4:
        parts = [*parts[:3], "changing later"]
    return f"Known {', then '.join(parts)}."
