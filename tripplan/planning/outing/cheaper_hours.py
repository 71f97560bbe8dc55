"""At which hours a day would cost less: what a price board leaves to those who can choose."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime, timedelta, tzinfo

import numpy as np

from tripplan.language.sentences import Fact, fact
from tripplan.planning.day.search import SMALL_LOSS
from tripplan.planning.day.times.choices import Choices
from tripplan.planning.day.times.hourly_money import MoneyOfDays, PriceHours
from tripplan.planning.day.times.limits import Limits
from tripplan.planning.day.times.minutes import DayMinutes
from tripplan.planning.day.times.shapes import DayPlan, DayQuestion
from tripplan.values.money import Money


@dataclass(frozen=True)
class CheaperHour:
    """Hours at which an outing would cost less than by its plan.

    Attributes:
        changes: what is to be done otherwise.
        saves: how much less.
    """

    changes: tuple[Fact, ...]
    saves: Money

    @property
    def brings(self) -> Fact:
        """What one saves, and by what."""
        return fact("notes-cheaper", saves=self.saves, changes=self.changes)


def cheaper_hour(question: DayQuestion, plan: DayPlan) -> CheaperHour | None:
    """The hours at which the day costs the least, with lunch where the plan has it.

    Args:
        question: the day.
        plan: how it is meant to be spent.

    Returns:
        None where no hour that the limits of the day allow saves anything worth telling.
    """
    money = question.money
    if money is None or len(money.coins) == 1:
        return None
    minutes = DayMinutes(question.day, question.home_zone)
    choices = Choices.of(Limits.of(question, minutes))
    numbers = MoneyOfDays.of([money]).number(choices.enter, choices.leave)
    enter, leave = minutes.rounded_down(plan.enter), minutes.rounded_down(plan.leave_place)
    now = money.hours.number(enter, leave)
    planned = money.coins[now]
    if numbers is None or planned is None:
        return None
    possible = np.unique(np.broadcast_to(numbers, choices.possible.shape)[choices.possible]).tolist()
    costs = {
        number: coins[plan.lunch_there] for number in possible if (coins := money.coins[number]) is not None
    }
    if not costs:
        return None
    shape = money.hours.shape
    least = min(costs, key=lambda number: (costs[number], _apart(number, now, shape)))
    saves = Money.from_minor(planned[plan.lunch_there] - costs[least], question.currency)
    if saves.amount < SMALL_LOSS:
        return None
    return CheaperHour(tuple(_differences(money.hours, least, now, minutes, question.place_zone)), saves)


def _apart(number: int, other: int, shape: tuple[int, int, int]) -> int:
    """In how many of the hour of entry, the hour of leaving and the length of stay two prices differ."""
    one, two = np.unravel_index(number, shape), np.unravel_index(other, shape)
    return sum(int(first != second) for first, second in zip(one, two, strict=True))


def _differences(
    hours: PriceHours, number: int, now: int, minutes: DayMinutes, zone: tzinfo
) -> Iterator[Fact]:
    """What is to be done otherwise to pay another price."""

    def at(minute: int) -> datetime:
        return minutes.moment(minute, zone)

    entered, left, stayed = (int(one) for one in np.unravel_index(number, hours.shape))
    entered_now, left_now, stayed_now = (int(one) for one in np.unravel_index(now, hours.shape))
    if entered > entered_now:
        yield fact("notes-in-from", at=at(hours.begins[entered]))
    elif entered < entered_now:
        yield fact("notes-in-before", at=at(hours.begins[entered + 1]))
    if left < left_now:
        yield fact("notes-out-by", at=at(hours.leave_by[left]))
    elif left > left_now:
        yield fact("notes-out-after", at=at(hours.leave_by[left - 1]))
    if stayed < stayed_now:
        yield fact("notes-inside-at-most", stay=timedelta(minutes=int(hours.stays[stayed])))
    elif stayed > stayed_now:
        yield fact("notes-inside-more-than", stay=timedelta(minutes=int(hours.stays[stayed - 1])))
