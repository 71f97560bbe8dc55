"""Days off of a year as arrays."""

from collections.abc import Mapping
from datetime import date

import numpy as np
import pytest

from tripplan.planning.holidays.days_off import DaysOff, days_off
from tripplan.planning.holidays.public_holidays import (
    is_bridge_day,
    is_observed,
    is_weekend,
    long_weekend,
    public_holidays,
)

HOLIDAYS = public_holidays("US", "IL", range(2025, 2029))


def of_year(year: int, holidays: Mapping[date, str]) -> DaysOff:
    """The days off of a calendar year."""
    return days_off(date(year, 1, 1), date(year, 12, 31), holidays)


@pytest.mark.parametrize("year", [2026, 2027, 2028])
def test_the_arrays_say_what_each_day_says(year: int) -> None:
    """Every flag of every day is that of the functions for one day."""
    off = of_year(year, HOLIDAYS)
    days = [date.fromordinal(off.first.toordinal() + n) for n in range(len(off))]
    assert (off.first, days[-1]) == (date(year, 1, 1), date(year, 12, 31))
    for day, *flags, name in zip(
        days,
        off.weekend,
        off.public_holiday,
        off.in_lieu,
        off.bridge,
        off.long_weekend,
        off.names,
        strict=True,
    ):
        celebrated = day in HOLIDAYS and not is_observed(HOLIDAYS[day])
        weekend = is_weekend(day) and not celebrated
        assert name == HOLIDAYS.get(day, "")
        assert flags == [
            weekend,
            celebrated,
            day in HOLIDAYS and not celebrated and not weekend,
            is_bridge_day(day, HOLIDAYS.keys()),
            weekend and bool(long_weekend(day, HOLIDAYS.keys())),
        ]


def test_places_with_the_same_holidays_share_their_arrays() -> None:
    """The arrays are worked out once for equal holidays, and nobody can write to them."""
    off = of_year(2026, HOLIDAYS)
    assert of_year(2026, dict(HOLIDAYS)) is off
    assert of_year(2026, {}) is not off
    with pytest.raises(ValueError, match="read-only"):
        off.weekend[0] = True
    assert np.flatnonzero(of_year(2026, {}).public_holiday).size == 0
