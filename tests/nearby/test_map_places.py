"""Places that families go to are found in a map file, wherever and however they are drawn."""

import sys
from pathlib import Path

import pytest

from tests.nearby.map_writer import require_osmium, write_map
from tripplan.errors import InputFaults
from tripplan.nearby.kinds import KINDS, NAMES, kind_of
from tripplan.nearby.map_places import STEPS, OsmiumMissing, Progress, read_places


@pytest.fixture
def town(tmp_path: Path) -> Path:
    """A map with a museum as a point, a zoo as an area, a reserve of two outlines, and what is no outing."""
    corners: dict[int, tuple[float, float, dict[str, str]]] = {
        number: (42.0 + (number % 2) / 100, -90.0 - (number // 2 % 2) / 100, {}) for number in range(10, 18)
    }
    return write_map(
        tmp_path / "town.osm.pbf",
        nodes={
            1: (42.5, -90.5, {"tourism": "museum", "name": "Mill Museum", "fee": "yes", "charge": "8 USD"}),
            2: (42.5, -90.5, {"amenity": "bench", "name": "A bench"}),
            3: (42.5, -90.4, {"leisure": "playground"}),
            4: (42.5, -90.4, {"leisure": "garden", "name": "Own garden", "access": "private"}),
            5: (42.5, -90.4, {"tourism": "information", "information": "board", "name": "A board"}),
            **corners,
        },
        ways={
            100: ([10, 11, 13, 12, 10], {"tourism": "zoo", "name": "Fern Zoo"}),
            101: ([14, 15], {}),
            102: ([17, 16], {}),
        },
        relations={
            1000: ([101, 102], {"type": "multipolygon", "leisure": "nature_reserve", "name": "Otter Fen"})
        },
    )


def test_points_areas_and_areas_of_several_outlines_are_found(town: Path) -> None:
    """Each with kind, name and a point in its middle; benches, boards and private gardens are left out."""
    found = {place.osm: place for place in read_places(town)}
    assert {osm: (place.kind.name, place.name) for osm, place in found.items()} == {
        "node/1": ("museum", "Mill Museum"),
        "node/3": ("playground", ""),
        "way/100": ("zoo", "Fern Zoo"),
        "relation/1000": ("nature reserve", "Otter Fen"),
    }
    assert found["node/1"].tags == {"name": "Mill Museum", "fee": "yes", "charge": "8 USD"}
    middle = found["way/100"].point
    assert [middle.latitude, middle.longitude] == pytest.approx([42.005, -90.005])


def test_reading_can_be_stopped(town: Path) -> None:
    """Whoever is told the progress may raise to stop, at each step."""

    class Stopped(Exception):
        pass

    heard: list[str] = []

    def stop_at(wanted: str) -> Progress:
        def progress(step: str, _: int) -> None:
            heard.append(step)
            if step == wanted:
                raise Stopped

        return progress

    for step in STEPS:
        with pytest.raises(Stopped):
            read_places(town, stop_at(step))
    assert heard == ["places", "places", "outlines", *STEPS]


@pytest.mark.parametrize("content", [b"", b"no map at all", bytes(5000)], ids=["empty", "text", "zeros"])
def test_what_is_no_map_is_refused_by_name(tmp_path: Path, content: bytes) -> None:
    """The fault names the file."""
    require_osmium()
    broken = tmp_path / "broken.osm.pbf"
    broken.write_bytes(content)
    with pytest.raises(InputFaults, match=r"broken\.osm\.pbf"):
        read_places(broken)


def test_a_map_that_breaks_off_is_refused(town: Path) -> None:
    """Half a download is no map."""
    whole = town.read_bytes()
    town.write_bytes(whole[: len(whole) // 2])
    with pytest.raises(InputFaults, match=r"town\.osm\.pbf"):
        read_places(town)


def test_without_the_package_it_is_said_what_to_install(town: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The rest of the program needs it not."""
    monkeypatch.setitem(sys.modules, "osmium", None)
    with pytest.raises(OsmiumMissing, match="pip install osmium"):
        read_places(town)


def test_every_kind_is_met_by_its_own_tag() -> None:
    """No kind is hidden behind an earlier one."""
    met = {
        kind.name
        for kind in KINDS
        for value in kind.values or {"yes"}
        for tags in [{kind.key: value, "information": "visitor_centre"}]
        if kind_of(tags) == kind
    }
    assert met == set(NAMES)


def test_places_of_a_real_small_country_are_found(shared_data: Path) -> None:
    """The national museum of Liechtenstein lies in Vaduz, 47.14 N 9.52 E.

    Source: © OpenStreetMap contributors (ODbL), Liechtenstein's extract; the coordinates from memory.
    """
    require_osmium()
    museums = {
        p.name: p.point for p in read_places(shared_data / "liechtenstein.osm.pbf") if p.kind.name == "museum"
    }
    point = museums["Liechtensteinisches Landesmuseum Vaduz"]
    assert [point.latitude, point.longitude] == pytest.approx([47.14, 9.52], abs=0.01)
