"""Shares of pupils out of school around a place."""

from collections.abc import Sequence
from datetime import date, timedelta
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.builders import out_of_school
from tripplan.documents.calendars.calendars import (
    DateSpan,
    SchoolCalendar,
    with_guess_kept,
    with_next_year_expected,
)
from tripplan.documents.where import Point
from tripplan.errors import PlanError
from tripplan.planning.holidays.schools import DECAY_KM, SchoolShares, days_out_of_school, school_days

PLACE = Point(40.0, -89.0)
KM_PER_DEGREE = 111.195
"""Of latitude, on a sphere of 6371.0088 km."""
MONDAY = date(2026, 11, 30)


def calendar(*no_school: tuple[date, date], km: float = 0, **changes: Any) -> SchoolCalendar:
    """A district so far north of the place, known from August 2026 to July 2027."""
    return SchoolCalendar.model_validate(
        {
            "name": "district",
            "country": "US",
            "latitude": PLACE.latitude + km / KM_PER_DEGREE,
            "longitude": PLACE.longitude,
            "pupils": 1000,
            "known": {"first": date(2026, 8, 1), "last": date(2027, 7, 31)},
            "no_school": [{"first": first, "last": last} for first, last in no_school],
            **changes,
        }
    )


def school_shares(calendars: Sequence[SchoolCalendar], point: Point, day: date, **where: str) -> SchoolShares:
    """How the pupils within reach of a place are spread on one day."""
    return school_days(calendars, point, day, day, **where).on(day)


def parts(shares: SchoolShares) -> tuple[float, float, float]:
    """The three shares that add up to one."""
    return shares.out, shares.inside, shares.unknown


def test_without_calendars_nothing_is_known() -> None:
    """No calendar is not the same as school for everybody."""
    assert school_shares((), PLACE, MONDAY) == SchoolShares(0, 0, 1)


def test_a_calendar_that_does_not_reach_the_day_leaves_its_pupils_unknown() -> None:
    """Half of the pupils are in a district whose calendar ended."""
    ended = calendar(known={"first": date(2025, 8, 1), "last": date(2026, 7, 31)})
    assert parts(school_shares((calendar(), ended), PLACE, MONDAY)) == (0, 0.5, 0.5)


def test_a_calendar_from_far_away_says_nothing() -> None:
    """A district across the country is no evidence for the place."""
    assert school_shares((calendar(km=1000),), PLACE, MONDAY).unknown == 1


@pytest.mark.parametrize(("km", "unknown"), [(249, 0), (251, 1)])
def test_districts_count_up_to_250_km(km: float, unknown: float) -> None:
    """A little nearer it says what school days the place has, a little farther it says nothing."""
    assert school_shares((calendar(km=km),), PLACE, MONDAY).unknown == unknown


def test_pupils_count_by_number_and_less_with_distance() -> None:
    """1000 pupils out at the place and 2000 in at the decay distance weigh 1 to 2/e, worked by hand."""
    out = calendar((MONDAY, MONDAY))
    far = calendar(km=DECAY_KM, pupils=2000)
    assert school_shares((out, far), PLACE, MONDAY).out == pytest.approx(1 / (1 + 2 / 2.718282), abs=1e-4)


def test_a_weekend_is_out_of_school_but_no_school_holiday() -> None:
    """Opening hours that speak of school holidays do not mean every Saturday."""
    saturday = MONDAY - timedelta(days=2)
    assert school_shares((calendar(),), PLACE, saturday).out == 1
    assert days_out_of_school((calendar(),), PLACE, saturday, saturday) == frozenset()


@pytest.mark.parametrize("asked_from", [0, 4, 5, 6, 7])
def test_a_weekend_between_two_weeks_of_a_break_belongs_to_it(asked_from: int) -> None:
    """Even where the calendar lists school days only, and wherever the question starts or ends."""
    weeks = calendar(*((MONDAY + timedelta(days=7 * n), MONDAY + timedelta(days=7 * n + 4)) for n in (0, 1)))
    first = MONDAY + timedelta(days=asked_from)
    every_day = {first + timedelta(days=n) for n in range((MONDAY - first).days + 12)}
    for last in (MONDAY + timedelta(days=n) for n in range(asked_from, 12)):
        found = days_out_of_school((weeks,), PLACE, first, last)
        assert found == {day for day in every_day if day <= last}


