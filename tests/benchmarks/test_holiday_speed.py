"""How long the holiday flags of a year take, as ratios measured in one run."""

from collections.abc import Callable
from datetime import date, timedelta

import holidays as tables

from tests.benchmarks.timing import in_turns, timed
from tripplan.planning.holidays import days_off as flags
from tripplan.planning.holidays import public_holidays as names
from tripplan.planning.holidays.public_holidays import is_bridge_day, is_observed, is_weekend, long_weekend

YEAR = 2027
DAYS = tuple(date(YEAR, 1, 1) + timedelta(days=n) for n in range(365))


def built() -> tables.HolidayBase:
    """The package's own table of one year in Illinois."""
    table = tables.country_holidays("US", subdiv="IL", years=YEAR, language="en_US")
    assert date(YEAR, 7, 4) in table
    return table


def flagged() -> flags.DaysOff:
    """Every flag of the year, from nothing: actual and observed days of three years, then the arrays."""
    return flags.days_off(date(YEAR, 1, 1), date(YEAR, 12, 31), names.holidays_around("US", "IL", (YEAR,)))


def from_names() -> flags.DaysOff:
    """The arrays alone, with the names at hand."""
    return flags.days_off(date(YEAR, 1, 1), date(YEAR, 12, 31), NAMES)


NAMES = names.holidays_around("US", "IL", (YEAR,))


def day_by_day() -> list[tuple[bool, ...]]:
    """The same flags, asked one day after another."""
    dates = NAMES.keys()
    return [
        (
            is_weekend(day) and not (day in dates and not is_observed(NAMES[day])),
            day in dates and not is_observed(NAMES[day]),
            is_bridge_day(day, dates),
            bool(long_weekend(day, dates)),
        )
        for day in DAYS
    ]


def test_holiday_flags_against_building_the_table(tell: Callable[[str], None]) -> None:
    """Timed in turns; the aim is at most five times for the flags, and they are those of each single day."""
    whole, table, arrays, loop = in_turns(40, flagged, built, from_names, day_by_day)
    tell(
        f"holiday flags of a year: from nothing, years beside it too, {whole * 1e3:.2f} ms, from names "
        f"{arrays * 1e3:.2f} ms; the package's own table of the year {table * 1e3:.2f} ms: "
        f"{whole / table:.1f} and {arrays / table:.1f} times (aim: at most 5); day by day {loop * 1e3:.2f} ms"
    )
    for found in (timed(flagged)[1], timed(from_names)[1]):
        for day, (weekend, celebrated, bridge, long) in zip(DAYS, day_by_day(), strict=True):
            n = (day - found.first).days
            assert (found.weekend[n], found.public_holiday[n], found.bridge[n]) == (
                weekend,
                celebrated,
                bridge,
            )
            assert found.long_weekend[n] == (weekend and long)
