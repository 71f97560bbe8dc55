import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tripplan.documents.where import Point
from tripplan.planning.travel.distance import Spots, geodesic_km

points = st.builds(Point, st.floats(-90, 90), st.floats(-180, 180))


@given(points, points)
def test_distance_is_the_same_both_ways(a: Point, b: Point) -> None:
    """Swapping the ends changes nothing, and no distance is negative."""
    assert geodesic_km(a, b) == pytest.approx(geodesic_km(b, a), abs=1e-6)
    assert geodesic_km(a, b) >= 0


@given(points, st.lists(points, max_size=6))
def test_sphere_stays_close_to_the_ellipsoid(origin: Point, others: list[Point]) -> None:
    """The distance used for ranking is within 0.57 % of the geodesic anywhere on Earth.

    It is worst along a meridian at the equator, whose radius of curvature a (1 - e2) is 6335.4 km against a
    mean of 6371.0 km, and within 0.5 % along any line more than 15 degrees from the equator.
    """
    found = Spots.of(others).km_from(origin)
    assert found.shape == (len(others),)
    for point, km in zip(others, found, strict=True):
        assert km == pytest.approx(geodesic_km(origin, point), rel=0.0057, abs=1e-6)


def test_ranking_within_a_country_is_within_half_a_percent() -> None:
    """2000 lines inside the conterminous United States are within 0.5 % of the geodesic."""
    random = np.random.default_rng(20261125)
    latitudes, longitudes = random.uniform(24, 50, 2001), random.uniform(-125, -66, 2001)
    origin, *others = (Point(float(lat), float(lon)) for lat, lon in zip(latitudes, longitudes, strict=True))
    exact = np.array([geodesic_km(origin, point) for point in others])
    assert np.abs(Spots.of(others).km_from(origin) / exact - 1).max() <= 0.005


def test_no_points_give_no_distances() -> None:
    """Ranking nothing gives an empty array."""
    assert Spots.of([]).km_from(Point(40, -89)).shape == (0,)


def test_a_point_is_no_distance_from_itself() -> None:
    """Both distances of a point to itself are nought."""
    here = Point(40.6936, -89.589)
    assert geodesic_km(here, here) == 0
    assert Spots.of([here]).km_from(here)[0] == 0


def test_coordinates_that_are_no_numbers_are_refused() -> None:
    """A point without a finite coordinate has no distance."""
    with pytest.raises(ValueError, match="finite"):
        geodesic_km(Point(float("nan"), 0), Point(0, 0))
