"""The search against a plain walk through every minute of every plan."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import UTC, date, datetime, time, timedelta
from decimal import Decimal
from itertools import groupby
from math import prod
from zoneinfo import ZoneInfo

import numpy as np
from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import strategies as st

from tests.planning.day.day_questions import CHICAGO, make_hours, make_leg, make_question
from tests.planning.day.day_walk import Walked, walk, whereabouts
from tripplan.documents.calendars.calendars import Busy
from tripplan.documents.family.habits import Habits, RushHours
from tripplan.documents.family.member import Nap
from tripplan.documents.family.worth import Worth
from tripplan.language.sentences import fact
from tripplan.planning.day import DayInProgress, DayPlan, DayQuestion, Napper, plan_day, trade_offs
from tripplan.planning.day.times.hourly_money import EVER, HourlyMoney, PriceHours
from tripplan.planning.day.times.minutes import DayMinutes
from tripplan.planning.day.times.timed_legs import timed_leg
from tripplan.planning.opening.hours import ShowTimes
from tripplan.planning.travel.drive import Journey, Leg, Stop, TimedLeg
from tripplan.values.ranges import Range

NO_SHRINKING = (Phase.explicit, Phase.reuse, Phase.generate)
"""Walking is slow, so a failing day is shown as it was found."""


naps = st.builds(
    Nap,
    start=st.integers(8, 15).map(time),
    minutes=st.sampled_from([15, 45, 60, 100]),
    slack_minutes=st.sampled_from([0, 7, 20]),
    in_car=st.booleans(),
    in_pushchair=st.booleans(),
    falls_asleep_minutes=st.sampled_from([0, 10, 25]),
    shortest_minutes=st.sampled_from([0, 20, 40]),
    stays_asleep_when_moved=st.booleans(),
)


def unsure(leg: Leg, share: float) -> Leg:
    """The same leg with a driving time that may be off, rather upwards than downwards."""
    likely = leg.drive.minutes.likely
    return replace(
        leg, drive=replace(leg.drive, minutes=Range(likely * (1 - share / 2), likely, likely * (1 + share)))
    )


certain_legs = st.builds(
    make_leg,
    st.integers(41, 130),
    load_up=st.sampled_from([0, 10, 25]),
    unload=st.sampled_from([0, 5]),
    rests=st.sampled_from([(), ((40, 15),), ((20, 5), (40, 10))]),
)
legs = st.builds(unsure, certain_legs, st.sampled_from([0.0, 0.1, 0.4]))
FUEL = fact("drive-stop-for-fuel")
STOPS = [(), (Stop(0, 10, FUEL),), (Stop(40, 25, fact("drive-stop-to-pick-up", name="Gus")),)]
changing_legs = st.builds(
    lambda legs, stops, every: TimedLeg(
        tuple(replace(leg, stops=stops) for leg in legs),
        (np.arange(3 * 24 * 60) // every % len(legs)).astype(np.int16),
    ),
    st.lists(legs, min_size=2, max_size=3),
    st.sampled_from(STOPS),
    st.sampled_from([45, 90, 7 * 60]),
)
rush_hours = st.lists(
    st.builds(
        RushHours,
        days=st.sampled_from([("Tu",), ("Su",), ("Mo", "Tu", "Su")]),
        start=st.integers(6, 11).map(time),
        end=st.integers(12, 19).map(time),
        factor=st.sampled_from([Decimal("1.3"), Decimal("1.19"), Decimal(2)]),
    ),
    max_size=2,
)
show_times = st.tuples(
    st.sampled_from(["Feeding", "Sky", "Mill"]),
    st.lists(st.tuples(st.integers(10, 15), st.sampled_from([0, 20])), min_size=1, max_size=3, unique=True),
    st.sampled_from([15, 45]),
    st.sampled_from([True, True, False]),
)
prices = st.sampled_from([Decimal(0), Decimal("0.35"), Decimal(6), Decimal("10.01"), Decimal(40)])
days = st.sampled_from([date(2026, 12, 1), date(2026, 11, 1), date(2027, 3, 14)])
zones = st.sampled_from([CHICAGO, ZoneInfo("America/Indiana/Indianapolis")])


def begun_on(day: date, left: int, later: int) -> DayInProgress:
    """A day on which the party left home at a minute by the clock, and is so many minutes on."""
    left_home = datetime.combine(day, time(left // 60, left % 60), CHICAGO)
    return DayInProgress(left_home, left_home + timedelta(minutes=later))


@st.composite
def hourly_money(draw: st.DrawFn) -> HourlyMoney:
    """A board whose price goes by the hour of entry, the hour of leaving and the length of stay."""
    begins = (EVER, *sorted(draw(st.sets(st.integers(600, 900), max_size=2))))
    leave_by = tuple(sorted(draw(st.sets(st.integers(700, 900), max_size=1))))
    stays = tuple(sorted(draw(st.sets(st.integers(60, 200), max_size=1))))
    hours = PriceHours(begins, leave_by, stays)
    coins = st.tuples(st.integers(0, 9000), st.integers(0, 9000))
    prices = st.lists(st.none() | coins, min_size=prod(hours.shape), max_size=prod(hours.shape))
    return HourlyMoney(hours, tuple(draw(prices)))


@st.composite
def questions(draw: st.DrawFn) -> DayQuestion:
    """Days with every kind of limit and of drive, on a coarse grid so that walking stays quick."""
    day, zone = draw(days), draw(zones)
    spans = draw(st.sampled_from([(("10:00", "17:00"),), (("09:30", "12:10"), ("13:45", "16:58"))]))
    entries = draw(st.sampled_from([(), ("10:00", "14:00"), ("11:20",)]))
    busy_from = datetime.combine(day, draw(st.integers(6, 18).map(time)), CHICAGO)

    def at(hour: int, past: int = 0) -> datetime:
        return datetime.combine(day, time(hour, past), zone)

    shows = tuple(
        ShowTimes(name, tuple(at(*start) for start in sorted(starts)), minutes, worth_it)
        for name, starts, minutes, worth_it in draw(
            st.lists(show_times, max_size=2, unique_by=lambda s: s[0])
        )
    )
    around = draw(st.sampled_from([(), ((at(9), at(12)),), ((at(10, 30), at(11)), (at(14), at(16)))]))
    delays = draw(st.sampled_from([(0, 0), (5, 20), (0, 30), (10, 10)]))
    busy = Busy(start=busy_from, end=busy_from + timedelta(minutes=45))
    rush = draw(rush_hours)

    def way() -> Journey:
        if draw(st.booleans()):
            return draw(changing_legs)
        usual = draw(legs)

        def leg_of(driving: int | None) -> Leg:
            return usual if driving is None else replace(usual, drive_minutes=driving)

        return timed_leg(leg_of, rush, DayMinutes(day, CHICAGO))

    return make_question(
        day=day,
        way_there=way(),
        way_home=way(),
        hours=replace(
            make_hours(*spans, day=day, zone=zone, entry_times=entries),
            shows=shows,
            group_spans=around,
            quiet_spans=draw(st.sampled_from([(), ((at(12), at(13, 10)),)])),
        ),
        nappers=tuple(
            Napper(name, (nap,), draw(st.sampled_from([None, time(12), time(14, 10)])))
            for name, nap in zip("DE", draw(st.lists(naps, max_size=2)), strict=False)
        ),
        pushchairs=draw(st.booleans()),
        shortest_minutes=draw(st.sampled_from([0, 45, 90])),
        comfortable_minutes=draw(st.sampled_from([0, 100, 200])),
        habits=Habits(
            earliest_departure=draw(st.sampled_from([time(1, 30), time(7), time(9, 10)])),
            home_by=draw(st.sampled_from([time(15), time(18, 20), time(21), time(0, 30)])),
            usual_departure=draw(st.sampled_from([time(8, 30), time(11)])),
            lunch=draw(st.sampled_from([time(11, 30), time(12, 5)])),
            lunch_minutes=draw(st.sampled_from([0, 35])),
            usual_delay_minutes=delays[0],
            late_one_day_in_ten_minutes=delays[1],
        ),
        worth=Worth(**{name: draw(prices) for name in Worth.model_fields}),
        first_bed=draw(st.sampled_from([None, time(17), time(19, 30)])),
        patience_minutes=draw(st.sampled_from([None, 0, 45])),
        last_wakes=draw(st.sampled_from([None, time(6, 30), time(8)])),
        ready_minutes=draw(st.sampled_from([0, 50])),
        most_driving_minutes=draw(st.sampled_from([None, None, 100, 180])),
        children=draw(st.integers(0, 5)),
        eats_there=draw(st.booleans()),
        own_food=draw(st.booleans()),
        busy=draw(st.sampled_from([(), (busy,)])),
        grid_minutes=draw(st.sampled_from([40, 60])),
        money=draw(st.none() | hourly_money()),
        begun=draw(
            st.none() | st.builds(begun_on, st.just(day), st.integers(6 * 60, 12 * 60), st.integers(0, 300))
        ),
    )


@settings(max_examples=40, phases=NO_SHRINKING, suppress_health_check=[HealthCheck.too_slow])
@given(questions())
def test_the_search_says_what_walking_through_every_plan_says(question: DayQuestion) -> None:
    """The best plan, the leave windows and the trade-offs of any day are those of an independent walk."""
    walked = walk(question)
    best_is_that_of(walked, question)
    windows_are_those_of(walked, question)
    trade_offs_are_those_of(walked, question)


def best_is_that_of(walked: Sequence[Walked], question: DayQuestion) -> None:
    """The last departure of those that weigh about the least, with its best return; none if none can be."""
    found = plan_day(question)
    if not walked:
        assert found.best is None
        assert found.collisions
        return
    best = best_of(walked, question)
    assert found.best is not None
    assert left_at(found.best) == (best.leave_home, best.leave_place)
    assert found.best.weighs.amount == round_to_cents(best.sixtieths)
    assert found.best.spent is None or found.best.spent.minor == best.spent
    begins = {show.seen[0] for show in found.best.shows if show.seen is not None}
    midnight = DayMinutes(question.day, question.home_zone).midnight
    assert begins == {midnight + timedelta(minutes=start) for start in best.seen}


def best_of(walked: Sequence[Walked], question: DayQuestion) -> Walked:
    """The latest start, up to a good hour, of those within a quarter of an hour in the car of the least."""
    # A rank counts minutes away beside the cost, so of plans exactly that far apart the longer is out.
    lightest = min((plan.sixtieths, plan.away) for plan in walked)
    last = (lightest[0] + about_the_same(question), lightest[1])
    good_hour = datetime.combine(question.day, question.habits.usual_departure, question.home_zone)
    start = max(plan.leave_home for plan in walked if (plan.sixtieths, plan.away) <= last)
    of_these = (plan for plan in walked if plan.leave_home >= min(start, good_hour.astimezone(UTC)))
    return min(of_these, key=lambda plan: (plan.sixtieths, plan.away, plan.leave_home, plan.leave_place))


def about_the_same(question: DayQuestion) -> Decimal:
    """What plans may lie apart that weigh about the same, in sixtieths of the currency's unit."""
    return 15 * question.worth.hour_in_car


