"""Many places, each on its best day, side by side."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

import numpy as np

from tripplan.documents.calendars.calendars import DateSpan
from tripplan.documents.family.member import Member
from tripplan.documents.places.place import Place
from tripplan.planning.family.family import Family
from tripplan.planning.family.variety import places_to_choose_among
from tripplan.planning.outing.outing import NoOuting, Outing
from tripplan.planning.sweep.sweeping import sweep
from tripplan.planning.sweep.table import DayTable
from tripplan.planning.sweep.wishes import Mask
from tripplan.values.money import Money, MoneyRange

SIDE_BY_SIDE = 3
"""So many outings are compared at once."""


def days_in(span: DateSpan) -> tuple[date, ...]:
    """Every date of a span, both ends included."""
    return tuple(span.first + timedelta(days=n) for n in range((span.last - span.first).days + 1))


@dataclass(frozen=True)
class DayInShort:
    """What one day at a place comes to.

    Attributes:
        day: when.
        total: total cost.
        generalized_cost: money and nuisances.
    """

    day: date
    total: MoneyRange
    generalized_cost: Money


@dataclass(frozen=True)
class Candidate:
    """One place in a comparison.

    Attributes:
        place: the card.
        best: the day with the least generalized cost; None where no day can be done.
        other_days: the further days that can be done, in short, least generalized cost first.
        passed_over: the days that cannot, with the reasons.
    """

    place: Place
    best: Outing | None
    other_days: tuple[DayInShort, ...]
    passed_over: tuple[NoOuting, ...]


def compare(
    family: Family, party: Sequence[Member], places: Sequence[Place], days: Sequence[date], *, today: date
) -> tuple[Candidate, ...]:
    """Each place on its best day, side by side.

    Args:
        family: people, car, home, calendars.
        party: who goes.
        places: the places to compare, usually three.
        days: the days that may be chosen; one for a fixed day.
        today: for booking deadlines.

    Returns:
        One candidate a place, least total cost first; those without a day last, in the order given.
    """
    span = DateSpan(first=min(days), last=max(days))
    table = sweep(family, party, places, span, today=today)
    asked = np.array([day in set(days) for day in table.days])
    candidates = [_candidate(table, row, asked) for row in range(len(table.places))]
    return tuple(
        sorted(
            candidates,
            key=lambda candidate: (
                candidate.best is None,
                candidate.best.cost.total.likely.amount if candidate.best else 0,
            ),
        )
    )


def suggested(family: Family, today: date, swept: Callable[[Sequence[Place]], DayTable]) -> tuple[Place, ...]:
    """The few places to compare where none are picked: those whose best days weigh least, the best first.

    Args:
        family: whose places, and where it was lately.
        today: by the clock at home.
        swept: gives the days of some places; asked only where there are more than a few.
    """
    places = places_to_choose_among(family, today)
    if len(places) <= SIDE_BY_SIDE:
        return places
    table = swept(places)
    rows = dict.fromkeys(row for row, _ in table.ranked().tolist())
    return tuple(table.places[row] for row in list(rows)[:SIDE_BY_SIDE]) or places[:SIDE_BY_SIDE]


def best_of(table: DayTable, row: int) -> Outing | None:
    """The outing to one place of a table on its best day; None where no day can be done.

    Args:
        table: the days.
        row: of the place.
    """
    ranked = _ranked(table, row, np.ones(len(table.days), dtype=bool))
    best = table.outing(row, ranked[0]) if ranked else None
    return best if isinstance(best, Outing) else None


def _ranked(table: DayTable, row: int, asked: Mask) -> list[int]:
    """The columns of one place's days that can be done, the best first."""
    here = np.zeros_like(table.can_go)
    here[row] = asked
    return [column for _, column in table.ranked(here).tolist()]


def _candidate(table: DayTable, row: int, asked: Mask) -> Candidate:
    ranked = _ranked(table, row, asked)
    best = table.outing(row, ranked[0]) if ranked else None
    missed = (table.outing(row, column) for column in np.flatnonzero(asked & ~table.can_go[row]).tolist())
    return Candidate(
        table.places[row],
        best if isinstance(best, Outing) else None,
        tuple(
            DayInShort(table.day(column), table.total(row, column), table.money(table.felt[row, column]))
            for column in ranked[1:]
        ),
        tuple(answer for answer in missed if isinstance(answer, NoOuting)),
    )