def test_school_holidays_are_days_on_which_enough_pupils_have_one() -> None:
    """One of two equal districts is half; a stricter threshold leaves the day out."""
    districts = (calendar((MONDAY, MONDAY)), calendar())
    assert days_out_of_school(districts, PLACE, MONDAY, MONDAY) == {MONDAY}
    assert days_out_of_school(districts, PLACE, MONDAY, MONDAY, threshold=0.6) == frozenset()


day_of_term = st.dates(date(2026, 7, 1), date(2027, 8, 31))


@given(st.lists(st.tuples(day_of_term, day_of_term).map(sorted), max_size=6), day_of_term)
def test_shares_agree_with_the_calendar_day_by_day(breaks: list[list[date]], day: date) -> None:
    """Asking for a year at once gives what the calendar itself says of each day, and shares add up to one."""
    district = calendar(*((first, last) for first, last in breaks))
    shares = school_days((district,), PLACE, date(2026, 7, 1), date(2027, 8, 31)).on(day)
    assert shares.out + shares.inside + shares.unknown == pytest.approx(1)
    expected = {None: (0, 0, 1), True: (1, 0, 0), False: (0, 1, 0)}
    assert parts(shares) == expected[out_of_school(district, day)]


def year_copied(*breaks: tuple[date, date]) -> SchoolCalendar:
    """A district known for the school year 2026-27, the year after it guessed."""
    known = {"first": date(2026, 8, 17), "last": date(2027, 6, 4)}
    return with_next_year_expected(calendar(*breaks, known=known))


def test_a_copied_year_is_a_chance_and_never_known() -> None:
    """A week's break in March 2027 makes that week of 2028 likely, its neighbours less so, none certain."""
    district = year_copied((date(2027, 3, 22), date(2027, 3, 26)))
    days = school_days((district,), PLACE, date(2028, 3, 6), date(2028, 4, 7))
    assert days.unknown.min() == 1
    by_week = [float(days.chance_out[n : n + 5].mean()) for n in range(0, 33, 7)]
    assert by_week[2] == max(by_week) < 0.9
    assert by_week[0] < by_week[1] < by_week[2] > by_week[3] > by_week[4] > 0


def test_the_weeks_between_two_school_years_are_expected_as_summer() -> None:
    """From the last day of one year to the guessed first day of the next."""
    district = year_copied()
    assert district.expected_within is not None
    assert district.expected_within.first == date(2027, 6, 5)
    assert school_shares((district,), PLACE, date(2027, 7, 14)).chance_out > 0.9
    assert school_shares((district,), PLACE, date(2027, 10, 13)).chance_out < 0.1


def test_copying_again_changes_nothing() -> None:
    """A guess is made from what is known, not from another guess."""
    district = year_copied((date(2026, 12, 21), date(2027, 1, 1)))
    assert with_next_year_expected(district) == district


def test_half_a_year_is_too_little_to_copy() -> None:
    """A file that holds one autumn tells nothing of a spring."""
    with pytest.raises(PlanError):
        with_next_year_expected(calendar(known={"first": date(2026, 8, 17), "last": date(2026, 12, 18)}))


def test_a_guess_outlives_a_calendar_brought_in_again() -> None:
    """The new file's own year is the pattern then; without an earlier guess none is made."""
    before = year_copied((date(2027, 3, 22), date(2027, 3, 26)))
    known = {"first": date(2026, 8, 17), "last": date(2027, 6, 9)}
    read = calendar((date(2027, 3, 29), date(2027, 4, 2)), known=known)
    assert with_guess_kept(read, before) == with_next_year_expected(read)
    assert with_guess_kept(read, calendar()) is read
    assert with_guess_kept(read, None) is read


