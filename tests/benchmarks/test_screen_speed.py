"""Pages of the app in a browser against an empty page of Streamlit's, served the same way in the same run."""

import socket
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from statistics import median
from typing import TYPE_CHECKING

from tests.browser.conftest import settle
from tests.running_app import started_app, wait_until_healthy

if TYPE_CHECKING:  # the fixture skips where playwright is not installed
    from playwright.sync_api import Browser, Page

VISITS, PRESSES = 2, 5
EMPTY = """
import streamlit as st

st.title("Nothing")
if st.button("Press", key="press"):
    st.session_state["pressed"] = st.session_state.get("pressed", 0) + 1
st.write(f"pressed {st.session_state.get('pressed', 0)} times")
"""
PAGES = ("", "choose_day", "places", "study_units")
WATCH = """() => {
    window.changed = false
    new MutationObserver(() => { window.changed = true }).observe(
        document.querySelector('[data-testid=stMain]'), {subtree: true, childList: true, characterData: true})
}"""


@contextmanager
def empty_page(folder: Path) -> Iterator[str]:
    """The address of a page that says next to nothing."""
    script = folder / "empty.py"
    script.write_text(EMPTY, encoding="utf-8")
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        port = probe.getsockname()[1]
    options = [f"--server.port={port}", "--server.headless=true", "--server.address=127.0.0.1"]
    with (folder / "empty.log").open("wb") as log:
        command = [sys.executable, "-m", "streamlit", "run", str(script), *options]
        server = subprocess.Popen(command, cwd=folder, stdout=log, stderr=log)
    try:
        wait_until_healthy(f"http://127.0.0.1:{port}", server, folder / "empty.log")
        yield f"http://127.0.0.1:{port}"
    finally:
        server.terminate()
        server.wait(timeout=20)


def first_visit(browser: "Browser", address: str) -> float:
    """How long a browser that has never been there takes until the headline stands there [s]."""
    context = browser.new_context()
    page = context.new_page()
    began = time.perf_counter()
    page.goto(address)
    page.get_by_test_id("stMain").get_by_role("heading", level=1).wait_for()
    took = time.perf_counter() - began
    settle(page)
    context.close()
    return took


def until_changed(page: "Page", press: Callable[[], None]) -> float:
    """How long after a press the page first looks different [s]."""
    page.evaluate(WATCH)
    began = time.perf_counter()
    press()
    page.wait_for_function("window.changed", polling=5)
    return time.perf_counter() - began


def test_first_visits_and_presses(
    browser: "Browser",
    tmp_path: Path,
    tell: Callable[[str], None],
) -> None:
    """Wanted are 1.5 of a first visit, 2.2 of one from nothing, 2 of a press; the bounds leave room."""
    with started_app(tmp_path) as app, empty_page(tmp_path) as empty:
        nothing_cold, cold = first_visit(browser, empty), first_visit(browser, app.address)
        empty_visits: list[float] = []
        visits: dict[str, list[float]] = {page: [] for page in PAGES}
        for _ in range(VISITS):
            empty_visits.append(first_visit(browser, empty))
            for page in PAGES:
                visits[page].append(first_visit(browser, f"{app.address}/{page}"))
        nothing = median(empty_visits)
        warm = {page or "start": median(times) / nothing for page, times in visits.items()}
        window = browser.new_page()
        window.goto(empty)
        settle(window)
        pressed_empty = median(
            until_changed(window, window.get_by_role("button", name="Press").click) for _ in range(PRESSES)
        )
        window.goto(f"{app.address}/compare")
        settle(window)
        ask = window.locator("[class*=st-key-ask_why] button").first
        presses = []
        for _ in range(PRESSES):
            presses.append(until_changed(window, ask.click))
            settle(window)
        pressed = median(presses) / pressed_empty
        window.close()
    figures = ", ".join(f"{page} {ratio:.2f}" for page, ratio in warm.items())
    tell(
        f"first visit from nothing {cold / nothing_cold:.2f}; warm: {figures}; press on compare {pressed:.2f}"
    )
    assert warm["start"] <= 2.5
    assert cold / nothing_cold <= 6
    assert pressed <= 4
