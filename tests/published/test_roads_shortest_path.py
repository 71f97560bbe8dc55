"""The road engine against shortest paths worked out by other programs on the same map.

The map is read by pyosmium 4.3 (libosmium) and the paths are found by scipy's Dijkstra, so that nothing of
the road engine takes part: neither its reading of the map nor its network nor its search. Both are asked for
the shortest way by car between junctions. What differs on purpose: the engine knows turn restrictions and
every rule of access, this check only the common ones; and the engine rounds lengths.
"""

import json
import random
import sys
from collections.abc import Iterator, Mapping
from importlib import import_module
from itertools import pairwise
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from scipy.sparse import csr_matrix
from scipy.sparse.csgraph import connected_components, dijkstra

from tests.roads.regions_built import build_small_country
from tripplan.documents.where import Point
from tripplan.planning.travel.distance import geodesic_km
from tripplan.roads.engine import engine_config
from tripplan.roads.network import RoadNetwork

CAR_ROADS = {
    f"{kind}{link}"
    for kind in ("motorway", "trunk", "primary", "secondary", "tertiary")
    for link in ("", "_link")
} | {"unclassified", "residential", "living_street", "service", "track"}
"""Source: OpenStreetMap wiki, Key:highway and Key:access, common practice for cars (from memory)."""
LANES = {"service", "track"}
"""Drives and farm tracks: used on the way, but no places to start from or go to."""
CLOSED = {
    "no",
    "agricultural",
    "forestry",
    "emergency",
    "psv",
    "private",
    "destination",
    "customers",
    "delivery",
}
"""The last four let nobody through who only passes."""
SHORTEST_KM = 1.0
SLOWEST_KMH, FASTEST_KMH = 5.0, 80.0
"""The country has no motorway, and outside towns 80 km/h is the limit (from memory)."""
SEED = 20261125

MEDIAN_TOLERANCE, TOLERANCE = 0.002, 0.01
"""Half the pairs must agree to 0.2 %, all to 1 %. No source, our choice: the engine rounds every piece of
road, and a turn that only it knows to be forbidden costs a detour."""


def directions(tags: Mapping[str, str]) -> tuple[bool, bool]:
    """Whether a car may go along and against the way's points."""
    access = next(
        (tags[key] for key in ("motorcar", "motor_vehicle", "vehicle", "access") if key in tags), ""
    )
    if tags.get("highway") not in CAR_ROADS or access in CLOSED:
        return False, False
    oneway = tags.get("oneway", "")
    if oneway in {"-1", "reverse"}:
        return False, True
    round_trip = tags.get("junction") in {"roundabout", "circular"}
    single = oneway in {"yes", "true", "1"} or (not oneway and (round_trip or tags["highway"] == "motorway"))
    return True, not single


def independent_network(path: Path) -> tuple[list[Point], Any, set[int]]:
    """Points, lengths between neighbours [km], and the points where roads other than lanes meet."""
    osmium = pytest.importorskip("osmium", reason="the independent reader of map files is not installed")
    number: dict[int, int] = {}
    points: list[Point] = []
    meeting: dict[int, int] = {}
    starts, ends, lengths = [], [], []
    for way in osmium.FileProcessor(str(path)).with_locations():
        if not way.is_way():
            continue
        along, against = directions({tag.k: tag.v for tag in way.tags})
        if not (along or against):
            continue
        through = []
        for node in way.nodes:
            if node.ref not in number:
                number[node.ref] = len(points)
                points.append(Point(node.location.lat, node.location.lon))
            through.append(number[node.ref])
        if way.tags["highway"] not in LANES:
            for one in set(through):
                meeting[one] = meeting.get(one, 0) + 1
        for left, right in pairwise(through):
            if left == right:
                continue
            km = geodesic_km(points[left], points[right])
            for start, end in ((left, right),) * along + ((right, left),) * against:
                starts.append(start)
                ends.append(end)
                lengths.append(km)
    # Two pieces between the same points keep the shorter length, not their sum.
    shortest: dict[tuple[int, int], float] = {}
    for start, end, km in zip(starts, ends, lengths, strict=True):
        shortest[start, end] = min(km, shortest.get((start, end), km))
    rows, columns = zip(*shortest, strict=True)
    graph = csr_matrix((list(shortest.values()), (rows, columns)), shape=(len(points), len(points)))
    return points, graph, {one for one, ways in meeting.items() if ways > 1}


