"""Every kind of offer with its terms."""

from typing import Any

from tripplan.documents.places.offers import Bundle, Discount, Offer, Pass, Ticket
from tripplan.planning.admission.terms.annual_pass import PassTerms
from tripplan.planning.admission.terms.bundle import BundleTerms
from tripplan.planning.admission.terms.discount import DiscountTerms
from tripplan.planning.admission.terms.offer_terms import OfferTerms
from tripplan.planning.admission.terms.ticket import TicketTerms

_TERMS: dict[type, type[OfferTerms[Any]]] = {
    Ticket: TicketTerms,
    Discount: DiscountTerms,
    Bundle: BundleTerms,
    Pass: PassTerms,
}


def terms_of(offer: Offer) -> OfferTerms[Any]:
    """The terms of an offer, by its kind."""
    return _TERMS[type(offer)](offer)
