"""Where large cities lie."""

import pytest

from tests.builders import make_place
from tripplan.planning.travel.metropolitan import CitySize, city_size

WHERE = make_place().where


@pytest.mark.parametrize(
    ("latitude", "longitude", "size"),
    # Middles of towns, from memory.
    [
        (40.75, -73.99, CitySize.VERY_LARGE),
        (40.73, -74.17, CitySize.VERY_LARGE),
        (34.05, -118.25, CitySize.VERY_LARGE),
        (32.78, -96.80, CitySize.LARGE),
        (33.75, -84.39, CitySize.LARGE),
        (47.60, -122.33, CitySize.LARGE),
        (40.27, -76.88, CitySize.REGION),
        (40.69, -89.59, CitySize.NONE),
        (43.07, -89.40, CitySize.NONE),
        (41.20, -78.00, CitySize.NONE),
    ],
    ids=[
        "New York",
        "Newark",
        "Los Angeles",
        "Dallas",
        "Atlanta",
        "Seattle",
        "Harrisburg",
        "Peoria",
        "Madison",
        "woods",
    ],
)
def test_cities_are_found_by_their_zip_codes(latitude: float, longitude: float, size: CitySize) -> None:
    """Known cities have the size that their residents would give them, and so have their suburbs."""
    assert city_size(WHERE.model_copy(update={"latitude": latitude, "longitude": longitude})) is size


def test_the_parents_tick_counts_everywhere() -> None:
    """A ticked place is at least near a large city, abroad and without coordinates, too."""
    ticked = {"metropolitan": True}
    assert city_size(WHERE.model_copy(update=ticked)) is CitySize.LARGE
    assert city_size(WHERE.model_copy(update={**ticked, "country": "GB"})) is CitySize.LARGE
    assert city_size(WHERE.model_copy(update={"latitude": None, "longitude": None})) is CitySize.NONE
    newark = {"latitude": 40.73, "longitude": -74.17}
    assert city_size(WHERE.model_copy(update={**ticked, **newark})) is CitySize.VERY_LARGE
    assert city_size(WHERE.model_copy(update={**newark, "country": "CA"})) is CitySize.NONE
