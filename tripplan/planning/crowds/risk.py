"""Crowd risk: the chance that a day is among the busiest fifth of a place's open days that year."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tripplan.errors import PlanError
from tripplan.planning.calendars import SchoolCalendar
from tripplan.planning.crowds.levels import POOLED, TABLES, Levels
from tripplan.planning.crowds.parts import Part, parts_of
from tripplan.planning.crowds.schools import SchoolShares, school_days
from tripplan.planning.place import Place
from tripplan.planning.ranges import Origin, Source

BUSIEST_SHARE = 0.2
"""The busiest fifth of the open days [-]."""

WORDS = (
    (0.10, "plenty of room"),
    (0.25, "some company"),
    (0.50, "well filled"),
    (1.00, "packed, most likely"),
)
"""What a chance is called: the first word whose limit it does not exceed. Up to a tenth is half the average
chance, a quarter lies just above the average, beyond a half a full house is more likely than not."""

_SOURCE = Source(
    Origin.ESTIMATE,
    f"counted elsewhere, not at this place: {'; '.join(table.name for table in TABLES)}",
)
_WORTH_SAYING = math.log(1.05)


@dataclass(frozen=True)
class CrowdReason:
    """One thing that makes a day fuller or emptier.

    Attributes:
        text: in words, the factor included.
        factor: how many times the visitors of the day without it [-]; the factors of a day multiply.
    """

    text: str
    factor: float


@dataclass(frozen=True)
class CrowdRisk:
    """How likely a full house is.

    Attributes:
        chance: chance of being among the busiest fifth of the open days of that year [0-1].
        word: one of `WORDS`.
        reasons: what it rests on, largest effect first; never empty.
        shares: how the pupils within reach are spread.
        source: where the levels come from.
    """

    chance: float
    word: str
    reasons: tuple[CrowdReason, ...]
    shares: SchoolShares
    source: Source


def crowd_risks(
    place: Place,
    open_days: Sequence[date],
    public_holidays: Mapping[date, str],
    calendars: Sequence[SchoolCalendar],
    *,
    levels: Levels = POOLED,
) -> Mapping[date, CrowdRisk]:
    """The crowd risk of every open day of one year.

    Args:
        place: where; whether it is indoors, its latitude and its special days count.
        open_days: all its open days of one calendar year, as they are compared with each other.
        public_holidays: names by date; empty where they are not known.
        calendars: of the school districts around.
        levels: what each kind of day brings.

    Returns:
        One answer per open day, in order of date; the chances add up to a fifth of the days.

    Raises:
        PlanError: the days are not of one year.
    """
    days = sorted(set(open_days))
    if not days:
        return {}
    first, last = days[0], days[-1]
    if first.year != last.year:
        raise PlanError("crowd risk compares the open days of one year with each other")
    schools = school_days(calendars, place.where.point, first, last)
    shares = [schools.on(day) for day in days]
    parts = [
        parts_of(place, day, public_holidays, share, float(schools.on_break[(day - first).days]), levels)
        for day, share in zip(days, shares, strict=True)
    ]
    chances = busiest_fifth_chances(
        [sum(part.effect for part in of_day) for of_day in parts],
        [math.hypot(levels.noise, *(part.doubt for part in of_day)) for of_day in parts],
    )
    return {
        day: CrowdRisk(float(chance), word_for(float(chance)), _reasons(of_day), share, _SOURCE)
        for day, chance, of_day, share in zip(days, chances, parts, shares, strict=True)
    }


def busiest_fifth_chances(level: ArrayLike, noise: ArrayLike) -> NDArray[np.float64]:
    """Each day's chance of being among the busiest fifth, given how full it is expected to be.

    The logarithm of a day's visitors is its level plus logistic noise. A day counts as busy above the one
    threshold that a fifth of all days is expected to exceed; halving finds it.

    Args:
        level: expected logarithm of visitors, one entry a day, against any common zero [ln].
        noise: standard deviation about it, one entry a day, above 0 [ln].

    Returns:
        Chances [0-1]; they add up to a fifth of the number of days.
    """
    expected = np.asarray(level, dtype=float)
    # A logistic distribution of scale s has the standard deviation s pi / sqrt(3).
    scale = np.asarray(noise, dtype=float) * math.sqrt(3) / math.pi
    busy_days = BUSIEST_SHARE * expected.size

    def above(threshold: float) -> NDArray[np.float64]:
        return 0.5 * (1 + np.tanh((expected - threshold) / (2 * scale)))

    reach = 20 * float(scale.max())
    low, high = float(expected.min()) - reach, float(expected.max()) + reach
    for _ in range(60):
        middle = (low + high) / 2
        if above(middle).sum() > busy_days:
            low = middle
        else:
            high = middle
    return above((low + high) / 2)


def word_for(chance: float) -> str:
    """What a chance is called, one of `WORDS`."""
    return next(word for limit, word in WORDS if chance <= limit)


def _reasons(parts: Sequence[Part]) -> tuple[CrowdReason, ...]:
    told = [part for part in parts if abs(part.effect) >= _WORTH_SAYING or part.doubt]
    if not told:
        return (CrowdReason("an ordinary school-term weekday", 1.0),)
    told.sort(key=lambda part: -abs(part.effect))
    return tuple(CrowdReason(str(part), part.factor) for part in told)
