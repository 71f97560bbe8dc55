"""Good times to leave side by side: what each of them gives, a fact a row."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from tripplan.language import wording
from tripplan.planning.day import DayPlan, LeaveWindow, StepKind
from tripplan.planning.opening.hours import DayHours
from tripplan.planning.outing.sentences import child_naps_sentence, naps_by_child
from tripplan.planning.outing.visit_notes import minutes_among_classes


@dataclass(frozen=True)
class WindowFact:
    """One fact about several leave windows.

    Attributes:
        name: what it is about.
        of_each: what is so, a window each.
    """

    name: str
    of_each: tuple[str, ...]


def span_sentence(window: LeaveWindow) -> str:
    """The departures of a window, such as '8:15 AM to 8:30 AM'."""
    first, last = wording.clock(window.first), wording.clock(window.last)
    return first if first == last else f"{first} to {last}"


def window_facts(hours: DayHours, windows: Sequence[LeaveWindow]) -> tuple[WindowFact, ...]:
    """What the best plan of each window gives, in the order of the day.

    Args:
        hours: the day at the place.
        windows: at least one.
    """
    return tuple(
        WindowFact(name, tuple(said)) for name, said in _facts(hours, [window.best for window in windows])
    )


def _facts(hours: DayHours, plans: Sequence[DayPlan]) -> Iterator[tuple[str, Iterator[str]]]:
    yield "load up", (wording.clock(plan.leave_home) for plan in plans)
    yield "drive off", (wording.clock(plan.drive_off) for plan in plans)
    yield "let in", (_let_in(hours, plan) for plan in plans)
    yield "time there", (wording.minutes(plan.visit_minutes) for plan in plans)
    if hours.group_spans:
        yield (
            "with school groups there",
            (wording.minutes(minutes_among_classes(hours, plan)) for plan in plans),
        )
    yield "lunch", (_lunch(plan) for plan in plans)
    for member, naps in naps_by_child(plans[0].naps).items():
        name = f"{member}'s {'naps' if len(naps) > 1 else 'nap'}"
        yield name, (child_naps_sentence(naps_by_child(plan.naps)[member]) for plan in plans)
    yield "driving, both ways", (wording.minutes(plan.car_minutes) for plan in plans)
    yield "home", (wording.clock(plan.home) for plan in plans)
    spent = [plan.spent for plan in plans if plan.spent is not None]
    if len(set(spent)) > 1:
        yield "in all", map(wording.money, spent)


def _let_in(hours: DayHours, plan: DayPlan) -> str:
    said = wording.clock(plan.enter)
    if any(span.opens == plan.enter for span in hours.spans):
        said += ", as it opens"
    waits = next((step for step in plan.steps if step.kind is StepKind.WAIT), None)
    if waits is not None:
        said += f", after waiting {wording.minutes((waits.end - waits.start).total_seconds() / 60)}"
    return said


def _lunch(plan: DayPlan) -> str:
    if plan.lunch is None:
        return "none"
    return f"{wording.clock(plan.lunch.start)}, {plan.lunch.place}"
