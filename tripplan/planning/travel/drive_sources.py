"""Which drive counts: what the parent typed in, else a road network's, else the estimate."""

import math
from dataclasses import replace
from datetime import date
from typing import Protocol

from tripplan.documents.where import Point
from tripplan.errors import PlanError
from tripplan.planning.travel.distance import geodesic_km
from tripplan.planning.travel.drive import Drive, KnownBy
from tripplan.planning.travel.estimate import estimate_drive
from tripplan.values.ranges import Origin, Range, Source

TYPED_KM_SPREAD = 0.02
"""A known way is driven with small detours. Source: common practice, no source."""
TYPED_MINUTES_SPREAD = 0.10
"""The same way takes longer on one day than on another. Source: common practice, no source."""
FASTEST_LIKELY_KMH = 130.0
"""Above this average speed a typed-in figure is probably a slip [km/h]. Common practice, no source."""


class TypedFigures(Protocol):
    """What the parent typed in for one way."""

    @property
    def km(self) -> float:
        """Distance on the road [km]."""

    @property
    def minutes(self) -> float:
        """Driving time without rests [min]."""

    @property
    def typed_on(self) -> date:
        """When it was typed in."""


def typed_drive(km: float, minutes: float, typed_on: date) -> Drive:
    """A drive as the parent knows it.

    Args:
        km: distance on the road, one way [km].
        minutes: driving time without rests, one way [min].
        typed_on: when it was typed in.

    Returns:
        The drive, with a small range: 2 % on the distance, 10 % on the time.

    Raises:
        PlanError: a figure is not above zero.
    """
    if not (0 < km < math.inf and 0 < minutes < math.inf):
        raise PlanError(
            f"a typed-in drive needs a distance and a time above zero, not {km} km, {minutes} min"
        )
    return Drive(
        km=_give_or_take(km, TYPED_KM_SPREAD),
        minutes=_give_or_take(minutes, TYPED_MINUTES_SPREAD),
        known_by=KnownBy.TYPED,
        source=Source(Origin.PARENT, f"typed in on {typed_on.isoformat()}"),
    )


def known_drive(
    origin: Point,
    destination: Point,
    country: str,
    typed: TypedFigures | None = None,
    roads: Drive | None = None,
) -> Drive:
    """The best known drive between two points.

    Args:
        origin: where the drive starts.
        destination: where it ends.
        country: the destination's ISO 3166-1 code, for the estimate.
        typed: what the parent typed in, if anything.
        roads: what a road network says, if there is one.

    Returns:
        The typed-in drive, else the road network's, else the estimate; a typed-in drive that cannot be
        true says so in its notes.

    Raises:
        PlanError: a typed-in figure is not above zero.
    """
    if typed is not None:
        drive = typed_drive(typed.km, typed.minutes, typed.typed_on)
        return replace(drive, notes=_doubts(drive, geodesic_km(origin, destination)))
    return roads or estimate_drive(origin, destination, country)


def _give_or_take(value: float, spread: float) -> Range:
    return Range(value * (1 - spread), value, value * (1 + spread))


def _doubts(typed: Drive, straight_km: float) -> tuple[str, ...]:
    doubts = []
    if typed.km.high < straight_km:
        doubts.append("The typed-in distance is shorter than the straight line. Was another unit meant?")
    if 60 * typed.km.likely / typed.minutes.likely > FASTEST_LIKELY_KMH:
        doubts.append(
            "The typed-in figures mean a faster average than almost any road allows. Are both for one way?"
        )
    return tuple(doubts)
