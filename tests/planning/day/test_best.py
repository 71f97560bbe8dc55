"""Many days weighed in one array against each of them searched alone."""

from dataclasses import replace
from decimal import Decimal

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.planning.day.day_questions import best_choices, make_hours, make_napper, make_question
from tests.planning.day.test_day_exhaustive import questions
from tripplan.documents.calendars.calendars import Busy
from tripplan.planning.day import DayQuestion, plan_day
from tripplan.planning.day.best import MOST_AT_ONCE, Asked, BestChoice, best_between
from tripplan.planning.day.times.hourly_weather import HourlyWeather
from tripplan.planning.day.times.limits import Engagements
from tripplan.planning.day.times.minutes import DayMinutes
from tripplan.planning.day.weighing.nuisances import UNITS, WEATHER_PART
from tripplan.values.money import Money


@st.composite
def days_of_one_party(draw: st.DrawFn) -> list[DayQuestion]:
    """Days that differ in all that a place and a date can make different, on grids down to five minutes."""
    party, *others = draw(st.lists(questions(), min_size=2, max_size=8))
    pushchairs = st.sampled_from([party.pushchairs, party.pushchairs, not party.pushchairs])
    grids = st.sampled_from([5, 15, 60])
    return [
        replace(
            other,
            nappers=party.nappers,
            habits=party.habits,
            worth=party.worth,
            first_bed=party.first_bed,
            pushchairs=draw(pushchairs),
            grid_minutes=draw(grids),
            begun=draw(st.sampled_from([None, None, other.begun])),
            hours=replace(other.hours, shows=draw(st.sampled_from([(), (), other.hours.shows]))),
        )
        for other in (party, *others)
    ]


@settings(max_examples=25)
@given(days_of_one_party())
def test_days_weighed_together_have_the_plans_that_each_has_alone(days: list[DayQuestion]) -> None:
    """The best choice of every day is that of `plan_day`, and none where that finds none."""
    assert [as_planned(day, best) for day, best in zip(days, best_choices(days), strict=True)] == [
        planned(day) for day in days
    ]


@settings(max_examples=25)
@given(days_of_one_party(), st.data())
def test_a_day_weighed_once_has_the_plan_of_each_of_its_engagements(
    days: list[DayQuestion], data: st.DataObject
) -> None:
    """Some engagements, others and none beside those of the question: as if each had been asked for alone."""
    times = st.tuples(st.integers(300, 1300), st.integers(0, 240)).map(lambda span: (span[0], sum(span)))
    engaged = [
        data.draw(st.lists(st.lists(times, max_size=3).map(tuple), min_size=1, max_size=4)) for _ in days
    ]
    found = best_between(days, [[Asked(these) for these in of_day] for of_day in engaged])
    assert [[best.choices[0] for best in of_day] for of_day in found] == [
        best_choices([with_engagements(day, these) for these in of_day])
        for day, of_day in zip(days, engaged, strict=True)
    ]


@settings(max_examples=40)
@given(days_of_one_party(), st.data())
def test_a_day_weighed_once_has_the_plan_of_each_weather(
    days: list[DayQuestion], data: st.DataObject
) -> None:
    """Some kinds of weather, with hours at which nobody may be outdoors or without, and an engagement.

    The times are those of the plan that the search finds for the day with that weather alone.
    """
    busy = data.draw(st.sampled_from([(), ((700, 760),)]))
    weather = data.draw(weathers())
    found = best_between(days, [[Asked(busy, weather)]] * len(days))
    for day, (best,) in zip(days, found, strict=True):
        engaged = with_engagements(day, busy)
        for kind, choice in enumerate(best.choices):
            plan = plan_day(replace(engaged, weather=weather.of(np.array([kind])))).best
            assert (choice is None) == (plan is None)
            if choice is not None and plan is not None:
                minutes = DayMinutes(day.day, day.home_zone)
                assert minutes.moment(choice.depart, day.home_zone) == plan.leave_home
                assert minutes.moment(choice.leave, day.home_zone) == plan.leave_place
                felt = (
                    choice.felt
                    + int(weather.weighs(kind, *np.array([choice.enter, choice.leave]))) * WEATHER_PART
                )
                assert Money(Decimal(felt) / UNITS, day.currency).rounded() == plan.felt


@st.composite
def weathers(draw: st.DrawFn) -> HourlyWeather:
    """From two to four kinds; an hour weighs up to 30 dollars, and in some hours nobody may be outdoors."""
    kinds = draw(st.integers(2, 4))
    random = np.random.default_rng(draw(st.integers(0, 10**6)))
    weight = random.uniform(0, draw(st.sampled_from([0.01, 0.1, 0.5])), (kinds, 48))
    barred = random.random((kinds, 48)) < draw(st.sampled_from([0, 0.05, 0.3]))
    return HourlyWeather.of_half_hours(weight, barred)


def with_engagements(question: DayQuestion, engagements: Engagements) -> DayQuestion:
    """The same question with more that the day may not touch."""
    minutes, zone = DayMinutes(question.day, question.home_zone), question.home_zone
    more = (
        Busy(start=minutes.moment(start, zone), end=minutes.moment(end, zone)) for start, end in engagements
    )
    return replace(question, busy=(*question.busy, *more))


def test_more_days_than_fit_one_array_come_back_in_their_order() -> None:
    """Every third day is impossible, and each has a length of opening of its own."""
    days = [
        make_question(
            nappers=(make_napper(in_pushchair=True),),
            shortest_minutes=60 if number % 3 else 600,
            hours=make_hours(("10:00", f"{16 - number % 4}:{10 + number % 50}")),
        )
        for number in range(MOST_AT_ONCE // 1000)
    ]
    found = best_choices(days)
    assert [best is None for best in found] == [number % 3 == 0 for number in range(len(days))]
    assert [as_planned(day, best) for day, best in zip(days, found, strict=True)] == [
        planned(day) for day in days
    ]


Figures = tuple[object, ...]


def as_planned(question: DayQuestion, best: BestChoice | None) -> Figures | None:
    """Times, generalized cost, naps and lunch of a best choice as a plan tells them."""
    if best is None:
        return None
    minutes = DayMinutes(question.day, question.home_zone)
    home, there = question.home_zone, question.place_zone
    times = ((best.depart, home), (best.enter, there), (best.leave, there), (best.home, home))
    felt = Money(Decimal(best.felt) / UNITS, question.currency).rounded()
    return (
        *(minutes.moment(minute, zone) for minute, zone in times),
        felt,
        best.nap_kept,
        best.nap_usual - best.nap_kept,
        best.lunch_there,
    )


def planned(question: DayQuestion) -> Figures | None:
    """The same of the plan that the search finds for the day alone."""
    plan = plan_day(question).best
    if plan is None:
        return None
    return (
        plan.leave_home,
        plan.enter,
        plan.leave_place,
        plan.home,
        plan.felt,
        sum(nap.kept_minutes for nap in plan.naps),
        sum(nap.lost_minutes for nap in plan.naps),
        plan.lunch_there,
    )
