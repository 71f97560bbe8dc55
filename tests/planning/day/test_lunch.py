"""Lunch as families have it: at home, on the way, outside or at the place, and never in a tour or show."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import datetime, time, timedelta
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
from tripplan.documents.family.habits import Habits
from tripplan.documents.family.worth import Worth
from tripplan.planning.day import DayPlan, DayQuestion, LunchPlace, StepKind, plan_choice, plan_day
from tripplan.planning.day.times.hourly_money import HourlyMoney, PriceHours
from tripplan.planning.opening.hours import ShowTimes

LUNCH = Habits(**PUNCTUAL)
"""Lunch at noon, for 35 minutes."""


def at(clock: str) -> datetime:
    """A time of that Tuesday."""
    return datetime.combine(TUESDAY, time.fromisoformat(clock), CHICAGO)


def left_at(question: DayQuestion, leave_home: str, leave_place: str) -> DayPlan:
    """The plan of one departure with one leaving time."""
    plan = plan_choice(question, at(leave_home), at(leave_place))
    assert isinstance(plan, DayPlan)
    return plan


def eats(plan: DayPlan) -> tuple[LunchPlace, str]:
    """Where and when lunch is."""
    assert plan.lunch is not None
    return plan.lunch.place, f"{plan.lunch.start:%H:%M}"


def weighs(plan: DayPlan) -> dict[str, Decimal]:
    """What each nuisance of a plan weighs."""
    return {part.name.code: part.felt.amount for part in plan.parts}


def best_of(question: DayQuestion) -> DayPlan:
    """The best plan of a day that must have one."""
    best = plan_day(question).best
    assert best is not None
    return best


def overlaps(plan: DayPlan, kind: StepKind) -> Iterator[timedelta]:
    """How long lunch meets each step of a kind."""
    assert plan.lunch is not None
    for step in plan.steps:
        if step.kind is kind:
            yield min(step.end, plan.lunch.end) - max(step.start, plan.lunch.start)


@pytest.mark.parametrize(
    ("leave_home", "leave_place", "lunch", "visit"),
    [
        ("08:45", "10:45", (LunchPlace.HOME, "12:00"), 45),
        ("08:45", "13:00", (LunchPlace.THERE, "12:00"), 145),
        ("12:35", "15:30", (LunchPlace.HOME, "12:00"), 100),
        ("12:00", "15:30", (LunchPlace.HOME, "11:25"), 135),
    ],
)
def test_lunch_is_where_it_weighs_the_least(
    leave_home: str, leave_place: str, lunch: tuple[LunchPlace, str], visit: int
) -> None:
    """By hand: 75 minutes of way, let in from ten; lunch at the place is no time at the place."""
    plan = left_at(make_question(habits=LUNCH, shortest_minutes=45), leave_home, leave_place)
    assert eats(plan) == lunch
    assert plan.visit_minutes == visit


def test_a_lunch_earlier_than_usual_weighs_as_one_later_does() -> None:
    """25 minutes early at home are 2.50 at 6.00 an hour, so there is no step where one is free."""
    question = make_question(habits=LUNCH, hours=make_hours(("13:00", "17:00")))
    plan = left_at(question, "12:10", "15:30")
    assert eats(plan) == (LunchPlace.HOME, "11:35")
    assert weighs(plan)["plan-early-lunch"] == Decimal("2.50")
    assert weighs(left_at(question, "12:15", "15:30"))["plan-early-lunch"] == Decimal("2.00")


def test_nobody_eats_long_before_lunch_time() -> None:
    """Whatever else it costs, lunch does not begin more than three quarters of an hour early."""
    free = Worth(hour_early_lunch=Decimal(0), hour_late_lunch=Decimal(60))
    question = make_question(habits=LUNCH, worth=free, hours=make_hours(("10:00", "11:30")))
    plan = left_at(question, "08:45", "11:20")
    assert plan.lunch is not None
    assert plan.lunch.start >= at("11:15")


def test_lunch_is_never_inside_a_timed_entry() -> None:
    """Let in at 11 until 13:00 by a slot: the visit is one piece, and lunch follows it."""
    hours = make_hours(entry_times=("11:00",))
    plan = left_at(make_question(hours=hours, habits=LUNCH), "09:45", "13:00")
    there = [step.kind for step in plan.steps if step.start >= plan.enter and step.end <= plan.leave_place]
    assert there == [StepKind.VISIT, StepKind.LUNCH]
    assert eats(plan) == (LunchPlace.THERE, "12:25")
    assert plan.visit_minutes == 85


def test_who_waits_for_the_door_eats_outside() -> None:
    """There at 12:15 for one o'clock: lunch is in the wait, and all of the visit is left."""
    hours = make_hours(entry_times=("13:00",))
    plan = left_at(make_question(hours=hours, habits=LUNCH), "11:00", "15:00")
    assert eats(plan) == (LunchPlace.OUTSIDE, "12:15")
    assert plan.visit_minutes == 120
    kinds = [step.kind for step in plan.steps if step.end <= plan.enter][-3:]
    assert kinds == [StepKind.UNLOAD, StepKind.LUNCH, StepKind.WAIT]


