"""A parent's twelve jobs on a telephone, one after the other: presses, fields, characters and words counted.

The farm and the file for the calendar are counted by themselves, so that fourteen lines are printed. The car
and the nap stay as they are taken to be at first.
"""

import re
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING

from tests.browser.conftest import Visit
from tests.browser.test_own_family import FAMILY, PEOPLE
from tests.browser.test_place_in_a_minute import MUSEUM, Thumb
from tests.browser.text_in_view import TEXT_IN_VIEW
from tests.running_app import ROOT, started_app

if TYPE_CHECKING:  # the fixture skips where playwright is not installed
    from playwright.sync_api import Browser, Locator

MOST_PRESSES, MOST_WORDS = 100, 2000
"""For all jobs [-]."""
MOST_OF_A_PLACE = {"museum": (8, 30), "reserve": (8, 60)}
"""Presses and characters that a new place may take [-]."""
FARM = "Adults $11, children 2-12 $9, under 2 free. Sat-Sun 10-4. Closed December 26."
DOORS = {"tripplan", "Ideas", "Choose", "Plan", "Today", "Afterwards", "Cupboard", "Skip to main content"}
CALENDARS = ROOT / "demo_places/calendars"


@dataclass
class Driver(Thumb):
    """One who presses, types and reads what comes into view.

    Attributes:
        fields: typed or pasted into [-].
        words: read; what stands on the screen when a job begins, or stood there before within it, is not read
            again, nor are the doors and drawings [-].
        figures: what each job took.
    """

    fields: int = 0
    words: int = 0
    figures: list[tuple[str, int, int, int, int]] = field(default_factory=list)
    _read: set[str] = field(default_factory=set)

    @contextmanager
    def job(self, name: str) -> Iterator[None]:
        """Count a job by itself."""
        before = (self.presses, self.fields, self.characters, self.words)
        self._read = self._in_view() if self.figures else set()
        self.look()
        yield
        now = (self.presses, self.fields, self.characters, self.words)
        presses, fields, characters, words = (after - was for after, was in zip(now, before, strict=True))
        self.figures.append((name, presses, fields, characters, words))

    def look(self) -> None:
        """Read what stands on the screen and was not there before."""
        new = self._in_view() - self._read
        self._read |= new
        self.words += sum(bool(re.search("[a-z]{2}", word, re.I)) for text in new for word in text.split())

    def _in_view(self) -> set[str]:
        return {text.strip() for text in self.visit.page.evaluate(TEXT_IN_VIEW)} - DOORS

    def tap(self, what: "Locator") -> None:
        """Press something."""
        what.click()
        self.presses += 1
        self.visit.settle()
        self.look()

    def press(self, name: str) -> None:
        """Tap a button, a choice or a tick of this name."""
        super().press(name)
        self.look()

    def go(self, *names: str) -> None:
        """Go through a door, and on to a page behind it."""
        for name in names:
            self.tap(self.visit.page.get_by_role("link", name=name, exact=True))

    def type(self, key: str, text: str, *, pasted: bool = False) -> None:
        """Tap a field and type or paste into it."""
        super().type(key, text, pasted=pasted)
        self.fields += 1
        self.look()

    def bring(self, file: Path) -> None:
        """Pick a file."""
        self.visit.page.locator("input[type=file]:not([disabled])").first.set_input_files(file)
        self.presses += 1
        self.visit.settle()
        self.look()


def test_the_twelve_jobs(browser: "Browser", tmp_path: Path, tell: Callable[[str], None]) -> None:
    """From the demo to a family's own outing on its calendar, and the day itself; the sums are bounded."""
    with started_app(tmp_path, TRIPPLAN_TODAY="2026-11-30T12:00-06:00") as app:
        page = browser.new_page(viewport={"width": 390, "height": 844})
        driver = Driver(Visit(page, app))
        driver.visit.open()
        _drive(driver)
        page.close()
    sums = [sum(figures) for figures in zip(*(one[1:] for one in driver.figures), strict=True)]
    rows = [*driver.figures, ("all", *sums)]
    tell("\n".join("{:10} {:3} presses {:3} fields {:4} characters {:5} words".format(*row) for row in rows))
    assert len(driver.figures) == 14
    for name, presses, _, characters, _ in driver.figures:
        if name in MOST_OF_A_PLACE:
            assert presses <= MOST_OF_A_PLACE[name][0], name
            assert characters <= MOST_OF_A_PLACE[name][1], name
    assert sums[0] <= MOST_PRESSES
    assert sums[3] <= MOST_WORDS


