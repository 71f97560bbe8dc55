"""The price of entry where it is plain to see: single tickets for everybody, or seats of a family ticket."""

from collections.abc import Sequence
from decimal import Decimal
from functools import cache
from itertools import accumulate, combinations

from tripplan.documents.family.member import Member
from tripplan.documents.places.offers import Bundle, Offer, Pass, Ticket
from tripplan.documents.places.place import Place
from tripplan.values.money import Money


def plain_price(
    place: Place,
    offers: Sequence[Offer],
    party: Sequence[Member],
    months: Sequence[int],
) -> Money | None:
    """What the cheapest way in costs, on a board that can be read without weighing sets of offers.

    On such a board each ticket may be used whatever the others do, nothing comes on top of the order or off
    it, and at most one bundle could pay. Whoever takes a seat of it saves a single ticket, so the dearest
    tickets that each kind of seat can save are saved, with as many bundles as save the most.

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
    units = [offer for offer in offers if isinstance(offer, Bundle | Pass)]
    if len(tickets) + len(units) < len(offers) or not all(_says_only(t, _TICKET) for t in tickets):
        return None
    if any(one.with_ticket for one in place.add_ons) or any(unit.includes for unit in units):
        return None
    singles: list[Decimal] = []
    for member, age in zip(party, months, strict=True):
        prices = [ticket.price for ticket in tickets if age in ticket.ages and _may_use(member, ticket)]
        if not prices:
            return None
        singles.append(min(prices))
    total = sum(singles, Decimal(0))
    # A unit that costs as much as all single tickets saves nothing, but a pass may include parking.
    paying = [
        unit for unit in units if unit.price < total or (unit.price == total and not isinstance(unit, Bundle))
    ]
    if not paying:
        return Money(total, place.currency).rounded()
    (bundle,) = paying if len(paying) == 1 else (None,)
    if not isinstance(bundle, Bundle) or not _has_plain_seats(bundle, months):
        return None
    saved = _saved(bundle, singles, months)
    return Money(total - saved, place.currency).rounded()


_WHEN = {"valid", "first_day", "last_day", "book_days_ahead", "longest_stay_minutes", "leave_by"}
"""What decides whether an offer can be had for a visit; those that cannot are no longer there."""
_PLAIN = {"kind", "name", "price", *_WHEN, "online_only", "refundable", "note", "also_at"}
_TICKET = frozenset({*_PLAIN, "ages", "needs"})
_BUNDLE = frozenset({*_PLAIN, "seats", "at_most"})


def _says_only(offer: Ticket | Bundle, fields: frozenset[str]) -> bool:
    """Whether an offer has no rule but in some of its fields; so what is new on a card is never plain."""
    return all(getattr(offer, field) == default for field, default in _others(type(offer), fields))


@cache
def _others(kind: type[Ticket | Bundle], fields: frozenset[str]) -> tuple[tuple[str, object], ...]:
    """All other fields with what they are when left out."""
    return tuple((name, one.default) for name, one in kind.model_fields.items() if name not in fields)


def _may_use(member: Member, ticket: Ticket) -> bool:
    return not ticket.needs or not set(ticket.needs).isdisjoint(member.statuses)


def _has_plain_seats(bundle: Bundle, months: Sequence[int]) -> bool:
    """Whether anybody of the right age may take a seat, and nobody could take one of two kinds."""
    bands = [seats.ages for seats in bundle.seats]
    return _says_only(bundle, _BUNDLE) and not any(
        age in first and age in second for first, second in combinations(bands, 2) for age in months
    )


def _saved(bundle: Bundle, singles: Sequence[Decimal], months: Sequence[int]) -> Decimal:
    """The most that any number of a bundle saves against single tickets."""
    most = len(singles) if bundle.at_most is None else min(bundle.at_most, len(singles))
    saved = [-bundle.price * number for number in range(most + 1)]
    for seats in bundle.seats:
        by_price = sorted(
            (price for price, age in zip(singles, months, strict=True) if age in seats.ages), reverse=True
        )
        seated = list(accumulate(by_price, initial=Decimal(0)))
        for number in range(most + 1):
            saved[number] += seated[min(number * seats.count, len(by_price))]
    return max(saved)
