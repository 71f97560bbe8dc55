"""What a text says of prices: of entry, of family tickets and passes, and what is taken off."""

import re
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal

from tripplan.reading.vocabulary import Person
from tripplan.values.ages import AgeBand


@dataclass(frozen=True)
class EntryPrice:
    """What one kind of visitor pays.

    Attributes:
        person: the kind of visitor.
        ages: as written, or as follows from the other prices; None where nobody says it.
        price: for each; 0 is free.
        highest: the upper end where a span of prices is given.
        conditions: what must hold beside, word for word.
        days: the days it is limited to, word for word; may be empty.
        group_of: sold only to so many together [people]; None for no minimum.
        words: where it was read.
        about: whether the text says that it is only about so much.
    """

    person: Person
    ages: AgeBand | None
    price: Decimal
    words: str
    highest: Decimal | None = None
    conditions: tuple[str, ...] = ()
    days: str = ""
    group_of: int | None = None
    about: bool = False

    @property
    def plain(self) -> bool:
        """Whether anybody of that kind may have it on any day."""
        return not (self.conditions or self.days or self.group_of)


@dataclass(frozen=True)
class FamilyPrice:
    """One price for a family; the counts are None where the text does not say them [people]."""

    price: Decimal
    words: str
    adults: int | None = None
    children: int | None = None
    people: int | None = None


@dataclass(frozen=True)
class PassPrice:
    """A pass for a year or a weekend; `people` is None where the text does not say for whom."""

    price: Decimal
    words: str
    yearly: bool = True
    people: int | None = None
    per_car: bool = False


@dataclass(frozen=True)
class PriceOff:
    """Something taken off: an amount or a percentage, for whom, and what must hold, word for word."""

    words: str
    person: Person = "anyone"
    ages: AgeBand | None = None
    amount: Decimal | None = None
    percent: int | None = None
    conditions: tuple[str, ...] = ()
    days: str = ""

    def taken_from(self, price: Decimal) -> Decimal:
        """What is left of a price; to the cent, halves up."""
        if self.percent is None:
            return price - (self.amount or 0)
        return (price * (100 - self.percent) / 100).quantize(Decimal("0.01"), ROUND_HALF_UP)


@dataclass(frozen=True)
class PricesRead:
    """All that was read of prices.

    Attributes:
        entry: who pays how much.
        families: prices for a family at once.
        passes: annual and weekend passes.
        off: what is taken off.
        parking: what leaving the car costs; None where it is not said.
        leader_free_per: one leader goes free for so many who pay [people]; None where it is not said.
        signs: the money signs and words met, in small letters.
        not_understood: statements with a price in them that were not read, word for word.
        in_part: statements of which something was read and something was not, word for word.
        passed_over: other statements, word for word.
    """

    entry: tuple[EntryPrice, ...] = ()
    families: tuple[FamilyPrice, ...] = ()
    passes: tuple[PassPrice, ...] = ()
    off: tuple[PriceOff, ...] = ()
    parking: Decimal | None = None
    leader_free_per: int | None = None
    signs: frozenset[str] = frozenset()
    not_understood: tuple[str, ...] = ()
    in_part: tuple[str, ...] = ()
    passed_over: tuple[str, ...] = ()


PRICE = ("money", "free")
AMOUNT = (*PRICE, "percent")
WHO = ("person", "ages", "family", "pass", "parking")
ENTRY_WORD = re.compile(
    r"\b(?:admission|entry|entrance|tickets?|fees?|prices?|costs?|fares?|eintritt\w*|preis\w*|kosten|general)\b",
    re.IGNORECASE,
)
