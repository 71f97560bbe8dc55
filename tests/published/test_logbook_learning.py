"""What outings teach, against a posterior worked out on a grid and against SciPy's distributions.

Source of the update: Gelman et al., Bayesian Data Analysis, 3rd edition, 2013, section 3.3 (from memory).
"""

import math
from collections.abc import Sequence

import numpy as np
import pytest
from scipy import stats

from tripplan.planning.logbook.bayes import Belief

PRIOR = Belief(mean=math.log(10.0), spread=0.4, worth=3, sureness=3)
SEEN = tuple(math.log(value) for value in (12.0, 15.0, 11.0, 17.0, 13.5, 12.5))


def on_a_grid(prior: Belief, seen: Sequence[float]) -> tuple[float, float, float]:
    """Posterior mean of m, its 95 % point, and the 90 % point of one more observation, by brute force.

    The prior is multiplied with the likelihood on a grid of mean and deviation; no conjugacy is used.
    """
    means = np.linspace(prior.mean - 2.0, prior.mean + 2.0, 501)
    spreads = np.geomspace(0.02, 6.0, 400)
    m, s = np.meshgrid(means, spreads, indexing="ij")
    # The density of s where s² is scaled inverse chi-square, with ds² = 2 s ds; the grid is even in ln s.
    variance = stats.invgamma(a=prior.sureness / 2, scale=prior.sureness * prior.spread**2 / 2)
    log_density = variance.logpdf(s**2) + np.log(2 * s) + np.log(s)
    log_density += stats.norm.logpdf(m, prior.mean, s / math.sqrt(prior.worth))
    for value in seen:
        log_density += stats.norm.logpdf(value, m, s)
    weight = np.exp(log_density - log_density.max())
    weight /= weight.sum()
    of_mean = weight.sum(axis=1)
    middle = float((of_mean * means).sum())
    upper = float(np.interp(0.95, np.cumsum(of_mean), means))
    points = np.linspace(prior.mean - 2.0, prior.mean + 2.0, 81)
    below = [float((weight * stats.norm.cdf(point, m, s)).sum()) for point in points]
    return middle, upper, float(np.interp(0.9, below, points))


@pytest.mark.parametrize("seen", [SEEN, SEEN[:1], SEEN[:2]], ids=["six", "one", "two"])
def test_the_update_agrees_with_a_grid(seen: tuple[float, ...]) -> None:
    """Mean, its upper end and the next outing's 90 % point agree to half a percent [ln]."""
    belief = PRIOR.after(seen)
    middle, upper, next_one = on_a_grid(PRIOR, seen)
    assert belief.mean == pytest.approx(middle, abs=3e-3)
    assert belief.mean_at(0.95) == pytest.approx(upper, abs=6e-3)
    assert belief.next_one(0.9) == pytest.approx(next_one, abs=6e-3)


def test_predictions_are_those_of_scipys_t_distribution() -> None:
    """The next outing is Student t with as many degrees of freedom as prior and outings have together."""
    belief = PRIOR.after(SEEN)
    for chance in (0.05, 0.5, 0.9, 0.95):
        scale = belief.spread * math.sqrt(1 + 1 / belief.worth)
        assert belief.next_one(chance) == pytest.approx(
            stats.t.ppf(chance, df=9, loc=belief.mean, scale=scale), rel=1e-9
        )
        assert belief.mean_at(chance) == pytest.approx(
            stats.t.ppf(chance, df=9, loc=belief.mean, scale=belief.spread / 3), rel=1e-9
        )


def test_seeing_outings_one_by_one_or_together_is_the_same() -> None:
    """Bayes' rule does not mind the order: six updates end where one with six does."""
    together, belief = PRIOR.after(SEEN), PRIOR
    for value in reversed(SEEN):
        belief = belief.after([value])
    assert belief.mean == pytest.approx(together.mean)
    assert belief.spread == pytest.approx(together.spread)
    assert (belief.worth, belief.sureness) == (together.worth, together.sureness)


def test_the_middle_ninety_percent_holds_nine_times_in_ten() -> None:
    """Families drawn from the prior: the interval for their own mean covers it in 90 % of 4 000 cases.

    Seeded; the standard error of the share is 0.5 %, so four of them are allowed.
    """
    rng = np.random.default_rng(20261125)
    covered = 0
    for _ in range(4000):
        spread = math.sqrt(PRIOR.sureness * PRIOR.spread**2 / rng.chisquare(PRIOR.sureness))
        mean = rng.normal(PRIOR.mean, spread / math.sqrt(PRIOR.worth))
        belief = PRIOR.after([float(value) for value in rng.normal(mean, spread, size=5)])
        covered += belief.mean_at(0.05) <= mean <= belief.mean_at(0.95)
    assert covered / 4000 == pytest.approx(0.9, abs=0.02)
