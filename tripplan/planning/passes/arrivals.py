"""Planned visits with the moment of arrival, what the calendars say, and the price of parking."""

from collections.abc import Iterable, Sequence, Set
from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta
from decimal import Decimal

from tripplan.documents.family.held_pass import HeldPass
from tripplan.documents.family.household import Household
from tripplan.documents.places.offers import Pass
from tripplan.documents.places.place import Place
from tripplan.language.sentences import fact
from tripplan.planning.admission.availability import VisitTime
from tripplan.planning.cost.driving import cars_needed
from tripplan.planning.cost.own_money import in_own_money, without_rate
from tripplan.planning.cost.parking import parking_price
from tripplan.planning.family.family import Family
from tripplan.planning.holidays.local_days import place_holidays
from tripplan.planning.holidays.schools import days_out_of_school
from tripplan.planning.opening.hours import Openness, hours_on
from tripplan.planning.passes.plan import PlannedVisit, UnplannedVisit
from tripplan.values.money import Money
from tripplan.values.opening_hours import holds_at


@dataclass(frozen=True)
class Arrival:
    """A visit that can be.

    Attributes:
        visit: as planned, the place's prices in the household's currency.
        moment: the arrival, zone-aware at the place.
        public_holidays: the dates PH stands for in the place's rules.
        days_out_of_school: the dates SH stands for.
        parking: for all the cars it takes; None where the card does not tell.
    """

    visit: PlannedVisit
    moment: datetime
    public_holidays: Set[date]
    days_out_of_school: Set[date]
    parking: Money | None

    @property
    def day(self) -> date:
        """The date of the visit."""
        return self.visit.day

    def honours(self, place_id: str, offer: Pass) -> bool:
        """Whether a pass is worth anything here and now, whoever holds it."""
        if place_id == self.visit.place.id:
            return offer.valid is None or holds_at(
                offer.valid, self.moment, self.public_holidays, self.days_out_of_school
            )
        return any(one.place == self.visit.place.id and one.percent_off > 0 for one in offer.elsewhere)

    def parks_free(self, passes: Iterable[HeldPass]) -> bool:
        """Whether a holder in the party has a valid pass of this place that includes parking."""
        names = {member.name for member in self.visit.party}
        return any(
            one.place == self.visit.place.id
            and self.day <= one.valid_until
            and not names.isdisjoint(one.holders)
            and offer.parking_included
            and self.honours(one.place, offer)
            for one in passes
            for offer in self.visit.place.offers
            if isinstance(offer, Pass) and offer.name == one.offer
        )


def arrivals_of(
    family: Family, visits: Sequence[PlannedVisit], today: date
) -> tuple[tuple[Arrival, ...], tuple[UnplannedVisit, ...]]:
    """The visits that can be, in order of arrival, and those that cannot."""
    arrivals: list[Arrival] = []
    left_out: list[UnplannedVisit] = []
    for visit in visits:
        found = _arrival(family, visit, today)
        if isinstance(found, Arrival):
            arrivals.append(found)
        else:
            left_out.append(found)
    arrivals.sort(key=lambda arrival: arrival.moment)
    return tuple(arrivals), tuple(left_out)


def _arrival(family: Family, visit: PlannedVisit, today: date) -> Arrival | UnplannedVisit:
    day, household = visit.day, family.household
    if day < today:
        return UnplannedVisit(visit, (fact("outing-over"),))
    place = in_own_money(visit.place, household)
    if place.currency != household.currency:
        return UnplannedVisit(visit, (without_rate(place, household),))
    if place is not visit.place:
        visit = replace(visit, place=place)
    tomorrow = day + timedelta(days=1)
    holidays = place_holidays(place, family.local_days, (day.year,)).kept.keys()
    out_of_school = days_out_of_school(family.school_calendars, place.where.point, day, tomorrow)
    hours = hours_on(place, day, holidays, out_of_school)
    if hours.openness is not Openness.OPEN:
        return UnplannedVisit(visit, (hours.reason,))
    if visit.at is None:
        moment = (*hours.entry_times, hours.spans[0].opens)[0]
    else:
        moment = datetime.combine(day, visit.at, place.where.zone)
    leaving = moment + timedelta(minutes=place.visit.comfortable_minutes)
    time = VisitTime(moment, today, holidays, out_of_school, leaving)
    return Arrival(visit, moment, holidays, out_of_school, _parking(household, place, time, len(visit.party)))


def _parking(household: Household, place: Place, time: VisitTime, people: int) -> Money | None:
    """What parking costs for a stay that feels complete."""
    for_one = parking_price(place.parking, time)
    if for_one is None:
        return None
    tax = place.sales_tax
    percent = tax.percent if tax is not None and tax.on_parking else Decimal(0)
    price = for_one * cars_needed(household, people) * (1 + percent / 100)
    return Money(price, place.currency).rounded()
