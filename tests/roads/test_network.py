"""Asking the roads: real figures inside, nothing outside, and what the way uses."""

from datetime import date
from pathlib import Path

import pytest

from tests.builders import make_household, make_place
from tests.roads.invented_map import (
    EAST_TOWN,
    NORTH_TOWN,
    WEST_TOWN,
    InventedMap,
    Road,
    three_towns,
    write_map,
)
from tests.roads.regions_built import RegionBuilt, build
from tripplan.documents.places.typed_drive import TypedDrive
from tripplan.documents.where import Point
from tripplan.planning.family.family import Family
from tripplan.planning.outing.place_facts import place_facts
from tripplan.planning.travel.distance import geodesic_km
from tripplan.planning.travel.drive import Drive, KnownBy
from tripplan.roads.network import MINUTES_MORE, NEAREST_ROAD_METRES, RoadNetwork
from tripplan.services import with_roads
from tripplan.values.ranges import Origin

WEST, EAST, NORTH = Point(*WEST_TOWN), Point(*EAST_TOWN), Point(*NORTH_TOWN)
NEAR = Point(41.010, -89.982)
"""Another corner of the western town."""
FAR_AWAY = Point(45.0, -93.0)
FIELD = Point(41.15, -89.75)
"""Inside the map, kilometres from every road."""


@pytest.fixture
def network(towns: RegionBuilt) -> RoadNetwork:
    """The roads of the three invented towns."""
    return RoadNetwork(towns.data)


def only(drives: tuple[Drive | None, ...]) -> Drive:
    """The one drive, which must be there."""
    (drive,) = drives
    assert drive is not None
    return drive


def test_a_drive_inside_is_that_of_the_roads_with_its_source(network: RoadNetwork) -> None:
    """Region, credit, licence and the map's date are named, and the range admits traffic."""
    drive = only(network.drives(WEST, [NEAR]))
    assert drive.known_by is KnownBy.ROADS
    assert drive.source.origin is Origin.ROADS
    for words in (
        "three-towns",
        "OpenStreetMap contributors",
        "ODbL",
        "2026-09-21",
        "empty roads",
        "traffic",
    ):
        assert words in drive.source.text
    assert drive.minutes.high == pytest.approx(drive.minutes.likely * (1 + MINUTES_MORE))
    assert drive.km.low < drive.km.likely < drive.km.high


def test_streets_are_as_long_as_they_were_drawn(network: RoadNetwork) -> None:
    """Three blocks north and two or three east: the streets run along meridians and parallels.

    Expected: the sum of the two legs, each a geodesic worked out without the engine.
    """
    corner = Point(NEAR.latitude, WEST.longitude)
    expected = geodesic_km(WEST, corner) + geodesic_km(corner, NEAR)
    assert only(network.drives(WEST, [NEAR])).km.likely == pytest.approx(expected, rel=0.01)


def test_a_toll_motorway_is_told(network: RoadNetwork) -> None:
    """The way east is a toll motorway, and no ferry."""
    notes = " ".join(only(network.drives(WEST, [EAST])).notes)
    assert "toll road" in notes
    assert "motorway" in notes
    assert "ferry" not in notes


def test_a_ferry_is_told_and_its_waiting_admitted(network: RoadNetwork) -> None:
    """The way north is a ferry of 40 minutes: they are in the time, and waiting is in the range."""
    drive = only(network.drives(WEST, [NORTH]))
    assert drive.minutes.likely > 40
    assert drive.minutes.high > drive.minutes.likely * (1 + MINUTES_MORE) + 30
    notes = " ".join(drive.notes)
    assert "ferry" in notes
    assert "toll" not in notes


def test_streets_alone_have_no_toll_ferry_or_motorway(network: RoadNetwork) -> None:
    """Nothing is told that is not so."""
    notes = " ".join(only(network.drives(WEST, [NEAR])).notes)
    assert not any(word in notes for word in ("toll", "ferry", "motorway"))


def test_outside_and_off_the_roads_there_is_no_answer(network: RoadNetwork) -> None:
    """Points outside the map, and points further from a road than is reasonable, do not spoil the others."""
    drives = network.drives(WEST, [FAR_AWAY, EAST, FIELD, NEAR, WEST])
    assert [drive is not None for drive in drives] == [False, True, False, True, True]
    assert network.drives(FAR_AWAY, [WEST, EAST]) == (None, None)
    assert network.drives(FIELD, [WEST, EAST]) == (None, None)
    assert network.drives(WEST, []) == ()


def test_one_bad_point_among_many_costs_nobody_the_answer(network: RoadNetwork) -> None:
    """However the bad ones lie among the good ones, every good one is answered as if asked alone."""
    points = [FIELD, NEAR, FIELD, EAST, NORTH, Point(41.2, -89.6), NEAR]
    together = network.drives(WEST, points)
    assert together == tuple(network.drives(WEST, [point])[0] for point in points)
    assert [drive is None for drive in together] == [True, False, True, False, False, True, False]


