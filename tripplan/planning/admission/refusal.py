"""Why a party cannot enter: which rule forbids it, and whom it concerns."""

from collections.abc import Callable, Sequence

from tripplan.documents.family.member import Member
from tripplan.documents.places.offer_sentences import accompaniment_sentence, age_in_words
from tripplan.documents.places.offers import Offer
from tripplan.documents.places.place import Place
from tripplan.language import wording
from tripplan.planning.admission.availability import UnavailableOffer
from tripplan.planning.admission.charges import charges_for
from tripplan.planning.admission.constraints import Board, Role
from tripplan.planning.admission.integer import cheapest_by_integers
from tripplan.planning.admission.terms.registry import terms_of


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
            reasons.append(f"'{offer.name}' {rule}, which keeps out {wording.listed(names)}.")
    if reasons:
        return tuple(reasons)
    limited = [f"'{offer.name}'" for offer in offers if any(terms_of(offer).ties())]
    everybody = wording.listed([member.name for member in party])
    return (f"The limits of {wording.listed(limited)} together leave no way in for {everybody}.",)


def _has_a_way(board: Board, position: int) -> bool:
    kind = next(number for number, kind in enumerate(board.kinds) if position in kind.people)
    return any(kind in block.kinds for block in board.blocks)


def _hopeless(
    member: Member, months: int, offers: Sequence[Offer], left_out: Sequence[UnavailableOffer]
) -> str:
    """Which rules keep out one person whom no offer lets in."""
    who = f"{member.name} ({age_in_words(months)})"
    near = [
        f"'{offer.name}' {asked}"
        for offer in offers
        if _speaks_of(offer, months)
        for asked in terms_of(offer).asks()
    ]
    near += [f"'{out.offer.name}' {out.why}" for out in left_out if _speaks_of(out.offer, months)]
    if not near:
        return f"No offer on the card is for {who}."
    return f"No offer lets {who} in: {'; '.join(near)}."


def _speaks_of(offer: Offer, months: int) -> bool:
    return any(months in entrance.ages for entrance in terms_of(offer).entrances())
