"""Whether a day has room for a visit at all: most days that have none show it at once."""

import numpy as np

from tripplan.planning.day.times.legs import LegTimes
from tripplan.planning.day.times.limits import Limits, OpeningMinutes
from tripplan.planning.travel.drive import Leg


def has_room(limits: Limits) -> bool:
    """Whether any departure and leaving time on the grid keep every limit but the engagements.

    Whoever sets out first arrives first and is let in first, and whoever then leaves first is home first; so
    one choice tells. On a road with rush hours a later start may arrive first, as it may need a rest less;
    there the starts within one such drive are looked at.

    Args:
        limits: of a day that has not begun.
    """
    if _least_driving(limits.there) + _least_driving(limits.back) > limits.most_driving:
        return False
    arrive = _first_arrival(limits.there, limits.earliest, limits.grid)
    for opened in limits.opened:
        enter = _let_in(opened, arrive)
        if enter is None:
            continue
        leave = _on_grid(enter + limits.shortest, limits.grid)
        if leave > opened.closes:
            continue
        if _first_arrival(limits.back, leave, limits.grid, opened.closes) <= limits.home_by:
            return True
    return False


def _first_arrival(way: LegTimes, start: int, grid: int, last: int | None = None) -> int:
    """The first arrival of all who set out on the grid, not before a start and not after a last minute."""
    start = _on_grid(start, grid)
    if isinstance(way.way, Leg):
        return start + way.quickest
    whole = way.way.at(start).minutes
    starts = np.arange(start, (start + whole if last is None else min(start + whole, last)) + 1, grid)
    return int((starts + way.minutes(starts)).min())


def _least_driving(way: LegTimes) -> int:
    return min(leg.drive_minutes for leg in way.legs)


def _let_in(opened: OpeningMinutes, arrive: int) -> int | None:
    if opened.entries is not None:
        return next((entry for entry in opened.entries if entry >= arrive), None)
    enter = max(arrive, opened.opens)
    return enter if enter <= opened.last_entry else None


def _on_grid(minute: int, grid: int) -> int:
    return -(-minute // grid) * grid
