"""Public holidays against published lists and a second library."""

from datetime import date

import pandas as pd
import pytest
from pandas.tseries.holiday import USFederalHolidayCalendar

from tripplan.planning.holidays.public_holidays import is_observed, public_holidays


def days_off_work(country: str, subdivision: str, year: int) -> set[date]:
    """The weekdays of a year that are holidays, actual or observed."""
    years = (year, year + 1)
    return {d for d in public_holidays(country, subdivision, years) if d.year == year and d.weekday() < 5}


@pytest.mark.parametrize(
    ("year", "expected"),
    [
        (2026, "01-01 01-19 02-16 05-25 06-19 07-03 09-07 10-12 11-11 11-26 12-25"),
        (2027, "01-01 01-18 02-15 05-31 06-18 07-05 09-06 10-11 11-11 11-25 12-24 12-31"),
    ],
)
def test_federal_days_off_are_those_of_the_courts_lists(year: int, expected: str) -> None:
    """The days federal offices close.

    Source: 5 USC 6103; lists of holidays of US courts for 2026 and 2027.
    """
    assert days_off_work("US", "", year) == {date.fromisoformat(f"{year}-{day}") for day in expected.split()}


@pytest.mark.parametrize("year", range(2022, 2035))
def test_federal_days_off_agree_with_another_library(year: int) -> None:
    """The federal calendar of pandas, which knows observed days only, names the same weekdays."""
    dates = USFederalHolidayCalendar().holidays(f"{year}-01-01", f"{year}-12-31")
    assert days_off_work("US", "", year) == {pd.Timestamp(day).date() for day in dates}


def test_english_bank_holidays_are_the_published_ones() -> None:
    """England and Wales 2026; Boxing Day is a Saturday, so Monday 28 December is off work.

    Source: gov.uk, UK bank holidays, England and Wales, 2026, from memory.
    """
    expected = "01-01 04-03 04-06 05-04 05-25 08-31 12-25 12-28"
    assert days_off_work("GB", "ENG", 2026) == {date.fromisoformat(f"2026-{day}") for day in expected.split()}
    holidays = public_holidays("GB", "ENG", (2026,))
    assert [is_observed(holidays[date(2026, 12, day)]) for day in (26, 28)] == [False, True]
