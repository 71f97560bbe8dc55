"""Which of the next birthdays changes which place is the cheapest."""

from collections.abc import Iterator
from datetime import date, timedelta

from tripplan.documents.family.member import Member
from tripplan.documents.places.place import Place
from tripplan.language.sentences import fact
from tripplan.planning.admission.terms.registry import terms_of
from tripplan.planning.compare.flips.comparison import Comparison
from tripplan.planning.compare.flips.flip import Flip
from tripplan.planning.cost.account import GROWN_APPETITE_MONTHS
from tripplan.values.ages import ADULT, MONTHS, AgeBand

BIRTHDAYS_WITHIN_DAYS = 183
"""Birthdays further away are not looked at [days]; half a year."""


def next_birthdays(comparison: Comparison) -> Iterator[Flip]:
    """The first birthday within half a year that changes the first place, or that none does."""
    crossings = _crossings(comparison)
    if not crossings:
        return
    what, now = fact("flips-birthdays"), fact("flips-ages-on", day=comparison.outings[0].day)
    for when, member in crossings:

        def aged(day: date, when: date = when) -> tuple[Member, ...]:
            return tuple(one.aged(day, max(day, when)) for one in comparison.party)

        answers = comparison.changed(party_on=aged)
        if answers is not None and comparison.changes(answers):
            months, named = member.months_on(when), member.name
            under = fact("flips-from-months", day=when, name=named, months=months)
            if months >= 2 * MONTHS:
                under = fact("flips-from-birthday", day=when, name=named, years=months // MONTHS)
            yield comparison.flip(what, now, fact("flips-day", day=when), under, answers)
            return
    yield comparison.stays(what, now, fact("flips-birthdays-until", day=crossings[-1][0]))


def _crossings(comparison: Comparison) -> list[tuple[date, Member]]:
    """The dates within half a year on which somebody passes an age that something goes by, in order."""
    bands = [ADULT, AgeBand(comparison.household.food.free_under_months), AgeBand(GROWN_APPETITE_MONTHS)]
    for outing in comparison.outings:
        bands += _bands_at(outing.place)
    start = min(outing.day for outing in comparison.outings)
    days = [start + timedelta(days=number) for number in range(BIRTHDAYS_WITHIN_DAYS + 1)]
    first_crossings: dict[date, Member] = {}
    for member in comparison.party:
        ages = [member.months_on(day) for day in days]
        for day, before, after in zip(days[1:], ages, ages[1:], strict=False):
            if before != after and any((before in band) != (after in band) for band in bands):
                first_crossings.setdefault(day, member)
    return sorted(first_crossings.items(), key=lambda crossing: crossing[0])


def _bands_at(place: Place) -> Iterator[AgeBand]:
    """Every age band that a place's prices and rules go by."""
    for offer in place.offers:
        yield from terms_of(offer).bands
    for rule in place.must_be_accompanied:
        yield from (rule.ages, rule.by)
    yield from (add_on.ages for add_on in place.add_ons if add_on.usual)
