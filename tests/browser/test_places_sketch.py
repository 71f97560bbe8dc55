"""The sketch of where the places lie, in a real browser: its names can be read on phone and desk."""

import re
from itertools import combinations, product

import pytest

from tests.browser.conftest import Visit
from tripplan.screens.places.name_spots import LabelBox

BOXES = """all => all.map(one => {
    const {left, top, width, height} = one.getBoundingClientRect()
    return [one.textContent, left, top, width, height]
})"""
LETTERS = 11
"""Height of the names' type; the boxes of a browser add the room between lines [CSS px]."""


@pytest.mark.parametrize("visit", [390, 1280], indirect=True, ids=["390px", "1280px"])
def test_every_demo_place_has_a_name_that_covers_nothing(visit: Visit) -> None:
    """As many names as dots, as drawn: none on another, on a dot or on the words of a ring."""
    visit.open("places")
    sketch = visit.page.locator("svg.marks")
    sketch.get_by_text("home", exact=True).wait_for()
    texts = [
        (words, LabelBox(left, top + (height - LETTERS) / 2, width, LETTERS))
        for words, left, top, width, height in sketch.locator(".mark-text text").evaluate_all(BOXES)
    ]
    dots = [LabelBox(*box) for _, *box in sketch.locator(".mark-symbol path").evaluate_all(BOXES)]
    names = [words for words, _ in texts if not re.fullmatch(r"\d+ mi", words)]
    assert len(names) == len(set(names)) == len(dots) > 10
    assert not [(one, other) for (one, a), (other, b) in combinations(texts, 2) if a.overlaps(b)]
    assert not [words for (words, box), dot in product(texts, dots) if box.overlaps(dot)]
