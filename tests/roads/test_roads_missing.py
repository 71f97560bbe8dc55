"""Without the road engine everything says in one sentence what is missing, and nothing breaks."""

import subprocess
import sys
from datetime import UTC, datetime
from pathlib import Path

import pytest

from tests.builders import make_household, make_place
from tests.commands.conftest import Said
from tests.roads.conftest import RunRoads
from tripplan.documents.where import Point
from tripplan.planning.family.family import Family
from tripplan.planning.outing.place_facts import place_facts
from tripplan.planning.travel.drive import KnownBy
from tripplan.roads.engine import roads_missing
from tripplan.roads.network import RoadNetwork
from tripplan.roads.regions import BoundingBox, Region, RegionFolder
from tripplan.services import with_roads


@pytest.fixture
def without_engine() -> str:
    """What is missing here; the test skips where nothing is."""
    missing = roads_missing()
    if missing is None:
        pytest.skip("the road engine is installed here, so nothing is missing")
    return missing


@pytest.fixture
def everywhere(tmp_path: Path) -> Path:
    """A data folder with a region that was built when the engine was still there."""
    folder = RegionFolder(tmp_path)
    folder.work("everywhere").mkdir(parents=True)
    box = BoundingBox(west=-179, south=-89, east=179, north=89)
    built_at = datetime(2026, 11, 1, tzinfo=UTC)
    folder.put_in_place(
        Region(name="everywhere", box=box, map_date=None, built_at=built_at, engine="3.9.1", size=1)
    )
    return tmp_path


def test_what_is_missing_is_one_sentence_that_names_it() -> None:
    """On an old Python the Python is named, else the package; asked where that cannot be loaded."""
    code = (
        "import sys; sys.modules['valhalla'] = None; "
        "from tripplan.roads.engine import roads_missing; print(roads_missing())"
    )
    result = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    named = "Python 3.12 or newer" if sys.version_info < (3, 12) else "tripplan/roads/requirements.txt"
    assert named in result.stdout
    assert result.stdout.strip().endswith("estimated instead.")
    assert result.stdout.count(". ") == 0


def test_a_family_plans_with_the_estimate(without_engine: str, everywhere: Path) -> None:
    """A region on the computer that cannot be asked changes nothing but a sentence."""
    network = RoadNetwork(everywhere)
    family = with_roads(Family(make_household(), (make_place(),)), network)
    assert family.road_drives == {}
    assert place_facts(family, make_place(), (2026,)).drive.known_by is KnownBy.ESTIMATE
    assert network.drives(Point(0, 0), [Point(1, 1)]) == (None,)
    assert network.unusable() == (without_engine,)


def test_the_command_line_says_it(without_engine: str, everywhere: Path, run_roads: RunRoads) -> None:
    """Listing and asking still work, building ends with status 1."""

    def told(said: Said) -> tuple[int, bool]:
        return said.status, without_engine in " ".join(f"{said.out} {said.err}".split())

    assert told(run_roads(everywhere, "list")) == (0, True)
    assert told(run_roads(everywhere, "ask", "40.7,-89.6", "40.5,-89.0")) == (0, True)
    assert told(run_roads(everywhere, "build", "region.osm.pbf")) == (1, True)
