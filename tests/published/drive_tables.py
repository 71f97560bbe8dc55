"""Open tables of drives: their pairs of places, and which of them are kept out of the fit.

A table of few towns keeps out every third town, in alphabetical order, with every pair that it is an end of;
a table of many origins keeps out every second origin. Tables that are published by distance class only keep
out every third (Great Britain) or every second class (United States).
"""

import csv
import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, fields, replace
from functools import lru_cache
from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from scipy.stats import norm

from tripplan.documents.where import Point
from tripplan.planning.travel.distance import geodesic_km

Floats = NDArray[np.float64]

KM_PER_MILE = 1.609344
TENTH = float(norm.ppf(0.9))
"""How many standard deviations the 10 % and 90 % points of a normal distribution lie from its middle [-]."""

NO_ROAD_KM = {
    ("Copenhagen", "Hook of Holland"),
    ("Athens", "Rome"),
    ("Lisbon", "Lyons"),
    ("Milan", "Munich"),
    ("Lyons", "Milan"),
    ("Cologne", "Geneva"),
}
"""Entries of the European table that cannot be road kilometres: five are shorter than the straight line,
Cologne-Geneva is nearly twice the way over Lyons."""

FAR_OFF_CITIES = frozenset({"Athens", "Stockholm"})
"""Cities at the edge of the European table, reached by ferry or round a sea."""


@dataclass(frozen=True)
class Pairs:
    """Pairs of one table, one array entry a pair.

    Attributes:
        straight: straight line [km].
        detour: what the road adds to it, as a share of it, or nan where it is not known [-].
        pace: driving time for each kilometre of it, or nan where it is not known [min/km].
        weight: how much the pair counts beside others of its distance class in its table [-].
        held_out: whether it is kept out of the fit.
    """

    straight: Floats
    detour: Floats
    pace: Floats
    weight: Floats
    held_out: NDArray[np.bool_]

    def part(self, mask: NDArray[np.bool_]) -> "Pairs":
        """The pairs where the mask is true."""
        return Pairs(*(getattr(self, field.name)[mask] for field in fields(self)))

    @property
    def kept_out(self) -> "Pairs":
        """The pairs that no curve was fitted to."""
        return self.part(self.held_out)

    @property
    def fitted(self) -> "Pairs":
        """The pairs that curves are fitted to."""
        return self.part(~self.held_out)


def together(tables: Sequence[Pairs]) -> Pairs:
    """Some tables, one after the other."""
    return Pairs(*(np.concatenate([getattr(t, field.name) for t in tables]) for field in fields(Pairs)))


def rows_of(path: Path) -> list[dict[str, str]]:
    """The lines of a table by the names of its columns."""
    with path.open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def _every(nth: int, names: Iterable[str]) -> set[str]:
    return set(sorted(set(names))[nth - 1 :: nth])


def _column(values: Iterable[float]) -> Floats:
    return np.array(list(values), dtype=np.float64)


def _numbers(rows: Sequence[dict[str, str]], name: str) -> Floats:
    return _column(float(row[name]) for row in rows)


def belgium(folder: Path) -> Pairs:
    """All ordered pairs of 50 towns: shortest road and fastest time; held out if either town is."""
    rows = rows_of(folder / "belgium50_pairs.csv")
    held = _every(3, (row["from"] for row in rows))
    straight = _numbers(rows, "geodesic_km")
    return Pairs(
        straight,
        _numbers(rows, "shortest_road_km") / straight - 1,
        _numbers(rows, "fastest_time_min") / straight,
        np.ones(len(rows)),
        np.array([row["from"] in held or row["to"] in held for row in rows]),
    )


def europe(folder: Path, without: frozenset[str] = frozenset()) -> Pairs:
    """City pairs over long distances, without minutes; held out if either city is."""
    every = rows_of(folder / "eurodist_labelled.csv")
    held = _every(3, (row[end] for row in every for end in ("from", "to")))
    rows = [
        row
        for row in every
        if (row["from"], row["to"]) not in NO_ROAD_KM and not without & {row["from"], row["to"]}
    ]
    straight = _numbers(rows, "wgs84_geodesic_km")
    return Pairs(
        straight,
        _numbers(rows, "road_km") / straight - 1,
        np.full(len(rows), np.nan),
        np.ones(len(rows)),
        np.array([row["from"] in held or row["to"] in held for row in rows]),
    )


def europe_timed(folder: Path) -> Pairs:
    """The European cities with times: their road km at British road speeds, spread as in Belgium.

    No table of long European drives with minutes was found.
    """
    cities, classes = europe(folder), britain_classes(folder)
    speeds = _numbers(rows_of(folder / "gb_route_bins.csv"), "road_speed_kmh")
    places = norm.ppf((np.arange(5) + 0.5) / 5)
    pace = 60 * (1 + cities.detour) / np.interp(cities.straight, classes.straight, speeds)
    spread = np.exp(_road_speed_spread(belgium(folder)) * places)
    timed = Pairs(*(np.repeat(getattr(cities, field.name), 5) for field in fields(Pairs)))
    return replace(timed, pace=np.outer(pace, spread).ravel(), weight=timed.weight / 5)


