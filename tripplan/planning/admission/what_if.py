"""What would change the price of entry: a birthday, one more child or adult, a pass, a few more people."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date
from enum import StrEnum

from tripplan.documents.family.birth_date import BirthDate
from tripplan.documents.family.held_pass import HeldPass
from tripplan.documents.family.member import Member
from tripplan.documents.places.offer_sentences import age_in_words
from tripplan.documents.places.offers import Pass, Ticket, also_at, prices_in
from tripplan.documents.places.place import Place
from tripplan.language import wording
from tripplan.planning.admission.availability import on_sale
from tripplan.planning.admission.cheapest import Gate
from tripplan.planning.admission.result import Admission, NoAdmission
from tripplan.planning.admission.terms.registry import terms_of
from tripplan.values.ages import months_later
from tripplan.values.money import Money

MONTHS_AHEAD = 6
"""Birthdays further away are not looked at [months]."""
MORE_PEOPLE_AT_MOST = 3
"""A group offer further out of reach is not suggested [people]."""
VISITS_AT_MOST = 50
"""A pass that pays later is said not to pay."""
GROWN_UP_YEARS = 40
"""The age of one more adult [years]; between the bands for young adults and for seniors."""


class PriceChangeKind(StrEnum):
    """What would be different."""

    BIRTHDAY = "birthday"
    ONE_MORE_CHILD = "one more child"
    ONE_MORE_ADULT = "one more adult"
    PASS = "pass"
    GROUP = "group"
    TWO_PLACES = "two places"


@dataclass(frozen=True)
class PriceChange:
    """One thing that would change what the party pays.

    Attributes:
        kind: what would be different.
        name: the member with the birthday, the offer (pass, group price), or the id of the other place; empty
            otherwise.
        day: the birthday; None otherwise.
        people: how many more people come along; 0 for a birthday or a pass.
        difference: by how much the total of a visit changes; for a pass, of each visit after the first.
        visits: visits like this one after which a pass has paid; None where it never does, or no pass.
        sentence: all of it in words.
    """

    kind: PriceChangeKind
    name: str
    day: date | None
    people: int
    difference: Money
    visits: int | None
    sentence: str


def what_changes_it(gate: Gate, party: Sequence[Member]) -> tuple[PriceChange, ...]:
    """What would change the price of a visit, everything else being the same.

    Args:
        gate: the arrival.
        party: who comes along.

    Returns:
        In this order, as far as there is one: the next birthday within six months that changes the total; one
        more child of the age of the youngest who pays, and one more adult, of the household; each pass on
        sale and when it has paid; each group price that up to three more people of the youngest age would
        open; each other place that tickets for two places are good for, where they cost less than
        separate ones. Empty where the party cannot enter.

    Raises:
        PlanError: as for `Gate.admission`.
    """
    now = gate.admission(party)
    if isinstance(now, NoAdmission):
        return ()
    offers, _ = on_sale(gate.place, gate.visit)
    passes = [offer for offer in offers if isinstance(offer, Pass)]
    other_places = [other for other in gate.other_places if other.currency == gate.place.currency]
    group_prices = [offer for offer in offers if isinstance(offer, Ticket) and offer.at_least > 1]
    return (
        *_next_birthday(gate, party, now),
        *_one_more(gate, party, now),
        *(change for offer in passes for change in _pass_pays(gate, party, offer, passes)),
        *(change for offer in group_prices for change in _group_in_reach(gate, party, offer, now)),
        *(change for other in other_places for change in _both_visited(gate, party, other)),
    )


def _next_birthday(gate: Gate, party: Sequence[Member], now: Admission) -> Iterator[PriceChange]:
    """The first day within six months on which somebody's age moves the total."""
    day = gate.visit.day
    bands = [band for offer in gate.place.offers for band in terms_of(offer).bands]
    bands += [band for rule in gate.place.must_be_accompanied for band in (rule.ages, rule.by)]
    bounds = {bound for band in bands for bound in band.bounds}
    last = months_later(day, MONTHS_AHEAD)
    crossings = sorted(
        (when, position)
        for position, member in enumerate(party)
        for bound in bounds
        if day < (when := months_later(member.born.earliest, bound)) <= last
    )
    for when, position in crossings:
        aged = tuple(member.aged(day, when) for member in party)
        then = gate.admission(aged)
        if isinstance(then, NoAdmission) or then.total == now.total:
            continue
        member = party[position]
        age = age_in_words(member.months_on(when))
        sentence = (
            f"From {wording.day(when)}, when {member.name} is {age} old, such a visit costs "
            f"{_by(then.total - now.total)}."
        )
        yield PriceChange(
            PriceChangeKind.BIRTHDAY, member.name, when, 0, then.total - now.total, None, sentence
        )
        return


def _one_more(gate: Gate, party: Sequence[Member], now: Admission) -> Iterator[PriceChange]:
    """One more child as old as the youngest who pays, and one more adult; both of the household."""
    day = gate.visit.day
    name = _new_names(party, 1)[0]
    paying = [m for m in party if not m.is_adult_on(day) and now.shares[m.name].minor > 0]
    child = min(paying, key=lambda member: member.months_on(day), default=None)
    more: list[tuple[PriceChangeKind, str, Member]] = []
    if child is not None:
        who = f"one more child as old as {child.name}"
        more.append((PriceChangeKind.ONE_MORE_CHILD, who, Member(name=name, born=child.born)))
    born = BirthDate(year=day.year - GROWN_UP_YEARS, month=day.month)
    more.append((PriceChangeKind.ONE_MORE_ADULT, "one more adult", Member(name=name, born=born)))
    larger = replace(gate, household=gate.household | {name})
    for kind, who, member in more:
        then = larger.admission((*party, member))
        if isinstance(then, Admission):
            difference = then.total - now.total
            yield PriceChange(kind, "", None, 1, difference, None, f"With {who}, it costs {_by(difference)}.")


