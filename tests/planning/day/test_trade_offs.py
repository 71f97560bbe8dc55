"""What a day can be traded for, why the best is best, and which limit helps if it gives way."""

from dataclasses import replace
from datetime import UTC, datetime, time, timedelta
from decimal import Decimal
from itertools import pairwise

import pytest

from tests.planning.day.day_questions import (
    CHICAGO,
    PUNCTUAL,
    TUESDAY,
    make_hours,
    make_leg,
    make_napper,
    make_question,
)
from tests.planning.day.day_walk import walk
from tripplan.documents.calendars.calendars import Busy
from tripplan.documents.family.habits import Habits
from tripplan.documents.family.worth import Worth
from tripplan.language.sentences import fact
from tripplan.planning.day import (
    DayInProgress,
    DayQuestion,
    beside_the_best,
    helps_most,
    plan_day,
    trade_offs,
)
from tripplan.values.money import Money

HOME_NAP = make_napper("13:00", 120, slack_minutes=0, in_car=False)
"""A child that sleeps only at home, from one to three."""


def test_nap_against_stay_is_told_from_most_nap_to_longest_stay() -> None:
    """Each step along the trade-offs has less nap and a longer stay, and there are three to five of them."""
    points = trade_offs(make_question(nappers=(HOME_NAP,), comfortable_minutes=300)).points
    assert 3 <= len(points) <= 5
    for more_nap, longer_stay in pairwise(points):
        assert more_nap.kept_minutes > longer_stay.kept_minutes
        assert more_nap.stay_minutes < longer_stay.stay_minutes


def test_trade_offs_that_a_parent_would_call_one_are_told_once() -> None:
    """Of those with five minutes more nap each, a quarter of an hour apart are left, and both ends."""
    points = trade_offs(make_question(nappers=(HOME_NAP,), comfortable_minutes=200)).points
    kept = [point.kept_minutes for point in points]
    assert len(kept) >= 3
    assert all(more - less >= 15 for more, less in pairwise(kept[:-1]))
    assert kept[-2] > kept[-1]


def test_the_best_plan_stands_among_what_it_could_be_traded_for() -> None:
    """Where it is no trade-off itself it is put where its nap belongs; where it is one, nothing changes."""
    question = make_question(nappers=(HOME_NAP,), comfortable_minutes=300)
    found = trade_offs(question)
    assert beside_the_best(question, found) == found.points
    others = tuple(point for point in found.points if point.plan != found.best)
    (best,) = (point for point in found.points if point.plan == found.best)
    assert beside_the_best(question, replace(found, points=others)) == found.points
    assert best.against_best == fact("plan-is-best")


def test_without_naps_nothing_has_to_be_traded() -> None:
    """With nobody napping the comfortable stay is the only point, and it is the best plan."""
    found = trade_offs(make_question())
    assert [(point.kept_minutes, point.stay_minutes) for point in found.points] == [(0, 120)]
    assert found.points[0].plan == found.best
    assert found.points[0].against_best == fact("plan-is-best")


def test_a_trade_off_says_what_one_gains_and_loses() -> None:
    """By hand: 30 minutes of nap at 40.00 an hour weigh 20.00, 30 minutes there at 10.00 bring back 5.00."""
    question = make_question(
        nappers=(HOME_NAP,),
        comfortable_minutes=120,
        hours=make_hours(("10:00", "13:30")),
        worth=Worth(lost_nap_hour=Decimal(40)),
    )
    points = trade_offs(question).points
    assert points[0].against_best == fact("plan-is-best")
    # Leaving at 11:30 the child is in bed as the nap begins; leaving at noon makes two hours there.
    half = timedelta(minutes=30)
    assert points[-1].against_best == fact(
        "plan-weighs-more",
        changes=(
            fact("plan-difference-nap", by=half, more=False),
            fact("plan-difference-stay", by=half, more=True),
        ),
        by=Money(Decimal("15.00"), "USD"),
    )


@pytest.mark.parametrize(
    "question",
    [
        make_question(),
        make_question(nappers=(HOME_NAP,), hours=make_hours(("10:00", "12:00"))),
        make_question(hours=make_hours(entry_times=("11:00",)), habits=Habits(home_by=time(13, 30))),
    ],
)
def test_the_parts_of_felt_cost_add_up_to_it(question: DayQuestion) -> None:
    """Lost nap, driving, waiting and stay cut short are all there is to a plan's generalized cost."""
    best = plan_day(question).best
    assert best is not None
    parts = best.parts
    assert sum((part.felt for part in parts), Money.zero("USD")).rounded() == best.felt
    assert all(part.felt.amount > 0 for part in parts)


def test_why_the_best_is_best_names_every_nuisance_with_its_weight() -> None:
    """By hand: two hours of driving at 6.00 are 12.00, half an hour missed at 10.00 is 5.00."""
    found = trade_offs(
        make_question(hours=make_hours(("10:00", "11:30")), habits=Habits(lunch_minutes=0, **PUNCTUAL))
    )
    driving = fact("plan-minutes-of", what=fact("plan-driving"), minutes=timedelta(hours=2))
    short = fact("plan-minutes-of", what=fact("plan-short-stay"), minutes=timedelta(minutes=30))
    assert found.why == fact(
        "plan-best-weighs-least",
        weighs=Money(Decimal("17.00"), "USD"),
        parts=(
            fact("plan-part", what=driving, felt=Money(Decimal(12), "USD")),
            fact("plan-part", what=short, felt=Money(Decimal(5), "USD")),
        ),
    )


