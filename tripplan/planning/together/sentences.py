"""An outing of several households in plain sentences, the same on screens and command line."""

from collections.abc import Sequence

from tripplan.language import wording
from tripplan.language.sentences import told
from tripplan.planning.admission.result import NoAdmission
from tripplan.planning.together.shapes import AtTheTill, CarSeats, MorePeople, Share, Together, Transfer
from tripplan.planning.together.split import NOT_ALONE_RULE, RULE
from tripplan.values.money import Money

_PLURAL = {"adult": "adults", "child": "children"}


def together_sentences(outing: Together) -> tuple[str, ...]:
    """Everything: price, each household's part and the rule, who might come along, seats, payments."""
    return (
        total_sentence(outing),
        *told(outing.rates),
        *(share_sentence(share) for share in outing.shares),
        *([RULE] if outing.total.minor else []),
        *([NOT_ALONE_RULE] if any(isinstance(s.alone, NoAdmission) for s in outing.shares) else []),
        *(more_sentence(more, outing.shares) for more in outing.more),
        seats_sentence(outing.seats),
        *told(outing.cautions),
        *settling_sentences(outing),
    )


def total_sentence(outing: Together) -> str:
    """What entry costs in all, how it is bought, and what that saves."""
    total = wording.money(outing.total)
    if len(outing.orders) < len(outing.shares):
        how = "in one order"
    elif len(outing.shares) > 1:
        how = "with an order for each household, which costs less than one for all"
    else:
        how = "for the household"
    saves = ""
    if outing.saving is not None and outing.saving.minor > 0:
        saves = f", {wording.money(outing.saving)} less than each alone"
    offers = [f"'{name}'" for name in outing.group_offers]
    reached = f" Together you reach {wording.listed(offers)}." if offers else ""
    return f"Entry costs {total} {how}{saves}.{reached}"


def share_sentence(share: Share) -> str:
    """One household's part against what it would have paid alone."""
    part = f"{share.group} pays {wording.money(share.amount)}"
    if share.paid.minor:
        part += f" ({wording.money(share.paid)} paid in advance)"
    if isinstance(share.alone, NoAdmission):
        reasons = "; ".join(reason.rstrip(".") for reason in share.alone.reasons)
        return f"{part}; alone they could not come in: {reasons}."
    alone = wording.money(share.alone.total)
    return f"{part}, as alone." if share.alone.total == share.amount else f"{part} instead of {alone} alone."


def more_sentence(more: MorePeople, shares: Sequence[Share]) -> str:
    """With how many more people every household pays less, and how much."""
    who = f"{more.count} more {more.who if more.count == 1 else _PLURAL[more.who]}"
    less = [
        f"{share.group} {wording.money(amount)} instead of {wording.money(share.amount)}"
        for share, amount in zip(shares, more.amounts, strict=True)
        if share.amount.minor
    ]
    offers = [f"'{name}'" for name in more.offers]
    reached = f" ({wording.listed(offers)} can then be had)" if offers else ""
    return f"With {who} everyone pays less{reached}: {wording.listed(less)}."


def seats_sentence(seats: CarSeats) -> str:
    """Whether the cars have seats for everybody."""
    people = wording.counted(seats.people, "person", "people")
    if seats.missing:
        missing = "1 seat is" if seats.missing == 1 else f"{seats.missing} seats are"
        return f"{missing} missing: {people}, {seats.seats} in the cars."
    return f"The cars have {seats.seats} seats for {people}."


def settling_sentences(outing: Together) -> tuple[str, ...]:
    """Who pays the rest at the till, and who then pays whom."""
    till = () if outing.at_the_till is None else (_till(outing.at_the_till),)
    if not outing.transfers:
        return (*till, "Nobody owes anybody anything then.")
    return (*till, *(_transfer(transfer) for transfer in outing.transfers))


def _till(till: AtTheTill) -> str:
    if till.amount.minor < 0:
        back = wording.money(Money(-till.amount.amount, till.amount.currency))
        return f"{back} too much was paid in advance; {till.group} gets it back from the place."
    return f"{till.group} pays the remaining {wording.money(till.amount)} at the ticket counter."


def _transfer(transfer: Transfer) -> str:
    return f"{transfer.payer} pays {transfer.receiver} {wording.money(transfer.amount)}."
