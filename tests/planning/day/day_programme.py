"""A day as an integer programme: a second solver for small days, by another method than search and walk.

Departure, leaving time, entry, performance and where each nap is slept are 0-1 unknowns, times are sums of
them, and what holds only sometimes is said with a big number. Nothing is tried one after the other: SciPy's
solver (HiGHS) finds the least weight by branching and cutting.

It knows days by one clock with one span of opening and drives that take as long all day, one nap a child,
children who wake when they are carried, and either shows or lunch inside, not both.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from datetime import datetime, time
from itertools import groupby

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp

from tests.planning.day.day_walk import earliest_nap, whereabouts
from tests.planning.day.plain_lateness import ends, tenths_after, thousandths_after
from tripplan.planning.day import DayQuestion, Napper
from tripplan.planning.day.weighing.delays import getting_off
from tripplan.planning.opening.hours import ShowTimes
from tripplan.planning.travel.drive import Leg

BIG = 4000.0
"""More than any two times of a day lie apart [min]."""
MIDNIGHT = 24 * 60


@dataclass(frozen=True)
class Line:
    """A sum of unknowns, each some times, and a number."""

    times: dict[int, float]
    number: float = 0.0

    def __add__(self, other: "Line | float") -> "Line":
        if not isinstance(other, Line):
            return Line(self.times, self.number + other)
        both = self.times.keys() | other.times.keys()
        times = {key: self.times.get(key, 0.0) + other.times.get(key, 0.0) for key in both}
        return Line(times, self.number + other.number)

    def __mul__(self, factor: float) -> "Line":
        return Line({key: factor * count for key, count in self.times.items()}, factor * self.number)

    def __sub__(self, other: "Line | float") -> "Line":
        return self + other * -1.0


def constant(number: float) -> Line:
    """A sum of nothing."""
    return Line({}, number)


def added(lines: Iterable[Line]) -> Line:
    """The sum of some sums."""
    return sum(lines, start=constant(0.0))


@dataclass
class Programme:
    """Unknowns, what they must keep to, and the least that a sum of them can be."""

    upper: list[float] = field(default_factory=list)
    whole: list[int] = field(default_factory=list)
    rows: list[Line] = field(default_factory=list)

    def amount(self, upper: float = BIG) -> Line:
        """An unknown that is no less than nought."""
        self.upper.append(upper)
        self.whole.append(0)
        return Line({len(self.upper) - 1: 1.0})

    def choice(self) -> Line:
        """An unknown that is nought or one."""
        chosen = self.amount(1.0)
        self.whole[-1] = 1
        return chosen

    def need(self, line: Line, when: Line | None = None) -> None:
        """A sum is no less than nought, always or where a choice is one."""
        self.rows.append(line if when is None else line + (constant(1.0) - when) * BIG)

    def one_of(self, lines: Sequence[Line]) -> None:
        """Just one of some choices is one."""
        self.need(added(lines) - 1.0)
        self.need(constant(1.0) - added(lines))

    def greater(self, one: Line, other: Line) -> Line:
        """The greater of two sums."""
        found, which = self.amount(), self.choice()
        for line, unless in ((one, which), (other, constant(1.0) - which)):
            self.need(found - line)
            self.need(line - found, constant(1.0) - unless)
        return found

    def least(self, line: Line) -> float | None:
        """The least that a sum can be; None where nothing keeps to the rows."""
        columns = len(self.upper)

        def dense(one: Line) -> list[float]:
            return [one.times.get(column, 0.0) for column in range(columns)]

        rows = LinearConstraint(
            np.array([dense(row) for row in self.rows]), np.array([-row.number for row in self.rows]), np.inf
        )
        answer = milp(
            np.array(dense(line)),
            integrality=np.array(self.whole),
            bounds=Bounds(0.0, np.array(self.upper)),
            constraints=rows,
            options={"mip_rel_gap": 0.0},
        )
        assert answer.status in (0, 2), answer.message
        return None if answer.x is None else float(answer.fun) + line.number


def least_felt(question: DayQuestion) -> float | None:
    """The least that the nuisances of a day can weigh; None on an impossible day [currency]."""
    return _Day(question).least()


class _Day:
    """One day as a programme."""

    def __init__(self, question: DayQuestion) -> None:
        self.question, self.programme = question, Programme()
        self.there, self.back = _leg(question.way_there), _leg(question.way_home)
        (self.span,) = question.hours.spans
        programme, habits = self.programme, question.habits
        grid = range(0, MIDNIGHT, question.grid_minutes)
        self.departing = {
            minute: programme.choice() for minute in grid if minute >= clock(habits.earliest_departure)
        }
        self.leaving = {minute: programme.choice() for minute in grid}
        for choices in (self.departing, self.leaving):
            programme.one_of(list(choices.values()))
        self.depart = added(chosen * minute for minute, chosen in self.departing.items())
        self.leave = added(chosen * minute for minute, chosen in self.leaving.items())
        self.arrive = self.depart + self.there.minutes
        self.home = self.leave + self.back.minutes
        self.slots = {clock(slot): programme.choice() for slot in question.hours.entry_times}
        self.enter = self._entered()
        programme.need(constant(clock(self.span.closes)) - self.leave)
        programme.need(constant(clock(habits.home_by)) - self.home)
        programme.need(self.leave - self.enter - max(question.shortest_minutes, 1))
        for busy in question.busy:
            before = programme.choice()
            programme.need(constant(clock(busy.start)) - self.home, before)
            programme.need(self.depart - clock(busy.end), constant(1.0) - before)

    def _entered(self) -> Line:
        """Let in at the first minute, or the first slot, that is not over on arriving."""
        programme, last = self.programme, clock(self.span.last_entry)
        if not self.slots:
            enter = programme.greater(self.arrive, constant(clock(self.span.opens)))
            programme.need(constant(last) - enter)
            return enter
        programme.one_of(list(self.slots.values()))
        earlier: int | None = None
        for slot, taken in sorted(self.slots.items()):
            programme.need(constant(slot) - self.arrive, taken)
            if earlier is not None:
                programme.need(self.arrive - earlier - 1.0, taken)
            earlier = slot
        return added(taken * slot for slot, taken in self.slots.items())

    def least(self) -> float | None:
        """What the nuisances weigh at the least."""
        question, worth = self.question, self.question.worth
        short, beyond = self.programme.amount(), self.programme.amount()
        early_lunch, late_lunch, lunch_there = self._lunch()
        stay = self.leave - self.enter - lunch_there
        self.programme.need(short + stay - question.comfortable_minutes)
        self.programme.need(beyond - stay + question.comfortable_minutes)
        driven = self.there.drive_minutes + self.back.drive_minutes
        beyond_patience = sum(
            max(0, end - start - (question.patience_minutes or MIDNIGHT))
            for leg in (self.there, self.back)
            for start, end in stretches(leg)
        )
        by_the_hour = (
            (added(self._lost(napper) for napper in question.nappers), worth.lost_nap_hour),
            (self.enter - self.arrive + driven, worth.hour_in_car),
            (short, worth.missed_hour_there),
            (beyond, worth.hour_beyond_comfortable),
            (late_lunch, worth.hour_late_lunch),
            (early_lunch, worth.hour_early_lunch),
            (self._early(), worth.hour_early_departure),
            (constant(beyond_patience), worth.hour_past_patience),
            (self._past(question.habits.home_by), worth.hour_past_home_by),
            (self._past(question.first_bed), worth.hour_past_bedtime),
        )
        weight = added(minutes * (float(price) / 60) for minutes, price in by_the_hour)
        weight += self._missed_entry() * float(worth.missed_entry)
        weight += added(self._missed(show) for show in question.hours.shows) * float(worth.missed_show)
        return self.programme.least(weight)

    def _past(self, due: time | None) -> Line:
        """How long after a time by the clock the family is to be expected home [min]."""
        if due is None:
            return constant(0.0)
        off = getting_off(self.question.habits)
        return added(
            chosen * (tenths_after(ends(self.back, off, minute), clock(due)) / 10)
            for minute, chosen in self.leaving.items()
        )

    def _too_late(self, due: int) -> Line:
        """The chance of arriving after a minute [0-1]."""
        off = getting_off(self.question.habits)
        return added(
            chosen * (thousandths_after(ends(self.there, off, minute), due) / 1000)
            for minute, chosen in self.departing.items()
        )

    def _early(self) -> Line:
        """How long before a good hour the family leaves home [min]."""
        early = self.programme.amount()
        self.programme.need(early + self.depart - clock(self.question.habits.usual_departure))
        return early

    def _lunch(self) -> tuple[Line, Line, Line]:
        """How much earlier and how much later than usual lunch is, and what it takes from the visit [min]."""
        programme, habits, eats = self.programme, self.question.habits, self.programme.amount()
        length, usual = habits.lunch_minutes, clock(habits.lunch)
        early, late = programme.amount(), programme.amount()
        if not length:
            return constant(0.0), constant(0.0), constant(0.0)
        programme.need(eats - usual + 45.0)
        programme.need(early - usual + eats)
        programme.need(late - eats + usual)
        before, after, waiting, there = (programme.choice() for _ in range(4))
        halts = [
            (programme.choice(), since + begins)
            for leg, since in ((self.there, self.depart), (self.back, self.leave))
            for begins, ends in stretches(leg, "halt")
            if ends - begins >= 15
        ]
        programme.one_of([before, after, waiting, there, *(chosen for chosen, _ in halts)])
        programme.need(self.depart - eats - length, before)
        programme.need(eats - self.home, after)
        programme.need(eats - self.arrive, waiting)
        programme.need(self.enter - eats - length, waiting)
        programme.need(eats - self.enter, there)
        programme.need(self.leave - eats - length, there)
        programme.need(self.leave - self.enter - length - max(self.question.shortest_minutes, 1), there)
        if self.slots or not self.question.eats_there:
            programme.need(eats + length - self.leave, there)
        for chosen, begins in halts:
            programme.need(eats - begins, chosen)
            programme.need(begins - eats, chosen)
        return early, late, there * length

    def _missed_entry(self) -> Line:
        if not self.slots:
            return self._too_late(clock(self.span.last_entry))
        missed = self.programme.amount(1.0)
        for slot, taken in self.slots.items():
            self.programme.need(missed - self._too_late(slot), taken)
        return missed

    def _missed(self, show: ShowTimes) -> Line:
        """The chance to miss a show: to come too late for the last performance there is time for."""
        programme, missed = self.programme, self.programme.amount(1.0)
        sees, last = [], []
        for start in map(clock, show.starts):
            seen, counts = programme.choice(), programme.choice()
            programme.need(constant(start) - self.enter, seen)
            for chosen in (seen, counts):
                programme.need(self.leave - start - show.minutes, chosen)
            lets_in = [slot for slot in self.slots if slot <= start]
            due = max(lets_in, default=-1) if self.slots else min(start, clock(self.span.last_entry))
            programme.need(missed - self._too_late(due), counts)
            sees.append(seen)
            last.append(counts)
        programme.need(constant(1.0) - added(last))
        programme.need(added(sees) - added(last))
        programme.need(missed + added(last) - 1.0)
        return missed

    def _lost(self, napper: Napper) -> Line:
        """How much of a child's one nap is lost [min]."""
        (nap,) = napper.naps
        programme, usual = self.programme, clock(nap.start)
        last = usual + nap.minutes + nap.slack_minutes
        if napper.latest_end is not None:
            last = min(last, max(usual + nap.minutes, clock(napper.latest_end)))
        begins, kept = programme.amount(), programme.amount(nap.minutes)
        eats = clock(self.question.habits.lunch)
        eaten = eats + self.question.habits.lunch_minutes
        programme.need(begins - earliest_nap(nap, usual, eats, eaten))
        programme.need(constant(last) - begins - kept)
        spots: list[tuple[Line | None, Line | None, Line]] = [
            (None, self.depart, constant(1.0)),
            (self.home + 15.0, None, constant(1.0)),
        ]
        settling = nap.falls_asleep_minutes
        if nap.in_car:
            for leg, since in ((self.there, self.depart), (self.back, self.leave)):
                spots += [
                    (since + start + settling, since + end, constant(1.0)) for start, end in stretches(leg)
                ]
        slept = [programme.choice() for _ in spots]
        programme.need(constant(1.0) - added(slept))
        programme.need(added(slept) * nap.minutes - kept)
        programme.need(kept - added(slept) * min(nap.shortest_minutes, nap.minutes))
        for (start, end, there_is), chosen in zip(spots, slept, strict=True):
            programme.need(there_is - chosen)
            if start is not None:
                programme.need(begins - start, chosen)
            if end is not None:
                programme.need(end - begins - kept, chosen)
        return constant(nap.minutes) - kept


def stretches(leg: Leg, of: str = "car") -> list[tuple[int, int]]:
    """When the wheels turn without a halt, or stand for one, from a list of every minute of a leg."""
    found = []
    for what, run in groupby(whereabouts(leg, 0, ""), key=lambda minute: minute[1]):
        minutes = [minute for minute, _ in run]
        if what.startswith(of):
            found.append((minutes[0], minutes[-1] + 1))
    return found


def clock(moment: datetime | time) -> int:
    """Minutes since midnight by the one clock of the day."""
    return moment.hour * 60 + moment.minute


def _leg(way: object) -> Leg:
    assert isinstance(way, Leg)
    return way
