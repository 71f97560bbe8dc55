"""The passes that might be bought for planned visits, and whom they would be written out to."""

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from itertools import combinations

from tripplan.documents.family.held_pass import HeldPass
from tripplan.documents.family.member import Member
from tripplan.documents.places.offers import AlsoAt, Pass, Seats
from tripplan.documents.places.place import Place
from tripplan.errors import PlanError
from tripplan.planning.passes.arrivals import Arrival
from tripplan.planning.passes.two_places import covered_from, last_day_of_both, other_places_of
from tripplan.values.ages import MONTHS

HOLDER_SETS_AT_MOST = 200
"""More ways to write out one pass are not compared."""


@dataclass(frozen=True)
class PassCandidate:
    """A pass that may be bought.

    Attributes:
        place: whose pass it is.
        offer: the pass on its card.
        holders: the members it is written out to, in the order of the household.
        copies: how many of it can be of use at one time.
        sold_at: positions of the arrivals for which it may be bought, whatever the till says of the day.
        there: the other places of a ticket for two places; none for a pass.
    """

    place: Place
    offer: Pass
    holders: tuple[str, ...]
    copies: int
    sold_at: tuple[int, ...]
    there: tuple[AlsoAt, ...] = ()

    def held_until(self, day: date) -> HeldPass:
        """The pass as the family holds it once it is bought."""
        return HeldPass(place=self.place.id, offer=self.offer.name, holders=self.holders, valid_until=day)

    def covers(self, when: int, arrivals: Sequence[Arrival]) -> tuple[int, ...]:
        """The arrivals it is valid for when it is bought for one of them."""
        if self.there:
            return covered_from(when, self.there, arrivals)
        last = self.valid_until(arrivals[when].day)
        return tuple(n for n in range(when, len(arrivals)) if arrivals[n].day <= last)

    def valid_until(self, bought: date) -> date:
        """The last day on which it counts when it is bought on a day."""
        if self.there:
            return last_day_of_both(bought, self.there)
        return last_day_valid(bought, self.offer.months)

    def counts_at(self, arrival: Arrival) -> bool:
        """Whether the pass, held and valid, is worth anything on a visit."""
        names = {member.name for member in arrival.visit.party}
        return not names.isdisjoint(self.holders) and arrival.honours(self.place.id, self.offer)


def last_day_valid(bought: date, months: int) -> date:
    """The last day a pass counts: the day before the same date so many months later.

    Where that month is too short, the last of it counts. Common practice, no source; where a place counts the
    anniversary itself, this is a day on the safe side.
    """
    years, month = divmod(bought.month - 1 + months, MONTHS)
    first = date(bought.year + years, month + 1, 1)
    next_month = (first + timedelta(days=31)).replace(day=1)
    return min(first + timedelta(days=bought.day - 1), next_month) - timedelta(days=1)


def candidates_for(
    members: Sequence[Member], arrivals: Sequence[Arrival], places: Sequence[Place]
) -> tuple[PassCandidate, ...]:
    """Every pass that counts on some visit, in the order of places and cards, then of holders.

    A ticket for two places that stands on its card as a pass may be bought for a visit to its own place
    before one to the other.

    A pass without names is held by everybody of the household who fits one of its seats. A pass with names is
    written out to as many people as its seats take; every such choice among those who come along on a visit
    where it counts is a candidate. Nothing is lost by that, as more holders never cost more.

    Args:
        members: the household.
        arrivals: the visits, in order.
        places: whose passes are looked at.

    Raises:
        PlanError: there are more than `HOLDER_SETS_AT_MOST` ways to write one pass out.
    """
    found: list[PassCandidate] = []
    for place in places:
        for offer in place.offers:
            if isinstance(offer, Pass):
                found += _of_offer(place, offer, members, arrivals)
    return tuple(found)


