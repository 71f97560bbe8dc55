"""One choice that a parent names, against the search and against a plain walk."""

from dataclasses import replace
from datetime import UTC, datetime, time, timedelta

import pytest
from hypothesis import HealthCheck, given, settings

from tests.planning.day.day_questions import (
    CHICAGO,
    TUESDAY,
    make_hours,
    make_leg,
    make_napper,
    make_question,
)
from tests.planning.day.day_walk import walk
from tests.planning.day.test_day_exhaustive import NO_SHRINKING, questions, round_to_cents
from tripplan.documents.calendars.calendars import Busy
from tripplan.documents.family.habits import Habits
from tripplan.errors import PlanError
from tripplan.language.sentences import Fact, fact
from tripplan.planning.day import DayPlan, DayQuestion, ViolatedLimit, plan_choice, plan_day, times_to_try
from tripplan.planning.opening.hours import DayHours, Openness
from tripplan.values.weekday import Weekday


def at(clock: str) -> datetime:
    """A time of that Tuesday."""
    return datetime.combine(TUESDAY, time.fromisoformat(clock), CHICAGO)


def span(start: str, end: str) -> Fact:
    """From one time to another."""
    return fact("plan-span", start=at(start), end=at(end))


def crossed(question: DayQuestion, leave_home: str, leave_place: str) -> tuple[Fact, ...]:
    """Which limits a choice crosses."""
    found = plan_choice(question, at(leave_home), at(leave_place))
    assert isinstance(found, ViolatedLimit)
    return found.limits


@settings(max_examples=10, phases=NO_SHRINKING, suppress_health_check=[HealthCheck.too_slow])
@given(questions())
def test_a_choice_can_be_just_when_the_walk_knows_it_and_weighs_as_much(question: DayQuestion) -> None:
    """Every departure with every leaving time of the day: possible, weight, nap and stay as walked."""
    question = replace(question, begun=None)
    walked = {(plan.leave_home, plan.leave_place): plan for plan in walk(question)}
    if not walked:
        return
    tried = times_to_try(question)
    # In UTC, because at an hour that the clock shows twice no other zone's moment is equal (PEP 495).
    departures = {moment.astimezone(UTC) for moment in tried.departures}
    leaving = {moment.astimezone(UTC) for moment in tried.leaving}
    assert {leave for leave, _ in walked} <= departures
    assert {leave for _, leave in walked} <= leaving
    for leave_home in departures:
        for leave_place in leaving:
            found = plan_choice(question, leave_home, leave_place)
            plain = walked.get((leave_home, leave_place))
            if plain is None:
                assert isinstance(found, ViolatedLimit)
                assert found.limits
            else:
                assert isinstance(found, DayPlan)
                assert found.weighs.amount == round_to_cents(plain.sixtieths)
                assert sum(nap.kept_minutes for nap in found.naps) == plain.kept


def test_the_best_choice_is_the_best_plan() -> None:
    """Named by its two times, the plan that the search calls best comes out whole: steps, naps, parts."""
    question = make_question(nappers=(make_napper(in_car=True),))
    best = plan_day(question).best
    assert best is not None
    assert plan_choice(question, best.leave_home, best.leave_place) == best


def test_a_choice_need_not_lie_on_the_grid() -> None:
    """By hand: 8:47 with ten minutes' load-up, an hour's drive and five to unload is 10:02; out by 12:03."""
    plan = plan_choice(make_question(), at("08:47"), at("12:03"))
    assert isinstance(plan, DayPlan)
    assert (plan.enter, plan.home, plan.visit_minutes) == (at("10:02"), at("13:18"), 121)


def test_every_limit_that_is_crossed_is_told_at_once() -> None:
    """Too early, in the way of something, and home too late: three limits."""
    piano = Busy(start=at("16:00"), end=at("17:00"), name="Piano")
    question = make_question(busy=(piano,), habits=Habits(home_by=time(17)))
    assert crossed(question, "06:30", "16:00") == (
        fact("plan-leaves-before", leaves=at("06:30"), earliest=at("07:00")),
        fact("plan-home-after", home=at("17:15"), over=timedelta(minutes=15), latest=at("17:00")),
        fact("plan-taken-by", span=span("16:00", "17:00"), name="Piano"),
    )


