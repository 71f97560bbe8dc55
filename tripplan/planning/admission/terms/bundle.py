"""Family tickets, permits for a car.

What the rules mean, where a price board leaves it open (common practice, no source):

- A bundle's `must_include` and `needs` speak of the people in its seats, not of extra persons.
- A bundle for one family is a block of its own for each family of the party: the household, and people with
  the same word for their family. Others are each a family of one. Its largest number counts for each family.
- A permit for a car lets in as many as a car of the household seats, extra persons included. Beside it, and
  beside every other bundle whose seats count everybody, nobody enters on a free ticket.
"""

from collections.abc import Iterator

from tripplan.documents.places.offer_sentences import extra_sentence
from tripplan.documents.places.offers import Bundle
from tripplan.errors import Weight
from tripplan.language.sentences import Fact, fact
from tripplan.planning.admission.constraints import Block, Role, Way
from tripplan.planning.admission.terms.offer_terms import (
    Entrance,
    Fault,
    Guests,
    OfferTerms,
    Person,
    at_least,
    changed,
    holds_at_most,
    priced_way,
    seat_ways,
)
from tripplan.values.ages import AgeBand


class BundleTerms(OfferTerms[Bundle]):
    """One price for several people."""

    beside = {Role.BEYOND: ("extra person", extra_sentence)}  # noqa: RUF012

    def blocks(self, guests: Guests) -> Iterator[Block]:
        """Once for everybody, or once for each family of the party and once for all who have none."""
        offer = self.offer
        in_a_car = guests.car_seats if offer.per_car else None
        if not offer.one_family:
            yield _block(offer, guests, guests.those(lambda _: True), in_a_car, offer.at_most)
            return
        families: dict[str, list[int]] = {}
        alone: list[int] = []
        for person in guests.people:
            if person.member.family or person.at_home:
                families.setdefault(person.member.family, []).append(person.position)
            else:
                alone.append(person.position)
        for family in families.values():
            yield _block(offer, guests, frozenset(family), in_a_car, offer.at_most)
        if alone:
            yield _block(offer, guests, frozenset(alone), 1, None)

    def entrances(self) -> tuple[Entrance, ...]:
        """Seats and extra persons."""
        offer = self.offer
        seats = tuple(Entrance(seat.ages, offer.price > 0) for seat in offer.seats)
        extras = offer.extras
        return seats if extras is None else (*seats, Entrance(extras.ages, extras.price > 0))

    def other_bands(self) -> tuple[AgeBand, ...]:
        """Whom it must include."""
        return (self.offer.must_include,) if self.offer.must_include is not None else ()

    def ties(self) -> Iterator[tuple[Bundle, Fact]]:
        """Who must be there, and how many; one family, one car."""
        offer = self.offer
        if offer.must_include is not None:
            wanted = fact("refusals-must-include", ages=str(offer.must_include))
            yield changed(offer, must_include=None), wanted
        if offer.needs:
            yield changed(offer, needs=()), fact("refusals-needs-proof", proofs=" or ".join(offer.needs))
        if offer.at_least > 1:
            yield changed(offer, at_least=1), fact("refusals-seats-taken", count=offer.at_least)
        if offer.at_most is not None:
            yield changed(offer, at_most=None), fact("refusals-sold-at-most", count=offer.at_most)
        if offer.one_family:
            yield changed(offer, one_family=False), fact("refusals-one-family")
        if offer.per_car:
            yield changed(offer, per_car=False), fact("refusals-as-a-car-seats")
        elif offer.counts_everybody:
            yield changed(offer, counts_everybody=False), fact("refusals-counts-everybody")
        if offer.extras is not None and offer.extras.at_most is not None:
            more = changed(offer.extras, at_most=None)
            yield changed(offer, extras=more), fact("refusals-extra-people", count=offer.extras.at_most)

    def faults(self) -> Iterator[Fault]:
        """More people than seats, somebody without a seat."""
        offer = self.offer
        seats = sum(seat.count for seat in offer.seats)
        if offer.at_least > seats:
            message = f"more than its {seats} seats can never be taken"
            yield "at_least", str(offer.at_least), message, Weight.FAULT
        wanted = offer.must_include
        if wanted is not None and not any(seat.ages.overlaps(wanted) for seat in offer.seats):
            message = "none of its seats is for such a person"
            yield "must_include", str(wanted), message, Weight.FAULT


def _block(
    offer: Bundle, guests: Guests, people: frozenset[int], holds: int | None, units: int | None
) -> Block:
    """The bundle for some of the party, with so many people to a unit and so many units."""

    def sits(person: Person) -> bool:
        return person.position in people

    ways: list[Way] = [*seat_ways(offer.seats, guests, paid=offer.price > 0, test=sits)]
    seated = frozenset(person for way in ways for person in way.prices)
    extras = offer.extras
    if extras is not None:
        more = guests.those(lambda person: sits(person) and person.months in extras.ages)
        prices = dict.fromkeys(sorted(more), guests.fine(extras.price))
        ways.append(priced_way(Role.BEYOND, prices, at_most=extras.at_most, with_fees=False))
    limits = [at_least(offer.at_least, seated, Role.SEAT)]
    if offer.must_include is not None:
        wanted = offer.must_include
        with_age = guests.those(lambda person: person.position in seated and person.months in wanted)
        limits.append(at_least(1, with_age, Role.SEAT))
    if offer.needs:
        holders = guests.those(lambda person: person.position in seated and person.shows(offer.needs))
        limits.append(at_least(1, holders, Role.SEAT))
    if holds is not None:
        limits.append(holds_at_most(holds, ways))
    return Block(
        offer,
        tuple(ways),
        tuple(limits),
        unit_price=guests.fine(offer.price),
        units_at_most=units,
        never_beside_free=offer.counts_everybody or offer.per_car,
    )
