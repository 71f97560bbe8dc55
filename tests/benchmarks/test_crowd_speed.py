"""A year of crowd risks at one place against a plain loop over its days."""

import math
import statistics
from collections.abc import Callable
from datetime import date, timedelta

import numpy as np
import pytest

from tests.benchmarks.timing import again, timed
from tests.builders import make_place
from tripplan.documents.calendars.calendars import SchoolCalendar
from tripplan.planning.crowds.learning import DAYS_OFF_VARY
from tripplan.planning.crowds.levels import levels_for
from tripplan.planning.crowds.parts import Floats
from tripplan.planning.crowds.risk import crowd_risks
from tripplan.planning.holidays.public_holidays import (
    holidays_around,
    is_bridge_day,
    is_observed,
    is_weekend,
    long_weekend,
)
from tripplan.planning.holidays.schools import school_days

YEAR = 2027
FIRST, LAST = date(YEAR, 1, 1), date(YEAR, 12, 31)
DAYS = tuple(FIRST + timedelta(days=n) for n in range(365))
PLACE = make_place(visit={"indoors": "outdoors"})
HOLIDAYS = holidays_around("US", "IL", (YEAR,))
SCHOOLS = SchoolCalendar.model_validate(
    {
        "name": "district",
        "country": "US",
        "latitude": PLACE.where.latitude,
        "longitude": PLACE.where.longitude,
        "known": {"first": FIRST, "last": LAST},
        "no_school": [
            {"first": "2027-01-01", "last": "2027-01-01"},
            {"first": "2027-03-22", "last": "2027-03-26"},
            {"first": "2027-06-07", "last": "2027-08-20"},
            {"first": "2027-12-22", "last": "2027-12-31"},
        ],
    }
)
OUT = frozenset(day for off in SCHOOLS.no_school for day in DAYS if day in off)


def by_arrays() -> Floats:
    """The chances as the planning works them out."""
    schools = school_days((SCHOOLS,), PLACE.where.point, FIRST, LAST, country="US", subdivision="IL")
    return crowd_risks(PLACE, np.ones(365, dtype=bool), HOLIDAYS, schools).chance


def by_loop() -> list[float]:
    """The same chances, a day at a time, the threshold found by halving; nothing is taken from arrays."""
    levels = levels_for(None, "families", "outdoors", None)
    warmer = 19.0  # Of July than of January at 40 degrees north or more [K]; the place lies at 40.5 degrees.
    expected, scales = [], []
    for day in DAYS:
        celebrated = day in HOLIDAYS and not is_observed(HOLIDAYS[day])
        level = 0.0
        if celebrated:
            level += levels.public_holiday
        elif is_weekend(day):
            level += levels.saturday if day.weekday() == 5 else levels.sunday
            inside = {day + timedelta(days=4 - day.weekday()), day + timedelta(days=7 - day.weekday())}
            if day in OUT or inside <= OUT:
                level += levels.weekend_on_break
            if long_weekend(day, HOLIDAYS.keys()):
                level += levels.long_weekend
        else:
            level += levels.friday if day.weekday() == 4 else 0.0
            level += levels.school_holiday if day in OUT else 0.0
            if day in HOLIDAYS or is_bridge_day(day, HOLIDAYS.keys()):
                level += levels.off_work
        scales.append(math.hypot(levels.noise, DAYS_OFF_VARY * level) * math.sqrt(3) / math.pi)
        if day.month == 12 and day.day < 24:
            level += levels.advent_weekend if is_weekend(day) else levels.advent
        if (day.month, day.day) in ((12, 24), (12, 25), (12, 31), (1, 1)):
            level += levels.festive
        angle = 2 * math.pi * (day.timetuple().tm_yday - 200) / 365.25
        level += warmer * levels.season * math.cos(angle) - warmer**2 * levels.shoulder * math.cos(2 * angle)
        expected.append(level)

    def chances(threshold: float) -> list[float]:
        return [
            1 / (1 + math.exp((threshold - level) / scale))
            for level, scale in zip(expected, scales, strict=True)
        ]

    low, high = min(expected) - 10, max(expected) + 10
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (middle, high) if sum(chances(middle)) > 73 else (low, middle)
    return chances(low)


def test_a_year_of_crowd_risks_against_a_plain_loop(tell: Callable[[str], None]) -> None:
    """Both give the same chances; how many times the loop takes is printed, from nothing and again."""
    rounds = []
    for _ in range(20):
        first, arrays = timed(by_arrays)
        later, again_the_same = again(by_arrays)
        loop, expected = timed(by_loop)
        assert arrays == pytest.approx(expected, abs=1e-6)
        assert (arrays == again_the_same).all()
        rounds.append((first, later, loop))
    first, later, loop = (statistics.median(times) for times in zip(*rounds, strict=True))
    tell(
        f"a year of crowd risks at a place {first * 1e3:.2f} ms from nothing, {later * 1e3:.2f} ms again; a "
        f"plain loop {loop * 1e3:.2f} ms: {loop / first:.1f} and {loop / later:.1f} times"
    )
