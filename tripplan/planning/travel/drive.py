"""One drive as it is with children: load-up, driving, rests."""

from dataclasses import dataclass
from enum import StrEnum

from tripplan.planning.ranges import Range, Source


class KnownBy(StrEnum):
    """How a distance and time are known; an earlier one wins over a later one."""

    TYPED = "typed in"
    ROADS = "road network"
    ESTIMATE = "estimate"


@dataclass(frozen=True)
class Drive:
    """One way between two points, wheels turning all the time.

    Attributes:
        km: distance on the road [km].
        minutes: driving time without rests [min].
        known_by: typed in, from a road network, or estimated.
        source: where the figures come from, in words.
        notes: what could make them wrong, such as water on the way.
    """

    km: Range
    minutes: Range
    known_by: KnownBy
    source: Source
    notes: tuple[str, ...] = ()


@dataclass(frozen=True)
class Rest:
    """A stop on the way.

    Attributes:
        after_minutes: driving time since the start when it begins [min].
        minutes: how long it lasts [min].
    """

    after_minutes: int
    minutes: int


@dataclass(frozen=True)
class Leg:
    """One drive between two points, with its rests, on whole minutes.

    Attributes:
        drive: the way.
        load_up_minutes: from 'shoes on' to the wheels turning [min].
        drive_minutes: the likely driving time, rounded up [min].
        rests: in order of time.
        unload_minutes: from parking to walking [min].
    """

    drive: Drive
    load_up_minutes: int
    drive_minutes: int
    rests: tuple[Rest, ...]
    unload_minutes: int

    @property
    def minutes(self) -> int:
        """From 'shoes on' to walking [min]."""
        resting = sum(rest.minutes for rest in self.rests)
        return self.load_up_minutes + self.drive_minutes + resting + self.unload_minutes
