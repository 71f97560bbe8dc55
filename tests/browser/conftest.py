"""A real browser to look at the app."""

import shutil
from collections.abc import Iterator
from dataclasses import dataclass, field
from urllib.parse import urlsplit

import pytest

from tests.missing import not_installed
from tests.running_app import ROOT, RunningApp

_FILES = (ROOT / "tripplan/screens/pages").glob("[a-z]*.py")
PAGES = tuple(sorted((*(path.stem for path in _FILES), "cupboard", "place")))
"""Every page by the name of its file, which is also its path but for these; two have no file."""
_PATHS = {
    "start": "",
    "on_the_day": "on_the_day?place=tern-landing&day=2026-12-03",
    "place": "places?place=ledgewing",
}
"""The page that opens without a path, and those that are told in their address what they are about."""
# As root there is no sandbox; the rest keeps the browser itself from calling home.
BROWSER_OPTIONS = ["--no-sandbox", "--disable-background-networking", "--disable-component-update"]
RESTS_MS = 500
"""Between two runs of the script the app seems to rest for a moment; when it has drawn a page it rests on."""
IS_AT_REST = f"""() => {{
    const state = document.querySelector('[data-testid=stApp]')?.dataset.testScriptState
    if (state !== 'notRunning') window.restsSince = undefined
    else window.restsSince ??= performance.now()
    return performance.now() - window.restsSince > {RESTS_MS}
}}"""
BROWSERS = ("chromium", "chromium-browser", "google-chrome")


def path_of(page: str) -> str:
    """Where a page lies below the app's address."""
    return _PATHS.get(page, page)


@dataclass
class Visit:
    """A browser window on the app.

    Attributes:
        page: the window.
        app: the app it looks at.
        asked_outside: hosts other than this computer that the page asked for anything.
        messages: how many the server has sent to the window.
    """

    page: "Page"
    app: RunningApp
    asked_outside: list[str] = field(default_factory=list)
    messages: int = 0

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
    page.evaluate("window.restsSince = undefined")
    page.wait_for_function(IS_AT_REST, polling=50)


def find_browser() -> str | None:
    """The Chromium of this computer, if there is one."""
    return next(filter(None, map(shutil.which, BROWSERS)), None)


try:
    from playwright.sync_api import Browser, BrowserContext, Page, sync_playwright
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


@pytest.fixture(scope="session")
def windows(browser: "Browser") -> Iterator["BrowserContext"]:
    """Where windows are opened; what the browser has loaded and compiled of the app serves all of them."""
    with browser.new_context() as context:
        yield context


@pytest.fixture
def visit(
    windows: "BrowserContext", running_app: RunningApp, request: pytest.FixtureRequest
) -> Iterator[Visit]:
    """A fresh window, 1280 px wide unless the test's parameter says otherwise.

    Afterwards neither the page nor the server may have asked any other computer for anything.
    """
    for left in (running_app.outside.parent / "data").glob("*-unsaved.sqlite3*"):
        left.unlink()  # of the test before
    page = windows.new_page()
    page.set_viewport_size({"width": getattr(request, "param", 1280), "height": 900})
    seen = Visit(page, running_app)

    def note(url: str) -> None:
        parts = urlsplit(url)
        if parts.scheme not in ("data", "blob") and parts.hostname != "127.0.0.1":
            seen.asked_outside.append(url)

    def count(_: object) -> None:
        seen.messages += 1

    page.on("request", lambda asked: note(asked.url))
    page.on("websocket", lambda socket: socket.on("framereceived", count))
    yield seen
    page.close()
    assert seen.asked_outside == []
    assert running_app.reached_outside() == []
