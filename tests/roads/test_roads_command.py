"""`tripplan roads`: build, list, ask, remove."""

from pathlib import Path

import pytest

from tests.roads.conftest import RunRoads
from tests.roads.invented_map import EAST_TOWN, WEST_TOWN, blob, header_data

WEST, EAST = (f"{latitude},{longitude}" for latitude, longitude in (WEST_TOWN, EAST_TOWN))


@pytest.mark.usefixtures("road_engine")
def test_a_region_is_built_listed_asked_and_removed(
    tmp_path: Path, invented_extract: Path, run_roads: RunRoads
) -> None:
    """The whole way through, with the room said first, a bar beside the answer, and the credit."""
    data = tmp_path / "data"
    built = run_roads(data, "build", invented_extract)
    assert built.status == 0
    assert built.out.index("are free") < built.out.index("Done.")
    assert "OpenStreetMap contributors" in built.out
    assert "100% done" in built.err
    assert "laying out the network" in built.err
    assert "three-towns" in run_roads(data, "list").out
    asked = run_roads(data, "ask", WEST, EAST)
    assert "road network: the quickest way on the roads of three-towns" in asked.out
    assert "toll road" in asked.out
    assert run_roads(data, "remove", "three-towns").status == 0
    assert "There are no roads on this computer" in run_roads(data, "list").out
    assert "estimate: " in run_roads(data, "ask", WEST, EAST).out


@pytest.mark.usefixtures("road_engine")
def test_a_region_can_be_given_a_name(tmp_path: Path, invented_extract: Path, run_roads: RunRoads) -> None:
    """`--name` wins over the file's name."""
    assert run_roads(tmp_path, "build", invented_extract, "--name", "Home").status == 0
    assert run_roads(tmp_path, "list").out.startswith("home: ")


@pytest.mark.usefixtures("road_engine")
def test_outside_every_region_the_estimate_answers_and_says_so(tmp_path: Path, run_roads: RunRoads) -> None:
    """Which of the two it was always stands there."""
    said = run_roads(tmp_path, "ask", "50.0,8.0", "50.5,8.5")
    assert said.status == 0
    assert "estimate: " in said.out
    assert "No region on this computer covers both points" in said.out


def test_coordinates_that_are_none_are_both_told(tmp_path: Path, run_roads: RunRoads) -> None:
    """Two faults, one reading."""
    said = run_roads(tmp_path, "ask", "here", "there")
    assert (said.status, said.out) == (2, "")
    assert "FROM" in said.err
    assert "TO" in said.err


def test_a_latitude_below_zero_can_be_asked(tmp_path: Path, run_roads: RunRoads) -> None:
    """After -- a minus sign begins no option."""
    assert run_roads(tmp_path, "ask", "--", "-33.87,151.21", "-33.42,151.34").status == 0


def test_removing_what_is_not_there_is_a_fault(tmp_path: Path, run_roads: RunRoads) -> None:
    """The name is told back."""
    said = run_roads(tmp_path, "remove", "nowhere")
    assert said.status == 2
    assert "nowhere" in said.err


def test_a_task_is_needed(tmp_path: Path, run_roads: RunRoads) -> None:
    """Without one the usage is shown."""
    said = run_roads(tmp_path)
    assert said.status == 2
    assert "Usage: tripplan roads" in said.err


@pytest.mark.usefixtures("road_engine")
def test_a_file_that_is_no_map_ends_with_a_fault(tmp_path: Path, run_roads: RunRoads) -> None:
    """Nothing is begun."""
    path = tmp_path / "letter.osm.pbf"
    path.write_text("Dear all,", encoding="utf-8")
    said = run_roads(tmp_path / "data", "build", path)
    assert said.status == 2
    assert "no OpenStreetMap extract" in said.err
    assert not (tmp_path / "data").exists()


@pytest.mark.usefixtures("road_engine")
def test_a_build_that_fails_says_so_and_the_list_knows(tmp_path: Path, run_roads: RunRoads) -> None:
    """The words of the engine are passed on, and the region is listed as not finished."""
    path = tmp_path / "spoilt.osm.pbf"
    path.write_bytes(blob("OSMHeader", header_data((-1, 1, 1, -1), None)) + blob("OSMData", b"\xff" * 99))
    said = run_roads(tmp_path / "data", "build", path)
    assert said.status == 2
    assert "the road engine stopped" in said.err
    assert "spoilt is not finished" in run_roads(tmp_path / "data", "list").out


def test_help_tells_where_to_get_a_map(tmp_path: Path, run_roads: RunRoads) -> None:
    """Found without the program fetching anything, on a narrow terminal too."""
    for words in (("--help",), ("build", "--help")):
        said = run_roads(tmp_path, *words, columns=40)
        assert said.status == 0
        assert 'search for "OpenStreetMap extract"' in " ".join(said.out.split())


@pytest.mark.usefixtures("road_engine")
def test_the_bar_fits_a_narrow_terminal(tmp_path: Path, invented_extract: Path, run_roads: RunRoads) -> None:
    """No line of it is longer than the terminal is wide."""
    for columns in (20, 44, 80):
        said = run_roads(tmp_path, "build", invented_extract, columns=columns)
        assert said.status == 0
        assert all(len(line) < columns for line in said.err.splitlines())
