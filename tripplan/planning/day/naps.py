"""What becomes of a usual nap on a day out.

The model, kept simple on purpose:

* A sleep is one unbroken stretch in one place: at home before leaving or after coming back, in the
  car between two halts, or in the pushchair at the place before or after lunch. A rest or stop on the
  way wakes the child. Of all these stretches the longest counts.
* A child that stays asleep when it is moved sleeps on after the last drive of a way: in the pushchair
  until lunch or leaving, or in bed at home. It must be asleep before the car stops. Any other child is
  woken on arrival: nobody sleeps in the parked car.
* The nap may begin up to its slack earlier or later; the best shift is taken, to the minute.
* In the car and the pushchair the child first takes its time to fall asleep.
* A sleep shorter than the child's shortest is no sleep; where the usual nap is shorter than that,
  the whole of it is needed.
* A nap that begins late is over some hours before bedtime, so that the child is tired by then; a nap that
  usually ends later may end as usual.
* Two naps of one child cannot share a sleep: where their slacks meet, each has half.

Source: common practice, no source; every figure is the parent's own setting.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from tripplan.planning.day.legs import driving_stretches, last_stretch
from tripplan.planning.day.limits import LONGEST_DAY, NEVER, Choices
from tripplan.planning.day.minutes import DayMinutes, Minutes, chosen
from tripplan.planning.day.shapes import DayQuestion, NapOutcome, Napper, SleepsIn
from tripplan.planning.household import Habits, Nap
from tripplan.planning.travel.drive import Leg


@dataclass(frozen=True, eq=False)
class Stretch:
    """Where a child could sleep, for every choice.

    Attributes:
        place: where.
        start: when it could be asleep, falling asleep already over [min].
        end: when it is woken; before `start` where there is no time [min].
        moved: when it is carried over asleep, which it must be before; `NEVER` where it stays [min].
        moved_to: where it then sleeps on.
    """

    place: SleepsIn
    start: Minutes
    end: Minutes
    moved: Minutes | int = NEVER
    moved_to: SleepsIn | None = None

    def at(self, row: int, column: int) -> "Sleep":
        """The stretch of one choice, by the number of its departure and of its leaving time."""
        moved = None if isinstance(self.moved, int) else chosen(self.moved, row, column)
        return Sleep(
            self.place,
            chosen(self.start, row, column),
            chosen(self.end, row, column),
            moved,
            self.moved_to,
        )


@dataclass(frozen=True)
class Sleep:
    """Where a child could sleep, in one plan.

    Attributes:
        place, start, end, moved, moved_to: as in `Stretch`.
    """

    place: SleepsIn
    start: int
    end: int
    moved: int | None = None
    moved_to: SleepsIn | None = None

    @property
    def span(self) -> tuple[int, int, int]:
        """Start, end and when it is moved, `NEVER` where it stays [min]."""
        return self.start, self.end, NEVER if self.moved is None else self.moved

    def later(self, minutes: int) -> "Sleep":
        """The same so much later."""
        moved = None if self.moved is None else self.moved + minutes
        return replace(self, start=self.start + minutes, end=self.end + minutes, moved=moved)


_NO_SLEEP = (0, 0, NEVER)
LUNCH_CAN_WAIT_MINUTES = 30
"""Home this soon after its lunch time, a party waits and eats there (common practice, no source) [min]."""


@dataclass(frozen=True)
class NapWindow:
    """A usual nap and the time it may lie in.

    Attributes:
        member: the child's name.
        nap: the usual nap.
        usual: when it usually begins.
        first: the earliest minute of sleep, slack taken.
        last: the minute by which it must be over, slack taken.
    """

    member: str
    nap: Nap
    usual: int
    first: int
    last: int

    def kept(self, start: Minutes, end: Minutes, moved: Minutes | int = NEVER) -> Minutes:
        """Minutes of the nap that fit between start and end, for arrays of any matching shapes.

        Where the child is moved, it must be asleep before that, and the nap may not begin before its slack.

        Sliding the nap inside the window covers all minutes that the window shares with the time from start
        to end, up to the nap's own length.
        """
        return _kept(start, end, moved, *self.bounds)

    @property
    def bounds(self) -> tuple[int, int, int, int]:
        """First and last minute, the nap's length, and the shortest sleep that counts [min]."""
        return self.first, self.last, self.nap.minutes, min(self.nap.shortest_minutes, self.nap.minutes)

    def kept_in(self, sleep: Sleep) -> int:
        """The same for one plan [min]."""
        begins = max(sleep.start, self.first)
        kept = min(min(sleep.end, self.last) - begins, self.nap.minutes)
        if kept < min(self.nap.shortest_minutes, self.nap.minutes):
            return 0
        return 0 if sleep.moved is not None and begins >= sleep.moved else max(kept, 0)

    def asleep(self, sleep: Sleep) -> tuple[int, int]:
        """When the child sleeps in a stretch, beginning as near to the usual time as it can [min]."""
        earliest, latest = max(sleep.start, self.first), min(sleep.end, self.last)
        kept = min(latest - earliest, self.nap.minutes)
        begins = min(max(self.usual, earliest), latest - kept)
        if sleep.moved is not None:
            begins = min(begins, sleep.moved - 1)
        return begins, begins + kept


