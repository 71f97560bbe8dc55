"""Until when what is to be bought for an outing must be booked."""

from collections.abc import Iterable
from datetime import date, timedelta

from tripplan.documents.places.place import Place


def book_by(place: Place, day: date, bought: Iterable[str]) -> date | None:
    """The last day for booking.

    Args:
        place: its card says how many days ahead a visit, and each offer, must be booked.
        day: of the visit.
        bought: the names of the lines at the till, such as 'Family ticket' or 'Family ticket: extra person'.

    Returns:
        The earliest last day of all that must be booked; None where everything can be had at the door.
    """
    lines = tuple(bought)
    ahead = [
        offer.book_days_ahead
        for offer in place.offers
        if any(line == offer.name or line.startswith(f"{offer.name}:") for line in lines)
    ]
    most = max((place.opening.book_days_ahead, *ahead))
    return day - timedelta(days=most) if most else None
