"""With small children: when they are ready, how early is too early, how much driving, and who is awake."""

from dataclasses import replace
from datetime import datetime, time, timedelta
from decimal import Decimal

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
from tripplan.language.sentences import fact
from tripplan.planning.day import DayPlan, DayQuestion, StepKind, ViolatedLimit, plan_choice, plan_day
from tripplan.planning.opening.hours import ShowTimes


def best_of(question: DayQuestion) -> DayPlan:
    """The best plan of a day that must have one."""
    best = plan_day(question).best
    assert best is not None
    return best


def at(clock: str) -> datetime:
    """A time of that Tuesday."""
    return datetime.combine(TUESDAY, time.fromisoformat(clock), CHICAGO)


def weighs(plan: DayPlan) -> dict[str, Decimal]:
    """What each nuisance of a plan weighs."""
    return {part.name.code: part.felt.amount for part in plan.parts}


def test_nobody_leaves_before_everybody_is_up_and_ready() -> None:
    """Up at 6:30 and an hour and a quarter until shoes are on: 7:45, whatever else allows."""
    early = make_question(
        hours=make_hours(("07:00", "10:00")),
        last_wakes=time(6, 30),
        ready_minutes=75,
        habits=Habits(earliest_departure=time(5)),
    )
    assert best_of(early).leave_home == at("07:45")
    refused = plan_choice(early, at("07:40"), at("10:00"))
    assert isinstance(refused, ViolatedLimit)
    assert refused.limits[0] == fact("plan-leaves-before", leaves=at("07:40"), earliest=at("07:45"))


def test_leaving_early_weighs_what_the_parent_says() -> None:
    """An entry at 8:45 an hour and a quarter away means 7:30, an hour before half past eight: 6.00."""
    question = make_question(
        hours=make_hours(("08:00", "17:00"), entry_times=("08:45",)), habits=Habits(**PUNCTUAL)
    )
    plan = best_of(question)
    assert plan.leave_home == at("07:30")
    assert weighs(plan)["plan-early-start"] == Decimal(6)
    free = replace(question, worth=Worth(hour_early_departure=Decimal(0)))
    assert "plan-early-start" not in weighs(best_of(free))


def test_of_plans_about_equally_good_the_latest_start_counts() -> None:
    """Ten minutes less at the place are 1.67 and ten minutes less of the morning 1.00: 0.67 apart, so later.

    By hand: closing at 11:20, a comfortable stay of two hours and 75 minutes of way. From 8:05 the stay is
    complete; from 8:15 it is ten minutes short. A quarter of an hour in the car is 1.50.
    """
    question = make_question(hours=make_hours(("09:00", "11:20")), habits=Habits(**PUNCTUAL))
    assert best_of(question).leave_home > at("08:05")
    lighter = plan_choice(question, at("08:05"), at("11:20"))
    assert isinstance(lighter, DayPlan)
    apart = best_of(question).felt.amount - lighter.felt.amount
    assert Decimal(0) < apart <= Decimal("1.50")
    hurried = replace(question, worth=Worth(hour_in_car=Decimal(0)))
    assert best_of(hurried).leave_home == at("08:05")


def test_later_than_a_good_hour_nobody_gains_by_a_later_start() -> None:
    """Open all day: there as it opens at ten, not in the last hours that weigh as much."""
    assert best_of(make_question(habits=Habits(lunch_minutes=0, **PUNCTUAL))).leave_home == at("08:45")


def test_more_driving_than_children_bear_is_not_possible() -> None:
    """Two hours each way against three in a day: named among the limits, and by how much."""
    far = make_question(way_there=make_leg(120), way_home=make_leg(120), most_driving_minutes=180)
    search = plan_day(far)
    assert search.best is None
    most, four_hours = timedelta(hours=3), timedelta(hours=4)
    limit = fact("plan-limit-driving", most=most)
    assert search.collisions == (fact("plan-drives-too-long", driving=limit, least=four_hours),)
    refused = plan_choice(far, at("08:00"), at("13:00"))
    assert isinstance(refused, ViolatedLimit)
    assert refused.limits == (fact("plan-drives-more", drives=four_hours, most=most),)
    assert plan_day(replace(far, most_driving_minutes=240)).best is not None


