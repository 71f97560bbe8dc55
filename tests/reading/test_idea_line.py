"""One line about somewhere to go: its name, and what a parent guesses."""

from decimal import Decimal

import pytest

from tripplan.reading.idea_line import IdeaLine, read_idea
from tripplan.reading.typed.durations import minutes_in


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("Herring Weir", IdeaLine("Herring Weir")),
        (
            "Herring Weir, about $40 for us, an hour away",
            IdeaLine("Herring Weir", Decimal(40), 60),
        ),
        ("Mill with 40 wheels", IdeaLine("Mill with 40 wheels")),
        ("Herring Weir about 20 dollars", IdeaLine("Herring Weir", Decimal(20))),
        ("Cave, 1 h 20 drive, near Galena, IL", IdeaLine("Cave", None, 80, "Galena, IL")),
        ("Cave, bring a lamp, half an hour away", IdeaLine("Cave", None, 30, "", "bring a lamp")),
        (
            "Museum of 1,000 clocks, ~$12.50",
            IdeaLine("Museum of 1,000 clocks", Decimal("12.50")),
        ),
    ],
)
def test_lines(text: str, expected: IdeaLine) -> None:
    """Figures are found wherever they stand; the rest is kept word for word."""
    assert read_idea(text) == expected


@pytest.mark.parametrize("text", ["", "   ", "two\nlines", "x" * 400, "\u200f\u200e", "y" * 79])
def test_no_ideas(text: str) -> None:
    """Nothing, several lines, a long text and what shows nothing are no idea."""
    assert read_idea(text) is None


@pytest.mark.parametrize(
    ("text", "minutes"),
    [
        ("80", 80), ("80 min", 80), ("1 h 20", 80), ("1h20", 80), ("1:20", 80), ("1 h", 60), ("1.5 hours", 90),
        ("1 1/2 h", 90), ("½ h", 30), ("an hour and a half", 90), ("half an hour", 30), ("2 hours 15 minutes", 135),
        ("1 hr 5 min", 65), ("1,5 Stunden", 90), ("eine halbe Stunde", 30), ("1:75", None), ("soon", None),
        ("", None), ("-5", None),
    ],
)  # fmt: skip
def test_durations(text: str, minutes: int | None) -> None:
    """Spans of time as people write them; a bare number is minutes."""
    assert minutes_in(text) == minutes
