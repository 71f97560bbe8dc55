"""Figures that change with distance: curves between fixed knots, and bands of them."""

import csv
import math
from bisect import bisect_right
from collections.abc import Mapping
from dataclasses import dataclass

from tripplan.values.ranges import Range

KNOTS_KM = (2.0, 5.0, 10.0, 20.0, 40.0, 80.0, 160.0, 320.0, 640.0, 1280.0, 2560.0)
"""Where the curves bend; between these they are straight on paper that is logarithmic both ways [km]."""
_KNOTS = tuple(map(math.log, KNOTS_KM))


@dataclass(frozen=True)
class Curve:
    """A figure that changes with distance.

    Attributes:
        values: at each of `KNOTS_KM`; above zero. Nearer and further it stays as at the first and last.
    """

    values: tuple[float, ...]

    def at(self, straight_km: float) -> float:
        """The value at a straight-line distance [km]."""
        if straight_km <= KNOTS_KM[0]:
            return self.values[0]
        if straight_km >= KNOTS_KM[-1]:
            return self.values[-1]
        log_km = math.log(straight_km)
        after = min(bisect_right(_KNOTS, log_km), len(_KNOTS) - 1)
        share = (log_km - _KNOTS[after - 1]) / (_KNOTS[after] - _KNOTS[after - 1])
        return float(self.values[after - 1] ** (1 - share) * self.values[after] ** share)


@dataclass(frozen=True)
class Band:
    """A curve for each end of the middle 90 %, and the likely one between them."""

    low: Curve
    likely: Curve
    high: Curve

    def at(self, straight_km: float) -> Range:
        """Low, likely and high at a straight-line distance [km]."""
        return Range(self.low.at(straight_km), self.likely.at(straight_km), self.high.at(straight_km))


def bands_in(text: str) -> Mapping[tuple[str, str], Band]:
    """The bands of a table of curves, by whose roads and which figure.

    Args:
        text: CSV with the columns `roads_of`, `figure`, `end` and one for each of `KNOTS_KM`.
    """
    curves = {
        (row["roads_of"], row["figure"], row["end"]): Curve(
            tuple(float(row[f"{km:g} km"]) for km in KNOTS_KM)
        )
        for row in csv.DictReader(text.splitlines())
    }
    return {
        (roads, figure): Band(*(curves[roads, figure, end] for end in ("low", "likely", "high")))
        for roads, figure, _ in curves
    }
