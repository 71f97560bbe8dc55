"""What time outdoors weighs, by season, hour, age and share."""

from dataclasses import replace

import numpy as np
import pytest

from tripplan.documents.family.worth import Worth
from tripplan.documents.where import Point
from tripplan.planning.climate.climate import Climate
from tripplan.planning.climate.outdoors import (
    STEP_MINUTES,
    OutdoorLimits,
    OutdoorSteps,
    OutdoorYear,
    percent_for,
)
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


def visit(of: OutdoorYear, day: int, enter: int = UTC_BEFORE_NOON, minutes: int = 120) -> OutdoorSteps:
    """The half hours of one visit; days begin at midnight in Greenwich."""
    steps = of.steps(np.array([day]), np.array([0]))
    there = slice(enter // STEP_MINUTES, (enter + minutes) // STEP_MINUTES)
    degrees, felt, cold, heat = (
        part[:, there] for part in (steps.degrees, steps.felt, steps.cold, steps.heat)
    )
    return OutdoorSteps(degrees, felt, cold, heat, steps.wet)


def weight(found: OutdoorSteps, percent: int = 100) -> float:
    """What it weighs by the usual amounts [$]."""
    return float(found.weight(Worth(), np.array([percent])).sum() * STEP_MINUTES)


def test_january_weighs_far_more_than_may() -> None:
    """Two hours on the prairie: in January well below freezing, in May neither cold nor hot."""
    cold, mild = visit(year(), JANUARY), visit(year(), MAY)
    assert cold.degrees.max() < 0 < 10 < mild.degrees.min()
    assert weight(cold) > 4 * weight(mild)
    assert not mild.heat.any()


def test_a_frosty_morning_weighs_more_than_the_afternoon_and_a_hot_noon_more_than_the_morning() -> None:
    """By the hour: at 8 and at 14 in January, at 8 and at 14 in July."""
    assert visit(year(), JANUARY, 14 * 60).cold.sum() > visit(year(), JANUARY, 20 * 60).cold.sum()
    assert visit(year(), JULY, 13 * 60).heat.sum() < visit(year(), JULY, 19 * 60).heat.sum()


def test_the_youngest_decides() -> None:
    """A baby counts half as much again, a toddler a quarter more; rain is the same for all."""
    assert [percent_for(months) for months in (0, 11, 12, 35, 36, 500)] == [150, 150, 125, 125, 100, 100]
    dry = replace(visit(year(), JANUARY), wet=np.array([[0]]))
    assert weight(dry, 150) == pytest.approx(1.5 * weight(dry))


def barred(of: OutdoorYear, day: int) -> bool:
    """Whether any half hour of a day is."""
    number = np.array([day])
    return bool(of.bars(number, of.steps(number, np.array([0]))).any())


def test_limits_hold_outdoors_only() -> None:
    """Never below -5 °C (felt) bars January on the prairie, and not a place that is half indoors."""
    limits = OutdoorLimits(below=-5.0)
    assert barred(year(limits=limits), JANUARY)
    assert not barred(year(limits=limits), MAY)
    assert not barred(year(0.5, limits), JANUARY)
    assert barred(year(limits=OutdoorLimits(above=10.0)), JULY)
