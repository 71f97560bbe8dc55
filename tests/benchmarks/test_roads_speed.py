"""Asking the road network for many places at once, against one after the other."""

import random
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.benchmarks.timing import again, timed
from tests.roads.regions_built import build_small_country
from tripplan.documents.where import Point
from tripplan.roads.engine import Engine
from tripplan.roads.network import RoadNetwork

PLACES = 200
HOME = Point(47.141, 9.521)


def test_a_matrix_of_two_hundred_places(
    shared_data: Path, tmp_path: Path, tell: Callable[[str], None]
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

    def one_by_one() -> list[float]:
        answers = [engine.matrix({**asked, "targets": locations(point)}) for point in points]
        return [one["sources_to_targets"][0][0]["distance"] for one in answers if one is not None]

    together = [row["distance"] for row in answer["sources_to_targets"][0]]
    singly = [timed(one_by_one) for _ in range(3)]
    for _, distances in singly:
        assert distances[:20] == pytest.approx(together[:20], rel=0.01)
    single = min(seconds for seconds, _ in singly)
    matrix = min(timed(lambda: engine.matrix(asked))[0] for _ in range(5))
    cold = [timed(lambda: RoadNetwork(country.data).drives(HOME, points)) for _ in range(3)]
    finder.drives(HOME, points)
    kept = [again(lambda: finder.drives(HOME, points)) for _ in range(30)]
    first, later = (min(seconds for seconds, _ in times) for times in (cold, kept))
    # What is kept was asked point by point above, which may differ by a meter from one call for all.
    assert all(drives == cold[0][1] and None not in drives for _, drives in cold)
    assert all(drives == kept[0][1] and None not in drives for _, drives in kept)
    lengths = [[drive.km.likely for drive in times[0][1] if drive] for times in (cold, kept)]
    assert lengths[0] == pytest.approx(lengths[1], rel=0.01)
    tell(
        f"roads 1 x {PLACES}: matrix {1e3 * matrix:.0f} ms, one by one {1e3 * single:.0f} ms "
        f"({single / matrix:.1f} times as long); drives with toll, ferry and motorway, from a cold start "
        f"{1e3 * first:.0f} ms, kept answers {1e3 * later:.2f} ms"
    )
