"""Real roads on the screen: set up with progress, listed, removed."""

import time
from pathlib import Path

import pytest
import streamlit as st
from streamlit.testing.v1 import AppTest

from tests.roads.invented_map import blob, header_data
from tests.roads.regions_built import build
from tripplan.roads.engine import roads_missing
from tripplan.roads.regions import RegionFolder

ROOT = Path(__file__).resolve().parents[2]
LONGEST_SECONDS = 60


def page() -> None:
    """A page with nothing else on it."""
    from tripplan.screens.places.roads import render_roads
    from tripplan.screens.widgets.frame import open_page

    render_roads(open_page())


@pytest.fixture
def data(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The data folder of the app."""
    monkeypatch.setenv("TRIPPLAN_DATA", str(tmp_path / "data"))
    monkeypatch.setenv("TRIPPLAN_TODAY", "2026-11-25")
    monkeypatch.chdir(ROOT)
    st.cache_resource.clear()
    return tmp_path / "data"


def opened() -> AppTest:
    """The page in a new browser window."""
    app = AppTest.from_function(page, default_timeout=30).run()
    assert not app.exception, app.exception
    return app


def words(app: AppTest) -> str:
    """Everything the page says."""
    shown = (*app.markdown, *app.caption, *app.success, *app.error, *app.warning)
    return "\n".join(element.value.replace("\\", "") for element in shown)


@pytest.mark.usefixtures("data")
def test_without_the_engine_one_sentence_says_what_is_missing() -> None:
    """And nothing is offered that could not be done."""
    missing = roads_missing()
    if missing is None:
        pytest.skip("the road engine is installed here, so nothing is missing")
    app = opened()
    assert missing in words(app)
    assert not [box for box in app.text_input if box.key == "roads_path"]


@pytest.mark.usefixtures("road_engine")
def test_a_region_is_set_up_and_removed_on_the_page(data: Path, invented_extract: Path) -> None:
    """The room is said before anything is begun; the build goes on by itself; the region is then listed."""
    app = opened()
    app.text_input(key="roads_path").set_value(f'"{invented_extract}"')
    app.button(key="check_roads").click().run()
    assert "are free" in words(app)
    assert RegionFolder(data).unfinished() == ()
    app.button(key="build_roads").click().run()
    assert "are being built" in words(app)
    deadline = time.monotonic() + LONGEST_SECONDS
    while not RegionFolder(data).regions() and time.monotonic() < deadline:
        time.sleep(0.1)
    while RegionFolder(data).being_built("three-towns") and time.monotonic() < deadline:
        time.sleep(0.1)
    time.sleep(0.5)  # the process puts its things away
    app = opened()
    assert "three-towns: map of Mon, Sep 21, 2026" in words(app)
    assert "OpenStreetMap contributors" in words(app)
    app.button(key="remove_roads_three-towns").click().run()
    assert "removed" in words(app)
    assert RegionFolder(data).regions() == ()


@pytest.mark.parametrize("typed", ["/no/such/map.osm.pbf", "letter.txt"])
@pytest.mark.usefixtures("road_engine", "data")
def test_a_path_that_is_no_map_is_told_beside_the_field(typed: str) -> None:
    """And no build is offered."""
    app = opened()
    app.text_input(key="roads_path").set_value(typed)
    app.button(key="check_roads").click().run()
    assert "cannot be read" in words(app)
    assert not [button for button in app.button if button.key == "build_roads"]


@pytest.mark.usefixtures("road_engine")
def test_a_build_that_failed_can_be_begun_again_or_removed(data: Path, tmp_path: Path) -> None:
    """The page says why it ended."""
    path = tmp_path / "spoilt.osm.pbf"
    path.write_bytes(blob("OSMHeader", header_data((-1, 1, 1, -1), None)) + blob("OSMData", b"\xff" * 99))
    with pytest.raises(RuntimeError):
        build(path, data, "spoilt")
    app = opened()
    assert "spoilt is not finished: the road engine stopped" in words(app)
    assert app.button(key="again_roads_spoilt")
    app.button(key="remove_roads_spoilt").click().run()
    assert RegionFolder(data).unfinished() == ()
