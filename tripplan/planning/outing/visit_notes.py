"""What a day plan meets at the place, in sentences: shows, school classes, a quiet hour."""

from collections.abc import Iterator, Sequence
from datetime import datetime

from tripplan.language import wording
from tripplan.planning.day import DayPlan, ShowOutcome, Slack
from tripplan.planning.opening.hours import DayHours, ShowTimes

_Spans = Sequence[tuple[datetime, datetime]]
LIKELY = 0.5
"""A smaller chance to be home in time is told as unlikely. No source, our choice [0-1]."""
WORTH_TELLING = 0.02
"""A smaller chance to come too late for a show is not told [0-1]."""


def visit_notes(hours: DayHours, plan: DayPlan) -> Iterator[str]:
    """What the plan meets at the place, one sentence each.

    Args:
        hours: the day at the place.
        plan: one way to spend it.
    """
    yield from _asleep_there(plan)
    starts = {show.name: show for show in hours.shows}
    yield from (show_sentence(outcome, starts[outcome.name]) for outcome in plan.shows)
    for show in hours.shows:
        if not show.worth_it:
            yield f"{show.name} is shown at {_clocks(show)}; nothing is planned around it."
    yield from _classes(hours.group_spans, plan)
    for start, end in hours.quiet_spans:
        inside = _shared((start, end), plan)
        said = f"{wording.minutes(inside)} of it while you are there" if inside else "not while you are there"
        yield f"Quiet hour from {wording.clock(start)} to {wording.clock(end)}: {said}."


def drive_notes(plan: DayPlan, slack: Slack) -> Iterator[str]:
    """Where a plan is hardly worth its driving, or will hardly hold in the evening, one sentence each.

    Args:
        plan: one way to spend the day.
        slack: how likely it holds.
    """
    if 2 * plan.awake_minutes < plan.car_minutes:
        awake = " awake" if plan.awake_minutes < plan.visit_minutes else ""
        yield (
            f"Think twice: {wording.minutes(plan.car_minutes)} of driving for "
            f"{wording.minutes(plan.awake_minutes)}{awake} there."
        )
    if slack.home_in_time < LIKELY:
        yield (
            f"Being home by {wording.clock(slack.home_by)} is unlikely: "
            f"{wording.odds(slack.home_in_time)}, with your usual delays."
        )


def _asleep_there(plan: DayPlan) -> Iterator[str]:
    """Who sleeps for how much of the visit."""
    for nap in plan.naps:
        inside = round(sum(_shared((start, end), plan) for _, start, end in nap.slept))
        if inside:
            yield (
                f"{nap.member} sleeps through {wording.minutes(inside)} of the "
                f"{wording.minutes(plan.visit_minutes)} there."
            )


def minutes_among_classes(hours: DayHours, plan: DayPlan) -> float:
    """Time inside while school classes usually fill the place [min]."""
    return sum(_shared(span, plan) for span in hours.group_spans)


def show_sentence(outcome: ShowOutcome, show: ShowTimes) -> str:
    """Whether a show is seen, and how sure that is."""
    if outcome.seen is None:
        return f"{show.name} at {_clocks(show)}: missed in this plan."
    start, end = outcome.seen
    said = f"{show.name}: seen from {wording.clock(start)} to {wording.clock(end)}"
    if outcome.asleep:
        sleep = "sleeps" if len(outcome.asleep) == 1 else "sleep"
        said += f"; {wording.listed(outcome.asleep)} {sleep} through it"
    if outcome.missed_chance < WORTH_TELLING:
        return f"{said}."
    return f"{said}; chance to come too late for it {wording.odds(outcome.missed_chance)}."


def _clocks(show: ShowTimes) -> str:
    return wording.listed([wording.clock(start) for start in show.starts])


def _classes(spans: _Spans, plan: DayPlan) -> Iterator[str]:
    """How the time inside lies to the hours in which school classes come."""
    for start, end in spans:
        usually = f"School classes usually come from {wording.clock(start)} to {wording.clock(end)}"
        shared = _shared((start, end), plan)
        if shared:
            yield f"{usually}: you are there for {wording.minutes(shared)} of it."
        elif plan.enter >= end:
            yield f"{usually}; you go in after that, at {wording.clock(plan.enter)}."
        else:
            yield f"{usually}; you have left by then, at {wording.clock(plan.leave_place)}."


def _shared(span: tuple[datetime, datetime], plan: DayPlan) -> float:
    """Time inside that lies in a span [min]."""
    start, end = max(span[0], plan.enter), min(span[1], plan.leave_place)
    return max(0.0, (end - start).total_seconds() / 60)
