"""The best choices of many days in bare minutes, for whoever looks at a whole year."""

from collections.abc import Hashable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Any

import numpy as np
from numpy.typing import NDArray

from tripplan.planning.day.room import has_room
from tripplan.planning.day.times.choices import Choices, times_on_grid
from tripplan.planning.day.times.limits import NEVER, Engagements, Limits, keeps_clear
from tripplan.planning.day.times.minutes import DayMinutes, Minutes
from tripplan.planning.day.times.shapes import DayQuestion
from tripplan.planning.day.weighing.naps import out_at_lunch
from tripplan.planning.day.weighing.weighing import IMPOSSIBLE, LONGEST_AWAY, WeighedChoices

MOST_AT_ONCE = 48_000
"""So many choices are weighed in one array: larger ones no longer fit a processor's own memory [-]."""


@dataclass(frozen=True)
class BestChoice:
    """The plan that `plan_day` calls best, in minutes since midnight at home.

    Attributes:
        depart: when load-up begins at home [min].
        enter: when the party is let in [min].
        leave: when load-up for the way home begins [min].
        home: when everybody is home again [min].
        felt: what its nuisances weigh, in whole units of `weighing.UNITS`.
        nap_kept: of all usual naps together [min].
        nap_usual: their usual length together [min].
        lunch_out: whether the party is out at lunch time.
    """

    depart: int
    enter: int
    leave: int
    home: int
    felt: int
    nap_kept: int
    nap_usual: int
    lunch_out: bool


@dataclass(frozen=True)
class _Day:
    """One of the questions.

    Attributes:
        number: which of them.
        question, minutes, limits: the day, how it is counted and what may not be bent.
        engaged: the engagements, beside those of the question, to search it with, each time others.
    """

    number: int
    question: DayQuestion
    minutes: DayMinutes
    limits: Limits
    engaged: Sequence[Engagements]

    @classmethod
    def of(cls, number: int, question: DayQuestion, engaged: Sequence[Engagements]) -> "_Day":
        minutes = DayMinutes(question.day, question.home_zone)
        return cls(number, question, minutes, Limits.of(question, minutes), engaged)

    @cached_property
    def times(self) -> tuple[range, range]:
        """Its departures and leaving times."""
        return times_on_grid(self.limits)

    @property
    def size(self) -> tuple[int, int]:
        """How many of them it has."""
        departures, leaving_times = self.times
        return len(departures), len(leaving_times)

    @property
    def alike(self) -> Hashable:
        """The same for days that can be weighed in one array, see `WeighedChoices` and `Choices`."""
        question, hours = self.question, self.question.hours
        if question.begun is not None or any(show.worth_it for show in hours.shows):
            return self.number
        return (
            self.minutes if self.minutes.changes_clocks else None,
            question.home_zone,
            id(question.nappers),
            question.pushchairs,
            id(question.habits),
            id(question.worth),
            question.first_bed,
            len(hours.spans),
            bool(hours.entry_times),
            len(hours.group_spans),
            len(hours.quiet_spans),
            self.limits.there.same_all_day,
            self.limits.back.same_all_day,
        )


def best_between(
    questions: Sequence[DayQuestion], engaged: Sequence[Sequence[Engagements]]
) -> list[list[BestChoice | None]]:
    """The choice of least generalized cost on each day, as `plan_day` finds it, for each of some engagements.

    Days that are alike in all but their ways, hours and lengths of stay are weighed together. Each of them is
    weighed once, however many the engagements it is asked with.

    Args:
        questions: the days; the places must be open.
        engaged: for each day the engagements, beside its own, to search it with, each time others; `()` for
            none.

    Returns:
        For each day the best choice with each of these engagements; None where a day is impossible.
    """
    found: list[list[BestChoice | None]] = [[]] * len(questions)
    alike: dict[Hashable, list[_Day]] = {}
    for number, (question, with_these) in enumerate(zip(questions, engaged, strict=True)):
        day = _Day.of(number, question, with_these)
        if question.begun is None and not has_room(day.limits):
            found[number] = [None] * len(with_these)
        else:
            alike.setdefault(day.alike, []).append(day)
    for days in alike.values():
        for together in _together(days):
            for day, best in zip(together, _best_of(together), strict=True):
                found[day.number] = best
    return found


