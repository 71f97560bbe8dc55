"""One's own family and other households at one place on one day."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from math import inf

from tripplan.documents.family.household import Household
from tripplan.documents.family.member import Member
from tripplan.documents.outings.going_together import GoingTogether, members_of
from tripplan.documents.places.idea import IdeaPlace
from tripplan.documents.places.offers import Ticket
from tripplan.documents.places.place import Place
from tripplan.errors import PlanError
from tripplan.language.sentences import fact
from tripplan.planning.admission.result import NoAdmission
from tripplan.planning.cost.own_money import in_own_money, rates_counted
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import NoOuting, not_admitted
from tripplan.planning.passes.arrivals import arrivals_of
from tripplan.planning.passes.plan import PlannedVisit
from tripplan.planning.together.go import go_together
from tripplan.planning.together.shapes import HouseholdGroup, Together
from tripplan.values.money import Money


def own_seats(household: Household, with_others: GoingTogether) -> int:
    """Places with a belt that the own household brings: as told, else those of its car [-]."""
    if with_others.seats is not None:
        return with_others.seats
    return household.car.seats if household.car else 0


def group_begins_at(place: Place) -> float:
    """From how many people on a place has a price for groups; infinity where it has none [people]."""
    sizes = [offer.at_least for offer in place.offers if isinstance(offer, Ticket) and offer.at_least > 1]
    return min(sizes, default=inf)


def first_open_day(family: Family, place: Place, days: Sequence[date], today: date) -> date | None:
    """The first of some days on which a place lets people in; None where it never does."""
    arrivals, _ = arrivals_of(family, [PlannedVisit(place, day, family.party()) for day in days], today)
    return arrivals[0].day if arrivals else None


def visit_together(
    family: Family,
    party: Sequence[Member],
    with_others: GoingTogether,
    place: Place,
    day: date,
    *,
    today: date,
    payer: str | None = None,
) -> Together | NoOuting:
    """Work out one visit of the own family with others, who arrive at the first entry of the day.

    Args:
        family: the own household, its passes, and school calendars.
        party: who goes of it.
        with_others: the other households, and what the own one brings and has paid.
        place: where to.
        day: the date at the place.
        today: for booking deadlines and vouchers.
        payer: who pays the rest at the till; as `go_together`.

    Returns:
        Everything about it, the own household first; or why it cannot be.

    Raises:
        PlanError: another household is called as the own one, nobody of the own one goes, or there are too
            many ways to fill the passes held.
        UnknownName: the payer is none of the households.
    """
    household = family.household
    if not party:
        raise PlanError(f"nobody of {household.name} comes along")
    arrivals, left_out = arrivals_of(family, [PlannedVisit(place, day, tuple(party))], today)
    if left_out:
        return NoOuting(place, day, left_out[0].reasons)
    ahead = place.opening.book_days_ahead
    if (day - today).days < ahead:
        return NoOuting(place, day, (fact("outing-book-ahead", days=ahead),))
    (arrival,) = arrivals
    own = HouseholdGroup(
        household.name,
        tuple(party),
        own_seats(household, with_others),
        Money(with_others.paid, with_others.currency),
        household.passes,
    )
    if isinstance(place, IdeaPlace):
        return NoOuting(place, day, (fact("outing-idea-without-price"),))
    others = [
        HouseholdGroup(
            one.name, members_of(one.people, day), one.seats, Money(one.paid, with_others.currency)
        )
        for one in with_others.households
    ]
    found = go_together(
        [own, *others],
        arrival.visit.place,
        arrival.moment,
        today=today,
        payer=payer,
        public_holidays=arrival.public_holidays,
        days_out_of_school=arrival.days_out_of_school,
        other_places=[in_own_money(other, household) for other in family.places],
    )
    if isinstance(found, NoAdmission):
        return NoOuting(place, day, not_admitted(found))
    return replace(found, rates=rates_counted([place], household))
