"""Why a day cannot be done: which limits collide, and by how much."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from itertools import combinations

import numpy as np

from tripplan.language.sentences import Fact, fact
from tripplan.planning.day.times.choices import Choices
from tripplan.planning.day.times.limits import LONGEST_DAY, NEVER, Limits
from tripplan.planning.day.times.minutes import DayMinutes
from tripplan.planning.day.times.shapes import DayQuestion


@dataclass(frozen=True)
class _Limit:
    """One limit that could give way.

    Attributes:
        limit: which.
        without: the limits with this one lifted.
        alone: what to say if lifting it is enough, from the choices there would be then.
    """

    limit: Fact
    without: Callable[[Limits], Limits]
    alone: Callable[[Choices], Fact]


def collisions(question: DayQuestion, limits: Limits, minutes: DayMinutes) -> tuple[Fact, ...]:
    """Which limits collide on an impossible day.

    Limits are lifted one by one, then two by two and so on; whatever first makes the day possible is
    what stands in its way.

    Args:
        question: the day.
        limits: its limits.
        minutes: how the day is counted.

    Returns:
        One for each limit (or set of limits) that would have to give way; at least one.
    """
    liftable = _liftable(question, limits, minutes)
    for count in range(1, len(liftable) + 1):
        found: list[Fact] = []
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
                found.append(fact("plan-limits-together", limits=tuple(one.limit for one in lifted)))
        if found:
            return tuple(found)
    return (fact("plan-nobody-let-in", drive=_minutes(limits.there.quickest)),)


def _liftable(question: DayQuestion, limits: Limits, minutes: DayMinutes) -> list[_Limit]:
    def at(minute: int) -> datetime:
        return minutes.moment(minute, question.home_zone)

    leaving = fact("plan-limit-leaving", earliest=at(limits.earliest))
    home = fact("plan-limit-home", latest=at(limits.home_by))
    stay = fact("plan-limit-stay", shortest=_minutes(limits.shortest))
    driving = fact("plan-limit-driving", most=_minutes(limits.most_driving))
    names = {
        each.name for each in question.busy if each.name and each.meets(minutes.midnight, at(limits.home_by))
    }
    taken = fact("plan-limit-taken-by", names=tuple(sorted(names))) if names else fact("plan-limit-taken")

    def home_too_late(choices: Choices) -> Fact:
        first = int(choices.home[choices.possible.any(axis=1, keepdims=True)].min())
        return fact("plan-too-long", over=_minutes(first - limits.home_by), stay=stay, home=home)

    def leaves_too_late(choices: Choices) -> Fact:
        last = int(choices.depart[choices.possible.any(axis=2, keepdims=True)].max())
        over = _minutes(limits.earliest - last)
        return fact("plan-too-late", over=over, stay=stay, home=home, leaving=leaving)

    def stays_too_long(choices: Choices) -> Fact:
        return fact("plan-stay-too-long", stay=stay, left=_minutes(choices.visit[choices.possible].max()))

    def drives_too_long(choices: Choices) -> Fact:
        minutes = choices.there.drive_minutes(choices.depart) + choices.back.drive_minutes(choices.leave)
        least = np.broadcast_to(minutes, choices.possible.shape)[choices.possible].min()
        return fact("plan-drives-too-long", driving=driving, least=_minutes(least))

    found = [
        _Limit(leaving, lambda limits: replace(limits, earliest=0), leaves_too_late),
        _Limit(home, lambda limits: replace(limits, home_by=LONGEST_DAY), home_too_late),
        _Limit(stay, lambda limits: replace(limits, shortest=1), stays_too_long),
        _Limit(taken, lambda limits: replace(limits, busy=()), lambda _: fact("plan-no-room", taken=taken)),
    ]
    if limits.most_driving < NEVER:
        found.append(_Limit(driving, lambda limits: replace(limits, most_driving=NEVER), drives_too_long))
    if limits.money is not None and None in limits.money.coins:
        entry, no_offer = fact("plan-limit-entry"), fact("plan-no-offer-then")
        found.append(_Limit(entry, lambda limits: replace(limits, money=None), lambda _: no_offer))
    return found


def _minutes(count: float) -> timedelta:
    return timedelta(minutes=int(count))