@lru_cache(maxsize=4)
def _from_origins(path: Path) -> Pairs:
    """A table of coordinates and minutes, with road km or without; every second origin is held out."""
    rows = rows_of(path)
    ends = [
        [Point(float(row[f"{end}_lat"]), float(row[f"{end}_lon"])) for end in ("from", "to")] for row in rows
    ]
    straight = _column(geodesic_km(*pair) for pair in ends)
    names = [f"{row['from_lat']} {row['from_lon']}" for row in rows]
    held = _every(2, names)
    far = straight >= 0.5  # Nearer ones are one town's middle to itself.
    road = _numbers(rows, "road_km") if "road_km" in rows[0] else np.full(len(rows), np.nan)
    return Pairs(
        straight[far],
        road[far] / straight[far] - 1,
        _numbers(rows, "minutes")[far] / straight[far],
        np.ones(int(far.sum())),
        np.array([name in held for name in names])[far],
    )


def lower_saxony(folder: Path) -> Pairs:
    """Minutes between sub-regions of a German region; held out by where the drive begins."""
    return _from_origins(folder / "drive" / "south_lower_saxony_minutes.csv")


def tarrant(folder: Path) -> Pairs:
    """Minutes from census tracts to points of one Texas county; held out by tract."""
    return _from_origins(folder / "drive" / "tarrant_tx_minutes.csv")


def capitols(folder: Path) -> Pairs:
    """Road km and minutes between 48 state capitols; held out by where the drive begins."""
    return _from_origins(folder / "drive" / "us_capitols_2015.csv")


SERVICES = ("commercial_a", "commercial_b", "commercial_c")


def united_states_classes(folder: Path, per_class: int = 40) -> Pairs:
    """Stand-ins for 7 500 drives of which distance classes are published; every second class is held out.

    In each class detours, and the paces of each of three commercial services, spread log-normally to either
    side of the median as their 10 % and 90 % points say.
    """
    rows = rows_of(folder / "drive" / "us_drive_bins.csv")
    places = norm.ppf((np.arange(per_class) + 0.5) / per_class)
    found = []
    for number, row in enumerate(rows):
        middle = KM_PER_MILE * (float(row["straight_miles_from"]) + float(row["straight_miles_to"])) / 2
        detour = _spread([float(row[f"circuity_p{point}"]) - 1 for point in (10, 50, 90)], places)
        for service in SERVICES:
            minutes = (float(row[f"min_per_straight_mile_{service}_p{point}"]) for point in (10, 50, 90))
            pace = _spread([value / KM_PER_MILE for value in minutes], places)
            found.append(_stand_ins(middle, detour, pace, number % 2 == 1))
    return together(found)


def _spread(points: Sequence[float], places: Floats) -> Floats:
    """Values whose logarithms lie at some places of a normal distribution, each side with its own width.

    Args:
        points: the 10 %, 50 % and 90 % points of the values.
        places: in standard deviations.
    """
    p10, p50, p90 = points
    below, above = math.log(p50 / p10) / TENTH, math.log(p90 / p50) / TENTH
    return np.asarray(p50 * np.exp(places * np.where(places < 0, below, above)), dtype=np.float64)


def _stand_ins(straight: float, detour: Floats, pace: Floats, held_out: bool, weight: float = 1) -> Pairs:
    return Pairs(
        np.full(len(detour), straight),
        detour,
        pace,
        np.full(len(detour), weight),
        np.full(len(detour), held_out),
    )


def britain_classes(folder: Path) -> Pairs:
    """One row a distance class: the middle of the class, median detour, pace on the median way."""
    rows = rows_of(folder / "gb_route_bins.csv")
    ratio = _numbers(rows, "median_ratio")
    return Pairs(
        (_numbers(rows, "straight_km_from") + _numbers(rows, "to")) / 2,
        ratio - 1,
        60 * ratio / _numbers(rows, "road_speed_kmh"),
        np.sqrt(_numbers(rows, "n")),
        np.arange(len(rows)) % 3 == 2,
    )


def britain(folder: Path, per_class: int = 20) -> Pairs:
    """Stand-ins for the British routes, of which only classes are published.

    Detours spread log-normally to either side of the class median as its 10 % and 90 % points say; paces
    spread as the detour does and, apart from that, as road speeds do in Belgium.
    """
    rows, classes = rows_of(folder / "gb_route_bins.csv"), britain_classes(folder)
    places = norm.ppf((np.arange(per_class) + 0.5) / per_class)
    on_the_road = _road_speed_spread(belgium(folder))
    found = []
    for number, row in enumerate(rows):
        median, p10, p90 = float(classes.detour[number]), float(row["p10"]) - 1, float(row["p90"]) - 1
        shorter, longer = (
            math.hypot(on_the_road, math.log((1 + far) / (1 + near)) / TENTH)
            for near, far in ((p10, median), (median, p90))
        )
        found.append(
            _stand_ins(
                float(classes.straight[number]),
                _spread([p10, median, p90], places),
                classes.pace[number] * np.exp(places * np.where(places < 0, shorter, longer)),
                bool(classes.held_out[number]),
                float(classes.weight[number]),
            )
        )
    return together(found)


def _road_speed_spread(pairs: Pairs) -> float:
    """Standard deviation of the logarithm of the road speed about its trend with distance [-]."""
    fitted = pairs.fitted
    x, y = np.log(fitted.straight), np.log((1 + fitted.detour) / fitted.pace)
    return float(np.std(y - np.polyval(np.polyfit(x, y, 2), x)))
