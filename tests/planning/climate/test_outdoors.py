"""What time outdoors weighs, by season, hour, age and share."""

from dataclasses import replace

import numpy as np
import pytest

from tripplan.documents.family.worth import Worth
from tripplan.documents.where import Point
from tripplan.planning.climate.climate import Climate
from tripplan.planning.climate.outdoors import OutdoorLimits, OutdoorVisits, OutdoorYear, percent_for
from tripplan.planning.climate.stations import stations

DUBUQUE = Point(42.5, -90.66)
JANUARY, MAY, JULY = 14, 135, 196
UTC_BEFORE_NOON = 16 * 60
"""10:00 in Dubuque in winter [min]."""


def year(share: float = 1.0, limits: OutdoorLimits = OutdoorLimits(), point: Point = DUBUQUE) -> OutdoorYear:  # noqa: B008
    """At a place that has stations around it."""
    months = stations().months_at(point)
    assert months is not None
    return OutdoorYear(Climate.of_months(point.latitude, months), point.longitude, share, limits)


def visit(of: OutdoorYear, day: int, enter: int = UTC_BEFORE_NOON, minutes: int = 120) -> OutdoorVisits:
    """One visit."""
    return of.visits(np.array([day]), np.array([enter]), np.array([enter + minutes]))


def cents(found: OutdoorVisits, percent: int = 100) -> int:
    """What it weighs by the usual amounts."""
    return int(found.coins(Worth(), np.array([percent]), "USD")[0])


def test_january_weighs_far_more_than_may() -> None:
    """Two hours on the prairie: in January well below freezing, in May neither cold nor hot."""
    cold, mild = visit(year(), JANUARY), visit(year(), MAY)
    assert cold.high[0] < 0 < 10 < mild.low[0]
    assert cents(cold) > 4 * cents(mild)
    assert mild.heat[0] == 0


def test_a_frosty_morning_weighs_more_than_the_afternoon_and_a_hot_noon_more_than_the_morning() -> None:
    """By the hour: at 8 and at 14 in January, at 8 and at 14 in July."""
    assert visit(year(), JANUARY, 14 * 60).cold[0] > visit(year(), JANUARY, 20 * 60).cold[0]
    assert visit(year(), JULY, 13 * 60).heat[0] < visit(year(), JULY, 19 * 60).heat[0]


def test_half_a_visit_outdoors_weighs_half() -> None:
    """And twice the time weighs about twice as much."""
    whole, half = visit(year(), JANUARY), visit(year(0.5), JANUARY)
    assert half.cold[0] == pytest.approx(whole.cold[0] / 2, abs=1)
    assert visit(year(), JANUARY, minutes=240).wet[0] == pytest.approx(2 * whole.wet[0], abs=1)


def test_the_youngest_decides() -> None:
    """A baby counts half as much again, a toddler a quarter more; rain is the same for all."""
    assert [percent_for(months) for months in (0, 11, 12, 35, 36, 500)] == [150, 150, 125, 125, 100, 100]
    dry = replace(visit(year(), JANUARY), wet=np.array([0]))
    assert cents(dry, 150) == pytest.approx(1.5 * cents(dry), abs=1)


def test_limits_hold_outdoors_only() -> None:
    """Never below -5 °C (felt) bars January on the prairie, and not a place that is half indoors."""
    limits = OutdoorLimits(below=-5.0)
    assert visit(year(limits=limits), JANUARY).barred[0]
    assert not visit(year(limits=limits), MAY).barred[0]
    assert not visit(year(0.5, limits), JANUARY).barred[0]
    assert visit(year(limits=OutdoorLimits(above=10.0)), JULY).barred[0]


def test_many_visits_are_what_each_is_alone() -> None:
    """An array entry each, to the last thousandth."""
    of = year()
    days = np.arange(366)
    every = of.visits(days, np.full(366, UTC_BEFORE_NOON), np.full(366, UTC_BEFORE_NOON + 150))
    for day in range(0, 366, 13):
        alone = visit(of, day, minutes=150)
        assert (alone.cold[0], alone.heat[0], alone.wet[0]) == (
            every.cold[day],
            every.heat[day],
            every.wet[day],
        )
