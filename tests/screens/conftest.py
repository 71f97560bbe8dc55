"""The app, started for a test with records of its own and a fixed date."""

import re
import shutil
from collections.abc import Callable, Iterable, Iterator
from functools import cache
from html import unescape
from pathlib import Path

import pytest
from streamlit.components.v2 import manifest_scanner
from streamlit.runtime.scriptrunner.script_cache import ScriptCache
from streamlit.testing.v1 import AppTest, local_script_runner
from streamlit.testing.v1.local_script_runner import LocalScriptRunner

from tripplan.clock import TODAY_VARIABLE
from tripplan.records.location import FOLDER_VARIABLE
from tripplan.screens.look.folds import ALL_OPENED
from tripplan.services import Services, open_services

ROOT = Path(__file__).resolve().parents[2]
APP = ROOT / "tripplan/page_list.py"
TODAY = "2026-11-25"

Opened = Callable[..., AppTest]
"""Opens the app on a page."""


def said(elements: Iterable[object]) -> str:
    """Everything that some elements of a page say, as one text without marks."""
    return (
        "\n".join(str(getattr(element, "value", "")) for element in elements)
        .replace("\\", "")
        .replace("**", "")
    )


def drawn(app: AppTest) -> str:
    """What the cards of a page say, and all else that stands in HTML."""
    pieces = [str(element.proto.body) for element in app.get("html")]
    return unescape("\n".join(re.sub("<style.*?</style>|<[^>]+>", " ", piece) for piece in pieces))


def opened_part(app: AppTest, key: str) -> AppTest:
    """The page with one of its closed parts opened."""
    app.session_state[key] = True
    return app.run()


def place_page(open_app: Opened, place: str) -> AppTest:
    """The page of one place, by its address."""
    app = open_app("places")
    app.query_params["place"] = place
    app.run()
    assert not app.exception
    return app


def all_opened(script: Path) -> AppTest:
    """The app, or one of its pages alone, with every part of a page opened, as it is after its first run."""
    app = AppTest.from_file(str(script), default_timeout=30)
    app.session_state[ALL_OPENED] = True
    return app.run()


def services_in(folder: Path) -> Services:
    """The real parts, with the records of a folder, as on the tests' day."""
    return open_services({FOLDER_VARIABLE: str(folder), TODAY_VARIABLE: TODAY})


@pytest.fixture(scope="session", autouse=True)
def _test_sessions_cost_little() -> Iterator[None]:
    """What every run of an `AppTest` would do anew is done once, as in a running app.

    It reads what all installed packages say of themselves, compiles the pages, and looks a thousand times a
    second whether the page is drawn.
    """
    scan, look = manifest_scanner.scan_component_manifests, local_script_runner.require_widgets_deltas
    pages = ScriptCache()

    def wait(runner: LocalScriptRunner, timeout: float = 3) -> None:
        if runner._script_thread is not None:
            runner._script_thread.join(timeout)
        look(runner, timeout=1)

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(manifest_scanner, "scan_component_manifests", cache(scan))
        patch.setattr(local_script_runner, "ScriptCache", lambda: pages)
        patch.setattr(local_script_runner, "require_widgets_deltas", wait)
        yield


@pytest.fixture
def started_from(first_start: Path) -> Path:
    """The data folder that the tests of a file begin with a copy of."""
    return first_start


@pytest.fixture
def data(tmp_path: Path, started_from: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A data folder of the test's own, as after a first start; the app uses it, at a fixed date.

    The invented family plans nothing by itself, whatever day it is.
    Answers that the app has worked out stay cached from test to test, as they do from visitor to visitor:
    they are kept by the question, family and date included.
    """
    folder = shutil.copytree(started_from, tmp_path / "data")
    monkeypatch.setenv("TRIPPLAN_DATA", str(folder))
    monkeypatch.setenv("TRIPPLAN_TODAY", TODAY)
    monkeypatch.setattr(Services, "plan_demo", lambda _: None)
    monkeypatch.chdir(ROOT)
    return folder


@pytest.fixture
def open_app(data: Path) -> Opened:  # noqa: ARG001 - it is there for the app
    """Opens the app on a page, with fresh records in a folder of the test's own."""

    def opened(page: str = "start") -> AppTest:
        app = AppTest.from_file(str(APP), default_timeout=30)
        app.session_state[ALL_OPENED] = True
        if page != "start":
            app.switch_page(f"screens/pages/{page}.py")
        app.run()
        assert not app.exception, app.exception
        return app

    return opened