def _drive(driver: Driver) -> None:
    page = driver.visit.page

    def seen(said: str) -> None:
        page.get_by_text(said).first.wait_for()

    with driver.job("demo"):
        assert page.get_by_text(re.compile(r"about \$\d")).first.is_visible()
    with driver.job("late"):
        driver.go("Today")
        driver.press("15 min late")
        driver.tap(page.get_by_role("button", name="Use this").first)
        seen("The plan is now")
    with driver.job("log"):
        driver.go("Afterwards")
        driver.tap(page.locator("[class*=st-key-write_] button").first)
        driver.type("entry_demo_receipts_total", "98.50")
        driver.type("entry_demo_home_again", "4:10 pm")
        driver.press("Save")
        seen("is in the logbook")
    with driver.job("family"):
        driver.press("Use my own family")
        driver.go("tripplan")
        for name, text in {**FAMILY, **PEOPLE}.items():
            driver.type(f"first_{name}", text)
        driver.press("Save and begin")
        assert page.locator("textarea[aria-label='Where would you like to go?']").is_visible()
    with driver.job("museum"):
        driver.go("Ideas")
        _paste(driver, MUSEUM, "Hollis River Museum")
    with driver.job("reserve"):
        driver.press("Type it in")
        for name, text in (("name", "Otter Fen Reserve"), ("where", "Galena, IL"), ("Mo", "dawn-dusk")):
            driver.type(f"short_new_card_family_{name}", text)
        driver.press("Same on empty days")
        driver.press("Free for everyone")
        driver.press("Add this place")
        seen("Otter Fen Reserve is added.")
    with driver.job("farm"):
        _paste(driver, FARM, "Harrow Lane Farm")
    with driver.job("idea"):
        driver.type("new_card_family_pasted", "Herring Weir, about $40")
        driver.press("Add")
        seen("Herring Weir")
    with driver.job("compare"):
        driver.go("Choose")
        assert page.locator("[class*=st-key-card_] .tp-total").count() == 3
    with driver.job("calendars"):
        driver.go("Plan", "Calendar")
        driver.press("School")
        driver.press("Add a school calendar")
        driver.bring(CALENDARS / "limekiln-bluffs-district-ia.ics")
        driver.type("school_file_where", "Dubuque, IA")
        driver.press("Save this school calendar")
        seen("Limekiln Bluffs Community District 2026-27 is added.")
        driver.press("Family")
        driver.press("Add when you are busy")
        driver.bring(CALENDARS / "quillmarsh-family.ics")
        driver.press("Save this calendar")
        seen("Quillmarsh family is added.")
    with driver.job("day"):
        driver.go("Choose", "Choose a day")
        driver.tap(page.get_by_role("button", name=re.compile("^Plan ")).first)
        assert ": load up at " in page.get_by_role("heading", level=1).inner_text()
    with driver.job(".ics"):
        driver.press("Put it on the calendar")
        with page.expect_download() as download:
            driver.tap(page.locator(".st-key-download_entry button").last)
        assert b"BEGIN:VEVENT" in download.value.path().read_bytes()
    with driver.job("sheet"):
        driver.go("Plan")
        with page.expect_download() as download:
            driver.tap(page.locator(".st-key-print_sheet button").last)
        assert download.value.path().read_bytes().startswith(b"%PDF")
    with driver.job("today"):
        driver.go("tripplan")
        driver.press("What could we still do today?")
        page.locator(".st-key-free_today_part").get_by_text("Home again by").first.wait_for()


def _paste(driver: Driver, text: str, name: str) -> None:
    """Paste what a place's page says, and name the place."""
    driver.type("new_card_family_pasted", text, pasted=True)
    driver.press("Add")
    driver.type("new_card_family_name", name)
    driver.type("new_card_family_where", "Galena, IL")
    driver.press("Add this place")
    driver.visit.page.get_by_text(f"{name} is added.").first.wait_for()
