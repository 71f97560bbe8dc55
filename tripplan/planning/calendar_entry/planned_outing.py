"""Planned outings and the calendar entries made of them."""

from collections.abc import Callable, Collection, Iterable
from datetime import date, datetime, timedelta

from tripplan.documents.family.household import Household
from tripplan.documents.model import Written
from tripplan.documents.outings.planned import EntryTicks, PlannedOuting, PlanStatus
from tripplan.documents.places.place import Place, PlaceId
from tripplan.documents.study.units import StudyUnit
from tripplan.errors import UnknownName
from tripplan.language import wording
from tripplan.planning.calendar_entry.entry import EntryLayout, OutingEntry, endings, outing_uid
from tripplan.planning.calendar_entry.outing_entry import (
    entry_for_outing,
    location_of,
    moved_lines,
    point_of,
    title,
)
from tripplan.planning.calendar_entry.reminders import reminders, to_dos
from tripplan.planning.calendar_entry.settled import as_settled
from tripplan.planning.family.family import Family
from tripplan.planning.opening.booking import book_by
from tripplan.planning.outing.outing import Outing, plan_outing
from tripplan.planning.outing.place_facts import place_facts

_A_YEAR = timedelta(days=366)


def tentative_outings(
    outings: Iterable[tuple[StudyUnit, Outing]],
    household: Household,
    *,
    before: Callable[[PlaceId, date], PlannedOuting | None],
    ids_taken: Collection[str],
    at: datetime,
) -> list[PlannedOuting]:
    """Outings of study units as planned ones that are still open, to put on record.

    Args:
        outings: each with the unit it is for; no place twice on a day.
        household: whose they are.
        before: what an outing to a place on a day goes on from, if there is anything.
        ids_taken: ids that were ever given.
        at: now; zone-aware.
    """
    planned = []
    for unit, outing in outings:
        earlier = before(outing.place.id, outing.day)
        ticked = earlier.ticked if earlier else EntryTicks()
        one = planned_from(
            outing, household, ticked, PlanStatus.TENTATIVE, before=earlier, ids_taken=ids_taken, at=at
        )
        planned.append(one.model_copy(update={"study_unit": unit.name}))
    return planned


def planned_from(
    outing: Outing,
    household: Household,
    ticked: EntryTicks,
    status: PlanStatus,
    *,
    before: PlannedOuting | None,
    ids_taken: Collection[str],
    at: datetime,
) -> PlannedOuting:
    """The planned outing to put on record.

    Args:
        outing: what the parent has settled on.
        household: whose it is; its name is part of what the UID is made from.
        ticked: what the entry tells.
        status: how firm it is.
        before: the planned outing that this one takes the place of, or goes on from where it was taken off
            the list; None for a new one.
        ids_taken: ids that were ever given.
        at: now; zone-aware.

    Returns:
        The one before where nothing has changed, else one sequence number later.
    """
    plan = outing.plan
    values: dict[str, object] = {
        "place": outing.place.id,
        "day": outing.day,
        "party": tuple(member.name for member in outing.party),
        "leave_home": plan.leave_home,
        "enter": plan.enter,
        "leave_place": plan.leave_place,
        "home": plan.home,
        "status": status,
        "likely_amount": outing.cost.total.likely.rounded().amount,
        "currency": outing.cost.total.currency,
        "ticked": ticked,
        "book_by": book_by(outing.place, outing.day, (line.name for line in outing.admission.purchases)),
    }
    if before is not None:
        if all(getattr(before, name) == value for name, value in values.items()):
            return before
        moved = before.leave_home != plan.leave_home
        return before.changed(
            at,
            **values,
            settled=False,
            moved_from=before.leave_home if moved else before.moved_from,
            once_written=tuple(dict.fromkeys((*before.once_written, *endings(_written_as(before))))),
        )
    name = f"{outing.place.id}-{outing.day}"
    uid_of = f"{household.name} {outing.place.id} {outing.day}"
    count = 1
    while _numbered(name, count) in ids_taken:
        count += 1
    return PlannedOuting.model_validate(
        {
            **values,
            "id": _numbered(name, count),
            "uid": outing_uid(uid_of if count == 1 else f"{uid_of} {count}"),
            "changed_at": at,
        }
    )


def with_next_sequence(earlier: Written, last: Written, at: datetime) -> Written:
    """How a document reads when an earlier state of it, or one made elsewhere, comes after the last one.

    A planned outing's sequence goes on from its last state, because calendars that hold that one take
    nothing with a lower number (RFC 5546, 2.1.5); one made elsewhere that is ahead of it keeps its number.
    Any other document is as it was.

    Args:
        earlier: the state that takes the place of the last one.
        last: the state it comes after.
        at: now; zone-aware.
    """
    if not isinstance(earlier, PlannedOuting) or not isinstance(last, PlannedOuting) or earlier == last:
        return earlier
    written = tuple(dict.fromkeys((*earlier.once_written, *last.once_written, *endings(_written_as(last)))))
    if earlier.sequence > last.sequence:
        return earlier.model_copy(update={"once_written": written})
    return earlier.model_copy(update={"sequence": last.sequence}).changed(at, once_written=written)


