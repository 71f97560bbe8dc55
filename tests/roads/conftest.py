"""What the tests of the roads share: an invented map, and regions built once for all of them."""

import io
from pathlib import Path
from typing import Protocol

import pytest

from tests.commands.conftest import Said
from tests.roads.invented_map import three_towns, write_map
from tests.roads.regions_built import RegionBuilt, build, build_small_country, require_engine
from tripplan.__main__ import main


@pytest.fixture(scope="session")
def road_engine() -> None:
    """The road engine is installed; the test skips where it is not."""
    require_engine()


@pytest.fixture
def invented_extract(tmp_path: Path) -> Path:
    """The map file of three invented towns."""
    return write_map(tmp_path / "three-towns.osm.pbf", three_towns())


@pytest.fixture(scope="session")
def towns(tmp_path_factory: pytest.TempPathFactory) -> RegionBuilt:
    """The roads of three invented towns."""
    require_engine()
    folder = tmp_path_factory.mktemp("roads")
    return build(write_map(folder / "three-towns.osm.pbf", three_towns()), folder / "data", "three-towns")


@pytest.fixture(scope="session")
def small_country(shared_data: Path, tmp_path_factory: pytest.TempPathFactory) -> RegionBuilt:
    """The roads of a whole small country."""
    return build_small_country(shared_data, tmp_path_factory.mktemp("small_country"))


class RunRoads(Protocol):
    """Carries out `tripplan roads` on a data folder."""

    def __call__(self, data: Path, *words: str | Path, columns: int = 200) -> Said: ...


@pytest.fixture
def run_roads() -> RunRoads:
    """The command line on November 25, 2026."""

    def carry_out(data: Path, *words: str | Path, columns: int = 200) -> Said:
        out, err = io.StringIO(), io.StringIO()
        settings = {
            "TRIPPLAN_DATA": str(data),
            "TRIPPLAN_TODAY": "2026-11-25",
            "COLUMNS": str(columns),
        }
        argv = ["roads", *map(str, words)]
        status = main(argv, environment=settings, stdout=out, stderr=err)
        return Said(status, out.getvalue(), err.getvalue())

    return carry_out
