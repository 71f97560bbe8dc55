"""Every choice of a day weighed in the parent's own money, and any of them as a plan."""

from dataclasses import dataclass
from decimal import Decimal
from functools import reduce

import numpy as np

from tripplan.planning.day.limits import Choices
from tripplan.planning.day.minutes import DayMinutes, Minutes
from tripplan.planning.day.naps import NapWindow, Stretch, lunch_inside, nap_windows, outcome, stretches
from tripplan.planning.day.shapes import DayPlan, DayQuestion
from tripplan.planning.day.steps import day_steps
from tripplan.planning.household import Worth
from tripplan.planning.money import Money

_RATE_DECIMALS = 4
UNITS = 60 * 10**_RATE_DECIMALS
"""Felt cost is counted in this many parts of the currency's main unit, so that a rate per hour with
four decimals weighs a whole number for every minute."""
LONGEST_WAIT = 2**12
"""More than any wait [min]; felt cost times this plus the wait puts both in one whole number."""


@dataclass(frozen=True)
class _Weights:
    """What a minute of each nuisance weighs, in whole units."""

    lost_nap: int
    car: int
    missed: int

    @classmethod
    def of(cls, worth: Worth) -> "_Weights":
        return cls(
            _unit_rate(worth.lost_nap_hour),
            _unit_rate(worth.hour_in_car),
            _unit_rate(worth.missed_hour_there),
        )


def _unit_rate(per_hour: Decimal) -> int:
    return int(per_hour.scaleb(_RATE_DECIMALS).to_integral_value())


@dataclass(frozen=True, eq=False)
class Weighed:
    """The choices of a day with what each of them weighs.

    Attributes:
        choices: departures and leaving times.
        lunch: when lunch begins and ends.
        windows: every usual nap.
        stretches: for each nap, in the same order, where it could be slept.
        felt: felt cost of every choice in whole units; only meaningful where possible.
        kept: minutes of nap kept by all children together [min].
        rank: felt cost first, then the wait; the least is the best, impossible ones come last.
    """

    choices: Choices
    windows: tuple[NapWindow, ...]
    lunch: tuple[Minutes, Minutes]
    stretches: tuple[tuple[Stretch, ...], ...]
    felt: Minutes
    kept: Minutes
    rank: Minutes


def weigh(question: DayQuestion, choices: Choices, minutes: DayMinutes) -> Weighed:
    """Weigh every choice of a day; the nap model stands in `tripplan.planning.day.naps`."""
    weights = _Weights.of(question.worth)
    windows = nap_windows(question.nappers, minutes)
    lunch = lunch_inside(choices, question, minutes)
    sleepable = tuple(stretches(window.nap, choices, question, lunch) for window in windows)

    wait = choices.enter - choices.arrive[:, None]
    limits = choices.limits
    out, back = limits.there.drive_minutes(choices.depart), limits.back.drive_minutes(choices.leave)
    felt = (wait + out[:, None] + back) * weights.car
    felt += np.maximum(question.comfortable_minutes - choices.visit, 0) * weights.missed
    kept = np.zeros_like(felt)
    for window, places in zip(windows, sleepable, strict=True):
        kept += reduce(np.maximum, (window.kept(place.start, place.end) for place in places))
    felt += (sum(window.nap.minutes for window in windows) - kept) * weights.lost_nap

    rank = np.where(choices.possible, felt * LONGEST_WAIT + wait, np.iinfo(np.int64).max)
    return Weighed(choices, windows, lunch, sleepable, felt, kept, rank)


def plan_at(
    question: DayQuestion, weighed: Weighed, minutes: DayMinutes, row: int, column: int | None = None
) -> DayPlan:
    """One choice as a plan.

    Args:
        question: the day.
        weighed: its choices.
        minutes: how the day is counted.
        row: which departure.
        column: which leaving time; left out, the departure's best, the earliest among equals.
    """
    choices = weighed.choices
    if column is None:
        column = int(weighed.rank[row].argmin())
    depart, enter = int(choices.depart[row]), int(choices.enter[row, column])
    leave, home = int(choices.leave[column]), int(choices.home[column])
    lunch = (int(weighed.lunch[0][row, column]), int(weighed.lunch[1][row, column]))
    place_zone = question.place_zone

    def at_choice(found: Minutes) -> int:
        return int(np.broadcast_to(found, choices.possible.shape)[row, column])

    felt = Money(Decimal(int(weighed.felt[row, column])) / UNITS, question.currency).rounded()
    return DayPlan(
        leave_home=minutes.moment(depart, question.home_zone),
        enter=minutes.moment(enter, place_zone),
        leave_place=minutes.moment(leave, place_zone),
        home=minutes.moment(home, question.home_zone),
        steps=day_steps(question, minutes, depart=depart, enter=enter, leave=leave, lunch=lunch),
        naps=tuple(
            outcome(
                question,
                minutes,
                window,
                [(place.place, at_choice(place.start), at_choice(place.end)) for place in places],
            )
            for window, places in zip(weighed.windows, weighed.stretches, strict=True)
        ),
        visit_minutes=leave - enter,
        car_minutes=question.way_there.at(depart).drive_minutes + question.way_home.at(leave).drive_minutes,
        felt=felt,
    )