class Independent:
    """The small country's junctions that can all reach each other, and the shortest way between any two."""

    def __init__(self, extract: Path) -> None:
        self.points, self._graph, junctions = independent_network(extract)
        _, part = connected_components(self._graph, directed=True, connection="strong")
        largest = np.bincount(part).argmax()
        self.junctions = sorted(one for one in junctions if part[one] == largest)

    def pairs(self, starts: int, ends: int) -> Iterator[tuple[Point, list[tuple[Point, float]]]]:
        """Random starts, each with random ends and the shortest way there [km]."""
        choice = random.Random(SEED)
        for start in choice.sample(self.junctions, starts):
            km = dijkstra(self._graph, indices=np.array(start))
            chosen = [end for end in choice.sample(self.junctions, ends) if km[end] > SHORTEST_KM]
            yield self.points[start], [(self.points[end], float(km[end])) for end in chosen]


class ThoroughEngine:
    """The engine, told to look at every road; usually it leaves out lanes far from both ends."""

    def __init__(self, tiles: Path, folder: Path) -> None:
        config = engine_config(tiles)
        config["service_limits"]["max_distance_disable_hierarchy_culling"] = 1_000_000
        settings = folder / "settings.json"
        settings.write_text(json.dumps(config), encoding="utf-8")
        self._actor = import_module("valhalla").Actor(settings)

    def shortest_km(self, start: Point, end: Point) -> float:
        """The shortest way [km]."""
        answer = self._actor.route(
            {
                "locations": [{"lat": one.latitude, "lon": one.longitude} for one in (start, end)],
                "costing": "auto",
                "costing_options": {"auto": {"shortest": True, "disable_hierarchy_pruning": True}},
                "units": "kilometers",
                "directions_type": "none",
            }
        )
        return float(answer["trip"]["summary"]["length"])


def test_the_shortest_way_is_as_long_as_an_independent_search_finds(
    shared_data: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Between random junctions both find ways of the same length, within the tolerance stated above."""
    small_country = build_small_country(shared_data, tmp_path)
    engine = ThoroughEngine(small_country.folder.tiles(small_country.region.name), tmp_path)
    ratios = [
        engine.shortest_km(start, end) / km
        for start, ends in Independent(small_country.extract).pairs(starts=15, ends=12)
        for end, km in ends
    ]
    off = np.abs(np.array(ratios) - 1)
    with capsys.disabled():
        sys.stdout.write(
            f"\nshortest ways: {len(off)} pairs, median {np.median(off):.3%} off, furthest {off.max():.2%}\n"
        )
    assert len(off) > 150
    assert np.median(off) <= MEDIAN_TOLERANCE
    assert off.max() <= TOLERANCE


def test_the_quickest_way_is_never_shorter_than_the_shortest(shared_data: Path, tmp_path: Path) -> None:
    """What a family is told, the quickest way, is as long as the shortest or longer, and takes its time."""
    small_country = build_small_country(shared_data, tmp_path)
    network = RoadNetwork(small_country.data)
    for start, ends in Independent(small_country.extract).pairs(starts=5, ends=30):
        drives = network.drives(start, [end for end, _ in ends])
        for drive, (end, km) in zip(drives, ends, strict=True):
            assert drive is not None, f"no way from {start} to {end}"
            assert drive.km.likely >= km * (1 - TOLERANCE)
            assert FASTEST_KMH > 60 * drive.km.likely / drive.minutes.likely > SLOWEST_KMH
