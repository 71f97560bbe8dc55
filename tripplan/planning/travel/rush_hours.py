"""Rush hours: how long the same road takes when it is full."""

from collections.abc import Iterable, Mapping
from datetime import time
from decimal import Decimal

import numpy as np
from numpy.typing import NDArray

from tripplan.documents.family.habits import RushHours
from tripplan.documents.where import Where
from tripplan.planning.travel.metropolitan import CitySize, city_size

_PEAKS = ((time(6), time(9)), (time(16), time(19)))
METROPOLITAN_RUSH = tuple(RushHours(start=start, end=end, factor=Decimal("1.19")) for start, end in _PEAKS)
"""Rush hours of a large city whose own are not known, on working days.

The travel time index, peak over free flow, of 52 large US metropolitan areas together; it was 1.33 in 2018
and 1.13 in 2020, and single cities and roads differ far more than that.
Source: Federal Highway Administration, 2021 Urban Congestion Trends, FHWA-HOP-22-028, 2022.
"""
VERY_LARGE_CITY_RUSH = (
    *(RushHours(start=start, end=end, factor=Decimal("1.5")) for start, end in _PEAKS),
    RushHours(start=time(9), end=time(16), factor=Decimal("1.3")),
)
"""Likewise of the very largest cities, with the hours between the peaks, when their roads are full as well.

Taxi trips of 20 to 40 km in such a city took 1.45 times as long by day and 1.7 times in rush hours as at
night (at second hand; the records themselves were not read). The estimate's own times are not those of the
night but of usual traffic, some 5 % above free flow at this distance, so a little less comes on top. How full
the roads are on Saturdays and Sundays is not known, and nothing is added then.
"""
_PUBLISHED: Mapping[CitySize, tuple[RushHours, ...]] = {
    CitySize.NONE: (),
    CitySize.REGION: (),
    CitySize.LARGE: METROPOLITAN_RUSH,
    CitySize.VERY_LARGE: VERY_LARGE_CITY_RUSH,
}
_FULL_SPEED = 10**9
"""Progress of one minute on an empty road, so fine that dividing by a factor loses nothing."""


def rush_hours_between(
    asked: tuple[RushHours, ...] | None, home: Where, place: Where
) -> tuple[RushHours, ...]:
    """The rush hours that count for drives between home and a place.

    Args:
        asked: what the parent has set; None where nothing was set.
        home: where the family lives.
        place: where it goes.

    Returns:
        What the parent has set; else the published figures for the larger of the cities that either end lies
        in or near, and none elsewhere.
    """
    if asked is not None:
        return asked
    return _PUBLISHED[max(city_size(home), city_size(place))]


def driving_minutes_from(
    free_minutes: int, rush: Iterable[tuple[int, int, Decimal]], starts: int
) -> NDArray[np.int64]:
    """How long a drive without a halt takes, for every minute at which it may start.

    Each minute of driving gets the car on by the factor's share of a minute on an empty road; where rush
    hours overlap the slower ones count. So nobody who starts later arrives earlier.

    Args:
        free_minutes: driving time on empty roads [min].
        rush: when the roads are full and how many times as long they then take, as (first minute, minute
            after the last, factor of at least 1 with up to two decimals).
        starts: the drive may start at minutes 0 to `starts` - 1.

    Returns:
        Driving time for each start [min]; never less than `free_minutes`.
    """
    spans = tuple(rush)
    latest = max((end for _, end, _ in spans), default=0)
    progress = np.full(max(starts, latest) + free_minutes, _FULL_SPEED, dtype=np.int64)
    for first, after, factor in spans:
        slow = -(-_FULL_SPEED * 100 // int(factor * 100))
        during = progress[max(first, 0) : max(after, 0)]
        np.minimum(during, slow, out=during)
    driven = np.concatenate(([0], np.cumsum(progress)))
    start = np.arange(starts)
    return np.searchsorted(driven, driven[start] + free_minutes * _FULL_SPEED) - start
