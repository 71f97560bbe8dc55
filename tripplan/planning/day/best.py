"""The best choices of many days in bare minutes, for whoever looks at a whole year."""

from collections.abc import Hashable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any
from zoneinfo import ZoneInfo

import numpy as np
from numpy.typing import NDArray

from tripplan.planning.day.times.choices import Choices, times_on_grid
from tripplan.planning.day.times.hourly_weather import HourlyWeather
from tripplan.planning.day.times.limits import Engagements, Limits, keeps_clear
from tripplan.planning.day.times.minutes import DayMinutes
from tripplan.planning.day.times.shapes import DayQuestion
from tripplan.planning.day.weighing.by_weather import best_in_weather
from tripplan.planning.day.weighing.latest_start import IMPOSSIBLE, BestSpots, Spot
from tripplan.planning.day.weighing.nuisances import WEATHER_PART
from tripplan.planning.day.weighing.weighing import LONGEST_AWAY, WeighedChoices

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
        felt: what its nuisances weigh without the weather it is asked in, in whole units of `weighing.UNITS`.
        nap_kept: of all usual naps together [min].
        nap_usual: their usual length together [min].
        visit: time inside, without a lunch at the place [min].
        lunch_there: whether lunch is eaten at the place.
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


@dataclass(frozen=True)
class Asked:
    """What a day is searched with, beside what its question says.

    Attributes:
        engagements: more times that it may not touch.
        weather: kinds of weather, each asked for by itself; None where weather does not count.
    """

    engagements: Engagements = ()
    weather: HourlyWeather | None = None


@dataclass(frozen=True)
class BestChoices:
    """What is found for it.

    Attributes:
        any_weather: whether any choice keeps the limits and is clear of the engagements in some weather.
        choices: the best in each kind of weather, or the best where weather does not count; None where there
            is none. Equal ones are the same object.
    """

    any_weather: bool
    choices: tuple[BestChoice | None, ...]


@dataclass(frozen=True)
class _Day:
    """One of the questions.

    Attributes:
        number: which of them.
        question, minutes, limits: the day, how it is counted and what may not be bent.
        departures, leaving_times: the times that are tried [min].
        asked: what to search it with.
    """

    number: int
    question: DayQuestion
    minutes: DayMinutes
    limits: Limits
    departures: range
    leaving_times: range
    asked: Sequence[Asked]

    @classmethod
    def of(cls, number: int, question: DayQuestion, minutes: DayMinutes, asked: Sequence[Asked]) -> "_Day":
        limits = Limits.of(question, minutes)
        return cls(number, question, minutes, limits, *times_on_grid(limits), asked)

    @property
    def size(self) -> tuple[int, int]:
        """How many departures and leaving times it has."""
        return len(self.departures), len(self.leaving_times)

    @property
    def alike(self) -> Hashable:
        """The same for days that can be weighed in one array, see `WeighedChoices` and `Choices`."""
        question, hours = self.question, self.question.hours
        alone = question.begun is not None or question.weather is not None
        if alone or any(show.worth_it for show in hours.shows):
            return self.number
        return (
            self.minutes if self.minutes.changes_clocks else None,
            question.home_zone,
            id(question.nappers),
            question.pushchairs,
            question.children,
            question.eats_there,
            question.own_food,
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
    questions: Sequence[DayQuestion], asked: Sequence[Sequence[Asked]]
) -> list[list[BestChoices]]:
    """The choice of least generalized cost on each day, as `plan_day` finds it, with each of what is asked.

    Days that are alike in all but their ways, hours and lengths of stay are weighed together. Each of them is
    weighed once, however many the engagements and kinds of weather it is asked with.

    Args:
        questions: the days; the places must be open.
        asked: what to search each of them with.

    Returns:
        For each day what is found with each of them.
    """
    found: list[list[BestChoices]] = [[]] * len(questions)
    alike: dict[Hashable, list[_Day]] = {}
    counted: dict[tuple[date, ZoneInfo], DayMinutes] = {}
    for number, (question, with_these) in enumerate(zip(questions, asked, strict=True)):
        date_and_zone = question.day, question.home_zone
        if date_and_zone not in counted:
            counted[date_and_zone] = DayMinutes(*date_and_zone)
        day = _Day.of(number, question, counted[date_and_zone], with_these)
        if all(day.size):
            alike.setdefault(day.alike, []).append(day)
        else:
            found[number] = [_none(each) for each in with_these]
    for days in alike.values():
        for together in _together(days):
            for day, best in zip(together, _best_of(together), strict=True):
                found[day.number] = best
    return found


