"""The days of the week."""

from enum import IntEnum


class Weekday(IntEnum):
    """A day of the week, numbered as `date.weekday` does."""

    MONDAY = 0
    TUESDAY = 1
    WEDNESDAY = 2
    THURSDAY = 3
    FRIDAY = 4
    SATURDAY = 5
    SUNDAY = 6
