import timeit
from datetime import time

import pytest

from tests.planning.day_questions import make_hours, make_leg, make_napper, make_question
from tests.planning.day_walk import walk
from tripplan.planning.day import Napper, plan_day, slack, trade_offs
from tripplan.planning.household import Nap

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
    best = min(walked, key=lambda plan: (plan.sixtieths, plan.waited, plan.leave_home, plan.leave_place))
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


def test_a_day_with_all_its_second_thoughts_is_quick_enough_for_a_slider(
    capsys: pytest.CaptureFixture[str],
) -> None:
    """Two napping children, timed entry, delays: what a day's plan, chances and trade-offs take together."""
    leg = make_leg(75, rests=((60, 15),))
    day = make_question(
        way_there=leg,
        way_home=leg,
        nappers=TWO_NAPPERS,
        hours=make_hours(entry_times=("10:00", "11:30", "13:00", "14:30")),
        first_bed=time(19),
    )
    best = plan_day(day).best
    assert best is not None
    chances = slack(day, best)
    assert 0 < chances.make_entry <= 1
    assert trade_offs(day).best == best

    search, likely, traded = (
        min(timeit.repeat(run, number=5, repeat=5)) / 5 * 1000
        for run in (lambda: plan_day(day), lambda: slack(day, best), lambda: trade_offs(day))
    )
    with capsys.disabled():
        print(  # noqa: T201 - the figure is the point of the test
            f"\none day, two children napping, timed entry, delays: search {search:.2f} ms, chances "
            f"{likely:.2f} ms, trade-offs and what helps {traded:.2f} ms ({traded / search:.1f} searches)"
        )
