"""Why a day cannot be done: which limits collide, and by how much."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from itertools import combinations

import numpy as np

from tripplan.language import wording
from tripplan.planning.day.times.choices import Choices
from tripplan.planning.day.times.limits import LONGEST_DAY, NEVER, Limits
from tripplan.planning.day.times.minutes import DayMinutes
from tripplan.planning.day.times.shapes import DayQuestion


@dataclass(frozen=True)
class _Limit:
    """One limit that could give way.

    Attributes:
        words: the limit, as part of a sentence.
        without: the limits with this one lifted.
        alone: the sentence to say if lifting it is enough, from the choices there would be then.
    """

    words: str
    without: Callable[[Limits], Limits]
    alone: Callable[[Choices], str]


def collisions(question: DayQuestion, limits: Limits, minutes: DayMinutes) -> tuple[str, ...]:
    """Which limits collide on an impossible day.

    Limits are lifted one by one, then two by two and so on; whatever first makes the day possible is
    what stands in its way.

    Args:
        question: the day.
        limits: its limits.
        minutes: how the day is counted.

    Returns:
        One sentence for each limit (or set of limits) that would have to give way; at least one.
    """
    liftable = _liftable(question, limits, minutes)
    for count in range(1, len(liftable) + 1):
        found: list[str] = []
        for lifted in combinations(liftable, count):
            loosened = limits
            for limit in lifted:
                loosened = limit.without(loosened)
            choices = Choices.of(loosened)
            if not choices.possible.any():
                continue
            if count == 1:
                found.append(lifted[0].alone(choices))
            else:
                together = wording.listed([limit.words for limit in lifted])
                found.append(f"{together} stand in the way together")
        if found:
            return tuple(found)
    drive = wording.minutes(limits.there.quickest)
    return (f"with {drive} to get there, nobody would be let in any more that day",)


def _liftable(question: DayQuestion, limits: Limits, minutes: DayMinutes) -> list[_Limit]:
    def clock(minute: int) -> str:
        return wording.clock(minutes.moment(minute, question.home_zone))

    def home_too_late(choices: Choices) -> str:
        earliest_home = int(choices.home[choices.possible.any(axis=1, keepdims=True)].min())
        too_long = wording.minutes(earliest_home - limits.home_by)
        return (
            f"the drive, the opening hours, {shortest.words} and {home_by.words} do not fit: "
            f"{too_long} too long"
        )

    def leaves_too_late(choices: Choices) -> str:
        latest = int(choices.depart[choices.possible.any(axis=2, keepdims=True)].max())
        too_late = wording.minutes(limits.earliest - latest)
        return (
            f"the drive, the opening hours, {shortest.words}, {home_by.words} and {earliest.words} "
            f"do not fit: {too_late} too late"
        )

    def stays_too_long(choices: Choices) -> str:
        longest = wording.minutes(int(choices.visit[choices.possible].max()))
        return f"{shortest.words} does not fit: at most {longest} would be left"

    def drives_too_long(choices: Choices) -> str:
        driving = choices.there.drive_minutes(choices.depart) + choices.back.drive_minutes(choices.leave)
        least = int(np.broadcast_to(driving, choices.possible.shape)[choices.possible].min())
        return f"{driving_limit.words} does not fit: there and back take {wording.minutes(least)}"

    day_ends = minutes.moment(limits.home_by, question.home_zone)
    names = sorted(
        {busy.name for busy in question.busy if busy.name and busy.meets(minutes.midnight, day_ends)}
    )
    engagement = f"the time that is taken ({', '.join(names)})" if names else "the time that is taken"
    earliest = _Limit(
        f"leaving no earlier than {clock(limits.earliest)}",
        lambda limits: replace(limits, earliest=0),
        leaves_too_late,
    )
    home_by = _Limit(
        f"being home by {clock(limits.home_by)}",
        lambda limits: replace(limits, home_by=LONGEST_DAY),
        home_too_late,
    )
    shortest = _Limit(
        f"a visit of at least {wording.minutes(limits.shortest)}",
        lambda limits: replace(limits, shortest=1),
        stays_too_long,
    )
    busy = _Limit(
        engagement,
        lambda limits: replace(limits, busy=()),
        lambda _choices: f"{engagement} leaves no room for it",
    )
    driving_limit = _Limit(
        f"driving at most {wording.minutes(limits.most_driving)} in a day",
        lambda limits: replace(limits, most_driving=NEVER),
        drives_too_long,
    )
    barred = _Limit(
        "hours at which an offer lets all of you in",
        lambda limits: replace(limits, money=None),
        lambda _choices: "no offer lets all of you in at the hours that the rest of the day leaves",
    )
    found = [earliest, home_by, shortest, busy]
    if limits.most_driving < NEVER:
        found.append(driving_limit)
    if limits.money is not None and None in limits.money.coins:
        found.append(barred)
    return found
