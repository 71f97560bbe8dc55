"""Rests on the way, and the minutes it takes to get everybody into the car and out of it."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise

from tripplan.errors import PlanError
from tripplan.language.sentences import Fact
from tripplan.planning.travel.drive import Drive, Leg, Rest, Stop
from tripplan.values.ages import MONTHS

ADVISED_STRETCH_MINUTES = 120
"""Longest stretch of driving before a break [min]. Source: The Highway Code (Great Britain), rule 91."""

ADVISED_REST_MINUTES = 15
"""Shortest break after such a stretch [min]. Source: The Highway Code (Great Britain), rule 91."""

SMALL_CHILD_STRETCH_MINUTES = 90
"""Longest stretch with an infant or a new walker in the car [min].

No published study fixes a limit; health services advise at most two hours in a car seat at a time, with
frequent stops. The half hour below that is a margin for feeding an infant and for letting a new walker
run: common practice, no source.
"""

INFANT_UNDER_MONTHS = MONTHS
NEW_WALKER_UNDER_MONTHS = 2 * MONTHS
SMALL_CHILD_UNDER_MONTHS = 6 * MONTHS


@dataclass(frozen=True)
class WantedStop:
    """A stop before the drive is put on minutes.

    Attributes:
        share: how much of the drive lies behind when it begins [0-1].
        minutes: how long it lasts [min].
        what: what it is for.
    """

    share: float
    minutes: int
    what: Fact


def plan_leg(
    drive: Drive,
    *,
    load_up_minutes: int,
    unload_minutes: int,
    drive_at_most_minutes: int = ADVISED_STRETCH_MINUTES,
    rest_minutes: int = ADVISED_REST_MINUTES,
    drive_minutes: int | None = None,
    stops: Sequence[WantedStop] = (),
) -> Leg:
    """Put a drive on whole minutes, with as few evenly spread rests as the longest stretch allows.

    A rest is needed only where driving goes on: 2:00 needs none, 2:01 one, 4:00 one, 4:01 two. A stop that
    is at least as long as a rest is one.

    Args:
        drive: the way.
        load_up_minutes: from 'shoes on' to the wheels turning [min].
        unload_minutes: from parking to walking [min].
        drive_at_most_minutes: the longest stretch without a rest [min].
        rest_minutes: how long a rest lasts [min].
        drive_minutes: the driving time to plan with; the likely one, rounded up, when left out [min].
        stops: what else is stopped for; one without length is left out.

    Returns:
        The leg.

    Raises:
        PlanError: the longest stretch is under one minute, or another time is negative.

    Source: The Highway Code (Great Britain), rule 91, for the two defaults.
    """
    if drive_at_most_minutes < 1:
        raise PlanError(f"a stretch of driving lasts at least 1 minute, not {drive_at_most_minutes}")
    if min(load_up_minutes, unload_minutes, rest_minutes) < 0:
        raise PlanError("load-up, unload and rest cannot take less than no time")
    driven = drive.whole_minutes if drive_minutes is None else drive_minutes
    halted = tuple(
        Stop(round(stop.share * driven), stop.minutes, stop.what)
        for stop in sorted(stops, key=lambda stop: stop.share)
        if stop.minutes
    )
    as_rests = (stop.after_minutes for stop in halted if stop.minutes >= rest_minutes)
    rests = _rests_between((0, *as_rests, driven), drive_at_most_minutes, rest_minutes)
    return Leg(drive, load_up_minutes, driven, rests, unload_minutes, halted)


@lru_cache(maxsize=1024)
def _rests_between(halts: tuple[int, ...], at_most: int, rest_minutes: int) -> tuple[Rest, ...]:
    """The rests between each two halts, all of them in minutes of driving."""
    return tuple(
        Rest(after, rest_minutes)
        for begins, ends in pairwise(halts)
        for after in _evenly_between(begins, ends, at_most)
    )


def _evenly_between(begins: int, ends: int, at_most: int) -> list[int]:
    """The fewest points that leave no stretch longer than allowed [min]."""
    stretches = -((begins - ends) // at_most)
    return [begins + (ends - begins) * nth // stretches for nth in range(1, stretches)]


def usual_load_up_minutes(ages_months: Sequence[int]) -> int:
    """From 'shoes on' to the wheels turning: five minutes, and five more per child under six [min].

    Args:
        ages_months: everybody's age on the day [completed months].

    Source: common practice, no source; the parent's own figure wins.
    """
    return 5 + 5 * _small_children(ages_months)


def usual_unload_minutes(ages_months: Sequence[int]) -> int:
    """From parking to walking: three minutes, and three more per child under six [min].

    Args:
        ages_months: everybody's age on the day [completed months].

    Source: common practice, no source; the parent's own figure wins.
    """
    return 3 + 3 * _small_children(ages_months)


def drive_stretch_for(ages_months: Sequence[int], asked: int, toilet_minutes: Iterable[int] = ()) -> int:
    """The stretch to plan with: what the parent asks for, but never longer than is advised [min].

    Args:
        ages_months: everybody's age on the day [completed months].
        asked: the parent's longest stretch [min].
        toilet_minutes: how long those who need a toilet often hold out [min].

    Returns:
        At most 120 min for the driver's sake, at most 90 min with an infant or a new walker under two, and no
        longer than anybody holds out.

    Source: see `ADVISED_STRETCH_MINUTES` and `SMALL_CHILD_STRETCH_MINUTES`.
    """
    small = any(months < NEW_WALKER_UNDER_MONTHS for months in ages_months)
    return min(asked, SMALL_CHILD_STRETCH_MINUTES if small else ADVISED_STRETCH_MINUTES, *toilet_minutes)


def _small_children(ages_months: Sequence[int]) -> int:
    return sum(months < SMALL_CHILD_UNDER_MONTHS for months in ages_months)
