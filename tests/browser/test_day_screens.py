"""The day's screens in a real browser: big type on the phone, its page as a file, a slider that answers."""

import re
from dataclasses import replace
from datetime import datetime, time, timedelta
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from tests.browser.conftest import Visit
from tests.day_sheets import planned, sheet
from tripplan.files.day_sheet.day_phone_html import day_phone_html
from tripplan.planning.day import StepKind
from tripplan.planning.outing.outing import Outing

if TYPE_CHECKING:  # the fixture skips where playwright is not installed
    from playwright.sync_api import Browser

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


@pytest.mark.parametrize("visit", [390], indirect=True, ids=["390px"])
def test_what_is_asked_when_it_goes_wrong_is_as_large_as_the_rest(visit: Visit) -> None:
    """Fields that are typed in or picked from are as high as what is pressed, their words as large."""
    visit.open("on_the_day?place=tern-landing&day=2026-12-03")
    visit.page.get_by_role("button", name="Running late, or something went wrong?").click()
    visit.settle()
    part = visit.page.locator(".st-key-running_late_part")
    words = part.locator("label p").first.evaluate("it => parseFloat(getComputedStyle(it).fontSize)")
    for name in ("Or in minutes", "Who has just fallen asleep?", "Who is ill?"):
        field = part.get_by_label(name).and_(part.locator("input"))
        size, height = field.evaluate(
            "it => [parseFloat(getComputedStyle(it).fontSize), it.parentElement.clientHeight]"
        )
        assert size == words
        assert height >= SMALLEST_TARGET
    for step in part.get_by_role("button", name=re.compile("crement")).all():
        box = step.bounding_box()
        assert box is not None
        assert min(box["width"], box["height"]) >= SMALLEST_TARGET


NAMELESS = re.compile(
    r"^ *- '?(?:button|link|textbox|spinbutton|radio|switch|slider|combobox|checkbox)\b(?! \")", re.M
)


@pytest.mark.parametrize("path", ["day_plan", "on_the_day?place=tern-landing&day=2026-12-03"])
def test_whatever_can_be_used_has_a_name_and_every_picture_says_what_it_shows(
    visit: Visit, path: str
) -> None:
    """As a screen reader hears it, with every part of the page opened; tables and lists have the figures."""
    visit.open(path)
    visit.page.get_by_role("button", name="Running late, or something went wrong?").click()
    visit.settle()
    closed = visit.page.locator("details:not([open]) > summary:visible")
    while closed.count():
        closed.first.click()
        visit.settle()
    heard = visit.page.locator("[data-testid=stMain]").aria_snapshot()
    assert not NAMELESS.findall(heard)
    assert heard.count("heading") > 3
    pictures = visit.page.locator("[role=graphics-document]")
    names = [picture.get_attribute("aria-label") or "" for picture in pictures.all()]
    assert all("the list below says the same" in name or "see the table" in name for name in names)
    if path == "day_plan":
        assert visit.page.get_by_role("list").filter(has_text="Load up").count()  # the day, step by step
        said = visit.page.get_by_role("slider", name="We load up at").first.get_attribute("aria-valuetext")
        assert re.fullmatch(r"\d+:\d\d [AP]M", said or "")


def test_a_slider_moved_by_a_key_answers_in_its_part_of_the_page(visit: Visit) -> None:
    """One press later another time is told with what it weighs, and the plan above stays as it is."""
    visit.open("day_plan")
    headline = visit.page.get_by_role("heading", name="load up at").inner_text()
    visit.page.get_by_text("Leave at another time").click()
    part = visit.page.locator(".st-key-open_try_times")
    part.get_by_text("This is the best plan.").wait_for()
    visit.settle()
    part.get_by_role("slider").first.press("ArrowRight")
    part.get_by_text("This is the best plan.").wait_for(state="detached")
    assert "than the best plan" in part.inner_text()
    assert visit.page.get_by_role("heading", name="load up at").inner_text() == headline


