"""The visits a parent lists for the coming twelve months, beside the outings that are planned already."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from tripplan.documents.family.member import Member
from tripplan.documents.outings.planned import PlannedOuting, PlanStatus
from tripplan.documents.outings.planned_visits import ListedVisit
from tripplan.documents.places.idea import IdeaPlace
from tripplan.documents.places.place import Place
from tripplan.language import wording
from tripplan.planning.family.family import Family
from tripplan.planning.passes.candidates import last_day_valid
from tripplan.planning.passes.plan import PlannedVisit
from tripplan.planning.passes.which_pays import MONTHS_AT_MOST


@dataclass(frozen=True)
class ComingVisits:
    """The visits of the coming twelve months.

    Attributes:
        visits: planned outings, then those listed.
        notes: what could not be taken along, in words.
    """

    visits: tuple[PlannedVisit, ...]
    notes: tuple[str, ...]


def last_day_listed(today: date) -> date:
    """The last day for which a visit may be listed."""
    return last_day_valid(today, MONTHS_AT_MOST)


def coming_visits(
    family: Family, outings: Iterable[PlannedOuting], listed: Iterable[ListedVisit], today: date
) -> ComingVisits:
    """Everything that is planned or listed for the coming twelve months.

    A listed visit to a place on a day for which an outing is planned is that outing and counts once. Outings
    called off and days that are over are passed over.

    Args:
        family: people and places.
        outings: the planned outings.
        listed: what the parent has listed beside them.
        today: twelve months are counted from here.
    """
    visits: dict[tuple[str, date], PlannedVisit] = {}
    notes: list[str] = []
    last = last_day_listed(today)
    called_on = [outing for outing in outings if outing.status is not PlanStatus.CANCELLED]
    for one in sorted(called_on, key=lambda outing: (outing.enter, outing.id)):
        _take(visits, notes, family, one, today, last)
    for visit in listed:
        _take(visits, notes, family, visit, today, last)
    return ComingVisits(tuple(visits.values()), tuple(dict.fromkeys(notes)))


def _take(
    visits: dict[tuple[str, date], PlannedVisit],
    notes: list[str],
    family: Family,
    one: PlannedOuting | ListedVisit,
    today: date,
    last: date,
) -> None:
    place = next((place for place in family.places if place.id == one.place), None)
    if one.day < today or (one.place, one.day) in visits:
        return
    when = wording.day(one.day)
    if place is None:
        notes.append(f"{when}: '{one.place}' is left out, its card is not here any more.")
    elif isinstance(place, IdeaPlace):
        notes.append(f"{when}, {place.name}, is left out: what entry costs there is not known yet.")
    elif one.day > last:
        notes.append(f"{when}, {place.name}, is left out: plans reach to {wording.day(last)}.")
    else:
        party = tuple(member for member in family.household.members if member.name in one.party)
        gone = [name for name in one.party if name not in {member.name for member in party}]
        if gone:
            notes.append(f"{when}, {place.name}: {wording.listed(gone)} left out, no member any more.")
        if party:
            visits[one.place, one.day] = _visit(place, one, party)


def _visit(place: Place, one: PlannedOuting | ListedVisit, party: tuple[Member, ...]) -> PlannedVisit:
    at = one.enter.astimezone(place.where.zone).time() if isinstance(one, PlannedOuting) else None
    return PlannedVisit(place, one.day, party, at)
