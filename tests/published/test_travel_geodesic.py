"""Straight lines against published geodesics and a published table of straight-line miles."""

import csv
from pathlib import Path

import numpy as np
import pytest

from tripplan.documents.where import Point
from tripplan.planning.travel.distance import Spots, bearing_degrees, geodesic_km

KM_PER_MILE = 1.609344


def degrees(whole: int, minutes: int, seconds: float) -> float:
    """Degrees from sexagesimal parts; the sign of a zero would be lost, so signs are given outside."""
    return whole + minutes / 60 + seconds / 3600


GEODESICS = {
    # Geoscience Australia's test line on GRS80; WGS84 agrees to a millimetre over this distance.
    "Flinders Peak to Buninyong": (
        Point(-degrees(37, 57, 3.72030), degrees(144, 25, 29.52440)),
        Point(-degrees(37, 39, 10.15610), degrees(143, 55, 35.38390)),
        54972.271,
        0.001,
    ),
    # C. F. F. Karney, Algorithms for geodesics, Journal of Geodesy 87 (2013), tables 2, 3 and 4.
    "Karney, table 2": (
        Point(40, 0),
        Point(41.79331020506, 137.84490004377),
        10_000_000.0,
        0.001,
    ),
    "Karney, table 3": (Point(-30.12345, 0), Point(-30.12344, 0.00005), 4.944208, 0.000001),
    "Karney, nearly antipodal": (Point(-30, 0), Point(29.9, 179.8), 19989832.8276, 0.001),
    # geographiclib 2.1, geographiclib/test/test_geodesic.py: GeodSolve0, GeodSolve33, list `testcases`.
    "New York airport to Paris airport": (Point(40.6, -73.8), Point(49.01666667, 2.55), 5853226, 0.5),
    "along the equator": (Point(0, 0), Point(0, 179), 19926189, 0.5),
    "off the equator": (Point(0, 0), Point(0, 179.5), 19980862, 0.5),
    "over a pole": (Point(0, 0), Point(0, 180), 20003931, 0.5),
    "over a pole, not quite": (Point(0, 0), Point(1, 180), 19893357, 0.5),
    "random line 1": (Point(35.60777, -139.44815), Point(-11.17491, -69.95921), 8935244.5604818305, 1e-6),
    "random line 2": (Point(55.52454, 106.05087), Point(77.03196, 197.18234), 4105086.1713924406, 1e-6),
    "random line 3": (Point(-21.97856, 142.59065), Point(41.84138, 98.56635), 8394328.894657671, 1e-6),
    "random line 10": (Point(-68.82867, -74.28391), Point(-50.63005, -8.36685), 3956936.926063544, 1e-6),
}

US_CITIES = {
    # Public coordinates of the city centres, to a hundredth of a degree, from memory.
    "Atlanta": Point(33.75, -84.39),
    "Chicago": Point(41.85, -87.65),
    "Denver": Point(39.74, -104.98),
    "Los Angeles": Point(34.05, -118.24),
    "Miami": Point(25.77, -80.19),
    "New York City": Point(40.71, -74.01),
    "San Francisco": Point(37.77, -122.42),
    "Seattle": Point(47.61, -122.33),
    "Washington": Point(38.90, -77.04),
}


@pytest.mark.parametrize("name", GEODESICS)
def test_geodesics_are_the_published_ones(name: str) -> None:
    """The shown straight line is the published geodesic, to the digits that were published [m]."""
    a, b, metres, tolerance = GEODESICS[name]
    assert 1000 * geodesic_km(a, b) == pytest.approx(metres, abs=tolerance)


def test_straight_lines_between_us_cities_are_the_published_miles(shared_data: Path) -> None:
    """All 36 straight lines of R's UScitiesD come out within 3 miles, and right on average to 0.1 %."""
    with (shared_data / "UScitiesD_labelled.csv").open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    assert len(rows) == 36
    published = np.array([float(row["straight_miles"]) for row in rows])
    found = np.array(
        [geodesic_km(US_CITIES[row["from"]], US_CITIES[row["to"]]) / KM_PER_MILE for row in rows]
    )
    assert np.abs(found - published).max() <= 3.0
    assert (found / published).mean() == pytest.approx(1.0, abs=0.001)


@pytest.mark.parametrize(
    ("a", "b", "ellipsoid_m", "sphere_m"),
    [
        (Point(36.12, -86.67), Point(33.94, -118.40), 2892776.957, 2886448.43),
        (Point(52.205, 0.119), Point(48.857, 2.351), 404607.806, 404279.72),
    ],
    ids=["Nashville to Los Angeles", "Cambridge to Paris"],
)
def test_sphere_and_ellipsoid_differ_as_computed_elsewhere(
    a: Point, b: Point, ellipsoid_m: float, sphere_m: float
) -> None:
    """Both distances are those of an independent computation (geographiclib 2.1; haversine)."""
    assert 1000 * geodesic_km(a, b) == pytest.approx(ellipsoid_m, abs=0.001)
    assert 1000 * Spots.of([b]).km_from(a)[0] == pytest.approx(sphere_m, abs=0.01)


@pytest.mark.parametrize(
    ("origin", "destination", "azimuth"),
    [
        # geographiclib 2.1, geographiclib/test/test_geodesic.py, GeodSolve0 and the first of `testcases`.
        (Point(40.6, -73.8), Point(49.01666667, 2.55), 53.47022),
        (Point(35.60777, -139.44815), Point(-11.17491, -69.95921), 111.098748429560326),
        # C. F. F. Karney, Algorithms for geodesics, Journal of Geodesy 87 (2013), table 2.
        (Point(40, 0), Point(41.79331020506, 137.84490004377), 30.0),
    ],
)
def test_a_line_sets_out_in_the_published_direction(
    origin: Point, destination: Point, azimuth: float
) -> None:
    """The sphere's bearing is within 0.3 degrees of the ellipsoid's, enough for a sketch."""
    assert bearing_degrees(origin, destination) == pytest.approx(azimuth, abs=0.3)