@pytest.mark.parametrize("visit", [390], indirect=True, ids=["390px"])
def test_when_to_leave_is_the_first_thing_read_on_a_phone(visit: Visit) -> None:
    """It stands in the first screenful, above every field and in the largest type of the page."""
    visit.open("day_plan")
    words = visit.page.get_by_role("heading", name="load up at")
    box = words.bounding_box()
    screenful = visit.page.viewport_size
    assert box is not None
    assert screenful is not None
    assert box["y"] + box["height"] <= screenful["height"] / 1.5
    field = visit.page.get_by_role("button", name="Place, day, who goes").bounding_box()
    assert field is not None
    assert box["y"] < field["y"]
    sizes = visit.page.locator("[data-testid=stMain] :is(h1, h2, h3, p, li, label)").evaluate_all(
        "all => all.map(one => parseFloat(getComputedStyle(one).fontSize))"
    )
    assert words.evaluate("it => parseFloat(getComputedStyle(it).fontSize)") == max(sizes) >= LARGE_TYPE


@pytest.mark.parametrize(
    ("ahead", "said"),
    [
        (timedelta(days=8, hours=3), "in 8 days"),
        (timedelta(days=1, hours=3), "tomorrow"),
        (timedelta(hours=3), "in 3 h"),
    ],
)
def test_the_saved_page_counts_days_by_the_calendar(
    browser: "Browser", tmp_path: Path, ahead: timedelta, said: str
) -> None:
    """Early in the morning too, when more hours are left than so many whole days have."""
    outing = planned()
    file = tmp_path / "day.html"
    file.write_text(day_phone_html(outing, sheet()), encoding="utf-8")
    page = browser.new_page(timezone_id=str(outing.question.home_zone))
    page.clock.set_fixed_time(outing.plan.leave_home - ahead)
    page.goto(file.as_uri())
    assert page.locator("[data-left]").first.inner_text() == said
    page.close()


def moved_to_the_night(outing: Outing) -> Outing:
    """The same outing with its last step ending half an hour past midnight."""
    plan = outing.plan
    home = datetime.combine(outing.day, time(0, 30), plan.home.tzinfo) + timedelta(days=1)
    later = home - plan.home
    steps = tuple(replace(step, start=step.start + later, end=step.end + later) for step in plan.steps)
    night = replace(plan, leave_home=plan.leave_home + later, home=home, steps=steps, naps=())
    return replace(outing, plan=night)


def test_the_saved_page_goes_on_past_midnight(browser: "Browser", tmp_path: Path) -> None:
    """Before midnight the drive home still takes so many minutes, not till 'tomorrow'."""
    outing = moved_to_the_night(planned())
    drive = [step for step in outing.plan.steps if step.kind is StepKind.DRIVE][-1]
    file = tmp_path / "day.html"
    file.write_text(day_phone_html(outing, sheet()), encoding="utf-8")
    page = browser.new_page(timezone_id=str(outing.question.home_zone))

    def said_at(moment: datetime) -> str:
        page.clock.set_fixed_time(moment)
        page.goto(file.as_uri())
        return page.locator("main").inner_text()

    assert drive.start.day < drive.end.day
    said = said_at(drive.end - timedelta(minutes=37))
    assert said.startswith("Drive home")
    assert "still 37 min" in said
    assert "still 8 min" in said_at(drive.end - timedelta(minutes=8))
    assert said_at(outing.plan.home).startswith("Home again")
    page.close()


def test_the_saved_page_follows_the_phones_own_clock(browser: "Browser", tmp_path: Path) -> None:
    """Opened as a file: before, on the way and after, what is on and for how long; nothing is asked."""
    outing = planned()
    drive = next(step for step in outing.plan.steps if step.kind is StepKind.DRIVE)
    file = tmp_path / "day.html"
    file.write_text(day_phone_html(outing, sheet()), encoding="utf-8")
    page = browser.new_page(viewport={"width": 390, "height": 844})
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))

    def at(moment: datetime) -> str:
        page.clock.set_fixed_time(moment)
        page.goto(file.as_uri())
        assert page.get_by_role("heading", level=1).count() == 1
        return page.locator("main").inner_text()

    assert at(outing.plan.leave_home - timedelta(minutes=25)).startswith("Load up at ")
    assert "in 25 min" in page.locator("main").inner_text()
    driving = at(drive.end - timedelta(minutes=7))
    assert driving.startswith("Drive there")
    assert "still 7 min" in driving
    assert "The way there: " in driving
    assert page.locator("li.on").inner_text().endswith("Drive there")
    assert "The way there: " not in at(outing.plan.enter)
    assert at(outing.plan.home).startswith("Home again")
    assert page.evaluate("document.documentElement.scrollWidth") <= 390
    assert set(asked) == {file.as_uri()}
    page.close()
