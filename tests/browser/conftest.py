"""The app in a process of its own, and a real browser to look at it."""

import os
import shutil
import socket
import subprocess
import sys
import time
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from urllib.error import URLError
from urllib.parse import urlsplit

import pytest

from tests.missing import not_installed

ROOT = Path(__file__).resolve().parents[2]
PAGES = tuple(sorted(path.stem for path in (ROOT / "tripplan/screens/pages").glob("[a-z]*.py")))
"""Every page by the name of its file, which is also its path but for these:"""
_PATHS = {"compare": "", "on_the_day": "on_the_day?place=tern-landing&day=2026-12-03"}
"""The page that opens without a path, and one that shows nothing unless it is told of which outing."""
START_SECONDS = 60
# As root there is no sandbox; the rest keeps the browser itself from calling home.
BROWSER_OPTIONS = ["--no-sandbox", "--disable-background-networking", "--disable-component-update"]
IS_AT_REST = "document.querySelector('[data-testid=stApp]')?.dataset.testScriptState === 'notRunning'"
BROWSERS = ("chromium", "chromium-browser", "google-chrome")


def path_of(page: str) -> str:
    """Where a page lies below the app's address."""
    return _PATHS.get(page, page)


@dataclass
class RunningApp:
    """A running app.

    Attributes:
        address: where its pages are.
        outside: the file in which the server's guard notes addresses outside this computer.
        server: its process.
        log: the file with what the server says.
    """

    address: str
    outside: Path
    server: "subprocess.Popen[bytes]"
    log: Path

    def reached_outside(self) -> list[str]:
        """Every address outside this computer that the server tried to reach."""
        return self.outside.read_text(encoding="utf-8").split()


@pytest.fixture(scope="session")
def running_app(tmp_path_factory: pytest.TempPathFactory) -> Iterator[RunningApp]:
    """The app with fresh records."""
    with started_app(tmp_path_factory.mktemp("app")) as app:
        yield app


@contextmanager
def started_app(folder: Path) -> Iterator[RunningApp]:
    """The app, guarded, on a free port of this computer; its records lie in `data` within the folder."""
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        port = probe.getsockname()[1]
    outside = folder / "outside.log"
    environment = os.environ | {"TRIPPLAN_DATA": str(folder / "data"), "TRIPPLAN_TODAY": "2026-11-25"}
    command = [sys.executable, str(Path(__file__).with_name("guarded_app.py")), str(outside), str(port)]
    with (folder / "server.log").open("wb") as log:
        server = subprocess.Popen(command, cwd=ROOT, env=environment, stdout=log, stderr=log)
    try:
        address = f"http://127.0.0.1:{port}"
        _wait_until_healthy(address, server, folder / "server.log")
        yield RunningApp(address, outside, server, folder / "server.log")
    finally:
        server.terminate()
        server.wait(timeout=20)


def _wait_until_healthy(address: str, server: subprocess.Popen[bytes], log: Path) -> None:
    deadline = time.monotonic() + START_SECONDS
    while time.monotonic() < deadline:
        if server.poll() is not None:
            pytest.fail(f"the app did not start: {log.read_text(encoding='utf-8')}")
        try:
            with urllib.request.urlopen(f"{address}/_stcore/health", timeout=2) as answer:
                if answer.status == 200:
                    return
        except (URLError, OSError):
            time.sleep(0.2)
    pytest.fail(f"the app was not ready after {START_SECONDS} s: {log.read_text(encoding='utf-8')}")


@dataclass
class Visit:
    """A browser window on the app.

    Attributes:
        page: the window.
        app: the app it looks at.
        asked_outside: hosts other than this computer that the page asked for anything.
    """

    page: "Page"
    app: RunningApp
    asked_outside: list[str] = field(default_factory=list)

    def open(self, path: str = "") -> None:
        """Go to a page of the app and wait until it is drawn."""
        self.page.goto(f"{self.app.address}/{path}")
        self.settle()

    def settle(self) -> None:
        """Wait until the app has stopped working."""
        settle(self.page)


def settle(page: "Page") -> None:
    """Wait until a window of the app has drawn its page."""
    page.get_by_role("heading", level=1).first.wait_for()
    for _ in range(2):  # between two runs of the script the app seems to rest for a moment
        page.wait_for_timeout(400)
        page.wait_for_function(IS_AT_REST)


def find_browser() -> str | None:
    """The Chromium of this computer, if there is one."""
    return next(filter(None, map(shutil.which, BROWSERS)), None)


try:
    from playwright.sync_api import Browser, Page, sync_playwright
except ImportError:
    sync_playwright = None  # type: ignore[assignment]


@pytest.fixture(scope="session")
def browser() -> Iterator["Browser"]:
    """A real Chromium; the tests are skipped where there is none."""
    if sync_playwright is None:
        not_installed("playwright is not installed (tests/requirements.txt)")
    program = find_browser()
    if program is None:
        not_installed(f"none of {', '.join(BROWSERS)} is installed")
    with sync_playwright() as driver:
        chromium = driver.chromium.launch(
            executable_path=program,
            args=BROWSER_OPTIONS,
        )
        yield chromium
        chromium.close()


@pytest.fixture
def visit(browser: "Browser", running_app: RunningApp, request: pytest.FixtureRequest) -> Iterator[Visit]:
    """A fresh window, 1280 px wide unless the test's parameter says otherwise."""
    width = getattr(request, "param", 1280)
    page = browser.new_page(viewport={"width": width, "height": 900})
    seen = Visit(page, running_app)

    def note(url: str) -> None:
        parts = urlsplit(url)
        if parts.scheme not in ("data", "blob") and parts.hostname != "127.0.0.1":
            seen.asked_outside.append(url)

    page.on("request", lambda asked: note(asked.url))
    yield seen
    page.close()
