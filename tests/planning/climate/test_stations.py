"""The usual weather of a point, by the stations around it."""

import numpy as np
import pytest

from tripplan.documents.where import Point
from tripplan.planning.climate.climate import UsualMonths
from tripplan.planning.climate.stations import stations

DUBUQUE = Point(42.5, -90.66)


def months(point: Point, height: float | None = None) -> UsualMonths:
    """Those of a point that is near a station."""
    found = stations().months_at(point, height)
    assert found is not None
    return found


def test_the_table_holds_what_its_sources_say() -> None:
    """3 366 stations of the United States and 13 abroad; each warmest by day, all of it possible."""
    every = stations()
    assert every.name.size == 3379
    assert int(every.free.sum()) == 3366
    assert (every.high >= every.low).all()
    assert (every.wet <= 31).all()
    assert ((every.snow <= 31) | ~every.counts_snow[:, None]).all()


def test_a_higher_place_is_colder() -> None:
    """0.55 °C for each 100 m; how wet it is stays."""
    low, high = months(DUBUQUE, 200), months(DUBUQUE, 400)
    assert np.allclose(low.high - high.high, 1.1)
    assert np.allclose(low.low - high.low, 1.1)
    assert np.array_equal(low.wet, high.wet)


@pytest.mark.parametrize(
    "point", [Point(90, 0), Point(-90, 0), Point(40, -40), Point(48.2, 16.4)], ids=["N", "S", "sea", "Vienna"]
)
def test_far_from_every_station_nothing_is_known(point: Point) -> None:
    """At the poles, on the Atlantic and in a country that the table does not hold."""
    assert stations().months_at(point) is None


def test_the_source_names_the_nearest_station_and_the_credit_that_is_due() -> None:
    """Dubuque's own station is a few kilometers off; the Dutch ones ask to be named."""
    assert "DUBUQUE" in months(DUBUQUE).source.text
    assert months(DUBUQUE).source.credit == ""
    assert "KNMI" in months(Point(52.1, 5.18)).source.credit


def test_across_the_date_line_stations_are_near() -> None:
    """Two points 0.2 degrees apart around the 180th meridian are as far apart as elsewhere."""
    every = stations()
    (km,) = np.unique(np.round(every.km_from(every.point(5))[5], 6))
    assert km == pytest.approx(0, abs=1e-3)
    east, west = every.km_from(Point(52, 179.9)), every.km_from(Point(52, -179.9))
    assert np.abs(east - west).max() < 15
