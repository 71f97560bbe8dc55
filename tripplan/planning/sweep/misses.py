"""The nearest misses: days that would be better in one respect, and what they cost in the others."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from datetime import timedelta
from decimal import Decimal
from typing import Any, NamedTuple

import numpy as np
from numpy.typing import NDArray

from tripplan.documents.family.member import Member
from tripplan.documents.places.offer_sentences import age_in_words
from tripplan.language.sentences import Fact, fact
from tripplan.planning.day.search import SMALL_LOSS, SMALL_LOSS_SHARE
from tripplan.planning.outing.outing import Outing
from tripplan.planning.outing.sentences import KIND_CODES
from tripplan.planning.sweep.dates import Numbers
from tripplan.planning.sweep.table import DayTable
from tripplan.planning.sweep.wishes import Mask, Wish, all_met
from tripplan.values.ages import MONTHS, months_later
from tripplan.values.cost_kind import CostKind
from tripplan.values.money import Money

MOST_MISSES = 6
"""More near misses than this only confuse [-]."""
NEAR_SHARE = 0.25
"""A day that weighs more than so much more than the best is not nearly as good [-]. Our choice, no source."""
NEAR_MONEY = Decimal("15.00")
"""Or more than this, where that is the larger amount [household currency]. Likewise."""
LEAST_MINUTES = 10
"""A smaller difference is not worth saying: departures are tried five minutes apart, so one step is their
own coarseness [min]."""
LEAST_CHANCE = 0.03
"""A smaller difference is not worth saying: on average the chances of a full house are off by so much
themselves, on counts that were not used to fit them (tests/published/test_crowd_calibration.py) [0-1]."""


class TableCell(NamedTuple):
    """One place on one day, as row and column of a table."""

    row: int
    column: int


@dataclass(frozen=True)
class Miss:
    """A day that is better than the best in one respect.

    Attributes:
        spot: where it stands in the table.
        better: the respect: one of the wishes let go, or quietest and the like.
        costs_more: its likely total against the best day's; below zero where it costs less.
        felt_more: its generalized cost against the best day's; below zero only where it misses a wish.
        sentence: all of it.
    """

    spot: TableCell
    better: Fact
    costs_more: Money
    felt_more: Money
    sentence: Fact


def nearest_misses(table: DayTable, wishes: Sequence[Wish]) -> tuple[Miss, ...]:
    """Days that nearly came first, with what keeps each of them from it.

    First the days that are better than the best but miss a single wish, one for each wish; then the quietest,
    the cheapest, the one that keeps most of the naps, the one with the shortest drives and the one with the
    best weather to be out in, as far as they are not the best day itself. A day that weighs much more than
    the best one, or misses a wish by much, is not near.

    Args:
        table: the days.
        wishes: what was asked; all of them are met by the best day.

    Returns:
        At most `MOST_MISSES`; of two for the same day the first.
    """
    wanted = all_met(wishes, table)
    ranked = table.ranked(wanted)
    best = _first(ranked) if len(ranked) else None
    found: dict[TableCell, Miss] = {}
    for miss in _misses(table, wishes, wanted, best):
        if miss.spot != best:
            found.setdefault(miss.spot, miss)
    return tuple(found.values())[:MOST_MISSES]


def _misses(table: DayTable, wishes: Sequence[Wish], wanted: Mask, best: TableCell | None) -> Iterator[Miss]:
    for wish in wishes:
        others = all_met([other for other in wishes if other is not wish], table) & ~wish.met
        ranked = table.ranked(others & wish.nearly)
        if best is None and not len(ranked):
            ranked = table.ranked(others)
        if not len(ranked):
            continue
        spot = _first(ranked)
        if best is not None:
            felt = table.felt[best]
            if felt - table.felt[spot] < _least_money(table, felt):
                continue
        yield _without_wish(table, wish, spot, best)
    if best is None:
        return
    felt = float(table.felt[best])
    near = wanted & (
        table.felt <= felt + max(NEAR_SHARE * felt, Money(NEAR_MONEY, table.family.household.currency).minor)
    )
    for code, measure, most, least in _RESPECTS:
        values = np.where(near, measure(table).astype(np.float64), np.inf if not most else -np.inf)
        reached = values.max() if most else values.min()
        if round(abs(values[best] - reached), 2) < least(table, values[best]):
            continue
        ties = table.ranked(near & (values == reached))
        yield _better_in(table, code, _first(ties), best)


_Measure = Callable[[DayTable], NDArray[Any]]
_Least = Callable[[DayTable, float], float]
"""From what the best day has, how much better another one must be for it to be worth saying."""


def _least_money(table: DayTable, amount: float) -> float:
    """As with departures, less than a small loss is about equally good; in minor units like the amount."""
    small = Money(SMALL_LOSS, table.family.household.currency).minor
    return max(float(small), float(SMALL_LOSS_SHARE) * amount)


def _least_minutes(_table: DayTable, _minutes: float) -> float:
    return LEAST_MINUTES


def _least_chance(_table: DayTable, _chance: float) -> float:
    return LEAST_CHANCE


_RESPECTS: tuple[tuple[str, _Measure, bool, _Least], ...] = (
    ("misses-quietest", lambda table: np.round(table.chance, 2), False, _least_chance),
    ("misses-cheapest", lambda table: table.likely, False, _least_money),
    ("misses-most-sleep", lambda table: table.nap_kept, True, _least_minutes),
    ("misses-shortest-drives", lambda table: table.in_car, False, _least_minutes),
    ("misses-best-weather", lambda table: table.weather, False, _least_money),
)


def _first(ranked: Numbers) -> TableCell:
    row, column = ranked[0].tolist()
    return TableCell(row, column)


def _difference(table: DayTable, spot: TableCell, best: TableCell) -> tuple[Money, Money]:
    return (
        table.money(int(table.likely[spot]) - int(table.likely[best])),
        table.money(int(table.felt[spot]) - int(table.felt[best])),
    )


def _day_at(table: DayTable, spot: TableCell) -> Fact:
    day = table.day(spot.column)
    if len(table.places) > 1:
        return fact("misses-day-at", day=day, place=table.places[spot.row].name)
    return fact("misses-day", day=day)


def _without_wish(table: DayTable, wish: Wish, spot: TableCell, best: TableCell | None) -> Miss:
    when, why = _day_at(table, spot), wish.missed(*spot)
    if best is None:
        total = table.money(table.likely[spot])
        sentence = fact("misses-possible", when=when, total=total, why=why)
        return Miss(spot, wish.words, table.money(0), table.money(0), sentence)
    costs, felt = _difference(table, spot, best)
    less = table.money(-felt.minor)
    sentence = fact("misses-better", when=when, less=less, money=_more_or_less(costs), why=why)
    return Miss(spot, wish.words, costs, felt, sentence)


def _better_in(table: DayTable, code: str, spot: TableCell, best: TableCell) -> Miss:
    costs, felt = _difference(table, spot, best)
    reasons = tuple(_what_it_costs(table, spot, best)) or (fact("misses-weighs-more", more=felt),)
    gain = _gain(table, code, spot, best)
    sentence = fact(f"{code}-but", when=_day_at(table, spot), gain=gain, reasons=reasons)
    return Miss(spot, fact(code), costs, felt, sentence)


def _gain(table: DayTable, code: str, spot: TableCell, best: TableCell) -> Fact:
    if code == "misses-quietest":
        return _packed(table, spot, best)
    if code == "misses-cheapest":
        low, high = (table.money(table.likely[one]) for one in (spot, best))
        return fact("misses-instead-of", now=low, then=high)
    if code == "misses-best-weather":
        mild, harsh = (table.money(table.weather[one]) for one in (spot, best))
        return fact("misses-weather-instead-of", now=mild, then=harsh)
    column = table.nap_kept if code == "misses-most-sleep" else table.in_car
    now, then = (timedelta(minutes=int(column[one])) for one in (spot, best))
    return fact("misses-instead-of", now=now, then=then)


def _packed(table: DayTable, spot: TableCell, best: TableCell) -> Fact:
    now, then = (float(table.chance[one]) for one in (spot, best))
    return fact("misses-packed-instead-of", now=now, then=then)


def _what_it_costs(table: DayTable, spot: TableCell, best: TableCell) -> Iterator[Fact]:
    """What speaks against a day beside the best one, each with its amount, as far as it is worth saying."""
    likely = int(table.likely[best])
    costs = int(table.likely[spot]) - likely
    if costs >= _least_money(table, likely):
        yield _why_dearer(table, spot, best, table.money(costs))
    lost = int(table.nap_lost[spot]) - int(table.nap_lost[best])
    if lost >= LEAST_MINUTES:
        yield fact("misses-nap-lost", minutes=timedelta(minutes=lost))
    driven = int(table.in_car[spot]) - int(table.in_car[best])
    if driven >= LEAST_MINUTES:
        yield fact("misses-longer-drives", minutes=timedelta(minutes=driven))
    stay = int(table.visit[best]) - int(table.visit[spot])
    if stay >= LEAST_MINUTES:
        yield fact("misses-shorter-visit", minutes=timedelta(minutes=stay))
    harsher = int(table.weather[spot]) - int(table.weather[best])
    if harsher >= _least_money(table, int(table.weather[best])):
        yield fact("misses-harsher", more=table.money(harsher))
    fuller = float(table.chance[spot]) - float(table.chance[best])
    if round(fuller, 2) >= LEAST_CHANCE:
        yield _packed(table, spot, best)


def _why_dearer(table: DayTable, spot: TableCell, best: TableCell, more: Money) -> Fact:
    """Why one day costs more than another: a birthday in between, as far as it does, else what for."""
    there, here = table.outing(*spot), table.outing(*best)
    if not isinstance(there, Outing) or not isinstance(here, Outing):
        return fact("misses-dearer", more=more)
    if spot.row == best.row:
        by_age = _because_of_an_age(table, spot, there, here)
        if by_age is not None:
            return by_age
    least = min(more.minor, Money(SMALL_LOSS, more.currency).minor)
    differences = {kind: _spent_on(there, kind) - _spent_on(here, kind) for kind in CostKind}
    kinds = tuple(
        fact("misses-kind", kind=fact(KIND_CODES[kind]), money=_more_or_less(one))
        for kind, one in differences.items()
        if abs(one.minor) >= least
    )
    return fact("misses-dearer-for", more=more, kinds=kinds) if kinds else fact("misses-dearer", more=more)


def _spent_on(outing: Outing, kind: CostKind) -> Money:
    spent = Money.zero(outing.cost.total.currency)
    for item in outing.cost.items:
        if item.kind is kind and item.likely is not None:
            spent = spent + item.likely
    return spent


def _because_of_an_age(table: DayTable, spot: TableCell, there: Outing, here: Outing) -> Fact | None:
    """Who passes an age between two days of one place, and what that alone costs; None where nobody does."""
    passed: list[tuple[Member, Money]] = []
    for member in there.party:
        if member.months_on(there.day) == member.months_on(here.day):
            continue
        younger = [one.aged(there.day, here.day) if one is member else one for one in there.party]
        as_before = table.planned_for(younger, *spot)
        if isinstance(as_before, Outing):
            more = there.cost.total.likely - as_before.cost.total.likely
            if more.minor > 0:
                passed.append((member, more))
    if not passed:
        return None
    member, more = max(passed, key=lambda found: found[1].amount)
    months = member.months_on(there.day)
    birthday = months_later(member.born.earliest, months - months % MONTHS)
    if here.day < birthday <= there.day:
        return fact("misses-after-birthday", name=member.name, day=birthday, more=more)
    return fact("misses-when-older", name=member.name, age=age_in_words(months), more=more)


def _more_or_less(costs: Money) -> Fact:
    if not costs.minor:
        return fact("misses-as-much")
    return fact("misses-more-or-less", by=Money(abs(costs.amount), costs.currency), more=costs.minor > 0)
