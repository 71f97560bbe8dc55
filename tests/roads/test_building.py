"""Building a region: said beforehand, never half used, taken up again where that is safe."""

import hashlib
import signal
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.roads.invented_map import blob, header_data, three_towns, write_map
from tests.roads.regions_built import NOW, RegionBuilt, build
from tripplan.errors import RoadsUnusable
from tripplan.roads.building import build_region, build_state, extract_of, space_for
from tripplan.roads.extract import Extract, read_extract
from tripplan.roads.locking import only_one
from tripplan.roads.regions import RegionFolder

ROOT = Path(__file__).resolve().parents[2]
FIRST_OF_THE_SECOND_HALF = "laying out the network"
EVERY_STEP = (
    "reading the roads",
    "reading turn rules",
    "reading the points on the roads",
    "joining the roads",
    FIRST_OF_THE_SECOND_HALF,
    "working out speeds",
    "preparing for long ways",
    "adding turn rules",
    "checking the network",
)


class Interrupted(Exception):
    """Somebody pulled the plug."""


def plug_pulled_at(step: str) -> Callable[[float, str], None]:
    """A listener that ends the build when a step begins."""

    def listen(_: float, doing: str) -> None:
        if doing == step:
            raise Interrupted

    return listen


def checksums(tiles: Path) -> dict[str, str]:
    """The engine's files by name and content."""
    return {
        str(path.relative_to(tiles)): hashlib.sha256(path.read_bytes()).hexdigest()
        for path in tiles.rglob("*.gph")
    }


@pytest.mark.usefixtures("road_engine")
def test_building_tells_its_steps_and_leaves_one_region(tmp_path: Path, invented_extract: Path) -> None:
    """The share rises from 0 to 1, and nothing but the network and its description is kept."""
    folder, told = RegionFolder(tmp_path), list[tuple[float, str]]()
    extract = read_extract(invented_extract)
    region = build_region(extract, "towns", folder, NOW, lambda *step: told.append(step))
    assert [doing for _, doing in told] == [*EVERY_STEP, "done"]
    shares = [share for share, _ in told]
    assert (shares[0], shares[-1]) == (0, 1)
    assert shares == sorted(shares)
    assert folder.regions() == (region,)
    assert {path.name for path in (folder.path / "towns").iterdir()} == {"region.json", "tiles"}
    assert not list(folder.tiles("towns").glob("*.bin"))
    assert folder.unfinished() == ()


@pytest.mark.parametrize("step", EVERY_STEP)
def test_an_interrupted_build_is_never_used_and_comes_out_the_same_in_the_end(
    towns: RegionBuilt, tmp_path: Path, invented_extract: Path, step: str
) -> None:
    """From the second half on it goes on there, before that it starts anew; the network is the same."""
    folder, extract = RegionFolder(tmp_path), read_extract(invented_extract)
    with pytest.raises(Interrupted):
        build_region(extract, "three-towns", folder, NOW, plug_pulled_at(step))
    assert folder.regions() == ()
    assert folder.unfinished() == ("three-towns",)
    assert extract_of(folder, "three-towns") == invented_extract
    second_half = EVERY_STEP.index(step) >= EVERY_STEP.index(FIRST_OF_THE_SECOND_HALF)
    # What a step leaves that was cut off in its midst: files cut short, and numbers changed in others.
    for path in folder.work("three-towns").rglob("*.gph"):
        path.write_bytes(path.read_bytes()[:100])
    edges = folder.work("three-towns") / "tiles" / "edges.bin"
    if edges.exists():
        edges.write_bytes(b"\xff" * edges.stat().st_size)
    told = list[str]()
    build_region(extract, "three-towns", folder, NOW, lambda _, doing: told.append(doing))
    assert told[0] == (FIRST_OF_THE_SECOND_HALF if second_half else EVERY_STEP[0])
    assert checksums(folder.tiles("three-towns")) == checksums(towns.folder.tiles("three-towns"))


@pytest.mark.usefixtures("road_engine")
def test_another_map_file_is_not_taken_for_the_one_begun_with(tmp_path: Path, invented_extract: Path) -> None:
    """A newer map under the same name starts from the beginning."""
    folder = RegionFolder(tmp_path)
    with pytest.raises(Interrupted):
        build_region(
            read_extract(invented_extract), "towns", folder, NOW, plug_pulled_at("checking the network")
        )
    write_map(invented_extract, three_towns(), stamp=1_800_000_000)
    told = list[str]()
    build_region(read_extract(invented_extract), "towns", folder, NOW, lambda _, doing: told.append(doing))
    assert told[0] == EVERY_STEP[0]


@pytest.mark.usefixtures("road_engine")
def test_missing_files_of_the_first_half_start_the_build_anew(tmp_path: Path, invented_extract: Path) -> None:
    """What the first half left is only used when all of it is there in its full size."""
    folder = RegionFolder(tmp_path)
    with pytest.raises(Interrupted):
        build_region(
            read_extract(invented_extract), "towns", folder, NOW, plug_pulled_at(FIRST_OF_THE_SECOND_HALF)
        )
    (folder.work("towns") / "tiles" / "ways.bin").write_bytes(b"")
    told = list[str]()
    build_region(read_extract(invented_extract), "towns", folder, NOW, lambda _, doing: told.append(doing))
    assert told[0] == EVERY_STEP[0]


