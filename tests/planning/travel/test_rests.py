from datetime import date
from itertools import pairwise
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tripplan.errors import PlanError
from tripplan.planning.travel.drive import Drive, KnownBy, Rest
from tripplan.planning.travel.drive_sources import typed_drive
from tripplan.planning.travel.rests import (
    drive_stretch_for,
    plan_leg,
    usual_load_up_minutes,
    usual_unload_minutes,
)
from tripplan.values.ranges import Origin, Range, Source


def drive_of(minutes: float) -> Drive:
    """A drive of that many minutes."""
    return typed_drive(max(minutes, 1), minutes, date(2026, 11, 2))


@pytest.mark.parametrize(
    ("drive_minutes", "rests"), [(1, 0), (119, 0), (120, 0), (121, 1), (240, 1), (241, 2), (360, 2), (361, 3)]
)
def test_rests_follow_the_highway_code(drive_minutes: int, rests: int) -> None:
    """A break of 15 minutes after every two hours, where driving goes on (The Highway Code, rule 91)."""
    leg = plan_leg(drive_of(drive_minutes), load_up_minutes=10, unload_minutes=5)
    assert len(leg.rests) == rests
    assert all(rest.minutes == 15 for rest in leg.rests)
    assert leg.minutes == 10 + drive_minutes + 15 * rests + 5


@given(st.floats(0.1, 1500), st.integers(10, 300), st.integers(0, 60))
def test_no_stretch_is_longer_than_allowed(minutes: float, limit: int, rest_minutes: int) -> None:
    """Stretches stay within the limit and differ by at most a minute; one rest fewer would not do."""
    leg = plan_leg(
        drive_of(minutes),
        load_up_minutes=0,
        unload_minutes=0,
        drive_at_most_minutes=limit,
        rest_minutes=rest_minutes,
    )
    stops = [0, *(rest.after_minutes for rest in leg.rests), leg.drive_minutes]
    stretches = [later - earlier for earlier, later in pairwise(stops)]
    assert max(stretches) <= limit
    assert max(stretches) - min(stretches) <= 1
    assert len(leg.rests) * limit < leg.drive_minutes
    assert minutes <= leg.drive_minutes + 1e-6
    assert leg.drive_minutes < minutes + 1


def test_one_rest_comes_half_way() -> None:
    """Two and a half hours are split in the middle, not after two hours."""
    leg = plan_leg(drive_of(150), load_up_minutes=10, unload_minutes=5)
    assert leg.rests == (Rest(after_minutes=75, minutes=15),)


def test_a_hair_over_an_hour_stays_an_hour() -> None:
    """Rounding noise of a division does not add a minute, a real second does."""
    assert plan_leg(drive_of(60 + 1e-9), load_up_minutes=0, unload_minutes=0).drive_minutes == 60
    assert plan_leg(drive_of(60 + 1 / 60), load_up_minutes=0, unload_minutes=0).drive_minutes == 61


def test_no_way_takes_no_rest() -> None:
    """A place at home takes load-up and unload only."""
    nothing = Drive(
        Range.exactly(0), Range.exactly(0), KnownBy.ESTIMATE, Source(Origin.ESTIMATE, "made up for this test")
    )
    leg = plan_leg(nothing, load_up_minutes=10, unload_minutes=5)
    assert (leg.drive_minutes, leg.rests, leg.minutes) == (0, (), 15)


@pytest.mark.parametrize(
    "wrong",
    [
        {"drive_at_most_minutes": 0},
        {"rest_minutes": -1},
        {"load_up_minutes": -1},
        {"unload_minutes": -1},
    ],
)
def test_times_without_meaning_are_refused(wrong: dict[str, Any]) -> None:
    """No stretch of nought minutes, no negative times."""
    with pytest.raises(PlanError):
        plan_leg(drive_of(30), **{"load_up_minutes": 0, "unload_minutes": 0, **wrong})


@pytest.mark.parametrize(
    ("ages_months", "load_up", "unload"),
    [([], 5, 3), ([450, 430], 5, 3), ([450, 133, 84, 54, 16], 15, 9), ([450, 72], 5, 3), ([450, 71], 10, 6)],
)
def test_small_children_take_time(ages_months: list[int], load_up: int, unload: int) -> None:
    """Five minutes to load up and three to unload, as much again per child under six."""
    assert usual_load_up_minutes(ages_months) == load_up
    assert usual_unload_minutes(ages_months) == unload


@pytest.mark.parametrize(
    ("ages_months", "asked", "planned"),
    [
        ([450, 84], 120, 120),
        ([450, 84], 180, 120),
        ([450, 84], 45, 45),
        ([450, 24], 120, 120),
        ([450, 23], 120, 90),
        ([450, 11], 120, 90),
        ([450, 0], 60, 60),
    ],
)
def test_stretches_never_exceed_what_is_advised(ages_months: list[int], asked: int, planned: int) -> None:
    """Two hours for the driver (rule 91), an hour and a half with a child under two, less where asked."""
    assert drive_stretch_for(ages_months, asked) == planned


@pytest.mark.parametrize(("toilets", "planned"), [([], 120), ([40], 40), ([150], 120), ([75, 50], 50)])
def test_nobody_is_driven_past_the_next_toilet(toilets: list[int], planned: int) -> None:
    """The shortest that anybody holds out counts where it is less than what is advised."""
    assert drive_stretch_for([450, 36], 120, toilets) == planned
