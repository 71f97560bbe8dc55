"""Figures that know how sure they are, and where they came from."""

from collections.abc import Callable
from dataclasses import dataclass
from enum import StrEnum
from typing import Self


class Origin(StrEnum):
    """Where a figure came from."""

    PLACE_CARD = "place card"
    PARENT = "parent"
    PUBLISHED = "published table"
    ROADS = "road network"
    ESTIMATE = "estimate"


@dataclass(frozen=True)
class Source:
    """Where a figure came from, in words a parent can follow up.

    Attributes:
        origin: the kind of source.
        text: which card, which table and year, or how it was estimated.
        credit: what the license of the data asks to be said wherever a figure is shown; empty for nothing.
    """

    origin: Origin
    text: str
    credit: str = ""


@dataclass(frozen=True)
class Range:
    """What a number may turn out to be: low and high bound the middle 90 %, likely is the best guess.

    Raises:
        ValueError: the three are out of order.
    """

    low: float
    likely: float
    high: float

    def __post_init__(self) -> None:
        if not self.low <= self.likely <= self.high:
            raise ValueError(f"a range runs low, likely, high: {self.low}, {self.likely}, {self.high}")

    @classmethod
    def exactly(cls, value: float) -> Self:
        """A number that is known."""
        return cls(value, value, value)

    @property
    def is_exact(self) -> bool:
        """Whether there is no doubt about the number."""
        return self.low == self.high

    def map(self, change: Callable[[float], float]) -> "Range":
        """The range after a rising function, such as a change of unit, was applied to all three."""
        return Range(change(self.low), change(self.likely), change(self.high))
