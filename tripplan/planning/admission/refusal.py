"""Why a party cannot enter: which rule forbids it, and whom it concerns."""

from collections.abc import Callable, Iterator, Sequence
from typing import TypeVar

from tripplan.documents.family.member import Member
from tripplan.documents.places.offer_sentences import accompaniment_sentence, age_in_words
from tripplan.documents.places.offers import Bundle, Discount, Offer, OfferRules, Pass, Ticket
from tripplan.documents.places.place import Place
from tripplan.language import wording
from tripplan.planning.admission.availability import UnavailableOffer
from tripplan.planning.admission.blocks import Board, Role, TicketBlock
from tripplan.planning.admission.charges import charges_for
from tripplan.planning.admission.integer import cheapest_by_integers

Rules = TypeVar("Rules", bound=OfferRules)


def unaccompanied(place: Place, party: Sequence[Member], months: Sequence[int]) -> tuple[str, ...]:
    """The card's rules about accompaniment that the party breaks, each naming the young visitors.

    Somebody who may not enter alone does not mind others under the same rule. Each rule is judged by itself.
    """
    reasons = []
    for rule in place.must_be_accompanied:
        young = [m.name for m, age in zip(party, months, strict=True) if age in rule.ages]
        minders = sum(age in rule.by and age not in rule.ages for age in months)
        enough = minders > 0 if rule.each_minds is None else minders * rule.each_minds >= len(young)
        if young and not enough:
            there = (
                f"; in the party that is {wording.counted(minders, 'person', 'people')} for"
                if minders
                else "; nobody is there for"
            )
            reasons.append(f"{accompaniment_sentence(rule)[:-1]}{there} {wording.listed(young)}.")
    return tuple(reasons)


def reasons_against(
    place: Place,
    offers: Sequence[Offer],
    left_out: Sequence[UnavailableOffer],
    party: Sequence[Member],
    months: Sequence[int],
    board: Board,
    board_of: Callable[[Sequence[Offer]], Board],
) -> tuple[str, ...]:
    """Why no set of offers lets the whole party in.

    First, people whom no offer could let in whatever the others do. Otherwise rules are lifted one at a time:
    one whose absence would let everybody in is named with those who would come in by its offer.

    Args:
        place: the place.
        offers: what can be had.
        left_out: what cannot, and why.
        party: who wants to enter.
        months: their ages [completed months].
        board: the board of `offers`.
        board_of: makes a board of changed offers, for the same party.
    """
    hopeless = [
        _hopeless(member, age, offers, left_out)
        for position, (member, age) in enumerate(zip(party, months, strict=True))
        if not _has_a_way(board, position)
    ]
    if hopeless:
        return tuple(hopeless)
    reasons = []
    for number, offer in enumerate(offers):
        for lifted, rule in _without_one_rule(offer):
            changed = board_of([*offers[:number], lifted, *offers[number + 1 :]])
            way = cheapest_by_integers(changed, charges_for(place, changed, None))
            if way is None:
                continue
            names = [
                party[position].name
                for use in way.uses
                if changed.blocks[use.source].offer is lifted
                for role, kind, count in use.people
                if role is not Role.LEADER
                for position in changed.kinds[kind].people[:count]
            ]
            reasons.append(f"'{offer.name}' {rule}, which keeps out {wording.listed(names)}.")
    if reasons:
        return tuple(reasons)
    limited = [f"'{offer.name}'" for offer in offers if any(_without_one_rule(offer))]
    everybody = wording.listed([member.name for member in party])
    return (f"The limits of {wording.listed(limited)} together leave no way in for {everybody}.",)


def _has_a_way(board: Board, position: int) -> bool:
    kind = next(number for number, kind in enumerate(board.kinds) if position in kind.people)
    for block in board.blocks:
        if isinstance(block, TicketBlock):
            if kind in block.users or (block.one_free_per is not None and kind in block.leaders):
                return True
        elif kind in block.beyond_price or any(kind in row.kinds for row in block.rows):
            return True
    return False


def _hopeless(
    member: Member, months: int, offers: Sequence[Offer], left_out: Sequence[UnavailableOffer]
) -> str:
    """Which rules keep out one person whom no offer lets in."""
    who = f"{member.name} ({age_in_words(months)})"
    near = [
        f"'{offer.name}' needs proof of {' or '.join(offer.needs)}"
        for offer in offers
        if isinstance(offer, Ticket | Discount) and _speaks_of(offer, months) and offer.needs
    ]
    near += [
        f"'{offer.name}' is only good on the visitor's birthday"
        if offer.good_on == "birthday"
        else f"'{offer.name}' is only good in the month of the visitor's birthday"
        for offer in offers
        if isinstance(offer, Ticket) and offer.good_on != "any day" and _speaks_of(offer, months)
    ]
    near += [
        f"'{offer.name}' is for the household"
        for offer in offers
        if isinstance(offer, Pass) and any(months in seat.ages for seat in offer.seats)
    ]
    near += [f"'{out.offer.name}' {out.why}" for out in left_out if _speaks_of(out.offer, months)]
    if not near:
        return f"No offer on the card is for {who}."
    return f"No offer lets {who} in: {'; '.join(near)}."


def _speaks_of(offer: Offer, months: int) -> bool:
    if isinstance(offer, Ticket):
        return any(months in ages for ages in offer.bands)
    if isinstance(offer, Discount):
        return months in offer.ages
    extra = isinstance(offer, Bundle) and offer.extras is not None and months in offer.extras.ages
    return extra or any(months in seat.ages for seat in offer.seats)


def _without_one_rule(offer: Offer) -> Iterator[tuple[Offer, str]]:
    """The offer without each of the rules that tie people together, and the rule in words."""
    if isinstance(offer, Ticket):
        if offer.companions is not None:
            paying = "paying " if offer.companions.must_pay else ""
            yield _changed(offer, companions=None), f"asks for more {paying}companions than there are"
        if offer.at_least > 1:
            yield _changed(offer, at_least=1), f"is sold from {offer.at_least} people on"
        if offer.at_most is not None:
            yield _changed(offer, at_most=None), f"is sold at most {offer.at_most} times to one party"
        if offer.needs and offer.one_status_covers > 1:
            covers = f"covers {offer.one_status_covers} people for each proof of {' or '.join(offer.needs)}"
            yield _changed(offer, needs=()), covers
        return
    if isinstance(offer, Discount):
        if offer.at_most is not None:
            yield _changed(offer, at_most=None), f"is for at most {offer.at_most} of one party"
        return
    if isinstance(offer, Bundle):
        if offer.must_include is not None:
            yield _changed(offer, must_include=None), f"must include somebody aged {offer.must_include}"
        if offer.needs:
            yield _changed(offer, needs=()), f"needs proof of {' or '.join(offer.needs)}"
        if offer.at_least > 1:
            yield _changed(offer, at_least=1), f"must have {offer.at_least} seats taken"
        if offer.at_most is not None:
            yield _changed(offer, at_most=None), f"is sold at most {offer.at_most} times to one party"
        if offer.one_family:
            yield _changed(offer, one_family=False), "is for one family"
        if offer.per_car:
            yield _changed(offer, per_car=False), "lets in as many as a car seats, infants included"
        elif offer.counts_everybody:
            yield _changed(offer, counts_everybody=False), "counts everybody, infants included"
        if offer.extras is not None and offer.extras.at_most is not None:
            more = offer.extras.model_copy(update={"at_most": None})
            yield _changed(offer, extras=more), f"takes at most {offer.extras.at_most} extra people"


def _changed(offer: Rules, **changes: object) -> Rules:
    return offer.model_copy(update=changes)
