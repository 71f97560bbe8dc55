"""A day plan as a row of steps without gaps."""

from collections.abc import Iterable, Iterator, Sequence
from datetime import tzinfo

from tripplan.planning.day.times.minutes import DayMinutes
from tripplan.planning.day.times.shapes import DayQuestion, Step, StepKind
from tripplan.planning.travel.drive import Leg, Stop

SHORTEST_STEP_MINUTES = 10
"""A shorter wait or piece of a visit is no step of its own (common practice, no source) [min]."""

_TAKEN_BY = {
    StepKind.VISIT: (StepKind.LUNCH, StepKind.SHOW),
    StepKind.WAIT: (StepKind.LUNCH, StepKind.UNLOAD, StepKind.VISIT),
}
"""What a short step is joined to, the first that is beside it."""

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
        for kind, start, end, label, zone in _joined(stretches)
    )


def _joined(stretches: Iterable[_Stretch]) -> list[_Stretch]:
    """Those that take any time; a visit or wait too short to tell is joined to what is beside it."""
    found = [stretch for stretch in stretches if stretch[1] < stretch[2]]
    for number in range(len(found) - 2, 0, -1):
        kind, begins, ends, *_ = found[number]
        beside = {found[next_to][0]: next_to for next_to in (number + 1, number - 1)}
        takes = next((beside[other] for other in _TAKEN_BY.get(kind, ()) if other in beside), None)
        if ends - begins < SHORTEST_STEP_MINUTES and takes is not None:
            other, starts, stops, label, zone = found[takes]
            found[takes] = (other, min(begins, starts), max(ends, stops), label, zone)
            del found[number]
    return found


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
