"""Where in its plan a family stands at a moment of the day."""

from dataclasses import dataclass
from datetime import datetime

from tripplan.planning.day.shapes import DayPlan, SleepsIn, Step


@dataclass(frozen=True)
class Sleeper:
    """A child that should be asleep by now.

    Attributes:
        member: the child's name.
        place: where it sleeps.
        until: when it is woken, or wakes by itself.
    """

    member: str
    place: SleepsIn
    until: datetime


@dataclass(frozen=True)
class PlanNow:
    """A plan as it stands at a moment.

    Attributes:
        step: what is going on; None before leaving home and once everybody is home again.
        done: the steps that are over, in order.
        coming: the steps that are still to begin, in order.
        asleep: the children who should be asleep.
    """

    step: Step | None
    done: tuple[Step, ...]
    coming: tuple[Step, ...]
    asleep: tuple[Sleeper, ...]


def plan_now(plan: DayPlan, now: datetime) -> PlanNow:
    """Where in its plan a family stands; a step goes on up to the moment at which it ends.

    Args:
        plan: the day.
        now: the moment; zone-aware.
    """
    return PlanNow(
        step=next((step for step in plan.steps if step.start <= now < step.end), None),
        done=tuple(step for step in plan.steps if step.end <= now),
        coming=tuple(step for step in plan.steps if step.start > now),
        asleep=tuple(
            Sleeper(nap.member, place, end)
            for nap in plan.naps
            for place, start, end in nap.slept
            if start <= now < end
        ),
    )
