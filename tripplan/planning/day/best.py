"""The best choices of many days in bare minutes, for whoever looks at a whole year."""

from collections.abc import Hashable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Any

import numpy as np
from numpy.typing import NDArray

from tripplan.planning.day.times.choices import Choices, times_on_grid
from tripplan.planning.day.times.limits import Engagements, Limits, keeps_clear
from tripplan.planning.day.times.minutes import DayMinutes, Minutes
from tripplan.planning.day.times.shapes import DayQuestion
from tripplan.planning.day.weighing.latest_start import BestSpots, Spot, about_the_same
from tripplan.planning.day.weighing.weighing import IMPOSSIBLE, LONGEST_AWAY, WeighedChoices

MOST_AT_ONCE = 100_000
"""So many choices are weighed in one array: larger ones no longer fit a processor's own memory, smaller ones
take longer to set up than to weigh [-]."""


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
        visit: time inside, without a lunch at the place [min].
        lunch_there: whether lunch is eaten at the place.
        least: when the plan leaves home that weighs the least, and when it is home again: the best leaves
            home no earlier and weighs about the same [min].
    """

    depart: int
    enter: int
    leave: int
    home: int
    felt: int
    nap_kept: int
    nap_usual: int
    visit: int
    lunch_there: bool
    least: tuple[int, int]

    def keeps_clear(self, engagements: Engagements) -> bool:
        """Whether it is also the best that keeps clear of engagements."""
        return keeps_clear(self.depart, self.home, engagements) and keeps_clear(*self.least, engagements)


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
            question.children,
            question.eats_there,
            id(question.habits),
            id(question.worth),
            question.first_bed,
            len(hours.spans),
            bool(hours.entry_times),
            len(hours.group_spans),
            len(hours.quiet_spans),
            self.limits.there.same_all_day,
            self.limits.back.same_all_day,
            question.money and question.money.hours.shape,
            question.currency,
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
        if not all(day.size):
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
    weighed = WeighedChoices(tuple(day.question for day in days), choices, tuple(day.minutes for day in days))
    apart = about_the_same(days[0].question.worth) * LONGEST_AWAY
    good_hour = weighed.minutes[0].by_clock(weighed.question.habits.usual_departure)
    depart, home = choices.depart[:, :, 0], choices.home[:, 0]
    spots = BestSpots.of(weighed.rank, depart, good_hour, apart)
    of_days = zip(days, weighed.rank, depart, home, spots.of_days, strict=True)
    found = [
        list(_best_clear_of(day.engaged, rank, depart, home, free, good_hour, apart))
        for day, rank, depart, home, free in of_days
    ]
    spots_told = [
        (number, *spot) for number, of_day in enumerate(found) for best in of_day if best for spot in best
    ]
    told = iter(_told(weighed, np.array(spots_told, dtype=np.int64).reshape(-1, 3).T))
    return [[None if best is None else next(told) for best in of_day] for of_day in found]


def _best_clear_of(
    engaged: Iterable[Engagements],
    rank: Minutes,
    depart: Minutes,
    home: Minutes,
    free: tuple[Spot, Spot],
    good_hour: int,
    apart: int,
) -> Iterator[tuple[Spot, Spot] | None]:
    """The best and the lightest choice of a day that are clear of some engagements; None if none can be.

    Args:
        engaged: the engagements, each time others.
        rank: as in `WeighedChoices`, of shape (departures, leaving times).
        depart: departures from home, in order [min].
        home: being home for each leaving time [min].
        free: the best and the lightest whatever is engaged.
        good_hour: as for `BestSpots.of` [min].
        apart: likewise.
    """
    for engagements in engaged:
        # The best of all choices is the best of those that keep clear, if it and the lightest are among them.
        if all(keeps_clear(int(depart[row]), int(home[column]), engagements) for row, column in free):
            found = rank, free
        else:
            clear = np.ones(rank.shape, dtype=np.bool_)
            for start, end in engagements:
                clear &= (home <= start) | (depart[:, None] >= end)
            kept = np.where(clear, rank, IMPOSSIBLE)
            clear_of = BestSpots.of(kept[None], depart[None], good_hour, apart)
            found = kept, next(clear_of.of_days)
        of_these, best = found
        yield best if of_these[best[0]] < IMPOSSIBLE else None


def _told(weighed: WeighedChoices, spots: NDArray[np.int64]) -> list[BestChoice]:
    """Some choices in bare minutes.

    Args:
        weighed: the days.
        spots: of each choice its day, departure and leaving time, in three rows; after each best choice comes
            the lightest one of the same search.
    """
    choices = weighed.choices
    usual = sum(window.nap.minutes for window in weighed.windows)

    def at(found: NDArray[Any]) -> NDArray[Any]:
        # An axis of length one stands for all.
        of_each: NDArray[Any] = found[tuple(np.minimum(spots, np.array(found.shape)[:, None] - 1))]
        return of_each

    lightest = zip(at(choices.depart)[1::2].tolist(), at(choices.home)[1::2].tolist(), strict=True)
    spots = spots[:, ::2]
    depart, home = at(choices.depart), at(choices.home)
    told = (
        depart,
        at(choices.enter),
        at(choices.leave),
        home,
        at(weighed.rank) // LONGEST_AWAY - sum(at(part) for part in weighed.money) * weighed.coin,
        at(weighed.kept),
        np.full_like(depart, usual),
        at(weighed.visit),
        at(weighed.lunch_there),
    )
    return [BestChoice(*one) for one in zip(*(each.tolist() for each in told), lightest, strict=True)]
