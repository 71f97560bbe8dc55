"""What of a price board, of passes and of vouchers counts for one visit, before anything is worked out."""

from collections.abc import Sequence, Set
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from decimal import Decimal

from tripplan.documents.family.held_pass import HeldPass
from tripplan.documents.family.member import Member
from tripplan.documents.places.offers import Offer, Pass, Voucher, also_at
from tripplan.documents.places.place import Place
from tripplan.language.sentences import Fact, fact
from tripplan.planning.admission.terms.annual_pass import HeldHere
from tripplan.values.opening_hours import holds_at


@dataclass(frozen=True)
class VisitTime:
    """When somebody arrives, and what the calendars say.

    Attributes:
        moment: the arrival, zone-aware at the place.
        today: the day the question is asked.
        public_holidays: the dates PH stands for in opening_hours syntax.
        days_out_of_school: the dates SH stands for.
        leaving: when the party leaves, zone-aware; None where nobody has said, and then it leaves in time for
            every offer.
    """

    moment: datetime
    today: date
    public_holidays: Set[date] = frozenset()
    days_out_of_school: Set[date] = frozenset()
    leaving: datetime | None = None

    @property
    def day(self) -> date:
        """The date of the visit, on which ages count."""
        return self.moment.date()

    def meets(self, times: str | None) -> bool:
        """Whether the arrival is at a time that a rule calls good; without a rule every time is."""
        return times is None or holds_at(times, self.moment, self.public_holidays, self.days_out_of_school)

    @property
    def minutes(self) -> float | None:
        """How long the stay is [min]; None where nobody has said when it ends."""
        if self.leaving is None:
            return None
        # By UTC, since two moments of one zone are subtracted by the clock on the wall.
        return (self.leaving.astimezone(UTC) - self.moment.astimezone(UTC)).total_seconds() / 60

    def is_over_by(self, clock: time) -> bool:
        """Whether the party has left by a time of the clock of the place on the day of arrival."""
        if self.leaving is None:
            return True
        return self.leaving <= datetime.combine(self.day, clock, self.moment.tzinfo)


@dataclass(frozen=True)
class UnavailableOffer:
    """An offer that cannot be had for the visit.

    Attributes:
        offer: the offer.
        why: the rest of a sentence that begins with its name.
        too_late_since: the last day it could have been booked, where it is only too late for that.
    """

    offer: Offer
    why: Fact
    too_late_since: date | None = None


def on_sale(place: Place, visit: VisitTime) -> tuple[tuple[Offer, ...], tuple[UnavailableOffer, ...]]:
    """The offers that can be had for a visit, in card order, and those that cannot."""
    good: list[Offer] = []
    out: list[UnavailableOffer] = []
    day = visit.day
    for offer in place.offers:
        book_by = day - timedelta(days=offer.book_days_ahead)
        if offer.first_day is not None and day < offer.first_day:
            out.append(UnavailableOffer(offer, fact("refusals-sold-from-day", day=offer.first_day)))
        elif offer.last_day is not None and day > offer.last_day:
            out.append(UnavailableOffer(offer, fact("refusals-sold-until-day", day=offer.last_day)))
        elif not visit.meets(offer.valid):
            out.append(UnavailableOffer(offer, fact("refusals-at-times", times=str(offer.valid))))
        elif (too_long := _stays_too_long(offer, visit)) is not None:
            out.append(UnavailableOffer(offer, too_long))
        elif visit.today > book_by:
            why = fact("refusals-booked-by", day=book_by)
            out.append(UnavailableOffer(offer, why, too_late_since=book_by))
        else:
            good.append(offer)
    return tuple(good), tuple(out)


def _stays_too_long(offer: Offer, visit: VisitTime) -> Fact | None:
    """Which limit on the stay a visit breaks, as the rest of a sentence that begins with the offer's name."""
    longest, minutes = offer.longest_stay_minutes, visit.minutes
    if longest is not None and minutes is not None and minutes > longest:
        return fact("refusals-stay", longest=timedelta(minutes=longest))
    if offer.leave_by is not None and (
        visit.moment.time() >= offer.leave_by or not visit.is_over_by(offer.leave_by)
    ):
        return fact("refusals-leave-by", latest=offer.leave_by)
    return None


def limits_on_stay(place: Place) -> tuple[tuple[int | None, time | None], ...]:
    """Every limit that an offer sets on the stay: longest [min], and by when to leave by the place's clock.

    Two visits that begin alike and keep to the same of these limits have the same offers; so whoever weighs
    arrivals with leaving times need ask for entry once for each set of limits kept.
    """
    found = {(offer.longest_stay_minutes, offer.leave_by) for offer in place.offers}
    limits = found - {(None, None)}
    return tuple(sorted(limits, key=lambda limit: (limit[0] or 0, limit[1] or time())))


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
            if other.id != one.place:
                continue
            for ticket in other.offers:
                if ticket.name == one.offer and any(there.place == place.id for there in also_at(ticket)):
                    counting.append(HeldHere(one, ticket, other.name, Decimal(100)))
            offer = _pass_on(other, one.offer)
            grants = [e for e in offer.elsewhere if e.place == place.id and e.percent_off] if offer else []
            if offer is not None and grants:
                best = max(grants, key=lambda grant: grant.percent_off)
                counting.append(HeldHere(one, offer, other.name, best.percent_off, best.at_most))
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
        and visit.meets(voucher.valid)
        and visit.today + timedelta(days=voucher.book_days_ahead) <= visit.day
    )
