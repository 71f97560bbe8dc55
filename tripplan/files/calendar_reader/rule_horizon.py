"""Lets rules of repeating entries end with the days that matter.

The rule library follows a rule that never matches a day, such as 30 February, up to the year 9999, which can
take 17 s. It looks up the last year there is in a module of Python's, so it is lent another one meanwhile.
"""

import datetime
from collections.abc import Iterator
from contextlib import contextmanager
from threading import Lock
from types import SimpleNamespace

from dateutil import rrule

_ONE_AT_A_TIME = Lock()


@contextmanager
def rules_end_with(year: int) -> Iterator[None]:
    """While this lasts, dateutil's rules end with a year."""
    with _ONE_AT_A_TIME:
        ends = {**vars(datetime), "MAXYEAR": min(year, datetime.MAXYEAR)}
        setattr(rrule, "datetime", SimpleNamespace(**ends))  # noqa: B010 - no type allows this
        try:
            yield
        finally:
            setattr(rrule, "datetime", datetime)  # noqa: B010