def _together(days: Iterable[_Day]) -> Iterator[list[_Day]]:
    """Those to weigh in one array: days with about as many departures and leaving times as each other."""
    together: list[_Day] = []
    departures = leaving_times = 0
    for day in sorted(days, key=lambda day: day.size):
        departures, leaving_times = day.size[0], max(leaving_times, day.size[1])
        if together and (len(together) + 1) * departures * leaving_times > MOST_AT_ONCE:
            yield together
            together, leaving_times = [], day.size[1]
        together.append(day)
    yield together


def _best_of(days: Sequence[_Day]) -> list[list[BestChoice | None]]:
    """The same of days that are alike."""
    departures, leaving_times = zip(*(day.times for day in days), strict=True)
    choices = Choices.at_times(tuple(day.limits for day in days), departures, leaving_times)
    if not choices.possible.size:
        return [[None] * len(day.engaged) for day in days]
    weighed = WeighedChoices(tuple(day.question for day in days), choices, tuple(day.minutes for day in days))
    of_days = zip(days, weighed.rank, choices.depart[:, :, 0], choices.home[:, 0], strict=True)
    found = [list(_best_clear_of(day.engaged, *of_day)) for day, *of_day in of_days]
    spots = [(number, *spot) for number, of_day in enumerate(found) for spot in of_day if spot is not None]
    told = iter(_told(weighed, np.array(spots, dtype=np.int64).reshape(-1, 3).T))
    return [[None if spot is None else next(told) for spot in of_day] for of_day in found]


def _best_clear_of(
    engaged: Iterable[Engagements], rank: Minutes, depart: Minutes, home: Minutes
) -> Iterator[tuple[int, int] | None]:
    """Which departure and leaving time of a day is best with each of some engagements; None if none can be.

    Args:
        engaged: the engagements, each time others.
        rank: as in `WeighedChoices`, of shape (departures, leaving times).
        depart: departures from home, in order [min].
        home: being home for each leaving time [min].
    """
    best = divmod(int(rank.argmin()), home.size)
    set_out, back = int(depart[best[0]]), int(home[best[1]])
    for engagements in engaged:
        # The best of all choices is the best of those that keep clear, if it is one.
        if keeps_clear(set_out, back, engagements):
            yield best if rank[best] < IMPOSSIBLE else None
        else:
            of_each = list(_best_in_each(_between(engagements), rank, depart, home))
            yield min(of_each)[1] if of_each else None


def _best_in_each(
    spans: Iterable[tuple[int, int]], rank: Minutes, depart: Minutes, home: Minutes
) -> Iterator[tuple[int, tuple[int, int]]]:
    """The rank of the best choice inside each span that has a possible one, and which it is."""
    for begins, ends in spans:
        first, columns = int(np.searchsorted(depart, begins)), np.flatnonzero(home <= ends)
        inside = rank[first:, columns]
        if inside.size:
            row, column = divmod(int(inside.argmin()), columns.size)
            if inside[row, column] < IMPOSSIBLE:
                yield int(inside[row, column]), (first + row, int(columns[column]))


def _between(engagements: Engagements) -> Iterator[tuple[int, int]]:
    """The times before, between and after engagements [min]."""
    begins = -NEVER
    for start, end in sorted(engagements):
        yield begins, start
        begins = max(begins, end)
    yield begins, NEVER


def _told(weighed: WeighedChoices, spots: NDArray[np.int64]) -> list[BestChoice]:
    """Some choices in bare minutes.

    Args:
        weighed: the days.
        spots: of each choice its day, departure and leaving time, in three rows.
    """
    choices, habits = weighed.choices, weighed.question.habits
    lunch = weighed.minutes[0].by_clock(habits.lunch)
    usual = sum(window.nap.minutes for window in weighed.windows)

    def at(found: NDArray[Any]) -> NDArray[Any]:
        # An axis of length one stands for all.
        of_each: NDArray[Any] = found[tuple(np.minimum(spots, np.array(found.shape)[:, None] - 1))]
        return of_each

    depart, home = at(choices.depart), at(choices.home)
    told = (
        depart,
        at(choices.enter),
        at(choices.leave),
        home,
        at(weighed.rank) // LONGEST_AWAY,
        at(weighed.kept),
        np.full_like(depart, usual),
        np.broadcast_to(out_at_lunch(lunch, habits, depart, home).ravel(), depart.shape),
    )
    return [BestChoice(*one) for one in zip(*(each.tolist() for each in told), strict=True)]
