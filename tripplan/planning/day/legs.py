"""What the search asks of a leg, for many starting minutes at once."""

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


@dataclass(frozen=True, eq=False)
class LegTimes:
    """One of the two drives of a day.

    Attributes:
        way: the drive; how long it takes may depend on when it begins.
    """

    way: Way

    def minutes(self, starts: Minutes) -> Minutes:
        """From load-up to being out of the car, for each start [min]."""
        return self._of_each(starts, self._minutes)

    def drive_minutes(self, starts: Minutes) -> Minutes:
        """Driving time for each start [min]."""
        return self._of_each(starts, self._drive_minutes)

    def stretches(self, starts: Minutes) -> list[tuple[Minutes, Minutes]]:
        """When the wheels turn without a halt, as often as for any start; some may be empty [min]."""
        return [
            (starts + self._of_each(starts, begins), starts + self._of_each(starts, ends))
            for begins, ends in self._stretches
        ]

    def last_stretch(self, starts: Minutes) -> tuple[Minutes, Minutes]:
        """The drive that ends on arriving, for each start; of no length after a halt on arriving [min]."""
        begins, ends = self._last_stretch
        return starts + self._of_each(starts, begins), starts + self._of_each(starts, ends)

    def which(self, starts: Minutes) -> Minutes:
        """Which of `drives` each start has."""
        return self._of_each(starts, np.arange(len(self._legs)))

    def impatient_minutes(self, starts: Minutes, patience: int) -> Minutes:
        """Driving at a stretch beyond some patience, all stretches together, for each start [min]."""
        return self._of_each(
            starts,
            np.array(
                [
                    sum(max(0, end - begin - patience) for begin, end in driving_stretches(leg))
                    for leg in self._legs
                ]
            ),
        )

    @cached_property
    def drives(self) -> tuple[Range, ...]:
        """How long the drives may take that the way can have [min]."""
        return tuple(leg.drive.minutes for leg in self._legs)

    @property
    def quickest(self) -> int:
        """The least that `minutes` can be [min]."""
        return int(self._minutes.min())

    @cached_property
    def _legs(self) -> tuple[Leg, ...]:
        return (self.way,) if isinstance(self.way, Leg) else self.way.legs

    @cached_property
    def _by_minute(self) -> Minutes:
        return np.array([0] if isinstance(self.way, Leg) else self.way.by_minute)

    @cached_property
    def _minutes(self) -> Minutes:
        return np.array([leg.minutes for leg in self._legs])

    @cached_property
    def _drive_minutes(self) -> Minutes:
        return np.array([leg.drive_minutes for leg in self._legs])

    @cached_property
    def _stretches(self) -> Minutes:
        """Begin and end of every leg's stretches; shape (stretches, 2, legs)."""
        each = [driving_stretches(leg) for leg in self._legs]
        most = max(map(len, each))
        padded = [(*stretches, *((0, 0),) * (most - len(stretches))) for stretches in each]
        return np.array(padded, dtype=np.int64).reshape(len(each), most, 2).transpose(1, 2, 0)

    @cached_property
    def _last_stretch(self) -> Minutes:
        """Begin and end of every leg's last stretch; shape (2, legs)."""
        arrives = [leg.minutes - leg.unload_minutes for leg in self._legs]
        begins = [
            next((begin for begin, end in driving_stretches(leg)[-1:] if end == parks), parks)
            for leg, parks in zip(self._legs, arrives, strict=True)
        ]
        return np.array([begins, arrives], dtype=np.int64)

    def _of_each(self, starts: Minutes, by_leg: Minutes) -> Minutes:
        """The figure of the leg that each start has; a single number where all have the same."""
        if len(by_leg) == 1:
            return by_leg[0]
        return by_leg[self._by_minute[np.minimum(starts, len(self._by_minute) - 1)]]
