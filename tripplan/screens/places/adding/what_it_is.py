"""Telling apart what somebody put into the one field: an idea, a card, a saved page, or a text to read."""

import re
import tomllib
from enum import Enum

from tripplan.reading.board import BoardRead, read_board
from tripplan.reading.idea_line import read_idea
from tripplan.reading.saved_page import is_page

_CARD_KEYS = frozenset({"offers", "opening", "where", "prices_read", "places"})
_HEADING = re.compile(
    r"(?:admissions?|prices?|tickets?|rates?|hours?|opening (?:hours|times)|fees?|visit(?: us)?)\b",
    re.IGNORECASE,
)
_LONGEST_HEADING = 60


class What(Enum):
    """What a text is."""

    NOTHING = "nothing"
    IDEA = "an idea"
    CARD = "a card"
    PAGE = "a saved page"
    TEXT = "a text with prices or hours"


def what_is(text: str, country: str) -> What:
    """What a text is, by what stands in it.

    Args:
        text: as typed or pasted.
        country: ISO 3166-1 alpha-2 code of the household.
    """
    if not text.strip():
        return What.NOTHING
    if is_card(text.encode()):
        return What.CARD
    if is_page(text.encode()):
        return What.PAGE
    line = read_idea(text)
    if line is not None and not _is_priced(read_board(text, country)):
        return What.IDEA
    return What.TEXT


def is_card(content: bytes) -> bool:
    """Whether a file is a place card, or several, whatever faults it has."""
    try:
        values = tomllib.loads(content.decode("utf-8-sig"))
    except (ValueError, RecursionError):
        return bool(re.search(rb"(?m)^\[\[?(?:offers|opening|where|places)\b", content))
    return bool(values.keys() & _CARD_KEYS)


def _is_priced(board: BoardRead) -> bool:
    """Whether it is a price board or hours; one price without a visitor's word may be a parent's guess."""
    return (
        bool(board.opening_hours)
        or len(board.offers) > 1
        or any(one.offer.name != "Entry" for one in board.offers)
    )


def name_in(text: str) -> str:
    """The name that a pasted text begins with, on a line of its own; empty where it has none."""
    lines = [line.strip() for line in text.strip().splitlines() if line.strip()]
    if len(lines) < 2:
        return ""
    first = lines[0].strip(" #*:")
    plain = (
        len(first) <= _LONGEST_HEADING and not re.search(r"[\d$€£:|]", first) and not _HEADING.match(first)
    )
    return first if plain else ""
