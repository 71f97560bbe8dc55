"""What a family's notes of how full a place was say about other days there.

A place may differ from the tables in a few ways: it lives more or less by days off, more or less by the
season, and each of five kinds of day may be fuller or emptier there. Before any note each way is taken to be
none, give or take as much as the tables differ among themselves. A note is one blurred look at one day, so
that a few of them move the days like it and hardly any others (Bayesian linear regression).
"""

from collections.abc import Sequence
from dataclasses import dataclass
from statistics import NormalDist

import numpy as np

from tripplan.documents.logbook.crowd_note import Fullness
from tripplan.planning.crowds.parts import FactorGroup, Floats, YearPart
from tripplan.planning.holidays.days_off import DaysOff
from tripplan.planning.holidays.schools import SchoolDays

DAYS_OFF_VARY = 0.39
"""How much places differ in how far they live by days off, in proportion [-]: standard deviation of the
weekends of the six tables, 1.33, 1.00, 0.57, 0.74, 0.78 and 0.45, about their mean, 0.81."""
SEASONS_VARY = 0.25
"""Likewise for the season outdoors: 0.041, 0.047 and 0.028 [-]."""
KINDS_VARY = 0.30
"""How much one kind of day differs between places beyond that [ln]: the tables' public holidays against their
weekends (1.53, 0.84, 1.26, 1.15, 1.62 and 1.50 times) by about so much, and their Saturdays against Sundays
(-0.42 to 0.23) by less."""
IMPRESSION = 0.8
"""How far an impression of fullness lies from the day's count, as a standard deviation [ln]. No source, our
choice: rather much, so that about four notes of one kind of day off weigh as much as the tables."""

_MIDDLE = {
    Fullness.PLENTY_OF_ROOM: 0.10,
    Fullness.SOME_COMPANY: 0.35,
    Fullness.WELL_FILLED: 0.65,
    Fullness.PACKED: 0.90,
}
"""Where in the order of the year's days, from the emptiest, a word puts a day [0-1]: 'packed' in the middle
of the busiest fifth, 'plenty of room' in that of the emptiest, the others between. No source, our choice."""
_SATURDAY = 5
_OUT_OF_SCHOOL = 0.5
"""Share of the pupils out of school from which on a weekday is like a break [-]."""
_KINDS_OF_DAY = 5
_PRIOR = np.array([DAYS_OFF_VARY, SEASONS_VARY, *[KINDS_VARY] * _KINDS_OF_DAY]) ** 2


@dataclass(frozen=True)
class Observation:
    """One note beside what the tables expect of its day.

    Attributes:
        ways: what each way of differing would add to the day, one entry a way.
        residual: how much fuller the day was than expected [ln].
        noise: standard deviation of the day's count about what is expected [ln].
    """

    ways: Floats
    residual: float
    noise: float


def ways_to_differ(off: DaysOff, schools: SchoolDays, parts: Sequence[YearPart]) -> Floats:
    """What each way of differing would add to each day: a row a day, a column a way.

    The columns are the strength of days off, that of the season, and then a term weekday, a weekday out of
    school, a Saturday, a Sunday and a public holiday, of which each day is one.
    """
    out = off.working & (schools.out + schools.unknown * schools.chance_out >= _OUT_OF_SCHOOL)
    saturday = off.weekday == _SATURDAY
    kinds = (
        off.working & ~out,
        out,
        off.weekend & saturday,
        off.weekend & ~saturday,
        off.public_holiday,
    )
    groups = [of_group(group, parts) for group in (FactorGroup.DAY_OFF, FactorGroup.SEASON)]
    return np.column_stack([*groups, *kinds])


def of_group(group: FactorGroup, parts: Sequence[YearPart]) -> Floats:
    """What the parts of a group add to each day [ln]."""
    return np.asarray(np.sum([part.effect for part in parts if part.group is group], axis=0), dtype=float)


def residual(fullness: Fullness, expected: float, levels: Floats, noises: Floats) -> float:
    """How much fuller a day was than expected [ln].

    Args:
        fullness: what was seen.
        expected: logarithm of the visitors of that day [ln].
        levels: likewise of all open days of that year [ln].
        noises: standard deviation about each of them [ln].
    """
    spread = float(np.sqrt(levels.var() + (noises**2).mean()))
    seen = float(levels.mean()) + spread * NormalDist().inv_cdf(_MIDDLE[fullness])
    return seen - expected


def posterior(sights: Sequence[Observation]) -> tuple[Floats, Floats]:
    """How much of each way of differing the notes make likely, and what is left unknown of them.

    Args:
        sights: the notes; without any, no way is likely.

    Returns:
        The mean of each way and their covariance, in the order of `ways_to_differ`.
    """
    precision = np.diag(1 / _PRIOR)
    pull = np.zeros(len(_PRIOR))
    for sight in sights:
        weight = 1 / (sight.noise**2 + IMPRESSION**2)
        precision += weight * np.outer(sight.ways, sight.ways)
        pull += weight * sight.residual * sight.ways
    covariance = np.linalg.inv(precision)
    return covariance @ pull, covariance
