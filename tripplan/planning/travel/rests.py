"""Rests on the way, and the minutes it takes to get everybody into the car and out of it."""

import math
from collections.abc import Sequence

from tripplan.errors import PlanError
from tripplan.planning.ages import MONTHS
from tripplan.planning.travel.drive import Drive, Leg, Rest

ADVISED_STRETCH_MINUTES = 120
"""Longest stretch of driving before a break [min]. Source: The Highway Code (Great Britain), rule 91."""

ADVISED_REST_MINUTES = 15
"""Shortest break after such a stretch [min]. Source: The Highway Code (Great Britain), rule 91."""

INFANT_STRETCH_MINUTES = 90
"""Longest stretch with an infant in the car [min].

No published study fixes a limit; health services advise at most two hours in a car seat at a time, with
frequent stops. The half hour below that is a margin for feeding: common practice, no source.
"""

INFANT_UNDER_MONTHS = MONTHS
SMALL_CHILD_UNDER_MONTHS = 6 * MONTHS


def plan_leg(
    drive: Drive,
    *,
    load_up_minutes: int,
    unload_minutes: int,
    drive_at_most_minutes: int = ADVISED_STRETCH_MINUTES,
    rest_minutes: int = ADVISED_REST_MINUTES,
) -> Leg:
    """Put a drive on whole minutes, with as few evenly spread rests as the longest stretch allows.

    A rest is needed only where driving goes on: 2:00 needs none, 2:01 one, 4:00 one, 4:01 two.

    Args:
        drive: the way.
        load_up_minutes: from 'shoes on' to the wheels turning [min].
        unload_minutes: from parking to walking [min].
        drive_at_most_minutes: the longest stretch without a rest [min].
        rest_minutes: how long a rest lasts [min].

    Returns:
        The leg; its driving time is the likely one, rounded up.

    Raises:
        PlanError: the longest stretch is under one minute, or another time is negative.

    Source: The Highway Code (Great Britain), rule 91, for the two defaults.
    """
    if drive_at_most_minutes < 1:
        raise PlanError(f"a stretch of driving lasts at least 1 minute, not {drive_at_most_minutes}")
    if min(load_up_minutes, unload_minutes, rest_minutes) < 0:
        raise PlanError("load-up, unload and rest cannot take less than no time")
    # Six decimals first, so that 60.00000000001 from a division stays an hour.
    drive_minutes = math.ceil(round(drive.minutes.likely, 6))
    stretches = max(1, math.ceil(drive_minutes / drive_at_most_minutes))
    rests = tuple(Rest(drive_minutes * nth // stretches, rest_minutes) for nth in range(1, stretches))
    return Leg(drive, load_up_minutes, drive_minutes, rests, unload_minutes)


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


def drive_stretch_for(ages_months: Sequence[int], asked: int) -> int:
    """The stretch to plan with: what the parent asks for, but never longer than is advised [min].

    Args:
        ages_months: everybody's age on the day [completed months].
        asked: the parent's longest stretch [min].

    Returns:
        At most 120 min for the driver's sake, at most 90 min with an infant under 12 months.

    Source: see `ADVISED_STRETCH_MINUTES` and `INFANT_STRETCH_MINUTES`.
    """
    infant = any(months < INFANT_UNDER_MONTHS for months in ages_months)
    return min(asked, INFANT_STRETCH_MINUTES if infant else ADVISED_STRETCH_MINUTES)


def _small_children(ages_months: Sequence[int]) -> int:
    return sum(months < SMALL_CHILD_UNDER_MONTHS for months in ages_months)
