"""Crowd risk against counted visitors that its levels were not fitted to.

Two ways, and both are reported. *Later days*: the levels of the shipped kind, one set for all places, are
fitted to the first part of every table (the zoo until June 1990, the bicycles of 2011, the park of 2015) and
judged on the second part. *Another place*: each table is judged with the levels pooled from the other tables
only, which is how well a place can be foreseen where nobody ever counted.

The levels were never fitted to what is judged. Which parts there are, the weights of the tables, that the
season goes by the warmth of the latitude (and its bend by the square of it), that both weekend days count
alike and school holidays go by who comes were chosen with all three tables in view. Schools are those that
the planning takes: the zoo's and the park's calendars, and for the bicycles the typical school year. Weather
is not used: it is not known ahead. The baselines are the base rate (every day 1 in 5) and 'weekend or
holiday' (two rates, learned on the same days as the levels). The shipped levels use all days of all tables.
"""

from collections.abc import Sequence
from datetime import date
from pathlib import Path

import numpy as np
import pytest
from numpy.typing import NDArray

from tests.published.crowd_tables import Counts, bicycles, fitted, park, zoo
from tripplan.documents.places.place import WhoComes
from tripplan.planning.crowds.busiest_fifth import busiest_fifth_chances
from tripplan.planning.crowds.levels import (
    CITY_BICYCLES,
    CITY_ZOO,
    POOLED,
    RIVERSIDE_PARK,
    TABLES,
    Levels,
    VisitorTable,
    pooled,
)
from tripplan.planning.crowds.risk import crowd_risks

SHIPPED = {"zoo": CITY_ZOO, "bicycles": CITY_BICYCLES, "park": RIVERSIDE_PARK}
BINS = (0.0, 0.05, 0.1, 0.2, 0.35, 0.5, 1.0)


def report(line: str) -> None:
    """Show a measured figure; pytest shows it with -s."""
    print(line)  # noqa: T201


@pytest.fixture(scope="module")
def tables(shared_data: Path) -> dict[str, Counts]:
    """The tables, whole."""
    return {"zoo": zoo(shared_data), "bicycles": bicycles(shared_data), "park": park(shared_data)}


@pytest.fixture(scope="module")
def years(tables: dict[str, Counts]) -> dict[str, list[Counts]]:
    """The counted years of each table; the zoo's 1991 has only 90 days and is left out."""
    return {
        "zoo": [tables["zoo"].in_year(1990)],
        "bicycles": [tables["bicycles"].in_year(year) for year in (2011, 2012)],
        "park": [tables["park"].in_year(year) for year in (2015, 2016)],
    }


@pytest.fixture(scope="module")
def first_parts(tables: dict[str, Counts]) -> dict[str, Counts]:
    """What is fitted to where later days are judged."""
    return {
        "zoo": tables["zoo"].between(date(1990, 1, 1), date(1990, 6, 30)),
        "bicycles": tables["bicycles"].in_year(2011),
        "park": tables["park"].in_year(2015),
    }


@pytest.fixture(scope="module")
def second_parts(tables: dict[str, Counts]) -> dict[str, Counts]:
    """The later days."""
    return {
        "zoo": tables["zoo"].between(date(1990, 7, 1), date(1991, 12, 31)),
        "bicycles": tables["bicycles"].in_year(2012),
        "park": tables["park"].in_year(2016),
    }


def chances(counts: Counts, levels: Levels) -> NDArray[np.float64]:
    """What the model says of each day, all days of the table compared with each other."""
    level, noise = [], []
    for year in sorted({day.year for day in counts.days}):
        first, last = date(year, 1, 1), date(year, 12, 31)
        counted = np.zeros((last - first).days + 1, dtype=bool)
        counted[[(day - first).days for day in counts.days if day.year == year]] = True
        schools = counts.schools_in(year)
        found = crowd_risks(counts.place, counted, counts.holidays, schools, levels=levels)
        level.append(found.level[counted])
        noise.append(found.noise[counted])
    return busiest_fifth_chances(np.concatenate(level), np.concatenate(noise))


def weekend_or_holiday(counts: Counts, learned_from: Sequence[Counts]) -> NDArray[np.float64]:
    """The baseline: one rate for weekends and public holidays, one for other days."""
    busy = np.concatenate([other.busiest for other in learned_from])
    free = np.concatenate([other.free_days for other in learned_from])
    rates = (float(busy[free].mean()), float(busy[~free].mean()))
    return np.asarray(np.where(counts.free_days, *rates), dtype=float)


def brier(chance: NDArray[np.float64] | float, happened: NDArray[np.float64]) -> float:
    """Mean squared distance between chances and what happened [-]."""
    return float(np.mean((chance - happened) ** 2))


def skill(
    chance: NDArray[np.float64], baseline: NDArray[np.float64] | float, happened: NDArray[np.float64]
) -> float:
    """Brier skill score: 1 is perfect, 0 no better than the baseline [-]."""
    return 1 - brier(chance, happened) / brier(baseline, happened)


def calibration(chance: NDArray[np.float64], happened: NDArray[np.float64]) -> list[tuple[int, float, float]]:
    """Days, mean chance and share that happened, by class of chance."""
    of_day = np.digitize(chance, BINS[1:-1])
    return [
        (int((of_day == n).sum()), float(chance[of_day == n].mean()), float(happened[of_day == n].mean()))
        for n in np.unique(of_day)
    ]


