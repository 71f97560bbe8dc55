"""What every test may use."""

import os
import sys
import tempfile
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from hypothesis import settings

from tests.calendar_server.radicale_server import Running, radicale
from tests.missing import ALL_REQUIRED
from tests.running_app import RunningApp, started_app
from tripplan.clock import TODAY_VARIABLE
from tripplan.records.location import FOLDER_VARIABLE
from tripplan.services import Services, open_services

ROOT = Path(__file__).resolve().parents[1]

# How long an example takes says more about what else the machine does than about the code. Where every test
# is required the same examples are drawn each time, so that a red run is the change's; by hand they vary.
settings.register_profile("ours", deadline=None, derandomize=ALL_REQUIRED in os.environ)
settings.load_profile("ours")


@pytest.fixture(scope="session")
def first_start(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A data folder as the first start leaves it: the demo filled in, the family's own records empty.

    It is for copying: reading the demo's files takes longer than most tests that look at the records. The
    invented family has no outings yet, so that tests plan their own.
    """
    folder = tmp_path_factory.mktemp("first_start")
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(Services, "plan_demo", lambda _: None)
        open_services({FOLDER_VARIABLE: str(folder), TODAY_VARIABLE: "2026-11-25"})
    return folder


@pytest.fixture
def tell(capsys: pytest.CaptureFixture[str]) -> Callable[[str], None]:
    """Prints a figure whether or not pytest shows what tests print."""

    def told(figures: str) -> None:
        with capsys.disabled():
            sys.stdout.write(f"\n{figures}\n")

    return told


@pytest.fixture(scope="session")
def shared_data() -> Path:
    """The folder of open data that lies beside the repository; the test skips where it is absent."""
    folder = Path(os.environ.get("TRIPPLAN_SHARED_DATA", ROOT.parent / "shared" / "data"))
    if not folder.is_dir():
        pytest.skip("the open data folder beside the repository is not here")
    return folder


@pytest.fixture(scope="session")
def calendar_server(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Running]:
    """A calendar server, Radicale, on loopback; one for all tests of a session."""
    with radicale(tmp_path_factory.mktemp("radicale")) as running:
        yield running


@pytest.fixture
def reachable_folder() -> Iterator[Path]:
    """A folder that everybody may go into, which pytest's own do not let."""
    with tempfile.TemporaryDirectory() as folder:
        Path(folder).chmod(0o755)
        yield Path(folder)


@pytest.fixture
def new_calendar(calendar_server: Running, tmp_path: Path) -> Callable[[], str]:
    """Makes a calendar that no other test uses; its address."""
    made: list[str] = []

    def make() -> str:
        made.append(calendar_server.make_calendar(f"{tmp_path.name.replace('_', '-')}-{len(made)}"))
        return made[-1]

    return make


@pytest.fixture(scope="session")
def running_app(tmp_path_factory: pytest.TempPathFactory) -> Iterator[RunningApp]:
    """The app with fresh records."""
    with started_app(tmp_path_factory.mktemp("app")) as app:
        yield app
