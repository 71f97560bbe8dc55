"""The day's two screens in a real browser: big type on the phone, and a slider that answers at once."""

import pytest

from tests.browser.conftest import Visit

SMALLEST_TARGET = 44
"""W3C, Web Content Accessibility Guidelines 2.2, 2.5.5 Target Size (Enhanced), from memory [CSS px]."""
LARGE_TYPE = 24
"""Ibid., definition of large scale text: 18 point [CSS px]."""


@pytest.mark.parametrize("visit", [390], indirect=True, ids=["390px"])
def test_the_phone_page_reads_at_arms_length(visit: Visit) -> None:
    """What to do now is black on white, in type twice as large as large type; what is pressed is broad."""
    visit.open("on_the_day?place=tern-landing&day=2026-12-03")
    words = visit.page.get_by_role("heading", level=1)
    size, ink, paper = words.evaluate(
        "it => { const s = getComputedStyle(it), page = it.closest('.st-key-on_the_day');"
        " return [parseFloat(s.fontSize), s.color, getComputedStyle(page).backgroundColor] }"
    )
    assert size >= 2 * LARGE_TYPE
    assert (ink, paper) == ("rgb(0, 0, 0)", "rgb(255, 255, 255)")
    pressed = visit.page.locator(".st-key-on_the_day :is(.stLinkButton a, .stButton button):visible")
    heights = pressed.evaluate_all("all => all.map(one => one.getBoundingClientRect().height)")
    assert len(heights) >= 4
    assert min(heights) >= SMALLEST_TARGET


def test_a_slider_moved_by_a_key_answers_in_its_part_of_the_page(visit: Visit) -> None:
    """One press later another time is told with what it weighs, and the plan above stays as it is."""
    visit.open("day_plan")
    headline = visit.page.get_by_role("heading", name="shoes on at").inner_text()
    visit.page.get_by_text("What if we left at another time?").click()
    part = visit.page.locator(".st-key-open_try_times")
    part.get_by_text("This is the best plan.").wait_for()
    part.get_by_role("slider").first.press("ArrowRight")
    part.get_by_text("This is the best plan.").wait_for(state="detached")
    assert "the best plan." in part.inner_text()
    assert visit.page.get_by_role("heading", name="shoes on at").inner_text() == headline
