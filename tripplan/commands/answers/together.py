"""The JSON answer of `tripplan together`."""

from dataclasses import dataclass
from datetime import date

from tripplan.commands.answers.common import OPENING, Answer
from tripplan.commands.answers.json_keys import json_keys, json_step
from tripplan.documents.places.place import Place
from tripplan.language.sentences import Fact, fact
from tripplan.planning.admission.result import NoAdmission
from tripplan.planning.outing.outing import NoOuting
from tripplan.planning.together.shapes import Share, TillOrder, Together
from tripplan.values.money import Money


@dataclass(frozen=True, kw_only=True)
class TogetherAnswer(Answer):
    """Several households at one place on one day; `party` is the own one's.

    Attributes:
        place: where to.
        day: when.
        outing: null where it cannot be.
        passed_over: why it cannot be; null where it can.
    """

    place: Place
    day: date
    outing: Together | None
    passed_over: NoOuting | None


@json_step
def division_rule(_: Together) -> Fact:
    """How the price is divided."""
    return fact("together-rule")


@json_step
def price_alone(share: Share) -> Money | None:
    """What it would have paid by itself; null where it could not have come in."""
    return None if isinstance(share.alone, NoAdmission) else share.alone.total


@json_step
def why_not_alone(share: Share) -> tuple[Fact, ...]:
    """Why it could not have come in by itself."""
    return share.alone.reasons if isinstance(share.alone, NoAdmission) else ()


json_keys(TogetherAnswer, f"{OPENING} place day outing passed_over")
json_keys(
    Together,
    "orders total saving shares rule=division_rule group_offers more people=seats.people seats=seats.seats "
    "seats_missing=seats.missing at_the_till transfers cautions",
)
json_keys(TillOrder, "groups total=admission.total purchases=admission.purchases")
json_keys(Share, "group amount paid alone=price_alone why_not_alone")
