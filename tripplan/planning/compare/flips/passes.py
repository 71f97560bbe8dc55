"""Whether an annual pass already owned would change which place is the cheapest."""

from collections.abc import Iterator
from datetime import date

from tripplan.documents.family.held_pass import HeldPass
from tripplan.documents.places.offers import Pass
from tripplan.language.sentences import fact
from tripplan.planning.compare.flips.comparison import Comparison
from tripplan.planning.compare.flips.flip import Flip


def owned_passes(comparison: Comparison) -> Iterator[Flip]:
    """Each pass not owned yet that is good at an outing which is not the first already."""
    household, outings = comparison.household, comparison.outings
    last_day = max(outing.day for outing in outings)
    owned = {(held.place, held.offer) for held in household.passes}
    places = {place.id: place for place in (*(o.place for o in outings), *comparison.family.places)}
    on_sale = [(place, offer) for place in places.values() for offer in place.offers]
    for place, offer in on_sale:
        if not isinstance(offer, Pass) or (place.id, offer.name) in owned:
            continue
        good_at = {place.id, *(other.place for other in offer.elsewhere if other.percent_off)}
        cards = tuple(
            HeldPass(place=place.id, offer=offer.name, holders=holders, valid_until=last_day)
            for holders in _holders(comparison, offer, last_day)
        )
        if not cards or not any(outing.place.id in good_at for outing in outings[1:]):
            continue
        owning = household.model_copy(update={"passes": (*household.passes, *cards)})
        concerned = [index for index, outing in enumerate(outings) if outing.place.id in good_at]
        answers = comparison.changed(household=owning, indexes=concerned)
        what = fact("flips-pass", name=offer.name, place=place.name)
        at = fact("flips-owned", passes=len(cards))
        under = fact("flips-with-passes", passes=len(cards), what=what)
        yield comparison.flip(what, fact("flips-not-owned"), at, under, answers)


def _holders(comparison: Comparison, offer: Pass, day: date) -> list[tuple[str, ...]]:
    """Who would hold a pass: everybody one of their own where it seats one person, else those it seats."""
    family = {member.name for member in comparison.household.members}
    ages = {m.name: m.months_on(day) for m in comparison.party if m.name in family}
    if sum(seats.count for seats in offer.seats) == 1:
        return [(name,) for name, months in ages.items() if months in offer.seats[0].ages]
    seated: list[str] = []
    for seats in offer.seats:
        fitting = [name for name, months in ages.items() if months in seats.ages and name not in seated]
        seated += fitting[: seats.count]
    return [tuple(seated)] if seated else []
