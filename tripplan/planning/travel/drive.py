"""One drive as it is with children: load-up, driving, rests and stops."""

import math
from dataclasses import dataclass
from enum import StrEnum
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from tripplan.language.sentences import Fact, fact
from tripplan.values.ranges import Range, Source


class KnownBy(StrEnum):
    """How a distance and time are known; an earlier one wins over a later one."""

    TYPED = "typed in"
    ROADS = "road network"
    ESTIMATE = "estimate"
    GUESS = "only a guess"


_KNOWN = {
    KnownBy.TYPED: "answers-known-typed",
    KnownBy.ROADS: "answers-known-roads",
    KnownBy.ESTIMATE: "answers-known-estimate",
    KnownBy.GUESS: "answers-known-guess",
}


@dataclass(frozen=True)
class Drive:
    """One way between two points, wheels turning all the time.

    Attributes:
        km: distance on the road [km].
        minutes: driving time without rests [min].
        known_by: typed in, from a road network, estimated, or a guess.
        source: where the figures come from, in words.
        notes: what could make them wrong, such as water on the way.
    """

    km: Range
    minutes: Range
    known_by: KnownBy
    source: Source
    notes: tuple[str, ...] = ()

    @property
    def whole_minutes(self) -> int:
        """The likely driving time, rounded up [min]."""
        # Six decimals first, so that 60.00000000001 from a division stays an hour.
        return math.ceil(round(self.minutes.likely, 6))

    @property
    def known(self) -> Fact:
        """How the figures are known."""
        return fact(_KNOWN[self.known_by])

    @property
    def known_in_words(self) -> str:
        """How the figures are known, in a word or two."""
        return self.known.text


@dataclass(frozen=True)
class Rest:
    """A break for the people in the car.

    Attributes:
        after_minutes: driving time since the start when it begins [min].
        minutes: how long it lasts [min].
    """

    after_minutes: int
    minutes: int


@dataclass(frozen=True)
class Stop:
    """A halt on the way for something else than a rest: fuel, somebody to pick up.

    Attributes:
        after_minutes: driving time since the start when it begins [min].
        minutes: how long it lasts [min].
        what: what it is for.
    """

    after_minutes: int
    minutes: int
    what: Fact


@dataclass(frozen=True)
class Leg:
    """One drive between two points, with its rests and stops, on whole minutes.

    Attributes:
        drive: the way.
        load_up_minutes: from 'shoes on' to the wheels turning [min].
        drive_minutes: the likely driving time, rounded up [min].
        rests: in order of time.
        unload_minutes: from parking to walking [min].
        stops: in order of time.
    """

    drive: Drive
    load_up_minutes: int
    drive_minutes: int
    rests: tuple[Rest, ...]
    unload_minutes: int
    stops: tuple[Stop, ...] = ()

    @cached_property
    def halts(self) -> tuple[Rest | Stop, ...]:
        """Rests and stops in order of time; at the same point the stop comes first."""
        return tuple(sorted((*self.stops, *self.rests), key=lambda halt: halt.after_minutes))

    @cached_property
    def minutes(self) -> int:
        """From 'shoes on' to walking [min]."""
        halting = sum(halt.minutes for halt in self.halts)
        return self.load_up_minutes + self.drive_minutes + halting + self.unload_minutes

    @cached_property
    def stretches(self) -> tuple[tuple[int, int], ...]:
        """When the wheels turn without a halt, as (start, end) since load-up began [min]."""
        found: list[tuple[int, int]] = []
        start, driven = self.load_up_minutes, 0
        for halt in self.halts:
            end = start + halt.after_minutes - driven
            found.append((start, end))
            start, driven = end + halt.minutes, halt.after_minutes
        found.append((start, start + self.drive_minutes - driven))
        return tuple((start, end) for start, end in found if start < end)

    @cached_property
    def halting(self) -> tuple[tuple[int, int], ...]:
        """When the wheels stand for a rest or stop, as (start, end) since load-up began [min]."""
        found: list[tuple[int, int]] = []
        halted = self.load_up_minutes
        for halt in self.halts:
            start = halted + halt.after_minutes
            found.append((start, start + halt.minutes))
            halted += halt.minutes
        return tuple(found)

    def at(self, _minute: int) -> "Leg":
        """The leg itself, whenever it begins."""
        return self


@dataclass(frozen=True, eq=False)
class TimedLeg:
    """One drive whose length depends on when it begins.

    Attributes:
        legs: what the drive can be like; at least one.
        by_minute: for every minute since midnight at home at which load-up may begin, the index in `legs`;
            later than the last of them, that one goes on.
    """

    legs: tuple[Leg, ...]
    by_minute: NDArray[np.int16]

    def at(self, minute: int) -> Leg:
        """The leg whose load-up begins at a minute since midnight at home."""
        number: int = self.by_minute[min(minute, self.by_minute.size - 1)]
        return self.legs[number]


Journey = Leg | TimedLeg
"""A drive that may or may not depend on when it begins."""
