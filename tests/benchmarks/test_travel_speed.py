"""How far a thousand places lie: arrays against one geodesic after the other."""

from collections.abc import Callable

import numpy as np

from tests.benchmarks.timing import timed
from tripplan.documents.where import Point
from tripplan.planning.travel.distance import Spots, geodesic_km

PLACES = 1000


def test_the_distances_of_a_thousand_places(tell: Callable[[str], None]) -> None:
    """Both ways give the same distances to 0.5 %; neither remembers anything from the time before.

    The arrays are read from the points anew each time. That takes less than a ten-thousandth of a second, of
    which one alone, after a loop that has put all else out of the processor's own memory, tells nothing; so
    of both the shortest of several counts.
    """
    random = np.random.default_rng(1)
    origin = Point(40.6936, -89.589)
    places = [
        Point(float(latitude), float(longitude))
        for latitude, longitude in zip(
            random.uniform(24, 50, PLACES), random.uniform(-125, -66, PLACES), strict=True
        )
    ]
    arrays, loop = float("inf"), float("inf")
    for _ in range(5):
        one_by_one_took, one_by_one = timed(lambda: [geodesic_km(origin, place) for place in places])
        assert geodesic_km.cache_info().misses == PLACES
        loop = min(loop, one_by_one_took)
        for _ in range(10):
            together_took, together = timed(lambda: Spots.of(places).km_from(origin))
            arrays = min(arrays, together_took)
            assert np.allclose(together, one_by_one, rtol=0.005, atol=0)
    tell(
        f"{PLACES} distances: arrays {1e6 * arrays:.0f} µs, geodesic loop {1e3 * loop:.0f} ms, "
        f"{loop / arrays:.0f} times as fast"
    )
