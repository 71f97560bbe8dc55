"""What a day plan meets at the place: shows, school classes, a quiet hour."""

from collections.abc import Iterator, Sequence
from datetime import datetime, timedelta

from tripplan.language.sentences import Fact, fact
from tripplan.planning.day import DayPlan, ShowOutcome, Slack
from tripplan.planning.opening.hours import DayHours, ShowTimes
from tripplan.values.units import Chance

_Spans = Sequence[tuple[datetime, datetime]]
LIKELY = 0.5
"""A smaller chance to be home in time is told as unlikely. No source, our choice [0-1]."""
WORTH_TELLING = 0.02
"""A smaller chance to come too late for a show is not told [0-1]."""


def visit_notes(hours: DayHours, plan: DayPlan) -> Iterator[Fact]:
    """What the plan meets at the place.

    Args:
        hours: the day at the place.
        plan: one way to spend it.
    """
    yield from _asleep_there(plan)
    starts = {show.name: show for show in hours.shows}
    yield from (_show(outcome, starts[outcome.name]) for outcome in plan.shows)
    for show in hours.shows:
        if not show.worth_it:
            yield fact("notes-show-beside", show=show.name, starts=show.starts)
    yield from _classes(hours.group_spans, plan)
    for start, end in hours.quiet_spans:
        inside = timedelta(minutes=_shared((start, end), plan))
        yield fact("notes-quiet-hour", start=start, end=end, inside=inside, there=bool(inside))


def drive_notes(plan: DayPlan, slack: Slack) -> Iterator[Fact]:
    """Where a plan is hardly worth its driving, or will hardly hold in the evening.

    Args:
        plan: one way to spend the day.
        slack: how likely it holds.
    """
    if 2 * plan.awake_minutes < plan.car_minutes:
        yield fact(
            "notes-much-driving",
            drives=timedelta(minutes=plan.car_minutes),
            there=timedelta(minutes=plan.awake_minutes),
            asleep=plan.awake_minutes < plan.visit_minutes,
        )
    if slack.home_in_time < LIKELY:
        yield fact("notes-late-home", latest=slack.home_by, odds=Chance(slack.home_in_time))


def _asleep_there(plan: DayPlan) -> Iterator[Fact]:
    """Who sleeps for how much of the visit."""
    for nap in plan.naps:
        inside = round(sum(_shared((start, end), plan) for _, start, end in nap.slept))
        if inside:
            asleep, visit = timedelta(minutes=inside), timedelta(minutes=plan.visit_minutes)
            yield fact("notes-asleep-there", name=nap.member, asleep=asleep, visit=visit)


def minutes_among_classes(hours: DayHours, plan: DayPlan) -> float:
    """Time inside while school classes usually fill the place [min]."""
    return sum(_shared(span, plan) for span in hours.group_spans)


def _show(outcome: ShowOutcome, show: ShowTimes) -> Fact:
    """Whether a show is seen, and how sure that is."""
    if outcome.seen is None:
        return fact("notes-show-missed", show=show.name, starts=show.starts)
    start, end = outcome.seen
    return fact(
        "notes-show-seen",
        show=show.name,
        start=start,
        end=end,
        asleep=outcome.asleep,
        sleepers=len(outcome.asleep),
        late=Chance(outcome.missed_chance),
        may_be_late=outcome.missed_chance >= WORTH_TELLING,
    )


def _classes(spans: _Spans, plan: DayPlan) -> Iterator[Fact]:
    """How the time inside lies to the hours in which school classes come."""
    for start, end in spans:
        inside = timedelta(minutes=_shared((start, end), plan))
        if inside:
            yield fact("notes-among-classes", start=start, end=end, inside=inside)
        elif plan.enter >= end:
            yield fact("notes-after-classes", start=start, end=end, enters=plan.enter)
        else:
            yield fact("notes-before-classes", start=start, end=end, leaves=plan.leave_place)


def _shared(span: tuple[datetime, datetime], plan: DayPlan) -> float:
    """Time inside that lies in a span [min]."""
    start, end = max(span[0], plan.enter), min(span[1], plan.leave_place)
    return max(0.0, (end - start).total_seconds() / 60)
