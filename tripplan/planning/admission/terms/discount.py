"""A part off the single price: the cheapest ticket somebody could have alone (common practice, no source)."""

from collections.abc import Iterator
from decimal import Decimal

from tripplan.documents.places.offers import Discount
from tripplan.errors import Weight
from tripplan.language.sentences import Fact, fact
from tripplan.planning.admission.constraints import Block, Role
from tripplan.planning.admission.terms.offer_terms import (
    Entrance,
    Fault,
    Guests,
    OfferTerms,
    changed,
    priced_way,
)
from tripplan.planning.admission.terms.ticket import covered, idle_cover, status_covers


class DiscountTerms(OfferTerms[Discount]):
    """A part off the price of another ticket."""

    def blocks(self, guests: Guests) -> Iterator[Block]:
        """A ticket at what is left of each person's single price."""
        offer = self.offer
        right_age = guests.those(lambda person: person.months in offer.ages)
        singles = guests.singles(offer.percent_off, offer.offers)
        prices = {person: price for person, price in singles.items() if person in right_age}
        users, holders = covered(prices, offer.needs, offer.one_status_covers, guests)
        limits = tuple(status_covers(users, holders, offer.one_status_covers))
        yield Block(offer, (priced_way(Role.USER, users, at_most=offer.at_most, with_fees=True),), limits)

    def entrances(self) -> tuple[Entrance, ...]:
        """Its ages; at nothing where all is taken off."""
        return (Entrance(self.offer.ages, self.offer.percent_off < 100),)

    def percentages(self) -> tuple[Decimal, ...]:
        """What it takes off."""
        return (self.offer.percent_off,)

    def ties(self) -> Iterator[tuple[Discount, Fact]]:
        """Its largest number."""
        offer = self.offer
        if offer.at_most is not None:
            yield changed(offer, at_most=None), fact("refusals-for-at-most", count=offer.at_most)

    def asks(self) -> Iterator[Fact]:
        """A proof."""
        if self.offer.needs:
            yield fact("refusals-needs-proof", proofs=" or ".join(self.offer.needs))

    def faults(self) -> Iterator[Fault]:
        """Nothing off."""
        offer = self.offer
        if not offer.percent_off:
            yield "percent_off", "0", "takes nothing off", Weight.WARNING
        yield from idle_cover(offer.needs, offer.one_status_covers)
