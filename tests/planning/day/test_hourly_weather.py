"""What being outdoors weighs by the hour, against adding up every minute."""

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from tripplan.planning.day.times.hourly_weather import PARTS, HourlyWeather

DAY_MINUTES, STEP = 24 * 60, 30


@settings(max_examples=50)
@given(st.integers(0, 10**6), st.integers(0, 2 * DAY_MINUTES), st.integers(1, DAY_MINUTES))
def test_a_visit_weighs_the_sum_of_its_minutes(seed: int, enter: int, stay: int) -> None:
    """In two kinds of weather, past midnight too; barred where any half hour that it touches is."""
    random = np.random.default_rng(seed)
    weight, barred = random.uniform(0, 0.5, (2, 48)), random.random((2, 48)) < 0.05
    weather = HourlyWeather.of_half_hours(weight, barred)
    steps = [minute % DAY_MINUTES // STEP for minute in range(enter, enter + stay)]
    visit = np.array(enter), np.array(enter + stay)
    for kind in (0, 1):
        by_minute = [round(float(weight[kind, step]) * PARTS) for step in steps]
        assert weather.weighs(kind, *visit) == sum(by_minute)
        assert weather.bars(kind, *visit) == any(barred[kind, step] for step in steps)
    assert weather.bars_any == barred.any()
    assert not weather.without_bars().bars_any
    assert weather.of(np.array([1])).weighs(0, *visit) == weather.weighs(1, *visit)
