"""The search: every departure with every leaving time, weighed in the parent's own money."""

from dataclasses import dataclass
from decimal import Decimal
from functools import reduce

import numpy as np

from tripplan.errors import PlanError
from tripplan.planning.day.collisions import collisions
from tripplan.planning.day.limits import Choices, Limits
from tripplan.planning.day.minutes import DayMinutes, Minutes
from tripplan.planning.day.naps import NapWindow, Stretch, lunch_inside, nap_windows, stretches
from tripplan.planning.day.shapes import (
    DayPlan,
    DayQuestion,
    DaySearch,
    LeaveWindow,
    NapOutcome,
    SleepsIn,
)
from tripplan.planning.day.steps import day_steps
from tripplan.planning.hours import Openness
from tripplan.planning.household import Worth
from tripplan.planning.money import Money

SMALL_LOSS = Decimal("1.00")
"""Departures that cost at most this much more than the best count as equally good [household currency]."""
SMALL_LOSS_SHARE = Decimal("0.02")
"""Or at most this share more, where that is the larger amount [-]."""
MOST_WINDOWS = 5
"""More leave windows than this only confuse; the best ones stay [-]."""

_RATE_DECIMALS = 4
_UNITS = 60 * 10**_RATE_DECIMALS
"""Felt cost is counted in this many parts of the currency's main unit, so that a rate per hour with
four decimals weighs a whole number for every minute."""
_LONGEST_WAIT = 2**12
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
class _Weighed:
    """The choices of a day with what each of them weighs.

    Attributes:
        choices: departures and leaving times.
        lunch: when lunch begins and ends.
        windows: every usual nap.
        stretches: for each nap, in the same order, where it could be slept.
        felt: felt cost of every choice in whole units; only meaningful where possible.
        rank: felt cost first, then the wait; the least is the best, impossible ones come last.
    """

    choices: Choices
    windows: tuple[NapWindow, ...]
    lunch: tuple[Minutes, Minutes]
    stretches: tuple[tuple[Stretch, ...], ...]
    felt: Minutes
    rank: Minutes


def plan_day(question: DayQuestion) -> DaySearch:
    """Search every departure and leaving time for the day with the least felt cost.

    Hard limits (opening, last entry, entry times, shortest visit, earliest departure, being home,
    busy times) stay hard. Felt cost is lost nap, time in the car or waiting to be let in (which weighs
    as much), and time short of a comfortable stay, each at the parent's price per hour. The party is
    let in as soon as the place allows in the span of opening in which it leaves. The nap model stands
    in `tripplan.planning.day.naps`.

    Args:
        question: the day; a clock change inside it is allowed for.

    Returns:
        The best plan and the leave windows, or which limits collide.

    Raises:
        PlanError: the place is not open that day.
    """
    if question.hours.openness is not Openness.OPEN or not question.hours.spans:
        raise PlanError(f"the place cannot be visited that day: {question.hours.reason}")
    if question.grid_minutes < 1:
        raise PlanError("the grid is at least one minute wide")
    minutes = DayMinutes(question.day, question.home_zone)
    limits = Limits.of(question, minutes)
    choices = Choices(limits)
    if not choices.possible.any():
        return DaySearch(None, (), collisions(question, limits, minutes))

    weighed = _weigh(question, choices, minutes)
    best_rank = weighed.rank.min(axis=1)
    best_felt = best_rank // _LONGEST_WAIT
    best_row = int(best_rank.argmin())
    loss = max(SMALL_LOSS * _UNITS, SMALL_LOSS_SHARE * int(best_felt[best_row]))
    good = choices.possible.any(axis=1) & (best_felt <= int(best_felt[best_row]) + int(loss))

    spans = sorted(
        (min(range(first, last + 1), key=lambda row: int(best_rank[row])), first, last)
        for first, last in _runs(good)
    )
    chosen = sorted(sorted(spans, key=lambda span: int(best_rank[span[0]]))[:MOST_WINDOWS])
    windows = tuple(
        LeaveWindow(
            first=minutes.moment(int(choices.depart[first]), question.home_zone),
            last=minutes.moment(int(choices.depart[last]), question.home_zone),
            best=_plan(question, weighed, minutes, row),
        )
        for row, first, last in chosen
    )
    best = next(window.best for window, (row, _, _) in zip(windows, chosen, strict=True) if row == best_row)
    return DaySearch(best, windows, ())


