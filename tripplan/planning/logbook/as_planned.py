"""What the plan had said about an outing, kept beside what came of it."""

from tripplan.documents.logbook.as_planned import AsPlanned, PlannedItem, PlannedNap
from tripplan.documents.outings.planned import PlannedOuting
from tripplan.planning.calendar_entry.settled import as_settled
from tripplan.planning.day import StepKind
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import Outing, plan_outing
from tripplan.planning.outing.place_facts import place_facts


def as_planned(family: Family, planned: PlannedOuting) -> AsPlanned:
    """What the plan had said about an outing, with as much of its detail as can be worked out again.

    It is planned once more as on the day when the outing was last changed, with today's cards and figures.

    Args:
        family: the household and its places.
        planned: the outing as it stands on the calendar.

    Returns:
        The plan's times, items, naps, crowd risk and weather outdoors; only times and total where the place
        card or a member is gone or the day cannot be planned any more.
    """
    place = next((place for place in family.places if place.id == planned.place), None)
    if place is None or any(family.household.member(name) is None for name in planned.party):
        return _without_detail(planned)
    family = family.about(place.id, planned.day)
    facts = place_facts(family, place, (planned.day.year,))
    outing = plan_outing(
        family,
        family.party(planned.party),
        facts,
        planned.day,
        today=planned.planned_on(family.household.home.zone),
        leave_at=planned.leave_home,
        leave_place_at=planned.leave_place,
        as_asked=as_settled(planned),
    )
    return _with_detail(planned, outing) if isinstance(outing, Outing) else _without_detail(planned)


def _without_detail(planned: PlannedOuting) -> AsPlanned:
    return AsPlanned(
        leave_home=planned.leave_home,
        arrive=planned.enter,
        leave_place=planned.leave_place,
        home=planned.home,
        currency=planned.currency,
        likely_amount=planned.likely_amount,
    )


def _with_detail(planned: PlannedOuting, outing: Outing) -> AsPlanned:
    drives = (step.start for step in outing.plan.steps if step.kind is StepKind.DRIVE)
    weather = outing.weather if outing.weather and outing.weather.outdoors else None
    load_up = next(drives, outing.plan.leave_home) - outing.plan.leave_home
    return AsPlanned(
        leave_home=planned.leave_home,
        wheels_turn=planned.leave_home + load_up,
        arrive=planned.enter,
        leave_place=planned.leave_place,
        home=planned.home,
        km=round(outing.way_there.drive.km.likely + outing.way_home.drive.km.likely, 1),
        currency=outing.cost.total.currency,
        likely_amount=outing.cost.total.likely.amount,
        items=tuple(
            PlannedItem(
                kind=item.kind, label=item.label.text, amount=item.likely.amount if item.likely else None
            )
            for item in outing.cost.items
        ),
        naps=tuple(
            PlannedNap(member=nap.member, usual_minutes=nap.usual_minutes, kept_minutes=nap.kept_minutes)
            for nap in outing.plan.naps
        ),
        crowd_chance=round(outing.crowd.chance, 4),
        crowd_word=outing.crowd.fullness,
        felt_low=None if weather is None else round(weather.felt_low, 1),
        felt_high=None if weather is None else round(weather.felt_high, 1),
        wet_chance=None if weather is None else round(weather.day.wet, 2),
    )
