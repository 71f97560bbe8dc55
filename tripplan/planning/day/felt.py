"""What a day plan's felt cost is made of."""

from dataclasses import dataclass
from decimal import Decimal

from tripplan.planning.day.shapes import DayPlan, DayQuestion, StepKind
from tripplan.planning.money import Money


@dataclass(frozen=True)
class FeltPart:
    """One nuisance of a plan.

    Attributes:
        name: the nuisance, as part of a sentence.
        minutes: how much of it there is [min].
        per_hour: what an hour of it is worth to the parent.
        felt: what it weighs; exact, not rounded to a coin.
    """

    name: str
    minutes: int
    per_hour: Money
    felt: Money


def waited_minutes(plan: DayPlan) -> int:
    """Time between arriving and being let in [min]."""
    return sum(
        round((step.end - step.start).total_seconds() / 60)
        for step in plan.steps
        if step.kind is StepKind.WAIT
    )


def felt_parts(question: DayQuestion, plan: DayPlan) -> tuple[FeltPart, ...]:
    """The nuisances of a plan, those that weigh nothing left out.

    Args:
        question: the day, for the parent's prices and the comfortable stay.
        plan: one way to spend it.

    Returns:
        Lost nap, car, waiting and stay cut short; their sum is the plan's felt cost before rounding.
    """
    worth = question.worth
    nuisances = (
        ("lost nap", sum(nap.lost_minutes for nap in plan.naps), worth.lost_nap_hour),
        ("driving", plan.car_minutes, worth.hour_in_car),
        ("waiting to be let in", waited_minutes(plan), worth.hour_in_car),
        (
            "stay cut short",
            max(0, question.comfortable_minutes - plan.visit_minutes),
            worth.missed_hour_there,
        ),
    )
    return tuple(
        FeltPart(
            name,
            minutes,
            Money(per_hour, question.currency),
            Money(per_hour * Decimal(minutes) / 60, question.currency),
        )
        for name, minutes, per_hour in nuisances
        if minutes and per_hour
    )
