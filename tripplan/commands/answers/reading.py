"""The JSON answer of `tripplan read`."""

from dataclasses import dataclass
from decimal import Decimal
from typing import Any, Literal

from tripplan.commands.answers.json_keys import json_keys, json_step
from tripplan.reading.board import AddOnRead, BoardRead, OfferRead


@dataclass(frozen=True)
class ReadAnswer:
    """What a text or a saved page says of a place.

    Attributes:
        board: prices and hours.
        name: what the place is called; empty where a text names none.
        address: street, town, state and ZIP code on one line; may be empty.
        telephone: may be empty.
        web: address of its page; may be empty.
        format: version of the answers' keys.
    """

    board: BoardRead
    name: str = ""
    address: str = ""
    telephone: str = ""
    web: str = ""
    format: Literal[1] = 1


@json_step
def as_in_a_card(read: OfferRead) -> dict[str, Any]:
    """An offer as a place card holds it, with the words it was read from."""
    offer = {"kind": read.offer.kind, **read.offer.model_dump(exclude_defaults=True)}
    return {**_numbers(offer), "words": read.words}


@json_step
def as_on_a_card(read: AddOnRead) -> dict[str, Any]:
    """Something beside entry as a place card holds it, with the words it was read from."""
    return {**_numbers(read.add_on.model_dump(exclude_defaults=True)), "words": read.words}


@json_step
def as_number(amount: Decimal | None) -> float | int | None:
    """An amount of money as a number, as a card's file writes it."""
    if amount is None:
        return None
    return int(amount) if amount == amount.to_integral_value() else float(amount)


def _numbers(value: Any) -> Any:  # noqa: ANN401 - whatever an offer is made of
    if isinstance(value, Decimal):
        return as_number(value)
    if isinstance(value, dict):
        return {name: _numbers(one) for name, one in value.items()}
    if isinstance(value, list | tuple):
        return [_numbers(one) for one in value]
    return value if isinstance(value, bool | int | float | str) or value is None else str(value)


json_keys(
    ReadAnswer,
    "format name address telephone web currency=board.currency offers=board.offers.as_in_a_card"
    " add_ons=board.add_ons.as_on_a_card"
    " opening_hours=board.opening_hours last_entry=board.last_entry"
    " last_entry_minutes_before_close=board.last_entry_minutes_before_close parking=board.parking.as_number"
    " not_understood=board.not_understood doubts=board.doubts",
)
