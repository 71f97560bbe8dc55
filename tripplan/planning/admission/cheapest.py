"""The cheapest legal set of offers that lets a whole party in."""

from collections import Counter
from collections.abc import Collection, Iterator, Mapping, Sequence, Set
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from fractions import Fraction

from tripplan.documents.family.held_pass import HeldPass
from tripplan.documents.family.member import Member
from tripplan.documents.places.offers import AddOn, Offer, Ticket, Voucher, price_beside
from tripplan.documents.places.place import Place
from tripplan.errors import PlanError
from tripplan.language import wording
from tripplan.language.sentences import Fact, say
from tripplan.planning.admission.availability import (
    UnavailableOffer,
    VisitTime,
    held_here,
    on_sale,
    vouchers_that_count,
)
from tripplan.planning.admission.board import read_board
from tripplan.planning.admission.charges import SaleLimits
from tripplan.planning.admission.constraints import Board
from tripplan.planning.admission.purchase_plans import PurchasePlan, PurchasePlanner
from tripplan.planning.admission.refusal import reasons_against, unaccompanied
from tripplan.planning.admission.result import Admission, EntryPrice, NoAdmission, OtherWay
from tripplan.planning.admission.terms.annual_pass import HeldHere
from tripplan.planning.admission.terms.registry import terms_of
from tripplan.planning.admission.till import (
    beside_entry,
    entry_lines,
    exact_money,
    parking_included,
    prices_by_head,
    purchases,
    shares,
    total_of,
    whole_coins,
)
from tripplan.values.ages import completed_months
from tripplan.values.money import Money, minor_digits

OTHER_WAYS = 2
"""How many next-best ways in are told beside the cheapest [-]."""


def cheapest_admission(
    place: Place,
    party: Sequence[Member],
    moment: datetime,
    *,
    today: date,
    household_members: Collection[str] = (),
    held: Sequence[HeldPass] = (),
    public_holidays: Set[date] = frozenset(),
    days_out_of_school: Set[date] = frozenset(),
    other_places: Sequence[Place] = (),
    other_ways: int = OTHER_WAYS,
    leaving: datetime | None = None,
    car_seats: int | None = None,
    add_ons: Sequence[AddOn] = (),
) -> Admission | NoAdmission:
    """Find what to buy so that everybody may enter, for the least money.

    Offers that are not good at the moment of arrival, or that had to be booked before today, are left out
    first. Among the rest the answer is exact: no legal set of offers costs less. Equal costs are broken by
    fewer items, then by places on the card. Percentages and tax are worked out exactly on the whole order and
    the total is rounded once, half up. At most one voucher is used. Add-ons and parking are no part of it.

    Args:
        place: the place, with its offers, fees, tax, vouchers and rules of accompaniment.
        party: who comes along; ages are those on the day of arrival.
        moment: the arrival, zone-aware, by the clock of the place.
        today: the day the question is asked; bookings and vouchers are judged by it.
        household_members: names of those who belong to the household, who may share its passes; everybody
            in the party when left out.
        held: passes the family owns.
        public_holidays: the dates PH stands for in the offers' times.
        days_out_of_school: the dates SH stands for.
        other_places: cards of places whose passes are held, for entry they grant here.
        other_ways: how many next-best ways to look for.
        leaving: when the party leaves, zone-aware; where nobody has said, in time for every offer.
        car_seats: seats of a car of the household, for permits by car; all go in one when left out.
        add_ons: what of the card the party wants beside entry; its price may hang on the ticket, and so which
            tickets are cheapest in all.

    Returns:
        What to buy, or which rules forbid that this party enters.

    Raises:
        PlanError: the party is empty, two people share a name, the arrival lies before today or has no
            time zone.
    """
    gate = Gate(
        place,
        moment,
        today,
        household=frozenset(household_members) or frozenset(member.name for member in party),
        held=tuple(held),
        public_holidays=public_holidays,
        days_out_of_school=days_out_of_school,
        other_places=tuple(other_places),
        leaving=leaving,
        car_seats=car_seats,
        add_ons=tuple(add_ons),
    )
    return gate.admission(party, other_ways=other_ways)


