"""The search against an integer programme of the same day."""

from dataclasses import replace
from datetime import datetime, time, timedelta

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.planning.day.day_programme import least_felt
from tests.planning.day.day_questions import CHICAGO, TUESDAY, make_hours, make_leg, make_question
from tests.planning.day.test_day_exhaustive import NO_SHRINKING, certain_legs, prices, unsure
from tripplan.documents.calendars.calendars import Busy
from tripplan.documents.family.habits import Habits
from tripplan.documents.family.member import Nap
from tripplan.documents.family.worth import Worth
from tripplan.planning.day import DayQuestion, Napper, plan_day
from tripplan.planning.day.times.choices import Choices
from tripplan.planning.day.times.limits import Limits
from tripplan.planning.day.times.minutes import DayMinutes
from tripplan.planning.day.weighing.nuisances import UNITS
from tripplan.planning.day.weighing.weighing import LONGEST_AWAY, WeighedChoices
from tripplan.planning.opening.hours import ShowTimes

naps = st.builds(
    Nap,
    start=st.integers(9, 14).map(time),
    minutes=st.sampled_from([45, 100]),
    slack_minutes=st.sampled_from([0, 20]),
    in_car=st.booleans(),
    falls_asleep_minutes=st.sampled_from([0, 15]),
    shortest_minutes=st.sampled_from([0, 40]),
)
legs = st.builds(unsure, certain_legs, st.sampled_from([0.0, 0.1]))


def at(hour: int, past: int = 0) -> datetime:
    """A time of that Tuesday."""
    return datetime.combine(TUESDAY, time(hour, past), CHICAGO)


@st.composite
def small_days(draw: st.DrawFn) -> DayQuestion:
    """Naps, timed entry, an engagement, delays; a show at fixed times, or lunch inside."""
    lunch = draw(st.sampled_from([0, 35]))
    starts = draw(st.lists(st.integers(10, 15), min_size=1, max_size=2, unique=True).map(sorted))
    shows = (ShowTimes("Feeding", tuple(at(hour, 20) for hour in starts), 30, worth_it=True),)
    delays = draw(st.sampled_from([(0, 0), (5, 20), (10, 10)]))
    entries = draw(st.sampled_from([(), (), ("10:00", "14:00"), ("10:30", "11:20", "13:10")]))
    busy = Busy(start=at(hour := draw(st.integers(6, 18))), end=at(hour) + timedelta(minutes=45))
    return make_question(
        way_there=draw(legs),
        way_home=draw(legs),
        hours=replace(
            make_hours(("09:40", "16:55"), last_entry="16:00", entry_times=entries),
            shows=() if lunch else shows,
        ),
        nappers=tuple(
            Napper(name, (nap,), draw(st.sampled_from([None, time(14, 10)])))
            for name, nap in zip("DE", draw(st.lists(naps, max_size=2)), strict=False)
        ),
        shortest_minutes=draw(st.sampled_from([45, 90])),
        comfortable_minutes=draw(st.sampled_from([100, 200])),
        habits=Habits(
            earliest_departure=draw(st.sampled_from([time(7), time(9, 10)])),
            home_by=draw(st.sampled_from([time(15), time(18, 20)])),
            lunch=draw(st.sampled_from([time(11, 30), time(12, 5)])),
            lunch_minutes=lunch,
            usual_delay_minutes=delays[0],
            late_one_day_in_ten_minutes=delays[1],
        ),
        worth=Worth(**{name: draw(prices) for name in Worth.model_fields}),
        first_bed=draw(st.sampled_from([None, time(17)])),
        patience_minutes=draw(st.sampled_from([None, 45])),
        busy=draw(st.sampled_from([(), (busy,)])),
        eats_there=draw(st.booleans()),
        grid_minutes=draw(st.sampled_from([30, 60])),
    )


@settings(max_examples=40, phases=NO_SHRINKING, suppress_health_check=[HealthCheck.too_slow])
@given(small_days())
def test_the_search_weighs_as_little_as_an_integer_programme(question: DayQuestion) -> None:
    """The least generalized cost of both is the same to the cent; what one cannot do the other cannot.

    In the pushchair nobody sleeps here: the programme would wake a child to see more.
    """
    least, lightest = least_felt(question), lightest_of(question)
    assert (least is None) == (lightest is None)
    if least is not None and lightest is not None:
        assert lightest == pytest.approx(least, abs=0.01)


def lightest_of(question: DayQuestion) -> float | None:
    """The least that any choice of the search weighs; None where none is possible [currency]."""
    minutes = DayMinutes(question.day, question.home_zone)
    choices = Choices.of(Limits.of(question, minutes))
    if not choices.possible.any():
        return None
    rank = int(WeighedChoices.of(question, choices, minutes).rank.min())
    return float(rank // LONGEST_AWAY / UNITS)


@pytest.mark.parametrize("lunch", [0, 35], ids=["a show", "lunch inside"])
def test_a_screens_day_weighs_as_little_as_an_integer_programme(lunch: int) -> None:
    """Two napping children, timed entry, usual delays and default prices, every quarter of an hour tried."""
    leg = unsure(make_leg(75, rests=((60, 15),)), 0.2)
    show = ShowTimes("Feeding", (at(11), at(15)), 30, worth_it=True)
    question = make_question(
        way_there=leg,
        way_home=leg,
        nappers=(
            Napper("Di", (Nap(start=time(12, 45), minutes=120),), time(16, 30)),
            Napper("El", (Nap(start=time(13), minutes=90),), time(16, 30)),
        ),
        hours=replace(
            make_hours(entry_times=("10:00", "11:30", "13:00", "14:30")), shows=() if lunch else (show,)
        ),
        habits=Habits(lunch_minutes=lunch),
        first_bed=time(19),
        patience_minutes=60,
        grid_minutes=15,
    )
    least, lightest, best = least_felt(question), lightest_of(question), plan_day(question).best
    assert least is not None
    assert lightest is not None
    assert best is not None
    assert lightest > 15
    assert lightest == pytest.approx(least, abs=0.01)
    # A quarter of an hour in the car at 6.00 an hour.
    assert 0 <= float(best.felt.amount) - lightest <= 1.5 + 0.01
