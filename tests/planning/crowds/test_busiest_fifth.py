"""The chance of being among the busiest fifth, of one year and of many at once."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tripplan.planning.crowds.busiest_fifth import busiest_fifth_chances

Days = list[tuple[float, float]]
years = st.lists(st.tuples(st.floats(-5, 5), st.floats(0.05, 3)), min_size=1, max_size=60)


@given(years)
def test_a_fifth_stays_a_fifth_for_any_levels(days: Days) -> None:
    """Chances are chances, and fuller days have higher ones where the noise is the same."""
    level, noise = np.array(days).T
    chances = busiest_fifth_chances(level, noise)
    assert chances.sum() == pytest.approx(len(days) / 5, abs=1e-6)
    assert ((chances >= 0) & (chances <= 1)).all()
    same_noise = busiest_fifth_chances(level, np.full(len(days), 0.5))
    assert (np.diff(same_noise[np.argsort(level)]) >= -1e-12).all()


def test_chances_agree_with_throwing_dice() -> None:
    """Days drawn 20 000 times with logistic noise are among the busiest fifth about as often as said.

    Second, independent computation: simulation with a fixed seed, over enough days that the threshold hardly
    moves.
    """
    level = np.log(np.tile([1.0, 1.0, 1.0, 1.0, 1.0, 2.6, 2.6], 30))
    noise = np.where(np.arange(210) % 3 == 0, 0.8, 0.5)
    dice = np.random.default_rng(1)
    drawn = level + dice.logistic(0, noise * math.sqrt(3) / math.pi, (20_000, 210))
    threshold = np.sort(drawn, axis=1)[:, -42]
    often = (drawn >= threshold[:, None]).mean(axis=0)
    assert np.abs(often - busiest_fifth_chances(level, noise)).max() < 0.02


@given(st.lists(years, min_size=1, max_size=5))
def test_years_one_after_the_other_have_the_chances_that_each_has_alone(every_year: list[Days]) -> None:
    """To the last bit, however many steps another year needs."""
    level, noise = np.array([day for days in every_year for day in days]).T
    begins = np.cumsum([0, *map(len, every_year[:-1])]).tolist()
    alone = [busiest_fifth_chances(*np.array(days).T) for days in every_year]
    assert busiest_fifth_chances(level, noise, begins).tolist() == np.concatenate(alone).tolist()


def test_days_far_apart_are_told_for_certain_beside_a_year_that_takes_more_steps() -> None:
    """One day in five is fuller than all others beyond doubt, where the curve is as flat as it can be."""
    level = np.array([0.0, 0.0, 9.0, 0.0, 0.0, *np.linspace(0, 3, 40)])
    chances = busiest_fifth_chances(level, np.full(level.size, 0.05), (0, 5))
    assert chances[:5].tolist() == [0, 0, 1, 0, 0]
    assert chances[5:].sum() == pytest.approx(8)


def test_no_days_have_no_chances() -> None:
    """A place that is never open."""
    assert busiest_fifth_chances(np.zeros(0), np.zeros(0)).size == 0
