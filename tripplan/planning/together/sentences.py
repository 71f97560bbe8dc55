"""What there is to say of an outing of several households, the same on screens and command line."""

from collections.abc import Sequence

from tripplan.language.sentences import Fact, fact
from tripplan.planning.admission.result import NoAdmission
from tripplan.planning.together.shapes import AtTheTill, CarSeats, MorePeople, Share, Together, Transfer
from tripplan.values.money import Money


def together_facts(outing: Together) -> tuple[Fact, ...]:
    """Everything: price, each household's part and the rule, who might come along, seats, payments."""
    return (
        *total_facts(outing),
        *outing.rates,
        *map(share_fact, outing.shares),
        *rules(outing),
        *(more_fact(more, outing.shares) for more in outing.more),
        seats_fact(outing.seats),
        *outing.cautions,
        *settling_facts(outing),
    )


def total_facts(outing: Together) -> tuple[Fact, ...]:
    """What entry costs in all, how it is bought, and what that saves; which offers are reached together."""
    how = fact("together-one-household")
    if len(outing.orders) < len(outing.shares):
        how = fact("together-one-order")
    elif len(outing.shares) > 1:
        how = fact("together-order-each")
    reached = (fact("together-reached", offers=_offers(outing.group_offers)),) if outing.group_offers else ()
    if outing.saving is not None and outing.saving.minor > 0:
        return (fact("together-entry-saves", total=outing.total, how=how, saves=outing.saving), *reached)
    return (fact("together-entry", total=outing.total, how=how), *reached)


def rules(outing: Together) -> tuple[Fact, ...]:
    """How the price is divided."""
    found = [fact("together-rule")] if outing.total.minor else []
    if any(isinstance(share.alone, NoAdmission) for share in outing.shares):
        found.append(fact("together-rule-not-alone"))
    return tuple(found)


def share_fact(share: Share) -> Fact:
    """One household's part against what it would have paid alone."""
    part = fact("together-pays", group=share.group, amount=share.amount)
    if share.paid.minor:
        part = fact("together-pays-paid", group=share.group, amount=share.amount, paid=share.paid)
    if isinstance(share.alone, NoAdmission):
        return fact(
            "together-not-alone",
            part=part,
            why="; ".join(one.text.rstrip(".") for one in share.alone.reasons),
        )
    if share.alone.total == share.amount:
        return fact("together-as-alone", part=part)
    return fact("together-instead", part=part, alone=share.alone.total)


def more_fact(more: MorePeople, shares: Sequence[Share]) -> Fact:
    """With how many more people every household pays less, and how much."""
    who = (
        fact("together-more-adults", count=more.count)
        if more.who == "adult"
        else fact("together-more-children", count=more.count)
    )
    parts = tuple(
        fact("together-less", group=share.group, amount=amount, before=share.amount)
        for share, amount in zip(shares, more.amounts, strict=True)
        if share.amount.minor
    )
    if more.offers:
        return fact("together-more-reached", who=who, offers=_offers(more.offers), parts=parts)
    return fact("together-more", who=who, parts=parts)


def seats_fact(seats: CarSeats) -> Fact:
    """Whether the cars have seats for everybody."""
    people = fact("together-people", count=seats.people)
    if seats.missing:
        return fact("together-seats-missing", missing=seats.missing, people=people, seats=seats.seats)
    return fact("together-seats", seats=seats.seats, people=people)


def settling_facts(outing: Together) -> tuple[Fact, ...]:
    """Who pays the rest at the till, and who then pays whom."""
    till = () if outing.at_the_till is None else (_till(outing.at_the_till),)
    return (
        *till,
        *(map(_transfer, outing.transfers) if outing.transfers else [fact("together-nobody-owes")]),
    )


def _offers(names: Sequence[str]) -> tuple[Fact, ...]:
    return tuple(fact("together-offer", name=name) for name in names)


def _till(till: AtTheTill) -> Fact:
    if till.amount.minor < 0:
        back = Money(-till.amount.amount, till.amount.currency)
        return fact("together-paid-too-much", back=back, group=till.group)
    return fact("together-pays-rest", group=till.group, amount=till.amount)


def _transfer(transfer: Transfer) -> Fact:
    return fact("together-transfer", payer=transfer.payer, receiver=transfer.receiver, amount=transfer.amount)