def _none(asked: Asked) -> BestChoices:
    return BestChoices(False, (None,) * (1 if asked.weather is None else len(asked.weather)))


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


def _best_of(days: Sequence[_Day]) -> list[list[BestChoices]]:
    """The same of days that are alike."""
    choices = Choices.at_times(
        tuple(day.limits for day in days),
        [day.departures for day in days],
        [day.leaving_times for day in days],
    )
    weighed = WeighedChoices(tuple(day.question for day in days), choices, tuple(day.minutes for day in days))
    free = BestSpots.of(weighed.rank, choices.depart[:, :, 0], weighed.preference).of_days
    spots = [
        [_spots(weighed, number, asked, of_day) for asked in day.asked]
        for number, (day, of_day) in enumerate(zip(days, free, strict=True))
    ]
    chosen = {
        (number, *spot)
        for number, of_day in enumerate(spots)
        for of_asked in of_day
        for spot in of_asked or ()
        if spot is not None
    }
    in_rows = np.array(list(chosen), dtype=np.int64).reshape(-1, 3).T
    told = dict(zip(chosen, _told(weighed, in_rows), strict=True))
    return [
        [
            _none(asked)
            if of_asked is None
            else BestChoices(True, tuple(spot and told[number, *spot] for spot in of_asked))
            for asked, of_asked in zip(day.asked, of_day, strict=True)
        ]
        for number, (day, of_day) in enumerate(zip(days, spots, strict=True))
    ]


def _spots(
    weighed: WeighedChoices, number: int, asked: Asked, free: tuple[Spot, Spot]
) -> list[Spot | None] | None:
    """The best choice of a day in each kind of weather that is asked for; None where no choice is possible.

    Args:
        weighed: the days.
        number: which of them.
        asked: what to search it with.
        free: its best and its lightest choice whatever is engaged and whatever the weather.
    """
    choices, rank = weighed.choices, weighed.rank[number]
    depart, home = choices.depart[number, :, 0], choices.home[number, 0]
    # The best of all choices is the best of those that keep clear, if it and the lightest are among them.
    clear = all(keeps_clear(int(depart[row]), int(home[column]), asked.engagements) for row, column in free)
    if asked.engagements and not (clear and asked.weather is None):
        engaged = np.zeros(rank.shape, dtype=np.bool_)
        for start, end in asked.engagements:
            engaged |= (home > start) & (depart[:, None] < end)
        rank = np.where(engaged, IMPOSSIBLE, rank)
        free = next(BestSpots.of(rank[None], depart[None], weighed.preference).of_days)
    if rank[free[0]] == IMPOSSIBLE:
        return None
    if asked.weather is None:
        return [free[0]]
    times = depart, choices.enter[number], choices.leave[number, 0]
    part = WEATHER_PART * LONGEST_AWAY
    return list(best_in_weather(rank, times, asked.weather, part, weighed.preference))


def _told(weighed: WeighedChoices, spots: NDArray[np.int64]) -> list[BestChoice]:
    """Some choices in bare minutes.

    Args:
        weighed: the days.
        spots: of each choice its day, departure and leaving time, in three rows.
    """
    choices = weighed.choices
    usual = sum(window.nap.minutes for window in weighed.windows)

    def at(found: NDArray[Any]) -> NDArray[Any]:
        # An axis of length one stands for all.
        of_each: NDArray[Any] = found[tuple(np.minimum(spots, np.array(found.shape)[:, None] - 1))]
        return of_each

    depart = at(choices.depart)
    told = (
        depart,
        at(choices.enter),
        at(choices.leave),
        at(choices.home),
        at(weighed.rank) // LONGEST_AWAY - sum(at(part) for part in weighed.money) * weighed.coin,
        at(weighed.kept),
        np.full_like(depart, usual),
        at(weighed.visit),
        at(weighed.lunch_there),
    )
    return [BestChoice(*one) for one in zip(*(each.tolist() for each in told), strict=True)]
