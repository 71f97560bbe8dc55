"""Out of school: the share of pupils within reach of a place who have no school on a day."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta
from functools import lru_cache
from typing import Self

import numpy as np
from numpy.typing import NDArray

from tripplan.documents.calendars.calendars import SchoolCalendar
from tripplan.documents.where import Point
from tripplan.planning.holidays.day_marks import (
    SATURDAY,
    days_in,
    marked,
    weekdays_from,
    with_weekends_inside,
)
from tripplan.planning.holidays.typical_year import OUT_ON_A_WEEKDAY, typical_days
from tripplan.planning.travel.distance import Spots

DECAY_KM = 60.0
"""Over this distance from the place a pupil's weight falls to 1/e, about a third [km]. No source, our choice:
most outings of a day end within an hour's drive."""
REACH_KM = 250.0
"""A calendar whose pupils live farther away says nothing about the place [km]. No source, our choice."""

EXPECTED_BY_WEEKS = (0.04, 0.225, 0.415, 0.225, 0.04)
"""How much a copied day off tells of the days two weeks and one week before it, of itself, and of the days
one and two weeks after it [-]. Fitted by least squares on 27 regions of Germany, France, the Netherlands,
Austria and Belgium, 2022 to 2026 against the year after (package holidays); nothing is fitted for the United
States, where breaks move less."""
EXPECTED_ANYWAY = 0.014
"""Chance of no school on a weekday far from any copied break [0-1]; fitted along with these."""

Shares = NDArray[np.float64]


@dataclass(frozen=True)
class SchoolShares:
    """How the pupils within reach of a place are spread on one day; the first three add up to 1.

    Attributes:
        out: share known to have no school [-].
        inside: share known to have school [-].
        unknown: share whose calendar does not reach the day, or is missing [-].
        chance_out: chance that the unknown ones have no school [0-1].
    """

    out: float
    inside: float
    unknown: float
    chance_out: float = OUT_ON_A_WEEKDAY


@dataclass(frozen=True, eq=False)
class SchoolDays:
    """The shares for a row of days at one place, one array entry a day.

    Attributes:
        first: the date of entry 0.
        out: share known to have no school, weekends included [-].
        on_break: share known to be in a break or on a day off; a weekend counts only inside a break [-].
        short: share known to have a school day that begins late or ends early [-].
        unknown: share of which nothing is known [-].
        chance_out: chance that the unknown ones have no school, by a guess for their calendar or by the
            typical year of their country; 0 where nobody is unknown [0-1].
        chance_on_break: likewise, that they are on a break or a day off; at a weekend, that it is inside a
            break [0-1].
    """

    first: date
    out: Shares
    on_break: Shares
    short: Shares
    unknown: Shares
    chance_out: Shares
    chance_on_break: Shares

    def part(self, begin: int, count: int) -> "SchoolDays":
        """So many days in a row of these, from one of them on."""
        rows = (
            self.out,
            self.on_break,
            self.short,
            self.unknown,
            self.chance_out,
            self.chance_on_break,
        )
        return SchoolDays(self.first + timedelta(days=begin), *(row[begin : begin + count] for row in rows))

    def with_unknown_on_break(self) -> "SchoolDays":
        """The same as if all of whom nothing is known were on a break."""
        return replace(self, on_break=self.on_break + self.unknown)

    def on_break_dates(self, threshold: float = 0.5) -> frozenset[date]:
        """The school holidays, which SH stands for in opening hours.

        A weekend in term is no school holiday; one inside a break is.

        Args:
            threshold: how large the share on a break must be at least [-]; what is unknown counts as in
                school.
        """
        return _dates(self.first, (self.on_break >= threshold).tobytes())

    def likely_out_dates(self, threshold: float = 0.5) -> frozenset[date]:
        """The days on which so many pupils are likely without school; a guess or a typical year counts.

        Args:
            threshold: how large the share of those out, with that of the likely ones, must be at least [-].
        """
        out = self.out + self.unknown * self.chance_out
        return _dates(self.first, (out >= threshold).tobytes())

    def on(self, day: date) -> SchoolShares:
        """The shares of one of the days."""
        n = (day - self.first).days
        out, unknown = float(self.out[n]), float(self.unknown[n])
        inside = max(0.0, 1.0 - out - unknown)
        return SchoolShares(out, inside, unknown, float(self.chance_out[n]))