def windows_are_those_of(walked: Sequence[Walked], question: DayQuestion) -> None:
    """With up to five windows, a departure lies in one if and only if its best plan loses little."""
    windows = plan_day(question).windows
    assert bool(windows) == bool(walked)
    if not walked or len(windows) == 5:
        return
    lightest = min(walked, key=lambda plan: (plan.sixtieths, plan.away, plan.leave_home, plan.leave_place))
    nuisances = lightest.sixtieths - Decimal(60 * lightest.spent) / 100
    allowed = lightest.sixtieths + max(Decimal(60), nuisances * Decimal("0.02"), about_the_same(question))
    good = {plan.leave_home for plan in walked if plan.sixtieths <= allowed}
    assert {d for d in {p.leave_home for p in walked} if any(w.first <= d <= w.last for w in windows)} == good


def trade_offs_are_those_of(walked: Sequence[Walked], question: DayQuestion) -> None:
    """Those that no other plan beats, told in full up to five; beyond that, five of them with both ends.

    Each comes with the plan that the walk prefers.
    """
    pairs = {(plan.kept, plan.stay) for plan in walked}
    front = sorted(
        (pair for pair in pairs if not any(o != pair and o[0] >= pair[0] and o[1] >= pair[1] for o in pairs)),
        reverse=True,
    )
    told = trade_offs(question).points
    assert len(told) == min(len(front), 5)
    assert [(p.kept_minutes, p.stay_minutes) for p in told][:: max(1, len(told) - 1)] == (
        front[:: max(1, len(front) - 1)]
    )
    for point in told:
        assert (point.kept_minutes, point.stay_minutes) in front
        first = min(
            (plan for plan in walked if (plan.kept, plan.stay) == (point.kept_minutes, point.stay_minutes)),
            key=lambda plan: (plan.sixtieths, plan.away, plan.leave_home, plan.leave_place),
        )
        assert left_at(point.plan) == (first.leave_home, first.leave_place)


def left_at(plan: DayPlan) -> tuple[datetime, datetime]:
    """Both times in UTC: an hour that clocks show twice equals nothing in another zone (PEP 495)."""
    return plan.leave_home.astimezone(UTC), plan.leave_place.astimezone(UTC)


def round_to_cents(sixtieths: Decimal) -> Decimal:
    """Whole cents, half up, by integers."""
    cents = sixtieths * 100 * 100  # in hundredths of a sixtieth of a cent, exact for prices in cents
    return Decimal((int(cents) + 3000) // 6000) / 100


def test_the_walk_itself_tells_stretches_of_driving_apart() -> None:
    """Self-check of the walk: a rest after 40 of 60 minutes leaves drives of 40 and 20 minutes."""
    minutes = whereabouts(make_leg(60, rests=((40, 15),)), 0, "there")
    runs = [(where, len(list(run))) for where, run in groupby(where for _, where in minutes)]
    assert runs == [
        ("load", 10),
        ("car there 0", 40),
        ("halt 0", 15),
        ("car there 1", 20),
        ("unload there", 5),
    ]
