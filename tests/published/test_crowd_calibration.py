"""Crowd risk against counted visitors that its levels were not fitted to, see `crowd_fit`."""

from dataclasses import replace
from datetime import date
from pathlib import Path

import numpy as np
import pytest

from tests.published.crowd_fit import (
    COUNTED,
    brier,
    chances,
    factor_errors,
    factors,
    judged_without_itself,
    levels_without,
    of_years,
    places,
    report,
    tables_text,
    together,
    within_a_fifth,
)
from tests.published.crowd_tables import MUSEUM_NAMES, fitted
from tests.published.write_figures import CROWDS, HERE
from tripplan.documents.places.place import WhoComes
from tripplan.planning.crowds.levels import TABLES, levels_for, pooled

LATER_DAYS = {
    "zoo": ((date(1990, 1, 1), date(1990, 6, 30)), (date(1990, 7, 1), date(1991, 12, 31))),
    "bicycles": ((date(2011, 1, 1), date(2011, 12, 31)), (date(2012, 1, 1), date(2012, 12, 31))),
    "park": ((date(2015, 1, 1), date(2015, 12, 31)), (date(2016, 1, 1), date(2016, 12, 31))),
}
"""The first part of a table, which levels are fitted to, and the second, which is judged."""


def test_the_tables_of_the_fit_are_up_to_date(shared_data: Path) -> None:
    """The committed effects are those of their tables, and `crowd_fit.md` what the levels in use give."""
    assert (CROWDS / "visitor_tables.csv").read_text(encoding="utf-8") == tables_text(shared_data)
    assert (HERE / "crowd_fit.md").read_text(encoding="utf-8") == report(shared_data)


def test_chances_at_a_place_never_counted_mean_what_they_say(shared_data: Path) -> None:
    """Days with a chance of p are busy about that often, in every class of chances within five points.

    Measured on 4221 days of six places: calibration error 0.010; skill 0.250 over the base rate. That the
    weeks before Christmas are emptier was seen in all six tables, how much so is told each by the others.
    """
    every = together([judged_without_itself(name, shared_data) for name in COUNTED])
    assert every.calibration_error <= 0.02
    assert every.skill == pytest.approx(0.250, abs=0.0006)
    assert every.skill_over_weekends > 0.16
    for _, _, said, seen in every.classes:
        assert seen == pytest.approx(said, abs=0.05)


def test_how_often_a_place_never_counted_is_foretold_within_a_fifth_is_known() -> None:
    """Visitors against a term weekday come within 20 % at one or two places of six; the aim was all of them.

    `crowd_fit.md` has them, with the standard errors of what was counted; how full a day is against the
    others of its year, which the chances rest on, is judged above.
    """
    met = np.array([within_a_fifth(name) for name in COUNTED]).sum(axis=0)
    assert met.tolist() == [2, 2, 2, 1]


def test_museums_differ_on_public_holidays_by_more_than_counting_errors(shared_data: Path) -> None:
    """No single figure comes within 20 % of all three: 3.5 against 2.0 times, three standard errors apart.

    Second, independent computation: the best figure for a highest and a lowest one is their geometric mean,
    off by the root of their ratio.
    """
    counted = [factors(COUNTED[name].table.effects)[3] for name in MUSEUM_NAMES]
    errors = [factor_errors(places(shared_data)[name], grows=False)[3] for name in MUSEUM_NAMES]
    high, low = int(np.argmax(counted)), int(np.argmin(counted))
    assert (counted[high] / counted[low]) ** 0.5 > 1.25
    assert counted[high] - counted[low] > 2.5 * np.hypot(errors[high], errors[low])


@pytest.mark.parametrize("name", COUNTED)
def test_no_place_loses_to_the_base_rate(name: str, shared_data: Path) -> None:
    """The worst, a riverside park, has a skill of 0.12; none loses to 'weekend or holiday' either."""
    judged = judged_without_itself(name, shared_data)
    assert judged.skill > 0.11
    assert judged.skill_over_weekends > 0


def test_all_days_alike_cannot_lose_to_the_base_rate(shared_data: Path) -> None:
    """A card that says so has about the base rate every day: a place that is flat over the week loses none.

    Second, independent computation: at a place where every day is as likely as any other among the busiest
    fifth, the expected loss of a chance p against the base rate is (p - 0.2) squared, here under 0.002.
    """
    (counts, *_) = of_years("Bristol Museum", shared_data)
    chance = chances(counts, levels_for("museum", "families", "indoors", "all_alike"))
    assert brier(chance, np.full(len(chance), 0.2)) < 0.002
    usual = chances(counts, levels_for("museum", "families", "indoors", None))
    assert brier(usual, np.full(len(usual), 0.2)) > 0.02


def test_later_days_are_foretold_from_the_days_before(shared_data: Path) -> None:
    """Fitted to the first part of three tables, the levels foretell each second part with some skill."""
    counted = {name: places(shared_data)[name] for name in LATER_DAYS}
    tables = [
        replace(
            COUNTED[name].table,
            effects=fitted(counts.between(*LATER_DAYS[name][0]), whole_year=name != "zoo"),
        )
        for name, counts in counted.items()
    ]
    for name, counts in counted.items():
        later = counts.between(*LATER_DAYS[name][1])
        chance = chances(later, pooled(tables, COUNTED[name].table.kind, COUNTED[name].table.who_comes))
        skill = 1 - brier(chance, later.busiest) / brier(0.2, later.busiest)
        assert skill > 0.15


@pytest.mark.parametrize("who_comes", ["families", "everybody"])
@pytest.mark.parametrize("table", COUNTED)
def test_no_single_table_rules(table: str, who_comes: WhoComes) -> None:
    """Leaving out any one table changes what all kinds have in common by less than half."""
    left = [other for other in TABLES if other is not COUNTED[table].table]
    every, others = (factors(vars(pooled(tables, None, who_comes))) for tables in (TABLES, left))
    for with_it, without_it in zip(every, others, strict=True):
        assert 0.5 < without_it / with_it < 2


@pytest.mark.parametrize("name", COUNTED)
def test_a_kind_with_tables_lies_between_its_own_and_the_common_level(name: str) -> None:
    """Weekends of a kind lie between its tables and all kinds; without a table they are of all kinds."""
    kind = COUNTED[name].table.kind
    own = float(np.mean([table.weekend for table in TABLES if table.kind == kind]))
    common = pooled(TABLES, None, "families").weekend
    shrunk = pooled(TABLES, kind, "families").weekend
    assert min(own, common) < shrunk < max(own, common)
    assert pooled(TABLES, "show_or_fair", "families") == pooled(TABLES, None, "families")
    assert levels_without(name) != pooled(TABLES, kind, COUNTED[name].table.who_comes)