@lru_cache(maxsize=256)
def _dates(first: date, flags: bytes) -> frozenset[date]:
    """The dates of the days that are marked; the same set for all places that have the same."""
    return frozenset(first + timedelta(days=n) for n, flag in enumerate(flags) if flag)


def pupil_weights(calendars: Sequence[SchoolCalendar], point: Point) -> Shares:
    """How much each calendar counts at a place: its pupils times exp(-km / `DECAY_KM`), 0 beyond `REACH_KM`.

    Args:
        calendars: of the districts or regions around.
        point: the place.

    Returns:
        One weight per calendar, in their order [pupils]. Where a calendar names several towns, each has its
        part of the pupils and its own distance.
    """
    return _Towns.of(calendars).weights_at(point) if calendars else np.zeros(0)


@dataclass(frozen=True, eq=False)
class _Towns:
    """Where the pupils of at least one calendar live, one array entry a town.

    Attributes:
        spots: the towns, calendar by calendar.
        pupils: how many live in each of them.
        begins: for each calendar, which of the entries is its first.
    """

    spots: Spots
    pupils: Shares
    begins: NDArray[np.intp]

    @classmethod
    def of(cls, calendars: Sequence[SchoolCalendar]) -> Self:
        """Those of some calendars."""
        towns = [_towns(calendar) for calendar in calendars]
        points, pupils = zip(*(town for of_calendar in towns for town in of_calendar), strict=True)
        ends = np.cumsum([len(of_calendar) for of_calendar in towns])
        return cls(Spots.of(points), np.array(pupils), np.concatenate(([0], ends[:-1])))

    def weights_at(self, point: Point) -> Shares:
        """As `pupil_weights`."""
        kms = self.spots.km_from(point)
        near = np.where(kms <= REACH_KM, self.pupils * np.exp(-kms / DECAY_KM), 0.0)
        return np.add.reduceat(near, self.begins)


def _towns(calendar: SchoolCalendar) -> list[tuple[Point, float]]:
    if not calendar.towns:
        return [(Point(calendar.latitude, calendar.longitude), float(calendar.pupils))]
    each = calendar.pupils / sum(town.part for town in calendar.towns)
    return [(Point(town.latitude, town.longitude), each * town.part) for town in calendar.towns]


def school_days(
    calendars: Sequence[SchoolCalendar],
    point: Point,
    first: date,
    last: date,
    *,
    country: str = "",
    subdivision: str = "",
) -> SchoolDays:
    """Shares out of school for every day from first to last.

    Args:
        calendars: of the districts or regions around; weighed by `pupil_weights`.
        point: the place.
        first: the first date.
        last: the last date, which counts.
        country: of the place, ISO 3166-1; its typical school year counts where no calendar does.
        subdivision: of the place, ISO 3166-2 without the country.

    Returns:
        One entry a day; where no calendar counts, everything is unknown.
    """
    if calendars:
        stack = _stacked(tuple(calendars), first, last)
        weights = stack.towns.weights_at(point)
        total = float(weights.sum())
        if total:
            return SchoolDays(first, *stack.shares(weights / total))
    typical = typical_days(country, subdivision, first, last)
    nothing = np.zeros(len(typical.out))
    return SchoolDays(first, nothing, nothing, nothing, nothing + 1, typical.out, typical.on_break)


