"""What a parent does, done in a real browser; and what must not happen meanwhile."""

import re
from collections.abc import Callable
from functools import cache
from itertools import pairwise
from typing import TYPE_CHECKING

import pytest

from tests.browser.accessibility import focus_shows, open_all, violations
from tests.browser.conftest import PAGES, Visit, path_of
from tests.browser.text_in_view import TEXT_IN_VIEW
from tests.language.test_american_words import BANNED
from tests.pseudo import TAG
from tests.running_app import ROOT

if TYPE_CHECKING:  # the fixture skips where playwright is not installed
    from playwright.sync_api import Page

WIDTHS = (320, 640, 980, 1280)
"""A desk's window at four and two times the size, without the list of pages, and as it is [px]."""
MOST_MESSAGES = 120
"""What is closed is neither computed nor sent, so that a page comes in few messages."""
MOST_WORDS = 60
"""So many words a first screen has at most, what the family typed not among them [-]; our aim, no source."""
SPEAKS_PSEUDO = f"Object.defineProperty(navigator, 'language', {{get: () => '{TAG}'}})"
CUT = """main => [...main.querySelectorAll('*')].filter(one => {
    const style = getComputedStyle(one)
    return ['hidden', 'clip'].includes(style.overflowX) && one.clientWidth > 1 && one.innerText?.trim()
        && one.scrollWidth > one.clientWidth + 1 && one.checkVisibility({visibilityProperty: true})
}).map(one => one.innerText)"""
"""Texts that are wider than what shows of them."""
MOVED = ("cupboard", "start", "compare", "choose_day", "day_plan", "on_the_day")
"""Pages whose own words all go through the room of language."""
ENGLISH_LEFT = {"compare", "day_plan", "on_the_day", "start"}
"""Those of them on which calculators, sheets or Streamlit itself still tell something in English."""
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
    words = words_of_ours(" ".join(page.evaluate(TEXT_IN_VIEW)))
    tell(f"{name}: {visit.messages} messages, {len(words)} words of ours on the first screen")
    assert name not in MOVED or len(words) <= MOST_WORDS, words
    assert visit.messages <= MOST_MESSAGES
    assert page.locator("[data-testid=stException]").count() == 0
    if name not in WITHOUT_RECORDS:
        assert "invented" in page.locator("body").inner_text()
    main = page.locator("[data-testid=stMain]")
    for width in (None, *WIDTHS):
        if width is not None:
            page.set_viewport_size({"width": width, "height": 900})
            page.wait_for_timeout(200)  # nothing is asked of the app; charts are drawn anew
        assert main.evaluate("main => main.scrollWidth <= main.clientWidth"), width
        assert name not in MOVED or main.evaluate(CUT) == [], width
        if width in (None, *WIDTHS[-1:]):
            assert violations(page) == [], width
    headings = main.locator("h1, h2, h3, h4, h5, h6").evaluate_all("all => all.map(one => one.tagName)")
    levels = [int(name[1]) for name in headings]
    assert levels[0] == 1
    assert all(lower <= upper + 1 for upper, lower in pairwise(levels))
    open_all(page)
    visit.settle()
    assert BANNED.search(main.inner_text()) is None
    assert violations(page) == []
    page.set_viewport_size({"width": 390, "height": 900})
    assert violations(page) == []
    if name in MOVED:
        page.add_init_script(SPEAKS_PSEUDO)
        visit.open(path_of(name))
        assert main.evaluate("main => main.scrollWidth <= main.clientWidth")
        assert main.evaluate(CUT) == []
        left = sorted(set(words_of_ours(main.inner_text())))
        tell(f"{name}: left in English: {', '.join(left) or 'nothing'}")
        assert name in ENGLISH_LEFT or not left


WORD = re.compile(r"(?<!\w)[A-Za-z]{2,}(?!\w)")


def words_of_ours(told: str) -> list[str]:
    """The English words of a page that are neither the family's own nor figures."""
    known = names_of_the_demo() | FIGURES
    return [word for word in WORD.findall(told.replace(STREAMLITS_OWN, "")) if word not in known]


STREAMLITS_OWN = "Skip to main content"
FIGURES = frozenset(
    (
        *("AM", "PM", "min", "USD", "Nov", "Dec", "Jan", "November", "December", "January"),
        *("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun", "tripplan"),
    )
)
"""What CLDR writes in dates and clocks, units, and the program's name."""


@cache
def names_of_the_demo() -> set[str]:
    """The words in whatever has a name in the demo."""
    told = "".join(path.read_text(encoding="utf-8") for path in (ROOT / "demo_places").rglob("*.toml"))
    named = re.findall(r'^(?:name|town|address|subdivision|country) = "(.*)"', told, re.MULTILINE)
    return set(WORD.findall(" ".join(named)))


MOST_STOPS = 25
"""Presses of Tab from the outings compared to an entry for the calendar. Common practice, no source [-]."""
MOST_OF_A_RING = 1.8
"""Of the outline two pixels thick that WCAG 2.2, 2.4.13, asks for; round corners are shorter [-]."""
FOCUSED = "() => (document.activeElement.ariaLabel || document.activeElement.innerText || '').trim()"


def go_to(page: "Page", name: str) -> int:
    """Press Tab until what has the focus is called so; how often that was. At every stop the focus shows."""
    for stop in range(1, MOST_STOPS + 1):
        page.keyboard.press("Tab")
        assert focus_shows(page) >= MOST_OF_A_RING, page.evaluate(FOCUSED)
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
