"""The time of year against visits by month, in figures that no level was fitted to.

Source: US National Park Service, recreation visits by month, mean visits a day against the year's mean,
2014-2019 and 2022-2023 (data collected by Melanie Walsh, Responsible Datasets in Context, CC BY 4.0).
"""

from datetime import date

import numpy as np
import pytest
from numpy.typing import NDArray

from tripplan.planning.crowds.levels import levels_for
from tripplan.planning.crowds.season import season

LEVELS = levels_for("park_or_trail", "everybody", "outdoors", None)
ALL_63_PARKS = (0.36, 0.44, 0.65, 0.79, 1.10, 1.61, 1.89, 1.71, 1.41, 1.02, 0.58, 0.45)
MIDDLE_OF_THE_COUNTRY = 39.8
"""Latitude of the middle of the conterminous United States [degrees]; from memory."""


def by_month(latitude: float, busiest_months: tuple[int, ...] = ()) -> NDArray[np.float64]:
    """The season outdoors in the middle of each month [ln]."""
    effect = season(date(2026, 1, 1), 365, latitude, "outdoors", busiest_months, LEVELS).effect
    return effect[[15, 45, 74, 105, 135, 166, 196, 227, 258, 288, 319, 349]]


def test_the_season_is_that_of_the_national_parks() -> None:
    """Fitted to a zoo, bicycles and a city park, the season outdoors is also that of 63 national parks."""
    counted = np.log(ALL_63_PARKS)
    counted -= counted.mean()
    said = by_month(MIDDLE_OF_THE_COUNTRY)
    said -= said.mean()
    assert np.corrcoef(counted, said)[0, 1] > 0.93  # Measured: 0.937.
    assert np.ptp(said) == pytest.approx(np.ptp(counted), rel=0.2)


@pytest.mark.parametrize(
    ("latitude", "busiest_months", "fullest", "emptiest", "counted"),
    # Saguaro: March 1.81, July 0.57. Everglades: February 1.54, September 0.57.
    [(32.2, (2, 3, 4), 3, 7, 1.81 / 0.57), (25.3, (12, 1, 2, 3), 2, 9, 1.54 / 0.57)],
    ids=["Saguaro", "Everglades"],
)
def test_parks_that_are_full_in_winter(
    latitude: float, busiest_months: tuple[int, ...], fullest: int, emptiest: int, counted: float
) -> None:
    """With the busiest months on the card the winter season is foreseen; without, that nobody can tell."""
    told = by_month(latitude, busiest_months)
    assert np.exp(told[fullest - 1] - told[emptiest - 1]) == pytest.approx(counted, rel=0.25)
    guessed = season(date(2026, 1, 1), 365, latitude, "outdoors", (), LEVELS)
    assert np.abs(guessed.effect).max() < 0.05
    assert guessed.doubt is not None
    assert guessed.doubt.max() > np.log(counted) / 2 * 0.9


def test_two_busy_seasons() -> None:
    """Great Smoky Mountains is full in July (1.53) and again in October (1.45); both peaks show."""
    told = by_month(35.6, (6, 7, 10))
    assert told[6] > told[8] < told[9]
    assert told[0] < told[8]
