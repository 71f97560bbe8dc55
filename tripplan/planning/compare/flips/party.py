"""Whether an adult at home or one more child changes which place is the cheapest."""

from collections.abc import Callable, Iterator, Sequence
from datetime import date
from itertools import count

from tripplan.documents.family.member import Member
from tripplan.language.sentences import fact
from tripplan.planning.compare.flips.comparison import Comparison
from tripplan.planning.compare.flips.flip import Flip


def adult_at_home(comparison: Comparison) -> Iterator[Flip]:
    """Each adult staying at home while another one goes."""
    party, day = comparison.party, comparison.outings[0].day
    adults = [member for member in party if member.is_adult_on(day)]
    for gone in adults if len(adults) > 1 else ():
        rest = tuple(member for member in party if member is not gone)
        answers = comparison.changed(party_on=_always(rest))
        yield comparison.flip(
            fact("flips-somebody-at-home", name=gone.name),
            fact("flips-somebody-goes", name=gone.name),
            fact("flips-at-home"),
            fact("flips-without", name=gone.name),
            answers,
        )


def _always(party: Sequence[Member]) -> Callable[[date], Sequence[Member]]:
    """The same party whatever the day."""
    return lambda _: party


def one_more_child(comparison: Comparison) -> Iterator[Flip]:
    """One more child of the household, as old as the youngest who pays."""
    household, party, first = comparison.household, comparison.party, comparison.outings[0]
    shares, day = first.admission.shares, first.day
    paying = [member for member in party if not member.is_adult_on(day) and shares[member.name].minor > 0]
    if not paying:
        return
    youngest = min(paying, key=lambda member: member.months_on(day))
    taken = {member.name for member in (*household.members, *party)}
    name = next(name for number in count(1) if (name := f"child {number}") not in taken)
    child = Member(name=name, born=youngest.born)
    larger = household.model_copy(update={"members": (*household.members, child)})
    answers = comparison.changed(household=larger, party_on=_always((*party, child)))
    yield comparison.flip(
        fact("flips-one-more"),
        fact("flips-so-many-go", people=len(party)),
        fact("flips-one-more-like", name=youngest.name),
        fact("flips-with-one-more", name=youngest.name),
        answers,
    )
