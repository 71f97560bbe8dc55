"""Where and when the family has lunch, for every choice.

* At home before leaving or after coming back; on the way at a halt that is long enough, packed; outside while
  waiting to be let in, packed; or at the place.
* At the place lunch is eaten inside, wherever in the visit it fits, but never during a show. With timed entry
  the whole visit is one entry or tour, and lunch comes after it. Where no own food is allowed, a packed lunch
  in or by the car ends the visit, unless what is sold inside is worth its price. Either takes its time out of
  the visit, of which the shortest has to be left.
* Each begins as near to lunch time as it can. Lunch weighs by how much earlier or later than usual it begins,
  and nobody eats more than `EARLIEST_MINUTES` before lunch time.
* Of these the one counts that weighs the least, with what it takes from the visit and what it costs more to
  eat at the place.

Source: common practice, no source; every figure is the parent's own setting.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property, reduce
from itertools import chain
from typing import Any

import numpy as np

from tripplan.language.sentences import Fact, fact
from tripplan.planning.day.times.choices import Choices, Flags
from tripplan.planning.day.times.legs import LegsOfDays
from tripplan.planning.day.times.minutes import DayMinutes, Minutes, a_day, chosen, combined
from tripplan.planning.day.times.shapes import DayQuestion, LunchPlace
from tripplan.planning.day.weighing.nuisances import Nuisance, Scale

_EARLY, _LATE = fact("plan-early-lunch"), fact("plan-late-lunch")
EARLIEST_MINUTES = 45
"""Nobody is hungry earlier than this before lunch time (common practice, no source) [min]."""
AT_A_REST_MINUTES = 15
"""A halt this long is enough for a packed lunch (common practice, no source) [min]."""

Weights = Minutes
"""By the `Scale` of the question."""
Choice = tuple[int, int, int]
"""Which day, departure and leaving time."""


@dataclass(frozen=True, eq=False)
class LunchOption:
    """One way to have lunch, for every choice.

    Attributes:
        place: where.
        begins_at: when, in one choice [min].
        minutes: how long it takes [min].
        weight: what its hour weighs; `Scale.cannot_be` or more where it does not fit.
    """

    place: LunchPlace
    begins_at: Callable[[Choice], int]
    minutes: int
    weight: Weights


@dataclass(frozen=True, eq=False)
class Lunch:
    """Where the family has lunch, for every choice; the best of all options.

    Attributes:
        elsewhere: the options that take nothing from the visit, in the order in which they are preferred.
        there: the option at the place.
        by_the_car: a packed one after the visit, where it could only be bought at the place; None elsewhere.
        at_the_place: in which choices the best of these two is the best of all.
        inside: in which choices it is the first of them.
        weight: what the hour of the best weighs.
        usual: lunch time [min].
    """

    elsewhere: tuple[LunchOption, ...]
    there: LunchOption
    by_the_car: LunchOption | None
    at_the_place: Flags
    inside: Flags
    weight: Weights
    usual: int

    def off_usual(self, at: Choice) -> tuple[Fact, int]:
        """Whether lunch is earlier or later than usual in one choice, and how much [min]."""
        off = self.chosen(at)[1] - self.usual
        return _EARLY if off < 0 else _LATE, abs(off)

    def chosen(self, at: Choice) -> tuple[LunchPlace, int, int]:
        """Where and from when to when lunch is in one choice [min]."""
        option = self.there
        if self.by_the_car is not None and not chosen(self.inside, at):
            option = self.by_the_car
        if not chosen(self.at_the_place, at):
            option = min(self.elsewhere, key=lambda option: chosen(option.weight, at))
        begins = option.begins_at(at)
        return option.place, begins, begins + option.minutes


@dataclass(frozen=True, eq=False)
class LunchQuestion:
    """What lunch rests on.

    Attributes:
        question: one of the days, for what is the same on all.
        choices: their departures and leaving times.
        minutes: how the days are counted.
        scale: how weights are.
        shows: when each show that is seen begins and ends, for every choice; several days have none [min].
    """

    question: DayQuestion
    choices: Choices
    minutes: DayMinutes
    scale: Scale
    shows: Sequence[tuple[Minutes, Minutes]] = ()

    @cached_property
    def usual(self) -> int:
        """Lunch time [min]."""
        return self.minutes.by_clock(self.question.habits.lunch)

    @property
    def lasts(self) -> int:
        """How long it takes [min]."""
        return self.question.habits.lunch_minutes

    def best(self, stay: "StayWorth", more: Weights) -> Lunch:
        """The best lunch of every choice.

        Args:
            stay: what time at the place is worth.
            more: what lunch at the place costs more than at home.
        """
        elsewhere = tuple(chain(self._at_home(), self._on_the_way(), self._waiting()))
        there = self._there()
        least = combined(np.minimum, (option.weight for option in elsewhere))
        bought, weight = combined(np.add, (there.weight, more)), there.weight
        by_the_car = self._by_the_car()
        if by_the_car is None:
            at_the_place = inside = combined(np.add, (bought, stay.lost(self.lasts))) < least
        else:
            inside = bought < by_the_car.weight
            taken = np.minimum(bought, by_the_car.weight)
            at_the_place = combined(np.add, (taken, stay.lost(self.lasts))) < least
            weight = np.where(inside, weight, by_the_car.weight)
            inside = inside & at_the_place
        weight = np.where(at_the_place, weight, least)
        return Lunch(elsewhere, there, by_the_car, at_the_place, inside, weight, self.usual)

    def _option(self, place: LunchPlace, begins: Minutes, fits: Flags | None = None) -> LunchOption:
        """An option that begins at some minutes, as far as it fits."""
        early, late = self._weighs(begins, begins)
        minutes = AT_A_REST_MINUTES if place is LunchPlace.CAR else self.lasts
        weight = early + late if fits is None else np.where(fits, early + late, self._cannot_be)
        return LunchOption(place, lambda at: chosen(begins, at), minutes, weight)

    def _weighs(self, first: Minutes, last: Minutes) -> tuple[Weights, Weights]:
        """What it weighs to begin no earlier than one minute, and what no later than another.

        The second is `Scale.cannot_be` where that is earlier than anybody is hungry.
        """
        worth = self.question.worth
        late = Nuisance(_LATE, np.maximum(first - self.usual, 0), worth.hour_late_lunch).weight(self.scale)
        early = np.maximum(self.usual - last, 0)
        weight = Nuisance(_EARLY, early, worth.hour_early_lunch).weight(self.scale)
        return late, np.where(early > EARLIEST_MINUTES, self._cannot_be, weight)

    @property
    def _cannot_be(self) -> np.signedinteger[Any]:
        return self.scale.kind(self.scale.cannot_be)

    def _at_home(self) -> Iterator[LunchOption]:
        choices = self.choices
        yield self._option(LunchPlace.HOME, np.minimum(choices.depart - self.lasts, self.usual))
        yield self._option(LunchPlace.HOME, np.maximum(choices.home, self.usual))

    def _on_the_way(self) -> Iterator[LunchOption]:
        choices = self.choices
        yield from self._at_halts(choices.there, choices.depart)
        yield from self._at_halts(choices.back, choices.leave)

    def _at_halts(self, ways: LegsOfDays, starts: Minutes) -> Iterator[LunchOption]:
        """At the first, second, ... halt that is long enough; a way that has no more never gets there."""
        halts = [
            [begins for begins, ends in leg.halting if ends - begins >= AT_A_REST_MINUTES]
            for leg in ways.legs
        ]
        for number in range(max(map(len, halts))):
            after = [of_leg[number] if number < len(of_leg) else -1 for of_leg in halts]
            since = ways.of_each(starts, after)
            yield self._option(LunchPlace.CAR, starts + since, since >= 0)

    def _waiting(self) -> Iterator[LunchOption]:
        choices = self.choices
        fits = choices.wait >= self.lasts
        if fits.any():
            begins = np.minimum(np.maximum(choices.arrive, self.usual), choices.enter - self.lasts)
            yield self._option(LunchPlace.OUTSIDE, begins, fits)

    @cached_property
    def _room(self) -> Flags:
        """Which visits are long enough to take lunch out of them."""
        shortest = a_day([limits.shortest for limits in self.choices.limits])
        room: Flags = self.choices.visit >= shortest + self.lasts
        return room

    def _by_the_car(self) -> LunchOption | None:
        """Packed, after the visit, where no own food is allowed inside but some is sold."""
        if self.question.own_food or not self.question.eats_there:
            return None
        return self._clear_of_shows(LunchPlace.OUTSIDE, [self.choices.leave - self.lasts], self._room)

    def _there(self) -> LunchOption:
        question, choices, usual = self.question, self.choices, self.usual
        room, last = self._room, choices.leave - self.lasts
        place = LunchPlace.THERE if question.eats_there else LunchPlace.OUTSIDE
        if question.hours.entry_times or not question.eats_there:
            return self._clear_of_shows(place, [last], room)
        if self.shows:
            nearest = np.minimum(np.maximum(choices.enter, usual), last)
            around = chain.from_iterable((begins - self.lasts, ends) for begins, ends in self.shows)
            return self._clear_of_shows(place, [nearest, *around], room)
        late, early = self._weighs(choices.enter, last)
        return LunchOption(
            place,
            lambda at: min(max(chosen(choices.enter, at), usual), chosen(last, at)),
            self.lasts,
            np.where(room, late + early, self._cannot_be),
        )

    def _clear_of_shows(self, place: LunchPlace, starts: Sequence[Minutes], room: Flags) -> LunchOption:
        """The best of some starts, the first among equals, that lies inside and meets no show."""
        choices, options = self.choices, []
        for begins in starts:
            fits = room
            if self.shows:
                fits = fits & (begins >= choices.enter) & (begins + self.lasts <= choices.leave)
            for show_begins, show_ends in self.shows:
                fits = fits & ((begins + self.lasts <= show_begins) | (begins >= show_ends))
            options.append(self._option(place, begins, fits))

        def begins_at(at: Choice) -> int:
            return min(options, key=lambda option: chosen(option.weight, at)).begins_at(at)

        weight = reduce(np.minimum, (option.weight for option in options))
        return LunchOption(place, begins_at, self.lasts, weight)


@dataclass(frozen=True, eq=False)
class StayWorth:
    """What time at the place is worth.

    Attributes:
        beyond: how much longer than comfortable the children are awake there if lunch takes nothing from it;
            below zero where it is shorter [min].
        missed, too_long: what a minute short of a comfortable stay weighs, and one beyond it.
    """

    beyond: Minutes
    missed: int
    too_long: int

    def lost(self, minutes: int) -> Weights:
        """What is lost if the visit is so many minutes shorter; below zero where it was too long."""
        spare = np.clip(self.beyond, 0, minutes)
        lost: Weights = self.missed * minutes - spare * (self.missed + self.too_long)
        return lost
