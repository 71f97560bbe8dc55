"""Which passes to buy for a list of planned outings, and which visits to pay singly."""

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from datetime import date
from itertools import product
from math import prod

from tripplan.documents.places.offers import Pass
from tripplan.documents.places.place import Place
from tripplan.errors import PlanError
from tripplan.language.sentences import say, told
from tripplan.planning.admission.result import Admission, NoAdmission
from tripplan.planning.cost.own_money import in_own_money, rates_counted
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import not_admitted
from tripplan.planning.passes.arrivals import Arrival, arrivals_of
from tripplan.planning.passes.candidates import PassCandidate, candidates_for, last_day_valid
from tripplan.planning.passes.plan import (
    BreakEven,
    PassOrder,
    PassPlan,
    PassPurchase,
    PlannedVisit,
    UnplannedVisit,
    VisitCost,
)
from tripplan.planning.passes.prices import WAYS_AT_MOST, Hand, VisitPrices, pass_order
from tripplan.planning.passes.programme import Bought, OrderChoice, cheapest_purchases
from tripplan.planning.passes.two_places import with_tickets_as_passes
from tripplan.values.money import Money, total

MONTHS_AT_MOST = 12
"""Plans reach no further ahead of their first visit [months]."""

Counts = tuple[tuple[str, int], ...]
"""How many of each pass, by name."""


def which_pass_pays(family: Family, visits: Sequence[PlannedVisit], *, today: date) -> PassPlan:
    """Find the passes and single admissions that cost least for a list of planned outings.

    No other choice of passes costs less under these rules: a pass is bought on the day of the first visit
    that uses it and counts from then on for its months; the passes of one place bought on one day are one
    order of their own, apart from that day's tickets; every order may use one voucher of the card. Entry with
    the passes in hand is the cheapest legal way in, guests and entry elsewhere included. Parking counts where
    the card gives its price, and is free for a holder of a pass that includes it. Passes the family holds
    already count while they last. Tickets for two places are bought for people of the household like passes,
    and count as `two_places` says; where they make too many ways to compare they are left out.

    Args:
        family: people, passes held, places, school calendars.
        visits: the outings, in any order; at most twelve months from first to last.
        today: days before it are over, and bookings are judged by it.

    Returns:
        What to buy, what each visit then costs, and when each pass has paid.

    Raises:
        PlanError: there are no visits, they span more than twelve months, one has no party or two people of
            one name, or there are too many ways to combine passes.
    """
    if not visits:
        raise PlanError("there is no visit to plan for")
    days = [visit.day for visit in visits]
    if max(days) > last_day_valid(min(days), MONTHS_AT_MOST):
        raise PlanError(f"the visits span more than {MONTHS_AT_MOST} months, {min(days)} to {max(days)}")
    arrivals, left_out = arrivals_of(family, visits, today)
    cards = [visit.place for visit in visits]
    places = _places(family, cards)
    with_tickets = tuple(map(with_tickets_as_passes, places))
    notes = told(rates_counted(cards, family.household))
    try:
        plan = _best_plan(family, arrivals, left_out, with_tickets, today)
    except PlanError:
        if with_tickets == places:
            raise
        plan = _best_plan(family, arrivals, left_out, places, today)
        notes = (*notes, say("notes-two-places-left-out"))
    return replace(plan, notes=(*plan.notes, *notes))


def _best_plan(
    family: Family,
    arrivals: tuple[Arrival, ...],
    left_out: tuple[UnplannedVisit, ...],
    places: Sequence[Place],
    today: date,
) -> PassPlan:
    """The cheapest plan for all visits on which somebody may enter."""
    while True:
        market = _Market(family, arrivals, places, today)
        impossible = market.impossible()
        if not impossible:
            return market.plan(market.cheapest(), left_out)
        left_out = (*left_out, *(market.why_not(position) for position in impossible))
        arrivals = tuple(one for position, one in enumerate(arrivals) if position not in impossible)


def _places(family: Family, visited: Sequence[Place]) -> tuple[Place, ...]:
    """The places whose passes may count: those visited, as they come up, then the family's other cards."""
    found: dict[str, Place] = {}
    for card in (*visited, *family.places):
        place = in_own_money(card, family.household)
        if place.currency == family.household.currency:
            found.setdefault(place.id, place)
    return tuple(found.values())