def test_what_a_new_file_knows_is_guessed_no_more() -> None:
    """The year that was guessed has come: no guess is left, until the parent asks for the year after."""
    before = year_copied((date(2027, 3, 22), date(2027, 3, 26)))
    read = calendar(known={"first": date(2027, 8, 16), "last": date(2028, 6, 9)})
    assert with_guess_kept(read, before) is read


def test_a_file_too_short_to_go_by_leaves_the_rest_of_the_earlier_guess() -> None:
    """An autumn's file takes over its own months, and spring break stays as guessed."""
    before = year_copied((date(2026, 12, 21), date(2027, 1, 1)), (date(2027, 3, 22), date(2027, 3, 26)))
    autumn = calendar(known={"first": date(2027, 8, 16), "last": date(2027, 12, 24)})
    kept = with_guess_kept(autumn, before)
    assert before.expected_within is not None
    assert kept.expected_within == DateSpan(first=date(2027, 12, 25), last=before.expected_within.last)
    assert [(off.first, off.last) for off in kept.expected] == [
        (date(2027, 12, 25), date(2027, 12, 31)),
        (date(2028, 3, 20), date(2028, 3, 24)),
    ]


def test_a_short_day_is_told_apart_from_a_day_off() -> None:
    """Pupils who go home early are at school; on a day off and at a weekend nobody has a short day."""
    short = [{"first": MONDAY, "last": MONDAY + timedelta(days=6)}]
    days = school_days(
        (calendar((MONDAY, MONDAY), short_days=short), calendar()), PLACE, MONDAY, MONDAY + timedelta(6)
    )
    assert days.short.tolist() == [0, 0.5, 0.5, 0.5, 0.5, 0, 0]
    assert parts(days.on(MONDAY + timedelta(days=1))) == (0, 1, 0)


def test_what_is_expected_lies_beside_what_is_known() -> None:
    """A calendar cannot guess about days it knows."""
    with pytest.raises(ValueError, match="outside the days"):
        calendar(expected_within={"first": date(2027, 7, 1), "last": date(2027, 9, 1)})


def test_unknown_pupils_go_by_their_own_states_typical_year() -> None:
    """A Tennessee district that ended is likely back on 20 August, a New York one is not."""
    ended = {"first": date(2025, 8, 1), "last": date(2026, 5, 31)}
    friday = date(2026, 8, 21)
    chances = [
        school_shares((calendar(known=ended, subdivision=state),), PLACE, friday).chance_out
        for state in ("TN", "NY")
    ]
    assert chances[0] < 0.1 < 0.9 < chances[1]


def test_without_any_calendar_the_places_own_state_counts() -> None:
    """Everything stays unknown, but the summer of Wisconsin is likely free."""
    shares = school_shares((), PLACE, date(2027, 7, 14), country="US", subdivision="WI")
    assert parts(shares) == (0, 0, 1)
    assert shares.chance_out > 0.95


def test_calendars_of_the_same_content_read_anew_give_the_same() -> None:
    """Marks are kept by identity; another object of the same content is worked out anew, to the same end."""
    first, last = date(2026, 8, 1), date(2027, 7, 31)
    one, other = (school_days((calendar((MONDAY, MONDAY)),), PLACE, first, last) for _ in range(2))
    assert (one.out == other.out).all()
    changed = school_days((calendar(),), PLACE, first, last)
    assert (one.out != changed.out).sum() == 1


def test_asking_for_more_days_than_are_kept_gives_the_same() -> None:
    """The store of marks is bounded; what was dropped is worked out again."""
    district = calendar((MONDAY, MONDAY))
    before = school_days((district,), PLACE, MONDAY, MONDAY).out[0]
    for n in range(40):
        school_days((district,), PLACE, MONDAY + timedelta(days=n), MONDAY + timedelta(days=n + 1))
    assert school_days((district,), PLACE, MONDAY, MONDAY).out[0] == before == 1
