"""What several answers have in common: how they begin, money, places, and what cannot be."""

from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from typing import Any, Literal

from tripplan.commands.answers.json_keys import json_keys, json_step
from tripplan.commands.input.question import Question
from tripplan.documents.places.place import Place
from tripplan.language.sentences import Fact
from tripplan.planning.outing.outing import NoOuting
from tripplan.values.money import Money, MoneyRange
from tripplan.values.ranges import Origin, Source

OPENING = (
    "format data=question.whose household=question.family.household.name party=question.party.name "
    "today=question.today "
)
"""The keys that every answer of the planning begins with."""


@dataclass(frozen=True, kw_only=True)
class Answer:
    """What every answer of the planning begins with.

    Attributes:
        format: version of the answers' keys; since 2, facts are told as code, values and text.
        question: what is asked about.
    """

    format: Literal[2] = 2
    question: Question


@dataclass(frozen=True, kw_only=True)
class RecordsAnswer:
    """What every answer about what is on record begins with.

    Attributes:
        format: version of the answers' keys.
        data: whose records: the invented family's or the own ones.
        today: the date at home.
    """

    format: Literal[1] = 1
    data: Literal["demo", "own"]
    today: date


@dataclass(frozen=True)
class Weighed:
    """Money plus what the household says the nuisances of the day are worth; what days are ranked by.

    Attributes:
        money: the amount.
        source: where it comes from.
    """

    money: Money
    source: Source


_WEIGHED = Source(
    Origin.PARENT,
    "the likely total plus what the household says lost naps, a full house, driving and short visits weigh",
)


@json_step
def weighed(money: Money) -> Weighed:
    """What days are ranked by, with its source."""
    return Weighed(money, _WEIGHED)


@json_step
def coins(money: Money) -> Decimal:
    """The amount with the digits that are paid, and with more where it is finer than a coin."""
    rounded = money.rounded().amount
    return rounded if rounded == money.amount else money.amount


@json_step
def zone_name(place: Place) -> str:
    """The time zone's IANA name."""
    return place.where.zone.key


@json_step
def json_values(found: Fact) -> dict[str, Any]:
    """The values that belong to the code, by name; what they mean, its sentence says."""
    return dict(found.values)


json_keys(Fact, "code values=json_values text=text")
json_keys(Money, "amount=coins currency")
json_keys(MoneyRange, "low=low.coins likely=likely.coins high=high.coins currency")
json_keys(Weighed, "amount=money.coins currency=money.currency source")
json_keys(
    Place,
    "id name town=where.town country=where.country subdivision=where.subdivision time_zone=zone_name",
)
json_keys(NoOuting, "place=place.id day reasons")
