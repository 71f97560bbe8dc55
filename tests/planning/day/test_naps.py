from datetime import datetime, time
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.planning.day.day_questions import (
    CHICAGO,
    TUESDAY,
    make_hours,
    make_leg,
    make_napper,
    make_question,
)
from tripplan.documents.family.habits import Habits
from tripplan.documents.family.member import Nap, SleepsIn
from tripplan.planning.day import DayInProgress, NapOutcome, plan_day
from tripplan.planning.day.times.minutes import DayMinutes
from tripplan.planning.day.weighing.naps import NapWindow, Sleep, Stretch, nap_windows
from tripplan.values.clocks import minute_of_day

ENTER = np.array([[[600]]])
"""Let in at ten."""

minutes_of_day = st.integers(0, 24 * 60)


def at_home(stay: tuple[int, int]) -> Stretch:
    """At home between two minutes."""
    return Stretch(SleepsIn.HOME, np.array([[[stay[0]]]]), np.array([[[stay[1]]]]))


@given(
    window=st.tuples(minutes_of_day, minutes_of_day).map(sorted),
    stay=st.tuples(minutes_of_day, minutes_of_day),
)
def test_overlap_is_what_a_plain_count_of_minutes_gives(window: list[int], stay: tuple[int, int]) -> None:
    """F(end) - F(start) counts the minutes that lie both in the window and in the stay."""
    nap = Nap(start=time(0), minutes=300, shortest_minutes=0)
    kept = NapWindow("Di", nap, window[0], window[0], window[1]).slept([at_home(stay)], ENTER).kept
    counted = len(set(range(window[0], window[1])) & set(range(stay[0], stay[1])))
    assert kept.item() == min(counted, 300)


@given(
    usual=st.integers(300, 900),
    minutes=st.integers(5, 120),
    slack=st.integers(0, 60),
    stay=st.tuples(minutes_of_day, minutes_of_day),
)
def test_the_best_shift_is_found_without_trying_shifts(
    usual: int, minutes: int, slack: int, stay: tuple[int, int]
) -> None:
    """The least of overlap and length equals the best of all shifts, tried one by one."""
    nap = Nap(start=time(0), minutes=minutes, slack_minutes=slack, shortest_minutes=0)
    window = NapWindow("Di", nap, usual, usual - slack, usual + minutes + slack)
    tried = max(
        max(0, min(begins + minutes, stay[1]) - max(begins, stay[0]))
        for begins in range(usual - slack, usual + slack + 1)
    )
    assert window.slept([at_home(stay)], ENTER).kept.item() == tried
    if tried:
        begins, ends = window.asleep(Sleep(SleepsIn.HOME, *stay))
        assert (ends - begins, max(begins, stay[0]), min(ends, stay[1])) == (tried, begins, ends)


def test_driving_stretches_lie_between_the_rests() -> None:
    """Load-up 10, then 40 and 20 minutes of driving with 15 minutes of rest between them."""
    assert make_leg(60, rests=((40, 15),)).stretches == ((10, 50), (65, 85))


def test_a_drive_without_rests_is_one_stretch() -> None:
    """The wheels turn from load-up to unloading."""
    assert make_leg(45).stretches == ((10, 55),)


def carried(**changes: Any) -> tuple[NapOutcome, ...]:
    """What becomes of a nap at 9:30 of a child that is driven from 8:50 to 9:50."""
    napper = make_napper("09:30", 90, slack_minutes=0, in_pushchair=True, **changes)
    left = datetime.combine(TUESDAY, time(8, 40), CHICAGO)
    question = make_question(
        nappers=(napper,), hours=make_hours(("09:30", "17:00")), begun=DayInProgress(left, left)
    )
    best = plan_day(question).best
    assert best is not None
    return best.naps


def test_a_child_that_stays_asleep_sleeps_on_in_the_pushchair() -> None:
    """The car stops at 9:50: 20 minutes of the nap in the car, the other 70 in the pushchair."""
    (nap,) = carried(stays_asleep_when_moved=True)
    assert nap.kept == ((SleepsIn.CAR, 20), (SleepsIn.PUSHCHAIR, 70))
    assert [f"{start:%H:%M}-{end:%H:%M}" for _, start, end in nap.slept] == ["09:30-09:50", "09:50-11:00"]


def test_a_child_that_wakes_when_moved_has_to_fall_asleep_again() -> None:
    """Arrived at 9:55 it takes ten minutes to settle in the pushchair, and 55 minutes of the nap are left."""
    (nap,) = carried(stays_asleep_when_moved=False)
    assert nap.kept == ((SleepsIn.PUSHCHAIR, 55),)


def test_who_is_not_asleep_yet_cannot_be_carried_over_asleep() -> None:
    """A child that needs an hour to fall asleep is awake when the car stops, and settles anew."""
    (nap,) = carried(stays_asleep_when_moved=True, falls_asleep_minutes=60, shortest_minutes=0)
    assert nap.kept == ((SleepsIn.PUSHCHAIR, 5),)


def test_a_nap_on_the_way_home_goes_on_in_bed() -> None:
    """Of a nap at 14:00 what the last drive does not hold follows at home, in one sleep."""
    napper = make_napper("14:00", 120, slack_minutes=0, stays_asleep_when_moved=True)
    question = make_question(
        nappers=(napper,), hours=make_hours(("10:00", "13:30")), shortest_minutes=210, comfortable_minutes=0
    )
    best = plan_day(question).best
    assert best is not None
    assert best.naps[0].kept == ((SleepsIn.CAR, 40), (SleepsIn.HOME, 80))


@pytest.mark.parametrize(
    ("usual", "slack", "first"),
    [
        # Lunch is from 12:00 to 12:35.
        ("12:30", 30, "12:30"),
        ("12:45", 30, "12:35"),
        ("13:00", 15, "12:45"),
        ("12:00", 20, "12:00"),
        ("11:50", 20, "11:30"),
    ],
)
def test_nobody_is_put_to_bed_hungry(usual: str, slack: int, first: str) -> None:
    """A nap that usually begins at lunch time or later is not moved to before lunch is over."""
    (window,) = nap_windows(
        (make_napper(usual, slack_minutes=slack),), Habits(), DayMinutes(TUESDAY, CHICAGO)
    )
    assert window.first == minute_of_day(time.fromisoformat(first))
