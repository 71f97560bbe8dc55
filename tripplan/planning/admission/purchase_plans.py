"""Legal ways in, compared by the whole order: entry, voucher, tax and fees."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cached_property

from tripplan.documents.places.offers import Fee, Voucher
from tripplan.documents.places.place import Place
from tripplan.planning.admission.charges import (
    ANYTHING,
    ITEM_BITS,
    ORDER_BITS,
    Charges,
    SaleLimits,
    Solution,
    charges_for,
    fees_on,
    people_of,
    priced_items,
    tax_on,
    voucher_counts_for,
)
from tripplan.planning.admission.constraints import Block, Board, Role
from tripplan.planning.admission.integer import cheapest_by_integers
from tripplan.planning.admission.table import CoverTable, payer_cases, states
from tripplan.values.money import minor_digits

TABLE_SIZE_AT_MOST = 3000
"""States times offers above which the integer programme is quicker; measured, see the admission benchmark."""


@dataclass(frozen=True)
class TicketOrder:
    """What a way in costs, item by item, exact and in the currency's smallest coins.

    Attributes:
        entry: all that lets people in.
        off: what the voucher takes off it.
        fees: each fee of the card that comes on the order.
        tax: on entry after the voucher, and on fees where the card says so.
        beside: what the party wants beside entry and pays on top, tax included; no part of the order.
    """

    entry: Fraction
    off: Fraction
    fees: tuple["FeeCharged", ...]
    tax: Fraction
    beside: Fraction = Fraction(0)

    @cached_property
    def in_all(self) -> Fraction:
        """What the day costs by it, which is what is compared."""
        return self.total + self.beside if self.beside else self.total

    @cached_property
    def total(self) -> Fraction:
        """What is paid, before it is rounded."""
        return sum((fee.total for fee in self.fees), self.entry - self.off + self.tax)


@dataclass(frozen=True)
class FeeCharged:
    """A fee on an order.

    Attributes:
        fee: as on the card.
        quantity: how many times it is charged.
        price: what it is once, in smallest coins; exact.
    """

    fee: Fee
    quantity: int
    price: Fraction

    @property
    def total(self) -> Fraction:
        """What it comes to."""
        return self.price * self.quantity


@dataclass(frozen=True)
class PurchasePlan:
    """A way in with the voucher that goes with it.

    Attributes:
        solution: what is had of every block.
        voucher: position of the voucher used among those that count; None for none.
        order: what it costs.
    """

    solution: Solution
    voucher: int | None
    order: TicketOrder

    @cached_property
    def rank(self) -> tuple[Fraction, int, int, int]:
        """Smaller is better: cost, then number of items, then places on the card, then the voucher's."""
        items = (self.solution.weight >> ORDER_BITS) & ((1 << ITEM_BITS) - 1)
        places = self.solution.weight & ((1 << ORDER_BITS) - 1)
        used = self.voucher is not None
        return (self.order.in_all, items + used, places, self.voucher if self.voucher is not None else -1)


