"""Where names stand beside their dots on a sketch, so that none covers another or seems to be of another."""

from collections.abc import Sequence
from dataclasses import dataclass

LINE = 12.0
"""Height of a name [pixels]."""
_LETTER = 5.8
"""Width of a letter, rather more than most take [pixels]."""
_NARROWEST, _WIDEST = 60.0, 100.0
"""Widths that a long name is cut off at: between these by the edge of the sketch [pixels]."""
_DOT, _GAP = 10.0, 8.0
"""Width and height of a dot, and from its middle to where its name begins [pixels]."""


@dataclass(frozen=True)
class LabelBox:
    """What is drawn over by a name, a dot or the words of a ring.

    Attributes:
        left, top: its upper left corner, from that of the sketch [pixels].
        width, height: how large it is [pixels].
    """

    left: float
    top: float
    width: float
    height: float = LINE

    def overlaps(self, other: "LabelBox") -> bool:
        """Whether one would be drawn over the other."""
        beside = self.left + self.width <= other.left or other.left + other.width <= self.left
        below = self.top + self.height <= other.top or other.top + other.height <= self.top
        return not beside and not below

    def inside(self, side: float) -> bool:
        """Whether all of it is on a sketch of that width and height [pixels]."""
        return 0 <= self.left <= side - self.width and 0 <= self.top <= side - self.height


@dataclass(frozen=True)
class Dot:
    """Something that is marked on the sketch.

    Attributes:
        x, y: its middle, from the sketch's upper left corner [pixels].
        name: what it is called.
    """

    x: float
    y: float
    name: str

    @property
    def room(self) -> LabelBox:
        """Where no other name may stand: what it covers, and on both sides as far as its own would begin."""
        return LabelBox(self.x - 2 * _GAP, self.y - _DOT / 2, 4 * _GAP, _DOT)

    def spots(self, side: float) -> "list[Spot]":
        """Where on the sketch its name may stand, close to it; the most readable first."""
        width = min(_WIDEST, _LETTER * (len(self.name) + 1))
        to_right, to_left = min(width, side - self.x - _GAP), min(width, self.x - _GAP)
        level, higher, lower = self.y - LINE / 2, self.y - LINE, self.y
        spots = [
            *(
                spot
                for top in (level, higher, lower)
                for spot in (
                    Spot(LabelBox(self.x + _GAP, top, to_right), "left"),
                    Spot(LabelBox(self.x - _GAP - to_left, top, to_left), "right"),
                )
            ),
            *(
                Spot(LabelBox(self.x - width / 2, top, width), "center")
                for top in (self.y + _GAP, self.y - _GAP - LINE)
            ),
        ]
        narrowest = min(_NARROWEST, width)
        return [spot for spot in spots if spot.box.width >= narrowest and spot.box.inside(side)]


@dataclass(frozen=True)
class Spot:
    """Where a name stands.

    Attributes:
        box: what it may cover.
        align: 'left', 'right' or 'center': where in the box it stands if it is shorter.
    """

    box: LabelBox
    align: str

    @property
    def x(self) -> float:
        """Of the point that the name is aligned to [pixels]."""
        share = {"left": 0.0, "center": 0.5, "right": 1.0}[self.align]
        return self.box.left + share * self.box.width

    @property
    def y(self) -> float:
        """Of the middle of the name [pixels]."""
        return self.box.top + self.box.height / 2


def name_spots(dots: Sequence[Dot], taken: Sequence[LabelBox], side: float) -> list[Spot | None]:
    """Where each name stands; it covers no dot and no other name, and stands beside no other dot.

    The first comes first, then always the one that has the least choice left.

    Args:
        dots: all that are marked, each with a name.
        taken: what else must not be covered.
        side: width and height of the sketch [pixels].

    Returns:
        One for each dot, in order; None where its name finds no room.
    """
    free = {
        nth: [
            spot
            for spot in dot.spots(side)
            if not any(spot.box.overlaps(box) for box in taken)
            and not any(spot.box.overlaps(other.room) for other in dots if other is not dot)
        ]
        for nth, dot in enumerate(dots)
    }
    found: list[Spot | None] = [None] * len(dots)
    while free:
        nth = min(free, key=lambda nth: (nth > 0, len(free[nth])))
        chosen = next(iter(free.pop(nth)), None)
        if chosen is not None:
            found[nth] = chosen
            free = {
                other: [spot for spot in spots if not spot.box.overlaps(chosen.box)]
                for other, spots in free.items()
            }
    return found
