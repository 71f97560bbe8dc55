"""A day plan as a row of steps without gaps."""

from collections.abc import Iterable, Iterator, Sequence
from datetime import tzinfo

from tripplan.planning.day.times.minutes import DayMinutes
from tripplan.planning.day.times.shapes import DayQuestion, Step, StepKind
from tripplan.planning.travel.drive import Leg, Stop

_Stretch = tuple[StepKind, int, int, str, tzinfo]


def day_steps(
    question: DayQuestion,
    minutes: DayMinutes,
    *,
    depart: int,
    enter: int,
    leave: int,
    lunch: tuple[int, int],
    shows: Sequence[tuple[str, int, int]] = (),
) -> tuple[Step, ...]:
    """The steps of a day from leaving home to being home again.

    Args:
        question: the day that is planned.
        minutes: how the day is counted.
        depart: when load-up begins at home [min].
        enter: when the party is let in [min].
        leave: when load-up for the way home begins [min].
        lunch: when lunch begins and ends inside; of no length where it is eaten at home [min].
        shows: what is seen, with begin and end; neither lunch nor another show meets it [min].

    Returns:
        Steps in order, each beginning where the one before ends; none without length.
    """
    home, place = question.home_zone, question.place_zone
    there, back = question.way_there.at(depart), question.way_home.at(leave)
    arrive = depart + there.minutes
    inside = [(StepKind.SHOW, begins, ends, name) for name, begins, ends in shows]
    inside.append((StepKind.LUNCH, *lunch, "lunch"))
    stretches = (
        *_on_the_road(there, depart, "there", home, home, place),
        (StepKind.WAIT, arrive, enter, "wait to be let in", place),
        *_at_the_place(sorted(inside, key=lambda step: step[1]), enter, leave, place),
        *_on_the_road(back, leave, "home", home, place, home),
    )
    return tuple(
        Step(kind, minutes.moment(start, zone), minutes.moment(end, zone), label)
        for kind, start, end, label, zone in stretches
        if start < end
    )


def _at_the_place(
    inside: Iterable[tuple[StepKind, int, int, str]], enter: int, leave: int, place: tzinfo
) -> Iterator[_Stretch]:
    """Lunch and shows, and the visit around them."""
    reached = enter
    for kind, begins, ends, label in inside:
        if begins < ends:
            yield StepKind.VISIT, reached, begins, "visit", place
            yield kind, begins, ends, label, place
            reached = ends
    yield StepKind.VISIT, reached, leave, "visit", place


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