def test_the_limit_that_helps_most_is_the_one_that_binds() -> None:
    """By hand: open from 10, home by 12:45 leaves 90 minutes; 15 more at 10.00 an hour save 2.50."""
    question = make_question(habits=Habits(lunch_minutes=0, home_by=time(12, 45)))
    helps = trade_offs(question).helps
    assert helps is not None
    assert helps.saves == Money(Decimal("2.50"), "USD")
    change = fact("plan-change-home", then=time(13), now=time(12, 45))
    assert helps.brings == fact("plan-change-helps", change=change, saves=helps.saves)


def test_none_helps_where_no_limit_binds() -> None:
    """A day with a comfortable stay and no naps cannot be bettered by any limit."""
    found = trade_offs(make_question())
    assert found.helps is None
    assert found.what_helps == fact("plan-nothing-helps")


def test_what_helps_agrees_with_walking_the_loosened_day() -> None:
    """The saving is that of a walk through the day with a quarter of an hour more slack for the nap."""
    question = make_question(
        nappers=(make_napper("12:30", 120, slack_minutes=0),),
        hours=make_hours(("10:00", "12:30")),
        worth=Worth(lost_nap_hour=Decimal(60)),
        grid_minutes=15,
    )
    freer = make_question(
        nappers=(make_napper("12:30", 120, slack_minutes=15),),
        hours=make_hours(("10:00", "12:30")),
        worth=Worth(lost_nap_hour=Decimal(60)),
        grid_minutes=15,
    )
    least, then = (min(plan.sixtieths for plan in walk(day)) / 60 for day in (question, freer))
    helps = helps_most(question, plan_day(question).best)
    assert helps is not None
    assert helps.change == fact("plan-change-nap", name="Di", minutes=15)
    assert helps.saves is not None
    assert helps.saves.amount == least - then


def test_last_entry_that_gives_way_can_make_a_day_possible() -> None:
    """Too late for the till by five minutes: only a later last entry lets anybody in."""
    question = make_question(
        hours=make_hours(("10:00", "17:00"), last_entry="11:00"),
        habits=Habits(earliest_departure=time(9, 50)),
    )
    found = trade_offs(question)
    assert (found.best, found.points, found.why) == (None, (), None)
    assert found.helps is not None
    assert found.what_helps.code == "plan-change-makes-possible"


def test_a_day_that_no_small_change_saves_says_so() -> None:
    """Busy all day: nothing helps."""
    busy = Busy(start=datetime(2026, 12, 1, tzinfo=UTC), end=datetime(2026, 12, 3, tzinfo=UTC))
    assert trade_offs(make_question(busy=(busy,))).helps is None


def test_a_day_that_has_begun_keeps_its_departure() -> None:
    """Left at 9:07, off the grid: the drive of 75 minutes ends at 10:22 and two hours later they leave."""
    left = datetime.combine(TUESDAY, time(9, 7), CHICAGO)
    best = plan_day(make_question(begun=DayInProgress(left, left))).best
    assert best is not None
    assert (best.leave_home, best.enter) == (left, left + timedelta(minutes=75))
    assert f"{best.leave_place:%H:%M}" == "12:25"


def test_nobody_leaves_before_now() -> None:
    """At half past three the earliest return on the grid is half past three."""
    left = datetime.combine(TUESDAY, time(9), CHICAGO)
    best = plan_day(
        make_question(begun=DayInProgress(left, left.replace(hour=15, minute=28)), way_home=make_leg(30))
    ).best
    assert best is not None
    assert f"{best.leave_place:%H:%M}" == "15:30"


def test_a_shifted_nap_is_over_in_good_time_before_bed() -> None:
    """By hand: in bed at 14:45, a nap with two hours of slack lasts till 16:15 or, if that is said, 15:30."""
    napper = make_napper("13:00", 90, slack_minutes=120, in_car=False)
    question = make_question(
        nappers=(napper,), hours=make_hours(entry_times=("11:30",)), shortest_minutes=105
    )
    assert [nap.kept_minutes for nap in trade_offs(question).points[0].plan.naps] == [90]
    held = replace(question, nappers=(replace(napper, latest_end=time(15, 30)),))
    best = plan_day(held).best
    assert best is not None
    assert best.home.time() == time(14, 30)
    assert [nap.kept_minutes for nap in best.naps] == [45]
    helps = helps_most(held, best)
    assert helps is not None
    assert (helps.change, helps.saves) == (
        fact("plan-change-nap-end", minutes=15),
        Money(Decimal("3.00"), "USD"),
    )


def test_a_nap_that_usually_ends_late_may_end_as_usual() -> None:
    """A usual end of three o'clock is kept although the latest good end would be two."""
    napper = make_napper("13:00", 120, slack_minutes=0, in_car=False)
    question = make_question(
        nappers=(replace(napper, latest_end=time(14)),),
        hours=make_hours(("16:00", "19:00")),
        habits=Habits(home_by=time(21)),
    )
    best = plan_day(question).best
    assert best is not None
    assert [nap.kept_minutes for nap in best.naps] == [120]
