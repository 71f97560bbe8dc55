"""Times of day in minutes."""

from datetime import datetime, time


def minute_of_day(clock: time | datetime) -> int:
    """How many minutes a clock is past midnight when it shows a time; seconds are left out [min]."""
    return clock.hour * 60 + clock.minute
