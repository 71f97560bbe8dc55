"""What a day can be traded for: nap kept against time at the place."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import timedelta
from decimal import Decimal

import numpy as np

from tripplan.language.sentences import Fact, fact
from tripplan.planning.day.relaxation import Relaxation, helps_most
from tripplan.planning.day.search import plan_day
from tripplan.planning.day.times.choices import Choices, Flags
from tripplan.planning.day.times.limits import Limits
from tripplan.planning.day.times.minutes import DayMinutes, Minutes
from tripplan.planning.day.times.shapes import DayPlan, DayQuestion, NuisanceCost
from tripplan.planning.day.weighing.weighing import WeighedChoices, plan_at
from tripplan.values.money import Money, total

MOST_POINTS = 5
"""More trade-offs than this only confuse; the two ends always stay [-]."""
APART_MINUTES = 15
"""Trade-offs closer than this in nap kept are one to a parent; the two ends always stay [min]."""
LEAST_TOLD_SHARE = Decimal("0.01")
"""Nuisances that weigh less than this share of the whole are told together [-]."""


@dataclass(frozen=True)
class TradeOff:
    """One way to spend the day of which nobody can have more nap without less time at the place.

    Attributes:
        plan: the day.
        kept_minutes: nap kept by all children together [min].
        stay_minutes: time awake at the place, as far as it is worth anything [min].
        against_best: what one gains and loses against the best plan.
    """

    plan: DayPlan
    kept_minutes: int
    stay_minutes: int
    against_best: Fact


@dataclass(frozen=True)
class TradeOffs:
    """What the best plan of a day weighs, and what it could be traded for.

    Attributes:
        best: the plan with the least generalized cost; None on an impossible day.
        parts: what its generalized cost is made of.
        points: the trade-offs, most nap first; one where nothing has to be traded, none on an impossible day.
        least: what the lightest plan weighs; the best may leave home later and weigh a little more.
        helps: the limit that would help most if it gave way a little; None where none helps.
    """

    best: DayPlan | None
    parts: tuple[NuisanceCost, ...]
    points: tuple[TradeOff, ...]
    least: Money
    helps: Relaxation | None

    @property
    def why(self) -> Fact | None:
        """Why the best is the best; None on an impossible day."""
        if self.best is None:
            return None
        if not self.parts:
            return fact("plan-best-weighs-nothing")
        told = [part for part in self.parts if part.felt.amount >= LEAST_TOLD_SHARE * self.best.felt.amount]
        parts = [fact("plan-part", what=part.said, felt=part.felt) for part in told]
        rest = self.best.felt - total((part.felt for part in told), self.best.felt.currency)
        if rest.rounded().amount > 0:
            parts.append(fact("plan-smaller-parts", felt=rest))
        if self.best.spent is not None:
            parts.insert(0, fact("plan-money-part", spent=self.best.spent))
        code = "plan-best-weighs-least" if self.best.weighs <= self.least else "plan-best-starts-latest"
        return fact(code, weighs=self.best.weighs, parts=tuple(parts))

    @property
    def what_helps(self) -> Fact:
        """Which limit helps most if it gives way."""
        return fact("plan-nothing-helps") if self.helps is None else self.helps.brings


def trade_offs(question: DayQuestion) -> TradeOffs:
    """What the day can be traded for, and what its best plan weighs.

    The trade-offs are exact: of all departures and leaving times of the search, those of which no other
    keeps as much nap with a longer stay, or as long a stay with more nap. A stay longer than comfortable
    counts as comfortable. Among plans that are equal in both, the one the search prefers is meant. Those
    that keep about as much nap as the one before are left out; where there are still more than five, every
    so many of them are told, both ends included.

    Args:
        question: the day.

    Returns:
        The trade-offs from most nap to longest stay.

    Raises:
        PlanError: the place is not open that day.
    """
    best = plan_day(question).best
    helps = helps_most(question, best)
    if best is None:
        return TradeOffs(None, (), (), Money.zero(question.currency), helps)
    minutes = DayMinutes(question.day, question.home_zone)
    choices = Choices.of(Limits.of(question, minutes))
    weighed = WeighedChoices.of(question, choices, minutes)
    kept = np.broadcast_to(weighed.kept, choices.visit.shape)[0]
    stay = np.minimum(np.broadcast_to(weighed.awake, choices.visit.shape)[0], question.comfortable_minutes)
    points = []
    lightest = divmod(int(weighed.rank[0].argmin()), choices.leave.size)
    front = _undominated(kept, stay, weighed.rank[0], choices.possible[0])
    for row, column in _thinned(_apart(front, kept)):
        plan = plan_at(weighed, row, column)
        points.append(
            TradeOff(
                plan=plan,
                kept_minutes=int(kept[row, column]),
                stay_minutes=int(stay[row, column]),
                against_best=against_best(question, plan, best),
            )
        )
    return TradeOffs(best, best.parts, tuple(points), plan_at(weighed, *lightest).weighs, helps)


def _undominated(kept: Minutes, stay: Minutes, rank: Minutes, possible: Flags) -> list[tuple[int, int]]:
    """Row and column of every choice that no other beats in both, most nap first."""
    rows, columns = np.nonzero(possible)
    # Most nap first, then the longest stay, then the least generalized cost, then the earliest: the first of
    # each nap is the only one that can be on the front, and is there if it stays longer than all before.
    order = np.lexsort((columns, rows, rank[rows, columns], -stay[rows, columns], -kept[rows, columns]))
    rows, columns = rows[order], columns[order]
    found: list[tuple[int, int]] = []
    longest = -1
    for row, column in zip(rows.tolist(), columns.tolist(), strict=True):
        if stay[row, column] > longest:
            longest = int(stay[row, column])
            found.append((row, column))
    return found


def _apart(front: list[tuple[int, int]], kept: Minutes) -> list[tuple[int, int]]:
    """Those of the front that keep so much less nap than the one before, with both ends."""
    *others, last = front
    found: list[tuple[int, int]] = []
    for spot in others:
        if not found or kept[found[-1]] - kept[spot] >= APART_MINUTES:
            found.append(spot)
    return [*found, last]


def _thinned(front: list[tuple[int, int]]) -> list[tuple[int, int]]:
    """At most `MOST_POINTS` of the front, evenly, with both ends."""
    if len(front) <= MOST_POINTS:
        return front
    return [front[number * (len(front) - 1) // (MOST_POINTS - 1)] for number in range(MOST_POINTS)]


def against_best(question: DayQuestion, plan: DayPlan, best: DayPlan) -> Fact:
    """What one gains and loses with a plan against the best, and what that weighs."""
    if plan == best:
        return fact("plan-is-best")
    differs = tuple(changes(question, plan, best)) or (fact("plan-no-difference"),)
    more = (plan.weighs - best.weighs).rounded()
    if more.amount > 0:
        return fact("plan-weighs-more", changes=differs, by=more)
    if more.amount < 0:  # between two minutes of the search's grid
        return fact("plan-weighs-less", changes=differs, by=best.weighs - plan.weighs)
    return fact("plan-weighs-same", changes=differs)


def changes(question: DayQuestion, plan: DayPlan, best: DayPlan) -> Iterator[Fact]:
    """What a plan has more or less of than another."""

    def stay(plan: DayPlan) -> int:
        return min(plan.awake_minutes, question.comfortable_minutes)

    def kept(plan: DayPlan) -> int:
        return sum(nap.kept_minutes for nap in plan.naps)

    asleep_there = any(one.awake_minutes < one.visit_minutes for one in (plan, best))
    differences = (
        ("plan-difference-nap", kept(plan) - kept(best)),
        ("plan-difference-awake" if asleep_there else "plan-difference-stay", stay(plan) - stay(best)),
        ("plan-difference-driving", plan.car_minutes - best.car_minutes),
    )
    for code, change in differences:
        if change:
            yield fact(code, by=timedelta(minutes=abs(change)), more=change > 0)
    if plan.spent is not None and best.spent is not None and plan.spent != best.spent:
        more = plan.spent - best.spent
        yield fact("plan-difference-money", by=Money(abs(more.amount), more.currency), more=more.amount > 0)