def test_on_a_long_way_lunch_is_at_the_rest() -> None:
    """Two hours each way with a quarter of an hour's rest after one: 12:00 on the way there, and packed."""
    leg = make_leg(120, rests=((60, 15),))
    question = make_question(way_there=leg, way_home=leg, habits=LUNCH)
    plan = left_at(question, "10:50", "15:30")
    assert eats(plan) == (LunchPlace.CAR, "12:00")
    (step,) = (step for step in plan.steps if step.kind is StepKind.LUNCH)
    assert (step.start, step.end) == (at("12:00"), at("12:15"))
    assert plan.lunch_out
    assert not plan.lunch_there


def test_lunch_is_never_inside_a_show() -> None:
    """Shows from 11:45 to 12:15 and from 12:30 to 13:00 leave 11:10, which is too early, or 13:00."""
    times = (("Sky", "11:45"), ("Mill", "12:30"))
    shows = tuple(ShowTimes(name, (at(clock),), 30, worth_it=True) for name, clock in times)
    question = make_question(hours=replace(make_hours(), shows=shows), habits=LUNCH)
    plan = left_at(question, "08:45", "14:30")
    assert [show.seen is not None for show in plan.shows] == [True, True]
    assert eats(plan) == (LunchPlace.THERE, "13:00")
    assert max(overlaps(plan, StepKind.SHOW)) <= timedelta(0)


def test_where_nothing_may_be_eaten_lunch_is_elsewhere() -> None:
    """No own food and none sold: not inside, but outside after the visit, or at home."""
    question = make_question(habits=LUNCH, eats_there=False)
    plan = left_at(question, "08:45", "12:35")
    assert eats(plan) == (LunchPlace.OUTSIDE, "12:00")
    assert not plan.lunch_there
    visit = next(step for step in plan.steps if step.kind is StepKind.VISIT)
    assert visit.end == at("12:00")


def test_a_packed_lunch_by_the_car_ends_a_visit_where_food_is_only_sold() -> None:
    """By hand: 70.00 more for lunch inside at noon against 3.50 for one 35 minutes late by the car."""
    prices = PriceHours()
    dear, cheap = (HourlyMoney(prices, ((1000, out),)) for out in (8000, 1300))
    question = make_question(habits=LUNCH, own_food=False, money=dear)
    plan = left_at(question, "08:45", "13:10")
    assert eats(plan) == (LunchPlace.OUTSIDE, "12:35")
    assert not plan.lunch_there
    # 3.00 more inside is less than that.
    assert eats(left_at(replace(question, money=cheap), "08:45", "13:10")) == (LunchPlace.THERE, "12:00")
    # Where own food is allowed, it is eaten inside when everybody is hungry.
    own = replace(question, own_food=True, money=None)
    assert eats(left_at(own, "08:45", "13:10")) == (LunchPlace.THERE, "12:00")


def test_the_shortest_visit_is_left_beside_lunch() -> None:
    """An hour at the least of an hour and a half leaves no room for 35 minutes of lunch."""
    question = make_question(habits=LUNCH, shortest_minutes=60)
    assert eats(left_at(question, "10:30", "13:15"))[0] is not LunchPlace.THERE
    assert eats(left_at(question, "10:30", "13:20"))[0] is LunchPlace.THERE


def test_who_sleeps_eats_later() -> None:
    """Asleep in the pushchair from 11:50 a child is not woken by lunch at noon."""
    napper = make_napper("11:50", 60, slack_minutes=0, in_pushchair=True, in_car=False)
    plan = left_at(make_question(habits=LUNCH, nappers=(napper,)), "08:45", "13:30")
    assert eats(plan) == (LunchPlace.THERE, "12:00")
    assert plan.naps[0].kept_minutes == 60


def test_whatever_the_day_no_lunch_breaks_a_visit_into_crumbs() -> None:
    """Every piece of the visit, of a wait and every lunch takes ten minutes at the least."""
    for leave_home, opens in (("08:45", "10:00"), ("10:40", "12:01"), ("09:10", "11:00")):
        question = make_question(habits=LUNCH, hours=make_hours((opens, "17:00")), shortest_minutes=30)
        plan = left_at(question, leave_home, "14:00")
        told = (StepKind.VISIT, StepKind.WAIT, StepKind.LUNCH)
        assert all(step.end - step.start >= timedelta(minutes=10) for step in plan.steps if step.kind in told)


def test_a_home_lunch_and_one_there_meet_without_a_cliff() -> None:
    """Five minutes later home change what a day weighs by no more than these minutes do."""
    question = make_question(habits=LUNCH)
    felt = [
        left_at(question, "08:45", f"{minute // 60:02}:{minute % 60:02}").felt.amount
        for minute in range(660, 780, 5)
    ]
    assert max(abs(later - earlier) for earlier, later in pairwise(felt)) <= Decimal("1.50")
    assert best_of(question).felt.amount == min(felt)
