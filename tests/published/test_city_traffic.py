"""The hours of full roads against published factors."""

import pytest

from tests.published.metropolitan_cells import cells_text
from tests.published.write_figures import TRAVEL
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


def test_the_cells_are_those_of_the_gazetteer() -> None:
    """The committed squares are what the ZIP codes of the package give."""
    assert (TRAVEL / "metropolitan_cells.csv").read_text(encoding="utf-8") == cells_text()
