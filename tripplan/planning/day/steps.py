"""A day plan as a row of steps without gaps."""

from collections.abc import Iterator
from datetime import tzinfo

from tripplan.planning.day.minutes import DayMinutes
from tripplan.planning.day.shapes import DayQuestion, Step, StepKind
from tripplan.planning.travel.drive import Leg, Stop

_Stretch = tuple[StepKind, int, int, str, tzinfo]


def day_steps(
    question: DayQuestion, minutes: DayMinutes, *, depart: int, enter: int, leave: int, lunch: tuple[int, int]
) -> tuple[Step, ...]:
    """The steps of a day from leaving home to being home again.

    Args:
        question: the day that is planned.
        minutes: how the day is counted.
        depart: when load-up begins at home [min].
        enter: when the party is let in [min].
        leave: when load-up for the way home begins [min].
        lunch: when lunch begins and ends inside; of no length where it is eaten at home [min].

    Returns:
        Steps in order, each beginning where the one before ends; none without length.
    """
    home, place = question.home_zone, question.place_zone
    there, back = question.way_there.at(depart), question.way_home.at(leave)
    arrive, lunch_begins, lunch_ends = depart + there.minutes, *lunch
    if lunch_begins == lunch_ends:
        lunch_begins = lunch_ends = leave
    stretches = (
        *_on_the_road(there, depart, "there", home, home, place),
        (StepKind.WAIT, arrive, enter, "wait to be let in", place),
        (StepKind.VISIT, enter, lunch_begins, "visit", place),
        (StepKind.LUNCH, lunch_begins, lunch_ends, "lunch", place),
        (StepKind.VISIT, lunch_ends, leave, "visit", place),
        *_on_the_road(back, leave, "home", home, place, home),
    )
    return tuple(
        Step(kind, minutes.moment(start, zone), minutes.moment(end, zone), label)
        for kind, start, end, label, zone in stretches
        if start < end
    )


def _on_the_road(
    leg: Leg, start: int, way: str, road: tzinfo, origin: tzinfo, goal: tzinfo
) -> Iterator[_Stretch]:
    """Load-up, drives with the rests and stops between them, and unloading."""
    yield StepKind.LOAD_UP, start, start + leg.load_up_minutes, f"load up for the way {way}", origin
    reached, driven = start + leg.load_up_minutes, 0
    for halt in leg.halts:
        halts = reached + halt.after_minutes - driven
        yield StepKind.DRIVE, reached, halts, f"drive {way}", road
        reached, driven = halts + halt.minutes, halt.after_minutes
        if isinstance(halt, Stop):
            yield StepKind.STOP, halts, reached, halt.what, road
        else:
            yield StepKind.REST, halts, reached, f"rest on the way {way}", road
    arrives = reached + leg.drive_minutes - driven
    yield StepKind.DRIVE, reached, arrives, f"drive {way}", road
    yield StepKind.UNLOAD, arrives, start + leg.minutes, "unload", goal
