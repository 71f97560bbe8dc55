"""A window is loaded anew, and the app is stopped and started again: what was chosen and typed is there."""

from pathlib import Path
from typing import TYPE_CHECKING

from tests.browser.conftest import settle
from tests.running_app import started_app

if TYPE_CHECKING:  # the fixture skips where playwright is not installed
    from playwright.sync_api import Browser, Page

OUTING = "day_plan?place=ledgewing&day=2026-12-12"


def left(page: "Page", address: str) -> tuple[str, list[str], str]:
    """The outing that is planned where no address names one, who goes, and the half-written name."""
    page.goto(f"{address}/day_plan")
    settle(page)
    page.get_by_role("button", name="Place, day, who goes").click()
    party = page.locator("[aria-label='Who goes?'] button[aria-pressed=true]").all_inner_texts()
    outing = page.url.partition("?")[2]
    page.goto(f"{address}/household")
    settle(page)
    return outing, party, page.locator(".st-key-new_member_name input").input_value()


def test_a_reload_and_a_restart_lose_nothing(browser: "Browser", tmp_path: Path) -> None:
    """The outing that an address opened, a party of fewer, a name that was typed and not saved."""
    page = browser.new_page(viewport={"width": 390, "height": 844})
    with started_app(tmp_path) as app:
        page.goto(f"{app.address}/{OUTING}")
        settle(page)
        page.get_by_role("button", name="Place, day, who goes").click()
        page.locator("[aria-label='Who goes?'] button", has_text="Bram").click()
        settle(page)
        page.goto(f"{app.address}/household")
        settle(page)
        page.get_by_role("button", name="Add a person").click()
        settle(page)
        page.locator(".st-key-new_member_name input").fill("Fern")
        page.keyboard.press("Tab")
        page.get_by_role("button", name="Start over").wait_for()  # the field is left, and the server knows it
        before = left(page, app.address)
    outing, party, name = before
    assert (outing, "Bram" in party, "Tamsin" in party, name) == (
        OUTING.partition("?")[2],
        False,
        True,
        "Fern",
    )
    with started_app(tmp_path) as again:
        assert left(page, again.address) == before
    page.close()