class PurchasePlanner:
    """Finds ways in for one party; asked again, it leaves out further offers."""

    def __init__(self, place: Place, board: Board, vouchers: Sequence[Voucher]) -> None:
        self._place, self._board, self._vouchers = place, board, vouchers
        self._by_table = states(board) * payer_cases(board) * len(board.blocks) <= TABLE_SIZE_AT_MOST
        self._tables: dict[tuple[int | None, bool], CoverTable] = {}
        self._plain = charges_for(place, board, None)
        by_order = [fee for fee in place.fees if fee.price and fee.per == "order"]
        self._may_be_free = bool(by_order) and len(board.kinds) == len(
            frozenset[int]().union(*map(_free_kinds, board.blocks))
        )
        self._online = frozenset(
            block.source
            for block in board.blocks
            if block.offer.online_only and any(fee.online_only for fee in by_order)
        )

    def cheapest(self, limits: SaleLimits = ANYTHING) -> PurchasePlan | None:
        """The best way in by rank within limits; None if there is no legal way.

        A fee on an order is due once for all: it is weighed by looking for ways with and without it.
        """
        found = [self._cheapest(limits)]
        if self._online and limits.must_buy not in self._online:
            found.append(self._cheapest(replace(limits, left_out=limits.left_out | self._online)))
        return min((way for way in found if way is not None), key=lambda way: way.rank, default=None)

    def _cheapest(self, limits: SaleLimits) -> PurchasePlan | None:
        ways = []
        if self._may_be_free and limits.must_buy is None:
            free = self._solve(None, limits, free_only=True)
            if free is not None:
                ways.append(self.price(free, None))
                if not ways[0].order.beside:
                    return ways[0]
        plain = self._solve(None, limits)
        if plain is None:
            return None
        ways.append(self.price(plain, None))
        for number, voucher in enumerate(self._vouchers):
            if voucher.percent_off is not None:
                solution = self._solve(number, limits)
                if solution is not None:
                    ways.append(self._for_so_many(number, solution, limits))
            else:
                ways.append(self._with_fixed_voucher(number, plain, limits))
        return min(ways, key=lambda way: way.rank)

    def in_order(self, how_many: int, limits: SaleLimits = ANYTHING) -> list[PurchasePlan]:
        """The cheapest way and the next-best ones that are different.

        Each way does without at least one block of every way before it; of all such ways it is the cheapest.

        Args:
            how_many: ways at most.
            limits: what every way must keep to.
        """
        ways: list[PurchasePlan] = []
        while len(ways) < how_many:
            best = self.cheapest(limits)
            if best is None:
                break
            ways.append(best)
            used = frozenset(best.solution.sources)
            limits = replace(limits, not_all_of=(*limits.not_all_of, used))
        return ways

    def price(self, solution: Solution, voucher: int | None) -> PurchasePlan:
        """A way with what it costs; a voucher that takes nothing off is left at home."""
        order = self._order(solution, None if voucher is None else self._vouchers[voucher])
        return PurchasePlan(solution, voucher if order.off else None, order)

    def _for_so_many(self, number: int, unlimited: Solution, limits: SaleLimits) -> PurchasePlan:
        """The cheapest way with a voucher of a percentage, which may be for so many people only.

        Where the cheapest way without that limit keeps to it, no other is cheaper with it. Otherwise it must
        be weighed on what the voucher is used.
        """
        way = self.price(unlimited, number)
        voucher = self._vouchers[number]
        if voucher.people_at_most is None or self._people_with(voucher, unlimited) <= voucher.people_at_most:
            return way
        solution = cheapest_by_integers(self._board, charges_for(self._place, self._board, voucher), limits)
        return way if solution is None else self.price(solution, number)

    def _people_with(self, voucher: Voucher, solution: Solution) -> int:
        """For how many people a voucher would count."""
        return sum(count * people for _, count, people in self._counted(voucher, solution))

    def _counted(self, voucher: Voucher, solution: Solution) -> list[tuple[int, int, int]]:
        """What a voucher counts for: fine price, how many, for how many people each counts."""
        blocks = self._board.blocks
        return [
            (price, quantity, people_of(blocks[use.source], role))
            for use in solution.uses
            if voucher_counts_for(voucher, blocks[use.source])
            for role, price, quantity, _ in priced_items(self._board, use)
            if price
        ]

    def _with_fixed_voucher(self, number: int, plain: Solution, limits: SaleLimits) -> PurchasePlan:
        """The cheapest way with a voucher of a fixed amount.

        Where the cheapest way without it is worth the voucher's whole amount, or leaves nothing to pay but
        the order's fee, it is the cheapest with it too. Otherwise the rest must be weighed against the
        part of the voucher that is lost.
        """
        way = self.price(plain, number)
        voucher = self._vouchers[number]
        amount = voucher.amount_off or 0
        in_full = way.order.off == Fraction(amount) * 10 ** minor_digits(self._place.currency)
        nothing_left = (
            way.order.off == way.order.entry
            and not way.order.beside
            and not any(charged.fee.percent or charged.fee.per == "ticket" for charged in way.order.fees)
        )
        if in_full or nothing_left:
            return way
        charges = charges_for(self._place, self._board, voucher)
        solution = cheapest_by_integers(self._board, charges, limits)
        return way if solution is None else self.price(solution, number)

    def _solve(self, voucher: int | None, limits: SaleLimits, *, free_only: bool = False) -> Solution | None:
        if not self._by_table:
            return cheapest_by_integers(self._board, self._charges(voucher, free_only), limits)
        key = (voucher, free_only)
        if key not in self._tables:
            self._tables[key] = CoverTable(self._board, self._charges(voucher, free_only))
        return self._tables[key].cheapest(limits)

    def _charges(self, voucher: int | None, free_only: bool) -> Charges:
        if voucher is None:
            return replace(self._plain, free_only=True) if free_only else self._plain
        unlimited = self._vouchers[voucher].model_copy(update={"people_at_most": None})
        return charges_for(self._place, self._board, unlimited, free_only=free_only)

    def _order(self, solution: Solution, voucher: Voucher | None) -> TicketOrder:
        board, place = self._board, self._place
        items = [
            (board.blocks[use.source], price, quantity, with_fee)
            for use in solution.uses
            for _, price, quantity, with_fee in priced_items(board, use)
            if price
        ]
        coin = 10 ** (board.fine_digits - minor_digits(place.currency))
        entry = Fraction(sum(price * quantity for _, price, quantity, _ in items), coin)
        off = Fraction(0)
        if voucher is not None:
            counted = self._counted(voucher, solution)
            if voucher.percent_off is not None:
                reduced = _dearest(counted, voucher.people_at_most)
                off = Fraction(reduced, coin) * Fraction(voucher.percent_off) / 100
            elif voucher.amount_off is not None:
                whole = sum(price * quantity for price, quantity, _ in counted)
                off = Fraction(min(whole, board.fine(voucher.amount_off)), coin)
        fees = tuple(charged for fee in place.fees if (charged := _charged(place, fee, items, board, coin)))
        tax = beside = Fraction(0)
        if place.sales_tax is not None:
            tax = (entry - off) * Fraction(tax_on(place, "entry")) / 100
            charged_in_all = sum((charged.total for charged in fees), Fraction(0))
            tax += charged_in_all * Fraction(tax_on(place, "fees")) / 100
        wanted = sum(
            with_it.get(kind, 0) * count
            for use in solution.uses
            if (with_it := board.blocks[use.source].beside)
            for _, kind, count in use.people
        )
        if wanted:
            beside = Fraction(wanted, coin) * (100 + Fraction(tax_on(place, "add_ons"))) / 100
        return TicketOrder(entry, off, fees, tax, beside)