@dataclass(frozen=True)
class Gate:
    """One arrival at a place: everything that is asked about but the party.

    Attributes:
        place: the place.
        moment: the arrival, zone-aware at the place.
        today: the day the question is asked.
        household: names of those who belong to the household.
        held: passes the family owns.
        public_holidays: the dates PH stands for.
        days_out_of_school: the dates SH stands for.
        other_places: cards of places whose passes are held.
        leaving: when the party leaves, zone-aware; where nobody has said, in time for every offer.
        car_seats: seats of a car of the household, for permits by car; all go in one when left out.
        add_ons: what of the card the party wants beside entry.
    """

    place: Place
    moment: datetime
    today: date
    household: frozenset[str]
    held: tuple[HeldPass, ...] = ()
    public_holidays: Set[date] = frozenset()
    days_out_of_school: Set[date] = frozenset()
    other_places: tuple[Place, ...] = ()
    leaving: datetime | None = None
    car_seats: int | None = None
    add_ons: tuple[AddOn, ...] = ()

    @property
    def visit(self) -> VisitTime:
        """The arrival, the end of the visit and what the calendars say."""
        return VisitTime(self.moment, self.today, self.public_holidays, self.days_out_of_school, self.leaving)

    def _board(
        self,
        offers: Sequence[Offer],
        passes: Sequence[HeldHere],
        party: Sequence[Member],
        months: Sequence[int],
    ) -> Board:
        return read_board(
            self.place,
            offers,
            passes,
            party,
            months,
            self.household,
            day=self.visit.day,
            car_seats=self.car_seats,
            add_ons=self._to_be_had(),
        )

    def _to_be_had(self) -> tuple[AddOn, ...]:
        """What is wanted beside entry, paid by each, and to be had at the moment of arrival."""
        visit = self.visit
        return tuple(one for one in self.add_ons if one.per == "person" and visit.meets(one.valid))

    def admission(
        self,
        party: Sequence[Member],
        *,
        other_ways: int = 0,
        not_bought: Collection[str] = (),
        must_buy: str | None = None,
    ) -> Admission | NoAdmission:
        """The cheapest way in for a party.

        Args:
            party: who comes along.
            other_ways: how many next-best ways to look for.
            not_bought: names of offers that are left at the till.
            must_buy: name of a bundle or pass of which at least one is bought, whatever it costs.

        Raises:
            PlanError: as for `cheapest_admission`; or `must_buy` cannot be had.
        """
        _check(party, self.moment, self.today, self.leaving)
        place, visit = self.place, self.visit
        months = [member.months_on(visit.day) for member in party]
        offers, left_out = on_sale(place, visit)
        passes = held_here(place, self.held, visit, self.other_places)

        def board_of(some: Sequence[Offer]) -> Board:
            return self._board(some, passes, party, months)

        board = board_of(offers)
        sources: dict[str, list[int]] = {}
        for block in board.blocks[len(passes) :]:
            sources.setdefault(block.offer.name, []).append(block.source)
        if must_buy is not None and must_buy not in sources:
            raise PlanError(f"{must_buy!r} cannot be had for this visit")
        vouchers = vouchers_that_count(place, party, visit)
        finder = PurchasePlanner(place, board, vouchers)
        limits = SaleLimits(
            left_out=frozenset(source for name in not_bought for source in sources.get(name, ())),
            must_buy=None if must_buy is None else sources[must_buy][0],
        )
        forbidden = unaccompanied(place, party, months)
        ways = [] if forbidden else finder.in_order(1 + other_ways, limits)
        if not ways:
            against: tuple[Fact, ...] = ()
            if finder.cheapest(limits) is None:
                against = reasons_against(place, offers, left_out, party, months, board, board_of)
            return NoAdmission((*forbidden, *against))
        best = ways[0]
        lines, total = purchases(place, board, best, vouchers, party)
        singly = _by_single_tickets(board, finder)
        alone = {} if singly is None else prices_by_head(board, singly)
        obvious, why = None, ""
        if singly is not None and singly.order.in_all > best.order.in_all:
            dearer = _other_way(place, board, singly, vouchers, party, best)
            if dearer.costs_more.minor > 0:
                obvious, why = dearer, _why_dearer(place, board, best, party, alone, dearer)
        return Admission(
            purchases=lines,
            total=total,
            shares=shares(place, board, best, total, party, alone),
            other_ways=tuple(_other_way(place, board, way, vouchers, party, best) for way in ways[1:]),
            notes=(
                *_notes(board, best, vouchers, party, visit, left_out, passes, offers),
                *self._comes_with(board, best),
            ),
            parking_included=parking_included(board, best),
            single_tickets=obvious,
            why_not_single_tickets=why,
            beside=beside_entry(place, board, best),
        )

    def _comes_with(self, board: Board, way: PurchasePlan) -> Iterator[str]:
        """What is wanted beside entry and costs less, or nothing more, by the tickets that are bought."""
        for source in way.solution.sources:
            block = board.blocks[source]
            for add_on in self._to_be_had() if block.other_place is None else ():
                price = price_beside(add_on, block.offer)
                if price < add_on.price:
                    usual, less = (Money(one, self.place.currency) for one in (add_on.price, price))
                    worth = f"for {wording.money(less)}" if price else "at no extra charge"
                    yield (
                        f"With '{block.offer.name}', '{add_on.name}' comes {worth} instead of "
                        f"{wording.money(usual)} each."
                    )

    def entry_price(self, party: Sequence[Member]) -> EntryPrice | None:
        """What the cheapest way in costs, as `admission` finds it; None where nobody lets the party in.

        Raises:
            PlanError: as for `cheapest_admission`.
        """
        _check(party, self.moment, self.today, self.leaving)
        place, visit = self.place, self.visit
        day = visit.day
        months = [member.months_on(day) for member in party]
        if unaccompanied(place, party, months):
            return None
        offers, _ = on_sale(place, visit)
        passes = held_here(place, self.held, visit, self.other_places)
        board = self._board(offers, passes, party, months)
        way = PurchasePlanner(place, board, vouchers_that_count(place, party, visit)).cheapest()
        if way is None:
            return None
        return EntryPrice(
            total_of(way, place.currency), parking_included(board, way), beside_entry(place, board, way)
        )


