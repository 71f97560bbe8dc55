"""Pages seen in the dark, and in the few colors that a reader has set for everything."""

from typing import TYPE_CHECKING

import pytest

from tests.browser.accessibility import focus_shows, open_all, violations
from tests.browser.conftest import Visit, path_of

if TYPE_CHECKING:  # the fixture skips where playwright is not installed
    from playwright.sync_api import Page

PAGES_OF_EACH_SORT = ("compare", "choose_day", "day_plan", "household")
"""Cards and charts, a grid, a line of the day, forms."""
WITHOUT_EDGE = """() => {
    const buttons = ':is(button[kind=primary], button[kind=secondary])'
    const pressed = `:is(${buttons}, [class*=st-key-card_], details, .tp-chip)`
    const bordered = one => parseFloat(getComputedStyle(one).borderTopWidth) > 0
        && getComputedStyle(one).borderTopStyle !== 'none'
    const shown = one => one.checkVisibility({visibilityProperty: true}) && one.offsetWidth > 1
    return [...document.querySelectorAll('[data-testid=stMain] ' + pressed)].filter(shown)
        .filter(one => ![one, ...one.querySelectorAll(':scope > *'), one.parentElement].some(bordered))
        .map(one => one.outerHTML.slice(0, 200))
}"""
"""Buttons, cards, folds and chips without a border: forced colors take away what a ground alone shows."""


def in_dark(page: "Page") -> bool:
    """Whether the page's ground is dark."""
    ground = page.evaluate("getComputedStyle(document.querySelector('[data-testid=stApp]')).backgroundColor")
    return sum(int(part) for part in ground.strip("rgba()").split(",")[:3]) < 3 * 128


@pytest.mark.parametrize("name", PAGES_OF_EACH_SORT)
def test_a_page_can_be_read_in_the_dark_and_in_forced_colors(visit: Visit, name: str) -> None:
    """In the dark axe-core finds nothing, folds open; in forced colors whatever can be pressed has an edge.

    Charts count with the rest: axe-core tells text from its ground in them too.
    """
    page = visit.page
    page.emulate_media(color_scheme="dark")
    visit.open(path_of(name))
    assert in_dark(page)
    open_all(page)
    visit.settle()
    assert violations(page) == []
    page.emulate_media(color_scheme="light", forced_colors="active")
    visit.open(path_of(name))
    assert page.evaluate(WITHOUT_EDGE) == []
    page.locator("[data-testid=stMain] button").first.focus()
    page.keyboard.press("Tab")
    assert focus_shows(page) >= 1
