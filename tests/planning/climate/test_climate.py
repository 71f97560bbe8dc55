"""What a day is usually like, by date and hour."""

from datetime import date, timedelta
from zoneinfo import ZoneInfo

import numpy as np
import pytest

from tripplan.documents.where import Point
from tripplan.planning.climate.climate import Climate, UsualDay, UsualMonths, half_days
from tripplan.planning.climate.days_of_year import day_of_year
from tripplan.planning.travel.daylight import daylight
from tripplan.values.ranges import Origin, Source

SOURCE = Source(Origin.PARENT, "typed in")
WARM, COLD = np.full(12, 10.0), np.full(12, 2.0)


def test_leap_days_move_nothing() -> None:
    """1 March is the same day of the year with and without a 29 February before it."""
    assert day_of_year(date(2027, 3, 1)) == day_of_year(date(2028, 3, 1)) == 60
    assert day_of_year(date(2028, 2, 29)) == 59


def test_a_day_runs_from_its_low_at_sunrise_to_its_high_at_two() -> None:
    """In between it rises, after that it falls until the next sunrise."""
    usual = UsualDay(low=-10.0, high=0.0, wet=0.3, snow=0.2, sunrise=5.0)
    assert usual.temperature(7) == pytest.approx(-10)
    assert usual.temperature(14) == pytest.approx(0)
    assert usual.temperature(10.5) == pytest.approx(-5)
    assert usual.temperature(31) == pytest.approx(-10)
    hours = [usual.temperature(hour) for hour in np.arange(7, 31, 0.5)]
    assert hours[:15] == sorted(hours[:15])
    assert hours[14:] == sorted(hours[14:], reverse=True)


@pytest.mark.parametrize("sunrise", [0.0, 12.0])
def test_polar_days_and_nights_stay_between_low_and_high(sunrise: float) -> None:
    """Where the sun does not rise or set there is a temperature too."""
    usual = UsualDay(low=-30.0, high=-20.0, wet=0.1, snow=None, sunrise=sunrise)
    assert all(-30 <= usual.temperature(hour) <= -20 for hour in range(24))


def test_chances_are_chances() -> None:
    """A month without rain between wet ones, and one in which it rains every day, stay within 0 and 1."""
    wet = np.array([31.0, 0, 31, 0, 31, 30, 31, 31, 0, 0, 0, 31])
    climate = Climate.of_months(40.0, UsualMonths(WARM, COLD, wet, None, SOURCE))
    assert climate.wet.min() >= 0
    assert climate.wet.max() <= 1
    assert climate.on(date(2027, 1, 15)).snow is None


@pytest.mark.parametrize("latitude", [-34.0, 0.0, 42.5, 61.2])
def test_half_a_day_is_that_of_the_sun(latitude: float) -> None:
    """Within ten minutes of half of what NOAA's equations say, in `planning/travel/daylight`."""
    for week in range(52):
        day = date(2027, 1, 1) + timedelta(weeks=week)
        light = daylight(Point(latitude, 0.0), day, ZoneInfo("UTC"))
        assert light.rises is not None
        assert light.sets is not None
        half = (light.sets - light.rises) / timedelta(hours=2)
        assert half_days(latitude)[day_of_year(day)] == pytest.approx(half, abs=1 / 6)


def test_at_the_poles_the_sun_stays_up_or_down() -> None:
    """Half a year each."""
    assert half_days(90)[[170, 355]].tolist() == [12, 0]
    assert half_days(-90)[[170, 355]].tolist() == [0, 12]
