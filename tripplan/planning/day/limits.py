"""The hard limits of a day in minutes, and which pairs of departure and leaving time they allow."""

from bisect import bisect_left
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tripplan.planning.day.legs import LegTimes
from tripplan.planning.day.minutes import DayMinutes, Minutes
from tripplan.planning.day.shapes import DayQuestion

NEVER = 10**5
"""Later than any minute of the day [min]."""
LONGEST_DAY = 3 * 24 * 60
"""Later than any visit that begins that day can end at home [min]."""


@dataclass(frozen=True)
class Opened:
    """One span of opening in minutes since midnight at home.

    Attributes:
        opens: the first minute inside.
        closes: by when everybody is out.
        last_entry: the last minute to be let in.
        entries: the only minutes people are let in; None where any will do.
    """

    opens: int
    closes: int
    last_entry: int
    entries: tuple[int, ...] | None

    def enter(self, arrive: Minutes) -> Minutes:
        """The first minute to be let in for each arrival, `NEVER` where it is too late."""
        if self.entries is None:
            enter = np.maximum(arrive, self.opens)
            return np.where(enter <= self.last_entry, enter, NEVER)
        allowed = np.array([*self.entries, NEVER])
        return allowed[np.searchsorted(allowed, arrive)]


@dataclass(frozen=True)
class Limits:
    """What may not be bent, in minutes since midnight at home.

    Attributes:
        earliest: nobody leaves before.
        home_by: everybody is home by.
        shortest: a shorter visit is not allowed [min].
        busy: times the day may not touch, as (start, end).
        opened: when the place can be visited.
        there: from leaving home to being at the place.
        back: from leaving the place to being home.
        grid: departures and leaving times are tried on this grid [min].
        left: the settled departure of a day that has begun; None while all is open.
        not_before: nobody leaves the place before.
    """

    earliest: int
    home_by: int
    shortest: int
    busy: tuple[tuple[int, int], ...]
    opened: tuple[Opened, ...]
    there: LegTimes
    back: LegTimes
    grid: int
    left: int | None = None
    not_before: int = 0

    @classmethod
    def of(cls, question: DayQuestion, minutes: DayMinutes) -> "Limits":
        """The limits that a question sets."""
        earliest = minutes.by_clock(question.habits.earliest_departure)
        if question.last_wakes is not None:
            earliest = max(earliest, minutes.by_clock(question.last_wakes))
        entries = tuple(sorted(minutes.rounded_up(moment) for moment in question.hours.entry_times))
        last_moment = minutes.moment(LONGEST_DAY, question.home_zone)
        opened: list[Opened] = []
        for span in question.hours.spans:
            opens, last_entry = minutes.rounded_up(span.opens), minutes.rounded_down(span.last_entry)
            within = tuple(entry for entry in entries if opens <= entry <= last_entry) if entries else None
            opened.append(Opened(opens, minutes.rounded_down(span.closes), last_entry, within))
        return cls(
            earliest=earliest,
            home_by=minutes.by_clock(question.habits.home_by),
            shortest=max(question.shortest_minutes, 1),
            busy=tuple(
                (minutes.rounded_down(busy.start), minutes.rounded_up(busy.end))
                for busy in question.busy
                if busy.meets(minutes.midnight, last_moment)
            ),
            opened=tuple(opened),
            there=LegTimes(question.way_there),
            back=LegTimes(question.way_home),
            grid=question.grid_minutes,
            left=None if question.begun is None else minutes.rounded_down(question.begun.left_home),
            not_before=0 if question.begun is None else minutes.rounded_up(question.begun.now),
        )


@dataclass(frozen=True, eq=False)
class Choices:
    """Every departure with every leaving time on the grid, departures down and leaving times across.

    Attributes:
        limits: what was asked.
        depart: departures from home [min].
        leave: leaving times from the place [min].
        arrive: arrival at the place for each departure [min].
        home: being home for each leaving time [min].
        enter: when the party is let in, `NEVER` where no entry fits the leaving time; of one column where the
            place opens only once, because it then rests on the departure alone [min].
        wait: time between arriving and being let in, of the shape of `enter` [min].
        visit: time inside; negative where no entry fits [min].
        possible: which choices keep every limit.
    """

    limits: Limits
    depart: Minutes
    leave: Minutes
    arrive: Minutes
    home: Minutes
    enter: Minutes
    wait: Minutes
    visit: Minutes
    possible: NDArray[np.bool_]

    @classmethod
    def of(cls, limits: Limits) -> "Choices":
        """The choices of a day on its grid."""
        leave = _leaving_times(limits)
        return cls.between(limits, _departures(limits, leave), leave)

    @classmethod
    def between(cls, limits: Limits, depart: Minutes, leave: Minutes) -> "Choices":
        """Some departures with some leaving times, both in order, on the grid or off it [min].

        No departure is compared with the earliest that is allowed.
        """
        arrive, home = depart + limits.there.minutes(depart), leave + limits.back.minutes(leave)
        enter = _entries(limits, arrive, leave)
        visit = leave - enter
        possible = (visit >= limits.shortest) & (home <= limits.home_by)
        for start, end in limits.busy:
            possible &= (home <= start) | (depart >= end)[:, None]
        return cls(limits, depart, leave, arrive, home, enter, enter - arrive[:, None], visit, possible)

    def entering(self, opened: Opened) -> slice:
        """The columns of `enter` whose leaving times lie in a span of opening."""
        return slice(None) if self.enter.shape[1] < self.leave.size else _leave_within(opened, self.leave)


def _leave_within(opened: Opened, leave: Minutes) -> slice:
    """The leaving times inside a span of opening; a stay ends in the span it began in."""
    times = leave.tolist()
    return slice(bisect_left(times, opened.opens + 1), bisect_left(times, opened.closes + 1))


def _leaving_times(limits: Limits) -> Minutes:
    first = min(opened.opens for opened in limits.opened) + limits.shortest
    last = min(max(opened.closes for opened in limits.opened), limits.home_by - limits.back.quickest)
    return _on_grid(max(first, limits.not_before), last, limits.grid)


def _departures(limits: Limits, leave: Minutes) -> Minutes:
    last = int(leave[-1]) - limits.shortest - limits.there.quickest if leave.size else -1
    if limits.left is not None:
        return np.arange(limits.left, min(limits.left, last) + 1, dtype=np.int64)
    return _on_grid(limits.earliest, last, limits.grid)


def _entries(limits: Limits, arrive: Minutes, leave: Minutes) -> Minutes:
    first = limits.opened[0]
    if len(limits.opened) == 1 and leave.size and first.opens < leave[0] and leave[-1] <= first.closes:
        return first.enter(arrive)[:, None]
    enter = np.full((arrive.size, leave.size), NEVER)
    for opened in limits.opened:
        enter[:, _leave_within(opened, leave)] = opened.enter(arrive)[:, None]
    return enter


def _on_grid(first: int, last: int, grid: int) -> Minutes:
    return np.arange(-(-first // grid) * grid, last + 1, grid, dtype=np.int64)
