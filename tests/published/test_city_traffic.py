"""The hours of full roads against published factors."""

import csv

import pytest

from tests.published.drive_report import FULL_ROADS, FullRoads
from tests.published.metropolitan_cells import cells_text
from tests.published.write_figures import TRAVEL
from tripplan.documents.where import Point
from tripplan.language.sentences import fact, said
from tripplan.planning.travel.distance import geodesic_km
from tripplan.planning.travel.rush_hours import METROPOLITAN_RUSH, VERY_LARGE_CITY_RUSH

BY_DAY, IN_RUSH_HOURS = 1.45, 1.7
"""Taxi trips of 20 to 40 km in a very large city against those at night; at second hand."""


def test_very_large_cities_are_as_slow_as_their_taxis() -> None:
    """By day and in rush hours a drive takes within 15 % of what taxis take, and its range reaches beyond."""
    *rush, day = (float(hours.factor) for hours in VERY_LARGE_CITY_RUSH)
    for factor, published in ((day, BY_DAY), *((factor, IN_RUSH_HOURS) for factor in rush)):
        assert factor == pytest.approx(published, rel=0.15)
        # The high end moves up by the square; at 30 km it lies 21 % above the likely time on empty roads.
        assert 1.21 * factor**2 > published


def test_large_cities_have_the_travel_time_index() -> None:
    """1.19, peak over free flow of 52 metropolitan areas.

    Source: Federal Highway Administration, 2021 Urban Congestion Trends, FHWA-HOP-22-028, 2022.
    """
    assert {float(hours.factor) for hours in METROPOLITAN_RUSH} == {1.19}


@pytest.mark.parametrize(
    "known", [known for known in FULL_ROADS if known.used > 1], ids=lambda known: known.name
)
def test_cities_lie_within_a_seventh_of_every_published_factor(known: FullRoads) -> None:
    """Those that the factors were set by and those that they were not: within 15 %."""
    assert known.used == pytest.approx(known.published, rel=0.15)


def test_rush_hours_of_towns_are_too_short_by_a_known_amount() -> None:
    """Nothing is added in medium and small towns, which is 12 to 15 % less than published, from memory."""
    off = {known.used / known.published - 1 for known in FULL_ROADS if known.used == 1}
    assert min(off) == pytest.approx(-0.15, abs=0.005)
    assert max(off) == pytest.approx(-0.12, abs=0.005)


VERY_LARGE_CITIES = {
    # From memory: city halls, to a tenth of a degree.
    "New York": (40.7, -74.0),
    "Los Angeles": (34.1, -118.2),
    "Philadelphia": (40.0, -75.2),
    "Washington": (38.9, -77.0),
    "Boston": (42.4, -71.1),
    "Chicago": (41.9, -87.6),
}


def test_the_household_names_the_very_large_cities_that_the_squares_have() -> None:
    """Each city it names is among them, and no such square lies further than 75 km from all of those."""
    words = said(fact("household-published-rush", factor="1", hours="2", largest="3", by_day="4"))
    assert "52 large US metropolitan areas" in words
    assert "2021 Urban Congestion Trends" in words
    named = {name: Point(*at) for name, at in VERY_LARGE_CITIES.items() if name in words}
    assert named.keys() == VERY_LARGE_CITIES.keys()
    reached = set()
    with (TRAVEL / "metropolitan_cells.csv").open(encoding="utf-8", newline="") as file:
        for row in csv.DictReader(file):
            if row["size"] == "very large":
                for tenth in range(int(row["longitude_from"]), int(row["longitude_to"]) + 1):
                    square = Point(int(row["latitude"]) / 10, tenth / 10)
                    away = {name: geodesic_km(square, city) for name, city in named.items()}
                    nearest = min(away, key=away.__getitem__)
                    assert away[nearest] < 75, square
                    reached.add(nearest)
    assert reached == named.keys()


def test_the_cells_are_those_of_the_gazetteer() -> None:
    """The committed squares are what the ZIP codes of the package give."""
    assert (TRAVEL / "metropolitan_cells.csv").read_text(encoding="utf-8") == cells_text()
