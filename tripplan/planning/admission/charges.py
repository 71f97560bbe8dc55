"""What a purchase adds to the order, in whole numbers that hold every percentage exactly."""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from tripplan.documents.places.offers import Fee, Voucher
from tripplan.documents.places.place import Place
from tripplan.planning.admission.constraints import Block, Board, Role, Way
from tripplan.values.money import decimals

ITEM_BITS = 20
ORDER_BITS = 20


@dataclass(frozen=True)
class Charges:
    """How a board's fine prices become charges: after a percentage voucher, with tax and fees.

    Attributes:
        digits: decimal places of a charge [-].
        factors: by source, what a fine price is multiplied with.
        plain_factor: the same without a voucher.
        beside_factor: the same for what is wanted beside entry.
        fee_factors: by source, likewise, for fees that are a part of the price; no voucher reduces them.
        ticket_fees: by source, charge of the fees on every ticket, bundle or pass bought at a price.
        free_only: whether nothing with a price may be had.
        reduction: charge that a voucher of a fixed amount takes off at most; 0 for none.
        people_at_most: for how many people a percentage voucher counts that `factors` leave out; None for no
            such voucher.
        off_factors: by source, what it takes off a fine price.
        reduced_sources: what that voucher, of either sort, counts for.
    """

    digits: int
    factors: Sequence[int]
    plain_factor: int
    beside_factor: int
    fee_factors: Sequence[int]
    ticket_fees: Sequence[int]
    free_only: bool = False
    reduction: int = 0
    people_at_most: int | None = None
    off_factors: Sequence[int] = ()
    reduced_sources: frozenset[int] = frozenset()

    def of(self, source: int, price: int, *, with_fee: bool) -> int | None:
        """The charge for one thing at a fine price; None where nothing with a price may be had."""
        if price == 0:
            return 0
        if self.free_only:
            return None
        fees = self.ticket_fees[source] if with_fee else 0
        return price * (self.factors[source] + self.fee_factors[source]) + fees

    def step(self, source: int, price: int, *, with_fee: bool = True) -> int | None:
        """The weight of one item: its charge first, then one item more, then its place on the card."""
        charge = self.of(source, price, with_fee=with_fee)
        if charge is None:
            return None
        return (charge << (ITEM_BITS + ORDER_BITS)) + (1 << ORDER_BITS) + source

    def unit(self, block: Block) -> int | None:
        """The weight of a unit of a block; 0 for what is had by the head."""
        return 0 if block.unit_price is None else self.step(block.source, block.unit_price)

    def entering(self, block: Block, way: Way, kind: int) -> int | None:
        """The weight of one person's coming in, with what is wanted beside entry; a free seat is no item."""
        charge = self.of(block.source, way.prices[kind], with_fee=way.with_fees)
        if charge is None:
            return None
        charge += block.beside.get(kind, 0) * self.beside_factor
        item = (1 << ORDER_BITS) + block.source if way.is_item else 0
        return (charge << (ITEM_BITS + ORDER_BITS)) + item


def charge_of(weight: int) -> int:
    """The charge within a weight."""
    return weight >> (ITEM_BITS + ORDER_BITS)


def fees_on(place: Place, block: Block) -> tuple[Fee, ...]:
    """The fees that come on what is bought of a block."""
    online = block.other_place is None and block.offer.online_only
    return tuple(fee for fee in place.fees if online or not fee.online_only)


