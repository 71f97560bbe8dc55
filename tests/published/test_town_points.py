"""Where the gazetteer puts towns agrees with distances that others have printed."""

from itertools import pairwise

import pytest
from geopy.distance import geodesic

from tripplan.files.locations.gazetteer import GazetteerMatch, find_town

TOWNS = {
    "Atlanta": "GA",
    "Chicago": "IL",
    "Denver": "CO",
    "Houston": "TX",
    "Los Angeles": "CA",
    "Miami": "FL",
    "New York": "NY",
    "San Francisco": "CA",
    "Seattle": "WA",
    "Washington": "DC",
}
# Straight-line miles between US towns, each column from the next town down. Source: R Core Team, data set
# UScitiesD of the package datasets, R 4.2.2; the distances to and from Houston are from memory. A large town
# is 20 miles wide, which is what the middle of its postal codes may differ by from the point somebody chose.
MILES = {
    "Atlanta": (587, 1212, 701, 1936, 604, 748, 2139, 2182, 543),
    "Chicago": (920, 940, 1745, 1188, 713, 1858, 1737, 597),
    "Denver": (879, 831, 1726, 1631, 949, 1021, 1494),
    "Houston": (1374, 968, 1420, 1645, 1891, 1220),
    "Los Angeles": (2339, 2451, 347, 959, 2300),
    "Miami": (1092, 2594, 2734, 923),
    "New York": (2571, 2408, 205),
    "San Francisco": (678, 2442),
    "Seattle": (2329,),
}


def point(town: str) -> tuple[float, float]:
    """Latitude and longitude of a town."""
    found = find_town(town, TOWNS[town], "US")
    assert isinstance(found, GazetteerMatch)
    return found.point.latitude, found.point.longitude


@pytest.mark.parametrize("start", MILES)
def test_towns_lie_as_far_apart_as_printed(start: str) -> None:
    """Between any two of ten large US towns the distance is within 20 miles of the printed one."""
    names = list(TOWNS)
    others = names[names.index(start) + 1 :]
    measured = [geodesic(point(start), point(other)).miles for other in others]
    assert measured == pytest.approx(MILES[start], abs=20)


def test_the_printed_table_is_whole() -> None:
    """Each town has one distance fewer than the town before, so no column has slipped."""
    assert all(len(a) == len(b) + 1 for a, b in pairwise(MILES.values()))
