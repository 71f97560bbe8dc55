"""How far a thousand places lie: arrays against one geodesic after the other."""

from collections.abc import Callable

import numpy as np
import pytest

from tests.benchmarks.timing import timed
from tripplan.documents.where import Point
from tripplan.planning.travel.distance import Spots, geodesic_km

PLACES = 1000


def test_the_distances_of_a_thousand_places(tell: Callable[[str], None]) -> None:
    """Both ways give the same distances to 0.5 %; no geodesic is remembered from the round before."""
    random = np.random.default_rng(1)
    origin = Point(40.6936, -89.589)
    places = [
        Point(float(latitude), float(longitude))
        for latitude, longitude in zip(
            random.uniform(24, 50, PLACES), random.uniform(-125, -66, PLACES), strict=True
        )
    ]
    arrays, loop = float("inf"), float("inf")
    for _ in range(3):
        one_by_one_took, one_by_one = timed(lambda: [geodesic_km(origin, place) for place in places])
        assert geodesic_km.cache_info().misses == PLACES
        together_took, together = timed(lambda: Spots.of(places).km_from(origin))
        assert together == pytest.approx(np.array(one_by_one), rel=0.005)
        arrays, loop = min(arrays, together_took), min(loop, one_by_one_took)
    tell(
        f"{PLACES} distances: arrays {1e6 * arrays:.0f} µs, geodesic loop {1e3 * loop:.0f} ms, "
        f"{loop / arrays:.0f} times as fast"
    )
