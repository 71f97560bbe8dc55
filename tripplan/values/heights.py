"""How tall somebody is, or must be: in inches or centimeters, as it was written."""

import re
from dataclasses import dataclass
from decimal import Decimal
from typing import Annotated, Literal

from pydantic import BeforeValidator, PlainSerializer, WithJsonSchema

CM_PER_INCH = Decimal("2.54")
"""Source: NIST SP 811, 2008, appendix B.8; exact."""
INCHES_PER_FOOT = 12
SHORTEST_CM, TALLEST_CM = 30, 250
"""No person and no limit is below or above these [cm]."""


@dataclass(frozen=True)
class Height:
    """A height such as ``46 in`` or ``117 cm``; it stays in the unit in which it was told.

    Attributes:
        figure: how much [of the unit].
        unit: 'in' or 'cm'.
    """

    figure: Decimal
    unit: Literal["in", "cm"]

    @property
    def cm(self) -> Decimal:
        """The height [cm]; exact."""
        return self.figure * CM_PER_INCH if self.unit == "in" else self.figure

    def __str__(self) -> str:
        return f"{self.figure.normalize():f} {self.unit}"


_FIGURE = r"(\d{1,3}(?:[.,]\d{1,2})?)"
_INCHES = r"(?:in|inch|inches|\"|\u2033|\u201d|'')\.?"
_FEET = r"(?:ft|foot|feet|'|\u2032|\u2019)\.?"
_FORMS: tuple[tuple[re.Pattern[str], Literal["in", "cm"], int], ...] = (
    (re.compile(rf"{_FIGURE} ?{_INCHES}"), "in", 1),
    (re.compile(rf"{_FIGURE} ?(?:cm|centimet(?:er|re)s?)"), "cm", 1),
    (re.compile(rf"{_FIGURE} ?m(?:et(?:er|re)s?)?"), "cm", 100),
)
_FEET_AND_INCHES = re.compile(rf"(\d) ?{_FEET}(?: ?{_FIGURE} ?(?:{_INCHES})?)?")


def parse_height(text: str) -> Height:
    """Read a height.

    Args:
        text: ``46 in``, ``3 ft 10``, ``4'2"``, ``117 cm`` or ``1.17 m``; a comma will do for the point.

    Raises:
        ValueError: the text has another form, such as a figure without a unit, or nobody is so tall.
    """
    told = " ".join(text.lower().split())
    height = None
    if feet := _FEET_AND_INCHES.fullmatch(told):
        height = Height(int(feet[1]) * INCHES_PER_FOOT + _figure(feet[2] or "0"), "in")
    for form, unit, times in _FORMS:
        if match := form.fullmatch(told):
            height = Height(_figure(match[1]) * times, unit)
    if height is None:
        raise ValueError("a height reads like 46 in, 3 ft 10 or 117 cm, with its unit")
    if not SHORTEST_CM <= height.cm <= TALLEST_CM:
        raise ValueError(f"a height lies between {SHORTEST_CM} and {TALLEST_CM} cm (12 in and 98 in)")
    return height


def _figure(text: str) -> Decimal:
    return Decimal(text.replace(",", "."))


def _read_height(value: object) -> Height:
    if isinstance(value, Height):
        return value
    return parse_height(value if isinstance(value, str) else "")


TallAs = Annotated[
    Height,
    BeforeValidator(_read_height),
    PlainSerializer(str, return_type=str),
    WithJsonSchema({"type": "string", "examples": ["46 in", "3 ft 10", "117 cm"]}),
]
"""A height as a field of a written form."""
