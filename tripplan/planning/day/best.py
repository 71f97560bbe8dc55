"""The best choices of many days in bare minutes, for whoever looks at a whole year."""

from collections.abc import Hashable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Any

import numpy as np
from numpy.typing import NDArray

from tripplan.planning.day.choices import Choices, times_on_grid
from tripplan.planning.day.limits import Limits
from tripplan.planning.day.minutes import DayMinutes
from tripplan.planning.day.naps import out_at_lunch
from tripplan.planning.day.shapes import DayQuestion
from tripplan.planning.day.weighing import LONGEST_AWAY, Weighed

MOST_AT_ONCE = 32_000
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
    """

    number: int
    question: DayQuestion
    minutes: DayMinutes
    limits: Limits

    @classmethod
    def of(cls, number: int, question: DayQuestion) -> "_Day":
        minutes = DayMinutes(question.day, question.home_zone)
        return cls(number, question, minutes, Limits.of(question, minutes))

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
        """The same for days that can be weighed in one array, see `Weighed` and `Choices`."""
        question, hours = self.question, self.question.hours
        if question.begun is not None or any(show.worth_it for show in hours.shows):
            return self.number
        return (
            self.minutes if self.minutes.changes_clocks else None,
            question.home_zone,
            question.nappers,
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


def best_choices(questions: Sequence[DayQuestion]) -> list[BestChoice | None]:
    """The choice with the least felt cost of each day, as `plan_day` finds it; None on an impossible day.

    Days that are alike in all but their ways, hours and lengths of stay are weighed together.

    Args:
        questions: the days; the places must be open.
    """
    found: list[BestChoice | None] = [None] * len(questions)
    alike: dict[Hashable, list[_Day]] = {}
    for number, question in enumerate(questions):
        day = _Day.of(number, question)
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


def _best_of(days: Sequence[_Day]) -> list[BestChoice | None]:
    """The same of days that are alike."""
    departures, leaving_times = zip(*(day.times for day in days), strict=True)
    choices = Choices.at_times(tuple(day.limits for day in days), departures, leaving_times)
    if not choices.possible.size:
        return [None] * len(days)
    weighed = Weighed(tuple(day.question for day in days), choices, tuple(day.minutes for day in days))
    habits, lunch = weighed.question.habits, weighed.minutes[0].by_clock(weighed.question.habits.lunch)
    usual = sum(window.nap.minutes for window in weighed.windows)
    of_best = weighed.rank.reshape(len(days), -1).argmin(axis=1)
    spots = np.array((np.arange(len(days)), *divmod(of_best, choices.leave.shape[2])))

    def best(found: NDArray[Any]) -> NDArray[Any]:
        # An axis of length one stands for all.
        at = np.minimum(spots, np.array(found.shape)[:, None] - 1)
        of_each: NDArray[Any] = found[tuple(at)]
        return of_each

    depart, home = best(choices.depart), best(choices.home)
    told = (
        depart,
        best(choices.enter),
        best(choices.leave),
        home,
        best(weighed.rank) // LONGEST_AWAY,
        best(weighed.kept),
        np.full_like(depart, usual),
        np.broadcast_to(out_at_lunch(lunch, habits, depart, home).ravel(), depart.shape),
    )
    figures = zip(*(each.tolist() for each in told), strict=True)
    possible = best(choices.possible).tolist()
    return [BestChoice(*one) if can else None for can, one in zip(possible, figures, strict=True)]
