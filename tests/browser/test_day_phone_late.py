"""The saved page for the phone in a real browser, when the family is late; times are counted by hand."""

from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING
from zoneinfo import ZoneInfo

import pytest

from tests.builders import make_place
from tests.day_sheets import DAY, FAMILY, SHOWING, planned, sheet
from tripplan.documents.outings.sheet_entries import SheetTicks
from tripplan.documents.places.place import Place
from tripplan.files.day_sheet.day_phone_html import day_phone_html

if TYPE_CHECKING:  # the fixture skips where playwright is not installed
    from playwright.sync_api import Browser, Page

HOME = ZoneInfo("America/Chicago")
_AFTER = ["12:00 PM", "12:35 PM", "1:30 PM", "2:10 PM", "2:35 PM", "2:45 PM", "3:39 PM", "3:45 PM"]
PLANNED = ["8:50 AM", "9:00 AM", "9:54 AM", "10:00 AM", "11:00 AM", "11:20 AM", *_AFTER]
LATE_15 = ["9:05 AM", "9:15 AM", "10:09 AM", "10:15 AM", "11:00 AM", "11:20 AM", *_AFTER]
"""The first visit gives way to the feeding at 11:00, so that all after it is as planned."""
LATE_90 = [
    *("10:20 AM", "10:30 AM", "11:24 AM", "11:30 AM", "11:30 AM", "11:30 AM", "12:10 PM", "12:45 PM"),
    *_AFTER[2:],
]
"""At 11:30 the feeding is over; a visit of 40 min and lunch of 35 min follow; the next visit gives way."""


def opened(browser: "Browser", folder: Path, place: Place, now: str, width: int = 390) -> "Page":
    """A place's page, on a phone whose clock stands at a time of the day."""
    file = folder / "phone.html"
    file.write_text(day_phone_html(planned(place=place), sheet(place=place)), encoding="utf-8")
    page = browser.new_page(viewport={"width": width, "height": 844}, timezone_id="Asia/Tokyo")
    set_clock(page, now)
    page.goto(file.as_uri())
    return page


def set_clock(page: "Page", now: str) -> None:
    """Let the phone's clock stand at a time at home."""
    page.clock.set_fixed_time(datetime.fromisoformat(f"{DAY}T{now}").replace(tzinfo=HOME))


def times(page: "Page") -> list[str]:
    """When each step begins, and when everybody is home."""
    return page.locator("li > b > time").all_inner_texts()[: len(planned(place=SHOWING).plan.steps) + 1]


def late(page: "Page", presses: int = 1) -> str:
    """Say that we are late; what the page tells."""
    for _ in range(presses):
        page.get_by_role("button", name="We are 15 minutes late").click()
    return page.get_by_role("status").inner_text()


def test_shows_do_not_wait_and_visits_give_way(browser: "Browser", tmp_path: Path) -> None:
    """Late before the day begins, shows keep their time and are told; pressed back, all is as planned."""
    page = opened(browser, tmp_path, SHOWING, "08:45")
    assert times(page) == PLANNED
    told = late(page)
    assert times(page) == LATE_15
    assert "Otter feeding stays at 11:00 AM." in told
    assert "Planet hour stays at 1:30 PM." in told
    assert "Home again at 3:45 PM." in told
    told = late(page, presses=5)
    assert times(page) == LATE_90
    assert "Otter feeding began at 11:00 AM: you come 30 min late." in told
    page.get_by_role("button", name="Back to the plan").click()
    assert times(page) == PLANNED
    assert page.get_by_role("status").inner_text() == ""
    page.close()


def test_what_is_over_stays_and_the_rest_moves(browser: "Browser", tmp_path: Path) -> None:
    """Late while loading up for home (2:35 to 2:45 PM), that takes longer, and what comes after moves."""
    page = opened(browser, tmp_path, SHOWING, "14:40")
    assert "Home again at 4:00 PM." in late(page)
    assert times(page) == [*PLANNED[:11], "3:00 PM", "3:54 PM", "4:00 PM"]
    page.reload()
    assert times(page)[-1] == "4:00 PM", "the delay outlives the page"
    set_clock(page, "14:55")
    page.reload()
    shown = page.locator("div.stretch:visible")
    assert "until 3:00 PM" in shown.inner_text()
    assert "still 5 min" in shown.inner_text()
    page.close()


def test_the_place_closes_all_the_same(browser: "Browser", tmp_path: Path) -> None:
    """A visit from 3:20 to 5:20 PM, 15 minutes late, ends at closing (5:30 PM): home is 10 minutes late."""
    page = opened(browser, tmp_path, make_place(opening={"hours": "Tu-Su 10:00-17:30"}), "13:30")
    told = late(page)
    assert "It closes at 5:30 PM." in told
    assert "Home again at 6:40 PM." in told
    page.close()


@pytest.mark.parametrize("width", [320, 390, 1280])
def test_the_buttons_are_as_large_as_a_thumb(browser: "Browser", tmp_path: Path, width: int) -> None:
    """Nothing scrolls sideways, and each button is at least 44 px high (WCAG 2.2, 2.5.5)."""
    page = opened(browser, tmp_path, SHOWING, "08:50", width)
    late(page)
    assert page.evaluate("document.documentElement.scrollWidth") <= width
    for button in page.get_by_role("button").all():
        box = button.bounding_box()
        assert box is not None
        assert box["height"] >= 44
    page.screenshot(path=tmp_path / f"late-{width}.png", full_page=True)
    page.close()


def test_the_page_holds_no_more_than_was_ticked() -> None:
    """With nothing ticked the file has no name, need, birth date or home address, with a tick just that."""
    bare = day_phone_html(planned(), sheet())
    private = (*(member.name for member in FAMILY.members[:2]), "12 Elm Street", "2019", "hazelnut")
    assert FAMILY.home.address in private
    assert [part in bare for part in private] == [False] * 5
    assert "with Ž., Ł., and " in bare
    with_needs = day_phone_html(planned(), sheet(ticked=SheetTicks(needs=True)))
    assert [part in with_needs for part in private] == [False, False, False, False, True]
    with_names = day_phone_html(planned(), sheet(), names=True)
    assert [part in with_names for part in private] == [True, True, False, False, False]