def nap_windows(nappers: tuple[Napper, ...], minutes: DayMinutes) -> tuple[NapWindow, ...]:
    """Every usual nap of the day, child by child, in order of time."""
    return tuple(window for napper in nappers for window in _windows(napper, minutes))


def _windows(napper: Napper, minutes: DayMinutes) -> Iterator[NapWindow]:
    naps = sorted(napper.naps, key=lambda nap: nap.start)
    starts = [minutes.by_clock(nap.start) for nap in naps]
    firsts = [start - nap.slack_minutes for start, nap in zip(starts, naps, strict=True)]
    lasts = [start + nap.minutes + nap.slack_minutes for start, nap in zip(starts, naps, strict=True)]
    if napper.latest_end is not None:
        latest = minutes.by_clock(napper.latest_end)
        lasts = [
            min(last, max(start + nap.minutes, latest))
            for last, start, nap in zip(lasts, starts, naps, strict=True)
        ]
    for earlier, later in pairwise(range(len(naps))):
        if lasts[earlier] > firsts[later]:
            lasts[earlier] = firsts[later] = (lasts[earlier] + firsts[later]) // 2
    for nap, start, first, last in zip(naps, starts, firsts, lasts, strict=True):
        yield NapWindow(napper.member, nap, start, first, max(first, last))


def lunch_inside(choices: Choices, question: DayQuestion, minutes: DayMinutes) -> tuple[Minutes, Minutes]:
    """When lunch begins and ends, for every choice; of no length where the family eats at home.

    A party that is home soon after its lunch time, or leaves after lunch, eats at home. Else it eats
    inside the place, as near to lunch time as the visit allows: on arrival if lunch time falls on the
    way there, before leaving if on the way home.
    """
    usual = minutes.by_clock(question.habits.lunch)
    length = np.minimum(question.habits.lunch_minutes, choices.visit)
    begins = np.minimum(np.maximum(usual, choices.enter), choices.leave - length)
    out = out_at_lunch(usual, question.habits, choices.depart[:, None], choices.home)
    return begins, begins + length * out


def out_at_lunch(usual: int, habits: Habits, depart: Minutes, home: Minutes) -> NDArray[np.bool_]:
    """Whether lunch time falls into the outing, for each departure and each time of being home."""
    return (depart < usual + habits.lunch_minutes) & (home > usual + LUNCH_CAN_WAIT_MINUTES)


def before_the_visit(nap: Nap, leg: Leg) -> list[Sleep]:
    """Where a child could sleep until it is at the place, in minutes since the leg there begins."""
    return [Sleep(SleepsIn.HOME, -LONGEST_DAY, 0), *_in_the_car(nap, leg)]


def after_the_visit(nap: Nap, leg: Leg) -> list[Sleep]:
    """Where a child could sleep once it has left the place, in minutes since the leg home begins."""
    found = [*_in_the_car(nap, leg), Sleep(SleepsIn.HOME, leg.minutes, 2 * LONGEST_DAY)]
    if nap.in_car and nap.stays_asleep_when_moved:
        start, parks = last_stretch(leg)
        into_bed = start + nap.falls_asleep_minutes, 2 * LONGEST_DAY, parks
        found.append(Sleep(SleepsIn.CAR, *into_bed, moved_to=SleepsIn.HOME))
    return found