def _runs(good: np.ndarray[tuple[int, ...], np.dtype[np.bool_]]) -> list[tuple[int, int]]:
    """First and last index of every run of true values."""
    edges = np.flatnonzero(np.diff(np.concatenate(([0], good.astype(np.int8), [0]))))
    return [(int(first), int(after) - 1) for first, after in zip(edges[::2], edges[1::2], strict=True)]


def _weigh(question: DayQuestion, choices: Choices, minutes: DayMinutes) -> _Weighed:
    weights = _Weights.of(question.worth)
    windows = nap_windows(question.nappers, minutes)
    lunch = lunch_inside(choices, question, minutes)
    sleepable = tuple(stretches(window.nap, choices, question, lunch) for window in windows)

    wait = choices.enter - choices.arrive[:, None]
    limits = choices.limits
    out, back = limits.there.drive_minutes(choices.depart), limits.back.drive_minutes(choices.leave)
    felt = (wait + out[:, None] + back) * weights.car
    felt += np.maximum(question.comfortable_minutes - choices.visit, 0) * weights.missed
    for window, places in zip(windows, sleepable, strict=True):
        kept = reduce(np.maximum, (window.kept(place.start, place.end) for place in places))
        felt += (window.nap.minutes - kept) * weights.lost_nap

    rank = np.where(choices.possible, felt * _LONGEST_WAIT + wait, np.iinfo(np.int64).max)
    return _Weighed(choices, windows, lunch, sleepable, felt, rank)


def _plan(question: DayQuestion, weighed: _Weighed, minutes: DayMinutes, row: int) -> DayPlan:
    """The best plan of one departure; the earliest leaving time among equals."""
    choices = weighed.choices
    column = int(weighed.rank[row].argmin())
    depart, enter = int(choices.depart[row]), int(choices.enter[row, column])
    leave, home = int(choices.leave[column]), int(choices.home[column])
    lunch = (int(weighed.lunch[0][row, column]), int(weighed.lunch[1][row, column]))
    place_zone = question.place_zone

    def at_choice(found: Minutes) -> int:
        return int(np.broadcast_to(found, choices.possible.shape)[row, column])

    felt = Money(Decimal(int(weighed.felt[row, column])) / _UNITS, question.currency).rounded()
    return DayPlan(
        leave_home=minutes.moment(depart, question.home_zone),
        enter=minutes.moment(enter, place_zone),
        leave_place=minutes.moment(leave, place_zone),
        home=minutes.moment(home, question.home_zone),
        steps=day_steps(question, minutes, depart=depart, enter=enter, leave=leave, lunch=lunch),
        naps=tuple(
            _outcome(
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


def _outcome(
    question: DayQuestion, minutes: DayMinutes, window: NapWindow, places: list[tuple[SleepsIn, int, int]]
) -> NapOutcome:
    """What becomes of one nap in one plan; the first place among equals."""
    kept, place, start, end = max(
        (
            (int(window.kept(np.array(start), np.array(end))), place, start, end)
            for place, start, end in places
        ),
        key=lambda found: found[0],
    )
    slept = window.asleep(start, end)
    return NapOutcome(
        member=window.member,
        usual_start=minutes.moment(window.usual, question.home_zone),
        usual_minutes=window.nap.minutes,
        kept=((place, kept),) if kept else (),
        asleep=(minutes.moment(slept[0], question.home_zone), minutes.moment(slept[1], question.home_zone))
        if kept
        else None,
    )
