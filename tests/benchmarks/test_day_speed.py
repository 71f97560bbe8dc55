import timeit
from dataclasses import replace
from datetime import datetime, time

import pytest

from tests.planning.day.day_questions import (
    CHICAGO,
    TUESDAY,
    best_choices,
    make_hours,
    make_leg,
    make_napper,
    make_question,
)
from tests.planning.day.day_walk import walk
from tripplan.documents.family.member import Nap
from tripplan.planning.day import DayQuestion, Napper, plan_day, slack, trade_offs
from tripplan.planning.day.times.minutes import DayMinutes
from tripplan.planning.opening.hours import ShowTimes
from tripplan.values.ranges import Range

TWO_NAPPERS = (
    make_napper("12:45", 120, in_pushchair=True),
    Napper("El", (Nap(start=time(9, 30), minutes=60), Nap(start=time(13), minutes=90))),
)
COARSE = 60


def test_the_search_beats_a_plain_walk_at_the_same_optimum(capsys: pytest.CaptureFixture[str]) -> None:
    """One day with two napping children and timed entry: the best plan of the walk, many times faster."""
    leg = make_leg(75, rests=((60, 15),))
    day = make_question(
        way_there=leg,
        way_home=leg,
        nappers=TWO_NAPPERS,
        hours=make_hours(entry_times=("10:00", "11:30", "13:00", "14:30")),
        grid_minutes=COARSE,
    )
    fine = make_question(way_there=leg, way_home=leg, nappers=TWO_NAPPERS)

    walked = walk(day)
    best = min(walked, key=lambda plan: (plan.sixtieths, plan.away, plan.leave_home, plan.leave_place))
    found = plan_day(day).best
    assert found is not None
    assert (found.leave_home, found.leave_place) == (best.leave_home, best.leave_place)

    walk_seconds = timeit.timeit(lambda: walk(day), number=1)
    coarse_seconds = min(timeit.repeat(lambda: plan_day(day), number=5, repeat=5)) / 5
    fine_seconds = min(timeit.repeat(lambda: plan_day(fine), number=5, repeat=5)) / 5
    with capsys.disabled():
        print(  # noqa: T201 - the figure is the point of the test
            f"\none day, grid {COARSE} min: search {walk_seconds / coarse_seconds:.0f} times faster than a "
            f"minute-by-minute walk ({len(walked)} plans); grid 5 min: {fine_seconds * 1000:.2f} ms"
        )


def screen_day(grid_minutes: int = 5) -> DayQuestion:
    """Two napping children, timed entry, a show, usual delays and a drive that may take longer."""
    leg = make_leg(75, rests=((60, 15),))
    leg = replace(leg, drive=replace(leg.drive, minutes=Range(68, 75, 95)))
    starts = tuple(datetime.combine(TUESDAY, time(hour), CHICAGO) for hour in (11, 15))
    hours = make_hours(entry_times=("10:00", "11:30", "13:00", "14:30"))
    return make_question(
        way_there=leg,
        way_home=leg,
        nappers=TWO_NAPPERS,
        hours=replace(hours, shows=(ShowTimes("Feeding", starts, 30, True),)),
        first_bed=time(19),
        patience_minutes=60,
        grid_minutes=grid_minutes,
    )


def test_a_day_with_all_its_second_thoughts_is_quick_enough_for_a_slider(
    capsys: pytest.CaptureFixture[str],
) -> None:
    """Two napping children, timed entry, a show, delays: what a day's plan, chances and trade-offs take."""
    day, coarse = screen_day(), screen_day(COARSE)
    best, (quick,) = plan_day(day).best, best_choices([day])
    assert best is not None
    assert quick is not None
    minutes = DayMinutes(day.day, day.home_zone)
    assert best.leave_home == minutes.moment(quick.depart, day.home_zone)
    assert best.leave_place == minutes.moment(quick.leave, day.home_zone)
    chances = slack(day, best)
    assert 0 < chances.make_entry <= 1
    assert trade_offs(day).best == best
    walked = walk(coarse)
    found = plan_day(coarse).best
    assert found is not None
    assert found.felt.amount == round(min(plan.sixtieths for plan in walked) / 60, 2)

    walk_ms = timeit.timeit(lambda: walk(coarse), number=1) * 1000
    coarse_ms, choice, search, likely, traded = (
        min(timeit.repeat(run, number=5, repeat=5)) / 5 * 1000
        for run in (
            lambda: plan_day(coarse),
            lambda: best_choices([day]),
            lambda: plan_day(day),
            lambda: slack(day, best),
            lambda: trade_offs(day),
        )
    )
    with capsys.disabled():
        print(  # noqa: T201 - the figure is the point of the test
            f"\none day, two children napping, timed entry, a show, delays: best choice {choice:.2f} ms, "
            f"leave windows {search:.2f} ms, chances {likely:.2f} ms, "
            f"trade-offs and what helps {traded:.2f} ms "
            f"({traded / search:.1f} searches); grid {COARSE} min {walk_ms / coarse_ms:.0f} times faster "
            f"than a minute-by-minute walk ({len(walked)} plans)"
        )
