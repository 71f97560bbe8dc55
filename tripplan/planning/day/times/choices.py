"""Every departure with every leaving time of some days, and which of them keep the hard limits."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tripplan.planning.day.times.hourly_money import MoneyOfDays
from tripplan.planning.day.times.legs import LegsOfDays
from tripplan.planning.day.times.limits import NEVER, Limits, OpeningMinutes
from tripplan.planning.day.times.minutes import NARROW, Minutes, a_day

Flags = NDArray[np.bool_]
_BEYOND = 10**6
"""Later than anything that is compared with it [min]."""


@dataclass(frozen=True, eq=False)
class SpansOfDays:
    """One span of opening of each of some days.

    Attributes:
        opens, closes, last_entry: as in `OpeningMinutes`, of shape (days, 1, 1) [min].
        entries: the only minutes people are let in, in order along the last axis, `NEVER` where a day has no
            more; None where any minute will do.
    """

    opens: Minutes
    closes: Minutes
    last_entry: Minutes
    entries: Minutes | None

    @classmethod
    def of(cls, spans: Sequence[OpeningMinutes]) -> "SpansOfDays":
        """One span a day; either all have entry times or none has."""
        timed = [span.entries for span in spans if span.entries is not None]
        return cls(
            a_day([span.opens for span in spans]),
            a_day([span.closes for span in spans]),
            a_day([span.last_entry for span in spans]),
            _in_rows(timed, NEVER)[:, None, :] if timed else None,
        )

    def enter(self, arrive: Minutes) -> Minutes:
        """The first minute to be let in for each arrival, `NEVER` where it is too late.

        Args:
            arrive: of shape (days, arrivals, 1) [min].
        """
        if self.entries is None:
            enter = np.maximum(arrive, self.opens)
            return np.where(enter <= self.last_entry, enter, NEVER)
        first: Minutes = np.where(self.entries >= arrive, self.entries, NEVER).min(axis=-1, keepdims=True)
        return first

    def holds(self, leave: Minutes) -> Flags:
        """Which leaving times lie in the span; a stay ends in the span it began in."""
        inside: Flags = (leave > self.opens) & (leave <= self.closes)
        return inside


@dataclass(frozen=True, eq=False)
class Choices:
    """Every departure with every leaving time on the grids of some days.

    Every array has three axes: days, departures and leaving times; it is of length one along those it does
    not rest on. A day that has fewer departures or leaving times than another goes on along its grid with
    impossible ones.

    Attributes:
        limits: what was asked, one a day.
        there, back: the two drives.
        opened: the spans of opening, of each day the first, then of each the second, and so on.
        depart: departures from home [min].
        leave: leaving times from the place [min].
        arrive: arrival at the place for each departure [min].
        home: being home for each leaving time [min].
        enter: when the party is let in, `NEVER` where no entry fits the leaving time; where the places open
            only once it rests on the departure alone [min].
        wait: time between arriving and being let in, of the shape of `enter` [min].
        visit: time inside; below zero where no entry fits, or one of the two times does not by itself [min].
        possible: which choices keep every limit.
    """

    limits: tuple[Limits, ...]
    there: LegsOfDays
    back: LegsOfDays
    opened: tuple[SpansOfDays, ...]
    depart: Minutes
    leave: Minutes
    arrive: Minutes
    home: Minutes
    enter: Minutes
    wait: Minutes
    visit: Minutes
    possible: Flags

    @classmethod
    def of(cls, limits: Limits) -> "Choices":
        """The choices of one day on its grid."""
        departures, leaving_times = times_on_grid(limits)
        return cls.at_times((limits,), (departures,), (leaving_times,))

    @classmethod
    def between(cls, limits: Limits, depart: int, leave: int) -> "Choices":
        """One departure with one leaving time of one day, on its grid or off it [min].

        The departure is not compared with the earliest that is allowed.
        """
        return cls.at_times((limits,), (range(depart, depart + 1),), (range(leave, leave + 1),))

    @classmethod
    def at_times(
        cls, limits: tuple[Limits, ...], departures: Sequence[range], leaving_times: Sequence[range]
    ) -> "Choices":
        """The choices of some days at given times; no departure is compared with the earliest allowed.

        Args:
            limits: one a day. All days have as many spans of opening, all have entry times or none has, and
                ways that are the same all day or none has; of all or of none money counts, with as many
                hours of a price of their own. A day with weather that keeps people indoors stands alone.
            departures: from home, in order, one row of them a day [min].
            leaving_times: from the place, likewise [min].
        """
        depart, leave = _padded(departures)[:, :, None], _padded(leaving_times)[:, None, :]
        there = LegsOfDays(tuple(of_day.there for of_day in limits))
        back = LegsOfDays(tuple(of_day.back for of_day in limits))
        opened = tuple(
            SpansOfDays.of(spans) for spans in zip(*(of_day.opened for of_day in limits), strict=True)
        )
        arrive, home = depart + there.minutes(depart), leave + back.minutes(leave)
        in_time = (home <= a_day([of_day.home_by for of_day in limits])) & (leave <= _last(leaving_times))
        if len(opened) == 1:
            enter, in_time = opened[0].enter(arrive), in_time & opened[0].holds(leave)
        else:
            enter = np.full((len(limits), depart.shape[1], leave.shape[2]), NEVER, dtype=NARROW)
            for spans in opened:
                enter = np.where(spans.holds(leave), spans.enter(arrive), enter)
        # What rests on one time alone is ruled out by that time: a hundred numbers instead of thousands.
        let_in = np.where(depart <= _last(departures), enter, NEVER)
        visit = np.where(in_time, leave, -NEVER) - let_in
        possible = visit >= a_day([of_day.shortest for of_day in limits])
        most_driving = [of_day.most_driving for of_day in limits]
        if min(most_driving) < NEVER:
            driving = there.drive_minutes(depart) + back.drive_minutes(leave)
            possible &= driving <= a_day(most_driving)
        for start, end in _engagements(limits):
            possible &= (home <= start) | (depart >= end)
        money = [of_day.money for of_day in limits if of_day.money is not None]
        if any(None in of_day.coins for of_day in money):
            possible &= MoneyOfDays.of(money).lets_in(enter, leave)
        if limits[0].weather is not None:
            possible &= ~limits[0].weather.bars(0, enter, leave)
        wait = enter - arrive
        return cls(limits, there, back, opened, depart, leave, arrive, home, enter, wait, visit, possible)


def times_on_grid(limits: Limits) -> tuple[range, range]:
    """The departures and the leaving times of a day between which a choice may be possible [min]."""
    leave = _leaving_times(limits)
    return _departures(limits, leave), leave


def _leaving_times(limits: Limits) -> range:
    most = limits.most_driving
    if most < NEVER and limits.there.least_driving + limits.back.least_driving > most:
        return range(0)
    first = min(opened.opens for opened in limits.opened) + limits.shortest
    last = min(max(opened.closes for opened in limits.opened), limits.home_by - limits.back.quickest)
    return _on_grid(max(first, limits.not_before), last, limits.grid)


def _departures(limits: Limits, leave: range) -> range:
    last = leave[-1] - limits.shortest - limits.there.quickest if leave else -1
    if limits.left is not None:
        return range(limits.left, min(limits.left, last) + 1)
    return _on_grid(limits.earliest, last, limits.grid)


def _on_grid(first: int, last: int, grid: int) -> range:
    return range(-(-first // grid) * grid, last + 1, grid)


def _padded(times: Sequence[range]) -> Minutes:
    """Times of each day in a row, shorter rows going on in their steps; shape (days, times) [min]."""
    starts, steps = np.array([(of_day.start, of_day.step) for of_day in times], dtype=NARROW).T[..., None]
    padded: Minutes = starts + steps * np.arange(max(map(len, times)), dtype=NARROW)
    return padded


def _last(times: Sequence[range]) -> Minutes:
    return a_day([of_day[-1] if of_day else -1 for of_day in times])


def _engagements(limits: Sequence[Limits]) -> Iterable[tuple[Minutes, Minutes]]:
    """The first, second, ... time that each day may not touch; a day without one more has it never."""
    most = max(len(of_day.busy) for of_day in limits)
    for number in range(most):
        spans = [of_day.busy[number] if number < len(of_day.busy) else (_BEYOND,) * 2 for of_day in limits]
        start, end = np.array(spans).T
        yield a_day(start), a_day(end)


def _in_rows(numbers: Sequence[Sequence[int]], beyond: int) -> Minutes:
    """Rows of one length, at least one long, the shorter ones filled up."""
    longest = max(1, *map(len, numbers))
    return np.array([[*row, *[beyond] * (longest - len(row))] for row in numbers], dtype=NARROW)
