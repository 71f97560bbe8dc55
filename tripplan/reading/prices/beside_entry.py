"""Reading what is paid beside entry and is cheaper with a ticket, as in 'Carousel $3, $1 with admission'."""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from tripplan.reading.prices.facts import ENTRY_WORD, PRICE, WHO
from tripplan.reading.prices.tokens import Token, tokens
from tripplan.reading.vocabulary import parted

_WITH = re.compile(
    r"\b(?:(?:with|incl(?:uding|\.)?) (?:(?:an?|any|your|paid|regular|general|full|the) )*(?:[\w'-]+ ){0,2}?"
    r"(?:admissions?|entry|entrance|tickets?)|for (?:[\w'-]+ )?ticket[- ]?holders"
    r"|(?:mit|bei|zur|zum) (?:[\w-]+ )?\w*(?:eintritt\w*|ticket\w*|tageskarte))\b",
    re.IGNORECASE,
)
"""Who has paid entry."""
_LONGEST_NAME = 6
"""What is sold beside entry is named in so many words at most."""


@dataclass(frozen=True)
class BesideEntry:
    """Something beside entry with two prices.

    Attributes:
        name: what it is.
        price: without a ticket.
        with_ticket: with one; 0 is free.
        unit: the money sign or word, in small letters; may be empty.
        words: where it was read.
    """

    name: str
    price: Decimal
    with_ticket: Decimal
    unit: str
    words: str


def parted_beside_entry(text: str) -> tuple[tuple[BesideEntry, ...], str]:
    """What a text says of things beside entry that a ticket makes cheaper; and all the rest of it."""
    return parted(text, _read)


def _read(said: str) -> BesideEntry | None:
    condition = _WITH.search(said)
    if condition is None:
        return None
    pieces = list(tokens(said))
    prices = [piece for piece in pieces if piece.kind in PRICE]
    if len(prices) != 2:
        return None
    lower = _beside(said, condition, prices)
    begins = min(prices[0].start, condition.start())
    name = said[:begins].strip(" :-–(|.,")
    if lower is None or not _is_thing(name, [piece for piece in pieces if piece.end <= begins]):
        return None
    higher = next(price for price in prices if price is not lower)
    full, reduced = (price.facts.get("amount", Decimal(0)) for price in (higher, lower))
    if not (isinstance(full, Decimal) and isinstance(reduced, Decimal) and reduced < full):
        return None
    return BesideEntry(name, full, reduced, str(higher.facts.get("unit", "")), said.strip())


def _beside(said: str, condition: re.Match[str], prices: Sequence[Token]) -> Token | None:
    """The price that goes with the ticket: right before it, or else right behind."""
    begins, ends = condition.span()
    before = [one for one in prices if one.end <= begins and not said[one.end : begins].strip()]
    behind = [one for one in prices if one.start >= ends and not said[ends : one.start].strip(" :-")]
    near = before or behind
    return near[0] if len(near) == 1 else None


def _is_thing(name: str, pieces: Sequence[Token]) -> bool:
    """Whether it can be sold beside entry: neither a kind of visitor nor entry itself."""
    return (
        bool(name)
        and len(name.split()) <= _LONGEST_NAME
        and not any(piece.kind in (*WHO, "group") for piece in pieces)
        and not ENTRY_WORD.search(name)
    )
