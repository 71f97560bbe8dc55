"""Heights as people write them."""

from decimal import Decimal
from typing import Literal

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from tripplan.values.heights import Height, parse_height


@pytest.mark.parametrize(
    ("text", "told", "cm"),
    [
        ("46 in", "46 in", "116.84"),
        ('46"', "46 in", "116.84"),
        ("3 ft 10", "46 in", "116.84"),
        ("3 feet 10 inches", "46 in", "116.84"),
        ("4'2\"", "50 in", "127"),
        ("4 ft", "48 in", "121.92"),
        ("117 cm", "117 cm", "117"),
        ("117.5cm", "117.5 cm", "117.5"),
        ("1,17 m", "117 cm", "117"),
        ("30 cm", "30 cm", "30"),
        ("250 cm", "250 cm", "250"),
    ],
)
def test_a_height_stays_in_its_unit(text: str, told: str, cm: str) -> None:
    """An inch is 2.54 cm, twelve make a foot (NIST SP 811, 2008, appendix B.8)."""
    height = parse_height(text)
    assert (str(height), height.cm) == (told, Decimal(cm))


@pytest.mark.parametrize("text", ["", "46", "tall", "46 km", "4 ft 46 ft", "-46 in"])
def test_a_figure_without_a_unit_is_refused_in_words(text: str) -> None:
    """Nobody can know whether 46 are inches or centimeters."""
    with pytest.raises(ValueError, match="with its unit"):
        parse_height(text)


@pytest.mark.parametrize("text", ["29.9 cm", "250.5 cm", "11 in", "8 ft 3"])
def test_nobody_is_so_short_or_so_tall(text: str) -> None:
    """A slip of the pen is told, not taken."""
    with pytest.raises(ValueError, match="lies between"):
        parse_height(text)


@given(st.integers(1200, 9800), st.sampled_from(("in", "cm")))
def test_a_height_reads_back_what_it_writes(hundredths: int, unit: Literal["in", "cm"]) -> None:
    """Written as text and read again, every height is as tall and in the same unit."""
    height = Height(Decimal(hundredths) / 100 * (1 if unit == "in" else 2), unit)
    assume(30 <= height.cm <= 250)
    assert parse_height(str(height)) == height
