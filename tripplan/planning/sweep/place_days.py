"""The columns of the table for one place: what of each day, from its hours to its generalized cost."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any, Generic, NamedTuple, TypeVar

import numpy as np
from numpy.typing import NDArray

from tripplan.planning.cost import OutingCost
from tripplan.planning.crowds.risk import chances_of
from tripplan.planning.day.times.hourly_weather import PARTS
from tripplan.planning.day.weighing.nuisances import UNITS, WEATHER_PART
from tripplan.planning.family.family import Family
from tripplan.planning.outing.generalized_cost import generalized_costs
from tripplan.planning.outing.place_facts import PlaceFacts
from tripplan.planning.sweep.answer_cache import AnswerCache, CostedVisit
from tripplan.planning.sweep.dates import DateRow, Numbers
from tripplan.planning.sweep.place_row import PlaceRow
from tripplan.planning.sweep.table import Verdict
from tripplan.planning.sweep.visits import Visits
from tripplan.values.money import minor_digits

Columns = dict[str, NDArray[Any]]


class PlaceDays:
    """One place on every day of a row: what to search, and what is found once that is done."""

    def __init__(
        self, number: int, family: Family, row: DateRow, facts: PlaceFacts, *, today: date, known: AnswerCache
    ) -> None:
        """Tell what stands against days before they are planned.

        Args:
            number: of the place, its row in the columns.
            family: people, car, home, calendars.
            row: the days.
            facts: what all days at the place share; must cover the calendar years of the row.
            today: for booking deadlines.
            known: what was found for other places, and what waits to be searched.
        """
        self.number, self.facts = number, facts
        self._at = at = PlaceRow(row, facts)
        self.in_term = at.school_is_in
        self.verdict = _before_planning(at, today)
        self._days = days = np.flatnonzero(self.verdict == Verdict.CAN_GO)
        self.visits = Visits(family, at, days, known, today=today) if days.size else None

    def visited(self) -> "_Visited | None":
        """Once the visits are searched, what they say; None where there is none. Tells more verdicts."""
        if self.visits is None:
            return None
        days, found, kinds = self._days, self.visits.found(), self.visits.kind
        verdicts = np.array([one if isinstance(one, Verdict) else Verdict.CAN_GO for one in found])
        self.verdict[days] = verdicts[kinds]
        going = verdicts[kinds] == Verdict.CAN_GO
        days, kinds = days[going], kinds[going]
        if not days.size:
            return None
        said = _said(found)[kinds].T
        told = _Said(*said)
        currency = self._at.row.household.currency
        weather = self.visits.weather(days, told.enter, told.leave)
        told.weather[:] = _in_coins(weather, PARTS, currency)
        told.nuisances[:] = _in_coins(told.nuisances + weather * WEATHER_PART, UNITS, currency)
        return _Visited(self, days, said)


@dataclass(frozen=True, eq=False)
class _Visited:
    """The days that one place can be visited on.

    Attributes:
        place: the place on all days.
        days: which days of the row.
        said: what is said of each of them, in rows of `_Said`, a column a day.
    """

    place: PlaceDays
    days: Numbers
    said: Numbers


def fill(columns: Columns, row: DateRow, places: Sequence[PlaceDays]) -> None:
    """Fill the columns of places whose visits are searched.

    Each step for all of them before the next: that takes less time than all steps place by place.

    Args:
        columns: one for each of `table.COLUMNS`, all zero, of shape (places, days).
        row: the days.
        places: some of the places.
    """
    visited = [one for place in places if (one := place.visited()) is not None]
    for place in places:
        columns["in_term"][place.number], columns["verdict"][place.number] = place.in_term, place.verdict
    if not visited:
        return
    chances = chances_of([one.place.facts.crowds for one in visited])
    days, said = (
        np.concatenate(each, axis=-1)
        for each in ([one.days for one in visited], [one.said for one in visited])
    )
    chance = np.concatenate(
        [
            of_place[(row.first - one.place.facts.first).days + one.days]
            for one, of_place in zip(visited, chances, strict=True)
        ]
    )
    numbers = np.repeat([one.place.number for one in visited], [one.days.size for one in visited])
    _fill(columns, row, (numbers, days), said, chance)


def _fill(
    columns: Columns,
    row: DateRow,
    spots: tuple[Numbers, Numbers],
    said: Numbers,
    chance: NDArray[np.float64],
) -> None:
    """Fill the columns at some places on some days.

    Args:
        columns: as for `fill`.
        row: likewise.
        spots: which places on which days.
        said: what is said of each spot, in rows of `_Said`, a column a spot.
        chance: of a full house at each spot [0-1].
    """
    rises, sets = (light[spots[1]] for light in row.sun)
    told = _Said(*said)
    filled = {
        **{name: figures for name, figures in told._asdict().items() if name in columns},
        "dark_there": _in_the_dark(told.sets_off, told.arrives, rises, sets),
        "dark_back": _in_the_dark(told.sets_off_home, told.arrives_home, rises, sets),
        "chance": chance,
        "felt": generalized_costs(row.household, told.likely + told.nuisances, chance),
    }
    for name, values in filled.items():
        columns[name][spots] = values


def _before_planning(at: PlaceRow, today: date) -> NDArray[np.int8]:
    """What stands against each day before it is planned, as numbers of `Verdict`."""
    row, place = at.row, at.place
    if place.currency != row.household.currency:
        verdict = np.full(row.count, Verdict.OTHER_CURRENCY, dtype=np.int8)
    else:
        verdict = at.closed()
    ahead = row.ordinals - today.toordinal()
    too_late = (verdict == Verdict.CAN_GO) & (ahead < place.opening.book_days_ahead)
    verdict[too_late] = Verdict.TOO_LATE_TO_BOOK
    # Seen before hours, ways and prices are asked for: most places of a wide map are too far for the small.
    too_far = (verdict == Verdict.CAN_GO) & (2 * at.facts.drive.whole_minutes > row.most_driving)
    verdict[too_far] = Verdict.TOO_LITTLE_TIME
    verdict[ahead < 0] = Verdict.OVER
    return verdict


Figure = TypeVar("Figure", int, Numbers)


class _Said(NamedTuple, Generic[Figure]):
    """What is said of one kind of day, or of many days in an array each.

    Attributes:
        nuisances: what they weigh; of a kind of day without its weather and in `UNITS` [smallest coins].
        sets_off, arrives: when the wheels first and last turn on the way there [min].
        sets_off_home, arrives_home: likewise on the way home [min].
        enter, leave: of the visit [min].
        weather: goes by the day, and is nought of a kind of day; as in `DayTable`, like all the others.
    """

    nuisances: Figure
    low: Figure
    likely: Figure
    high: Figure
    at_least: Figure
    leave_home: Figure
    home: Figure
    visit: Figure
    nap_kept: Figure
    nap_lost: Figure
    in_car: Figure
    longest_drive: Figure
    sets_off: Figure
    arrives: Figure
    sets_off_home: Figure
    arrives_home: Figure
    enter: Figure
    leave: Figure
    weather: Figure


def _said(found: Sequence[CostedVisit | Verdict]) -> Numbers:
    """What is said of each kind of day, nothing but zeros where there is no visit; a row of `_Said` each."""
    different = {id(one): one for one in found}
    costs = {id(one.cost): one.cost for one in different.values() if isinstance(one, CostedVisit)}
    coins = {number: _coins_of(cost) for number, cost in costs.items()}
    nothing = (0,) * len(_Said._fields)
    said = {
        number: nothing if isinstance(one, Verdict) else _said_of(one, coins[id(one.cost)])
        for number, one in different.items()
    }
    return np.array([said[id(one)] for one in found], dtype=np.int64)


def _coins_of(cost: OutingCost) -> tuple[int, int, int, bool]:
    """Low, likely and high total, and whether something is unknown."""
    total = cost.total
    return total.low.minor, total.likely.minor, total.high.minor, bool(cost.unknown)


def _said_of(one: CostedVisit, coins: tuple[int, int, int, bool]) -> _Said[int]:
    visit, best = one.visit, one.visit.best
    low, likely, high, at_least = coins
    sets_off, arrives = visit.wheels_there
    sets_off_home, arrives_home = visit.wheels_back
    return _Said(
        nuisances=best.felt,
        low=low,
        likely=likely,
        high=high,
        at_least=at_least,
        leave_home=best.depart,
        home=best.home,
        visit=best.visit,
        nap_kept=best.nap_kept,
        nap_lost=best.nap_usual - best.nap_kept,
        in_car=visit.in_car,
        longest_drive=visit.longest_drive,
        sets_off=sets_off,
        arrives=arrives,
        sets_off_home=sets_off_home,
        arrives_home=arrives_home,
        enter=best.enter,
        leave=best.leave,
        weather=0,
    )


def _in_coins(felt: Numbers, parts: int, currency: str) -> Numbers:
    """Felt cost that is counted in so many parts of the main unit in the smallest coin, rounded half up."""
    coins: Numbers = (2 * felt * 10 ** minor_digits(currency) + parts) // (2 * parts)
    return coins


def _in_the_dark(start: Numbers, end: Numbers, rises: Numbers, sets: Numbers) -> Numbers:
    """Minutes of drives before sunrise and after sunset."""
    before: Numbers = np.maximum(np.minimum(end, rises) - start, 0)
    after: Numbers = np.maximum(end - np.maximum(start, sets), 0)
    return before + after
