"""Asking the road network for many places at once, against one after the other."""

import random
import sys
import timeit
from pathlib import Path

import pytest

from tests.roads.regions_built import build_small_country
from tripplan.documents.where import Point
from tripplan.roads.engine import Engine
from tripplan.roads.network import RoadNetwork

PLACES = 200
HOME = Point(47.141, 9.521)


def test_a_matrix_of_two_hundred_places(
    shared_data: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """One call for all places gives what single calls give; how long each takes is printed."""
    country = build_small_country(shared_data, tmp_path)
    choice = random.Random(1)
    box = country.region.box
    finder = RoadNetwork(country.data)
    points: list[Point] = []
    while len(points) < PLACES:
        point = Point(choice.uniform(box.south, box.north), choice.uniform(box.west, box.east))
        if finder.drives(HOME, [point]) != (None,):
            points.append(point)

    def locations(*chosen: Point) -> list[dict[str, float]]:
        return [{"lat": point.latitude, "lon": point.longitude, "search_cutoff": 2000} for point in chosen]

    engine = Engine(country.folder.tiles(country.region.name))
    asked = {"sources": locations(HOME), "targets": locations(*points), "costing": "auto"}
    answer = engine.matrix(asked)
    assert answer is not None
    single = [
        engine.matrix({**asked, "targets": locations(point)})["sources_to_targets"][0][0]["distance"]  # type: ignore[index]
        for point in points[:20]
    ]
    together = [row["distance"] for row in answer["sources_to_targets"][0][:20]]
    assert together == pytest.approx(single, rel=0.01)
    matrix = min(timeit.repeat(lambda: engine.matrix(asked), number=1, repeat=5))
    one_by_one = min(
        timeit.repeat(
            lambda: [engine.matrix({**asked, "targets": locations(point)}) for point in points],
            number=1,
            repeat=3,
        )
    )
    cold = [timeit.timeit(lambda: RoadNetwork(country.data).drives(HOME, points), number=1) for _ in range(3)]
    finder.drives(HOME, points)
    kept = min(timeit.repeat(lambda: finder.drives(HOME, points), number=10, repeat=3)) / 10
    with capsys.disabled():
        sys.stdout.write(
            f"\nroads 1 x {PLACES}: matrix {1e3 * matrix:.0f} ms, one by one {1e3 * one_by_one:.0f} ms "
            f"({one_by_one / matrix:.1f} times as long); drives with toll, ferry and motorway, from a "
            f"cold start {1e3 * min(cold):.0f} ms, kept answers {1e3 * kept:.2f} ms\n"
        )
