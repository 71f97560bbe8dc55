"""A place in a minute on a telephone: presses and characters are counted, and nothing is refused on the way.

The limits are those the way in was built for; the figures seen are in tests/published/place_in_a_minute.md.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest

from tests.browser.conftest import Visit
from tests.nearby.map_writer import write_long_map

DOOR = "new_card_demo"
SHORT = f"short_{DOOR}"
NOTE_REFUSALS = """() => {
    window.refusals = []
    const note = () => document.querySelectorAll('[data-testid=stAlertContentError]').forEach(
        fault => refusals.push(fault.innerText))
    new MutationObserver(note).observe(document.body, {childList: true, characterData: true, subtree: true})
}"""
"""Every fault that is shown from now on, for however short a time."""
MUSEUM = (
    "Adults $14, seniors (65+) $12, children 3-12 $9, under 3 free, family of up to 6 $45, parking $6. "
    "Tue-Sat 10-5, Sun noon-5, closed Mondays, Thanksgiving and Dec 25; April to October only; "
    "last entry 4:15"
)


@dataclass
class Thumb:
    """One who presses and types, and is counted.

    Attributes:
        visit: the window.
        presses: taps on buttons, ticks and fields [-].
        characters: typed; what is pasted does not count [-].
    """

    visit: Visit
    presses: int = 0
    characters: int = 0

    def press(self, name: str) -> None:
        """Tap a button, a choice or a tick of this name."""
        page = self.visit.page
        button = page.get_by_role("button", name=name, exact=True)
        button.or_(page.get_by_text(name, exact=True)).filter(visible=True).first.click()
        self.presses += 1
        self.visit.settle()

    def type(self, key: str, text: str, *, pasted: bool = False) -> None:
        """Tap a field and type or paste into it; going on to the next one, at once, is its tap."""
        place = self.visit.page.locator(f".st-key-{key}").locator("input, textarea").first
        place.fill(text)
        place.blur()
        self.presses += 1
        self.characters += 0 if pasted else len(text)

    def check(self, what: str, *, presses: int, characters: int) -> None:
        """Tell what it took; it was no more than that, and nothing was refused."""
        print(f"{what}: {self.presses} presses, {self.characters} characters")  # noqa: T201 - to report
        assert self.presses <= presses
        assert self.characters <= characters
        assert self.visit.page.evaluate("refusals") == []


@pytest.fixture
def thumb(visit: Visit) -> Iterator[Thumb]:
    """On the Places page of the demo, 390 px wide; what was added is taken back at the end."""
    visit.page.set_viewport_size({"width": 390, "height": 844})
    visit.open("places")
    visit.page.evaluate(NOTE_REFUSALS)
    yield Thumb(visit)
    visit.page.get_by_role("button", name="Undo:").first.click()
    visit.settle()


def test_an_idea(thumb: Thumb, tmp_path: Path) -> None:
    """At most 4 presses and 30 characters; and the reading of a long map can be stopped."""
    thumb.type(f"{DOOR}_pasted", "Herring Weir, about $40")
    thumb.press("Add")
    thumb.visit.page.get_by_text("Herring Weir is on the wish list.").first.wait_for()
    thumb.check("idea", presses=4, characters=30)
    page = thumb.visit.page
    page.get_by_text("Find places on a map file").click()
    field = page.get_by_role("textbox", name="Where is the map on this computer?")
    field.fill(str(write_long_map(tmp_path / "state.osm.pbf", times=60)))
    page.get_by_role("button", name="List its places").click()
    page.get_by_text("Step 1 of 3: looking for places").wait_for()
    page.get_by_role("button", name="Stop", exact=True).click()
    thumb.visit.settle()
    assert page.get_by_role("button", name="Stop", exact=True).count() == 0
    assert page.get_by_text("on the map. Map data").count() == 0
    assert field.input_value().endswith("state.osm.pbf")


def test_a_museum_typed(thumb: Thumb) -> None:
    """At most 20 presses and 130 characters; the form is at most two screens tall, and says the sum."""
    thumb.press("Type it in")
    thumb.type(f"{SHORT}_name", "Hollis River Museum")
    thumb.type(f"{SHORT}_where", "Galena, IL")
    thumb.type(f"{SHORT}_Tu", "10-5")
    thumb.type(f"{SHORT}_Su", "noon-5")
    thumb.press("Same on empty days")
    thumb.press("Thanksgiving")
    thumb.press("Christmas")
    thumb.type(f"{SHORT}_season", "April to October")
    for name, text in (
        ("adult_price", "14"),
        ("child_price", "$9"),
        ("senior_price", "12"),
        ("family_count", "6"),
        ("family_price", "45"),
        ("parking", "6"),
    ):
        thumb.type(f"{SHORT}_{name}", text)
    thumb.visit.settle()
    page = thumb.visit.page
    box = page.locator(".st-key-short_card_demo").bounding_box()
    total = page.locator(".st-key-short_total").bounding_box()
    assert box is not None
    assert total is not None
    assert box["height"] + total["height"] <= 2 * 844
    assert "For us: $" in page.locator(".st-key-short_total").inner_text()
    thumb.press("Add this place")
    page.get_by_text("Hollis River Museum is added.").first.wait_for()
    thumb.check(f"museum, typed, {box['height'] + total['height']:.0f} px tall", presses=20, characters=130)


def test_the_sum_stays_in_sight(thumb: Thumb) -> None:
    """While the form's first field is at the upper edge, what it comes to stands at the lower one."""
    thumb.press("Type it in")
    thumb.type(f"{SHORT}_name", "Otter Fen Reserve")
    thumb.visit.settle()
    page = thumb.visit.page
    page.locator(f".st-key-{SHORT}_name").evaluate("field => field.scrollIntoView()")
    total = page.locator(".st-key-short_total").bounding_box()
    assert total is not None
    assert 0 <= total["y"] <= 844 - total["height"] + 1
    thumb.press("Add this place")  # kept as an idea, and taken back with the others
