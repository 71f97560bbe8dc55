"""The price of entry where a single ticket for each person is plainly the cheapest way in."""

from collections.abc import Sequence
from decimal import Decimal

from tripplan.planning.admission.blocks import sold_singly
from tripplan.planning.household import Member
from tripplan.planning.money import Money
from tripplan.planning.offers import Bundle, Offer, Ticket
from tripplan.planning.place import Place


def price_of_single_tickets(
    place: Place, offers: Sequence[Offer], party: Sequence[Member], months: Sequence[int]
) -> Money | None:
    """What single tickets for everybody cost, where nothing else on the board can cost less.

    So it is where each ticket may be used whatever the others do, nothing comes on top of the order or off
    it, and every bundle costs at least, and every pass more than, the single tickets of the whole party.

    Args:
        place: the card.
        offers: what can be had for the visit.
        party: who comes along, without passes that count here.
        months: their ages, in the same order [completed months].

    Returns:
        The total to the smallest coin; None where it takes a closer look, or somebody has no such ticket.
    """
    if place.fees or place.vouchers or (place.sales_tax is not None and place.sales_tax.on_entry):
        return None
    tickets = [offer for offer in offers if isinstance(offer, Ticket)]
    if not all(_for_one_person(ticket) for ticket in tickets):
        return None
    total = Decimal(0)
    for member, age in zip(party, months, strict=True):
        prices = [ticket.price for ticket in tickets if age in ticket.ages and _may_use(member, ticket)]
        if not prices:
            return None
        total += min(prices)
    for offer in offers:
        if not isinstance(offer, Ticket) and (
            offer.price < total or (offer.price == total and not isinstance(offer, Bundle))
        ):
            return None
    return Money(total, place.currency).rounded()


def _for_one_person(ticket: Ticket) -> bool:
    return sold_singly(ticket) and ticket.one_status_covers == 1 and ticket.one_free_per is None


def _may_use(member: Member, ticket: Ticket) -> bool:
    return not ticket.needs or not set(ticket.needs).isdisjoint(member.statuses)
