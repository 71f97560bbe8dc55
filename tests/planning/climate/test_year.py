"""A place's year, month by month."""

import numpy as np
import pytest

from tripplan.documents.where import Point
from tripplan.planning.climate.climate import Climate
from tripplan.planning.climate.stations import stations
from tripplan.planning.climate.year import usual_year

PEORIA = Point(40.6936, -89.589)


def test_a_months_figures_are_those_of_the_stations() -> None:
    """The days of a year are made so that the months' means and sums stay."""
    months = stations().months_at(PEORIA)
    assert months is not None
    year = usual_year(Climate.of_months(PEORIA.latitude, months))
    assert [one.high for one in year] == pytest.approx(months.high.tolist(), abs=0.01)
    assert [one.low for one in year] == pytest.approx(months.low.tolist(), abs=0.01)
    assert [one.wet for one in year] == pytest.approx(months.wet.tolist(), abs=0.01)
    assert months.snow is not None
    assert [one.snow for one in year] == pytest.approx(months.snow.tolist(), abs=0.2)


def test_daylight_turns_with_the_year() -> None:
    """Nine and a half hours in December and fifteen in June at 41 degrees north (almanacs, from memory)."""
    months = stations().months_at(PEORIA)
    assert months is not None
    year = usual_year(Climate.of_months(PEORIA.latitude, months))
    assert year[11].daylight == pytest.approx(9.4, abs=0.2)
    assert year[5].daylight == pytest.approx(15.1, abs=0.2)
    assert np.argmax([one.daylight for one in year]) == 5


def test_where_nobody_counts_snow_it_is_not_known() -> None:
    """Not zero."""
    months = stations().months_at(PEORIA)
    assert months is not None
    climate = Climate.of_months(PEORIA.latitude, months)
    bare = Climate(climate.latitude, climate.high, climate.low, climate.wet, None, climate.source)
    assert {one.snow for one in usual_year(bare)} == {None}