def _charged(
    place: Place, fee: Fee, items: Sequence[tuple[Block, int, int, bool]], board: Board, coin: int
) -> FeeCharged | None:
    """What a fee comes to on priced things: block, fine price, how many, whether with fees per ticket."""
    bearing = [item for item in items if fee in fees_on(place, item[0])]
    if not bearing:
        return None
    if fee.percent:
        paid = sum(price * quantity for _, price, quantity, _ in bearing)
        return FeeCharged(fee, 1, Fraction(paid, coin) * Fraction(fee.percent) / 100)
    quantity = sum(many for _, _, many, with_fee in bearing if with_fee) if fee.per == "ticket" else 1
    if not fee.price or not quantity:
        return None
    return FeeCharged(fee, quantity, Fraction(board.fine(fee.price), coin))


def _dearest(counted: Sequence[tuple[int, int, int]], people_at_most: int | None) -> int:
    """The most that things for so many people at most cost together: fine price, how many, people each."""
    if people_at_most is None:
        return sum(price * quantity for price, quantity, _ in counted)
    best = [0] * (people_at_most + 1)
    for price, quantity, people in counted:
        for _ in range(min(quantity, people_at_most // people)):
            for room in range(people_at_most, people - 1, -1):
                best[room] = max(best[room], best[room - people] + price)
    return best[people_at_most]


def _free_kinds(block: Block) -> frozenset[int]:
    """Kinds that may come in by a block without anything being bought at a price."""
    if block.unit_price:
        return frozenset()
    free = {
        kind
        for way in block.ways
        if way.role is not Role.LEADER
        for kind, price in way.prices.items()
        if not price
    }
    leaders = {kind for way in block.ways if way.role is Role.LEADER for kind in way.prices}
    return frozenset(free | leaders if free else free)
