from datetime import time

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from tests.planning.day_questions import make_leg
from tripplan.planning.day.legs import driving_stretches
from tripplan.planning.day.naps import NapWindow
from tripplan.planning.household import Nap

minutes_of_day = st.integers(0, 24 * 60)


@given(
    window=st.tuples(minutes_of_day, minutes_of_day).map(sorted),
    stay=st.tuples(minutes_of_day, minutes_of_day),
)
def test_overlap_is_what_a_plain_count_of_minutes_gives(window: list[int], stay: tuple[int, int]) -> None:
    """F(end) - F(start) counts the minutes that lie both in the window and in the stay."""
    nap = Nap(start=time(0), minutes=300, shortest_minutes=0)
    kept = NapWindow("Di", nap, window[0], window[0], window[1]).kept(
        np.array([stay[0]]), np.array([stay[1]])
    )
    counted = len(set(range(window[0], window[1])) & set(range(stay[0], stay[1])))
    assert kept.tolist() == [min(counted, 300)]


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
    assert window.kept(np.array([stay[0]]), np.array([stay[1]])).tolist() == [tried]
    if tried:
        begins, ends = window.asleep(*stay)
        assert (ends - begins, max(begins, stay[0]), min(ends, stay[1])) == (tried, begins, ends)


def test_driving_stretches_lie_between_the_rests() -> None:
    """Load-up 10, then 40 and 20 minutes of driving with 15 minutes of rest between them."""
    assert driving_stretches(make_leg(60, rests=((40, 15),))) == ((10, 50), (65, 85))


def test_a_drive_without_rests_is_one_stretch() -> None:
    """The wheels turn from load-up to unloading."""
    assert driving_stretches(make_leg(45)) == ((10, 55),)
