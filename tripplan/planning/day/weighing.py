"""Every choice of a day weighed in the parent's own money, and any of them as a plan."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal
from functools import cached_property, reduce

import numpy as np

from tripplan.planning.day.felt import UNITS, Measure, Nuisance
from tripplan.planning.day.lateness import THOUSANDTHS, Lateness
from tripplan.planning.day.limits import NEVER, Choices, Limits
from tripplan.planning.day.minutes import DayMinutes, Minutes, chosen, combined
from tripplan.planning.day.naps import (
    NapWindow,
    Sleep,
    Stretch,
    after_the_visit,
    before_the_visit,
    in_the_pushchair,
    kept_around_the_visit,
    lunch_inside,
    nap_windows,
    out_at_lunch,
    outcome,
)
from tripplan.planning.day.shapes import DayPlan, DayQuestion, ShowOutcome
from tripplan.planning.day.shows import Seen, with_shows
from tripplan.planning.day.steps import day_steps
from tripplan.planning.hours import ShowTimes
from tripplan.planning.money import Money

LONGEST_AWAY = 2**13
"""Longer than any day [min]; felt cost times this plus the time away puts both in one whole number."""


@dataclass(frozen=True, eq=False)
class Weighed:
    """The choices of a day with what each of them weighs; every part is worked out when first asked for.

    The nap model stands in `tripplan.planning.day.naps`, shows and lunch in `tripplan.planning.day.shows`.

    Attributes:
        question: the day.
        choices: departures and leaving times.
        minutes: how the day is counted.
    """

    question: DayQuestion
    choices: Choices
    minutes: DayMinutes

    @cached_property
    def windows(self) -> tuple[NapWindow, ...]:
        """Every usual nap."""
        return nap_windows(self.question.nappers, self.minutes)

    @cached_property
    def pushchair(self) -> tuple[list[Stretch], ...]:
        """For each nap, in the same order, when it could be slept in the pushchair."""
        return tuple(
            in_the_pushchair(window.nap, self.choices, self.lunch)
            if window.nap.in_pushchair and self.question.pushchairs
            else []
            for window in self.windows
        )

    @property
    def lunch(self) -> tuple[Minutes, Minutes]:
        """When lunch begins and ends."""
        return self._inside[0]

    @property
    def shows(self) -> tuple[Seen, ...]:
        """What is seen of each show that is worth it."""
        return self._inside[1] if any(show.worth_it for show in self.question.hours.shows) else ()

    @cached_property
    def kept(self) -> Minutes:
        """Minutes of nap kept by all children together [min]."""
        if not self.windows:
            return np.zeros((1, 1), dtype=np.int64)
        before, after = kept_around_the_visit(self.windows, self.choices)
        longest = list(np.maximum(before[:, :, None], after[:, None, :]))
        for number, window in enumerate(self.windows):
            for place in self.pushchair[number]:
                kept = window.kept(place.start, place.end, place.moved)
                longest[number] = np.maximum(longest[number], kept)
        return reduce(np.add, longest)

    @cached_property
    def nuisances(self) -> tuple[Nuisance, ...]:
        """What is weighed."""
        question, choices, minutes = self.question, self.choices, self.minutes
        lost = sum(window.nap.minutes for window in self.windows) - self.kept
        return (
            Nuisance("lost nap", lost, question.worth.lost_nap_hour),
            *_of_the_road(question, choices),
            *_of_the_visit(question, choices, minutes),
            *self._of_lunch(),
            *_of_being_late(question, choices, minutes, self._there, self.shows),
        )

    @cached_property
    def rank(self) -> Minutes:
        """Felt cost first, then the time away; the least is the best, impossible ones come last."""
        weights = [nuisance.weight(LONGEST_AWAY) for nuisance in self.nuisances]
        choices = self.choices
        rank = combined(np.add, [*weights, choices.home, -choices.depart[:, None]])
        np.putmask(rank, ~choices.possible, np.iinfo(np.int64).max)
        return rank

    def _of_lunch(self) -> Iterator[Nuisance]:
        habits, price = self.question.habits, self.question.worth.hour_late_lunch
        if not price or not habits.lunch_minutes:
            return
        usual, choices = self.minutes.by_clock(habits.lunch), self.choices
        if self.shows:
            begins, ends = self.lunch
            late, out = np.maximum(begins - usual, 0), ends > begins
        else:
            # A party that is let in after lunch time eats at once, so nothing rests on the leaving time.
            late = np.maximum(choices.enter - usual, 0)
            out = out_at_lunch(usual, habits, choices.depart[:, None], choices.home)
        if late.any():
            yield Nuisance("lunch later than usual", late * out, price)

    @cached_property
    def _there(self) -> Lateness:
        return Lateness.there(self.question, self.choices.limits)

    @cached_property
    def _inside(self) -> tuple[tuple[Minutes, Minutes], tuple[Seen, ...]]:
        lunch = lunch_inside(self.choices, self.question, self.minutes)
        return with_shows(self.question.hours.shows, self.choices, lunch, self.minutes, self._there)

    def sleeps(self, number: int, row: int, column: int) -> list[Sleep]:
        """Where one of the naps could be slept in one choice."""
        nap, limits = self.windows[number].nap, self.choices.limits
        depart, leave = int(self.choices.depart[row]), int(self.choices.leave[column])
        return [
            *(sleep.later(depart) for sleep in before_the_visit(nap, limits.there.way.at(depart))),
            *(sleep.later(leave) for sleep in after_the_visit(nap, limits.back.way.at(leave))),
            *(stretch.at(row, column) for stretch in self.pushchair[number]),
        ]


def felt_of(rank: int) -> int:
    """The felt cost in a rank, in whole units."""
    return rank // LONGEST_AWAY


def _of_the_road(question: DayQuestion, choices: Choices) -> Iterator[Nuisance]:
    worth, limits = question.worth, choices.limits
    out = limits.there.drive_minutes(choices.depart)[:, None]
    back = limits.back.drive_minutes(choices.leave)
    yield Nuisance("driving", out + back, worth.hour_in_car)
    yield Nuisance("waiting to be let in", choices.wait, worth.hour_in_car)
    longest = max(leg.drive_minutes for leg in (*limits.there.legs, *limits.back.legs))
    if question.patience_minutes is not None and question.patience_minutes < longest:
        out = limits.there.impatient_minutes(choices.depart, question.patience_minutes)[:, None]
        back = limits.back.impatient_minutes(choices.leave, question.patience_minutes)
        yield Nuisance(
            "driving at a stretch beyond the children's patience", out + back, worth.hour_past_patience
        )


def _of_the_visit(question: DayQuestion, choices: Choices, minutes: DayMinutes) -> Iterator[Nuisance]:
    worth = question.worth
    missing = question.comfortable_minutes - choices.visit
    yield Nuisance("stay cut short", np.maximum(missing, 0), worth.missed_hour_there)
    if worth.hour_beyond_comfortable:
        beyond = np.maximum(-missing, 0)
        yield Nuisance("staying on after a comfortable stay", beyond, worth.hour_beyond_comfortable)

    def spent_in(spans: Sequence[tuple[datetime, datetime]]) -> Minutes:
        """Time inside that lies in some spans [min]."""
        spent = np.zeros_like(choices.visit)
        for start, end in spans:
            first, last = minutes.rounded_up(start), minutes.rounded_down(end)
            spent += np.maximum(np.minimum(choices.leave, last) - np.maximum(choices.enter, first), 0)
        return spent

    if question.hours.group_spans and worth.hour_among_classes:
        among = spent_in(question.hours.group_spans)
        yield Nuisance("school classes around you", among, worth.hour_among_classes)
    quiet = question.hours.quiet_spans
    if quiet and worth.quiet_hour:
        whole = sum(minutes.rounded_down(end) - minutes.rounded_up(start) for start, end in quiet)
        yield Nuisance("the quiet hour not used", whole - spent_in(quiet), worth.quiet_hour)


def _of_being_late(
    question: DayQuestion, choices: Choices, minutes: DayMinutes, there: Lateness, shows: Sequence[Seen]
) -> Iterator[Nuisance]:
    worth = question.worth
    if worth.missed_entry:
        late = np.zeros_like(choices.enter)
        for opened in choices.limits.opened:
            if opened.entries is None and not there.may_be_late(choices.depart, opened.last_entry):
                continue
            due = opened.enter(choices.arrive) if opened.entries is not None else np.array(opened.last_entry)
            chance = there.chance_after(choices.depart, due)[:, None]
            late[:, choices.entering(opened)] = chance
        timed = bool(question.hours.entry_times)
        name = f"coming too late for the {'timed' if timed else 'last'} entry"
        yield Nuisance(name, late, worth.missed_entry, Measure.CHANCE)
    for seen in shows:
        yield Nuisance(f"missing {seen.show.name}", seen.missed, worth.missed_show, Measure.CHANCE)
    yield from late_home(question, choices.limits, minutes, choices.leave)


def late_home(
    question: DayQuestion, limits: Limits, minutes: DayMinutes, leave: Minutes
) -> Iterator[Nuisance]:
    """What being home later than planned weighs, for each leaving time; the visit has ended as planned."""
    worth, back = question.worth, Lateness.back(question, limits)
    dues = [("being home after the time you set", limits.home_by, worth.hour_past_home_by)]
    if question.first_bed is not None:
        bed = minutes.by_clock(question.first_bed)
        dues.append(("being home after bedtime", bed, worth.hour_past_bedtime))
    for name, due, price in dues:
        if price and back.may_be_late(leave, due):
            yield Nuisance(name, back.expected_after(leave, np.array(due)), price, Measure.EXPECTED)


def plan_at(weighed: Weighed, row: int, column: int | None = None) -> DayPlan:
    """One choice as a plan.

    Args:
        weighed: the choices of the day.
        row: which departure.
        column: which leaving time; left out, the departure's best, the earliest among equals.
    """
    question, choices, minutes = weighed.question, weighed.choices, weighed.minutes
    if column is None:
        column = int(weighed.rank[row].argmin())
    depart, enter = int(choices.depart[row]), chosen(choices.enter, row, column)
    leave, home = int(choices.leave[column]), int(choices.home[column])
    lunch = (int(weighed.lunch[0][row, column]), int(weighed.lunch[1][row, column]))
    place_zone = question.place_zone
    shows = [
        (seen.show, int(seen.start[row, column]), int(seen.missed[row, column])) for seen in weighed.shows
    ]
    seen = [(show.name, start, start + show.minutes) for show, start, _ in shows if start < NEVER]
    parts = (nuisance.part(row, column, question.currency) for nuisance in weighed.nuisances)
    felt = Money(Decimal(felt_of(int(weighed.rank[row, column]))) / UNITS, question.currency).rounded()
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
        car_minutes=question.way_there.at(depart).drive_minutes + question.way_home.at(leave).drive_minutes,
        felt=felt,
        parts=tuple(part for part in parts if part.felt.amount),
        shows=tuple(_show_at(question, minutes, *show) for show in shows),
    )


def _show_at(
    question: DayQuestion, minutes: DayMinutes, show: ShowTimes, start: int, missed: int
) -> ShowOutcome:
    zone = question.place_zone
    seen = (minutes.moment(start, zone), minutes.moment(start + show.minutes, zone))
    return ShowOutcome(show.name, None if start == NEVER else seen, missed / THOUSANDTHS)