def calibration_error(rows: list[tuple[int, float, float]]) -> float:
    """Mean distance between chance and what happened, over all days [-]."""
    return sum(days * abs(said - was) for days, said, was in rows) / sum(days for days, _, _ in rows)


def judged(parts: Sequence[tuple[Counts, Levels, Sequence[Counts]]]) -> tuple[float, float, float]:
    """Skill over the base rate, over 'weekend or holiday', and calibration error of several tables as one.

    Args:
        parts: what is judged, with which levels, and the days that these were learned from.
    """
    chance = np.concatenate([chances(counts, levels) for counts, levels, _ in parts])
    plain = np.concatenate([weekend_or_holiday(counts, learned) for counts, _, learned in parts])
    happened = np.concatenate([counts.busiest for counts, _, _ in parts])
    rows = calibration(chance, happened)
    for days, said, was in rows:
        report(f"{days:5} days: said {said:.2f}, was {was:.2f}")
    found = skill(chance, 0.2, happened), skill(chance, plain, happened), calibration_error(rows)
    report(
        f"{len(chance)} days: skill {found[0]:.3f} over the base rate, {found[1]:.3f} over weekend or "
        f"holiday, calibration error {found[2]:.3f}"
    )
    return found


def levels_for(counts: Counts, tables: Sequence[VisitorTable]) -> Levels:
    """What some tables say of the place where others were counted."""
    return pooled(tables, counts.place.visit.who_comes)


def test_later_days_are_foreseen_from_the_days_before(
    first_parts: dict[str, Counts], second_parts: dict[str, Counts]
) -> None:
    """Fitted to each table's first part, the levels foresee the second parts as well as asked.

    Measured on 940 days: skill 0.410 over the base rate and 0.243 over weekend or holiday, calibration error
    0.028; the zoo alone 0.448, the bicycles 0.559, the park 0.201.
    """
    tables = [fitted(counts, whole_year=name != "zoo") for name, counts in first_parts.items()]
    learned = list(first_parts.values())
    for counts in second_parts.values():
        found = skill(chances(counts, levels_for(counts, tables)), 0.2, counts.busiest)
        report(f"{counts.name}: {len(counts.days)} days, skill {found:.3f} over the base rate")
        assert found > 0.15
    over_base_rate, over_weekends, error = judged(
        [(counts, levels_for(counts, tables), learned) for counts in second_parts.values()]
    )
    assert over_base_rate >= 0.35
    assert over_weekends > 0.2
    assert error <= 0.05


@pytest.mark.parametrize(
    ("table", "over_base_rate", "over_weekend_or_holiday"),
    # Measured: zoo 0.292 and 0.140; bicycles 0.580 and 0.385, then 0.512 and 0.299; park -0.005 and 0.013,
    # then 0.174 and 0.060. Without the zoo nothing is left that was counted day by day at a family
    # attraction, and the park's walkers live much less by days off than the other two.
    [("zoo", 0.2, 0.05), ("bicycles", 0.4, 0.2), ("park", -0.06, -0.04)],
)
def test_another_place_is_foreseen_from_the_others(
    table: str, over_base_rate: float, over_weekend_or_holiday: float, years: dict[str, list[Counts]]
) -> None:
    """At a place it never saw, the model does about as well as measured; at the park that is not well."""
    others = [counts for name, all_years in years.items() if name != table for counts in all_years]
    for counts in years[table]:
        chance = chances(counts, levels_for(counts, without(table)))
        found = skill(chance, 0.2, counts.busiest)
        beside = skill(chance, weekend_or_holiday(counts, others), counts.busiest)
        report(
            f"{counts.name}: {len(counts.days)} days, Brier {brier(chance, counts.busiest):.3f}, "
            f"skill {found:.3f} over the base rate, {beside:.3f} over weekend or holiday"
        )
        assert found > over_base_rate
        assert beside > over_weekend_or_holiday


def test_chances_at_another_place_mean_what_they_say(years: dict[str, list[Counts]]) -> None:
    """Over all tables, each judged without itself, days with a chance of p are busy about that often.

    Measured on 1686 days: calibration error 0.017; skill 0.328 over the base rate and 0.170 over weekend or
    holiday, short of what later days of a known place reach. Levels fitted to these very days give 0.40.
    """
    over_base_rate, over_weekends, error = judged(
        [
            (
                counts,
                levels_for(counts, without(table)),
                [other for name, others in years.items() if name != table for other in others],
            )
            for table, all_years in years.items()
            for counts in all_years
        ]
    )
    assert error <= 0.05
    assert over_base_rate > 0.31
    assert over_weekends > 0.15


def without(table: str) -> list[VisitorTable]:
    """The shipped tables but one."""
    return [shipped for name, shipped in SHIPPED.items() if name != table]


@pytest.mark.parametrize("who_comes", ["families", "everybody"])
@pytest.mark.parametrize("table", SHIPPED)
def test_no_single_table_rules(table: str, who_comes: WhoComes) -> None:
    """Leaving out any one table changes the visitors of no kind of day by more than half."""
    assert POOLED[who_comes] == pooled(TABLES, who_comes)
    others = pooled(without(table), who_comes)
    for level in ("saturday", "sunday", "school_holiday", "public_holiday"):
        assert abs(getattr(others, level) - getattr(POOLED[who_comes], level)) < np.log(2)
