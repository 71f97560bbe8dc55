"""An outing whose times were settled while it was on, planned once more with just these times."""

from collections.abc import Callable
from dataclasses import replace
from datetime import datetime, time, timedelta

from tripplan.documents.outings.planned import PlannedOuting
from tripplan.planning.day import DayInProgress, DayPlan, DayQuestion, plan_choice
from tripplan.planning.day.times.minutes import DayMinutes
from tripplan.planning.travel.drive import Journey

_A_LITTLE = timedelta(minutes=10)
"""The place is taken to be open so much longer than a settled stay, so that a time on the grid lies in it."""


def as_settled(planned: PlannedOuting) -> Callable[[DayQuestion], DayQuestion]:
    """What the day search is asked so that an outing on record keeps its times.

    They came of what happened on the way or at the place, which nobody can plan again: the drives take as
    long as they took, the stay is as long as it was, and no limit stands against it.

    Args:
        planned: the outing; one that was not settled on the day is asked about as any other.
    """
    if not planned.settled:
        return lambda question: question

    def asked(question: DayQuestion) -> DayQuestion:
        zone, there = question.home_zone, question.place_zone
        leave_home, home = (moment.astimezone(zone) for moment in (planned.leave_home, planned.home))
        enter, leave_place = (moment.astimezone(there) for moment in (planned.enter, planned.leave_place))
        if _still_planned(question, planned):
            return question
        minutes, habits = DayMinutes(question.day, zone), question.habits
        stay = replace(question.hours.spans[0], opens=enter, last_entry=enter, closes=leave_place + _A_LITTLE)
        limits: dict[str, time] = {"earliest_departure": min(habits.earliest_departure, leave_home.time())}
        if minutes.rounded_up(home) > minutes.home_by(habits):
            limits["home_by"] = home.time()
        return replace(
            question,
            way_there=_lasting(question.way_there, minutes, leave_home, enter),
            way_home=_lasting(question.way_home, minutes, leave_place, home),
            hours=replace(question.hours, spans=(stay,), entry_times=()),
            habits=habits.model_copy(update=limits),
            last_wakes=None,
            busy=(),
            shortest_minutes=1,
            begun=DayInProgress(leave_home, leave_place),
        )

    return asked


def _still_planned(question: DayQuestion, planned: PlannedOuting) -> bool:
    """Whether an outing can be planned as it is on record without more."""
    found = plan_choice(question, planned.leave_home, planned.leave_place)
    return isinstance(found, DayPlan) and (found.enter, found.home) == (planned.enter, planned.home)


def _lasting(way: Journey, minutes: DayMinutes, leaves: datetime, arrives: datetime) -> Journey:
    """A way that is over when it was, with as much more or less driving; a wait is told as driving."""
    start = minutes.rounded_down(leaves)
    leg = way.at(start)
    drive = leg.drive_minutes + minutes.rounded_down(arrives) - start - leg.minutes
    return replace(leg, drive_minutes=max(0, drive))