def _check(party: Sequence[Member], moment: datetime, today: date, leaving: datetime | None) -> None:
    if not party:
        raise PlanError("nobody is in the party")
    if len({member.name for member in party}) < len(party):
        twice = [name for name, count in Counter(member.name for member in party).items() if count > 1]
        raise PlanError(f"everybody in a party needs a name of their own; twice: {', '.join(twice)}")
    if moment.tzinfo is None:
        raise PlanError("the arrival needs the time zone of the place")
    if moment.date() < today:
        raise PlanError(f"the arrival on {moment.date()} lies before today, {today}")
    if leaving is not None and (leaving.tzinfo is None or leaving < moment):
        raise PlanError("the party leaves after it arrives, at a moment with a time zone")


def _other_way(
    place: Place,
    board: Board,
    way: PurchasePlan,
    vouchers: Sequence[Voucher],
    party: Sequence[Member],
    cheapest: PurchasePlan,
) -> OtherWay:
    lines, total = purchases(place, board, way, vouchers, party)
    more = total - total_of(cheapest, place.currency)
    beside = way.order.beside - cheapest.order.beside
    if beside:
        more += Money.from_minor(whole_coins([beside])[0], place.currency)
    return OtherWay(lines, total, more)


def _by_single_tickets(board: Board, finder: PurchasePlanner) -> PurchasePlan | None:
    """The obvious way: for each person a ticket, without bundles, passes and group prices."""
    clever = (block.source for block in board.blocks if block.is_for_groups)
    return finder.cheapest(SaleLimits(left_out=frozenset(clever)))


