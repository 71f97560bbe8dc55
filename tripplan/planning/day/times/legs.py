"""What the search asks of a leg, for many starting minutes at once."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from tripplan.planning.day.times.minutes import NARROW, Minutes, a_day
from tripplan.planning.travel.drive import Journey, Leg


def last_stretch(leg: Leg) -> tuple[int, int]:
    """Begin and end of the drive that ends on arriving; of no length after a halt on arriving [min]."""
    parks = leg.minutes - leg.unload_minutes
    return next(((begin, end) for begin, end in leg.stretches[-1:] if end == parks), (parks, parks))


@dataclass(frozen=True, eq=False)
class LegTimes:
    """One of the two drives of a day.

    Attributes:
        way: the drive; how long it takes may depend on when it begins.
    """

    way: Journey

    @property
    def same_all_day(self) -> bool:
        """Whether it does not matter when the drive begins."""
        return isinstance(self.way, Leg)

    @property
    def legs(self) -> tuple[Leg, ...]:
        """What the drive can be like."""
        return (self.way,) if isinstance(self.way, Leg) else self.way.legs

    def minutes(self, starts: Minutes) -> Minutes:
        """From load-up to being out of the car, for each start [min]; one entry for all if they are alike."""
        figures = np.array(self._minutes)
        return figures if self.same_all_day else figures[self.which(starts)]

    def which(self, starts: Minutes) -> Minutes:
        """Which of `legs` each start has."""
        return self.by_minute[np.minimum(starts, len(self.by_minute) - 1)]

    @property
    def quickest(self) -> int:
        """The least that `minutes` can be [min]."""
        return min(leg.minutes for leg in self.legs)

    @property
    def least_driving(self) -> int:
        """The least driving there can be [min]."""
        return min(leg.drive_minutes for leg in self.legs)

    @property
    def by_minute(self) -> Minutes:
        """For every minute since midnight at home the leg that begins then, as in `TimedLeg`."""
        return np.array([0]) if isinstance(self.way, Leg) else self.way.by_minute

    @cached_property
    def _minutes(self) -> list[int]:
        return [leg.minutes for leg in self.legs]


@dataclass(frozen=True, eq=False)
class LegsOfDays:
    """One of the two drives of several days.

    Attributes:
        ways: one a day; either all are the same all day or none is.
    """

    ways: tuple[LegTimes, ...]

    @cached_property
    def same_all_day(self) -> bool:
        """Whether it does not matter when the drives begin."""
        return all(way.same_all_day for way in self.ways)

    @cached_property
    def legs(self) -> tuple[Leg, ...]:
        """What the drives can be like, day by day."""
        return tuple(leg for way in self.ways for leg in way.legs)

    def minutes(self, starts: Minutes) -> Minutes:
        """From load-up to being out of the car, for each start [min]."""
        return self.of_each(starts, self._minutes)

    def drive_minutes(self, starts: Minutes) -> Minutes:
        """Driving time for each start [min]."""
        return self.of_each(starts, [leg.drive_minutes for leg in self.legs])

    def of_each(self, starts: Minutes, figures: Minutes | Sequence[int]) -> Minutes:
        """Figures of the leg that each start has.

        Args:
            starts: minutes since midnight at home, the days along the first axis.
            figures: one for each of `legs`.

        Returns:
            The figures, of a shape that fits the starts.
        """
        of_legs: Minutes = np.asarray(figures, dtype=NARROW)[self.which(starts)]
        return of_legs

    def which(self, starts: Minutes) -> Minutes:
        """Which of `legs` each start has, of a shape that fits the starts, which are as in `of_each`."""
        days = (len(self.ways), *(1,) * (starts.ndim - 1))
        if self.same_all_day:
            return self._first_legs.reshape(days)
        return self.which_of(np.arange(len(self.ways)).reshape(days), starts)

    def which_of(self, day: Minutes, starts: Minutes) -> Minutes:
        """As `which`, for starts of any days; their numbers come in a shape that fits the starts."""
        found: Minutes = self._by_minute[day, self._row(starts)]
        return found

    def minutes_of(self, day: Minutes, starts: Minutes) -> Minutes:
        """As `minutes`, for starts of any days as in `which_of`."""
        found: Minutes = self._minutes_by_minute[day, self._row(starts)]
        return found

    def _row(self, starts: Minutes) -> Minutes:
        """Where starts stand in the tables by minute; later than the last minute, that one goes on."""
        row: Minutes = np.minimum(starts, self._by_minute.shape[1] - 1)
        return row

    @property
    def slowest(self) -> Minutes:
        """The most that `minutes` can be, one entry a day [min]."""
        return a_day([max(leg.minutes for leg in way.legs) for way in self.ways])

    @cached_property
    def _first_legs(self) -> Minutes:
        return np.cumsum([0, *(len(way.legs) for way in self.ways[:-1])])

    @cached_property
    def _minutes(self) -> list[int]:
        return [leg.minutes for leg in self.legs]

    @cached_property
    def _by_minute(self) -> Minutes:
        longest = max(way.by_minute.size for way in self.ways)
        rows = [np.pad(way.by_minute, (0, longest - way.by_minute.size), "edge") for way in self.ways]
        return np.array(rows) + self._first_legs[:, None]

    @cached_property
    def _minutes_by_minute(self) -> Minutes:
        return np.array(self._minutes)[self._by_minute]
