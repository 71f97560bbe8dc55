"""Takes the pictures that README.md shows, from the demo on a fixed date, with Chromium.

Usage: python -m tests.browser.take_screenshots ADDRESS FOLDER, with the app running at ADDRESS.
"""

import sys
from pathlib import Path

from playwright.sync_api import Page, sync_playwright

from tests.browser.conftest import BROWSER_OPTIONS, PAGES, find_browser, path_of, settle

FIRST_PRESS = {"passes": ("Add visits", "Add these visits"), "together": ("Add",)}
"""What is pressed before the picture is taken, so that an answer stands on it."""
ALL_DRAWN = "!document.querySelector('[data-testid=stSkeleton]')"
"""No part of the page is a gray block any longer, as charts and downloads are at first."""
PHONE = {"on_the_day"}
"""Pages that are made for the phone."""


def open_page(window: Page, address: str, page: str) -> None:
    """Open one page of the app; Calendar with an outing taken on Compare, others with their first entry."""
    window.goto(f"{address}/compare" if page == "calendar" else f"{address}/{path_of(page)}")
    settle(window)
    if page == "calendar":
        window.get_by_role("button", name="Plan ").first.click()
        settle(window)
        window.get_by_role("link", name="Calendar", exact=True).click()
        settle(window)
    for name in FIRST_PRESS.get(page, ()):
        pressed = window.get_by_text(name, exact=True)
        if pressed.is_visible():  # pressed already where the records are not fresh
            pressed.click()
            settle(window)


def main(address: str, folder: Path) -> None:
    """Write one picture a page."""
    with sync_playwright() as driver:
        browser = driver.chromium.launch(executable_path=find_browser(), args=BROWSER_OPTIONS)
        for page in PAGES:
            if page == "guide":  # it shows them
                continue
            width = 390 if page in PHONE else 1280
            window = browser.new_page(viewport={"width": width, "height": 1000})
            open_page(window, address, page)
            window.wait_for_function(ALL_DRAWN)
            window.screenshot(path=folder / f"{page}.png")
            window.close()
        browser.close()


if __name__ == "__main__":
    main(sys.argv[1], Path(sys.argv[2]))
