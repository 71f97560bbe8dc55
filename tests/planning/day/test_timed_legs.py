"""Legs under rush hours, minute by minute."""

from datetime import date, time
from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.planning.day.day_questions import CHICAGO, TUESDAY, make_leg
from tripplan.documents.family.habits import RushHours
from tripplan.documents.where import Where
from tripplan.planning.day.times.minutes import DayMinutes
from tripplan.planning.day.times.timed_legs import timed_leg
from tripplan.planning.travel.drive import Leg, TimedLeg
from tripplan.planning.travel.rush_hours import (
    METROPOLITAN_RUSH,
    VERY_LARGE_CITY_RUSH,
    driving_minutes_from,
    rush_hours_between,
)

HALVED = RushHours(start=time(7), end=time(9), factor=Decimal(2))
TOWN = Where(country="US", latitude=42.5, longitude=-90.7, time_zone="America/Chicago")
CITY = TOWN.model_copy(update={"metropolitan": True})
NEW_YORK = TOWN.model_copy(update={"latitude": 40.75, "longitude": -73.99})

spans = st.lists(
    st.tuples(
        st.integers(0, 200), st.integers(1, 120), st.sampled_from(["1", "1.19", "1.3", "2.75", "5"])
    ).map(lambda drawn: (drawn[0], drawn[0] + drawn[1], Decimal(drawn[2]))),
    max_size=3,
)


def leg_of(driving: int | None) -> Leg:
    """An hour's drive, or one of another length; ten minutes to load up."""
    return make_leg(60 if driving is None else driving)


def driven(leg: Leg | TimedLeg, clock: time, day: date = TUESDAY) -> int:
    """Driving time of the leg whose load-up begins at a time of day [min]."""
    return leg.at(DayMinutes(day, CHICAGO).by_clock(clock)).drive_minutes


@given(spans, st.integers(1, 90), st.integers(0, 299))
def test_driving_time_is_what_driving_minute_by_minute_takes(
    rush: list[tuple[int, int, Decimal]], free: int, start: int
) -> None:
    """An independent walk in exact fractions: each minute covers one part in the slowest factor of then."""
    covered, now = Fraction(0), start
    while covered < free:
        slowest = max([Fraction(1), *(Fraction(f) for first, after, f in rush if first <= now < after)])
        covered += 1 / slowest
        now += 1
    assert driving_minutes_from(free, rush, 300)[start] == now - start


@given(spans, st.integers(1, 90))
def test_nobody_who_starts_later_arrives_earlier(rush: list[tuple[int, int, Decimal]], free: int) -> None:
    """Arrival never falls with the start, and no rush makes a drive quicker."""
    minutes = driving_minutes_from(free, rush, 300)
    arrivals = [start + int(minute) for start, minute in enumerate(minutes)]
    assert arrivals == sorted(arrivals)
    assert min(minutes) >= free


def test_a_leg_is_as_long_as_the_hour_it_begins_in() -> None:
    """Worked by hand, twice as long from seven to nine; load-up takes the ten minutes before driving."""
    leg = timed_leg(leg_of, (HALVED,), DayMinutes(TUESDAY, CHICAGO))
    assert driven(leg, time(5)) == 60  # over before the rush
    assert driven(leg, time(6, 20)) == 90  # half an hour free, the other half twice as long
    assert driven(leg, time(7)) == 115  # 110 minutes from 7:10 cover 55, and from 9:00 five minutes five
    assert driven(leg, time(9)) == 60


def test_a_rush_keeps_its_clock_times_when_clocks_change() -> None:
    """On the 14th of March 2027 seven o'clock is six hours after midnight; the rush begins all the same."""
    sunday = RushHours(days=("Su",), start=time(7), end=time(9), factor=Decimal(2))
    spring = date(2027, 3, 14)
    leg = timed_leg(leg_of, (sunday,), DayMinutes(spring, CHICAGO))
    assert driven(leg, time(6, 20), spring) == 90


def test_other_days_of_the_week_know_no_rush() -> None:
    """A rush on Mondays leaves a Tuesday's leg as it was."""
    monday = HALVED.model_copy(update={"days": ("Mo",)})
    assert driven(timed_leg(leg_of, (monday,), DayMinutes(TUESDAY, CHICAGO)), time(7)) == 60


def test_without_rush_hours_the_leg_stays_the_leg() -> None:
    """The plain leg comes back, not a table."""
    assert isinstance(timed_leg(leg_of, (), DayMinutes(TUESDAY, CHICAGO)), Leg)


@pytest.mark.parametrize(
    ("asked", "home", "place", "counts"),
    [
        (None, TOWN, TOWN, ()),
        (None, CITY, TOWN, METROPOLITAN_RUSH),
        (None, TOWN, CITY, METROPOLITAN_RUSH),
        (None, CITY, NEW_YORK, VERY_LARGE_CITY_RUSH),
        ((), CITY, CITY, ()),
        ((HALVED,), TOWN, TOWN, (HALVED,)),
    ],
)
def test_published_rush_hours_count_only_at_a_large_city(
    asked: tuple[RushHours, ...] | None, home: Where, place: Where, counts: tuple[RushHours, ...]
) -> None:
    """What the parent sets wins; else the published figures of the larger city at an end, else none."""
    assert rush_hours_between(asked, home, place) == counts


def test_a_rush_that_ends_before_it_begins_is_refused() -> None:
    """From nine to seven says nothing."""
    with pytest.raises(ValueError, match="over later"):
        RushHours(start=time(9), end=time(7), factor=Decimal("1.2"))
