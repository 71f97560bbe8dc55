"""Builds regions for the tests: an invented one, and a real small country where its map is at hand."""

import os
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

import pytest

from tripplan.roads.building import build_region
from tripplan.roads.engine import roads_missing
from tripplan.roads.extract import read_extract
from tripplan.roads.regions import Region, RegionFolder

NOW = datetime(2026, 11, 25, 12, tzinfo=UTC)
ROADS_REQUIRED = "TRIPPLAN_ROADS_TESTS"
"""Set where the road engine must be installed: there, its absence fails the tests instead of skipping."""


@dataclass(frozen=True)
class RegionBuilt:
    """A finished region, where it lies and what it was made from."""

    extract: Path
    folder: RegionFolder
    region: Region

    @property
    def data(self) -> Path:
        """The data folder that holds it."""
        return self.folder.path.parent


def build(extract: Path, data: Path, name: str) -> RegionBuilt:
    """Build a region without a word."""
    folder = RegionFolder(data)
    region = build_region(read_extract(extract), name, folder, NOW, lambda *_: None)
    return RegionBuilt(extract, folder, region)


def require_engine() -> None:
    """Skip the test, with the reason, where the road engine is not installed."""
    missing = roads_missing()
    if missing and os.environ.get(ROADS_REQUIRED):
        pytest.fail(missing)
    if missing:
        pytest.skip(missing)


def build_small_country(shared_data: Path, data: Path) -> RegionBuilt:
    """The roads of a whole small country, as OpenStreetMap had them in 2015; skips where there is no map."""
    require_engine()
    extract = shared_data / "liechtenstein.osm.pbf"
    if not extract.is_file():
        pytest.skip("the open map of a small country is not in the open data folder")
    return build(extract, data, "liechtenstein")
