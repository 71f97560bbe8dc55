"""What several JSON answers have in common: money, places, sources, and how an answer begins."""

from datetime import date
from decimal import Decimal
from typing import Any, Literal

from pydantic import BaseModel, ConfigDict

from tripplan.commands.question import Question
from tripplan.documents.calendars.calendars import DateSpan
from tripplan.documents.places.place import Place
from tripplan.planning.admission.result import Purchase
from tripplan.planning.outing.outing import NoOuting
from tripplan.values.money import Money, MoneyRange
from tripplan.values.ranges import Origin, Source


class Told(BaseModel):
    """A part of an answer."""

    model_config = ConfigDict(frozen=True, extra="forbid", use_attribute_docstrings=True)


class SourceTold(Told):
    """Where a figure came from."""

    origin: Origin
    """The kind of source."""
    text: str
    """In words."""


class MoneyTold(Told):
    """An exact amount."""

    amount: Decimal
    """In the currency's main unit, negative for what is taken off."""
    currency: str
    """ISO 4217 code."""


class MoneyRangeTold(Told):
    """What an amount may turn out to be: low and high bound the middle 90 %; all equal where it is known."""

    low: Decimal
    likely: Decimal
    high: Decimal
    currency: str
    """ISO 4217 code."""


class FeltTold(MoneyTold):
    """Money plus what the household says the nuisances of the day are worth; what days are ranked by."""

    source: SourceTold


class PlaceTold(Told):
    """Which place."""

    id: str
    name: str
    town: str
    country: str
    """ISO 3166-1 code."""
    subdivision: str
    """ISO 3166-2 code without the country; may be empty."""
    time_zone: str
    """IANA name."""


class PurchaseTold(Told):
    """One line of the order at the till."""

    name: str
    quantity: int
    unit_price: MoneyTold
    total: MoneyTold
    covers: tuple[str, ...]
    """Who goes in on it; empty for fees, taxes, vouchers."""
    rule: str
    """The offer's rule as a sentence."""


class PassedOverTold(Told):
    """Why a place cannot be visited on a day."""

    place: str
    """Its id."""
    day: date
    reasons: tuple[str, ...]


class DaysTold(Told):
    """A span; both ends count."""

    first: date
    last: date


class Answer(Told):
    """What every answer of the planning begins with."""

    format: Literal[1] = 1
    """Version of the answers' keys."""
    data: Literal["demo", "own", "files"]
    """Whose household: the invented one, the one on record, or the one from a file."""
    household: str
    party: tuple[str, ...]
    today: date


class RecordsAnswer(Told):
    """What every answer about what is on record begins with."""

    format: Literal[1] = 1
    """Version of the answers' keys."""
    data: Literal["demo", "own"]
    """Whose records: the invented family's or the own ones."""
    today: date


_FELT = (
    "the likely total plus what the household says lost naps, a full house, driving and short visits weigh"
)


def opening(question: Question) -> dict[str, Any]:
    """What every answer of the planning begins with."""
    return {
        "data": question.whose,
        "household": question.family.household.name,
        "party": tuple(member.name for member in question.party),
        "today": question.today,
    }


def span_told(span: DateSpan) -> DaysTold:
    """A span of days."""
    return DaysTold(first=span.first, last=span.last)


def passed_over_told(missed: NoOuting) -> PassedOverTold:
    """Why a place cannot be visited on a day."""
    return PassedOverTold(place=missed.place.id, day=missed.day, reasons=missed.reasons)


def place_told(place: Place) -> PlaceTold:
    """Which place."""
    where = place.where
    return PlaceTold(
        id=place.id,
        name=place.name,
        town=where.town,
        country=where.country,
        subdivision=where.subdivision,
        time_zone=where.zone.key,
    )


def source_told(source: Source) -> SourceTold:
    """Where a figure came from."""
    return SourceTold(origin=source.origin, text=source.text)


def money_told(money: Money) -> MoneyTold:
    """An exact amount."""
    return MoneyTold(amount=_coins(money), currency=money.currency)


def felt_told(money: Money) -> FeltTold:
    """What days are ranked by."""
    return FeltTold(
        amount=_coins(money),
        currency=money.currency,
        source=SourceTold(origin=Origin.PARENT, text=_FELT),
    )


def money_range_told(amounts: MoneyRange) -> MoneyRangeTold:
    """What an amount may turn out to be."""
    return MoneyRangeTold(
        low=_coins(amounts.low),
        likely=_coins(amounts.likely),
        high=_coins(amounts.high),
        currency=amounts.currency,
    )


def purchase_told(purchase: Purchase) -> PurchaseTold:
    """One line of the order at the till."""
    return PurchaseTold(
        name=purchase.name,
        quantity=purchase.quantity,
        unit_price=money_told(purchase.unit_price),
        total=money_told(purchase.total),
        covers=purchase.covers,
        rule=purchase.rule,
    )


def money_or_null(money: Money | None) -> MoneyTold | None:
    """An exact amount, or null where it is not known."""
    return None if money is None else money_told(money)


def _coins(money: Money) -> Decimal:
    """The amount with the digits that are paid, and with more where it is finer than a coin."""
    rounded = money.rounded().amount
    return rounded if rounded == money.amount else money.amount