class _Market:
    """All that can be bought for the visits, and what it costs."""

    def __init__(
        self, family: Family, arrivals: Sequence[Arrival], places: Sequence[Place], today: date
    ) -> None:
        self._family, self._arrivals, self._places, self._today = family, arrivals, places, today
        self._currency = family.household.currency
        self._orders: dict[tuple[int, str, Counts], Admission | None] = {}
        self.candidates = tuple(
            sellable
            for one in candidates_for(family.household.members, arrivals, places)
            if (sellable := self._when_sold(one)).sold_at
        )
        self.prices = [VisitPrices(family, arrival, self.candidates, places, today) for arrival in arrivals]
        self._covers = [[one.covers(when, arrivals) for when in one.sold_at] for one in self.candidates]

    def impossible(self) -> tuple[int, ...]:
        """The arrivals on which nobody may enter, whatever passes can be in hand by then."""
        return tuple(
            position
            for position, visit in enumerate(self.prices)
            if not any(
                all(
                    not count or self._in_reach(number, position)
                    for number, count in zip(visit.candidates, hand, strict=True)
                )
                for hand in visit.cents
            )
        )

    def why_not(self, position: int) -> UnplannedVisit:
        """Why nobody may enter on an arrival."""
        entry = self.prices[position].admission(())
        reasons = not_admitted(entry) if isinstance(entry, NoAdmission) else ()
        return UnplannedVisit(self._arrivals[position].visit, reasons)

    def cheapest(self) -> tuple[Bought, ...]:
        """The purchases with which everything costs least."""
        if not self.candidates:
            return ()
        return cheapest_purchases(self.candidates, self._covers, self.prices, tuple(self._order_choices()))

    def plan(self, bought: Sequence[Bought], left_out: Sequence[UnplannedVisit]) -> PassPlan:
        """Everything about a choice of purchases."""
        orders = self._orders_placed(bought)
        visits = tuple(self._visit_cost(position, bought) for position in range(len(self.prices)))
        singly = [visit.singly for visit in visits if visit.singly is not None]
        return PassPlan(
            orders=orders,
            visits=visits,
            left_out=tuple(left_out),
            total=total([*(o.total for o in orders), *(v.total for v in visits)], self._currency),
            singly=total(singly, self._currency) if len(singly) == len(visits) else None,
            break_even=tuple(self._break_even(bought)),
            notes=self._notes(),
        )

    # What can be bought when, and for how much.

    def _when_sold(self, one: PassCandidate) -> PassCandidate:
        """The candidate without the arrivals for which the till does not sell it."""
        sold = [n for n in one.sold_at if self._order(n, one.place, ((one.offer.name, 1),)) is not None]
        return replace(one, sold_at=tuple(sold))

    def _order(self, position: int, place: Place, counts: Counts) -> Admission | None:
        """An order of passes for one arrival; None where one of them is not sold then."""
        key = (position, place.id, counts)
        if key not in self._orders:
            offers = {offer.name: offer for offer in place.offers if isinstance(offer, Pass)}
            wanted = [(offers[name], count) for name, count in counts]
            order = pass_order(place, wanted, self._arrivals[position], self._today)
            self._orders[key] = order if isinstance(order, Admission) else None
        return self._orders[key]

    def _order_choices(self) -> Iterator[OrderChoice]:
        for place in self._places:
            for position in range(len(self._arrivals)):
                most: Counter[str] = Counter()
                for one in self.candidates:
                    if one.place.id == place.id and position in one.sold_at:
                        most[one.offer.name] += one.copies
                if prod(count + 1 for count in most.values()) > WAYS_AT_MOST:
                    raise PlanError(f"there are too many ways to combine passes of {place.name}")
                for numbers in product(*(range(count + 1) for count in most.values())):
                    counts = tuple((name, n) for name, n in zip(most, numbers, strict=True) if n)
                    order = self._order(position, place, counts) if counts else None
                    if order is not None:
                        yield OrderChoice(position, place.id, counts, order.total.minor)

    def _in_reach(self, number: int, position: int) -> bool:
        return any(position in covered for covered in self._covers[number])

    # What a choice of purchases comes to.

    def _hand(self, position: int, bought: Iterable[Bought]) -> Hand:
        """What is in hand on a visit."""
        count: Counter[int] = Counter()
        for one in bought:
            if position in self._covered(one):
                count[one.candidate] += one.count
        visit = self.prices[position]
        return tuple(min(count[n], most) for n, most in zip(visit.candidates, visit.copies, strict=True))

    def _covered(self, one: Bought) -> tuple[int, ...]:
        when = self.candidates[one.candidate].sold_at.index(one.arrival)
        return self._covers[one.candidate][when]

    def _valid_until(self, one: Bought) -> date:
        return self.candidates[one.candidate].valid_until(self._arrivals[one.arrival].day)

    def _orders_placed(self, bought: Sequence[Bought]) -> tuple[PassOrder, ...]:
        tills = dict.fromkeys((one.arrival, self.candidates[one.candidate].place.id) for one in bought)
        placed = []
        for position, place_id in tills:
            here = [
                one
                for one in bought
                if one.arrival == position and self.candidates[one.candidate].place.id == place_id
            ]
            place = self.candidates[here[0].candidate].place
            day = self._arrivals[position].day
            order = self._order(position, place, self._counts(here))
            if order is None:
                raise PlanError(f"the passes of {place.name} are not sold on {day}")
            passes = tuple(
                PassPurchase(place, candidate.offer, candidate.holders, day, self._valid_until(one))
                for one in here
                for candidate in [self.candidates[one.candidate]] * one.count
            )
            lines = tuple(replace(line, covers=()) for line in order.purchases)
            placed.append(PassOrder(place, day, passes, lines, order.total, order.notes))
        return tuple(placed)

    def _counts(self, bought: Iterable[Bought]) -> Counts:
        """How many of each offer, in card order."""
        counts: Counter[str] = Counter()
        for one in sorted(bought, key=lambda one: one.candidate):
            counts[self.candidates[one.candidate].offer.name] += one.count
        return tuple(counts.items())

    def _visit_cost(self, position: int, bought: Sequence[Bought]) -> VisitCost:
        prices = self.prices[position]
        counting = [
            one for one in bought if one.candidate in prices.candidates and position in self._covered(one)
        ]
        passes = [
            self.candidates[one.candidate].held_until(self._valid_until(one))
            for one in counting
            for _ in range(one.count)
        ]
        admission = prices.admission(passes)
        if isinstance(admission, NoAdmission):
            raise PlanError(f"nobody may enter on {self._arrivals[position].day}: {admission.reasons}")
        parking = prices.parking(passes)
        whole = admission.total if parking is None else admission.total + parking
        singly = prices.cents.get(prices.empty_handed)
        return VisitCost(
            visit=self._arrivals[position].visit,
            admission=admission,
            parking=parking,
            total=whole,
            singly=None if singly is None else Money.from_minor(singly, self._currency),
            passes=tuple(dict.fromkeys(self.candidates[one.candidate].offer.name for one in counting)),
        )

    def _break_even(self, bought: Sequence[Bought]) -> Iterator[BreakEven]:
        offers: dict[tuple[str, str], list[int]] = {}
        for number, one in enumerate(self.candidates):
            offers.setdefault((one.place.id, one.offer.name), []).append(number)
        for numbers in offers.values():
            mine = [one for one in bought if one.candidate in numbers]
            if mine:
                others = [one for one in bought if one not in mine]
                yield self._outlook(mine, others, self._spent(bought) - self._spent(others), in_plan=True)
            elif not self.candidates[numbers[0]].there:
                trials = [Bought(self.candidates[number].sold_at[0], number, 1) for number in numbers]
                looks = [self._outlook([one], bought, self._spent([one]), in_plan=False) for one in trials]
                yield min(looks, key=lambda look: look.pays_after or float("inf"))

    def _spent(self, bought: Sequence[Bought]) -> int:
        """What the orders of passes cost [smallest coin]."""
        return sum(order.total.minor for order in self._orders_placed(bought))

    def _outlook(
        self, mine: Sequence[Bought], others: Sequence[Bought], cents: int, *, in_plan: bool
    ) -> BreakEven:
        """When passes of one offer have paid, beside others."""
        one = self.candidates[mine[0].candidate]
        needed, visits, saved = False, 0, 0
        paid_with: tuple[int, date] | None = None
        for position, prices in enumerate(self.prices):
            without = self._hand(position, others)
            with_it = self._hand(position, [*others, *mine])
            counts = any(b.candidate in prices.candidates and position in self._covered(b) for b in mine)
            if not counts or with_it not in prices.cents:
                continue
            visits += 1
            if without in prices.cents:
                saved += prices.cents[without] - prices.cents[with_it]
                if paid_with is None and saved and saved >= cents:
                    paid_with = visits, self._arrivals[position].day
            else:
                needed = True
        pays_after, pays_on = (1, None) if needed else paid_with or (None, None)
        if pays_after is None and saved:
            pays_after = -(-cents * visits // saved)  # those planned are too few; by their average
        return BreakEven(
            place=one.place,
            offer=one.offer,
            bought=in_plan,
            holders=tuple(dict.fromkeys(name for b in mine for name in self.candidates[b.candidate].holders)),
            price=Money.from_minor(cents, self._currency),
            visits=visits,
            saved=None if needed else Money.from_minor(saved, self._currency),
            pays_after=pays_after,
            pays_on=pays_on,
        )

    def _notes(self) -> tuple[str, ...]:
        unknown = dict.fromkeys(
            arrival.visit.place.name for arrival in self._arrivals if arrival.parking is None
        )
        if not unknown:
            return ()
        return (say("passes-parking-unknown", places=tuple(unknown)),)
