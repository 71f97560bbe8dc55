"""Tickets that are paid for already: what comes back, and what is lost, when the day changes."""

from collections.abc import Collection
from dataclasses import dataclass

from tripplan.documents.places.offers import Offer, Pass
from tripplan.documents.places.place import Place
from tripplan.planning.admission.result import Admission, Purchase
from tripplan.values.money import Money, total


@dataclass(frozen=True)
class SunkCost:
    """What becomes of tickets that are paid for.

    Attributes:
        spent: what was paid and stays paid.
        back: what comes back, if it is called off in time.
        lost: what was paid for entry that nobody uses; a pass stays good for other days and is not lost.
    """

    spent: Money
    back: Money
    lost: Money


def called_off(place: Place, admission: Admission) -> SunkCost:
    """Nobody goes in.

    Args:
        place: the card, for which offers are refundable.
        admission: what was bought.
    """
    currency = admission.total.currency
    offers = {offer.name: offer for offer in place.offers}
    back = total((p.total for p in admission.purchases if _refundable(p, offers)), currency)
    kept = total((p.total for p in admission.purchases if isinstance(_offer(p, offers), Pass)), currency)
    # A voucher on the order makes less come back than the lines say.
    back = min(back, admission.total)
    lost = max(admission.total - back - kept, Money.zero(currency))
    return SunkCost(spent=admission.total - back, back=back, lost=lost)


def some_stay_away(place: Place, admission: Admission, absent: Collection[str], needed: Money) -> SunkCost:
    """Some of the people who were paid for stay away.

    Single tickets that are refundable come back for those who stay away; a bundle does not come apart.

    Args:
        place: the card, for which offers are refundable.
        admission: what was bought.
        absent: the names of those who stay away.
        needed: what entry for the others alone would have cost.
    """
    zero = Money.zero(admission.total.currency)
    offers = {offer.name: offer for offer in place.offers}
    back = zero
    for purchase in admission.purchases:
        offer = _offer(purchase, offers)
        if offer is not None and offer.kind == "ticket" and offer.refundable:
            back += purchase.unit_price * sum(name in absent for name in purchase.covers)
    back = min(back.rounded(), admission.total)
    return SunkCost(
        spent=admission.total - back,
        back=back,
        lost=max(admission.total - back - needed, zero) if absent else zero,
    )


def _offer(purchase: Purchase, offers: dict[str, Offer]) -> Offer | None:
    """The offer of a line, which may read 'offer: extra person'; None for fees, taxes and vouchers."""
    return offers.get(purchase.name) or offers.get(purchase.name.partition(": ")[0])


def _refundable(purchase: Purchase, offers: dict[str, Offer]) -> bool:
    offer = _offer(purchase, offers)
    return offer is not None and offer.refundable
