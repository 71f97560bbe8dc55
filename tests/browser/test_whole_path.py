"""What a parent does, done in a real browser; and what must not happen meanwhile."""

import re
from collections.abc import Callable
from itertools import pairwise
from typing import TYPE_CHECKING

import pytest

from tests.browser.accessibility import open_all, violations
from tests.browser.conftest import PAGES, Visit, path_of

if TYPE_CHECKING:  # the fixture skips where playwright is not installed
    from playwright.sync_api import Page

WIDER = (980, 1280)
"""A desk's window less the list of pages beside the page, and the whole of it [px]."""
MOST_MESSAGES = 120
"""What is closed is neither computed nor sent, so that a page comes in few messages."""
FIRST_SCREEN_WORDS = """() => {
    const seen = [], walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT)
    while (walker.nextNode()) {
        const text = walker.currentNode, range = document.createRange()
        range.selectNode(text)
        const box = range.getBoundingClientRect()
        const shown = text.parentElement.checkVisibility({visibilityProperty: true, opacityProperty: true})
        if (shown && box.width > 1 && box.top < innerHeight && box.bottom > 0) seen.push(text.textContent)
    }
    return seen.join(' ').split(/\\s+/).filter(word => /[a-z]{2}/i.test(word)).length
}"""
"""How many words stand on the first screen, the family's own and those of the doors among them."""
WITHOUT_RECORDS = ("guide", "phones")
"""Pages that say the same whoever's records are in use."""


@pytest.mark.parametrize("visit", [390], indirect=True, ids=["390px"])
@pytest.mark.parametrize("name", PAGES)
def test_every_page_fits_its_window_and_shows_no_error(
    visit: Visit, name: str, tell: Callable[[str], None]
) -> None:
    """No page is wider than the window or shows a traceback; what shows the demo says that it is invented.

    It is opened as wide as a telephone and then drawn wider. How many messages it comes in is bounded, and
    printed with the words of its first screen. Whatever the width, also with all folds open, axe-core finds
    nothing that breaks the W3C's rules (WCAG 2.2, A and AA, as far as a program can tell).

    Headings go down by one level at a time, so that a screen reader's list of them reads like a table of
    contents.
    """
    visit.open(path_of(name))
    page = visit.page
    tell(f"{name}: {visit.messages} messages, {page.evaluate(FIRST_SCREEN_WORDS)} words on the first screen")
    assert visit.messages <= MOST_MESSAGES
    assert page.locator("[data-testid=stException]").count() == 0
    if name not in WITHOUT_RECORDS:
        assert "invented" in page.locator("body").inner_text()
    main = page.locator("[data-testid=stMain]")
    for width in (None, *WIDER):
        if width is not None:
            page.set_viewport_size({"width": width, "height": 900})
            page.wait_for_timeout(200)  # nothing is asked of the app; charts are drawn anew
        assert main.evaluate("main => main.scrollWidth <= main.clientWidth"), width
        if width != WIDER[0]:
            assert violations(page) == [], width
    headings = main.locator("h1, h2, h3, h4, h5, h6").evaluate_all("all => all.map(one => one.tagName)")
    levels = [int(name[1]) for name in headings]
    assert levels[0] == 1
    assert all(lower <= upper + 1 for upper, lower in pairwise(levels))
    open_all(page)
    visit.settle()
    assert violations(page) == []
    page.set_viewport_size({"width": 390, "height": 900})
    assert violations(page) == []


MOST_STOPS = 25
"""Presses of Tab from the outings compared to an entry for the calendar. Common practice, no source [-]."""
FOCUSED = "() => (document.activeElement.ariaLabel || document.activeElement.innerText || '').trim()"


def go_to(page: "Page", name: str) -> int:
    """Press Tab until what has the focus is called so; how often that was."""
    for stop in range(1, MOST_STOPS + 1):
        page.keyboard.press("Tab")
        if re.match(name, page.evaluate(FOCUSED)):
            return stop
    pytest.fail(f"{name} is not reached by Tab")


def test_from_three_outings_to_a_file_by_keyboard_alone(visit: Visit) -> None:
    """Plan one of the outings compared, put it on the calendar, and the downloaded file holds it."""
    visit.open("compare")
    page = visit.page
    plans = page.get_by_role("button", name=re.compile("^Plan "))
    plans.nth(2).wait_for()  # the cards are drawn one after the other
    assert plans.count() == 3
    stops = go_to(page, "Plan ")
    page.keyboard.press("Enter")
    page.get_by_role("button", name="Put it on the calendar").wait_for()
    visit.settle()
    stops += go_to(page, "Put it on the calendar")
    page.keyboard.press("Enter")
    page.get_by_role("button", name="Download").first.wait_for()
    visit.settle()
    stops += go_to(page, "Download")
    assert stops <= MOST_STOPS
    with page.expect_download() as download:
        page.keyboard.press("Enter")
    written = download.value.path().read_bytes()
    assert written.startswith(b"BEGIN:VCALENDAR\r\n")
    assert b"BEGIN:VEVENT" in written
    assert b"TZID=America/Chicago" in written
