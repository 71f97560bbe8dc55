"""A way in written out as the order at the till, and each person's share of it.

Percentages and tax are worked out exactly on the whole order; the total is rounded once, half up. The lines
are then rounded so that they add up to it, and so that the tax shown is the tax on the lines shown.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import accumulate, pairwise
from math import ceil, floor

from tripplan.documents.family.member import Member
from tripplan.documents.places.offer_sentences import (
    elsewhere_sentence,
    fee_sentence,
    held_sentence,
    tax_sentence,
    voucher_sentence,
)
from tripplan.documents.places.offers import Pass, Voucher, price_beside
from tripplan.documents.places.place import Place
from tripplan.planning.admission.charges import Use, tax_on
from tripplan.planning.admission.constraints import Block, Board, Role
from tripplan.planning.admission.purchase_plans import PurchasePlan
from tripplan.planning.admission.result import BesideEntry, Purchase
from tripplan.planning.admission.terms.registry import terms_of
from tripplan.values.money import Money, minor_digits


@dataclass(frozen=True)
class EntryLine:
    """One line of the order that lets people in.

    Attributes:
        source: the block it belongs to.
        name: as the order shows it.
        quantity: how many.
        price: fine price of one.
        people: positions in the party, in order.
        role: how they come in.
        by_head: whether each of its people has one of it, and so the same share.
    """

    source: int
    name: str
    quantity: int
    price: int
    people: tuple[int, ...]
    role: Role
    by_head: bool


def entry_lines(board: Board, way: PurchasePlan) -> tuple[EntryLine, ...]:
    """The lines of an order that let people in; of a kind, who stands first in the party comes in first."""
    waiting = [list(kind.people) for kind in board.kinds]
    lines: list[EntryLine] = []
    for use in way.solution.uses:
        groups: dict[tuple[Role, int], list[int]] = {}
        block = board.blocks[use.source]
        for role, kind, count in use.people:
            price = block.price(role, kind)
            groups.setdefault((role, price), []).extend(waiting[kind][:count])
            del waiting[kind][:count]
        for (role, price), people in groups.items():
            lines.append(_line(block, use, role, price, tuple(sorted(people))))
    return tuple(lines)


def _line(block: Block, use: Use, role: Role, price: int, people: tuple[int, ...]) -> EntryLine:
    name, quantity, by_head = terms_of(block.offer).line(role), len(people), True
    if role is Role.SEAT and block.other_place is not None:
        name += f" ({block.other_place})"
    elif role is Role.SEAT:
        quantity, price, by_head = use.units, block.unit_price or 0, False
    return EntryLine(use.source, name, quantity, price, people, role, by_head)


def _rule(block: Block, role: Role, currency: str) -> str:
    """The rule by which a line lets people in."""
    if role is Role.SEAT and block.other_place is not None:
        return elsewhere_sentence(block.offer, block.other_place, block.percent_off)
    if role is Role.SEAT and isinstance(block.offer, Pass) and block.held is not None:
        return held_sentence(block.offer, block.held.valid_until)
    return terms_of(block.offer).rule(role, currency)


def purchases(
    place: Place, board: Board, way: PurchasePlan, vouchers: Sequence[Voucher], party: Sequence[Member]
) -> tuple[tuple[Purchase, ...], Money]:
    """The whole order and its total.

    Returns:
        Entry, then fees, voucher and tax; the total in whole coins, which is the sum of the lines.
    """
    currency = place.currency
    coin = 10 ** (board.fine_digits - minor_digits(currency))
    rows: list[tuple[str, int, Fraction, tuple[str, ...], str]] = [
        (
            line.name,
            line.quantity,
            Fraction(line.price, coin),
            tuple(party[position].name for position in line.people),
            _rule(board.blocks[line.source], line.role, currency),
        )
        for line in entry_lines(board, way)
    ]
    on_entry, on_fees = bool(tax_on(place, "entry")), bool(tax_on(place, "fees"))
    taxed = [on_entry] * len(rows)
    for charged in way.order.fees:
        rows.append(
            (charged.fee.name, charged.quantity, charged.price, (), fee_sentence(charged.fee, currency))
        )
        taxed.append(on_fees)
    if way.voucher is not None:
        voucher = vouchers[way.voucher]
        rows.append((voucher.name, 1, -way.order.off, (), voucher_sentence(voucher, currency)))
        taxed.append(on_entry)
    exact = [quantity * price for _, quantity, price, _, _ in rows]
    if place.sales_tax is not None and way.order.tax:
        rows.append(("Sales tax", 1, way.order.tax, (), tax_sentence(place.sales_tax)))
        totals = _with_tax(exact, taxed, Fraction(place.sales_tax.percent) / 100, way.order.tax)
    else:
        totals = whole_coins(exact)
    lines = tuple(
        Purchase(name, quantity, exact_money(price, currency), Money.from_minor(total, currency), who, rule)
        for (name, quantity, price, who, rule), total in zip(rows, totals, strict=True)
    )
    return lines, Money.from_minor(sum(totals), currency)


def total_of(way: PurchasePlan, currency: str) -> Money:
    """What a way in costs, to the smallest coin; the same as the sum of the lines of `purchases`."""
    return Money.from_minor(whole_coins([way.order.total])[0], currency)


def exact_money(coins: Fraction, currency: str) -> Money:
    """An exact amount in smallest coins as money; every amount on a card has finitely many decimals."""
    whole = Money.from_minor(coins.numerator, currency)
    return Money(whole.amount / coins.denominator, currency)


def _with_tax(amounts: Sequence[Fraction], taxed: Sequence[bool], rate: Fraction, tax: Fraction) -> list[int]:
    """Round amounts and the tax on some of them so that they add up to the rounded sum.

    Of the ways to round what is taxed, up or down, one is taken whose own tax, rounded half up, leaves the
    whole as it is. Where there is none, the tax takes what is left over.

    Args:
        amounts: in the smallest coin, exact.
        taxed: which of them are taxed.
        rate: of the tax [-].
        tax: on them, exact.

    Returns:
        The amounts, then the tax.
    """
    on, off = (
        [amount for amount, one in zip(amounts, taxed, strict=True) if one is side] for side in (True, False)
    )
    with_tax, without = sum(on, Fraction(0)), sum(off, Fraction(0))
    total = _half_up(with_tax + without + tax)
    for base in dict.fromkeys((_half_up(with_tax), floor(with_tax), ceil(with_tax))):
        shown = _half_up(rate * base)
        rest = total - base - shown
        if floor(without) <= rest <= ceil(without):
            coins = {True: iter(_adding_up(on, base)), False: iter(_adding_up(off, rest))}
            return [*(next(coins[one]) for one in taxed), shown]
    return whole_coins([*amounts, tax])


def _adding_up(amounts: Sequence[Fraction], to: int) -> list[int]:
    """Round amounts so that they add up to one of the whole numbers on either side of their exact sum."""
    exact = sum(amounts, Fraction(0))
    rounding = next(way for way in (_half_up, floor, ceil) if way(exact) == to)
    return _rounded(amounts, rounding)


def _half_up(amount: Fraction) -> int:
    return (amount + Fraction(1, 2)).__floor__()


def whole_coins(amounts: Sequence[Fraction]) -> list[int]:
    """Round amounts so that their sum is the rounded sum: each running total is rounded half up.

    Args:
        amounts: in the smallest coin, exact.
    """
    return _rounded(amounts, _half_up)


def _rounded(amounts: Sequence[Fraction], rounding: Callable[[Fraction], int]) -> list[int]:
    """The differences of the rounded running totals."""
    running = [rounding(one) for one in accumulate(amounts, initial=Fraction(0))]
    return [after - before for before, after in pairwise(running)]


def prices_by_head(board: Board, way: PurchasePlan) -> dict[int, int]:
    """What each person's ticket costs in a way of single tickets only: fine price by position."""
    return {p: line.price for line in entry_lines(board, way) for p in line.people}


