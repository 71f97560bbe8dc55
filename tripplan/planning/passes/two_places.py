"""Tickets for two places among the passes: bought on one planned visit, shown on another.

A plan treats such a ticket as a pass written out to those who use it. It counts on the visit it is bought for
and on the first planned visit to each of its other places within its days.
"""

from collections.abc import Sequence
from datetime import date, timedelta
from typing import TypeGuard

from tripplan.documents.places.offers import (
    AlsoAt,
    Bundle,
    Elsewhere,
    Offer,
    OfferRules,
    Pass,
    Seats,
    Ticket,
    also_at,
)
from tripplan.documents.places.place import Place
from tripplan.planning.passes.arrivals import Arrival

_READ = {"kind", "name", "price", "ages", "seats", "also_at", *OfferRules.model_fields}
"""What of a ticket a pass can say. One with another rule, such as a proof, is left to single visits."""


def with_tickets_as_passes(place: Place) -> Place:
    """The card with its tickets for two places once more, as passes of the same names."""
    more = tuple(_as_pass(offer) for offer in place.offers if _can_be_pass(offer))
    return place.model_copy(update={"offers": (*place.offers, *more)}) if more else place


def other_places_of(place: Place, offer: Pass) -> tuple[AlsoAt, ...]:
    """Where else the ticket for two places is good that stands as a pass; nowhere for any other pass."""
    return next((also_at(one) for one in place.offers if one.name == offer.name), ())


def covered_from(when: int, there: Sequence[AlsoAt], arrivals: Sequence[Arrival]) -> tuple[int, ...]:
    """The arrivals on which a ticket for two places counts that is bought for one of them.

    Args:
        when: position of the arrival for which it is bought.
        there: the other places.
        arrivals: the visits, in order.
    """
    covered = [when]
    for one in there:
        last = last_day_of_both(arrivals[when].day, (one,))
        later = range(when + 1, len(arrivals))
        covered += [n for n in later if arrivals[n].visit.place.id == one.place and arrivals[n].day <= last][
            :1
        ]
    return tuple(sorted(covered))


def last_day_of_both(bought: date, there: Sequence[AlsoAt]) -> date:
    """The last day on which a ticket for two places counts."""
    return bought + timedelta(days=max(one.within_days for one in there) - 1)


def _can_be_pass(offer: Offer) -> TypeGuard[Ticket | Bundle]:
    return (
        isinstance(offer, Ticket | Bundle)
        and bool(offer.also_at)
        and all(
            getattr(offer, name) == field.default
            for name, field in type(offer).model_fields.items()
            if name not in _READ
        )
    )


def _as_pass(offer: Ticket | Bundle) -> Pass:
    seats = offer.seats if isinstance(offer, Bundle) else (Seats(count=1, ages=offer.ages),)
    rules = {name: getattr(offer, name) for name in OfferRules.model_fields}
    elsewhere = tuple(Elsewhere(place=one.place) for one in offer.also_at)
    return Pass(**rules, price=offer.price, months=1, seats=seats, named=True, elsewhere=elsewhere)
