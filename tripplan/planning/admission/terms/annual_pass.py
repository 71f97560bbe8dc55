"""Annual passes: bought now, held, or of another place that this one honours.

What the rules mean, where a price board leaves it open (common practice, no source):

- A pass bought now, and one held that is not written out by name, seats people of the household. A held pass
  that is written out by name lets in its holders; one that is not needs a holder among those it lets in.
- Guests of a pass, and people with a percentage off elsewhere, pay that part of their single price: the
  cheapest ticket they could have alone, without companions, group or limit.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal

from tripplan.documents.family.held_pass import HeldPass
from tripplan.documents.places.offer_sentences import guest_sentence
from tripplan.documents.places.offers import Offer, Pass
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
    free_seats,
    holds_at_most,
    priced_way,
    seat_ways,
)


@dataclass(frozen=True)
class HeldHere:
    """A pass the family holds that is honoured at this place, or a ticket for two places used at the other.

    Attributes:
        held: the pass as held.
        offer: the pass, or the ticket, on its own card.
        other_place: name of the place it belongs to; None for this place.
        percent_off: what it takes off the single price here; 100 for free entry [%].
        people_at_most: how many it lets in here; None for all that its seats hold.
    """

    held: HeldPass
    offer: Offer
    other_place: str | None
    percent_off: Decimal
    people_at_most: int | None = None


class PassTerms(OfferTerms[Pass]):
    """Bought once, good for many visits."""

    beside = {Role.BEYOND: ("guest", lambda offer, _: guest_sentence(offer))}  # noqa: RUF012

    def blocks(self, guests: Guests) -> Iterator[Block]:
        """Seats for the household, and guests at a part of their single price."""
        offer = self.offer
        ways = seat_ways(offer.seats, guests, paid=True, test=_at_home)
        yield Block(
            offer,
            (*ways, *_guest_ways(offer, guests)),
            (at_least(1, _people(ways), Role.SEAT),),
            unit_price=guests.fine(offer.price),
            units_at_most=None,
        )

    def entrances(self) -> tuple[Entrance, ...]:
        """Its seats, which count as paid."""
        return tuple(Entrance(seat.ages, True) for seat in self.offer.seats)

    def percentages(self) -> tuple[Decimal, ...]:
        """Off the guests' price."""
        return (self.offer.guests_percent_off,) if self.offer.guests_at_most else ()

    def asks(self) -> Iterator[Fact]:
        """To be of the household."""
        yield fact("refusals-household")

    def faults(self) -> Iterator[Fault]:
        """Guests that contradict each other."""
        offer = self.offer
        if offer.guests_percent_off and not offer.guests_at_most:
            message = "has no effect while guests_at_most is 0"
            yield "guests_percent_off", str(offer.guests_percent_off), message, Weight.WARNING
        if offer.guests_per_year is not None and offer.guests_per_year < offer.guests_at_most:
            message = f"is less than the guests on a single visit, {offer.guests_at_most}"
            yield "guests_per_year", str(offer.guests_per_year), message, Weight.FAULT


def held_block(one: HeldHere, guests: Guests) -> Block:
    """A pass already held as constraints on the people of a party, by position."""
    offer = one.offer
    holders = guests.those(lambda person: person.member.name in one.held.holders)
    if not isinstance(offer, Pass) or offer.named:
        ways: tuple[Way, ...] = (free_seats(holders, len(one.held.holders), paid=True),)
    else:
        ways = seat_ways(offer.seats, guests, paid=True, test=_at_home)
    if one.percent_off < 100:
        prices = guests.singles(one.percent_off)
        ways = tuple(_at(prices, way) for way in ways)
    limits = [at_least(1, _people(ways) & holders, Role.SEAT)]
    if one.people_at_most is not None:
        limits.append(holds_at_most(one.people_at_most, ways))
    if one.other_place is None and isinstance(offer, Pass):
        ways = (*ways, *_guest_ways(offer, guests, one.held.guests_so_far))
    return Block(
        offer,
        ways,
        tuple(limits),
        unit_price=0,
        units_at_most=1,
        held=one.held,
        other_place=one.other_place,
        percent_off=one.percent_off,
    )


def _people(ways: Sequence[Way]) -> frozenset[int]:
    return frozenset(person for way in ways for person in way.prices)


def _at_home(person: Person) -> bool:
    return person.at_home


def _at(prices: dict[int, int], way: Way) -> Way:
    """Seats at a price each, for those who have one."""
    priced = {person: prices[person] for person in way.prices if person in prices}
    return replace(way, prices=priced, paid=frozenset(priced))


def _guest_ways(offer: Pass, guests: Guests, so_far: int = 0) -> Iterator[Way]:
    """Guests, who buy a reduced single ticket; so many on a visit, and so many in all."""
    most = offer.guests_at_most
    if offer.guests_per_year is not None:
        most = min(most, max(offer.guests_per_year - so_far, 0))
    if most:
        prices = guests.singles(offer.guests_percent_off)
        yield priced_way(Role.BEYOND, prices, at_most=most, with_fees=True)