def test_a_place_beside_the_road_has_the_gap_in_its_range(network: RoadNetwork) -> None:
    """A kilometre of field between map and place is told, and counted in the high end only."""
    beside = Point(41.018, -89.961)
    gap = geodesic_km(beside, Point(41.018, -89.973))
    assert 0.5 < gap < NEAREST_ROAD_METRES / 1000
    drive = only(network.drives(beside, [NEAR]))
    assert "nearest roads" in " ".join(drive.notes)
    assert drive.km.high == pytest.approx(drive.km.likely * 1.05 + gap, abs=0.02)


def test_answers_are_the_same_the_second_time_and_without_the_engine(towns: RegionBuilt) -> None:
    """Kept answers are handed out; they are the very same objects."""
    network = RoadNetwork(towns.data)
    first = network.drives(WEST, [EAST, FIELD, EAST])
    again = network.drives(WEST, [EAST, FIELD, EAST])
    assert all(one is other for one, other in zip(first, again, strict=True))


@pytest.mark.usefixtures("road_engine")
def test_where_two_regions_cover_a_pair_the_quicker_way_counts(tmp_path: Path) -> None:
    """A map without the motorway knows only the detour; the other one is believed, whatever its name."""
    whole = three_towns()
    slow = [road for road in whole.roads if road.tags.get("highway") != "motorway"]
    lane = Road((1009, 2000), {"highway": "service"})
    maps = {
        "a-slow": InventedMap(whole.points, [*slow, lane]),
        "b-whole": whole,
        "c-slow": InventedMap(whole.points, slow),
    }
    for name, invented in maps.items():
        build(write_map(tmp_path / f"{name}.osm.pbf", invented), tmp_path, name)
    drive = only(RoadNetwork(tmp_path).drives(WEST, [EAST]))
    assert "b-whole" in drive.source.text


@pytest.mark.usefixtures("road_engine")
def test_a_region_built_or_removed_meanwhile_is_noticed(tmp_path: Path, invented_extract: Path) -> None:
    """The network need not be opened again, and no old answer is kept."""
    network = RoadNetwork(tmp_path)
    assert network.drives(WEST, [EAST]) == (None,)
    built = build(invented_extract, tmp_path, "towns")
    assert network.drives(WEST, [EAST])[0] is not None
    built.folder.remove("towns")
    assert network.drives(WEST, [EAST]) == (None,)


@pytest.mark.usefixtures("road_engine")
def test_a_region_of_another_engine_is_not_asked_and_said_so(tmp_path: Path, invented_extract: Path) -> None:
    """Its files might be read wrongly."""
    built = build(invented_extract, tmp_path, "towns")
    about = built.folder.path / "towns" / "region.json"
    older = built.region.model_copy(update={"engine": "3.0.0"})
    about.write_text(older.model_dump_json(), encoding="utf-8")
    network = RoadNetwork(tmp_path)
    assert network.drives(WEST, [EAST]) == (None,)
    assert "Build it again" in " ".join(network.unusable())


def town_place(place_id: str, point: Point) -> dict[str, object]:
    """A place card's changes that put it on a point."""
    where = {"country": "US", "latitude": point.latitude, "longitude": point.longitude}
    return {"id": place_id, "where": {**where, "time_zone": "America/Chicago"}}


def test_a_family_drives_by_the_roads_inside_and_by_the_estimate_outside(towns: RegionBuilt) -> None:
    """Every place's facts say which it was, and what the parent typed in wins over both."""
    home = {"country": "US", "latitude": WEST.latitude, "longitude": WEST.longitude}
    places = tuple(
        make_place(**town_place(place_id, point))
        for place_id, point in {"near": NEAR, "east": EAST, "far": FAR_AWAY}.items()
    )
    typed = TypedDrive(place="east", km=44, minutes=33, typed_on=date(2026, 11, 1))
    household = make_household(home={**home, "time_zone": "America/Chicago"})
    family = with_roads(Family(household, places, typed_drives=(typed,)), RoadNetwork(towns.data))
    known_by = {place.id: place_facts(family, place, (2026,)).drive.known_by for place in places}
    assert known_by == {"near": KnownBy.ROADS, "east": KnownBy.TYPED, "far": KnownBy.ESTIMATE}


def test_towns_of_a_small_country_are_as_far_apart_as_its_roads(small_country: RegionBuilt) -> None:
    """Vaduz to Balzers is some ten kilometres and a quarter of an hour.

    Source: general knowledge of the country, 25 km long from end to end (from memory); hence wide bounds.
    """
    drive = only(RoadNetwork(small_country.data).drives(Point(47.141, 9.521), [Point(47.067, 9.503)]))
    assert 8.3 < drive.km.likely < 12
    assert 8 < drive.minutes.likely < 20
    assert "as of 2015-07-27" in drive.source.text