def test_what_stands_in_the_way_at_the_place_is_told_by_its_clock() -> None:
    """Closed by then, too late for the last entry or the last slot, too short: each by itself."""
    question = make_question(hours=make_hours(last_entry="15:00"))
    assert crossed(question, "12:00", "17:30") == (
        fact("plan-closed-then", leaves=at("17:30"), spans=(span("10:00", "17:00"),)),
    )
    assert crossed(question, "14:00", "16:40") == (
        fact("plan-after-last-entry", arrives=at("15:15"), last=at("15:00")),
    )
    assert crossed(question, "12:00", "13:45") == (
        fact(
            "plan-stay-too-short", enters=at("13:15"), left=timedelta(minutes=30), shortest=timedelta(hours=1)
        ),
    )
    assert crossed(question, "12:00", "13:10") == (
        fact("plan-stay-too-short", enters=at("13:15"), left=timedelta(0), shortest=timedelta(hours=1)),
    )
    timed = make_question(hours=make_hours(entry_times=("10:00", "11:00")))
    assert crossed(timed, "10:00", "13:00") == (
        fact("plan-after-last-timed-entry", arrives=at("11:15"), last=at("11:00")),
    )


def test_times_to_try_reach_an_hour_beyond_what_the_limits_allow() -> None:
    """By hand: out from 7:00, home by 18:30 with 75 minutes of way, an hour inside at the least."""
    tried = times_to_try(make_question(way_there=make_leg(), way_home=make_leg()))
    # The last departure that leaves an hour before closing at 17:00 is 14:45.
    assert (tried.departures[0], tried.departures[-1]) == (at("06:00"), at("15:45"))
    assert (tried.leaving[0], tried.leaving[-1]) == (at("10:00"), at("18:00"))
    assert tried.departures[1] - tried.departures[0] == timedelta(minutes=5)


def test_on_an_impossible_day_times_are_tried_around_the_hours_of_the_place() -> None:
    """By hand: with 75 minutes of way, open from 10:00 to 17:00, home by noon is no day at all.

    There at opening is 8:45 from home; out after an hour is 11:00, and 12:15 at home. Everything from an hour
    before the earliest departure to an hour after the last that is there before closing may be tried.
    """
    question = make_question(habits=Habits(home_by=time(12)))
    assert plan_day(question).best is None
    tried = times_to_try(question)
    assert (tried.departures[0], tried.departures[-1]) == (at("06:00"), at("16:45"))
    assert (tried.leaving[0], tried.leaving[-1]) == (at("09:00"), at("18:00"))
    assert (tried.leave_home, tried.leave_place) == (at("08:45"), at("11:00"))
    assert crossed(question, "08:45", "11:00") == (
        fact("plan-home-after", home=at("12:15"), over=timedelta(minutes=15), latest=at("12:00")),
    )


@pytest.mark.parametrize(
    "changes",
    [
        {"habits": Habits(home_by=time(7, 30))},
        {"habits": Habits(earliest_departure=time(18))},
        {"shortest_minutes": 600},
        {"way_there": make_leg(900)},
        {"busy": (Busy(start=at("06:00"), end=at("20:00"), name=""),)},
        {"hours": make_hours(("10:00", "11:00"), ("15:00", "15:30")), "grid_minutes": 7},
    ],
)
def test_whatever_makes_a_day_impossible_each_of_its_times_says_why(changes: dict[str, object]) -> None:
    """What there is to begin with is among what may be tried, and every corner of it crosses some limit."""
    question = make_question(**{"shortest_minutes": 90, **changes})
    assert plan_day(question).best is None
    tried = times_to_try(question)
    assert tried.leave_home in tried.departures
    assert tried.leave_place in tried.leaving
    for leave_home in (tried.departures[0], tried.leave_home, tried.departures[-1]):
        for leave_place in (tried.leaving[0], tried.leave_place, tried.leaving[-1]):
            found = plan_choice(question, leave_home, leave_place)
            assert isinstance(found, ViolatedLimit)
            assert found.limits


def test_a_closed_place_has_no_times_to_try() -> None:
    """Nothing can be asked about a day on which nobody is let in."""
    closed = DayHours(Openness.CLOSED, (), (), (), fact("hours-closed-weekday", day=Weekday.TUESDAY))
    for ask in (times_to_try, lambda question: plan_choice(question, at("09:00"), at("12:00"))):
        with pytest.raises(PlanError):
            ask(make_question(hours=closed))
