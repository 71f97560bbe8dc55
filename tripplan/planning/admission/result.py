"""What the admission calculator answers."""

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal

from tripplan.language.sentences import Fact
from tripplan.values.money import Money

BesideEntry = tuple[str, tuple[tuple[int, Decimal], ...]]
"""The name of an add-on; by position in the party, its price with the ticket."""


@dataclass(frozen=True)
class Purchase:
    """One line of the order at the till.

    Attributes:
        name: the offer, fee, tax or voucher as the card calls it; people beyond a bundle's seats, a pass's
            guests and free leaders stand on lines of their own, such as 'Family ticket: extra person'.
        quantity: how many of it; 1 for fees on the order, vouchers and taxes.
        unit_price: price of one, before the order's fees and tax; negative for a voucher; exact.
        total: quantity times unit price, in whole coins, so that an order's lines add up to its total.
        covers: names of the people this line lets in; empty for fees, taxes, vouchers.
        rule: the offer's rule in one plain sentence.
    """

    name: str
    quantity: int
    unit_price: Money
    total: Money
    covers: tuple[str, ...]
    rule: str


@dataclass(frozen=True)
class OtherWay:
    """Another legal way in.

    Attributes:
        purchases: what would be bought.
        total: what it costs in all.
        costs_more: by how much it exceeds the cheapest, with what is wanted beside entry.
    """

    purchases: tuple[Purchase, ...]
    total: Money
    costs_more: Money


@dataclass(frozen=True)
class Admission:
    """The cheapest legal set of offers that lets the whole party in.

    Attributes:
        purchases: what to buy: passes already held first, then in card order, then fees, voucher and tax.
        total: what it costs in all, fees and tax included, to the smallest coin.
        shares: each person's part of the total, by name; they add up to it exactly.
        other_ways: the next-best ways, cheapest first, at most two; each does without at least one offer of
            the cheapest way and of every other way before it.
        notes: what the parent should know: to book ahead, a proof to bring, an age in doubt.
        parking_included: whether a pass among the purchases includes parking.
        single_tickets: the obvious way, a single ticket for everybody; None where it is the cheapest way, or
            where somebody has no single ticket.
        why_not_single_tickets: why the obvious way is dearer, in words; empty where it is not.
        beside: for each add-on whose price hangs on the ticket, what it costs those who enter on one that
            changes it, by position in the party; 0 where it comes with the ticket.
    """

    purchases: tuple[Purchase, ...]
    total: Money
    shares: Mapping[str, Money]
    other_ways: tuple[OtherWay, ...]
    notes: tuple[str, ...]
    parking_included: bool = False
    single_tickets: OtherWay | None = None
    why_not_single_tickets: str = ""
    beside: tuple[BesideEntry, ...] = ()


@dataclass(frozen=True)
class EntryPrice:
    """What the cheapest way in costs, without what to buy.

    Attributes:
        total: as that of `Admission`.
        parking_included: whether a pass in it includes parking.
        beside: as that of `Admission`.
    """

    total: Money
    parking_included: bool
    beside: tuple[BesideEntry, ...] = ()


@dataclass(frozen=True)
class NoAdmission:
    """Nobody can let this party in legally with the offers on the card.

    Attributes:
        reasons: which rules forbid it, each naming the people it concerns.
    """

    reasons: tuple[Fact, ...]
