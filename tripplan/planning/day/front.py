"""What a day can be traded for: nap kept against time at the place."""

from dataclasses import dataclass
from decimal import Decimal

import numpy as np

from tripplan.language import wording
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
LEAST_TOLD_SHARE = Decimal("0.01")
"""Nuisances that weigh less than this share of the whole are told together [-]."""


@dataclass(frozen=True)
class TradeOff:
    """One way to spend the day of which nobody can have more nap without less time at the place.

    Attributes:
        plan: the day.
        kept_minutes: nap kept by all children together [min].
        stay_minutes: time awake at the place, as far as it is worth anything [min].
        sentence: what one gains and loses against the best plan.
    """

    plan: DayPlan
    kept_minutes: int
    stay_minutes: int
    sentence: str


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
    def why(self) -> str:
        """Why the best is the best, in one sentence."""
        if self.best is None:
            return ""
        if not self.parts:
            return "The best plan has nothing that weighs: all naps kept, no drive, a comfortable stay."
        which = (
            "no other departure or return weighs less than"
            if self.best.weighs <= self.least
            else "this is the latest start of all that weigh about the least,"
        )
        told = [part for part in self.parts if part.felt.amount >= LEAST_TOLD_SHARE * self.best.felt.amount]
        said = [f"{part.said} {wording.money(part.felt)}" for part in told]
        rest = self.best.felt - total((part.felt for part in told), self.best.felt.currency)
        if rest.rounded().amount > 0:
            said.append(f"smaller ones {wording.money(rest)}")
        if self.best.spent is not None:
            said.insert(0, f"{wording.money(self.best.spent)} in money")
        return f"By what matters to you, {which} {wording.money(self.best.weighs)}: {wording.listed(said)}."

    @property
    def what_helps(self) -> str:
        """Which limit helps most if it gives way, in one sentence."""
        if self.helps is None:
            return "None of the limits helps if it gives way by 15 minutes."
        return self.helps.sentence


def trade_offs(question: DayQuestion) -> TradeOffs:
    """What the day can be traded for, and what its best plan weighs.

    The trade-offs are exact: of all departures and leaving times of the search, those of which no other
    keeps as much nap with a longer stay, or as long a stay with more nap. A stay longer than comfortable
    counts as comfortable. Among plans that are equal in both, the one the search prefers is meant. Where
    there are more than five, every so many of them are told, both ends included.

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
    for row, column in _thinned(_undominated(kept, stay, weighed.rank[0], choices.possible[0])):
        plan = plan_at(weighed, row, column)
        points.append(
            TradeOff(
                plan=plan,
                kept_minutes=int(kept[row, column]),
                stay_minutes=int(stay[row, column]),
                sentence=against_best(question, plan, best),
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


def _thinned(front: list[tuple[int, int]]) -> list[tuple[int, int]]:
    """At most `MOST_POINTS` of the front, evenly, with both ends."""
    if len(front) <= MOST_POINTS:
        return front
    return [front[number * (len(front) - 1) // (MOST_POINTS - 1)] for number in range(MOST_POINTS)]


def against_best(question: DayQuestion, plan: DayPlan, best: DayPlan) -> str:
    """What one gains and loses with a plan against the best, and what that weighs, in one sentence."""
    if plan == best:
        return "This is the best plan."
    said = wording.listed(changes(question, plan, best)) or "as much nap and as long a stay"
    more = (plan.weighs - best.weighs).rounded()
    if more.amount > 0:
        weighs = f"weighs {wording.money(more)} more than"
    elif more.amount < 0:  # between two minutes of the search's grid
        weighs = f"weighs {wording.money(best.weighs - plan.weighs)} less than"
    else:
        weighs = "weighs as much as"
    return f"{wording.capital(said)}: {weighs} the best plan."


def changes(question: DayQuestion, plan: DayPlan, best: DayPlan) -> list[str]:
    """What a plan has more or less of than another, as parts of a sentence."""

    def stay(plan: DayPlan) -> int:
        return min(plan.awake_minutes, question.comfortable_minutes)

    def kept(plan: DayPlan) -> int:
        return sum(nap.kept_minutes for nap in plan.naps)

    asleep_there = any(one.awake_minutes < one.visit_minutes for one in (plan, best))
    differences = (
        ("nap", kept(plan) - kept(best)),
        ("time awake there" if asleep_there else "time there", stay(plan) - stay(best)),
        ("driving", plan.car_minutes - best.car_minutes),
    )
    said = [
        f"{wording.minutes(abs(change))} {'more' if change > 0 else 'less'} {name}"
        for name, change in differences
        if change
    ]
    if plan.spent is not None and best.spent is not None and plan.spent != best.spent:
        more = plan.spent - best.spent
        amount = wording.money(Money(abs(more.amount), more.currency))
        said.append(f"{amount} {'more' if more.amount > 0 else 'less'} in money")
    return said
