"""Every choice of a day weighed in the parent's own money, and any of them as a plan."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal
from functools import reduce

import numpy as np

from tripplan.planning.day.felt import UNITS, Measure, Nuisance
from tripplan.planning.day.lateness import THOUSANDTHS, Lateness
from tripplan.planning.day.limits import NEVER, Choices
from tripplan.planning.day.minutes import DayMinutes, Minutes
from tripplan.planning.day.naps import NapWindow, Stretch, lunch_inside, nap_windows, outcome, stretches
from tripplan.planning.day.shapes import DayPlan, DayQuestion, ShowOutcome
from tripplan.planning.day.shows import Seen, with_shows
from tripplan.planning.day.steps import day_steps
from tripplan.planning.hours import ShowTimes
from tripplan.planning.money import Money

LONGEST_WAIT = 2**12
"""More than any wait [min]; felt cost times this plus the wait puts both in one whole number."""


@dataclass(frozen=True, eq=False)
class Weighed:
    """The choices of a day with what each of them weighs.

    Attributes:
        choices: departures and leaving times.
        lunch: when lunch begins and ends.
        windows: every usual nap.
        stretches: for each nap, in the same order, where it could be slept.
        shows: what is seen of each show that is worth it.
        nuisances: what is weighed.
        felt: felt cost of every choice in whole units; only meaningful where possible.
        kept: minutes of nap kept by all children together [min].
        rank: felt cost first, then the wait; the least is the best, impossible ones come last.
    """

    choices: Choices
    windows: tuple[NapWindow, ...]
    lunch: tuple[Minutes, Minutes]
    stretches: tuple[tuple[Stretch, ...], ...]
    shows: tuple[Seen, ...]
    nuisances: tuple[Nuisance, ...]
    felt: Minutes
    kept: Minutes
    rank: Minutes


def weigh(question: DayQuestion, choices: Choices, minutes: DayMinutes) -> Weighed:
    """Weigh every choice of a day; the nap model stands in `tripplan.planning.day.naps`."""
    windows = nap_windows(question.nappers, minutes)
    there = Lateness.there(question, choices.limits)
    lunch, shows = with_shows(
        question.hours.shows, choices, lunch_inside(choices, question, minutes), minutes, there
    )
    sleepable = tuple(stretches(window.nap, choices, question, lunch) for window in windows)
    kept = np.zeros_like(choices.visit)
    for window, places in zip(windows, sleepable, strict=True):
        kept += reduce(np.maximum, (window.kept(place.start, place.end, place.moved) for place in places))
    lost = sum(window.nap.minutes for window in windows) - kept
    nuisances = (
        Nuisance("lost nap", lost, question.worth.lost_nap_hour),
        *_of_the_road(question, choices),
        *_of_the_visit(question, choices, minutes),
        *_of_being_late(question, choices, minutes, there, shows),
    )
    felt = np.zeros_like(choices.visit)
    for nuisance in nuisances:
        felt += nuisance.units
    rank = np.where(choices.possible, felt * LONGEST_WAIT + _wait(choices), np.iinfo(np.int64).max)
    return Weighed(choices, windows, lunch, sleepable, shows, nuisances, felt, kept, rank)


def _wait(choices: Choices) -> Minutes:
    """Time between arriving and being let in [min]."""
    return choices.enter - choices.arrive[:, None]


def _of_the_road(question: DayQuestion, choices: Choices) -> Iterator[Nuisance]:
    worth, limits = question.worth, choices.limits
    out = limits.there.drive_minutes(choices.depart)[:, None]
    back = limits.back.drive_minutes(choices.leave)
    yield Nuisance("driving", out + back, worth.hour_in_car)
    yield Nuisance("waiting to be let in", _wait(choices), worth.hour_in_car)
    if question.patience_minutes is not None and worth.hour_past_patience:
        out = limits.there.impatient_minutes(choices.depart, question.patience_minutes)[:, None]
        back = limits.back.impatient_minutes(choices.leave, question.patience_minutes)
        yield Nuisance(
            "driving at a stretch beyond the children's patience", out + back, worth.hour_past_patience
        )


def _of_the_visit(question: DayQuestion, choices: Choices, minutes: DayMinutes) -> Iterator[Nuisance]:
    worth = question.worth
    short = np.maximum(question.comfortable_minutes - choices.visit, 0)
    yield Nuisance("stay cut short", short, worth.missed_hour_there)

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
        late = np.zeros((1, choices.leave.size), dtype=np.int64)
        for opened in choices.limits.opened:
            due = opened.enter(choices.arrive) if opened.entries is not None else np.array(opened.last_entry)
            chance = there.chance_after(choices.depart, due)[:, None]
            if not chance.any():
                continue
            late = np.broadcast_to(late, choices.visit.shape).copy()
            late[:, choices.leave_within(opened)] = chance
        timed = bool(question.hours.entry_times)
        name = f"coming too late for the {'timed' if timed else 'last'} entry"
        yield Nuisance(name, late, worth.missed_entry, Measure.CHANCE)
    for seen in shows:
        yield Nuisance(f"missing {seen.show.name}", seen.missed, worth.missed_show, Measure.CHANCE)
    if question.first_bed is not None and worth.hour_past_bedtime:
        bed = np.array(minutes.by_clock(question.first_bed))
        past = Lateness.back(question, choices.limits).expected_after(choices.leave, bed)
        yield Nuisance("being home after bedtime", past, worth.hour_past_bedtime, Measure.EXPECTED)


def plan_at(
    question: DayQuestion, weighed: Weighed, minutes: DayMinutes, row: int, column: int | None = None
) -> DayPlan:
    """One choice as a plan.

    Args:
        question: the day.
        weighed: its choices.
        minutes: how the day is counted.
        row: which departure.
        column: which leaving time; left out, the departure's best, the earliest among equals.
    """
    choices = weighed.choices
    if column is None:
        column = int(weighed.rank[row].argmin())
    depart, enter = int(choices.depart[row]), int(choices.enter[row, column])
    leave, home = int(choices.leave[column]), int(choices.home[column])
    lunch = (int(weighed.lunch[0][row, column]), int(weighed.lunch[1][row, column]))
    place_zone = question.place_zone
    shows = [
        (seen.show, int(seen.start[row, column]), int(seen.missed[row, column])) for seen in weighed.shows
    ]
    seen = [(show.name, start, start + show.minutes) for show, start, _ in shows if start < NEVER]
    parts = (nuisance.part(row, column, question.currency) for nuisance in weighed.nuisances)
    felt = Money(Decimal(int(weighed.felt[row, column])) / UNITS, question.currency).rounded()
    return DayPlan(
        leave_home=minutes.moment(depart, question.home_zone),
        enter=minutes.moment(enter, place_zone),
        leave_place=minutes.moment(leave, place_zone),
        home=minutes.moment(home, question.home_zone),
        steps=day_steps(question, minutes, depart=depart, enter=enter, leave=leave, lunch=lunch, shows=seen),
        naps=tuple(
            outcome(question, minutes, window, [place.at(row, column) for place in places])
            for window, places in zip(weighed.windows, weighed.stretches, strict=True)
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