def test_driving_collides_together_with_other_limits() -> None:
    """Neither home by one alone nor less driving alone would do: both are named in one sentence."""
    far = make_question(
        way_there=make_leg(120),
        way_home=make_leg(120),
        most_driving_minutes=180,
        habits=Habits(home_by=time(12)),
    )
    home, driving = (
        fact("plan-limit-home", latest=at("12:00")),
        fact("plan-limit-driving", most=timedelta(hours=3)),
    )
    assert plan_day(far).collisions == (fact("plan-limits-together", limits=(home, driving)),)


def show_day(**changes: object) -> DayQuestion:
    """Let in at 10 and out by 13: a show at 11:30, and a child that sleeps in the pushchair from 10:45 on."""
    shows = (ShowTimes("Feeding", (at("11:30"),), 30, worth_it=True),)
    napper = make_napper("10:45", 120, slack_minutes=0, in_pushchair=True, in_car=False)
    values = {
        "hours": replace(make_hours(("10:00", "13:00"), entry_times=("10:00",)), shows=shows),
        "nappers": (napper,),
        "shortest_minutes": 180,
        "comfortable_minutes": 180,
        "habits": Habits(lunch_minutes=0, **PUNCTUAL),
        "children": 2,
        **changes,
    }
    return make_question(**values)


def test_a_child_asleep_does_not_see_the_place() -> None:
    """Of 180 minutes one of two children sleeps 120: on average they see 120, an hour short at 10.00."""
    plan = best_of(show_day())
    assert (plan.visit_minutes, plan.awake_minutes) == (180, 120)
    assert weighs(plan)["plan-short-stay"] == Decimal(10)


def test_a_child_asleep_does_not_see_the_show() -> None:
    """One of two sleeps through it: half a show missed at 10.00, and who sleeps is told."""
    plan = best_of(show_day())
    (show,) = plan.shows
    assert show.seen is not None
    assert show.asleep == ("Di",)
    assert weighs(plan)["plan-missed-show"] == Decimal(5)


@pytest.mark.parametrize(("minutes", "asleep"), [(59, ()), (60, ("Di",))])
def test_half_a_show_is_seen(minutes: int, asleep: tuple[str, ...]) -> None:
    """Asleep from 10:45 until 11:44 a child misses less than half of 11:30 to noon, until 11:45 half."""
    napper = make_napper("10:45", minutes, slack_minutes=0, in_pushchair=True, in_car=False)
    (show,) = best_of(show_day(nappers=(napper,))).shows
    assert show.asleep == asleep


def test_a_piece_of_a_visit_too_short_to_tell_is_no_step() -> None:
    """Five minutes before a show and a wait of five minutes go to their neighbors; nothing is left out."""
    shows = (ShowTimes("Feeding", (at("10:05"),), 30, worth_it=True),)
    question = make_question(
        hours=replace(make_hours(("10:00", "13:00"), entry_times=("10:00",)), shows=shows),
        habits=Habits(lunch_minutes=0, **PUNCTUAL),
        worth=Worth(missed_entry=Decimal(0)),
    )
    plan = plan_choice(question, at("08:40"), at("12:00"))
    assert isinstance(plan, DayPlan)
    there = [(step.kind, f"{step.start:%H:%M}-{step.end:%H:%M}") for step in plan.steps[2:5]]
    assert there == [
        (StepKind.UNLOAD, "09:50-10:00"),
        (StepKind.SHOW, "10:00-10:35"),
        (StepKind.VISIT, "10:35-12:00"),
    ]
    ends = [step.end - step.start for step in plan.steps]
    assert sum(ends, timedelta(0)) == plan.home - plan.leave_home
