"""Where large cities lie: squares of a tenth of a degree with many ZIP codes around them.

ZIP codes that letters are delivered to stand for people: about one for every ten thousand. They are those of
the package `zipcodes`, which the program looks up towns in.
"""

import math
from collections.abc import Iterator

import numpy as np
import zipcodes
from numpy.typing import NDArray
from scipy.spatial import cKDTree

from tripplan.planning.travel.distance import MEAN_EARTH_RADIUS_KM
from tripplan.planning.travel.metropolitan import (
    METROPOLITAN_ZIP_CODES,
    REGION_ZIP_CODES,
    VERY_LARGE_ZIP_CODES,
)

AROUND_KM = 15.0
FURTHER_KM = 25.0
REGION_KM = 40.0


def cells_text() -> str:
    """`metropolitan_cells.csv`: a line a row of squares, from west to east, all of one size of city."""
    lines = ["latitude,longitude_from,longitude_to,size"]
    lines += [f"{row},{west},{east},{size}" for row, west, east, size in _runs()]
    return "\n".join(lines) + "\n"


def _runs() -> Iterator[tuple[int, int, int, str]]:
    """Rows of squares in tenths of a degree."""
    sizes = _sizes()
    for (row, column), size in sorted(sizes.items()):
        if sizes.get((row, column - 1)) != size:
            last = column
            while sizes.get((row, last + 1)) == size:
                last += 1
            yield row, column, last, size


def _sizes() -> dict[tuple[int, int], str]:
    points = _delivered_to()
    tenths = {(row, column) for row, column in np.rint(points * 10).astype(int).tolist()}
    cells = sorted(
        {(row + up, column + right) for row, column in tenths for up in (-1, 0, 1) for right in (-1, 0, 1)}
    )
    tree, middles = cKDTree(_on_unit_sphere(points)), _on_unit_sphere(np.array(cells) / 10)

    def within(km: float) -> NDArray[np.int64]:
        chord = 2 * math.sin(km / MEAN_EARTH_RADIUS_KM / 2)
        return np.asarray(tree.query_ball_point(middles, chord, return_length=True))

    size = np.select(
        [
            within(FURTHER_KM) >= VERY_LARGE_ZIP_CODES,
            within(AROUND_KM) >= METROPOLITAN_ZIP_CODES,
            within(REGION_KM) >= REGION_ZIP_CODES,
        ],
        ["very large", "large", "region"],
        default="",
    )
    return {cell: name for cell, name in zip(cells, size.tolist(), strict=True) if name}


def _on_unit_sphere(degrees: NDArray[np.float64]) -> NDArray[np.float64]:
    latitude, longitude = np.radians(degrees).T
    flat = np.cos(latitude)
    return np.column_stack([flat * np.cos(longitude), flat * np.sin(longitude), np.sin(latitude)])


def _delivered_to() -> NDArray[np.float64]:
    entries = zipcodes.list_all()  # type: ignore[no-untyped-call]
    points = [
        (float(entry["lat"]), float(entry["long"]))
        for entry in entries
        if entry["active"] and entry["zip_code_type"] == "STANDARD" and entry["lat"] and entry["long"]
    ]
    return np.array(points)
