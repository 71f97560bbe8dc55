"""Days with slack: how likely a plan holds when the family gets off late and the roads are slow."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime

import numpy as np

from tripplan.language.sentences import Fact, fact
from tripplan.planning.day.times.choices import SpansOfDays
from tripplan.planning.day.times.legs import LegTimes
from tripplan.planning.day.times.limits import NEVER, Limits, OpeningMinutes
from tripplan.planning.day.times.minutes import DayMinutes, Minutes
from tripplan.planning.day.times.shapes import DayPlan, DayQuestion
from tripplan.planning.day.weighing.delays import Chances, Delay, getting_off, longer_than_likely
from tripplan.values.units import Chance

SURE_ENOUGH = 0.9
"""A chance that parents call safe enough to plan with. No source, our choice [0-1]."""


@dataclass(frozen=True)
class Slack:
    """How likely a plan holds.

    Attributes:
        entry: when the party must have arrived: the timed entry it plans with, else the last entry.
        timed: whether that is a timed entry.
        make_entry: the chance to arrive by then [0-1].
        sure_departure: the latest departure on the grid, no later than planned, that makes the entry with a
            chance of nine in ten; None where none does.
        home_by: when everybody should be home.
        home_in_time: the chance of that [0-1].
        bed: when the first of the party should be in bed; None where nobody said.
        home_before_bed: the chance to be home by then [0-1]; None where nobody said.
        usually_home: when the party is home on half of all days.
        nearly_always_home: when it is home on nine of ten days.
    """

    entry: datetime
    timed: bool
    make_entry: float
    sure_departure: datetime | None
    home_by: datetime
    home_in_time: float
    bed: datetime | None
    home_before_bed: float | None
    usually_home: datetime
    nearly_always_home: datetime

    @property
    def chances(self) -> tuple[Fact, ...]:
        """What is likely and what is not, what matters first."""
        return tuple(self._chances())

    def _chances(self) -> Iterator[Fact]:
        code = "plan-chance-of-timed-entry" if self.timed else "plan-chance-of-last-entry"
        yield fact(code, at=self.entry, odds=Chance(self.make_entry))
        if self.make_entry < SURE_ENOUGH:
            if self.sure_departure is None:
                yield fact("plan-never-sure")
            else:
                yield fact("plan-sure-by", leaves=self.sure_departure)
        yield fact("plan-chance-of-home", latest=self.home_by, odds=Chance(self.home_in_time))
        if self.bed is not None and self.home_before_bed is not None:
            yield fact("plan-chance-of-bed", bed=self.bed, odds=Chance(self.home_before_bed))
        yield fact("plan-usually-home", half=self.usually_home, most=self.nearly_always_home)


def slack(question: DayQuestion, plan: DayPlan) -> Slack:
    """How likely a plan holds, from how late the family usually gets off and how sure the drives are.

    The family gets off late twice, at home and at the place, both times by chances of their own. A late
    departure takes the road, with its range, as it is then. Who comes late is let in at the next entry there
    is; the way home begins as planned, or later if the shortest visit would not be over; who is not let in
    any more turns round at once. Nothing is drawn at random: the chances of all whole minutes are added up.

    Args:
        question: the day; on a day that has begun, the departure is certain.
        plan: one of its plans.

    Returns:
        The chances.
    """
    minutes = DayMinutes(question.day, question.home_zone)
    limits = Limits.of(question, minutes)
    late = Delay(0, np.ones(1)) if question.begun is not None else getting_off(question.habits)
    depart, enter = minutes.rounded_down(plan.leave_home), minutes.rounded_down(plan.enter)
    leave = minutes.rounded_down(plan.leave_place)
    opened = _span_of(limits, enter)
    timed = opened.entries is not None
    due = enter if timed else opened.last_entry
    arrivals = _arrivals(limits, late, depart)
    made = arrivals.at_most(due)

    home = _home(question, limits, opened, arrivals, leave)
    bed = None if question.first_bed is None else minutes.by_clock(question.first_bed)
    return Slack(
        entry=minutes.moment(due, question.place_zone),
        timed=timed,
        make_entry=made,
        sure_departure=_sure_departure(question, limits, minutes, late, depart, due),
        home_by=minutes.moment(limits.home_by, question.home_zone),
        home_in_time=home.at_most(limits.home_by),
        bed=None if bed is None else minutes.moment(bed, question.home_zone),
        home_before_bed=None if bed is None else home.at_most(bed),
        usually_home=minutes.moment(_reached(home, 0.5), question.home_zone),
        nearly_always_home=minutes.moment(_reached(home, SURE_ENOUGH), question.home_zone),
    )


def _span_of(limits: Limits, enter: int) -> OpeningMinutes:
    return next(opened for opened in limits.opened if opened.opens <= enter <= opened.last_entry)


def _arrivals(limits: Limits, late: Delay, depart: int) -> Delay:
    """When the party is at the place."""
    return _driven(Delay(depart + late.first, late.chances), limits.there)


def _driven(starts: Delay, way: LegTimes) -> Delay:
    """When a drive ends that begins at uncertain times."""
    ends = starts.minutes + way.minutes(starts.minutes)
    which = np.broadcast_to(way.which(starts.minutes), ends.shape)
    parts = [
        _gathered(ends[which == number], starts.chances[which == number])
        + longer_than_likely(way.legs[number].drive.minutes)
        for number in np.unique(which).tolist()
    ]
    return _gathered(
        np.concatenate([part.minutes for part in parts]), np.concatenate([part.chances for part in parts])
    )


def _home(
    question: DayQuestion, limits: Limits, opened: OpeningMinutes, arrivals: Delay, leave: int
) -> Delay:
    """When everybody is home."""
    arrive = arrivals.minutes
    let_in = SpansOfDays.of([opened]).enter(arrive[None, :, None]).ravel()
    leaves = np.where(let_in < NEVER, np.maximum(leave, let_in + limits.shortest), arrive)
    # The place closes on late comers too, however short their visit.
    leaves = np.minimum(leaves, np.maximum(opened.closes, arrive))
    off = _gathered(leaves, arrivals.chances) + getting_off(question.habits)
    return _driven(off, limits.back)


def _sure_departure(
    question: DayQuestion, limits: Limits, minutes: DayMinutes, late: Delay, depart: int, due: int
) -> datetime | None:
    """The latest departure, no later than planned, from which the entry is made nine times in ten."""
    if question.begun is not None:
        return None
    first = limits.earliest
    for departure in range(depart, first - 1, -limits.grid):
        if _arrivals(limits, late, departure).at_most(due) >= SURE_ENOUGH:
            return minutes.moment(departure, question.home_zone)
    return None


def _gathered(moments: Minutes, chances: Chances) -> Delay:
    """Chances by the minute they belong to, where several may belong to the same."""
    first = int(moments.min())
    return Delay(first, np.bincount(moments - first, weights=chances).astype(np.float64))


def _reached(delay: Delay, chance: float) -> int:
    """The first minute by which so much of the chance has gathered."""
    index = int(np.searchsorted(np.cumsum(delay.chances), chance - 1e-12))
    return delay.first + min(index, delay.chances.size - 1)
