"""Legal ways in, compared by the whole order: entry, voucher, tax and fees."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from tripplan.documents.places.offers import Voucher
from tripplan.documents.places.place import Place
from tripplan.planning.admission.blocks import Board, TicketBlock, UnitBlock
from tripplan.planning.admission.charges import (
    ANYTHING,
    ITEM_BITS,
    ORDER_BITS,
    Charges,
    SaleLimits,
    Solution,
    charges_for,
    priced_items,
    voucher_counts_for,
)
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
        tax: on entry after the voucher.
        ticket_fees: how many things bear the fees per ticket.
        fees: per order and per ticket together.
    """

    entry: Fraction
    off: Fraction
    tax: Fraction
    ticket_fees: int
    fees: Fraction

    @property
    def total(self) -> Fraction:
        """What is paid, before it is rounded."""
        return self.entry - self.off + self.tax + self.fees


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

    @property
    def rank(self) -> tuple[Fraction, int, int, int]:
        """Smaller is better: cost, then number of items, then places on the card, then the voucher's."""
        items = (self.solution.weight >> ORDER_BITS) & ((1 << ITEM_BITS) - 1)
        places = self.solution.weight & ((1 << ORDER_BITS) - 1)
        used = self.voucher is not None
        return (self.order.total, items + used, places, self.voucher if self.voucher is not None else -1)


class PurchasePlanner:
    """Finds ways in for one party; asked again, it leaves out further offers."""

    def __init__(self, place: Place, board: Board, vouchers: Sequence[Voucher]) -> None:
        self._place, self._board, self._vouchers = place, board, vouchers
        self._by_table = states(board) * payer_cases(board) * len(board.blocks) <= TABLE_SIZE_AT_MOST
        self._tables: dict[tuple[int | None, bool], CoverTable] = {}
        self._plain = charges_for(place, board, None)
        free_kinds = set().union(*(_free_kinds(block) for block in board.blocks))
        self._may_be_free = bool(self._plain.order_fee) and len(free_kinds) == len(board.kinds)

    def cheapest(self, limits: SaleLimits = ANYTHING) -> PurchasePlan | None:
        """The best way in by rank within limits; None if there is no legal way."""
        if self._may_be_free and limits.must_buy is None:
            free = self._solve(None, limits, free_only=True)
            if free is not None:
                return self.price(free, None)
        plain = self._solve(None, limits)
        if plain is None:
            return None
        ways = [self.price(plain, None)]
        for number, voucher in enumerate(self._vouchers):
            if voucher.percent_off is not None:
                solution = self._solve(number, limits)
                if solution is not None:
                    ways.append(self.price(solution, number))
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
        nothing_left = way.order.off == way.order.entry and not (
            way.order.ticket_fees and self._plain.ticket_fee
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
            return replace(self._plain, free_only=free_only)
        return charges_for(self._place, self._board, self._vouchers[voucher], free_only=free_only)

    def _order(self, solution: Solution, voucher: Voucher | None) -> TicketOrder:
        board, place = self._board, self._place
        entry = counted = bears_fee = 0
        for use in solution.uses:
            for _, price, quantity, with_fee in priced_items(board, use):
                entry += price * quantity
                if price:
                    bears_fee += quantity * with_fee
                if voucher is not None and voucher_counts_for(voucher, board.blocks[use.source]):
                    counted += price * quantity
        coin = 10 ** (board.fine_digits - minor_digits(place.currency))
        off = Fraction(0)
        if voucher is not None and voucher.percent_off is not None:
            off = Fraction(counted, coin) * Fraction(voucher.percent_off) / 100
        elif voucher is not None and voucher.amount_off is not None:
            off = Fraction(min(counted, board.fine(voucher.amount_off)), coin)
        tax = Fraction(0)
        if place.sales_tax is not None and place.sales_tax.on_entry:
            tax = (Fraction(entry, coin) - off) * Fraction(place.sales_tax.percent) / 100
        fees = sum(
            board.fine(fee.price) * (bears_fee if fee.per == "ticket" else entry > 0) for fee in place.fees
        )
        return TicketOrder(Fraction(entry, coin), off, tax, bears_fee, Fraction(fees, coin))


def _free_kinds(block: TicketBlock | UnitBlock) -> set[int]:
    """Kinds that may come in by a block without anything being bought at a price."""
    if isinstance(block, TicketBlock):
        return set(block.users | block.leaders) if block.price == 0 else set()
    if block.price:
        return set()
    seated = {kind for row in block.rows for kind in row.kinds if not block.seat_price.get(kind, 0)}
    return seated | {kind for kind, price in block.beyond_price.items() if price == 0}
