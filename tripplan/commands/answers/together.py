"""The JSON answer of `tripplan together`."""

from datetime import date

from tripplan.commands.answers.parts import (
    Answer,
    MoneyTold,
    PassedOverTold,
    PlaceTold,
    PurchaseTold,
    Told,
    money_or_null,
    money_told,
    opening,
    passed_over_told,
    place_told,
    purchase_told,
)
from tripplan.commands.question import Question
from tripplan.planning.admission.result import NoAdmission
from tripplan.planning.outing.outing import NoOuting
from tripplan.planning.together.shapes import Share, Together
from tripplan.planning.together.split import RULE


class OrderTold(Told):
    """One order at the till."""

    groups: tuple[str, ...]
    """The households it lets in."""
    total: MoneyTold
    purchases: tuple[PurchaseTold, ...]


class GroupShareTold(Told):
    """One household's part of the price."""

    group: str
    amount: MoneyTold
    paid: MoneyTold
    """In advance."""
    alone: MoneyTold | None
    """What it would have paid by itself; null where it could not have come in."""
    why_not_alone: tuple[str, ...]


class MorePeopleTold(Told):
    """The fewest more people with whom every household that pays would pay less."""

    count: int
    who: str
    """Adults or children."""
    total: MoneyTold
    """Of everybody then, the newcomers included."""
    amounts: tuple[MoneyTold, ...]
    """What each household would pay, in order."""
    offers: tuple[str, ...]


class AtTheTillTold(Told):
    """Who settles with the place on the day."""

    group: str
    amount: MoneyTold
    """Negative where money paid in advance comes back."""


class TransferTold(Told):
    """One payment between two households."""

    payer: str
    receiver: str
    amount: MoneyTold


class TogetherTold(Told):
    """An outing of several households."""

    orders: tuple[OrderTold, ...]
    total: MoneyTold
    saving: MoneyTold | None
    """Against each alone; null where somebody could not have come in alone."""
    shares: tuple[GroupShareTold, ...]
    """They add up to the total."""
    rule: str
    """How the price is divided."""
    group_offers: tuple[str, ...]
    """Reached only together."""
    more: tuple[MorePeopleTold, ...]
    people: int
    seats: int
    seats_missing: int
    at_the_till: AtTheTillTold | None
    """Null where everything is paid."""
    transfers: tuple[TransferTold, ...]
    cautions: tuple[str, ...]


class TogetherAnswer(Answer):
    """Several households at one place on one day; `party` is the own one's."""

    place: PlaceTold
    day: date
    outing: TogetherTold | None
    """Null where it cannot be."""
    passed_over: PassedOverTold | None
    """Why it cannot be; null where it can."""


def together_answer(question: Question, answer: Together | NoOuting) -> TogetherAnswer:
    """Several households at one place."""
    (place,) = question.places
    return TogetherAnswer(
        **opening(question),
        place=place_told(place),
        day=question.span.first,
        outing=_together(answer) if isinstance(answer, Together) else None,
        passed_over=passed_over_told(answer) if isinstance(answer, NoOuting) else None,
    )


def _together(outing: Together) -> TogetherTold:
    till = outing.at_the_till
    return TogetherTold(
        orders=tuple(
            OrderTold(
                groups=order.groups,
                total=money_told(order.admission.total),
                purchases=tuple(map(purchase_told, order.admission.purchases)),
            )
            for order in outing.orders
        ),
        total=money_told(outing.total),
        saving=money_or_null(outing.saving),
        shares=tuple(map(_group_share, outing.shares)),
        rule=RULE,
        group_offers=outing.group_offers,
        more=tuple(
            MorePeopleTold(
                count=more.count,
                who=more.who,
                total=money_told(more.total),
                amounts=tuple(map(money_told, more.amounts)),
                offers=more.offers,
            )
            for more in outing.more
        ),
        people=outing.seats.people,
        seats=outing.seats.seats,
        seats_missing=outing.seats.missing,
        at_the_till=None if till is None else AtTheTillTold(group=till.group, amount=money_told(till.amount)),
        transfers=tuple(
            TransferTold(payer=one.payer, receiver=one.receiver, amount=money_told(one.amount))
            for one in outing.transfers
        ),
        cautions=outing.cautions,
    )


def _group_share(share: Share) -> GroupShareTold:
    alone = share.alone
    return GroupShareTold(
        group=share.group,
        amount=money_told(share.amount),
        paid=money_told(share.paid),
        alone=None if isinstance(alone, NoAdmission) else money_told(alone.total),
        why_not_alone=alone.reasons if isinstance(alone, NoAdmission) else (),
    )