@dataclass(frozen=True, eq=False)
class _Stack:
    """What several calendars say of some days in a row, kept for the next place.

    Attributes:
        calendars: kept along, so that their identities are not given to others.
        towns: where their pupils live.
        marks: `_marks` of every different day there is, with the calendars as the last axis.
        kind: for each day, which of the different ones it is.
    """

    calendars: tuple[SchoolCalendar, ...]
    towns: _Towns
    marks: Shares
    kind: NDArray[np.intp]

    @classmethod
    def of(cls, calendars: tuple[SchoolCalendar, ...], first: date, last: date) -> Self:
        """Work it out."""
        marks = np.stack([_marks(calendar, first, last) for calendar in calendars], axis=-1)
        days = marks.transpose(1, 0, 2).reshape(marks.shape[1], -1)
        _, firsts, kind = np.unique(days, axis=0, return_index=True, return_inverse=True)
        return cls(calendars, _Towns.of(calendars), marks[:, firsts], kind.reshape(-1))

    def shares(self, weights: Shares) -> Shares:
        """A row each for `SchoolDays`, in its order; `weights` of the calendars add up to 1."""
        # Rounded so that shares which are whole come out whole.
        shares = np.round(self.marks @ weights, 9)
        unknown = shares[3]
        np.divide(shares[4:], unknown, out=shares[4:], where=unknown > 0)
        return shares[:, self.kind]


_STACKS_KEPT = 32
_stacks: dict[tuple[tuple[int, ...], date, date], _Stack] = {}


def _stacked(calendars: tuple[SchoolCalendar, ...], first: date, last: date) -> _Stack:
    """Kept by identity: to hash all breaks of all calendars for every place would outlast the rest."""
    key = (tuple(map(id, calendars)), first, last)
    kept = _stacks.get(key)
    if kept is None:
        while len(_stacks) >= _STACKS_KEPT:
            _stacks.pop(next(iter(_stacks)), None)
        kept = _stacks[key] = _Stack.of(calendars, first, last)
    return kept


def _marks(calendar: SchoolCalendar, first: date, last: date) -> Shares:
    """Of one calendar, a row each: out, on a break, a short day, unknown, and the two chances if unknown."""
    # Seventeen days more at either end: two weeks for the doubt of what is expected, and three days that show
    # whether a weekend at the edge lies inside a break.
    margin = 17
    start = first - timedelta(days=margin)
    length = days_in(first, last) + 2 * margin
    known = marked((calendar.known,), start, length)
    off = with_weekends_inside(marked(calendar.no_school, start, length) & known, start) & known
    weekend = weekdays_from(start, length) >= SATURDAY
    out = known & (off | weekend)
    short = known & ~out & marked(calendar.short_days, start, length)
    typical = typical_days(calendar.country, calendar.subdivision, start, last + timedelta(days=margin))
    likely_out, likely_break = typical.out.copy(), typical.on_break.copy()
    if calendar.expected_within is not None:
        within = marked((calendar.expected_within,), start, length)
        spans = (*calendar.no_school, *calendar.expected)
        copied = with_weekends_inside(marked(spans, start, length), start).astype(float)
        guessed = np.convolve(copied, _BY_DAYS, mode="same") + EXPECTED_ANYWAY
        likely_break[within] = guessed[within]
        likely_out[within] = np.where(weekend, 1.0, guessed)[within]
    kept = slice(margin, length - margin)
    rows = (out, off, short, ~known, ~known * likely_out, ~known * likely_break)
    return np.stack([row[kept].astype(float) for row in rows])


_BY_DAYS = np.zeros(29)
_BY_DAYS[::7] = EXPECTED_BY_WEEKS


def days_out_of_school(
    calendars: Sequence[SchoolCalendar], point: Point, first: date, last: date, threshold: float = 0.5
) -> frozenset[date]:
    """The school holidays around a place, as `SchoolDays.on_break_dates`.

    Args:
        calendars: of the districts or regions around.
        point: the place.
        first: the first date.
        last: the last date, which counts.
        threshold: how large the share on a break must be at least [-].
    """
    return school_days(calendars, point, first, last).on_break_dates(threshold)
