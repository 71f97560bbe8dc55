"""At which hours the same day would be better outdoors: past a frosty morning, before a hot noon.

The search weighs a day without its weather, so that days equal in all else are searched once. What the
weather adds is weighed here for one day, for every choice of times.
"""

from dataclasses import dataclass
from datetime import UTC, datetime, time, timedelta

import numpy as np

from tripplan.documents.family.household import Household
from tripplan.language import wording
from tripplan.planning.climate.outdoors import percent_for
from tripplan.planning.day import DayPlan
from tripplan.planning.day.search import SMALL_LOSS
from tripplan.planning.day.times.choices import Choices
from tripplan.planning.day.times.limits import Limits
from tripplan.planning.day.times.minutes import DayMinutes
from tripplan.planning.day.weighing.nuisances import UNITS
from tripplan.planning.day.weighing.weighing import LONGEST_AWAY, WeighedChoices, plan_at
from tripplan.planning.outing.outing import Outing
from tripplan.planning.outing.place_facts import PlaceFacts
from tripplan.planning.outing.weather.visit_weather import VisitWeather, visit_weather
from tripplan.values.money import Money, minor_digits


@dataclass(frozen=True)
class BetterHour:
    """The same day at hours that weigh less once its weather counts.

    Attributes:
        plan: the day then.
        weather: what it is like there then.
        instead_of: what it is like by the plan.
        saves: by how much less it weighs in all.
    """

    plan: DayPlan
    weather: VisitWeather
    instead_of: VisitWeather
    saves: Money

    @property
    def sentence(self) -> str:
        """Such as 'There from 9:30 AM to 12:00 PM it feels like 79 to 86 °F instead of 88 to 97 °F: …'."""
        then, now = (
            wording.temperatures(one.felt_low, one.felt_high, one.degrees)
            for one in (self.weather, self.instead_of)
        )
        feels = f"it feels like {then} instead of {now}" if then != now else "you are out in it for less time"
        return (
            f"There from {wording.clock(self.plan.enter)} to {wording.clock(self.plan.leave_place)} {feels}: "
            f"that weighs {wording.money(self.saves)} less in all"
        )


def better_hour(outing: Outing, facts: PlaceFacts, household: Household) -> BetterHour | None:
    """The times of the same day that weigh the least with the weather of each hour counted.

    Args:
        outing: the day as it is planned.
        facts: its place.
        household: what the parent says the weather weighs.

    Returns:
        None where nothing is outdoors, or where no other times weigh at least a small loss less and have
        better weather.
    """
    weather, year, question = outing.weather, facts.outdoors, outing.question
    if weather is None or year is None or not weather.weighs.amount:
        return None
    minutes = DayMinutes(question.day, question.home_zone)
    choices = Choices.of(Limits.of(question, minutes))
    if not choices.possible.any():
        return None
    weighed = WeighedChoices.of(question, choices, minutes)
    rows, columns = np.nonzero(choices.possible[0])
    enter, leave = (
        np.broadcast_to(times, choices.possible.shape)[0, rows, columns].astype(np.int64)
        + _after_greenwich(minutes)
        for times in (choices.enter, choices.leave)
    )
    number = np.full(rows.shape, year.climate.number(outing.day))
    out = year.visits(number, enter, leave)
    months = [member.months_on(outing.day) for member in outing.party]
    percent = np.full(rows.shape, percent_for(min(months)))
    coins = out.coins(household.worth, percent, household.currency)
    coin = UNITS // 10 ** minor_digits(household.currency)
    weighs = weighed.rank[0, rows, columns] // LONGEST_AWAY + coins * coin
    # What is barred at its hour is no better.
    weighs = np.where(out.barred, np.iinfo(np.int64).max, weighs)
    at = int(weighs.argmin())
    plan = plan_at(weighed, int(rows[at]), int(columns[at]))
    then = visit_weather(household, facts, months, outing.day, plan)
    if then is None or then.barred or then.weighs >= weather.weighs:
        return None
    saves = (outing.plan.weighs + weather.weighs - plan.weighs - then.weighs).rounded()
    return None if saves.amount < SMALL_LOSS else BetterHour(plan, then, weather, saves)


def _after_greenwich(minutes: DayMinutes) -> int:
    """How many minutes after the date begins at Greenwich it begins at home [min]."""
    return (minutes.midnight - datetime.combine(minutes.day, time(0), UTC)) // timedelta(minutes=1)
