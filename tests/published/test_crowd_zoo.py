"""Levels by kind of day against the open tables of daily visitors that they were read from."""

from datetime import date, timedelta
from pathlib import Path

import numpy as np
import pytest

from tests.published.crowd_fit import COUNTED, places
from tests.published.crowd_tables import (
    ORDINARY,
    PUBLIC_HOLIDAY,
    SCHOOL_HOLIDAY,
    WEEKEND,
    zoo_kinds,
)
from tripplan.documents.places.place import WhoComes
from tripplan.planning.crowds.levels import MUSEUMS_SCHOOL_HOLIDAY, OFF_WORK, TABLES, pooled
from tripplan.planning.holidays.days_off import days_off
from tripplan.planning.holidays.public_holidays import is_weekend, public_holidays

YEARS_OF_TABLES = (1990, 1991, *range(2011, 2020))


def test_the_zoos_days_are_those_of_1990_and_1991(shared_data: Path) -> None:
    """Counted from 1 January 1990, the zoo's public holidays are Auckland's, and its weekends are weekends.

    The table itself gives no dates. Christmas Day is missing from it: the zoo was closed.
    """
    kinds = zoo_kinds(shared_data)
    marked = {day for day, (kind, _) in kinds.items() if kind == PUBLIC_HOLIDAY}
    known = set(public_holidays("NZ", "AUK", (1990, 1991)))
    assert marked == {day for day in known if min(kinds) <= day <= max(kinds)} - {date(1990, 12, 25)}
    assert {day for day, (kind, _) in kinds.items() if kind == WEEKEND} == set(filter(is_weekend, kinds))


def test_the_zoos_plain_ratios_are_the_published_ones(shared_data: Path) -> None:
    """Mean visitors by kind of day, against an ordinary weekday, are 1 : 4.1 : 4.4 : 7.9."""
    kinds = zoo_kinds(shared_data).values()
    mean = {kind: np.mean([n for k, n in kinds if k == kind]) for kind in range(ORDINARY, PUBLIC_HOLIDAY + 1)}
    ratios = [
        round(float(mean[kind] / mean[ORDINARY]), 1) for kind in (WEEKEND, SCHOOL_HOLIDAY, PUBLIC_HOLIDAY)
    ]
    assert ratios == [4.1, 4.4, 7.9]


@pytest.mark.parametrize(
    ("who_comes", "august_to_september", "tables"),
    [("families", (1.89, 1.98), ["zoo"]), ("everybody", (1.26, 1.11), ["bicycles", "park"])],
)
def test_museums_by_month_agree_on_school_holidays(
    who_comes: WhoComes, august_to_september: tuple[float, float], tables: list[str]
) -> None:
    """School-holiday weekdays are like weekends where families come, and a third of one elsewhere.

    Visits a day in August against those in September, with the pooled weekend level in both months, leave so
    much for a weekday in August; the tables counted day by day agree.

    Source: DCMS-sponsored museums, monthly visits 2009-2018; Science Museum and National Railway Museum,
    which children like, Tate Modern and Soane.
    """
    level = pooled(TABLES, None, who_comes).weekend
    weekend, ratio = np.exp(level), sum(august_to_september) / 2
    weekday = (ratio * (5 + 2 * weekend) - 2 * weekend) / 5
    written = MUSEUMS_SCHOOL_HOLIDAY[who_comes]
    assert np.log(weekday) / level == pytest.approx(written, abs=0.02)
    for table in (COUNTED[name].table for name in tables):
        assert table.effects["school_holiday"] / table.weekend == pytest.approx(written, abs=0.1)


def test_days_off_work_are_hardly_fuller(shared_data: Path) -> None:
    """The 22 days in lieu and bridge days of the six tables are 0.1 above other such days, give or take."""
    days, effects = [], []
    for name, counted in COUNTED.items():
        counts = places(shared_data)[name]
        off = [days_off(date(year, 1, 1), date(year, 12, 31), counts.holidays) for year in YEARS_OF_TABLES]
        free = {
            of.first + timedelta(days=int(n)) for of in off for n in np.flatnonzero(of.in_lieu | of.bridge)
        }
        days.append(len(free & counts.visitors.keys()))
        effects.append(counted.table.effects["off_work"])
    assert sum(days) == 22
    assert np.average(effects, weights=days) == pytest.approx(OFF_WORK, abs=0.03)
