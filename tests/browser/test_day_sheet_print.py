"""The day sheet in a real browser: one page on paper, readable on a telephone, nothing asked for."""

from datetime import date
from io import BytesIO
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from pypdf import PdfReader

from tests.day_sheets import demo_sheet
from tripplan.files.day_sheet.day_sheet_html import day_sheet_html

if TYPE_CHECKING:  # the fixture skips where playwright is not installed
    from playwright.sync_api import Browser, Page

DAY = date(2026, 12, 13)
PLACES = ("ledgewing", "candlewick-sink-cave", "tern-landing")


def opened(browser: "Browser", folder: Path, place: str, width: int = 1280) -> "tuple[Page, list[str]]":
    """A demo outing's sheet in a window, and the list of what it asks for beside itself."""
    file = folder / f"{place}.html"
    file.write_text(day_sheet_html(demo_sheet(place, DAY)), encoding="utf-8")
    page = browser.new_page(viewport={"width": width, "height": 844})
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.goto(file.as_uri())
    assert asked[:1] == [file.as_uri()]
    return page, asked[1:]


@pytest.mark.parametrize("paper", ["A4", "Letter"])
@pytest.mark.parametrize("place", PLACES)
def test_the_sheet_prints_on_one_page(browser: "Browser", tmp_path: Path, place: str, paper: str) -> None:
    """Seven people with everything ticked, on either paper, room for notes included."""
    page, _ = opened(browser, tmp_path, place)
    (printed,) = PdfReader(BytesIO(page.pdf(format=paper))).pages
    said = printed.extract_text()
    page.close()
    assert "Room for notes" in said
    assert "professionals" in said


def test_the_sheet_on_a_telephone_shows_the_times_first_and_big(browser: "Browser", tmp_path: Path) -> None:
    """At 390 px nothing is wider than the screen, the first time is in sight, in type of 24 px or more."""
    page, asked = opened(browser, tmp_path, PLACES[0], width=390)
    width = page.evaluate("document.documentElement.scrollWidth")
    first = page.locator("#times li").first
    size = first.evaluate("line => parseFloat(getComputedStyle(line).fontSize)")
    top = first.evaluate("line => line.getBoundingClientRect().top")
    page.close()
    assert width <= 390
    assert size >= 24
    assert top < 844
    assert asked == []
