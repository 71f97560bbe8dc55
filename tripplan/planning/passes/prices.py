"""What visits cost with passes in hand, and what an order of passes costs; both asked of the till."""

from collections.abc import Iterator, Sequence
from datetime import date
from itertools import product
from math import prod

from tripplan.documents.family.birth_date import BirthDate
from tripplan.documents.family.held_pass import HeldPass
from tripplan.documents.family.member import Member
from tripplan.documents.places.offers import Pass, Ticket, also_at
from tripplan.documents.places.place import Place
from tripplan.errors import PlanError
from tripplan.planning.admission.cheapest import cheapest_admission
from tripplan.planning.admission.result import Admission, NoAdmission
from tripplan.planning.family.family import Family
from tripplan.planning.passes.arrivals import Arrival
from tripplan.planning.passes.candidates import PassCandidate
from tripplan.planning.passes.two_places import with_tickets_as_passes
from tripplan.values.ages import MONTHS, AgeBand
from tripplan.values.money import Money

WAYS_AT_MOST = 4096
"""More ways to hold passes on one visit are not compared."""

Hand = tuple[int, ...]
"""How many of each candidate are in hand on a visit, in the order of `VisitPrices.candidates`."""


class VisitPrices:
    """What one visit costs with every hand of passes that makes a difference.

    Attributes:
        arrival: the visit.
        candidates: positions of the candidates that count on it.
        copies: how many of each can be in hand.
        cents: by hand, entry and parking [smallest coin]; a hand with which nobody may enter is left out.
    """

    def __init__(
        self,
        family: Family,
        arrival: Arrival,
        candidates: Sequence[PassCandidate],
        places: Sequence[Place],
        today: date,
    ) -> None:
        """Ask the till about every hand.

        Raises:
            PlanError: there are more than `WAYS_AT_MOST` hands.
        """
        self.arrival = arrival
        self._family, self._places, self._today = family, tuple(places), today
        self._all = candidates
        self.candidates = tuple(n for n, candidate in enumerate(candidates) if candidate.counts_at(arrival))
        self.copies = tuple(candidates[n].copies for n in self.candidates)
        if prod(copies + 1 for copies in self.copies) > WAYS_AT_MOST:
            raise PlanError(
                f"there are too many ways to combine passes at {arrival.visit.place.name} to compare; "
                "plan with fewer people or fewer places"
            )
        self.cents: dict[Hand, int] = {}
        for hand in product(*(range(copies + 1) for copies in self.copies)):
            cents = self._cents(hand)
            if cents is not None:
                self.cents[hand] = cents

    @property
    def empty_handed(self) -> Hand:
        """No pass but those held already."""
        return (0,) * len(self.candidates)

    def admission(self, passes: Sequence[HeldPass]) -> Admission | NoAdmission:
        """The cheapest entry with these passes besides those held already; none is bought with it."""
        arrival = self.arrival
        place = arrival.visit.place
        used_here = {offer.name for offer in place.offers if also_at(offer)}
        held = [
            one
            for one in self._family.household.passes
            if one.place != place.id or one.offer not in used_here
        ]
        return cheapest_admission(
            _without_pass_sales(with_tickets_as_passes(place)),
            arrival.visit.party,
            arrival.moment,
            today=self._today,
            household_members=tuple(member.name for member in self._family.household.members),
            held=(*held, *passes),
            public_holidays=arrival.public_holidays,
            days_out_of_school=arrival.days_out_of_school,
            other_places=self._places,
            other_ways=0,
        )

    def parking(self, passes: Sequence[HeldPass]) -> Money | None:
        """What leaving the car costs with these passes besides those held already."""
        parking = self.arrival.parking
        if parking is not None and self.arrival.parks_free((*self._family.household.passes, *passes)):
            return Money.zero(parking.currency)
        return parking

    def worth_asking(self) -> Iterator[tuple[Hand, int]]:
        """The hands that a visit may need: those that cost more with any one pass less."""
        for hand, cents in self.cents.items():
            smaller = ((*hand[:n], count - 1, *hand[n + 1 :]) for n, count in enumerate(hand) if count)
            if all(self.cents.get(fewer) != cents for fewer in smaller):
                yield hand, cents

    def _cents(self, hand: Hand) -> int | None:
        passes = [
            self._all[candidate].held_until(self.arrival.day)
            for candidate, count in zip(self.candidates, hand, strict=True)
            for _ in range(count)
        ]
        entry = self.admission(passes)
        if isinstance(entry, NoAdmission):
            return None
        parking = self.parking(passes)
        return entry.total.minor + (parking.minor if parking is not None else 0)


def _without_pass_sales(place: Place) -> Place:
    """The card with its passes still honoured, but none on sale: their sale starts at the end of time."""
    offers = tuple(
        offer.model_copy(update={"first_day": date.max}) if isinstance(offer, Pass) else offer
        for offer in place.offers
    )
    return place.model_copy(update={"offers": offers})


def pass_order(
    place: Place, passes: Sequence[tuple[Pass, int]], arrival: Arrival, today: date
) -> Admission | NoAdmission:
    """What so many of each pass cost in one order, on the day of a visit.

    Each pass stands in the order as a ticket for a stand-in whom nothing else on the card concerns, so that
    fees, tax, vouchers and booking deadlines are those of every other order.

    Args:
        place: who sells them.
        passes: each offer with how many of it.
        arrival: the visit they are bought for.
        today: for booking deadlines.

    Returns:
        The order, its lines covering nobody but stand-ins; or why a pass cannot be had that day.
    """
    day = arrival.day
    statuses = tuple(sorted({status for member in arrival.visit.party for status in member.statuses}))
    tickets: list[Ticket] = []
    stand_ins: list[Member] = []
    for years, (offer, count) in enumerate(passes, start=1):
        tickets.append(
            Ticket(
                name=offer.name,
                price=offer.price,
                ages=AgeBand(years * MONTHS, years * MONTHS + MONTHS - 1),
                first_day=offer.first_day,
                last_day=offer.last_day,
                book_days_ahead=offer.book_days_ahead,
                online_only=offer.online_only,
                refundable=offer.refundable,
                note=offer.note,
            )
        )
        born = BirthDate(year=day.year - years, month=day.month, day=1)
        stand_ins += [
            Member(name=f"pass {years}.{number}", born=born, statuses=statuses) for number in range(count)
        ]
    card = place.model_copy(update={"offers": tuple(tickets), "must_be_accompanied": ()})
    return cheapest_admission(card, stand_ins, arrival.moment, today=today, other_ways=0)