def _why_dearer(
    place: Place,
    board: Board,
    best: PurchasePlan,
    party: Sequence[Member],
    alone: Mapping[int, int],
    obvious: OtherWay,
) -> str:
    """Why single tickets for everybody are dearer, line by line of the cheapest way."""
    coin = 10 ** (board.fine_digits - minor_digits(place.currency))

    def shown(fine: int) -> str:
        return wording.money(exact_money(Fraction(fine, coin), place.currency))

    reasons = []
    for line in entry_lines(board, best):
        singly = sum(alone[position] for position in line.people)
        paid = line.price * line.quantity
        if paid < singly:
            names = wording.listed([party[position].name for position in line.people])
            cost = f"for {shown(paid)}" if paid else "free"
            reasons.append(f"'{line.name}' lets {names} in {cost} instead of {shown(singly)}")
    more = f"{wording.money(obvious.total)}, {wording.money(obvious.costs_more)} more"
    because = f": {'; '.join(reasons)}" if reasons else ""
    return f"Single tickets for everybody would cost {more}{because}."


def _notes(
    board: Board,
    way: PurchasePlan,
    vouchers: Sequence[Voucher],
    party: Sequence[Member],
    visit: VisitTime,
    left_out: Sequence[UnavailableOffer],
    passes: Sequence[HeldHere],
    offers: Sequence[Offer],
) -> tuple[str, ...]:
    """What the parent should know about the way in."""
    notes: list[str] = []
    used_by: dict[int, set[int]] = {}
    for line in entry_lines(board, way):
        used_by.setdefault(line.source, set()).update(line.people)
    for source, people in used_by.items():
        block = board.blocks[source]
        offer = block.offer
        if block.held is not None:
            holders = [name for name in block.held.holders if name in {m.name for m in party}]
            notes.append(f"Bring '{offer.name}' of {wording.listed(holders)}.")
            continue
        if offer.book_days_ahead:
            book_by = wording.day(visit.day - timedelta(days=offer.book_days_ahead))
            back = "" if offer.refundable else "; the money does not come back when the visit is called off"
            notes.append(f"Book '{offer.name}' by {book_by}{back}.")
        needs = getattr(offer, "needs", ())
        if needs:
            who = [party[p].name for p in sorted(people) if set(party[p].statuses).intersection(needs)]
            notes.append(f"Bring proof of {' or '.join(needs)} for '{offer.name}': {wording.listed(who)}.")
        if isinstance(offer, Ticket) and offer.good_on != "any day":
            whose = wording.listed([party[p].name for p in sorted(people)])
            notes.append(f"Bring something that shows the birthday for '{offer.name}': {whose}.")
        if visit.leaving is None and offer.longest_stay_minutes is not None:
            notes.append(f"'{offer.name}' is good for {wording.minutes(offer.longest_stay_minutes)}.")
        if visit.leaving is None and offer.leave_by is not None:
            notes.append(f"With '{offer.name}' you must be out by {wording.clock(offer.leave_by)}.")
        if offer.note:
            notes.append(f"'{offer.name}': {offer.note}")
    if way.voucher is not None:
        voucher = vouchers[way.voucher]
        if voucher.last_day is not None and voucher.last_day < visit.day:
            notes.append(f"'{voucher.name}' must be used by {wording.day(voucher.last_day)}, so buy ahead.")
        if voucher.book_days_ahead:
            order_by = wording.day(visit.day - timedelta(days=voucher.book_days_ahead))
            notes.append(f"For '{voucher.name}' the order must be placed by {order_by}.")
    notes += [
        say("refusals-too-late", offer=out.offer.name, why=out.why)
        for out in left_out
        if out.too_late_since is not None
    ]
    bands = [band for offer in (*offers, *(one.offer for one in passes)) for band in terms_of(offer).bands]
    for member in party:
        oldest, youngest = member.months_on(visit.day), completed_months(member.born.latest, visit.day)
        if any((oldest in band) != (youngest in band) for band in bands):
            notes.append(
                f"Only {member.name}'s month of birth is known, and the day decides about the price; "
                "the older age was taken."
            )
    return tuple(dict.fromkeys(notes))
