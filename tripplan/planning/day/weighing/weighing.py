"""Every choice of a day weighed in the parent's own money, and any of them as a plan."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from decimal import Decimal
from functools import cached_property, reduce
from itertools import chain

import numpy as np

from tripplan.documents.family.member import Nap
from tripplan.language.sentences import fact
from tripplan.planning.day.times.choices import Choices, Flags
from tripplan.planning.day.times.hourly_money import MoneyOfDays
from tripplan.planning.day.times.legs import LegsOfDays
from tripplan.planning.day.times.limits import NEVER, Limits
from tripplan.planning.day.times.minutes import NARROW, DayMinutes, Minutes, a_day, chosen, combined
from tripplan.planning.day.times.shapes import (
    DayPlan,
    DayQuestion,
    LunchPlace,
    NuisanceCost,
    PlannedLunch,
    ShowOutcome,
)
from tripplan.planning.day.times.steps import day_steps
from tripplan.planning.day.weighing.lateness import THOUSANDTHS, Lateness
from tripplan.planning.day.weighing.latest_start import IMPOSSIBLE, Preference, about_the_same
from tripplan.planning.day.weighing.lunch import Lunch, LunchQuestion, StayWorth
from tripplan.planning.day.weighing.naps import (
    NapWindow,
    Sleep,
    Slept,
    Stretch,
    after_the_visit,
    before_the_visit,
    in_the_pushchair,
    nap_windows,
    outcome,
)
from tripplan.planning.day.weighing.nuisances import UNITS, WEATHER_PART, Measure, Nuisance, Scale, rate
from tripplan.planning.day.weighing.shows import ShowAttendance, seen_shows
from tripplan.planning.opening.hours import ShowTimes
from tripplan.values.money import Money, minor_digits

OUTDOORS, _LUNCH = fact("plan-outdoors"), fact("plan-lunch")
LONGEST_AWAY = 2**13
"""Longer than any day [min]; generalized cost times this plus the time away puts both in one whole number."""


@dataclass(frozen=True, eq=False)
class WeighedChoices:
    """The choices of some days with what each of them weighs; every part is worked out when first asked for.

    The nap model stands in `naps`, lunch in `lunch`, shows in `shows`.

    Attributes:
        questions: the days. They are alike: asked for the same party, habits, worth and pushchairs, with as
            many school-group spans and quiet spans; a day with shows or weather, or one that has begun, is
            weighed alone.
        choices: departures and leaving times.
        minutes: how each day is counted; what the clock at home shows is the same minute on all of them.
    """

    questions: tuple[DayQuestion, ...]
    choices: Choices
    minutes: tuple[DayMinutes, ...]

    @classmethod
    def of(cls, question: DayQuestion, choices: Choices, minutes: DayMinutes) -> "WeighedChoices":
        """One day alone."""
        return cls((question,), choices, (minutes,))

    @property
    def question(self) -> DayQuestion:
        """The first day, for what is the same on all."""
        return self.questions[0]

    @cached_property
    def windows(self) -> tuple[NapWindow, ...]:
        """Every usual nap."""
        return nap_windows(self.question.nappers, self.question.habits, self.minutes[0])

    @cached_property
    def stretches(self) -> tuple[list[Stretch], ...]:
        """For each nap, in the same order, where it could be slept."""
        return tuple(self._stretches(window.nap) for window in self.windows)

    def _stretches(self, nap: Nap) -> list[Stretch]:
        found = [*before_the_visit(nap, self.choices), *after_the_visit(nap, self.choices)]
        if nap.in_pushchair and self.question.pushchairs:
            found += in_the_pushchair(nap, self.choices)
        return found

    @cached_property
    def shows(self) -> tuple[ShowAttendance, ...]:
        """What is seen of each show that is worth it."""
        shows = self.question.hours.shows
        if not any(show.worth_it for show in shows):
            return ()
        return seen_shows(shows, self.choices, self.minutes[0], self._there)

    @cached_property
    def lunch(self) -> Lunch | None:
        """Where and when lunch is; None where nobody has any."""
        question, worth = self.question, self.question.worth
        if not question.habits.lunch_minutes:
            return None
        shows = [(seen.start, seen.start + seen.show.minutes) for seen in self.shows]
        beyond = self._not_asleep - self._comfortable
        missed, too_long = rate(worth.missed_hour_there), rate(worth.hour_beyond_comfortable)
        stay = StayWorth(beyond, missed // self.scale.unit, too_long // self.scale.unit)
        asked = LunchQuestion(question, self.choices, self.minutes[0], self.scale, shows)
        more = a_day([0]) if self._hourly is None or not question.eats_there else self._hourly[1]
        return asked.best(stay, more * (self.coin // self.scale.unit))

    @property
    def lunch_there(self) -> Flags:
        """Whether lunch is eaten at the place, as that allows it, instead of at home or packed."""
        if self.lunch is None or not self.question.eats_there:
            return np.zeros((1, 1, 1), dtype=np.bool_)
        return self.lunch.inside

    @property
    def visit(self) -> Minutes:
        """Time inside without lunch [min]."""
        return self._without_lunch(self.choices.visit)

    def _without_lunch(self, visit: Minutes) -> Minutes:
        if self.lunch is None:
            return visit
        without: Minutes = visit - self.question.habits.lunch_minutes * self.lunch.at_the_place.astype(NARROW)
        return without

    @property
    def _comfortable(self) -> Minutes:
        return a_day([each.comfortable_minutes for each in self.questions])

    @cached_property
    def slept(self) -> tuple[Slept, ...]:
        """What becomes of each nap."""
        naps = zip(self.windows, self.stretches, strict=True)
        return tuple(window.slept(each, self.choices.enter) for window, each in naps)

    @property
    def kept(self) -> Minutes:
        """Minutes of nap kept by all children together [min]."""
        return reduce(np.add, (nap.kept for nap in self.slept), a_day([0]))

    @property
    def children(self) -> int:
        """How many there are to see the place, one at least."""
        return max(self.question.children, len(self.question.nappers), 1)

    @property
    def awake(self) -> Minutes:
        """Time inside, without lunch, that the children are awake, on average [min]."""
        return self._without_lunch(self._not_asleep)

    @cached_property
    def _not_asleep(self) -> Minutes:
        """The same with lunch, wherever it is eaten; of an impossible choice any number [min]."""
        naps = zip(self.stretches, self.slept, strict=True)
        asleep = [nap.inside for stretches, nap in naps if any(each.at_the_place for each in stretches)]
        if not asleep:
            return self.choices.visit
        awake: Minutes = self.choices.visit - reduce(np.add, asleep) // self.children
        return awake

    def sleeping_through(self, seen: ShowAttendance) -> dict[str, Minutes]:
        """Whether each child that naps is asleep for half of a show or more, by name, for every choice."""
        found: dict[str, Minutes] = {}
        for window, nap in zip(self.windows, self.slept, strict=True):
            shared = np.minimum(nap.ends, seen.start + seen.show.minutes) - np.maximum(nap.begins, seen.start)
            asleep = (shared > 0) & (2 * shared >= seen.show.minutes)
            found[window.member] = found.get(window.member, a_day([0])) | asleep
        return found

    @cached_property
    def nuisances(self) -> tuple[Nuisance, ...]:
        """What is weighed."""
        return tuple(self._each_nuisance())

    def _each_nuisance(self) -> Iterator[Nuisance]:
        lost = sum(window.nap.minutes for window in self.windows) - self.kept
        yield Nuisance(fact("plan-lost-nap"), lost, self.question.worth.lost_nap_hour)
        yield from self._of_the_morning()
        yield from self._of_the_road()
        yield from self._of_the_visit()
        yield from self._of_the_weather()
        yield from self._of_lunch()
        yield from self._of_being_late()

    @cached_property
    def money(self) -> tuple[Minutes, ...]:
        """What hangs on the hour of what the outing costs, to be added up [smallest coins]."""
        if self._hourly is None:
            return ()
        at_home, more = self._hourly
        return at_home, more * self.lunch_there

    @cached_property
    def _hourly(self) -> tuple[Minutes, Minutes] | None:
        """What the outing costs with a lunch from home, and how much more with lunch at the place."""
        days = [question.money for question in self.questions if question.money is not None]
        if len(days) < len(self.questions):
            return None
        money, choices = MoneyOfDays.of(days), self.choices
        at_home, more = money.spent(money.number(choices.enter, choices.leave))
        return at_home.astype(self.scale.kind), more.astype(self.scale.kind)

    def spent(self, at: tuple[int, int, int]) -> int:
        """The same of one choice, of which day, departure and leaving time are given [smallest coins]."""
        return sum(chosen(part, at) for part in self.money)

    @property
    def coin(self) -> int:
        """How many of `UNITS` the smallest coin is."""
        return int(UNITS // 10 ** minor_digits(self.question.currency))

    @cached_property
    def scale(self) -> Scale:
        """How nuisances and money are counted until they are summed up."""
        of_days = (question.money.coins for question in self.questions if question.money is not None)
        coins = chain.from_iterable(each for each in chain.from_iterable(of_days) if each is not None)
        weather = self.question.weather
        return Scale.of(self.question.worth, self.coin, coins, weather.most if weather else 0)

    @cached_property
    def rank(self) -> Minutes:
        """Money and nuisances first, then the time away; the least is the best, impossible ones come last."""
        # Of many days they are not kept: memory that is used again at once stays in the processor's own.
        nuisances = self.nuisances if len(self.questions) == 1 else self._each_nuisance()
        choices, scale = self.choices, self.scale
        weights = (nuisance.weight(scale) for nuisance in nuisances)
        money = (part * (self.coin // scale.unit) for part in self.money)
        weighs = combined(np.add, chain(weights, money))
        rank: Minutes = np.multiply(weighs, scale.unit * LONGEST_AWAY, dtype=np.int64)
        rank = rank + (choices.home - choices.depart)
        np.putmask(rank, ~choices.possible, IMPOSSIBLE)
        return rank

    @cached_property
    def preference(self) -> Preference:
        """Which departure is best."""
        good_hour = self.minutes[0].by_clock(self.question.habits.usual_departure)
        return Preference(good_hour, about_the_same(self.question.worth) * LONGEST_AWAY)

    def _of_the_morning(self) -> Iterator[Nuisance]:
        price, usual = self.question.worth.hour_early_departure, self.question.habits.usual_departure
        early = np.maximum(self.minutes[0].by_clock(usual) - self.choices.depart, 0)
        if price and early.any():
            yield Nuisance(fact("plan-early-start"), early, price)

    def _of_the_road(self) -> Iterator[Nuisance]:
        worth, choices = self.question.worth, self.choices
        there, back = choices.there, choices.back
        driving = there.drive_minutes(choices.depart) + back.drive_minutes(choices.leave)
        yield Nuisance(fact("plan-driving"), driving, worth.hour_in_car)
        yield Nuisance(fact("plan-waiting"), choices.wait, worth.hour_in_car)
        out, home = (self._impatient_minutes(ways) for ways in (there, back))
        if any(out) or any(home):
            beyond = there.of_each(choices.depart, out) + back.of_each(choices.leave, home)
            yield Nuisance(fact("plan-impatience"), beyond, worth.hour_past_patience)

    def _impatient_minutes(self, ways: LegsOfDays) -> list[int]:
        """Driving at a stretch beyond the children's patience, all stretches together, for each leg [min]."""
        return [
            0
            if question.patience_minutes is None
            else sum(max(0, end - begin - question.patience_minutes) for begin, end in leg.stretches)
            for question, way in zip(self.questions, ways.ways, strict=True)
            for leg in way.legs
        ]

    def _of_the_visit(self) -> Iterator[Nuisance]:
        question, worth = self.question, self.question.worth
        missing = self._comfortable - self.awake
        yield Nuisance(fact("plan-short-stay"), np.maximum(missing, 0), worth.missed_hour_there)
        if worth.hour_beyond_comfortable:
            beyond = np.maximum(-missing, 0)
            yield Nuisance(fact("plan-long-stay"), beyond, worth.hour_beyond_comfortable)
        if question.hours.group_spans and worth.hour_among_classes:
            among, _ = self._spent_in([each.hours.group_spans for each in self.questions])
            yield Nuisance(fact("plan-among-classes"), among, worth.hour_among_classes)
        if question.hours.quiet_spans and worth.quiet_hour:
            spent, whole = self._spent_in([each.hours.quiet_spans for each in self.questions])
            yield Nuisance(fact("plan-quiet-hour-unused"), whole - spent, worth.quiet_hour)

    def _of_the_weather(self) -> Iterator[Nuisance]:
        """What being outdoors weighs on a day that is weighed alone."""
        weather, choices = self.question.weather, self.choices
        if weather is not None:
            parts = weather.weighs(0, choices.enter, choices.leave)
            weight = (parts * (WEATHER_PART // self.scale.unit)).astype(self.scale.kind)
            yield Nuisance(OUTDOORS, weight, Decimal(0), Measure.WEIGHED)

    def _spent_in(self, spans: Sequence[Sequence[tuple[datetime, datetime]]]) -> tuple[Minutes, Minutes]:
        """Time inside that lies in some spans, as many each day, and how long these are together [min]."""
        choices = self.choices
        spent, whole = np.zeros_like(choices.visit), a_day([0])
        for of_days in zip(*spans, strict=True):
            days = list(zip(self.minutes, of_days, strict=True))
            first = a_day([minutes.rounded_up(start) for minutes, (start, _) in days])
            last = a_day([minutes.rounded_down(end) for minutes, (_, end) in days])
            shared = np.minimum(choices.leave, last) - np.maximum(choices.enter, first)
            spent, whole = spent + np.maximum(shared, 0), whole + last - first
        return spent, whole

    def _of_lunch(self) -> Iterator[Nuisance]:
        worth = self.question.worth
        if self.lunch is not None and (worth.hour_early_lunch or worth.hour_late_lunch):
            yield Nuisance(_LUNCH, self.lunch.weight, Decimal(0), Measure.WEIGHED)

    def _of_being_late(self) -> Iterator[Nuisance]:
        worth, choices = self.question.worth, self.choices
        if worth.missed_entry:
            timed = bool(self.question.hours.entry_times)
            name = fact("plan-late-for-timed-entry" if timed else "plan-late-for-last-entry")
            yield Nuisance(name, self._too_late_to_enter(), worth.missed_entry, Measure.CHANCE)
        for seen in self.shows:
            asleep = reduce(np.add, self.sleeping_through(seen).values(), a_day([0]))
            unseen = seen.missed + (THOUSANDTHS - seen.missed) * asleep // self.children
            yield Nuisance(
                fact("plan-missed-show", show=seen.show.name), unseen, worth.missed_show, Measure.CHANCE
            )
        yield from late_home(self.question, choices.limits, choices.back, self.minutes[0], choices.leave)

    def _too_late_to_enter(self) -> Minutes:
        """The chance of that, in thousandths."""
        choices, there = self.choices, self._there
        late = a_day([0])
        for spans in choices.opened:
            if spans.entries is None and not there.may_be_late(choices.depart, spans.last_entry):
                continue
            due = spans.last_entry if spans.entries is None else spans.enter(choices.arrive)
            chance = there.chance_after(choices.depart, due)
            late = chance if len(choices.opened) == 1 else np.where(spans.holds(choices.leave), chance, late)
        return late

    @cached_property
    def _there(self) -> Lateness:
        return Lateness.there(self.question, self.choices.there)

    def sleeps(self, number: int, row: int, column: int) -> list[Sleep]:
        """Where one of the naps could be slept in one choice of the first day."""
        return [stretch.at((0, row, column)) for stretch in self.stretches[number]]


def late_home(
    question: DayQuestion,
    limits: Sequence[Limits],
    ways: LegsOfDays,
    minutes: DayMinutes,
    leave: Minutes,
) -> Iterator[Nuisance]:
    """What being home later than planned weighs, the visit having ended as planned.

    Args:
        question: one of the days, for what is the same on all.
        limits: one a day.
        ways: home.
        minutes: how the days are counted.
        leave: leaving times, the days along the first of three axes [min].
    """
    worth, back = question.worth, Lateness.back(question, ways)
    home_by = a_day([of_day.home_by for of_day in limits])
    dues = [(fact("plan-home-late"), home_by, worth.hour_past_home_by)]
    if question.first_bed is not None:
        bed = a_day([minutes.by_clock(question.first_bed)])
        dues.append((fact("plan-home-after-bedtime"), bed, worth.hour_past_bedtime))
    for name, due, price in dues:
        if price and back.may_be_late(leave, due):
            yield Nuisance(name, back.expected_after(leave, due), price, Measure.EXPECTED)


def plan_at(weighed: WeighedChoices, row: int, column: int | None = None) -> DayPlan:
    """One choice as a plan.

    Args:
        weighed: the choices of one day.
        row: which departure.
        column: which leaving time; left out, the departure's best, the earliest among equals.
    """
    question, choices, minutes = weighed.question, weighed.choices, weighed.minutes[0]
    if column is None:
        column = int(weighed.rank[0, row].argmin())
    at = (0, row, column)
    depart, enter = chosen(choices.depart, at), chosen(choices.enter, at)
    leave, home = chosen(choices.leave, at), chosen(choices.home, at)
    lunch = None if weighed.lunch is None else weighed.lunch.chosen(at)
    place_zone = question.place_zone
    shows = [
        (
            attended.show,
            chosen(attended.start, at),
            chosen(attended.missed, at),
            tuple(who for who, asleep in weighed.sleeping_through(attended).items() if chosen(asleep, at)),
        )
        for attended in weighed.shows
    ]
    seen = [(show.name, start, start + show.minutes) for show, start, *_ in shows if start < NEVER]
    spent = weighed.spent(at)
    felt = Decimal(chosen(weighed.rank, at) // LONGEST_AWAY - spent * weighed.coin) / UNITS
    return DayPlan(
        leave_home=minutes.moment(depart, question.home_zone),
        enter=minutes.moment(enter, place_zone),
        leave_place=minutes.moment(leave, place_zone),
        home=minutes.moment(home, question.home_zone),
        steps=day_steps(question, minutes, depart=depart, enter=enter, leave=leave, lunch=lunch, shows=seen),
        naps=tuple(
            outcome(question, minutes, window, weighed.sleeps(number, row, column))
            for number, window in enumerate(weighed.windows)
        ),
        visit_minutes=chosen(weighed.visit, at),
        awake_minutes=chosen(weighed.awake, at),
        car_minutes=question.way_there.at(depart).drive_minutes + question.way_home.at(leave).drive_minutes,
        felt=Money(felt, question.currency).rounded(),
        parts=tuple(part for part in _parts(weighed, at) if part.felt.amount),
        shows=tuple(_show_at(question, minutes, *show) for show in shows),
        spent=None if question.money is None else Money.from_minor(spent, question.currency),
        lunch=None if lunch is None else _lunch_at(question, minutes, *lunch),
    )


def _parts(weighed: WeighedChoices, at: tuple[int, int, int]) -> Iterator[NuisanceCost]:
    """What one choice weighs, nuisance by nuisance."""
    for nuisance in weighed.nuisances:
        part = nuisance.part(at, weighed.question.currency, weighed.scale)
        if nuisance.name == _LUNCH and weighed.lunch is not None:
            name, minutes = weighed.lunch.off_usual(at)
            said = fact("plan-minutes-of", what=name, minutes=timedelta(minutes=minutes))
            part = replace(part, name=name, said=said, minutes=minutes)
        yield part


def _lunch_at(
    question: DayQuestion, minutes: DayMinutes, place: LunchPlace, begins: int, ends: int
) -> PlannedLunch:
    on_the_road = place in (LunchPlace.HOME, LunchPlace.CAR)
    zone = question.home_zone if on_the_road else question.place_zone
    return PlannedLunch(place, minutes.moment(begins, zone), minutes.moment(ends, zone))


def _show_at(
    question: DayQuestion,
    minutes: DayMinutes,
    show: ShowTimes,
    start: int,
    missed: int,
    asleep: tuple[str, ...],
) -> ShowOutcome:
    zone = question.place_zone
    seen = (minutes.moment(start, zone), minutes.moment(start + show.minutes, zone))
    return ShowOutcome(show.name, None if start == NEVER else seen, missed / THOUSANDTHS, asleep)
