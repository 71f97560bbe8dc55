"""One departure with one leaving time that the parent names: what it gives, or which limits it crosses."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime, timedelta, tzinfo

import numpy as np

from tripplan.errors import PlanError
from tripplan.language.sentences import Fact, fact
from tripplan.planning.day.times.choices import Choices
from tripplan.planning.day.times.limits import NEVER, Limits
from tripplan.planning.day.times.minutes import DayMinutes, Minutes
from tripplan.planning.day.times.shapes import DayPlan, DayQuestion
from tripplan.planning.day.weighing.weighing import WeighedChoices, plan_at

BEYOND_MINUTES = 60
"""So far beyond what the limits allow a parent may try, to be told which limit it is [min]."""


@dataclass(frozen=True)
class TimesToTry:
    """What a parent may try on a day, on its grid.

    Attributes:
        departures: from home, by the clock there; not empty.
        leaving: from the place, by the clock there; not empty.
        leave_home, leave_place: one of each to begin with where nothing is planned: there when it opens, or
            as soon after as everybody is up; out again after the shortest visit.
    """

    departures: tuple[datetime, ...]
    leaving: tuple[datetime, ...]
    leave_home: datetime
    leave_place: datetime


@dataclass(frozen=True)
class ViolatedLimit:
    """Why a choice cannot be.

    Attributes:
        limits: those that it crosses; at least one.
    """

    limits: tuple[Fact, ...]


def plan_choice(
    question: DayQuestion, leave_home: datetime, leave_place: datetime
) -> DayPlan | ViolatedLimit:
    """What one departure with one leaving time gives, by the same limits and weights as `plan_day`.

    Args:
        question: the day; the place must be open.
        leave_home: when load-up at home begins; to the whole minute before.
        leave_place: when load-up for the way home begins; likewise. Neither need be on the grid.

    Returns:
        The plan, or every limit that the choice crosses.

    Raises:
        PlanError: the place is not open that day.
    """
    if not question.hours.spans:
        raise PlanError(f"the place cannot be visited that day: {question.hours.reason}")
    minutes = DayMinutes(question.day, question.home_zone)
    limits = Limits.of(question, minutes)
    depart = minutes.rounded_down(leave_home)
    choices = Choices.between(limits, depart, minutes.rounded_down(leave_place))
    if depart >= limits.earliest and choices.possible.all():
        return plan_at(WeighedChoices.of(question, choices, minutes), 0, 0)
    return ViolatedLimit(tuple(_crossed(question, choices, minutes)))


def times_to_try(question: DayQuestion) -> TimesToTry:
    """The departures and leaving times of the search, and those up to an hour beyond either end.

    Where nothing can be done, all departures and leaving times around the hours of the place, so that a
    parent sees by which limits her own idea fails.

    Args:
        question: the day; the place must be open.

    Raises:
        PlanError: the place is not open that day.
    """
    minutes, at_place = DayMinutes(question.day, question.home_zone), question.place_zone
    limits = Limits.of(question, minutes)
    choices = Choices.of(limits)
    quickest, grid = limits.there.quickest, question.grid_minutes
    opens, closes = limits.opened[0].opens, limits.opened[-1].closes
    # There at opening, or as soon after it as everybody can be.
    begin = max(limits.earliest, opens - quickest)
    end = min(max(opens, begin + quickest) + limits.shortest, closes)
    if choices.possible.any():
        departures, leaving = choices.depart.ravel(), choices.leave.ravel()
    else:
        departures = np.array([min(limits.earliest, opens - quickest), max(begin, closes - quickest)])
        leaving = np.array([opens, closes])

    def at(number: int, zone: tzinfo) -> datetime:
        return minutes.moment(number * grid, zone)

    def around(tried: Minutes, zone: tzinfo) -> tuple[datetime, ...]:
        beyond = BEYOND_MINUTES // grid
        first, last = int(tried[0]) // grid - beyond, int(tried[-1]) // grid + beyond
        return tuple(at(number, zone) for number in range(max(0, first), last + 1))

    return TimesToTry(
        around(departures, question.home_zone),
        around(leaving, at_place),
        at(begin // grid, question.home_zone),
        at(end // grid, at_place),
    )


def _crossed(question: DayQuestion, choices: Choices, minutes: DayMinutes) -> Iterator[Fact]:
    (limits,), departs, home = choices.limits, choices.depart.item(), choices.home.item()
    leave = choices.leave.item()

    def at_home(minute: int) -> datetime:
        return minutes.moment(minute, question.home_zone)

    if departs < limits.earliest:
        yield fact("plan-leaves-before", leaves=at_home(departs), earliest=at_home(limits.earliest))
    driving = question.way_there.at(departs).drive_minutes + question.way_home.at(leave).drive_minutes
    if driving > limits.most_driving:
        yield fact("plan-drives-more", drives=_minutes(driving), most=_minutes(limits.most_driving))
    yield from _crossed_there(question, choices, minutes)
    if home > limits.home_by:
        over, latest = _minutes(home - limits.home_by), at_home(limits.home_by)
        yield fact("plan-home-after", home=at_home(home), over=over, latest=latest)
    for busy in question.busy:
        start, end = minutes.rounded_down(busy.start), minutes.rounded_up(busy.end)
        if departs < end and start < home:
            span = fact("plan-span", start=at_home(start), end=at_home(end))
            yield (
                fact("plan-taken-by", span=span, name=busy.name)
                if busy.name
                else fact("plan-taken", span=span)
            )


def _crossed_there(question: DayQuestion, choices: Choices, minutes: DayMinutes) -> Iterator[Fact]:
    """What stands in the way at the place, by its own clock."""
    (limits,), leave, arrive = choices.limits, choices.leave.item(), choices.arrive.item()
    enter = choices.enter.item()

    def there(minute: int) -> datetime:
        return minutes.moment(minute, question.place_zone)

    within = [opened for opened in limits.opened if opened.opens < leave <= opened.closes]
    if not within:
        spans = tuple(
            fact("plan-span", start=there(opened.opens), end=there(opened.closes)) for opened in limits.opened
        )
        yield fact("plan-closed-then", leaves=there(leave), spans=spans)
    elif enter == NEVER:
        opened, arrives = within[0], there(arrive)
        if opened.entries is None:
            yield fact("plan-after-last-entry", arrives=arrives, last=there(opened.last_entry))
        elif opened.entries:
            yield fact("plan-after-last-timed-entry", arrives=arrives, last=there(max(opened.entries)))
        else:
            yield fact("plan-nobody-let-in-then")
    elif (visit := leave - enter) < limits.shortest:
        left, shortest = _minutes(max(visit, 0)), _minutes(limits.shortest)
        yield fact("plan-stay-too-short", enters=there(enter), left=left, shortest=shortest)
    elif limits.money is not None and not limits.money.lets_in(enter, leave):
        yield fact("plan-no-offer-between", enters=there(enter), leaves=there(leave))
    elif limits.weather is not None and limits.weather.bars(0, np.array(enter), np.array(leave)):
        yield fact("plan-weather-not-allowed", enters=there(enter), leaves=there(leave))


def _minutes(count: int) -> timedelta:
    return timedelta(minutes=count)
