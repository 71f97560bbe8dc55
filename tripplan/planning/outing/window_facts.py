"""Good times to leave side by side: what each of them gives, a fact a row."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from tripplan.language import wording
from tripplan.language.sentences import say
from tripplan.planning.day import DayPlan, LeaveWindow, LunchPlace, StepKind
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
    return first if first == last else wording.from_to(first, last)


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
    yield say("answers-row-load-up"), (wording.clock(plan.leave_home) for plan in plans)
    yield say("answers-row-drive-off"), (wording.clock(plan.drive_off) for plan in plans)
    yield say("answers-row-let-in"), (_let_in(hours, plan) for plan in plans)
    yield say("answers-row-there"), (wording.minutes(plan.visit_minutes) for plan in plans)
    if hours.group_spans:
        yield (
            say("answers-row-school-groups"),
            (wording.minutes(minutes_among_classes(hours, plan)) for plan in plans),
        )
    yield say("answers-row-lunch"), (_lunch(plan) for plan in plans)
    for member, naps in naps_by_child(plans[0].naps).items():
        name = say("answers-row-naps-of", name=member, naps=len(naps))
        yield name, (child_naps_sentence(naps_by_child(plan.naps)[member]) for plan in plans)
    yield say("answers-row-both-ways"), (wording.minutes(plan.car_minutes) for plan in plans)
    yield say("answers-row-home"), (wording.clock(plan.home) for plan in plans)
    spent = [plan.spent for plan in plans if plan.spent is not None]
    if len(set(spent)) > 1:
        yield say("answers-row-total"), map(wording.money, spent)


def _let_in(hours: DayHours, plan: DayPlan) -> str:
    opens = any(span.opens == plan.enter for span in hours.spans)
    said = say("answers-let-in", at=plan.enter, opens=opens)
    waits = next((step for step in plan.steps if step.kind is StepKind.WAIT), None)
    if waits is not None:
        return say("answers-let-in-after", let_in=said, wait=waits.end - waits.start)
    return said


def _lunch(plan: DayPlan) -> str:
    if plan.lunch is None:
        return say("answers-no-lunch")
    return say("answers-lunch", at=plan.lunch.start, where=say(_LUNCH[plan.lunch.place]))


_LUNCH = {
    LunchPlace.HOME: "answers-lunch-home",
    LunchPlace.CAR: "answers-lunch-car",
    LunchPlace.OUTSIDE: "answers-lunch-outside",
    LunchPlace.THERE: "answers-lunch-there",
}
