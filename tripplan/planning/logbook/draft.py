"""A new entry with all that is known before anybody writes: where, when, who, and what the plan had said."""

from collections.abc import Collection
from datetime import date, datetime

from tripplan.documents.family.household import Household
from tripplan.documents.logbook.as_planned import AsPlanned
from tripplan.documents.logbook.entry import (
    ChildDay,
    LogbookEntry,
    NapThere,
    Paid,
    PaidFor,
    SubjectTime,
    new_entry_id,
)
from tripplan.documents.outings.planned import PlannedOuting, PlanStatus
from tripplan.documents.places.place import Place
from tripplan.values.ages import ADULT, MONTHS
from tripplan.values.cost_kind import CostKind
from tripplan.values.money import Money

PAID_FOR: tuple[PaidFor, ...] = ("admission", "car", "parking", "food", "extras")
"""What money goes to, in the order in which it is asked for."""
TAUGHT_FROM_MONTHS = 4 * MONTHS
"""Younger children's days are not taken for school days by themselves [months]. No source, our choice."""


def waiting(
    planned: Collection[PlannedOuting], entries: Collection[LogbookEntry], now: datetime
) -> tuple[PlannedOuting, ...]:
    """Planned outings that have begun and are not logged yet: what is over, then what is on; newest first.

    Args:
        planned: all of them.
        entries: what is in the logbook.
        now: the present moment, zone-aware.
    """
    written = {entry.planned for entry in entries}
    return tuple(
        sorted(
            (
                one
                for one in planned
                if one.id not in written and one.status is not PlanStatus.CANCELLED and one.enter <= now
            ),
            key=lambda one: (one.home <= now, one.enter),
            reverse=True,
        )
    )


def draft(
    household: Household,
    day: date,
    *,
    place: Place | None,
    title: str = "",
    party: Collection[str] = (),
    planned: PlannedOuting | None = None,
    said: AsPlanned | None = None,
    ids_taken: Collection[str] = (),
) -> LogbookEntry:
    """A new entry with what is known already; what happened is left for the parent to write.

    Args:
        household: the people, the home and its money.
        day: of the outing.
        place: its card; None where there is none.
        title: what the outing is called; the place's name when left out.
        party: who went; everybody when left out.
        planned: the planned outing, if it was one; its day, place and party count. Where nobody of the party
            is a member any more, everybody is taken.
        said: what the plan had said.
        ids_taken: ids that are in use.

    Returns:
        The entry, with a line for each child that is taught, and the place's topics as its subjects.
    """
    day = planned.day if planned else day
    names = planned.party if planned else tuple(party)
    members = [member.name for member in household.members]
    here = [name for name in members if name in names] or members
    children = [
        member
        for member in household.members
        if member.name in here
        and member.months_on(day) not in ADULT
        and member.months_on(day) >= TAUGHT_FROM_MONTHS
    ]
    topics = place.visit.topics if place else ()
    return LogbookEntry(
        id=new_entry_id(day, place.id if place else title, set(ids_taken)),
        day=day,
        title=title or (place.name if place else planned.place if planned else "outing"),
        place=place.id if place else None,
        planned=planned.id if planned else "",
        study_unit=planned.study_unit if planned else "",
        party=tuple(here),
        currency=household.currency,
        home_zone=household.home.zone.key,
        place_zone=place.where.zone.key if place else None,
        children=tuple(
            ChildDay(member=child.name, subjects=tuple(SubjectTime(subject=topic) for topic in topics))
            for child in children
        ),
        as_planned=said,
    )


def filled_as_planned(entry: LogbookEntry) -> LogbookEntry:
    """The entry with times, money, distance and naps as the plan had said, for a day that went like that.

    What the entry says already stays.
    """
    said = entry.as_planned
    if said is None:
        return entry
    home, there = entry.zones
    clock = {
        "left_home": (said.wheels_turn or said.leave_home).astimezone(home).time(),
        "arrived": said.arrive.astimezone(there).time(),
        "left_place": said.leave_place.astimezone(there).time(),
        "home_again": said.home.astimezone(home).time(),
    }
    changes: dict[str, object] = {name: at for name, at in clock.items() if getattr(entry, name) is None}
    if entry.km_driven is None and said.km:
        changes["km"] = said.km
    if entry.spent is None:
        changes["paid"] = [
            Paid(kind=kind, amount=amount.rounded().amount)
            for kind in PAID_FOR
            if (amount := planned_for(said, kind)) is not None and amount.amount
        ]
    if not entry.naps:
        here = set(entry.party)
        changes["naps"] = [
            NapThere(member=nap.member, minutes=nap.kept_minutes) for nap in said.naps if nap.member in here
        ]
    return LogbookEntry.model_validate({**dict(entry), **changes})


def planned_for(said: AsPlanned, kind: PaidFor) -> Money | None:
    """What was planned for one kind of thing that can be paid for; None where nobody knew it."""
    return said.amount_for(CostKind(kind))
