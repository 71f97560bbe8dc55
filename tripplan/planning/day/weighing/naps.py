"""What becomes of a usual nap on a day out.

The model, kept simple on purpose:

* A sleep is one unbroken stretch in one place: at home before leaving or after coming back, in the
  car between two halts, or in the pushchair at the place. A rest or stop on the way wakes the child; lunch
  does not, who sleeps eats later. Of all these stretches the longest counts, among equals one that is not at
  the place.
* A child that sleeps at the place does not see it meanwhile: only waking minutes count as the visit.
* Who comes home awake is in bed `INTO_BED_MINUTES` later.
* A child that stays asleep when it is moved sleeps on after the last drive of a way: in the pushchair
  until leaving, or in bed at home. It must be asleep before the car stops. Any other child is
  woken on arrival: nobody sleeps in the parked car.
* The nap may begin up to its slack earlier or later; the best shift is taken, to the minute.
* A nap that usually begins at lunch time or later is not moved to before lunch: nobody goes to sleep hungry.
* In the car and the pushchair the child first takes its time to fall asleep.
* A sleep shorter than the child's shortest is no sleep; where the usual nap is shorter than that,
  the whole of it is needed.
* A nap that begins late is over some hours before bedtime, so that the child is tired by then; a nap that
  usually ends later may end as usual.
* Two naps of one child cannot share a sleep: where their slacks meet, each has half.

Source: common practice, no source; every figure is the parent's own setting.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from tripplan.documents.family.habits import Habits
from tripplan.documents.family.member import Nap, SleepsIn
from tripplan.planning.day.times.choices import Choices
from tripplan.planning.day.times.legs import LegsOfDays, last_stretch
from tripplan.planning.day.times.limits import LONGEST_DAY
from tripplan.planning.day.times.minutes import DayMinutes, Minutes, a_day, by_shape, chosen, combined
from tripplan.planning.day.times.shapes import DayQuestion, NapOutcome, Napper

INTO_BED_MINUTES = 15
"""From coming home awake until a child sleeps there: coat off, a bite, into bed (common practice, no source)
[min]."""


@dataclass(frozen=True, eq=False)
class Stretch:
    """Where a child could sleep, for every choice.

    Attributes:
        place: where.
        start: when it could be asleep, falling asleep already over [min].
        end: when it is woken; before `start` where there is no time [min].
        moved: when it is carried over asleep, which it must be before; None where it stays [min].
        moved_to: where it then sleeps on.
    """

    place: SleepsIn
    start: Minutes
    end: Minutes
    moved: Minutes | None = None
    moved_to: SleepsIn | None = None

    @property
    def at_the_place(self) -> bool:
        """Whether it is there that the child sleeps, or sleeps on."""
        return SleepsIn.PUSHCHAIR in (self.place, self.moved_to)

    def at(self, at: tuple[int, int, int]) -> "Sleep":
        """The stretch of one choice, by the number of its day, departure and leaving time."""
        moved = None if self.moved is None else chosen(self.moved, at)
        return Sleep(self.place, chosen(self.start, at), chosen(self.end, at), moved, self.moved_to)


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
    def at_the_place(self) -> bool:
        """As in `Stretch`."""
        return SleepsIn.PUSHCHAIR in (self.place, self.moved_to)


@dataclass(frozen=True, eq=False)
class Slept:
    """What becomes of a nap, for every choice.

    Attributes:
        kept: how much of it is kept [min].
        begins, ends: from when to when the child sleeps while the party is inside; the same minute where it
            does not [min].
    """

    kept: Minutes
    begins: Minutes
    ends: Minutes

    @property
    def inside(self) -> Minutes:
        """How long the child sleeps while the party is inside [min]."""
        asleep: Minutes = self.ends - self.begins
        return asleep


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

    def slept(self, stretches: Sequence[Stretch], enter: Minutes) -> "Slept":
        """How much of the nap the best of some stretches keeps, and which part of it falls into the visit.

        Args:
            stretches: where the child could sleep; one at least that is not at the place.
            enter: when the party is let in, for every choice [min].
        """
        there = [stretch for stretch in stretches if stretch.at_the_place]
        elsewhere = (stretch for stretch in stretches if not stretch.at_the_place)
        longest = by_shape(np.maximum, map(self._shared, elsewhere))
        kept = combined(np.maximum, map(self._counted, longest))
        if not there:
            return Slept(kept, a_day([0]), a_day([0]))
        begins = ends = a_day([0])
        for stretch in there:
            counted = self._counted(self._shared(stretch))
            starts = self._begins(stretch, counted)
            longer = counted > kept
            begins, ends = np.where(longer, starts, begins), np.where(longer, starts + counted, ends)
            kept = np.maximum(kept, counted)
        begins = np.maximum(begins, enter)
        return Slept(kept, begins, np.maximum(ends, begins))

    def _begins(self, stretch: Stretch, kept: Minutes) -> Minutes:
        """When so much of the nap begins in a stretch, as near to the usual time as it can [min]."""
        begins = np.maximum(stretch.start, max(self.usual, self.first))
        begins = np.minimum(begins, np.minimum(stretch.end, self.last) - kept)
        return begins if stretch.moved is None else np.minimum(begins, stretch.moved - 1)

    def _shared(self, stretch: Stretch) -> Minutes:
        """Minutes that the window shares with a stretch; below one where there are none.

        Where the child is moved, it must be asleep before that, and the nap may not begin before its slack.
        """
        begins = np.maximum(stretch.start, self.first)
        shared: Minutes = np.minimum(stretch.end, self.last) - begins
        return shared if stretch.moved is None else np.where(begins < stretch.moved, shared, 0)

    def _counted(self, shared: Minutes) -> Minutes:
        """What is kept: sliding the nap inside its window covers all shared minutes, up to its length."""
        kept = np.minimum(shared, self.nap.minutes)
        counted: Minutes = kept * (kept >= min(self.nap.shortest_minutes, self.nap.minutes))
        return counted

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


def nap_windows(nappers: tuple[Napper, ...], habits: Habits, minutes: DayMinutes) -> tuple[NapWindow, ...]:
    """Every usual nap of the day, child by child, in order of time.

    Args:
        nappers: who sleeps.
        habits: when lunch usually is.
        minutes: how the day is counted.
    """
    lunch = minutes.by_clock(habits.lunch)
    eaten = lunch + habits.lunch_minutes
    return tuple(window for napper in nappers for window in _windows(napper, (lunch, eaten), minutes))


def _windows(napper: Napper, lunch: tuple[int, int], minutes: DayMinutes) -> Iterator[NapWindow]:
    eats, eaten = lunch
    naps = sorted(napper.naps, key=lambda nap: nap.start)
    starts = [minutes.by_clock(nap.start) for nap in naps]
    firsts = [start - nap.slack_minutes for start, nap in zip(starts, naps, strict=True)]
    firsts = [
        first if start < eats else max(first, min(start, eaten))
        for first, start in zip(firsts, starts, strict=True)
    ]
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


def before_the_visit(nap: Nap, choices: Choices) -> list[Stretch]:
    """Where a child could sleep until it is at the place: at home, then in the car."""
    at_home = Stretch(SleepsIn.HOME, a_day([-LONGEST_DAY]), choices.depart)
    return [at_home, *_in_the_car(nap, choices.there, choices.depart)]


def after_the_visit(nap: Nap, choices: Choices) -> list[Stretch]:
    """Where a child could sleep once it has left the place: in the car, then at home."""
    found = list(_in_the_car(nap, choices.back, choices.leave))
    for_good = a_day([2 * LONGEST_DAY])
    found.append(Stretch(SleepsIn.HOME, choices.home + INTO_BED_MINUTES, for_good))
    if nap.in_car and nap.stays_asleep_when_moved:
        start, parks = _last_stretch(choices.back, choices.leave)
        into_bed = Stretch(SleepsIn.CAR, start + nap.falls_asleep_minutes, for_good, parks, SleepsIn.HOME)
        found.append(into_bed)
    return found


def _in_the_car(nap: Nap, ways: LegsOfDays, starts: Minutes) -> Iterator[Stretch]:
    """The first, second, ... drive without a halt; of no length where a leg has no more."""
    if not nap.in_car:
        return
    for number in range(max(len(leg.stretches) for leg in ways.legs)):
        spans = [leg.stretches[number] if number < len(leg.stretches) else (0, 0) for leg in ways.legs]
        begins, ends = (starts + ways.of_each(starts, of_legs) for of_legs in zip(*spans, strict=True))
        yield Stretch(SleepsIn.CAR, begins + nap.falls_asleep_minutes, ends)


def _last_stretch(ways: LegsOfDays, starts: Minutes) -> tuple[Minutes, Minutes]:
    """When the drive begins and ends that ends on arriving, for every choice [min]."""
    begins, parks = zip(*map(last_stretch, ways.legs), strict=True)
    return starts + ways.of_each(starts, begins), starts + ways.of_each(starts, parks)


def in_the_pushchair(nap: Nap, choices: Choices) -> list[Stretch]:
    """Every unbroken stretch in the pushchair in which a child could sleep."""
    found: list[Stretch] = []
    settling = nap.falls_asleep_minutes
    if nap.in_car and nap.stays_asleep_when_moved:
        start, parks = _last_stretch(choices.there, choices.depart)
        found.append(Stretch(SleepsIn.CAR, start + settling, choices.leave, parks, SleepsIn.PUSHCHAIR))
    found.append(Stretch(SleepsIn.PUSHCHAIR, choices.arrive + settling, choices.leave))
    return found


def outcome(
    question: DayQuestion, minutes: DayMinutes, window: NapWindow, sleeps: Sequence[Sleep]
) -> NapOutcome:
    """What becomes of one nap in one plan; of equal sleeps one elsewhere, at home, then the first."""

    def preferred(sleep: Sleep) -> tuple[int, bool, bool]:
        return window.kept_in(sleep), not sleep.at_the_place, sleep.place is SleepsIn.HOME

    sleep = max(sleeps, key=preferred)
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