def _in_the_car(nap: Nap, leg: Leg) -> Iterator[Sleep]:
    if nap.in_car:
        for start, end in driving_stretches(leg):
            yield Sleep(SleepsIn.CAR, start + nap.falls_asleep_minutes, end)


def kept_around_the_visit(windows: Sequence[NapWindow], choices: Choices) -> tuple[Minutes, Minutes]:
    """The longest that is kept of each nap at home or in the car [min].

    Args:
        windows: the naps; at least one.
        choices: departures and leaving times.

    Returns:
        Before the visit, for each nap and departure; after it, for each nap and leaving time.
    """
    there, back = choices.limits.there, choices.limits.back
    each = [
        [
            *([sleep.span for sleep in before_the_visit(window.nap, leg)] for leg in there.legs),
            *([sleep.span for sleep in after_the_visit(window.nap, leg)] for leg in back.legs),
        ]
        for window in windows
    ]
    most = max(len(spans) for of_legs in each for spans in of_legs)
    padded = np.array([[spans + [_NO_SLEEP] * (most - len(spans)) for spans in of_legs] for of_legs in each])
    which = np.concatenate((there.which(choices.depart), len(there.legs) + back.which(choices.leave)))
    starts = np.concatenate((choices.depart, choices.leave))
    start, end, moved = starts + padded.transpose(3, 2, 0, 1).take(which, axis=-1)
    first, last, minutes, least = np.array([window.bounds for window in windows]).T[..., None]
    longest = _kept(start, end, moved, first, last, minutes, least).max(axis=0)
    return longest[:, : choices.depart.size], longest[:, choices.depart.size :]


def _kept(
    start: Minutes,
    end: Minutes,
    moved: Minutes | int,
    first: Minutes | int,
    last: Minutes | int,
    minutes: Minutes | int,
    least: Minutes | int,
) -> Minutes:
    """What is kept of naps in stretches; the arguments are those of `NapWindow.kept` and its bounds."""
    begins = np.maximum(start, first)
    kept = np.minimum(np.minimum(end, last) - begins, minutes)
    counts = (kept >= least) & (begins < moved)
    counted: Minutes = kept * counts
    return counted


def in_the_pushchair(nap: Nap, choices: Choices, lunch: tuple[Minutes, Minutes]) -> list[Stretch]:
    """Every unbroken stretch in the pushchair in which a child could sleep, around lunch."""
    found: list[Stretch] = []
    settling = nap.falls_asleep_minutes
    lunch_begins, lunch_ends = lunch
    eats = lunch_ends > lunch_begins
    until = np.where(eats, lunch_begins, choices.leave)
    if nap.in_car and nap.stays_asleep_when_moved:
        there, depart = choices.limits.there, choices.depart
        since = np.array([last_stretch(leg) for leg in there.legs])[there.which(depart)]
        start, parks = (depart[:, None] + since).T[..., None]
        found.append(Stretch(SleepsIn.CAR, start + settling, until, moved=parks, moved_to=SleepsIn.PUSHCHAIR))
    again = np.where(eats, lunch_ends + settling, choices.leave)
    found.append(Stretch(SleepsIn.PUSHCHAIR, (choices.arrive + settling)[:, None], until))
    found.append(Stretch(SleepsIn.PUSHCHAIR, again, choices.leave))
    return found


def outcome(
    question: DayQuestion, minutes: DayMinutes, window: NapWindow, sleeps: Sequence[Sleep]
) -> NapOutcome:
    """What becomes of one nap in one plan; among equals at home, then the first place."""
    sleep = max(sleeps, key=lambda sleep: (window.kept_in(sleep), sleep.place is SleepsIn.HOME))
    begins, ends = window.asleep(sleep) if window.kept_in(sleep) else (0, 0)
    moved = ends if sleep.moved is None else min(sleep.moved, ends)
    parts = ((sleep.place, moved - begins), (sleep.moved_to, ends - moved))
    return NapOutcome(
        member=window.member,
        usual_start=minutes.moment(window.usual, question.home_zone),
        usual_minutes=window.nap.minutes,
        kept=tuple((place, lasts) for place, lasts in parts if place is not None and lasts),
        asleep=(minutes.moment(begins, question.home_zone), minutes.moment(ends, question.home_zone))
        if begins < ends
        else None,
    )
