"""What a family or a place wrote stands in a card letter by letter, and every drawing is well formed."""

from xml.etree import ElementTree

from tripplan.screens.look import cards
from tripplan.screens.look.cards import Chip
from tripplan.screens.look.drawings import LINES, drawn, mark, masks


def test_what_somebody_wrote_is_no_markup() -> None:
    """Tags, quotes and ampersands of a name, a chip or a bar are escaped in each part of a card."""
    bad = '<b onclick="x()">A & B</b> <script>\''
    said = cards.face(
        cards.name(bad, bad),
        cards.small(bad, bad),
        cards.warning(bad),
        cards.chips([Chip("nap", bad)]),
        cards.facts([Chip("nap", bad)]),
        cards.bar([(bad, 1.0)], 2.0, bad),
    )
    assert "<b" not in said
    assert "<script" not in said
    assert said.count("&lt;script&gt;") == 9
    assert '"x()"' not in said


def test_a_bar_shares_its_scale() -> None:
    """A part of a quarter of the scale is a quarter as wide; a part of nothing is left out."""
    said = cards.bar([("entry", 25.0), ("nothing", 0.0), ("food", 50.0)], 100.0, "in words")
    assert said.count("<i ") == 2
    assert "width:25.0%" in said
    assert "width:50.0%" in said


def test_every_drawing_is_well_formed_and_has_its_class() -> None:
    """The mark is an SVG picture of its own; the others are masks of the style sheet."""
    assert ElementTree.fromstring(mark("#1f6f6b")).tag.endswith("svg")
    for name, lines in LINES.items():
        ElementTree.fromstring(f"<svg>{lines}</svg>")
        assert f".tp-i-{name} " in masks()
        assert f"tp-i-{name}" in drawn(name)