def charges_for(place: Place, board: Board, voucher: Voucher | None, *, free_only: bool = False) -> Charges:
    """The charges of an order with one voucher or none.

    Tax comes on entry after the voucher, and on fees where the card says so; fees are not reduced.

    Args:
        place: whose fees and tax apply.
        board: the board the sources belong to.
        voucher: the voucher handed in, if any.
        free_only: whether nothing with a price may be had.
    """
    tax, on_fees, on_add_ons = tax_on(place, "entry"), tax_on(place, "fees"), tax_on(place, "add_ons")
    off = voucher.percent_off if voucher is not None and voucher.percent_off is not None else Decimal(0)
    parts = [fee.percent for fee in place.fees if fee.percent]
    tax_digits = max((2 + decimals(percent) for percent in (tax, on_fees, on_add_ons) if percent), default=0)
    off_digits = 2 + decimals(off) if off else 0
    part_digits = max((2 + decimals(part) for part in parts), default=0)
    digits = tax_digits + off_digits + part_digits
    taxed, fee_taxed, beside_taxed = (
        int((100 + percent).scaleb(tax_digits - 2)) if tax_digits else 1
        for percent in (tax, on_fees, on_add_ons)
    )
    plain = taxed * 10 ** (off_digits + part_digits)
    reduced = int((100 - off).scaleb(off_digits - 2)) * taxed * 10**part_digits if off_digits else plain
    whole_fee = fee_taxed * 10 ** (off_digits + part_digits)
    fees = [fees_on(place, block) for block in board.blocks]
    counts_for = frozenset(
        block.source for block in board.blocks if voucher and voucher_counts_for(voucher, block)
    )
    amount = voucher.amount_off if voucher is not None and voucher.percent_off is None else None
    limit = voucher.people_at_most if voucher is not None and off else None
    return Charges(
        digits=board.fine_digits + digits,
        factors=[
            reduced if block.source in counts_for and limit is None else plain for block in board.blocks
        ],
        plain_factor=plain,
        beside_factor=beside_taxed * 10 ** (off_digits + part_digits),
        fee_factors=[
            int(sum((fee.percent or Decimal(0) for fee in some), Decimal(0)).scaleb(part_digits - 2))
            * fee_taxed
            * 10**off_digits
            if part_digits
            else 0
            for some in fees
        ],
        ticket_fees=[
            sum(board.fine(fee.price) for fee in some if fee.price and fee.per == "ticket") * whole_fee
            for some in fees
        ],
        free_only=free_only,
        reduction=board.fine(amount) * plain if amount is not None else 0,
        people_at_most=limit,
        off_factors=[plain - reduced if block.source in counts_for else 0 for block in board.blocks]
        if limit is not None
        else (),
        reduced_sources=counts_for if amount is not None or limit is not None else frozenset(),
    )


def tax_on(place: Place, what: Literal["entry", "fees", "add_ons"]) -> Decimal:
    """The tax that comes on entry, on fees or on what is beside entry [%]."""
    tax = place.sales_tax
    if tax is None:
        return Decimal(0)
    taxed = {"entry": tax.on_entry, "fees": tax.on_fees, "add_ons": tax.on_add_ons}
    return tax.percent if taxed[what] else Decimal(0)


def voucher_counts_for(voucher: Voucher, block: Block) -> bool:
    """Whether a voucher takes anything off what is bought of a block."""
    if not voucher.offers:
        return True
    return block.other_place is None and block.offer.name in voucher.offers


def people_of(block: Block, role: Role | None) -> int:
    """For how many people one thing of a block counts with a voucher: a bundle or pass with its seats."""
    return block.seats if role is None else 1


@dataclass(frozen=True)
class SaleLimits:
    """What a way in must keep to beside the rules of the board.

    Attributes:
        left_out: sources that may not be used.
        must_buy: a source of which at least one unit must be bought, if any.
        not_all_of: sets of sources, of each of which at least one must be done without.
    """

    left_out: frozenset[int] = frozenset()
    must_buy: int | None = None
    not_all_of: tuple[frozenset[int], ...] = ()


ANYTHING = SaleLimits()
"""No limits beside the rules of the board."""


@dataclass(frozen=True)
class Use:
    """What is had of one block.

    Attributes:
        source: the block's source.
        units: bundles or passes bought or shown; 0 for tickets.
        people: who comes in by it: role, kind, how many.
    """

    source: int
    units: int
    people: tuple[tuple[Role, int, int], ...]


@dataclass(frozen=True)
class Solution:
    """A legal way in.

    Attributes:
        weight: charge, items and places on the card of all that is bought, fees per order and a fixed
            voucher left aside; smaller is better.
        uses: what is had, in order of source.
    """

    weight: int
    uses: tuple[Use, ...]

    @property
    def sources(self) -> tuple[int, ...]:
        """The blocks it uses, in order."""
        return tuple(use.source for use in self.uses)


def priced_items(board: Board, use: Use) -> list[tuple[Role | None, int, int, bool]]:
    """What a use buys: role (None for the unit itself), fine price, quantity, whether it bears ticket fees.

    Free things stand among them at price 0.
    """
    block = board.blocks[use.source]
    items: list[tuple[Role | None, int, int, bool]] = []
    if block.unit_price is not None:
        items.append((None, block.unit_price, use.units, True))
    for role, kind, count in use.people:
        way = block.way(role, kind)
        if way.is_item or way.prices[kind]:
            items.append((role, way.prices[kind], count, way.with_fees))
    return items