@pytest.mark.skipif(sys.platform == "win32", reason="kills a process the way only POSIX systems do")
def test_a_killed_build_leaves_no_region_and_can_be_built_again(
    towns: RegionBuilt, tmp_path: Path, invented_extract: Path
) -> None:
    """After a sudden death nothing is used, the lock is free again, and the next build comes out the same."""
    words = ("roads", "build", str(invented_extract), "--name", "three-towns", "--data", str(tmp_path))
    with subprocess.Popen(
        [sys.executable, "-m", "tripplan", *words],
        cwd=ROOT,
        stdout=subprocess.DEVNULL,
        stderr=subprocess.PIPE,
        text=True,
    ) as process:
        assert process.stderr is not None
        for line in process.stderr:
            if "working out speeds" in line:
                break
        process.send_signal(signal.SIGKILL)
    folder = RegionFolder(tmp_path)
    assert folder.regions() == ()
    assert folder.unfinished() == ("three-towns",)
    # The engine's own process may live a moment longer than the one that was killed.
    deadline = 200
    while folder.being_built("three-towns") and deadline:
        subprocess.run([sys.executable, "-c", "import time; time.sleep(0.05)"], check=True)
        deadline -= 1
    again = build(invented_extract, tmp_path, "three-towns")
    assert checksums(again.folder.tiles("three-towns")) == checksums(towns.folder.tiles("three-towns"))


@pytest.mark.usefixtures("road_engine")
def test_two_builds_of_one_region_do_not_meet(tmp_path: Path, invented_extract: Path) -> None:
    """The second is refused in words while the first goes on."""
    folder = RegionFolder(tmp_path)
    with only_one(folder.lock("towns")), pytest.raises(RoadsUnusable, match="being built already"):
        build_region(read_extract(invented_extract), "towns", folder, NOW, lambda *_: None)


@pytest.mark.usefixtures("road_engine")
def test_a_spoilt_map_file_fails_in_words_and_the_older_region_stays(
    tmp_path: Path, invented_extract: Path
) -> None:
    """The engine may stop as it likes: the error says what was done, and is kept for the screens."""
    first = build(invented_extract, tmp_path, "towns")
    invented_extract.write_bytes(
        blob("OSMHeader", header_data((-1, 1, 1, -1), None)) + blob("OSMData", b"\xff" * 200)
    )
    with pytest.raises(RoadsUnusable, match="the road engine stopped while reading"):
        build(invented_extract, tmp_path, "towns")
    assert first.folder.regions() == (first.region,)
    state = build_state(first.folder, "towns")
    assert state is not None
    assert state.failed is not None
    assert "the road engine stopped" in state.failed


@pytest.mark.usefixtures("road_engine")
def test_a_map_without_roads_is_refused(tmp_path: Path) -> None:
    """A region of which nothing could be asked is not made."""
    extract = tmp_path / "sea.osm.pbf"
    extract.write_bytes(blob("OSMHeader", header_data((-1, 1, 1, -1), None)))
    with pytest.raises(RoadsUnusable):
        build(extract, tmp_path, "sea")
    assert RegionFolder(tmp_path).regions() == ()


@pytest.mark.usefixtures("road_engine")
def test_without_an_area_in_the_head_the_roads_themselves_tell_it(tmp_path: Path) -> None:
    """The area is then that of the engine's squares of a quarter degree that hold roads."""
    extract = write_map(tmp_path / "towns.osm.pbf", three_towns(), with_box=False)
    box = build(extract, tmp_path, "towns").region.box
    # The towns lie between 41.0 and 41.318 degrees north, 90.0 and 89.473 degrees west.
    assert (box.south, box.north, box.west, box.east) == (41.0, 41.5, -90.0, -89.25)


@pytest.mark.usefixtures("road_engine")
def test_the_room_is_said_beforehand_and_refused_where_it_does_not_suffice(
    tmp_path: Path, invented_extract: Path
) -> None:
    """A map file of a million terabytes would need more than there is, and nothing is begun."""
    huge = Extract(invented_extract, 10**18, None, None)
    folder = RegionFolder(tmp_path / "data")
    space = space_for(huge, folder, "towns")
    assert not space.enough
    assert space.building > 5 * huge.size > space.afterwards > huge.size
    with pytest.raises(RoadsUnusable, match="are free"):
        build_region(huge, "towns", folder, NOW, lambda *_: None)
    assert folder.unfinished() == ()


def test_building_stays_within_the_room_that_was_said(small_country: RegionBuilt) -> None:
    """What stays on the disk is no more than was said beforehand."""
    extract = read_extract(small_country.extract)
    said = space_for(extract, small_country.folder, "another").afterwards
    assert small_country.region.size <= said
