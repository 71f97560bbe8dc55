"""Reading tickets that are good at two places, as in 'Combo ticket with the Old Mill: adults $20'."""

import re
from collections.abc import Mapping
from dataclasses import dataclass

from tripplan.reading.prices.facts import PRICE, WHO, EntryPrice
from tripplan.reading.prices.prices import read_prices
from tripplan.reading.prices.tokens import tokens
from tripplan.reading.vocabulary import NUMBER, number_from, parted

_HEAD = re.compile(
    r"\s*(?:(?:our|the|unser\w*|die|das) )?(?P<name>(?:combo|combination|combined|joint|dual|two)"
    r"(?:[- ](?:site|venue|place|park|museum|attraction))?[- ](?:tickets?|admission)"
    r"|kombi(?:nations)?(?:karten?|tickets?)|verbund(?:karten?|tickets?))\b",
    re.IGNORECASE,
)
_DAYS = re.compile(
    rf"[,;(]?\s*\b(?:(?:valid|good|gültig)\b[^.;,)|]*?(?P<a>{NUMBER})\s*(?:consecutive )?(?:days?|tagen?)"
    rf"|(?:within|innerhalb von) (?P<b>{NUMBER}) (?:days?|tagen?)|(?P<c>{NUMBER}) (?:days?|tage) gültig"
    r"|(?:on )?(?:the |am )?(?P<same>same day|selben tag|gleichen tag))\)?",
    re.IGNORECASE,
)


@dataclass(frozen=True)
class TwoPlaces:
    """A ticket for two places.

    Attributes:
        name: as the text calls it.
        where: what the text says of the other place, word for word; may be empty.
        days: within how many days both are visited [days]; None where the text does not say it.
        prices: who pays how much.
        signs: the money signs and words met.
        words: where it was read.
    """

    name: str
    where: str
    days: int | None
    prices: tuple[EntryPrice, ...]
    signs: frozenset[str]
    words: str


def parted_two_places(text: str) -> tuple[tuple[TwoPlaces, ...], str]:
    """What a text says of tickets for two places; and all the rest of it."""
    return parted(text, _read)


def place_named(where: str, places: Mapping[str, str]) -> str | None:
    """The id of the place that a text names; None where it is none of these, or more than one.

    Args:
        where: what the text says of the other place.
        places: names by id.
    """
    there = {_stem(word) for word in _words(where)}
    meant = [
        id_ for id_, name in places.items() if (own := {_stem(w) for w in _words(name)}) and own <= there
    ]
    return meant[0] if len(meant) == 1 else None


def _read(said: str) -> TwoPlaces | None:
    head = _HEAD.match(said)
    if head is None:
        return None
    days = _DAYS.search(said, head.end())
    behind = said[head.end() :] if days is None else said[head.end() : days.start()] + said[days.end() :]
    pieces = list(tokens(behind))
    first = next((piece.start for piece in pieces if piece.kind in (*PRICE, *WHO)), len(behind))
    where, priced = behind[:first].strip(" :-(),"), behind[first:]
    if not any(piece.kind in WHO for piece in pieces):
        priced = f"Admission: {priced}"
    read = read_prices(priced)
    if not read.entry or read.not_understood or read.families or read.passes:
        return None
    count = None
    if days is not None:
        told = days["a"] or days["b"] or days["c"]
        count = number_from(told) if told else 1
    return TwoPlaces(head["name"].strip(), where, count, read.entry, read.signs, said.strip())


def _words(text: str) -> list[str]:
    return [word for word in re.findall(r"[^\W\d_]{3,}", text.casefold()) if word not in _SMALL]


_SMALL = {"the", "and", "with", "der", "die", "das", "dem", "den", "mit", "und", "for", "our"}
_STEM = 4
"""So many letters tell words apart whose endings differ by case."""


def _stem(word: str) -> str:
    return word[: max(_STEM, len(word) - 1)]
