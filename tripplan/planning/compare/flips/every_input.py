"""Every input in turn: what would make another of the compared outings the cheapest."""

from collections.abc import Sequence
from datetime import date

from tripplan.documents.family.member import Member
from tripplan.planning.compare.flips.birthdays import next_birthdays
from tripplan.planning.compare.flips.comparison import Comparison, likely
from tripplan.planning.compare.flips.driving import price_of_driving
from tripplan.planning.compare.flips.flip import Flip
from tripplan.planning.compare.flips.food import other_food
from tripplan.planning.compare.flips.party import adult_at_home, one_more_child
from tripplan.planning.compare.flips.passes import owned_passes
from tripplan.planning.compare.flips.weekdays import other_weekdays, years_around
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import Outing
from tripplan.planning.outing.place_facts import place_facts


def what_would_flip(
    family: Family, party: Sequence[Member], outings: Sequence[Outing], *, today: date
) -> tuple[Flip, ...]:
    """What would change the first place, one input at a time, all others being as they are.

    The first place is the outing with the least likely total, the earliest given among equals; it keeps its
    place until another one is cheaper. Items that nobody knows are left out, as they are from the totals.
    Treats and the reserve are no inputs: they weigh on every place alike.

    Args:
        family: the one the outings were planned for.
        party: who goes.
        outings: to compare, one a place.
        today: for booking deadlines.

    Returns:
        In this order, as far as there are such: the price of fuel or of driving, down and up; food packed or
        bought; each adult staying at home while another one goes; one more child as old as the youngest who
        pays at the first place; each pass that is good at another one; another weekday for each outing; the
        first birthday within half a year that matters. Empty for fewer than two outings.
    """
    if len(outings) < 2:
        return ()
    first = min(outings, key=likely)
    in_order = (first, *(outing for outing in outings if outing is not first))
    facts = tuple(place_facts(family, outing.place, years_around(outing.day, today)) for outing in in_order)
    comparison = Comparison(family, tuple(party), in_order, facts, today)
    return (
        *price_of_driving(comparison),
        other_food(comparison),
        *adult_at_home(comparison),
        *one_more_child(comparison),
        *owned_passes(comparison),
        *other_weekdays(comparison),
        *next_birthdays(comparison),
    )
