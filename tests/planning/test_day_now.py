"""Where in its plan a family stands, minute by minute."""

from datetime import UTC, datetime, time, timedelta

from tests.planning.day_questions import CHICAGO, TUESDAY, make_napper, make_question
from tripplan.planning.day import DayPlan, SleepsIn, StepKind, plan_day, plan_now

MINUTE = timedelta(minutes=1)


def day_with_a_nap() -> DayPlan:
    """The best plan of a day with a nap in the car and at home."""
    best = plan_day(make_question(nappers=(make_napper(in_car=True),))).best
    assert best is not None
    return best


def test_at_every_minute_each_step_is_over_on_or_to_come() -> None:
    """Nothing is lost, nothing told twice, and only before leaving and once home again nothing is on."""
    plan = day_with_a_nap()
    moment = plan.leave_home - 30 * MINUTE
    while moment <= plan.home + 30 * MINUTE:
        stands = plan_now(plan, moment)
        on = () if stands.step is None else (stands.step,)
        assert (*stands.done, *on, *stands.coming) == plan.steps
        assert (stands.step is not None) == (plan.leave_home <= moment < plan.home)
        moment += MINUTE


def test_the_minute_at_which_a_step_ends_belongs_to_the_next() -> None:
    """By hand: out at 8:45, ten minutes to load, an hour's drive: at 9:55 the car is being unloaded."""
    best = plan_day(make_question()).best
    assert best is not None
    at = datetime.combine(TUESDAY, time(9, 55), CHICAGO)
    last_minute, next_minute = plan_now(best, at - MINUTE).step, plan_now(best, at).step
    assert last_minute is not None
    assert next_minute is not None
    assert (last_minute.kind, next_minute.kind) == (StepKind.DRIVE, StepKind.UNLOAD)


def test_children_sleep_where_and_as_long_as_the_plan_says() -> None:
    """Asleep by the clock of the plan, whatever zone the moment is told in; nobody before and after."""
    plan = day_with_a_nap()
    ((place, start, end),) = plan.naps[0].slept
    (sleeper,) = plan_now(plan, start.astimezone(UTC)).asleep
    assert (sleeper.member, sleeper.place, sleeper.until) == ("Di", place, end)
    assert place in SleepsIn
    assert plan_now(plan, start - MINUTE).asleep == ()
    assert plan_now(plan, end).asleep == ()