def shares(
    place: Place,
    board: Board,
    way: PurchasePlan,
    total: Money,
    party: Sequence[Member],
    alone: Mapping[int, int],
) -> Mapping[str, Money]:
    """Each person's part of the total, by name; the parts add up to it exactly.

    A ticket is its user's own. A bundle or pass is divided among those it lets in, in proportion to what they
    would pay with single tickets for everybody, evenly where nobody can say. Fees, voucher and tax follow in
    proportion. Coins left over from rounding go to those who lost most by it, in the order of the party.

    Args:
        place: whose currency is paid.
        board: the board the way belongs to.
        way: what is bought.
        party: who comes in.
        total: in whole coins.
        alone: fine price by position with single tickets for everybody; empty if there is no such way.
    """
    parts = [Fraction(0)] * len(party)
    for line in entry_lines(board, way):
        paid = line.price * line.quantity
        weights = [0 if line.by_head else alone.get(p, 0) for p in line.people]
        if not sum(weights):
            weights = [1] * len(line.people)
        for position, weight in zip(line.people, weights, strict=True):
            parts[position] += Fraction(paid * weight, sum(weights))
    everything = sum(parts)
    if not everything:
        return {member.name: Money.zero(place.currency) for member in party}
    exact = [part * total.minor / everything for part in parts]
    coins = [part.__floor__() for part in exact]
    by_loss = sorted(range(len(party)), key=lambda position: coins[position] - exact[position])
    for position in by_loss[: total.minor - sum(coins)]:
        coins[position] += 1
    return {
        member.name: Money.from_minor(part, place.currency) for member, part in zip(party, coins, strict=True)
    }


def parking_included(board: Board, way: PurchasePlan) -> bool:
    """Whether a pass of this place that the way uses includes parking."""
    used = [board.blocks[source] for source in way.solution.sources]
    return any(
        isinstance(block.offer, Pass) and block.offer.parking_included
        for block in used
        if block.other_place is None
    )


def beside_entry(place: Place, board: Board, way: PurchasePlan) -> tuple[BesideEntry, ...]:
    """For each add-on whose price hangs on the ticket, that of those who enter on one that changes it."""
    found: list[BesideEntry] = []
    lines = [line for line in entry_lines(board, way) if board.blocks[line.source].other_place is None]
    for add_on in place.add_ons:
        prices = {
            person: price
            for line in lines
            if (price := price_beside(add_on, board.blocks[line.source].offer)) != add_on.price
            for person in line.people
        }
        if prices:
            found.append((add_on.name, tuple(sorted(prices.items()))))
    return tuple(found)
