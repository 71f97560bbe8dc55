"""The invented family's outings around a day: one that is on, one that comes, one that nobody has logged."""

from collections.abc import Collection, Iterator, Sequence
from datetime import date, datetime, time, timedelta
from itertools import chain, islice, product

from tripplan.documents.outings.planned import EntryTicks, PlannedOuting, PlanStatus
from tripplan.documents.places.place import Place
from tripplan.planning.calendar_entry.planned_outing import planned_from
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import Outing, plan_outing
from tripplan.planning.outing.place_facts import place_facts

_PLANNED_AHEAD = timedelta(days=21)
"""So long before its day each was planned, which every place's deadline for booking allows."""
_COMING, _OVER = (*range(3, 15), 1, 2), range(-1, -13, -1)
"""So many days from today the next one is, rather not at once, and the last one was."""


def outings_around(
    family: Family, now: datetime, *, apart_from: Collection[str], not_on: Collection[date]
) -> list[PlannedOuting]:
    """Outings that the family can do on their days, planned in time.

    Args:
        family: all of it goes. Where one of the three is planned already, it needs no other.
        now: what is on at this moment is rather planned for today than what is not; zone-aware.
        apart_from: ids of places that are not gone to while others can be.
        not_on: days that are taken, beside those of what is planned.

    Returns:
        What is missing of one for today, one for the coming days and one that is over, as far as it can be.
    """
    places = sorted(family.places, key=lambda place: place.id in apart_from)
    today = now.astimezone(family.household.home.zone).date()
    found: list[Outing] = []
    for counts in ((0,), _COMING, _OVER):
        days = [today + timedelta(days=count) for count in counts]
        if not any(one.day in days for one in family.planned):
            left = [place for place in places if place.id not in {one.place.id for one in found}]
            found += _first(_possible(family, left, [day for day in days if day not in not_on]), now)
    return [_planned(family, outing) for outing in found]


def _first(possible: Iterator[Outing], now: datetime) -> list[Outing]:
    """The first outing; of today's the first that is on, if one is."""
    first = list(islice(possible, 1))
    if first and first[0].plan.leave_home.date() == now.astimezone(first[0].plan.leave_home.tzinfo).date():
        on = (one for one in chain(first, possible) if one.plan.leave_home <= now < one.plan.home)
        return list(islice(on, 1)) or first
    return first


def _possible(family: Family, places: Sequence[Place], days: Sequence[date]) -> Iterator[Outing]:
    """Every outing that can be done, day by day."""
    party = family.party([member.name for member in family.household.members])
    for day, place in product(days, places):
        facts = place_facts(family, place, (day.year,))
        outing = plan_outing(family, party, facts, day, today=day - _PLANNED_AHEAD)
        if isinstance(outing, Outing):
            yield outing


def _planned(family: Family, outing: Outing) -> PlannedOuting:
    zone = family.household.home.zone
    return planned_from(
        outing,
        family.household,
        EntryTicks(),
        PlanStatus.CONFIRMED,
        before=None,
        ids_taken=(),
        at=datetime.combine(outing.day - _PLANNED_AHEAD, time(20), zone),
    )
