"""A plan made while the day is on, put in the place of the one on record."""

from collections.abc import Collection
from datetime import datetime, timedelta

from tripplan.documents.outings.planned import EntryTicks, PlannedOuting, PlanStatus
from tripplan.planning.calendar_entry.planned_outing import planned_from
from tripplan.planning.family.family import Family
from tripplan.planning.on_the_day.recovery_options import RecoveryOption
from tripplan.planning.on_the_day.trouble import Situation, Trouble
from tripplan.planning.outing.outing import Outing

_A_MOMENT = timedelta(minutes=1)
"""Whoever goes home as soon as they are let in has been there so long."""


def used_plan(
    way: RecoveryOption,
    family: Family,
    outing: Outing,
    trouble: Trouble,
    *,
    before: PlannedOuting | None,
    ids_taken: Collection[str],
    at: datetime,
) -> PlannedOuting:
    """The outing as it is to stand on record once a way out is used.

    Args:
        way: what the party does.
        family: whose outing it is.
        outing: the day as it was planned.
        trouble: what went wrong.
        before: the outing on record, whose place the new one takes; the same entry moves on the calendar.
        ids_taken: ids that were ever given.
        at: now; zone-aware.

    Returns:
        One sequence number later than before; called off where nobody goes in.
    """
    ticked = EntryTicks() if before is None else before.ticked

    def planned(outing: Outing, before: PlannedOuting | None) -> PlannedOuting:
        household = family.household
        return planned_from(
            outing, household, ticked, PlanStatus.CONFIRMED, before=before, ids_taken=ids_taken, at=at
        )

    cost = {"likely_amount": way.total.rounded().amount, "settled": True}
    if way.outing is not None:
        new = planned(way.outing, before)
        if before is not None and new == before:
            return before.changed(at, **cost)
        return new.model_copy(update=cost)
    here, new = Situation(family, outing, trouble), before or planned(outing, None)
    if not (here.there or here.going_home):
        return new.changed(at, status=PlanStatus.CANCELLED)
    leaves = here.left_place if here.going_home else here.now
    return new.changed(at, **cost, leave_place=max(leaves, new.enter + _A_MOMENT), home=way.home)
