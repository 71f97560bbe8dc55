"""A day plan as a row of steps without gaps."""

from collections.abc import Iterable, Iterator, Sequence
from datetime import tzinfo
from operator import itemgetter

from tripplan.language.sentences import Fact, fact
from tripplan.planning.day.times.minutes import DayMinutes
from tripplan.planning.day.times.shapes import DayQuestion, LunchPlace, Step, StepKind
from tripplan.planning.travel.drive import Leg, Stop

SHORTEST_STEP_MINUTES = 10
"""A shorter wait or piece of a visit is no step of its own (common practice, no source) [min]."""

_TAKEN_BY = {
    StepKind.VISIT: (StepKind.LUNCH, StepKind.SHOW),
    StepKind.WAIT: (StepKind.LUNCH, StepKind.UNLOAD, StepKind.VISIT),
}
"""What a short step is joined to, the first that is beside it."""

_Stretch = tuple[StepKind, int, int, Fact, tzinfo]


def day_steps(
    question: DayQuestion,
    minutes: DayMinutes,
    *,
    depart: int,
    enter: int,
    leave: int,
    lunch: tuple[LunchPlace, int, int] | None,
    shows: Sequence[tuple[str, int, int]] = (),
) -> tuple[Step, ...]:
    """The steps of a day from leaving home to being home again.

    Args:
        question: the day that is planned.
        minutes: how the day is counted.
        depart: when load-up begins at home [min].
        enter: when the party is let in [min].
        leave: when load-up for the way home begins [min].
        lunch: where lunch is, when it begins and ends [min]; None where nobody has any.
        shows: what is seen, with begin and end; neither lunch nor another show meets it [min].

    Returns:
        Steps in order, each beginning where the one before ends; none without length.
    """
    home, place = question.home_zone, question.place_zone
    there, back = question.way_there.at(depart), question.way_home.at(leave)
    arrive = depart + there.minutes
    place_of_lunch, *eats = (LunchPlace.HOME, 0, 0) if lunch is None else lunch
    inside = [
        (StepKind.SHOW, begins, ends, fact("plan-step-show", show=name)) for name, begins, ends in shows
    ]
    waits: list[tuple[StepKind, int, int, Fact]] = []
    if place_of_lunch is LunchPlace.THERE or (place_of_lunch is LunchPlace.OUTSIDE and eats[0] >= enter):
        label = fact("plan-step-lunch" if place_of_lunch is LunchPlace.THERE else "plan-step-lunch-outside")
        inside.append((StepKind.LUNCH, eats[0], eats[1], label))
    elif place_of_lunch is LunchPlace.OUTSIDE:
        waits.append((StepKind.LUNCH, eats[0], eats[1], fact("plan-step-lunch-outside")))
    at_a_halt = eats[0] if place_of_lunch is LunchPlace.CAR else None
    stretches = (
        *_on_the_road(there, depart, (home, home, place), at_a_halt, there=True),
        *_around(waits, (StepKind.WAIT, arrive, enter, fact("plan-step-wait")), place),
        *_around(
            sorted(inside, key=itemgetter(1)), (StepKind.VISIT, enter, leave, fact("plan-step-visit")), place
        ),
        *_on_the_road(back, leave, (home, place, home), at_a_halt, there=False),
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


def _around(
    inside: Iterable[tuple[StepKind, int, int, Fact]], whole: tuple[StepKind, int, int, Fact], zone: tzinfo
) -> Iterator[_Stretch]:
    """Lunch and shows, and what is around them."""
    around, reached, ends_at, label = whole
    for kind, begins, ends, what in inside:
        if begins < ends:
            yield around, reached, begins, label, zone
            yield kind, begins, ends, what, zone
            reached = ends
    yield around, reached, ends_at, label, zone


def _on_the_road(
    leg: Leg, start: int, zones: tuple[tzinfo, tzinfo, tzinfo], lunch: int | None, *, there: bool
) -> Iterator[_Stretch]:
    """Load-up, drives with the rests and stops between them, and unloading; zones of road, origin and goal.

    Where lunch begins at a halt that is what the halt is for.
    """
    road, origin, goal = zones
    drive = fact("plan-step-drive", there=there)
    reached, driven = start + leg.load_up_minutes, 0
    yield StepKind.LOAD_UP, start, reached, fact("plan-step-load-up", there=there), origin
    for halt in leg.halts:
        halts = reached + halt.after_minutes - driven
        yield StepKind.DRIVE, reached, halts, drive, road
        reached, driven = halts + halt.minutes, halt.after_minutes
        if halts == lunch:
            yield StepKind.LUNCH, halts, reached, fact("plan-step-lunch-on-the-way", there=there), road
        elif isinstance(halt, Stop):
            yield StepKind.STOP, halts, reached, halt.what, road
        else:
            yield StepKind.REST, halts, reached, fact("plan-step-rest", there=there), road
    arrives = reached + leg.drive_minutes - driven
    yield StepKind.DRIVE, reached, arrives, drive, road
    yield StepKind.UNLOAD, arrives, start + leg.minutes, fact("plan-step-unload"), goal