def _of_offer(
    place: Place, offer: Pass, members: Sequence[Member], arrivals: Sequence[Arrival]
) -> Iterator[PassCandidate]:
    honoured_at = [n for n, arrival in enumerate(arrivals) if arrival.honours(place.id, offer)]
    coming = {member.name for n in honoured_at for member in arrivals[n].visit.party}
    sold_at: dict[tuple[str, ...], list[int]] = {}
    for n in honoured_at:
        party = {member.name for member in arrivals[n].visit.party}
        eligible = [member for member in members if member.name in coming or not offer.named]
        for holders in holder_sets(offer, eligible, arrivals[n].day):
            if not party.isdisjoint(holders):
                sold_at.setdefault(holders, []).append(n)
    there = other_places_of(place, offer)
    if there:
        of_use = {
            n
            for n in honoured_at
            if arrivals[n].visit.place.id == place.id and len(covered_from(n, there, arrivals)) > 1
        }
        sold_at = {who: some for who, when in sold_at.items() if (some := [n for n in when if n in of_use])}
    for holders, when in sold_at.items():
        able = holders if offer.named else [member.name for member in members]
        copies = max(_useful_copies(place, offer, able, arrivals[n]) for n in honoured_at)
        yield PassCandidate(place, offer, holders, copies, tuple(when), there)


def holder_sets(offer: Pass, members: Sequence[Member], day: date) -> tuple[tuple[str, ...], ...]:
    """To whom a pass may be written out so that nobody could be added.

    Args:
        offer: the pass.
        members: who may hold it.
        day: when it is written out; ages count on that day.

    Returns:
        Names in the order of `members`; one set for a pass without names: all who fit a seat. Empty where
        nobody fits.

    Raises:
        PlanError: there are more than `HOLDER_SETS_AT_MOST`.
    """
    months = {member.name: member.months_on(day) for member in members}
    fitting = tuple(name for name, age in months.items() if any(age in seat.ages for seat in offer.seats))
    if not fitting:
        return ()
    if not offer.named:
        return (fitting,)
    size = len(_seated(fitting, months, offer.seats))
    sets: list[tuple[str, ...]] = []
    for some in combinations(fitting, size):
        if len(_seated(some, months, offer.seats)) == size:
            sets.append(some)
        if len(sets) > HOLDER_SETS_AT_MOST:
            raise PlanError(f"there are too many ways to write out '{offer.name}' to {len(fitting)} people")
    return tuple(sets)


def _seated(names: Sequence[str], months: Mapping[str, int], seats: Sequence[Seats]) -> dict[str, int]:
    """As many people as the seats take, each with the row they sit in (augmenting paths)."""
    row_of: dict[str, int] = {}

    def seat(name: str, tried: set[int]) -> bool:
        for number, row in enumerate(seats):
            if number in tried or months[name] not in row.ages:
                continue
            tried.add(number)
            sitting = [other for other, taken in row_of.items() if taken == number]
            if len(sitting) < row.count or any(seat(other, tried) for other in sitting):
                row_of[name] = number
                return True
        return False

    for name in names:
        seat(name, set())
    return row_of


def _useful_copies(place: Place, offer: Pass, able: Collection[str], arrival: Arrival) -> int:
    """How many copies of a pass can be of use on one visit: seats for all it may seat, guests for the rest.

    Each copy needs somebody in its seats, so there are never more than people it may seat.

    Args:
        place: whose pass it is.
        offer: the pass.
        able: who may take its seats: those it is written out to, or the household.
        arrival: the visit.
    """
    party = arrival.visit.party
    ages = [member.months_on(arrival.day) for member in party if member.name in able]
    if offer.named:
        seated, for_seats = len(ages), 1
    else:
        seated = sum(any(age in seat.ages for seat in offer.seats) for age in ages)
        for_seats = max(-(-sum(age in seat.ages for age in ages) // seat.count) for seat in offer.seats)
    takes_guests = offer.guests_at_most and place.id == arrival.visit.place.id
    for_guests = -(-(len(party) - seated) // offer.guests_at_most) if takes_guests else 0
    return max(1, min(seated, max(for_seats, for_guests)))
