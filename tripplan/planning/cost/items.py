"""The items of a total, and how their ranges add up."""

from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass
from decimal import Decimal
from functools import cached_property

from tripplan.language.sentences import Fact
from tripplan.values.cost_kind import CostKind
from tripplan.values.money import Money, MoneyRange, total
from tripplan.values.ranges import Source

_ORDER = tuple(CostKind)


@dataclass(frozen=True)
class Swing:
    """How far one cause may move an amount.

    Attributes:
        cause: what moves it, such as 'fuel price'; equal causes move together, here and in other outings.
        below: how much less it may be, at the low end of the cause's middle 90 %.
        above: how much more, at its high end.
    """

    cause: str
    below: Money
    above: Money


@dataclass(frozen=True)
class CostItem:
    """One item of the total.

    Attributes:
        kind: what the money goes to.
        label: what it is for, such as 76 mi there and back at 24 mpg.
        likely: the best guess, to the smallest coin; unknown is None, never zero.
        source: where the figure comes from.
        swings: what moves it; none where it is exact or unknown.
    """

    kind: CostKind
    label: Fact
    likely: Money | None
    source: Source
    swings: tuple[Swing, ...] = ()

    @cached_property
    def amount(self) -> MoneyRange | None:
        """What it may turn out to be, by all that moves it; unknown is None, never zero."""
        if self.likely is None:
            return None
        return _spread(self.likely, [(swing.below.amount, swing.above.amount) for swing in self.swings])

    @property
    def least(self) -> Decimal:
        """The low end of `amount`, nothing where that is unknown."""
        if self.likely is None:
            return Decimal(0)
        return _low(self.likely, [swing.below.amount for swing in self.swings]).amount


@dataclass(frozen=True)
class OutingCost:
    """What the outing costs.

    Attributes:
        items: everything it is made of, in order of kind.
        total: the sum of the known items; its ends allow for items moving together by cause.
        unknown: labels of the items that nobody knows; while there are any, the total is a lower bound.
    """

    items: tuple[CostItem, ...]
    total: MoneyRange
    unknown: tuple[Fact, ...]


def known_item(
    kind: CostKind, label: Fact, likely: Money, source: Source, swings: Iterable[Swing] = ()
) -> CostItem:
    """An item with its likely amount rounded to the smallest coin, and with what really moves it."""
    felt = tuple(swing for swing in swings if swing.below.amount or swing.above.amount)
    return CostItem(kind, label, likely.rounded(), source, felt)


def give_or_take(cause: str, amount: Money, percent: Decimal) -> Swing:
    """A swing by the same share of an amount to either side [%]."""
    part = amount * (percent / 100)
    return Swing(cause, part, part)


def add_up(items: Iterable[CostItem], currency: str) -> OutingCost:
    """The total of items.

    What one cause does to several items adds up in full, as they move together; different causes add up as
    the root of the sum of squares, on either side of the likely total, as they seldom all go one way. No
    total is below the least of its items together: what is free cannot make up for what is paid.

    Args:
        items: in any order.
        currency: ISO 4217 code of every amount.

    Raises:
        CurrencyMismatch: an amount is in another currency.
    """
    in_order = tuple(sorted(items, key=lambda item: _ORDER.index(item.kind)))
    likely = total((item.likely for item in in_order if item.likely is not None), currency)
    by_cause: dict[str, tuple[Decimal, Decimal]] = {}
    for item in in_order:
        for swing in item.swings:
            below, above = by_cause.get(swing.cause, (Decimal(0), Decimal(0)))
            by_cause[swing.cause] = (below + swing.below.amount, above + swing.above.amount)
    unknown = tuple(item.label for item in in_order if item.likely is None)
    least = min(sum((item.least for item in in_order), Decimal(0)), likely.amount)
    return OutingCost(in_order, _spread(likely, by_cause.values(), Money(least, currency)), unknown)


def _spread(
    likely: Money, swings: Collection[tuple[Decimal, Decimal]], least: Money | None = None
) -> MoneyRange:
    """A range about a likely amount, from independent swings below and above; never below the least."""
    low = _low(likely, [below for below, _ in swings])
    if least is not None:
        low = max(low, least)
    if not swings:
        return MoneyRange(low, likely, likely)
    above = _root_of_squares([above for _, above in swings])
    return MoneyRange(low, likely, Money(likely.amount + above, likely.currency).rounded())


def _low(likely: Money, swings: Sequence[Decimal]) -> Money:
    """The low end of a likely amount that independent causes may make less; never less than nothing."""
    if not swings:
        return likely
    return Money(max(Decimal(0), likely.amount - _root_of_squares(swings)), likely.currency).rounded()


def _root_of_squares(amounts: Sequence[Decimal]) -> Decimal:
    if len(amounts) == 1:
        return abs(amounts[0])
    return sum((amount * amount for amount in amounts), Decimal(0)).sqrt()
