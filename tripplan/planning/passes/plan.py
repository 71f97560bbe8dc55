"""What is asked about passes, and what is answered."""

from dataclasses import dataclass
from datetime import date, time

from tripplan.documents.family.member import Member
from tripplan.documents.places.offers import Pass
from tripplan.documents.places.place import Place
from tripplan.language.sentences import Fact
from tripplan.planning.admission.result import Admission, Purchase
from tripplan.values.money import Money


@dataclass(frozen=True)
class PlannedVisit:
    """One outing in the family's plans.

    Attributes:
        place: where to.
        day: the date at the place.
        party: who goes.
        at: when they arrive, by the clock of the place; the first entry of the day when left out.
    """

    place: Place
    day: date
    party: tuple[Member, ...]
    at: time | None = None


@dataclass(frozen=True)
class PassPurchase:
    """One pass to buy.

    Attributes:
        place: whose pass it is.
        offer: the pass on its card.
        holders: the members it is written out to.
        day: when it is bought: the day of the first visit that uses it.
        valid_until: the last day it counts.
    """

    place: Place
    offer: Pass
    holders: tuple[str, ...]
    day: date
    valid_until: date


@dataclass(frozen=True)
class PassOrder:
    """The passes of one place that are bought on one day, in one order of their own.

    Attributes:
        place: who sells them.
        day: when.
        passes: what is bought, in card order.
        lines: the order at the till: passes, then fees, voucher and tax.
        total: the sum of the lines.
        notes: what to know: to book ahead, and the like.
    """

    place: Place
    day: date
    passes: tuple[PassPurchase, ...]
    lines: tuple[Purchase, ...]
    total: Money
    notes: tuple[str, ...]


@dataclass(frozen=True)
class VisitCost:
    """One planned visit with the passes of the plan.

    Attributes:
        visit: the visit.
        admission: what else is bought, and which passes are shown.
        parking: what leaving the car costs; None where the card does not tell.
        total: entry and parking, as far as it is known; passes bought that day are not in it.
        singly: the same without buying any pass; None where nobody may enter without one.
        passes: the bought passes that count on this visit, by name and once each.
    """

    visit: PlannedVisit
    admission: Admission
    parking: Money | None
    total: Money
    singly: Money | None
    passes: tuple[str, ...]


@dataclass(frozen=True)
class UnplannedVisit:
    """A planned visit that stands outside the sum.

    Attributes:
        visit: the visit.
        reasons: why it cannot be; at least one.
    """

    visit: PlannedVisit
    reasons: tuple[Fact, ...]


@dataclass(frozen=True)
class BreakEven:
    """When one offer of passes has paid, beside all else that is held or bought.

    Attributes:
        place: whose pass it is.
        offer: the pass on its card.
        bought: whether it is part of the plan; otherwise it is looked at as if bought for the first visit on
            which it counts.
        holders: to whom it is written out; where several might have it, those for whom it pays first.
        price: what its order costs, fees and tax included.
        visits: on how many planned visits it counts while it is valid.
        saved: what it takes off those visits together; None where nobody may enter without it.
        pays_after: the number of the visit, in order of their days, with which it has paid by what each of
            them would have cost; where those planned are too few, how many like them it takes; None if never.
        pays_on: the day of that visit; None where it is not among those planned.
    """

    place: Place
    offer: Pass
    bought: bool
    holders: tuple[str, ...]
    price: Money
    visits: int
    saved: Money | None
    pays_after: int | None
    pays_on: date | None = None


@dataclass(frozen=True)
class PassPlan:
    """The passes and single admissions that cost least in all.

    Attributes:
        orders: passes to buy, by day, then as the places come up; empty where none pays.
        visits: the planned visits that can be, in order of arrival.
        left_out: those that cannot.
        total: passes, entry and parking together.
        singly: what the same visits cost without buying any pass; None where one needs a pass.
        break_even: one entry for each pass that counts on some planned visit, in card order.
        notes: what the figures leave out or take for granted.
    """

    orders: tuple[PassOrder, ...]
    visits: tuple[VisitCost, ...]
    left_out: tuple[UnplannedVisit, ...]
    total: Money
    singly: Money | None
    break_even: tuple[BreakEven, ...]
    notes: tuple[str, ...]

    @property
    def saving(self) -> Money | None:
        """What the passes save against single visits; None where that cannot be said."""
        return None if self.singly is None else self.singly - self.total

    @property
    def passes(self) -> tuple[PassPurchase, ...]:
        """Every pass to buy, in order."""
        return tuple(one for order in self.orders for one in order.passes)
