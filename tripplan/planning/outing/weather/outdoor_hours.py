"""What the weather of a place weighs for a family, by the hour, as the day search asks it."""

from collections.abc import Sequence
from datetime import UTC, datetime, time, timedelta

import numpy as np

from tripplan.documents.family.household import Household
from tripplan.planning.climate.climate import Numbers
from tripplan.planning.climate.days_of_year import day_of_year
from tripplan.planning.climate.outdoors import OutdoorYear, percent_for
from tripplan.planning.day.times.hourly_weather import HourlyWeather
from tripplan.planning.day.times.minutes import DayMinutes


def hourly_weather(
    year: OutdoorYear, household: Household, number: Numbers, begins: Numbers, percent: Numbers
) -> HourlyWeather:
    """What being at a place weighs in some kinds of weather.

    Args:
        year: what time outdoors is like there.
        household: what the parent says it weighs.
        number: of the days, see `Climate.numbers`.
        begins: when they begin at home, by the clock of Greenwich [min].
        percent: how much cold and heat weigh for the youngest [%].
    """
    steps = year.steps(number, begins)
    weight = steps.weight(household.worth, percent) * year.share
    return HourlyWeather.of_half_hours(weight, year.bars(number, steps))


def weather_of_day(
    year: OutdoorYear | None, household: Household, months: Sequence[int], minutes: DayMinutes
) -> HourlyWeather | None:
    """That of one day; None where nothing is outdoors or nobody knows its weather.

    Args:
        year: what time outdoors is like at the place.
        household: what the parent says it weighs.
        months: the ages of those who go [completed months].
        minutes: the day.
    """
    if year is None:
        return None
    number, begins = one_day(year, minutes)
    return hourly_weather(year, household, number, begins, np.array([percent_for(min(months))]))


def one_day(year: OutdoorYear, minutes: DayMinutes) -> tuple[Numbers, Numbers]:
    """The number of one day's weather, and when the day begins by the clock of Greenwich [min]."""
    day = minutes.day
    number = year.climate.numbers(np.array([day_of_year(day)]), np.array([day.toordinal()]))
    begins = (minutes.midnight - datetime.combine(day, time(0), UTC)) // timedelta(minutes=1)
    return number, np.array([begins])
