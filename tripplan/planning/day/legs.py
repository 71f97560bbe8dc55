"""What the search asks of a leg, for many starting minutes at once."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from tripplan.planning.day.minutes import Minutes
from tripplan.planning.ranges import Range
from tripplan.planning.travel.drive import Leg, Way


def driving_stretches(leg: Leg) -> tuple[tuple[int, int], ...]:
    """When the wheels turn without a halt, as (start, end) since the leg's load-up began [min]."""
    stretches: list[tuple[int, int]] = []
    start, driven = leg.load_up_minutes, 0
    for halt in leg.halts:
        end = start + halt.after_minutes - driven
        stretches.append((start, end))
        start, driven = end + halt.minutes, halt.after_minutes
    stretches.append((start, start + leg.drive_minutes - driven))
    return tuple((start, end) for start, end in stretches if start < end)


def last_stretch(leg: Leg) -> tuple[int, int]:
    """Begin and end of the drive that ends on arriving; of no length after a halt on arriving [min]."""
    parks = leg.minutes - leg.unload_minutes
    return next(((begin, end) for begin, end in driving_stretches(leg)[-1:] if end == parks), (parks, parks))


@dataclass(frozen=True, eq=False)
class LegTimes:
    """One of the two drives of a day.

    Attributes:
        way: the drive; how long it takes may depend on when it begins.
    """

    way: Way

    @property
    def legs(self) -> tuple[Leg, ...]:
        """What the drive can be like."""
        return (self.way,) if isinstance(self.way, Leg) else self.way.legs

    def minutes(self, starts: Minutes) -> Minutes:
        """From load-up to being out of the car, for each start [min]."""
        return self.of_each(starts, self._minutes)

    def drive_minutes(self, starts: Minutes) -> Minutes:
        """Driving time for each start [min]."""
        return self.of_each(starts, [leg.drive_minutes for leg in self.legs])

    def which(self, starts: Minutes) -> Minutes:
        """Which of `legs` each start has."""
        if isinstance(self.way, Leg):
            return np.zeros(starts.shape, dtype=np.int64)
        return self._by_minute[np.minimum(starts, len(self._by_minute) - 1)]

    def impatient_minutes(self, starts: Minutes, patience: int) -> Minutes:
        """Driving at a stretch beyond some patience, all stretches together, for each start [min]."""

        def of_leg(leg: Leg) -> int:
            return sum(max(0, end - begin - patience) for begin, end in driving_stretches(leg))

        return self.of_each(starts, [of_leg(leg) for leg in self.legs])

    def of_each(self, starts: Minutes, of_legs: Minutes | Sequence[int]) -> Minutes:
        """Figures of the leg that each start has.

        Args:
            starts: minutes since midnight at home, in any shape.
            of_legs: the figures of `legs`.

        Returns:
            The figures, of the shape of `starts`; one entry where all starts have the same leg.
        """
        figures = np.asarray(of_legs)
        return figures if isinstance(self.way, Leg) else figures[self.which(starts)]

    @cached_property
    def drives(self) -> tuple[Range, ...]:
        """How long the drives may take that the way can have [min]."""
        return tuple(leg.drive.minutes for leg in self.legs)

    @property
    def quickest(self) -> int:
        """The least that `minutes` can be [min]."""
        return min(self._minutes)

    @cached_property
    def _minutes(self) -> list[int]:
        return [leg.minutes for leg in self.legs]

    @cached_property
    def _by_minute(self) -> Minutes:
        return np.array([0] if isinstance(self.way, Leg) else self.way.by_minute)