def _written_as(planned: PlannedOuting) -> OutingEntry:
    """Just enough of an entry to know what its file held."""
    return OutingEntry(
        uid=planned.uid,
        summary=planned.place,
        start=planned.leave_home,
        arrive=planned.enter,
        leave_place=planned.leave_place,
        end=planned.home,
        layout=EntryLayout.PARTS if planned.ticked.in_parts else EntryLayout.WHOLE,
        to_dos=to_dos(planned.ticked, planned.place, planned.leave_home, planned.book_by),
    )


def _numbered(name: str, count: int) -> str:
    return name if count == 1 else f"{name}-{count}"


def entry_of(
    planned: PlannedOuting, household: Household, place: Place | None, outing: Outing | None
) -> OutingEntry:
    """The calendar entry of a planned outing.

    Args:
        planned: as it is on record.
        household: whose it is.
        place: its card, if it is still kept.
        outing: the outing as it would be planned now; it gives the description if it still has the planned
            times, else the entry only says what is on record.
    """
    ticked = planned.ticked
    if outing is not None and _has_the_times(outing, planned):
        return entry_for_outing(
            outing,
            household,
            uid=planned.uid,
            ticked=ticked,
            sequence=planned.sequence,
            last_modified=planned.changed_at,
            status=planned.status,
            moved_from=planned.moved_from,
            withdrawn=planned.once_written,
        )
    name = place.name if place else planned.place
    layout = EntryLayout.PARTS if ticked.in_parts else EntryLayout.WHOLE
    return OutingEntry(
        uid=planned.uid,
        summary=title(name, planned.leave_home, layout),
        start=planned.leave_home,
        arrive=planned.enter,
        leave_place=planned.leave_place,
        end=planned.home,
        sequence=planned.sequence,
        last_modified=planned.changed_at,
        status=planned.status,
        location=location_of(place) if place else "",
        point=point_of(place) if place else None,
        url=place.web if place else "",
        description=_on_record_lines(planned),
        categories=place.visit.topics if place else (),
        reminders=reminders(ticked, planned.leave_home, planned.book_by),
        layout=layout,
        busy=ticked.busy,
        colour=ticked.colour,
        to_dos=to_dos(ticked, name, planned.leave_home, planned.book_by),
        withdrawn=planned.once_written,
    )


def _has_the_times(outing: Outing, planned: PlannedOuting) -> bool:
    plan = outing.plan
    return (plan.leave_home, plan.enter, plan.leave_place, plan.home) == (
        planned.leave_home,
        planned.enter,
        planned.leave_place,
        planned.home,
    )


def _on_record_lines(planned: PlannedOuting) -> str:
    costs = planned.ticked.costs
    return "\n".join(
        (
            *moved_lines(planned.moved_from),
            f"Load up at {wording.clock(planned.leave_home)}.",
            f"Go in about {wording.clock(planned.enter)}, set out for home about "
            f"{wording.clock(planned.leave_place)}.",
            f"Home again about {wording.clock(planned.home)}.",
            *((f"Cost in all, as planned: about {wording.money(planned.likely_total)}.",) if costs else ()),
        )
    )


def coming(outings: Iterable[PlannedOuting], today: date) -> list[PlannedOuting]:
    """The outings of the year to come, called-off ones too, in order of their days."""
    last = today + _A_YEAR
    return sorted(
        (outing for outing in outings if today <= outing.day <= last),
        key=lambda outing: (outing.leave_home, outing.id),
    )


def planned_again(family: Family, planned: PlannedOuting, today: date) -> Outing | None:
    """The outing as it would be planned now with the same times; None where it cannot be."""
    place = next((place for place in family.places if place.id == planned.place), None)
    if place is None or planned.day < today:
        return None
    try:
        party = family.party(planned.party)
    except UnknownName:  # Somebody of the party is no member any more.
        return None
    family = family.about(place.id, planned.day)
    facts = place_facts(family, place, (planned.day.year,))
    outing = plan_outing(
        family,
        party,
        facts,
        planned.day,
        today=planned.planned_on(family.household.home.zone),
        leave_at=planned.leave_home,
        leave_place_at=planned.leave_place,
        as_asked=as_settled(planned),
    )
    return outing if isinstance(outing, Outing) else None
