"""In or near which places a large city's traffic slows every drive down.

The squares of `metropolitan_cells.csv`, a part of the program, are a tenth of a degree wide and high. They
are made from how densely ZIP codes lie (`python -m tests.published.write_figures`), so they are known for the
United States only; elsewhere the parent's tick counts alone.
"""

import csv
from collections.abc import Mapping
from enum import IntEnum
from functools import lru_cache
from importlib.resources import files

from tripplan.documents.where import Point, Where

REGION_ZIP_CODES = 55
"""So many ZIP codes within 40 km make a metropolitan area, its outskirts among it [-]. No source, our choice:
it takes in all of the county that the drives within such areas were routed in."""
METROPOLITAN_ZIP_CODES = 22
"""So many ZIP codes within 15 km make a large city [-]. No source, our choice: it takes in nearly all of the
metropolitan areas of a million people and more, and none of Madison, Des Moines' suburbs or smaller."""
VERY_LARGE_ZIP_CODES = 108
"""So many ZIP codes within 25 km make a very large one [-]. No source, our choice: New York, Los Angeles,
Philadelphia, Washington, Boston and Chicago."""


class CitySize(IntEnum):
    """How large the city is that a place lies in or near.

    `REGION` is the country around one or several, whose roads are still theirs.
    """

    NONE = 0
    REGION = 1
    LARGE = 2
    VERY_LARGE = 3


_SIZES = {"region": CitySize.REGION, "large": CitySize.LARGE, "very large": CitySize.VERY_LARGE}


def city_size(where: Where) -> CitySize:
    """How large the city is that a place lies in or near, by its coordinates or the parent's tick."""
    ticked = CitySize.LARGE if where.metropolitan else CitySize.NONE
    if where.country != "US" or where.latitude is None or where.longitude is None:
        return ticked
    return max(ticked, _size_at(where.latitude, where.longitude))


def within_metropolitan_areas(*points: Point) -> bool:
    """Whether all of some places in the United States lie in metropolitan areas, be it the same or not."""
    return all(_size_at(point.latitude, point.longitude) for point in points)


def _size_at(latitude: float, longitude: float) -> CitySize:
    return _cells().get((round(latitude * 10), round(longitude * 10)), CitySize.NONE)


@lru_cache(maxsize=1)
def _cells() -> Mapping[tuple[int, int], CitySize]:
    text = files("tripplan.planning.travel").joinpath("metropolitan_cells.csv").read_text(encoding="utf-8")
    return {
        (int(row["latitude"]), column): _SIZES[row["size"]]
        for row in csv.DictReader(text.splitlines())
        for column in range(int(row["longitude_from"]), int(row["longitude_to"]) + 1)
    }