def _new_names(party: Sequence[Member], count: int) -> list[str]:
    """Names that nobody in the party has."""
    taken = {member.name for member in party}
    numbers = range(1, len(taken) + count + 1)
    return [name for number in numbers if (name := f"guest {number}") not in taken][:count]


def _pass_pays(
    gate: Gate, party: Sequence[Member], offer: Pass, passes: Sequence[Pass]
) -> Iterator[PriceChange]:
    """After how many visits like this one a pass has paid, against visits without buying any."""
    on_sale_passes = [one.name for one in passes]
    without = gate.admission(party, not_bought=on_sale_passes)
    others = [name for name in on_sale_passes if name != offer.name]
    first = gate.admission(party, not_bought=others, must_buy=offer.name)
    if isinstance(without, NoAdmission) or isinstance(first, NoAdmission):
        return
    bought = next(line for line in first.purchases if line.name == offer.name and line.unit_price.amount > 0)
    card = HeldPass(place=gate.place.id, offer=offer.name, holders=bought.covers, valid_until=gate.visit.day)
    later = replace(gate, held=(*gate.held, *(card,) * bought.quantity)).admission(
        party, not_bought=on_sale_passes
    )
    if isinstance(later, NoAdmission):
        return
    saving = without.total.minor - later.total.minor
    visits = -(-(first.total.minor - later.total.minor) // saving) if saving > 0 else None
    if visits is None or visits > VISITS_AT_MOST:
        visits, sentence = None, f"'{offer.name}' does not pay for visits like this one."
    else:
        count = "the first visit" if visits <= 1 else f"{visits} visits like this one"
        sentence = (
            f"'{offer.name}' has paid after {count}, if made within its {offer.months} months; "
            f"each after the first costs {_by(later.total - without.total)}."
        )
        visits = max(visits, 1)
    yield PriceChange(
        PriceChangeKind.PASS, offer.name, None, 0, later.total - without.total, visits, sentence
    )


def _group_in_reach(
    gate: Gate, party: Sequence[Member], offer: Ticket, now: Admission
) -> Iterator[PriceChange]:
    """The fewest more people with whom a group price can be had and everybody pays less on average."""
    day = gate.visit.day
    fitting = [member for member in party if member.months_on(day) in offer.ages]
    if not fitting or any(line.name == offer.name for line in now.purchases):
        return
    pattern = min(fitting, key=lambda member: member.months_on(day))
    for more in range(1, MORE_PEOPLE_AT_MOST + 1):
        guests = [
            Member(name=name, born=pattern.born, statuses=pattern.statuses)
            for name in _new_names(party, more)
        ]
        then = gate.admission((*party, *guests))
        if isinstance(then, NoAdmission) or all(line.name != offer.name for line in then.purchases):
            continue
        before, after = _each(now.total, len(party)), _each(then.total, len(party) + more)
        if after < before:
            who = "one more person" if more == 1 else f"{more} more people"
            sentence = (
                f"With {who} as old as {pattern.name}, '{offer.name}' can be had: {wording.money(after)} "
                f"a head instead of {wording.money(before)}."
            )
            difference = then.total - now.total
            yield PriceChange(PriceChangeKind.GROUP, offer.name, None, more, difference, None, sentence)
        return


def _both_visited(gate: Gate, party: Sequence[Member], other: Place) -> Iterator[PriceChange]:
    """Tickets that are good at another place too, where they cost less than separate ones at both.

    They are bought for everybody who can use them; who enters free needs none. The other place is taken to be
    visited at the same hour, and what counts there is what counts on that day.
    """
    offers, _ = on_sale(gate.place, gate.visit)
    both = {
        offer.name: one.within_days for offer in offers for one in also_at(offer) if one.place == other.id
    }
    if not both:
        return
    there = replace(gate, place=other, moment=gate.moment.astimezone(other.where.zone), add_ons=())
    singly = gate.admission(party, not_bought=both), there.admission(party)
    separate = [offer.name for offer in offers if offer.name not in both and any(prices_in(offer))]
    here = gate.admission(party, not_bought=separate)
    if isinstance(here, NoAdmission):
        return
    tickets = tuple(
        HeldPass(place=gate.place.id, offer=line.name, holders=line.covers, valid_until=there.visit.day)
        for line in here.purchases
        if line.name in both
    )
    used = replace(there, held=(*there.held, *tickets), other_places=(*there.other_places, gate.place))
    then = used.admission(party)
    if not tickets or isinstance(then, NoAdmission):
        return
    together = here.total + then.total
    apart = [one.total for one in singly if isinstance(one, Admission)]
    if len(apart) < len(singly) or together >= apart[0] + apart[1]:
        return
    difference = together - apart[0] - apart[1]
    days = min(both[ticket.offer] for ticket in tickets)
    when = "on the same day" if days == 1 else f"within {days} days"
    names = wording.listed([f"'{ticket.offer}'" for ticket in tickets])
    sentence = (
        f"If you also visit {other.name} {when}, {names} for both comes to {wording.money(together)}, "
        f"{_by(difference)} than separate tickets."
    )
    yield PriceChange(PriceChangeKind.TWO_PLACES, other.id, None, 0, difference, None, sentence)


def _each(total: Money, heads: int) -> Money:
    return Money(total.amount / heads, total.currency)


def _by(difference: Money) -> str:
    if difference.amount < 0:
        return f"{wording.money(Money(-difference.amount, difference.currency))} less"
    return f"{wording.money(difference)} more" if difference.amount else "as much as without"
