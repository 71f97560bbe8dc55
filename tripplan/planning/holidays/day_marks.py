"""Spans of days as arrays, one entry a day."""

from collections.abc import Iterable
from datetime import date

import numpy as np
from numpy.typing import NDArray

from tripplan.documents.calendars.calendars import DateSpan

Marks = NDArray[np.bool_]
Chances = NDArray[np.float64]

SATURDAY = 5


def days_in(first: date, last: date) -> int:
    """How many days there are from first to last, both counted."""
    return (last - first).days + 1


def weekdays_from(first: date, length: int) -> NDArray[np.int64]:
    """0 for Monday to 6 for Sunday, one entry a day."""
    return (np.arange(length) + first.weekday()) % 7


def marked(spans: Iterable[DateSpan], first: date, length: int) -> Marks:
    """Which of the days from `first` on lie inside one of the spans."""
    marks = np.zeros(length, dtype=bool)
    for span in spans:
        start, end = (span.first - first).days, (span.last - first).days + 1
        if end > 0 and start < length:
            marks[max(0, start) : end] = True
    return marks


def with_weekends_inside(off: Marks, first: date) -> Marks:
    """Days off, and every weekend between a Friday and a Monday off; such a weekend belongs to a break.

    Args:
        off: one entry a day; the first and last three days only say whether a weekend is inside.
        first: the date of entry 0.
    """
    closed = off.copy()
    saturdays = np.flatnonzero(weekdays_from(first, len(off)) == SATURDAY)
    saturdays = saturdays[(saturdays > 0) & (saturdays + 2 < len(off))]
    inside = saturdays[off[saturdays - 1] & off[saturdays + 2]]
    closed[inside] = closed[inside + 1] = True
    return closed


def weekends_by_neighbours(chance: Chances, first: date) -> Chances:
    """Chances of a break, those of a weekend being the lower of its Friday's and its Monday's.

    Args:
        chance: one entry a day [0-1]; weekends at either end keep theirs.
        first: the date of entry 0.
    """
    joined = chance.copy()
    saturdays = np.flatnonzero(weekdays_from(first, len(chance)) == SATURDAY)
    saturdays = saturdays[(saturdays > 0) & (saturdays + 2 < len(chance))]
    lower = np.minimum(chance[saturdays - 1], chance[saturdays + 2])
    joined[saturdays] = joined[saturdays + 1] = lower
    return joined
