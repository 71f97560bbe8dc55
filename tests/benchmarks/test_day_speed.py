from collections.abc import Callable
from dataclasses import replace
from datetime import datetime, time
from functools import partial

from tests.benchmarks.timing import timed
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


def plain_day(grid_minutes: int = 5) -> DayQuestion:
    """Two napping children and timed entry; made anew, it remembers nothing."""
    leg = make_leg(75, rests=((60, 15),))
    return make_question(
        way_there=leg,
        way_home=leg,
        nappers=TWO_NAPPERS,
        hours=make_hours(entry_times=("10:00", "11:30", "13:00", "14:30")),
        grid_minutes=grid_minutes,
    )


def quickest(day: Callable[[], DayQuestion], work: Callable[[DayQuestion], object]) -> float:
    """The shortest of ten runs, each from nothing for a day made anew [ms]."""
    return min(timed(partial(work, day()))[0] for _ in range(10)) * 1000


def test_the_search_beats_a_plain_walk_at_the_same_optimum(tell: Callable[[str], None]) -> None:
    """One day with two napping children and timed entry: the best plan of the walk, many times faster."""
    walk_seconds, walked = timed(partial(walk, plain_day(COARSE)))
    best = min(walked, key=lambda plan: (plan.sixtieths, plan.away, plan.leave_home, plan.leave_place))
    found = plan_day(plain_day(COARSE)).best
    assert found is not None
    assert (found.leave_home, found.leave_place) == (best.leave_home, best.leave_place)
    coarse = quickest(lambda: plain_day(COARSE), plan_day)
    tell(
        f"one day, grid {COARSE} min: search {walk_seconds * 1000 / coarse:.0f} times faster than a "
        f"minute-by-minute walk ({len(walked)} plans); grid 5 min: {quickest(plain_day, plan_day):.2f} ms"
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
    tell: Callable[[str], None],
) -> None:
    """Two napping children, timed entry, a show, delays: what a day's plan, chances and trade-offs take."""
    day = screen_day()
    best, (quick,) = plan_day(day).best, best_choices([day])
    assert best is not None
    assert quick is not None
    minutes = DayMinutes(day.day, day.home_zone)
    assert best.leave_home == minutes.moment(quick.depart, day.home_zone)
    assert best.leave_place == minutes.moment(quick.leave, day.home_zone)
    assert 0 < slack(day, best).make_entry <= 1
    assert trade_offs(day).best == best
    walk_seconds, walked = timed(partial(walk, screen_day(COARSE)))
    found = plan_day(screen_day(COARSE)).best
    assert found is not None
    assert found.felt.amount == round(min(plan.sixtieths for plan in walked) / 60, 2)
    coarse = quickest(lambda: screen_day(COARSE), plan_day)
    choice = quickest(screen_day, lambda asked: best_choices([asked]))
    search = quickest(screen_day, plan_day)
    likely = quickest(screen_day, lambda asked: slack(asked, best))
    traded = quickest(screen_day, trade_offs)
    tell(
        f"one day, two children napping, timed entry, a show, delays: best choice {choice:.2f} ms, leave "
        f"windows {search:.2f} ms, chances {likely:.2f} ms, trade-offs and what helps {traded:.2f} "
        f"ms ({traded / search:.1f} searches); grid {COARSE} min {walk_seconds * 1000 / coarse:.0f} times "
        f"faster than a minute-by-minute walk ({len(walked)} plans)"
    )
