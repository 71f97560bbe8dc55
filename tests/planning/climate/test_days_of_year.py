"""Days made of months."""

import numpy as np

from tripplan.planning.climate.days_of_year import MONTH_DAYS, YEAR_DAYS, by_day

# NOAA, US Climate Normals 2006-2020: mean daily highs of Alexander City, Alabama [°C].
HIGHS = np.array([13.3, 15.3, 20.2, 24.2, 28.1, 32.1, 33.1, 32.8, 30.3, 25.1, 19.1, 15.2])


def test_the_mean_of_each_month_stays() -> None:
    """To a millionth of a degree."""
    days = by_day() @ HIGHS
    ends = np.cumsum(MONTH_DAYS)
    means = [days[end - length : end].mean() for end, length in zip(ends, MONTH_DAYS, strict=True)]
    assert np.allclose(means, HIGHS, atol=1e-6)


def test_no_day_has_a_step() -> None:
    """Also from December to January; the whole way up, 20 degrees in six months, is a ninth of one a day."""
    days = by_day() @ HIGHS
    assert days.size == YEAR_DAYS
    assert np.abs(np.diff(days, append=days[0])).max() < 0.3


def test_equal_months_stay_flat() -> None:
    """A year of one temperature has no waves."""
    assert np.allclose(by_day() @ np.full(12, 7.0), 7.0, atol=1e-9)
