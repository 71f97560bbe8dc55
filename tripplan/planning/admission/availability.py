"""What of a price board, of passes and of vouchers counts for one visit, before anything is worked out."""

from collections.abc import Sequence, Set
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from decimal import Decimal

from tripplan.documents.family.held_pass import HeldPass
from tripplan.documents.family.member import Member
from tripplan.documents.places.offers import Offer, Pass, Voucher
from tripplan.documents.places.place import Place
from tripplan.planning.admission.blocks import HeldHere
from tripplan.values import wording
from tripplan.values.opening_hours import holds_at


@dataclass(frozen=True)
class VisitTime:
    """When somebody arrives, and what the calendars say.

    Attributes:
        moment: the arrival, zone-aware at the place.
        today: the day the question is asked.
        public_holidays: the dates PH stands for in opening_hours syntax.
        days_out_of_school: the dates SH stands for.
    """

    moment: datetime
    today: date
    public_holidays: Set[date] = frozenset()
    days_out_of_school: Set[date] = frozenset()

    @property
    def day(self) -> date:
        """The date of the visit, on which ages count."""
        return self.moment.date()

    def meets(self, times: str | None) -> bool:
        """Whether the arrival is at a time that a rule calls good; without a rule every time is."""
        return times is None or holds_at(times, self.moment, self.public_holidays, self.days_out_of_school)


@dataclass(frozen=True)
class UnavailableOffer:
    """An offer that cannot be had for the visit.

    Attributes:
        offer: the offer.
        why: the rest of a sentence that begins with its name, such as 'is only good on We'.
        too_late_since: the last day it could have been booked, where it is only too late for that.
    """

    offer: Offer
    why: str
    too_late_since: date | None = None


def on_sale(place: Place, visit: VisitTime) -> tuple[tuple[Offer, ...], tuple[UnavailableOffer, ...]]:
    """The offers that can be had for a visit, in card order, and those that cannot."""
    good: list[Offer] = []
    out: list[UnavailableOffer] = []
    for offer in place.offers:
        book_by = visit.day - timedelta(days=offer.book_days_ahead)
        if offer.first_day is not None and visit.day < offer.first_day:
            out.append(
                UnavailableOffer(offer, f"is only sold for visits from {wording.day(offer.first_day)} on")
            )
        elif offer.last_day is not None and visit.day > offer.last_day:
            out.append(
                UnavailableOffer(offer, f"is only sold for visits until {wording.day(offer.last_day)}")
            )
        elif not visit.meets(offer.valid):
            out.append(UnavailableOffer(offer, f"is only good at these times: {offer.valid}"))
        elif visit.today > book_by:
            why = f"had to be booked by {wording.day(book_by)}"
            out.append(UnavailableOffer(offer, why, too_late_since=book_by))
        else:
            good.append(offer)
    return tuple(good), tuple(out)


def held_here(
    place: Place, held: Sequence[HeldPass], visit: VisitTime, other_places: Sequence[Place]
) -> tuple[HeldHere, ...]:
    """The family's passes that count at a place on the day: its own, and those of others that it honours."""
    counting = []
    for one in held:
        if one.valid_until < visit.day:
            continue
        if one.place == place.id:
            offer = _pass_on(place, one.offer)
            if offer is not None and visit.meets(offer.valid):
                counting.append(HeldHere(one, offer, None, Decimal(100)))
            continue
        for other in other_places:
            offer = _pass_on(other, one.offer) if other.id == one.place else None
            percents = [e.percent_off for e in offer.elsewhere if e.place == place.id] if offer else []
            if offer is not None and percents and max(percents) > 0:
                counting.append(HeldHere(one, offer, other.name, max(percents)))
    return tuple(counting)


def _pass_on(place: Place, name: str) -> Pass | None:
    return next((o for o in place.offers if isinstance(o, Pass) and o.name == name), None)


def vouchers_that_count(place: Place, party: Sequence[Member], visit: VisitTime) -> tuple[Voucher, ...]:
    """The vouchers that can be used when the order is placed, from today on; each takes something off."""
    statuses = {status for member in party for status in member.statuses}
    return tuple(
        voucher
        for voucher in place.vouchers
        if (voucher.percent_off is not None or voucher.amount_off is not None)
        and (not voucher.needs or statuses.intersection(voucher.needs))
        and (voucher.last_day is None or voucher.last_day >= visit.today)
    )
