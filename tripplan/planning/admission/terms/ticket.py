"""Single tickets and group prices.

What the rules mean, where a price board leaves it open (common practice, no source):

- A companion is somebody of the party who does not use the same offer. Where companions must pay, their own
  way in must cost something before vouchers: a ticket, a seat of a bundle that has a price, a guest's reduced
  price; entry by a pass, held or bought, counts as paid. Each offer counts its companions by itself.
- A group's minimum and maximum count those who pay; free leaders come on top.
- One status holder brings in others only by using the offer too.
"""

from collections.abc import Collection, Iterator, Mapping
from datetime import timedelta

from tripplan.documents.places.offer_sentences import leader_sentence
from tripplan.documents.places.offers import Ticket, prices_in
from tripplan.errors import Weight
from tripplan.language.sentences import Fact, fact
from tripplan.planning.admission.constraints import Block, CompanionRule, Limit, Role, Way
from tripplan.planning.admission.terms.offer_terms import (
    Entrance,
    Fault,
    Guests,
    OfferTerms,
    Person,
    at_least,
    changed,
    priced_way,
)
from tripplan.values.ages import MONTHS, AgeBand


class TicketTerms(OfferTerms[Ticket]):
    """Entry for one person at a time."""

    beside = {Role.LEADER: ("free leader", lambda offer, _: leader_sentence(offer))}  # noqa: RUF012

    def blocks(self, guests: Guests) -> Iterator[Block]:
        """A price for each user, with what limits their number."""
        offer = self.offer
        prices = _prices(offer, guests)
        users, holders = covered(prices, offer.needs, offer.one_status_covers, guests)
        limits = [*status_covers(users, holders, offer.one_status_covers)]
        if offer.at_least > 1:
            limits.append(at_least(offer.at_least, users, Role.USER))
        ways: list[Way] = [priced_way(Role.USER, users, at_most=offer.at_most, with_fees=True)]
        if offer.one_free_per is not None and len(guests.people) > max(offer.one_free_per, offer.at_least):
            leaders = guests.those(lambda person: person.months in offer.leader_ages)
            ways.append(Way(Role.LEADER, dict.fromkeys(sorted(leaders), 0), frozenset()))
            counted = {
                Role.LEADER: dict.fromkeys(sorted(leaders), offer.one_free_per),
                Role.USER: dict.fromkeys(users, -1),
            }
            limits.append(Limit(counted, 0))
        rule = offer.companions
        companions = None
        if rule is not None:
            there = guests.those(lambda person: person.months in rule.ages and person.shows(rule.needs))
            companions = CompanionRule(there, rule.must_pay, rule.each_allows)
        yield Block(offer, tuple(ways), tuple(limits), companions=companions)

    def entrances(self) -> tuple[Entrance, ...]:
        """Each age with a price of its own."""
        prices = zip(self.offer.bands, prices_in(self.offer), strict=True)
        return tuple(Entrance(band, price > 0) for band, price in prices)

    def other_bands(self) -> tuple[AgeBand, ...]:
        """Those of companions and free leaders."""
        offer = self.offer
        companions = (offer.companions.ages,) if offer.companions is not None else ()
        leaders = (offer.leader_ages,) if offer.one_free_per is not None else ()
        return (*companions, *leaders)

    def ties(self) -> Iterator[tuple[Ticket, Fact]]:
        """Companions, smallest and largest number, people for each proof."""
        offer = self.offer
        if offer.companions is not None:
            paying = offer.companions.must_pay
            yield changed(offer, companions=None), fact("refusals-more-companions", paying=paying)
        if offer.at_least > 1:
            yield changed(offer, at_least=1), fact("refusals-sold-from", count=offer.at_least)
        if offer.at_most is not None:
            yield changed(offer, at_most=None), fact("refusals-sold-at-most", count=offer.at_most)
        if offer.needs and offer.one_status_covers > 1:
            count, proofs = offer.one_status_covers, " or ".join(offer.needs)
            yield changed(offer, needs=()), fact("refusals-each-proof-covers", count=count, proofs=proofs)

    def asks(self) -> Iterator[Fact]:
        """A proof, a birthday."""
        offer = self.offer
        if offer.needs:
            yield fact("refusals-needs-proof", proofs=" or ".join(offer.needs))
        if offer.good_on == "birthday":
            yield fact("refusals-birthday")
        elif offer.good_on == "birth month":
            yield fact("refusals-birth-month")

    def faults(self) -> Iterator[Fault]:
        """Numbers that contradict each other, ages with two prices."""
        offer = self.offer
        if offer.at_most is not None and offer.at_least > offer.at_most:
            yield "at_least", str(offer.at_least), f"more than at_most, {offer.at_most}", Weight.FAULT
        for index, other in enumerate(offer.other_ages):
            if any(other.ages.overlaps(band) for band in offer.bands[: index + 1]):
                message = "overlaps with other ages of the same ticket; each age has one price"
                yield f"other_ages[{index}].ages", str(other.ages), message, Weight.FAULT
        yield from idle_cover(offer.needs, offer.one_status_covers)


def sold_singly(offer: Ticket) -> bool:
    """Whether one person may have the ticket alone; it then counts as that person's single price."""
    return offer.companions is None and offer.at_least == 1 and offer.at_most is None


def alone_prices(offer: Ticket, guests: Guests) -> dict[int, int]:
    """Fine price by position of those who could have a ticket alone, who pay it as their single price."""
    if not sold_singly(offer):
        return {}
    return covered(_prices(offer, guests), offer.needs, 1, guests)[0]


def _prices(offer: Ticket, guests: Guests) -> dict[int, int]:
    """Fine price by position of those of the right age on the right day."""
    found: dict[int, int] = {}
    for band, price in zip(offer.bands, prices_in(offer), strict=True):
        fine = guests.fine(price)
        for person in guests.people:
            if person.months in band and _on_the_right_day(offer, person, guests):
                found.setdefault(person.position, fine)
    return found


def _on_the_right_day(offer: Ticket, person: Person, guests: Guests) -> bool:
    """Whether the day is one that a ticket for birthdays is good on for somebody."""
    if offer.good_on == "any day":
        return True
    born, day = person.member.born, guests.day
    if day is None:
        return False
    if offer.good_on == "birth month":
        return day.month == born.month
    turns = person.member.months_on(day)
    return (
        born.day is not None and turns % MONTHS == 0 and turns > person.member.months_on(day - timedelta(1))
    )


def covered(
    prices: Mapping[int, int], needs: Collection[str], covers: int, guests: Guests
) -> tuple[dict[int, int], frozenset[int]]:
    """Of some people with their prices, those who may use what needs a status; and who of them has it."""
    if not needs:
        return dict(prices), frozenset(prices)
    holders = guests.those(lambda person: person.position in prices and person.shows(needs))
    users = {person: price for person, price in prices.items() if covers > 1 or person in holders}
    return users, holders


def status_covers(users: Collection[int], holders: frozenset[int], covers: int) -> Iterator[Limit]:
    """One holder brings in so many, itself included."""
    if len(users) > len(holders):
        yield Limit({Role.USER: {one: 1 - covers * (one in holders) for one in users}}, 0)


def idle_cover(needs: Collection[str], covers: int) -> Iterator[Fault]:
    """A number of people for each status where none is needed."""
    if covers > 1 and not needs:
        message = "has no effect, since the ticket needs no status"
        yield "one_status_covers", str(covers), message, Weight.WARNING
