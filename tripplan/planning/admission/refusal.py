"""Why a party cannot enter: which rule forbids it, and whom it concerns."""

from collections.abc import Callable, Sequence

from tripplan.documents.family.member import Member
from tripplan.documents.places.offer_sentences import accompaniment_sentence
from tripplan.documents.places.offers import Offer
from tripplan.documents.places.place import Place
from tripplan.language.sentences import Fact, fact
from tripplan.planning.admission.availability import UnavailableOffer
from tripplan.planning.admission.charges import charges_for
from tripplan.planning.admission.constraints import Board, Role
from tripplan.planning.admission.integer import cheapest_by_integers
from tripplan.planning.admission.terms.registry import terms_of
from tripplan.values.ages import MONTHS


def unaccompanied(place: Place, party: Sequence[Member], months: Sequence[int]) -> tuple[Fact, ...]:
    """The card's rules about accompaniment that the party breaks, each naming the young visitors.

    Somebody who may not enter alone does not mind others under the same rule. Each rule is judged by itself.
    """
    reasons = []
    for rule in place.must_be_accompanied:
        young = [m.name for m, age in zip(party, months, strict=True) if age in rule.ages]
        minders = sum(age in rule.by and age not in rule.ages for age in months)
        enough = minders > 0 if rule.each_minds is None else minders * rule.each_minds >= len(young)
        if young and not enough:
            who = accompaniment_sentence(rule).rstrip(".")
            reasons.append(fact("refusals-accompanied", rule=who, minders=minders, names=tuple(young)))
    return tuple(reasons)


def reasons_against(
    place: Place,
    offers: Sequence[Offer],
    left_out: Sequence[UnavailableOffer],
    party: Sequence[Member],
    months: Sequence[int],
    board: Board,
    board_of: Callable[[Sequence[Offer]], Board],
) -> tuple[Fact, ...]:
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
        for lifted, rule in terms_of(offer).ties():
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
            reasons.append(fact("refusals-keeps-out", offer=offer.name, rule=rule, names=tuple(names)))
    if reasons:
        return tuple(reasons)
    limited = tuple(
        fact("refusals-offer", name=offer.name) for offer in offers if any(terms_of(offer).ties())
    )
    everybody = tuple(member.name for member in party)
    return (fact("refusals-together", offers=limited, names=everybody),)


def _has_a_way(board: Board, position: int) -> bool:
    kind = next(number for number, kind in enumerate(board.kinds) if position in kind.people)
    return any(kind in block.kinds for block in board.blocks)


def _hopeless(
    member: Member, months: int, offers: Sequence[Offer], left_out: Sequence[UnavailableOffer]
) -> Fact:
    """Which rules keep out one person whom no offer lets in."""
    in_months = months < 2 * MONTHS
    age = (
        fact("refusals-months", count=months) if in_months else fact("refusals-years", count=months // MONTHS)
    )
    near = [
        fact("refusals-asks", offer=offer.name, why=asked)
        for offer in offers
        if _speaks_of(offer, months)
        for asked in terms_of(offer).asks()
    ]
    near += [
        fact("refusals-asks", offer=out.offer.name, why=out.why)
        for out in left_out
        if _speaks_of(out.offer, months)
    ]
    if not near:
        return fact("refusals-no-offer", name=member.name, age=age)
    return fact("refusals-lets-nobody", name=member.name, age=age, why=tuple(near))


def _speaks_of(offer: Offer, months: int) -> bool:
    return any(months in entrance.ages for entrance in terms_of(offer).entrances())
