"""The best indoor outing of the same day, to stand beside one in the open air."""

from collections.abc import Collection
from dataclasses import dataclass
from datetime import date, datetime

from tripplan.documents.calendars.calendars import DateSpan
from tripplan.documents.outings.planned import PlannedOuting
from tripplan.documents.study.units import StudyUnit
from tripplan.language import wording
from tripplan.language.sentences import Fact, fact
from tripplan.planning.calendar_entry.planned_outing import planned_from
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import Outing
from tripplan.planning.outing.sentences import total_sentence
from tripplan.planning.sweep.sweeping import sweep
from tripplan.planning.topic_fit import fits_of
from tripplan.values.money import Money


@dataclass(frozen=True)
class RainPlan:
    """Where to go instead if it rains.

    Attributes:
        outing: there, on the same day.
        change: its likely total less that of the outing in the open air.
        unit: the name of the study unit that it fits; empty where none is set, or nothing indoors fits it.
    """

    outing: Outing
    change: Money
    unit: str = ""

    @property
    def sentence(self) -> Fact:
        """Such as 'Clockwork Museum, $52 ($48 to $55) in all, $12 less; it fits Time and tide'."""
        change = self.change.rounded()
        by = wording.whole_money(Money(abs(change.amount), change.currency))
        compared = (
            fact("recovery-more-or-less", by=by, more=change.amount > 0)
            if change.amount
            else fact("recovery-the-same")
        )
        place, total = self.outing.place.name, total_sentence(self.outing.cost)
        if self.unit:
            return fact("recovery-rain-fits", place=place, total=total, compared=compared, unit=self.unit)
        return fact("recovery-rain", place=place, total=total, compared=compared)


def rain_plan(family: Family, outing: Outing, unit: StudyUnit | None, *, today: date) -> RainPlan | None:
    """The indoor outing of the same day and party that weighs least.

    Args:
        family: people, car, home, places; ideas are passed over, as nobody knows what they cost.
        outing: the one it stands beside.
        unit: the study unit it is for; where something indoors fits it that day, only that counts.
        today: for booking deadlines.

    Returns:
        None where the outing is not in the open air, or nothing indoors can be done that day.
    """
    indoors = [place for place in family.cards if place.visit.indoors == "indoors"]
    if outing.place.visit.indoors != "outdoors" or not indoors:
        return None
    about = family.about(outing.place.id, outing.day)
    span = DateSpan(first=outing.day, last=outing.day)
    days = sweep(about, outing.party, indoors, span, today=today)
    fitting = {fit.place.id for fit in fits_of(unit, indoors).places} if unit else set()
    rows: list[int] = sorted(days.ranked()[:, 0].tolist(), key=lambda row: indoors[row].id not in fitting)
    best = days.outing(rows[0], 0) if rows else None
    if not isinstance(best, Outing):
        return None
    change = best.cost.total.likely - outing.cost.total.likely
    return RainPlan(best, change, unit.name if unit and best.place.id in fitting else "")


def swapped(
    plan: RainPlan, family: Family, before: PlannedOuting, *, ids_taken: Collection[str], at: datetime
) -> PlannedOuting:
    """The outing as it is to stand on record once the rain plan is used; the same entry on the calendar.

    Args:
        plan: what takes its place.
        family: whose outing it is.
        before: the outing on record; as firm as it was.
        ids_taken: ids that were ever given.
        at: now; zone-aware.
    """
    return planned_from(
        plan.outing,
        family.household,
        before.ticked,
        before.status,
        before=before,
        ids_taken=ids_taken,
        at=at,
    )
