"""Every choice of a day weighed in the parent's own money, and any of them as a plan."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal
from functools import cached_property, reduce
from itertools import chain

import numpy as np

from tripplan.documents.family.member import Nap
from tripplan.planning.day.times.choices import Choices, Flags
from tripplan.planning.day.times.hourly_money import MoneyOfDays
from tripplan.planning.day.times.legs import LegsOfDays
from tripplan.planning.day.times.limits import NEVER, Limits
from tripplan.planning.day.times.minutes import DayMinutes, Minutes, a_day, chosen, combined
from tripplan.planning.day.times.shapes import DayPlan, DayQuestion, ShowOutcome
from tripplan.planning.day.times.steps import day_steps
from tripplan.planning.day.weighing.lateness import THOUSANDTHS, Lateness
from tripplan.planning.day.weighing.naps import (
    LUNCH_CAN_WAIT_MINUTES,
    Lunch,
    NapWindow,
    Sleep,
    Slept,
    Stretch,
    after_the_visit,
    before_the_visit,
    in_the_pushchair,
    lunch_inside,
    nap_windows,
    out_at_lunch,
    outcome,
)
from tripplan.planning.day.weighing.nuisances import UNITS, Measure, Nuisance
from tripplan.planning.day.weighing.shows import ShowAttendance, with_shows
from tripplan.planning.opening.hours import ShowTimes
from tripplan.values.money import Money, minor_digits

LONGEST_AWAY = 2**13
"""Longer than any day [min]; generalized cost times this plus the time away puts both in one whole number."""

IMPOSSIBLE = int(np.iinfo(np.int64).max)
"""The rank of a choice that does not keep every limit."""


@dataclass(frozen=True, eq=False)
class WeighedChoices:
    """The choices of some days with what each of them weighs; every part is worked out when first asked for.

    The nap model stands in `naps`, shows and lunch in `shows`.

    Attributes:
        questions: the days. They are alike: asked for the same party, habits, worth and pushchairs, with as
            many school-group spans and quiet spans; a day with shows or one that has begun is weighed alone.
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
        return nap_windows(self.question.nappers, self.minutes[0])

    @cached_property
    def stretches(self) -> tuple[list[Stretch], ...]:
        """For each nap, in the same order, where it could be slept."""
        return tuple(self._stretches(window.nap) for window in self.windows)

    def _stretches(self, nap: Nap) -> list[Stretch]:
        found = [*before_the_visit(nap, self.choices), *after_the_visit(nap, self.choices)]
        if nap.in_pushchair and self.question.pushchairs:
            found += in_the_pushchair(nap, self.choices)
        return found

    @property
    def lunch(self) -> Lunch:
        """When lunch is."""
        return self._inside[0]

    @property
    def shows(self) -> tuple[ShowAttendance, ...]:
        """What is seen of each show that is worth it."""
        return self._inside[1] if any(show.worth_it for show in self.question.hours.shows) else ()

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

    @cached_property
    def awake(self) -> Minutes:
        """Time inside that the children are awake, on average; of an impossible choice any number [min]."""
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
        yield Nuisance("lost nap", lost, self.question.worth.lost_nap_hour)
        yield from self._of_the_morning()
        yield from self._of_the_road()
        yield from self._of_the_visit()
        yield from self._of_lunch()
        yield from self._of_being_late()

    @property
    def lunch_out(self) -> Flags:
        """Whether the party is out at lunch."""
        habits, choices = self.question.habits, self.choices
        return out_at_lunch(self.minutes[0].by_clock(habits.lunch), habits, choices.depart, choices.home)

    @cached_property
    def money(self) -> tuple[Minutes, ...]:
        """What hangs on the hour of what the outing costs, to be added up [smallest coins]."""
        days = [question.money for question in self.questions if question.money is not None]
        if len(days) < len(self.questions):
            return ()
        money, choices = MoneyOfDays.of(days), self.choices
        at_home, more = money.spent(money.number(choices.enter, choices.leave))
        return at_home, more * self.lunch_out

    def spent(self, at: tuple[int, int, int]) -> int:
        """The same of one choice, of which day, departure and leaving time are given [smallest coins]."""
        return sum(chosen(part, at) for part in self.money)

    @property
    def coin(self) -> int:
        """How many of `UNITS` the smallest coin is."""
        return int(UNITS // 10 ** minor_digits(self.question.currency))

    @cached_property
    def rank(self) -> Minutes:
        """Money and nuisances first, then the time away; the least is the best, impossible ones come last."""
        # Of many days they are not kept: memory that is used again at once stays in the processor's own.
        nuisances = self.nuisances if len(self.questions) == 1 else self._each_nuisance()
        weights = (nuisance.weight(LONGEST_AWAY) for nuisance in nuisances)
        choices, coin = self.choices, self.coin * LONGEST_AWAY
        money = (part * coin for part in self.money)
        rank = combined(np.add, chain(weights, money, (choices.home, -choices.depart)))
        np.putmask(rank, ~choices.possible, IMPOSSIBLE)
        return rank

    def _of_the_morning(self) -> Iterator[Nuisance]:
        price, usual = self.question.worth.hour_early_departure, self.question.habits.usual_departure
        early = np.maximum(self.minutes[0].by_clock(usual) - self.choices.depart, 0)
        if price and early.any():
            yield Nuisance("leaving home early", early, price)

    def _of_the_road(self) -> Iterator[Nuisance]:
        worth, choices = self.question.worth, self.choices
        there, back = choices.there, choices.back
        driving = there.drive_minutes(choices.depart) + back.drive_minutes(choices.leave)
        yield Nuisance("driving", driving, worth.hour_in_car)
        yield Nuisance("waiting to be let in", choices.wait, worth.hour_in_car)
        out, home = (self._impatient_minutes(ways) for ways in (there, back))
        if any(out) or any(home):
            beyond = there.of_each(choices.depart, out) + back.of_each(choices.leave, home)
            yield Nuisance(
                "driving at a stretch beyond the children's patience", beyond, worth.hour_past_patience
            )

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
        missing = a_day([each.comfortable_minutes for each in self.questions]) - self.awake
        yield Nuisance("stay cut short", np.maximum(missing, 0), worth.missed_hour_there)
        if worth.hour_beyond_comfortable:
            beyond = np.maximum(-missing, 0)
            yield Nuisance("staying on after a comfortable stay", beyond, worth.hour_beyond_comfortable)
        if question.hours.group_spans and worth.hour_among_classes:
            among, _ = self._spent_in([each.hours.group_spans for each in self.questions])
            yield Nuisance("school classes around you", among, worth.hour_among_classes)
        if question.hours.quiet_spans and worth.quiet_hour:
            spent, whole = self._spent_in([each.hours.quiet_spans for each in self.questions])
            yield Nuisance("the quiet hour not used", whole - spent, worth.quiet_hour)

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
        habits, price = self.question.habits, self.question.worth.hour_late_lunch
        if not price or not habits.lunch_minutes:
            return
        usual, choices = self.minutes[0].by_clock(habits.lunch), self.choices
        if self.shows:
            late, out = np.maximum(self.lunch.begins - usual, 0), self.lunch.inside
        else:
            # A party that is let in after lunch time eats at once, and then stays and drives home.
            late = np.maximum(choices.enter - usual, 0)
            away = min(limits.shortest + limits.back.quickest for limits in choices.limits)
            home = a_day([NEVER]) if away >= LUNCH_CAN_WAIT_MINUTES else choices.home
            out = out_at_lunch(usual, habits, choices.depart, home)
        if late.any():
            yield Nuisance("lunch later than usual", late * out, price)

    def _of_being_late(self) -> Iterator[Nuisance]:
        worth, choices = self.question.worth, self.choices
        if worth.missed_entry:
            timed = bool(self.question.hours.entry_times)
            name = f"coming too late for the {'timed' if timed else 'last'} entry"
            yield Nuisance(name, self._too_late_to_enter(), worth.missed_entry, Measure.CHANCE)
        for seen in self.shows:
            asleep = reduce(np.add, self.sleeping_through(seen).values(), a_day([0]))
            unseen = seen.missed + (THOUSANDTHS - seen.missed) * asleep // self.children
            yield Nuisance(f"missing {seen.show.name}", unseen, worth.missed_show, Measure.CHANCE)
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

    @cached_property
    def _inside(self) -> tuple[Lunch, tuple[ShowAttendance, ...]]:
        lunch = lunch_inside(self.choices, self.question, self.minutes[0])
        return with_shows(self.question.hours.shows, self.choices, lunch, self.minutes[0], self._there)

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
    dues = [("being home after the time you set", home_by, worth.hour_past_home_by)]
    if question.first_bed is not None:
        bed = a_day([minutes.by_clock(question.first_bed)])
        dues.append(("being home after bedtime", bed, worth.hour_past_bedtime))
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
    eats = chosen(weighed.lunch.begins, at)
    lunch = (eats, eats + chosen(weighed.lunch.minutes, at) * chosen(weighed.lunch.inside, at))
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
    parts = (nuisance.part(at, question.currency) for nuisance in weighed.nuisances)
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
        visit_minutes=leave - enter,
        awake_minutes=chosen(weighed.awake, at),
        car_minutes=question.way_there.at(depart).drive_minutes + question.way_home.at(leave).drive_minutes,
        felt=Money(felt, question.currency).rounded(),
        parts=tuple(part for part in parts if part.felt.amount),
        shows=tuple(_show_at(question, minutes, *show) for show in shows),
        spent=None if question.money is None else Money.from_minor(spent, question.currency),
    )


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
