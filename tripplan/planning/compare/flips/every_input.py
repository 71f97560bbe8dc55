"""Every input in turn: what would make another of the compared outings the first."""

from collections.abc import Iterator, Sequence
from datetime import date

from tripplan.documents.family.member import Member
from tripplan.language.sentences import Fact, fact
from tripplan.planning.compare.flips.birthdays import next_birthdays
from tripplan.planning.compare.flips.comparison import Comparison
from tripplan.planning.compare.flips.driving import price_of_driving
from tripplan.planning.compare.flips.flip import Flip
from tripplan.planning.compare.flips.food import other_food
from tripplan.planning.compare.flips.measure import Measure
from tripplan.planning.compare.flips.party import adult_at_home, one_more_child
from tripplan.planning.compare.flips.passes import owned_passes
from tripplan.planning.compare.flips.weather import weather_of_each_day
from tripplan.planning.compare.flips.weekdays import other_weekdays, years_around
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import Outing
from tripplan.planning.outing.place_facts import place_facts


def what_would_flip(
    family: Family, party: Sequence[Member], outings: Sequence[Outing], *, today: date
) -> tuple[Flip, ...]:
    """What would change the first place, one input at a time, all others being as they are.

    The first place is the outing with the least likely total, then, in a second round, the one with the least
    generalized cost; the earliest given among equals. It keeps its place until another one comes to less.
    Items that nobody knows are left out, as they are from the totals.
    Treats and the reserve are no inputs: they weigh on every place alike.

    Args:
        family: the one the outings were planned for.
        party: who goes.
        outings: to compare, one a place.
        today: for booking deadlines.

    Returns:
        For each measure in this order, as far as there are such: the price of fuel or of driving, down and
        up; food packed or bought; each adult staying at home while another one goes; one more child as old as
        the youngest who pays at the first place; each pass that is good at another one; another weekday for
        each outing; the first birthday within half a year that matters; for the generalized cost also a wet
        day, a dry one, a colder and a warmer one for each day with an outing outdoors. Empty for fewer than
        two outings.
    """
    if len(outings) < 2:
        return ()
    known = {
        outing.place.id: place_facts(family, outing.place, years_around(outing.day, today))
        for outing in outings
    }
    flips: list[Flip] = []
    for measure in Measure:
        first = measure.first(outings)
        assert first is not None
        in_order = (first, *(outing for outing in outings if outing is not first))
        facts = tuple(known[outing.place.id] for outing in in_order)
        flips += _by(Comparison(measure, family, tuple(party), in_order, facts, today))
    return tuple(flips)


def _by(comparison: Comparison) -> Iterator[Flip]:
    """What would change the first place by one measure."""
    yield from price_of_driving(comparison)
    yield other_food(comparison)
    yield from adult_at_home(comparison)
    yield from one_more_child(comparison)
    yield from owned_passes(comparison)
    yield from other_weekdays(comparison)
    yield from next_birthdays(comparison)
    if comparison.measure is Measure.WITH_HASSLE:
        yield from weather_of_each_day(comparison)


def first_of_each(outings: Sequence[Outing]) -> tuple[Fact, ...]:
    """That the cheapest outing is not the better day out; nothing where it is, or of no outings."""
    cheapest, better = (measure.first(outings) for measure in (Measure.MONEY, Measure.WITH_HASSLE))
    if cheapest is None or better is None or better is cheapest:
        return ()
    told = fact(
        "flips-two-firsts",
        cheapest=cheapest.place.name,
        better=better.place.name,
        total=better.generalized_cost,
        against=cheapest.generalized_cost,
    )
    return (told,)
