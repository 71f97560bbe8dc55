"""A leg on a day with rush hours: a length for every minute at which it may begin."""

from collections.abc import Callable, Iterable, Iterator
from datetime import datetime, timedelta

import numpy as np

from tripplan.documents.family.habits import RushHours
from tripplan.planning.day.times.limits import LONGEST_DAY
from tripplan.planning.day.times.minutes import DayMinutes
from tripplan.planning.travel.drive import Journey, Leg, TimedLeg
from tripplan.planning.travel.rush_hours import driving_minutes_from

_WEEKDAYS = ("Mo", "Tu", "We", "Th", "Fr", "Sa", "Su")


def timed_leg(leg_of: Callable[[int | None], Leg], rush: Iterable[RushHours], minutes: DayMinutes) -> Journey:
    """A leg under the rush hours of a day.

    How much longer the driving takes is reckoned from when the wheels turn, as if driving on without a halt.

    Args:
        leg_of: the leg for a driving time in minutes; on empty roads for None.
        rush: rush hours by the clock at home.
        minutes: how the day is counted.

    Returns:
        The leg for every minute since midnight; the plain leg where there is no rush.
    """
    free = leg_of(None)
    spans = [
        (minutes.rounded_up(start), minutes.rounded_up(end), hours.factor)
        for hours in rush
        for start, end in _on_each_day(hours, minutes)
    ]
    if not spans or not free.drive_minutes:
        return free
    # Load-up comes before the wheels turn, so the drive starts that much later than the leg.
    starts = LONGEST_DAY + 1 + free.load_up_minutes
    driving = driving_minutes_from(free.drive_minutes, spans, starts)[free.load_up_minutes :]
    # Lengths lie close together, so that counting them takes a tenth of the time of sorting all starts.
    least = int(driving.min())
    occurs = np.bincount(driving - least) > 0
    lengths = (np.flatnonzero(occurs) + least).tolist()
    by_minute = (np.cumsum(occurs, dtype=np.int16) - 1)[driving - least]
    legs = (free if length == free.drive_minutes else leg_of(length) for length in lengths)
    return TimedLeg(tuple(legs), by_minute)


def _on_each_day(hours: RushHours, minutes: DayMinutes) -> Iterator[tuple[datetime, datetime]]:
    for later in range(LONGEST_DAY // (24 * 60)):
        day = minutes.day + timedelta(days=later)
        if _WEEKDAYS[day.weekday()] in hours.days:
            zone = minutes.home_zone
            yield datetime.combine(day, hours.start, zone), datetime.combine(day, hours.end, zone)
