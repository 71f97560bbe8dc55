"""Out of school: the share of pupils within reach of a place who have no school on a day."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from tripplan.planning.calendars import SchoolCalendar
from tripplan.planning.travel.distance import distances_km
from tripplan.planning.where import Point

DECAY_KM = 60.0
"""Over this distance from the place a pupil's weight falls to 1/e, about a third [km]. No source, our choice:
most outings of a day end within an hour's drive."""
REACH_KM = 250.0
"""A calendar whose pupils live farther away says nothing about the place [km]. No source, our choice."""

Shares = NDArray[np.float64]


@dataclass(frozen=True)
class SchoolShares:
    """How the pupils within reach of a place are spread on one day; the three add up to 1.

    Attributes:
        out: share known to have no school [-].
        inside: share known to have school [-].
        unknown: share whose calendar does not reach the day, or is missing [-].
    """

    out: float
    inside: float
    unknown: float


@dataclass(frozen=True, eq=False)
class SchoolDays:
    """The shares for a row of days at one place, one array entry a day.

    Attributes:
        first: the date of entry 0.
        out: share known to have no school, weekends included [-].
        on_break: share known to be in a break or on a day off; a weekend counts only inside a break [-].
        unknown: share of which nothing is known [-].
    """

    first: date
    out: Shares
    on_break: Shares
    unknown: Shares

    def on(self, day: date) -> SchoolShares:
        """The shares of one of the days."""
        n = (day - self.first).days
        out, unknown = float(self.out[n]), float(self.unknown[n])
        return SchoolShares(out=out, inside=max(0.0, 1.0 - out - unknown), unknown=unknown)


def school_days(calendars: Sequence[SchoolCalendar], point: Point, first: date, last: date) -> SchoolDays:
    """Shares out of school for every day from first to last.

    A calendar weighs its pupils times exp(-km / `DECAY_KM`), by the distance of its pupils from the place;
    beyond `REACH_KM` it does not count.

    Args:
        calendars: of the districts or regions around.
        point: the place.
        first: the first date.
        last: the last date, which counts.

    Returns:
        One entry a day; where no calendar counts, everything is unknown.
    """
    length = (last - first).days + 1
    out, on_break, known = np.zeros(length), np.zeros(length), np.zeros(length)
    weight_sum = 0.0
    kms = distances_km(point, [Point(calendar.latitude, calendar.longitude) for calendar in calendars])
    for calendar, km in zip(calendars, kms, strict=True):
        if km > REACH_KM:
            continue
        weight = calendar.pupils * float(np.exp(-km / DECAY_KM))
        weight_sum += weight
        calendar_out, calendar_break, calendar_known = _marks(calendar, first, last)
        out += weight * calendar_out
        on_break += weight * calendar_break
        known += weight * calendar_known
    if not weight_sum:
        return SchoolDays(first, out, on_break, np.ones(length))
    # Rounded so that shares which are whole come out whole.
    return SchoolDays(
        first,
        np.round(out / weight_sum, 9),
        np.round(on_break / weight_sum, 9),
        np.round(1.0 - known / weight_sum, 9),
    )


@lru_cache(maxsize=512)
def _marks(calendar: SchoolCalendar, first: date, last: date) -> tuple[Shares, Shares, Shares]:
    """Of one calendar, 1 or 0 per day: out of school, on a break, known at all."""
    # Three days more at either end show whether a weekend at the edge lies inside a break.
    margin = 3
    start, length = first - timedelta(days=margin), (last - first).days + 1 + 2 * margin

    def inside(span_first: date, span_last: date) -> slice:
        return slice(max(0, (span_first - start).days), max(0, (span_last - start).days + 1))

    known = np.zeros(length, dtype=bool)
    known[inside(calendar.known.first, calendar.known.last)] = True
    off = np.zeros(length, dtype=bool)
    for span in calendar.no_school:
        off[inside(span.first, span.last)] = True
    off &= known
    weekday = (np.arange(length) + start.weekday()) % 7
    for saturday in np.flatnonzero(weekday[: length - 2] == 5):
        if saturday and off[saturday - 1] and off[saturday + 2]:
            off[saturday : saturday + 2] = True
    out = known & (off | (weekday >= 5))
    kept = slice(margin, length - margin)
    marks = tuple(mark[kept].astype(float) for mark in (out, off, known))
    for mark in marks:
        mark.setflags(write=False)
    return marks[0], marks[1], marks[2]


def school_shares(calendars: Sequence[SchoolCalendar], point: Point, day: date) -> SchoolShares:
    """How the pupils within reach of a place are spread on one day; for many days ask `school_days`."""
    return school_days(calendars, point, day, day).on(day)


def days_out_of_school(
    calendars: Sequence[SchoolCalendar], point: Point, first: date, last: date, threshold: float = 0.5
) -> frozenset[date]:
    """The school holidays around a place, which SH stands for in opening hours.

    A weekend in term is no school holiday; one inside a break is.

    Args:
        calendars: of the districts or regions around.
        point: the place.
        first: the first date.
        last: the last date, which counts.
        threshold: how large the share on a break must be at least [-]; what is unknown counts as in school.

    Returns:
        The dates on which at least that share has a break or a day off.
    """
    days = school_days(calendars, point, first, last)
    return frozenset(first + timedelta(days=int(n)) for n in np.flatnonzero(days.on_break >= threshold))
