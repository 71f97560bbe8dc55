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
        ends: numbers of its two ends, a row a pair; the same end has the same number.
    """

    straight: Floats
    detour: Floats
    pace: Floats
    weight: Floats
    held_out: NDArray[np.bool_]
    ends: NDArray[np.int64]

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


_NONE = np.empty(0)
NO_PAIRS = Pairs(_NONE, _NONE, _NONE, _NONE, np.empty(0, dtype=np.bool_), np.empty((0, 2), dtype=np.int64))


def together(tables: Sequence[Pairs]) -> Pairs:
    """Some tables, one after the other, whose ends are different ones."""
    sizes = [int(table.ends.max(initial=-1)) + 1 for table in tables]
    begins = np.cumsum([0, *sizes[:-1]])
    apart = [replace(table, ends=table.ends + begin) for table, begin in zip(tables, begins, strict=True)]
    return Pairs(*(np.concatenate([getattr(t, field.name) for t in apart]) for field in fields(Pairs)))


def rows_of(path: Path) -> list[dict[str, str]]:
    """The lines of a table by the names of its columns."""
    with path.open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def _every(nth: int, names: Iterable[str]) -> set[str]:
    return set(sorted(set(names))[nth - 1 :: nth])


def _column(values: Iterable[float]) -> Floats:
    return np.array(list(values), dtype=np.float64)


def _ends(begins: Iterable[str], ends: Iterable[str]) -> NDArray[np.int64]:
    """Two columns of names as numbers."""
    names = np.array(list(zip(begins, ends, strict=True)))
    return np.unique(names, return_inverse=True)[1].reshape(-1, 2)


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
        _ends((row["from"] for row in rows), (row["to"] for row in rows)),
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
        _ends((row["from"] for row in rows), (row["to"] for row in rows)),
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
    timed = Pairs(*(np.repeat(getattr(cities, field.name), 5, axis=0) for field in fields(Pairs)))
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
        _ends(names, (f"{row['to_lat']} {row['to_lon']}" for row in rows))[far],
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


def united_states_classes(folder: Path) -> Pairs:
    """Stand-ins for 7 500 drives of which distance classes are published; every second class is held out.

    In each class detours, and the paces of each of three commercial services, spread log-normally to either
    side of the median as their 10 % and 90 % points say.
    """
    rows = rows_of(folder / "drive" / "us_drive_bins.csv")
    begins, ends = (KM_PER_MILE * _numbers(rows, f"straight_miles_{end}") for end in ("from", "to"))
    detours = np.column_stack([_numbers(rows, f"circuity_p{point}") - 1 for point in (10, 50, 90)])
    held_out = np.arange(len(rows)) % 2 == 1
    found = []
    for service in SERVICES:
        columns = (_numbers(rows, f"min_per_straight_mile_{service}_p{point}") for point in (10, 50, 90))
        paces = np.column_stack(list(columns)) / KM_PER_MILE
        found.append(_stand_ins(begins, ends, detours, paces, held_out, np.ones(len(rows)), per_class=40))
    return together(found)


def _stand_ins(
    begins: Floats,
    ends: Floats,
    detours: Floats,
    paces: Floats,
    held_out: NDArray[np.bool_],
    weights: Floats,
    *,
    per_class: int,
) -> Pairs:
    """Pairs as they may be in distance classes of which only three points are known.

    They lie all over the class, where the figures run as from its middle to those of the classes beside it.

    Args:
        begins: where each class does [km].
        ends: where each class does [km].
        detours: 10 %, 50 % and 90 % point, a row a class [-].
        paces: likewise [min/km].
        held_out: whether the class is.
        weights: of a pair of each class.
        per_class: so many pairs a class.
    """
    middles = np.sqrt(begins * ends)
    places = norm.ppf((np.arange(per_class) + 0.5) / per_class)
    # Steps by the golden ratio, so that small and large figures are alike spread over the class.
    along = (np.arange(per_class) * (math.sqrt(5) - 1) / 2) % 1
    straight = begins[:, None] * (ends / begins)[:, None] ** along
    off_middle = np.log(straight / middles[:, None])

    def figures(points: Floats) -> Floats:
        slopes = np.gradient(np.log(points[:, 1]), np.log(middles))
        spread = np.array([_spread(of_class, places) for of_class in points])
        return np.asarray(spread * np.exp(slopes[:, None] * off_middle)).ravel()

    return Pairs(
        straight.ravel(),
        figures(detours),
        figures(paces),
        weights.repeat(per_class),
        held_out.repeat(per_class),
        _alone(straight.size),
    )


def _alone(count: int) -> NDArray[np.int64]:
    """The ends of pairs that have none in common."""
    return np.arange(count).repeat(2).reshape(-1, 2)


def _spread(points: Floats, places: Floats) -> Floats:
    """Values whose logarithms lie at some places of a normal distribution, each side with its own width.

    Args:
        points: the 10 %, 50 % and 90 % points of the values.
        places: in standard deviations.
    """
    p10, p50, p90 = points
    below, above = math.log(p50 / p10) / TENTH, math.log(p90 / p50) / TENTH
    return np.asarray(p50 * np.exp(places * np.where(places < 0, below, above)), dtype=np.float64)


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
        _alone(len(rows)),
    )


def britain(folder: Path) -> Pairs:
    """Stand-ins for the British routes, of which only classes are published.

    Detours spread log-normally to either side of the class median as its 10 % and 90 % points say; paces
    spread as the detour does and, apart from that, as road speeds do in Belgium. The nearest class is taken
    to begin at a quarter of its end.
    """
    rows, classes = rows_of(folder / "gb_route_bins.csv"), britain_classes(folder)
    ends = _numbers(rows, "to")
    begins = np.maximum(_numbers(rows, "straight_km_from"), ends[0] / 4)
    p10, p90 = (_numbers(rows, f"p{point}") - 1 for point in (10, 90))
    on_the_road = _road_speed_spread(belgium(folder)) * TENTH
    shorter, longer = (
        np.hypot(on_the_road, np.log((1 + far) / (1 + near)))
        for near, far in ((p10, classes.detour), (classes.detour, p90))
    )
    return _stand_ins(
        begins,
        ends,
        np.column_stack([p10, classes.detour, p90]),
        classes.pace[:, None] * np.exp(np.column_stack([-shorter, np.zeros(len(rows)), longer])),
        classes.held_out,
        classes.weight,
        per_class=20,
    )


def _road_speed_spread(pairs: Pairs) -> float:
    """Standard deviation of the logarithm of the road speed about its trend with distance [-]."""
    fitted = pairs.fitted
    x, y = np.log(fitted.straight), np.log((1 + fitted.detour) / fitted.pace)
    return float(np.std(y - np.polyval(np.polyfit(x, y, 2), x)))
