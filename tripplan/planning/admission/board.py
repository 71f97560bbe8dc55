"""A place's price board as one party meets it."""

from collections.abc import Collection, Iterable, Sequence
from dataclasses import replace
from datetime import date
from functools import cache

from tripplan.documents.family.member import Member
from tripplan.documents.places.offers import AddOn, Offer, Ticket, price_beside, prices_in
from tripplan.documents.places.place import Place
from tripplan.planning.admission.add_on_limits import takes
from tripplan.planning.admission.constraints import Block, Board, board_of
from tripplan.planning.admission.terms.annual_pass import HeldHere, held_block
from tripplan.planning.admission.terms.offer_terms import Guests, Person
from tripplan.planning.admission.terms.registry import terms_of
from tripplan.planning.admission.terms.ticket import alone_prices
from tripplan.values.money import decimals, minor_digits


def read_board(
    place: Place,
    offers: Sequence[Offer],
    held: Sequence[HeldHere],
    party: Sequence[Member],
    months: Sequence[int],
    household: Collection[str],
    *,
    day: date | None = None,
    car_seats: int | None = None,
    add_ons: Sequence[AddOn] = (),
) -> Board:
    """See a place's offers with the eyes of one party.

    Args:
        place: the place; only prices of `offers` and its fees and vouchers are read from it.
        offers: what can be had for this visit, in card order.
        held: passes that count here.
        party: who comes along.
        months: their ages, in the same order [completed months].
        household: names of those who belong to the household.
        day: the date of the visit, for what is good on a birthday; without it nobody has one.
        car_seats: seats of a car of the household, for permits by car; any number when left out.
        add_ons: what the party wants beside entry, at a price each, which may hang on the ticket.

    Returns:
        The board; sources count `held` first, then `offers`, those for one family once for each family.
    """
    people = tuple(
        Person(position, member, age, member.name in household)
        for position, (member, age) in enumerate(zip(party, months, strict=True))
    )
    tickets = [offer for offer in offers if isinstance(offer, Ticket)]
    plain = Guests(people, _price_digits(place, offers) + _percent_digits(offers, held), day, car_seats)
    guests = replace(
        plain, alone=cache(lambda: {ticket.name: alone_prices(ticket, plain) for ticket in tickets})
    )
    blocks = [
        *(held_block(one, guests) for one in held),
        *(block for offer in offers for block in terms_of(offer).blocks(guests)),
    ]
    if any(price_beside(add_on, offer) != add_on.price for add_on in add_ons for offer in offers):
        blocks = [replace(block, beside=_beside(block, add_ons, guests)) for block in blocks]
    return board_of(len(people), blocks, guests.fine_digits)


def _beside(block: Block, add_ons: Sequence[AddOn], guests: Guests) -> dict[int, int]:
    """What people who come in by a block pay beside entry, by position."""
    paid: dict[int, int] = {}
    for add_on in add_ons:
        price = price_beside(add_on, block.offer) if block.other_place is None else add_on.price
        for person in guests.people:
            if takes(add_on, person.member, person.months):
                paid[person.position] = paid.get(person.position, 0) + guests.fine(price)
    return paid


def _price_digits(place: Place, offers: Iterable[Offer]) -> int:
    prices = [price for offer in offers for price in prices_in(offer)]
    prices += [add_on.price for add_on in place.add_ons]
    prices += [one.price for add_on in place.add_ons for one in add_on.with_ticket]
    prices += [fee.price for fee in place.fees if fee.price is not None]
    prices += [voucher.amount_off for voucher in place.vouchers if voucher.amount_off is not None]
    return max(minor_digits(place.currency), *(decimals(price) for price in prices), 0)


def _percent_digits(offers: Iterable[Offer], held: Iterable[HeldHere]) -> int:
    percents = [percent for offer in offers for percent in terms_of(offer).percentages()]
    for one in held:
        percents += [one.percent_off, *terms_of(one.offer).percentages()]
    return max((2 + decimals(percent) for percent in percents), default=0)
