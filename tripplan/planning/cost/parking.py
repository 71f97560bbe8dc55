"""What leaving a car costs, by the moment of arrival and the length of the stay."""

from decimal import Decimal
from math import ceil

from tripplan.documents.places.offers import Parking, ParkingRate
from tripplan.planning.admission.availability import VisitTime


def parking_price(parking: Parking, visit: VisitTime | None) -> Decimal | None:
    """The price for one car, before tax.

    The first rate counts that fits the arrival and the stay; where none does, the price that always counts.

    Args:
        parking: as on the card.
        visit: from being let in until leaving; None where nobody has said when, and then only the price that
            always counts is known.

    Returns:
        In the card's currency; None where the card does not say.
    """
    if visit is None or visit.minutes is None:
        return parking.price
    minutes = visit.minutes
    for rate in parking.rates:
        if visit.meets(rate.valid) and (rate.up_to_minutes is None or minutes <= rate.up_to_minutes):
            return _by(rate, minutes)
    return parking.price


def _by(rate: ParkingRate, minutes: float) -> Decimal:
    hours = ceil(max(minutes - (rate.free_minutes or 0), 0) / 60)
    price = rate.price + (rate.per_hour or Decimal(0)) * hours
    return price if rate.at_most is None else min(price, rate.at_most)
