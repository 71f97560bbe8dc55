"""Which limit of a day, if it gave way a little, would help most."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import time, timedelta

from tripplan.language.sentences import Fact, fact
from tripplan.planning.day.search import SMALL_LOSS_SHARE, plan_day
from tripplan.planning.day.times.shapes import DayPlan, DayQuestion
from tripplan.values.clocks import minute_of_day
from tripplan.values.money import Money

GIVES_WAY_MINUTES = 15
"""How far a limit gives way [min]."""


@dataclass(frozen=True)
class Relaxation:
    """A limit that gave way.

    Attributes:
        change: what gave way.
        plan: the best plan then.
        saves: how much less that plan weighs; None where the day was impossible before.
    """

    change: Fact
    plan: DayPlan
    saves: Money | None

    @property
    def brings(self) -> Fact:
        """What it would bring."""
        if self.saves is None:
            return fact("plan-change-makes-possible", change=self.change)
        return fact("plan-change-helps", change=self.change, saves=self.saves)


def helps_most(question: DayQuestion, best: DayPlan | None) -> Relaxation | None:
    """The one limit that helps most if it gives way by 15 minutes, everything else as asked.

    Each is tried with a whole search of its own.

    Args:
        question: the day.
        best: its best plan; None where it is impossible.

    Returns:
        The limit with the least generalized cost then, the first among equals; None where none helps by more
        than a share that makes departures about equally good.
    """
    found: Relaxation | None = None
    for change, asked in _loosened(question):
        plan = plan_day(asked).best
        if plan is None:
            continue
        saves = None if best is None else best.weighs - plan.weighs
        if best is not None and saves is not None and saves.amount <= SMALL_LOSS_SHARE * best.felt.amount:
            continue
        if found is None or plan.weighs < found.plan.weighs:
            found = Relaxation(change, plan, saves)
    return found


def _loosened(question: DayQuestion) -> Iterator[tuple[Fact, DayQuestion]]:
    """The day with one limit after the other given way: which, and as asked then."""
    habits = question.habits
    if question.begun is None:
        earlier = _moved(habits.earliest_departure, -GIVES_WAY_MINUTES)
        yield (
            fact("plan-change-leaving", then=earlier, now=habits.earliest_departure),
            replace(question, habits=habits.model_copy(update={"earliest_departure": earlier})),
        )
        wakes = question.last_wakes
        if wakes is not None and _ready(wakes, question) >= minute_of_day(habits.earliest_departure):
            earlier = _moved(wakes, -GIVES_WAY_MINUTES)
            yield (
                fact("plan-change-up", then=earlier, now=wakes),
                replace(question, last_wakes=earlier),
            )
        if question.most_driving_minutes is not None:
            more = question.most_driving_minutes + GIVES_WAY_MINUTES
            yield (
                fact("plan-change-driving", most=timedelta(minutes=more)),
                replace(question, most_driving_minutes=more),
            )
    later = _moved(habits.home_by, GIVES_WAY_MINUTES)
    yield (
        fact("plan-change-home", then=later, now=habits.home_by),
        replace(question, habits=habits.model_copy(update={"home_by": later})),
    )
    spans = tuple(
        replace(span, last_entry=min(span.closes, span.last_entry + timedelta(minutes=GIVES_WAY_MINUTES)))
        for span in question.hours.spans
    )
    if spans != question.hours.spans:
        yield (
            fact("plan-change-entry", minutes=GIVES_WAY_MINUTES),
            replace(question, hours=replace(question.hours, spans=spans)),
        )
    for change in (-GIVES_WAY_MINUTES, GIVES_WAY_MINUTES):
        lunch = _moved(habits.lunch, change)
        yield (
            fact("plan-change-lunch", then=lunch, now=habits.lunch),
            replace(question, habits=habits.model_copy(update={"lunch": lunch})),
        )
    if any(napper.latest_end is not None for napper in question.nappers):
        yield (
            fact("plan-change-nap-end", minutes=GIVES_WAY_MINUTES),
            replace(
                question,
                nappers=tuple(
                    napper
                    if napper.latest_end is None
                    else replace(napper, latest_end=_moved(napper.latest_end, GIVES_WAY_MINUTES))
                    for napper in question.nappers
                ),
            ),
        )
    for napper in question.nappers:
        freer = replace(
            napper,
            naps=tuple(
                nap.model_copy(update={"slack_minutes": nap.slack_minutes + GIVES_WAY_MINUTES})
                for nap in napper.naps
            ),
        )
        yield (
            fact("plan-change-nap", name=napper.member, minutes=GIVES_WAY_MINUTES),
            replace(
                question,
                nappers=tuple(freer if other is napper else other for other in question.nappers),
            ),
        )


def _ready(wakes: time, question: DayQuestion) -> int:
    """When everybody can leave who wakes by a time, by the clock at home [min]."""
    return minute_of_day(wakes) + question.ready_minutes


def _moved(clock: time, minutes: int) -> time:
    """A time of day moved by some minutes, within the same day."""
    moved = min(max(0, minute_of_day(clock) + minutes), 24 * 60 - 1)
    return time(moved // 60, moved % 60)
