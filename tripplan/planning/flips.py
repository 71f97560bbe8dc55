"""What would have to change for another of the compared outings to become the cheapest."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta
from decimal import Decimal

from tripplan import wording
from tripplan.planning.admission.blocks import bands_on
from tripplan.planning.admission.sentences import age_in_words
from tripplan.planning.ages import ADULT, MONTHS, AgeBand
from tripplan.planning.cost import outing_cost
from tripplan.planning.cost.account import GROWN_APPETITE_MONTHS
from tripplan.planning.day import StepKind
from tripplan.planning.household import BirthDate, Car, Fuel, HeldPass, Household, Member
from tripplan.planning.money import Money, minor_digits
from tripplan.planning.offers import Pass
from tripplan.planning.outing import Family, NoOuting, Outing, PlaceFacts, place_facts, plan_outing
from tripplan.planning.place import Place, PlaceId

LEAST_TIMES, MOST_TIMES = Decimal("0.25"), Decimal(4)
"""A fuel price beyond these multiples of the present one is out of reason. No source, our choice."""
DAYS_EITHER_SIDE = 6
"""How far off another day of the week is looked for [days]; the seventh is the same weekday again."""
BIRTHDAYS_WITHIN = timedelta(days=183)
"""Birthdays further away are not looked at; half a year."""

_PER = {
    Fuel.MILES_PER_US_GALLON: "a gallon",
    Fuel.LITRES_PER_100_KM: "a litre",
    Fuel.KWH_PER_100_KM: "a kWh",
    Fuel.RATE_PER_MILE: "a mile",
    Fuel.RATE_PER_KM: "a km",
}
_Answer = Outing | NoOuting


@dataclass(frozen=True)
class Flip:
    """One input, and what it must become for the first place to change.

    Attributes:
        what: the input's short name, such as 'fuel price'.
        now: what it is at present, in words.
        at: what it must become, in words; None where nothing within reason changes the first place.
        price: the same as money, for an input that is a price; None for any other, or without a change.
        new_first: id of the place that is the cheapest then; None without a change, or where none of the
            outings can be done any more.
        sentence: all of it in words.
    """

    what: str
    now: str
    at: str | None
    price: Money | None
    new_first: PlaceId | None
    sentence: str


def what_would_flip(
    family: Family, party: Sequence[Member], outings: Sequence[Outing], *, today: date
) -> tuple[Flip, ...]:
    """What would change the first place, one input at a time, all others being as they are.

    The first place is the outing with the least likely total, the earliest given among equals; it keeps its
    place until another one is cheaper. Items that nobody knows are left out, as they are from the totals.
    Treats and the reserve are no inputs: they fall on every place alike.

    Args:
        family: the one the outings were planned for.
        party: who goes.
        outings: to compare, one a place.
        today: for booking deadlines.

    Returns:
        In this order, as far as there are such: the price of fuel or of driving, down and up; food packed or
        bought; each adult staying at home where another one goes; one more child as old as the youngest who
        pays at the first place; each pass good at a place that is not first; another weekday for each
        outing; the next birthday within half a year that matters. Empty for fewer than two outings.
    """
    if len(outings) < 2:
        return ()
    first = min(outings, key=_likely)
    in_order = (first, *(outing for outing in outings if outing is not first))
    facts = tuple(place_facts(family, outing.place, _years(outing.day, today)) for outing in in_order)
    comparison = _Comparison(family, tuple(party), in_order, facts, today)
    return (
        *_fuel_price(comparison),
        _food(comparison),
        *_adult_at_home(comparison),
        *_one_more_child(comparison),
        *_passes(comparison),
        *_other_weekdays(comparison),
        *_next_birthday(comparison),
    )


def flips_in_short(flips: Sequence[Flip]) -> tuple[str, ...]:
    """What changes the first place, a sentence each, and one sentence on all that does not."""
    said = [flip.sentence for flip in flips if flip.at is not None]
    idle = list(dict.fromkeys(flip.what for flip in flips if flip.at is None))
    if idle:
        said.append(f"Nothing within reason changes the first place by: {wording.listed(idle)}.")
    return tuple(said)


@dataclass(frozen=True)
class _Comparison:
    """The outings as they are, and how to work them out again under a change.

    Attributes:
        family: as it is.
        party: as it is.
        outings: the first place first.
        facts: of the outings' places, in the same order.
        today: for booking deadlines.
    """

    family: Family
    party: tuple[Member, ...]
    outings: tuple[Outing, ...]
    facts: tuple[PlaceFacts, ...]
    today: date

    @property
    def household(self) -> Household:
        """As it is."""
        return self.family.household

    def recosted(self, household: Household) -> tuple[Outing, ...]:
        """All outings under a change of the household that moves neither the day nor the tickets."""
        return tuple(replace(outing, cost=_cost(household, self.party, outing)) for outing in self.outings)

    def replanned(
        self,
        index: int,
        *,
        household: Household | None = None,
        party: Sequence[Member] | None = None,
        day: date | None = None,
    ) -> _Answer:
        """One outing, planned anew under a change; a departure picked by hand stays as far as it can."""
        outing = self.outings[index]
        family = self.family if household is None else replace(self.family, household=household)
        picked = day is None and outing.plan != outing.search.best
        return plan_outing(
            family,
            self.party if party is None else party,
            self.facts[index],
            day or outing.day,
            today=self.today,
            leave_at=outing.plan.leave_home if picked else None,
        )

    def all_replanned(
        self, *, household: Household | None = None, party: Sequence[Member] | None = None
    ) -> tuple[_Answer, ...]:
        """All outings, planned anew under a change."""
        return tuple(
            self.replanned(index, household=household, party=party) for index in range(len(self.outings))
        )

    def flip(
        self,
        what: str,
        now: str,
        at: str,
        answers: Sequence[_Answer],
        *,
        under: str,
        price: Money | None = None,
    ) -> Flip:
        """What some answers under a change mean for the first place.

        Args:
            what: the input's short name.
            now: its present value.
            at: its value under the change.
            answers: the outings under the change, in the comparison's order.
            under: the change as the first words of a sentence.
            price: the value as money, for a price.
        """
        was, then = self.outings[0].place.name, _first(answers)
        if then is not None and then is answers[0]:
            return Flip(what, now, None, None, None, f"{under}, {was} stays the cheapest.")
        if then is None:
            return Flip(what, now, at, price, None, f"{under}, none of these outings can be done.")
        before, cheapest = answers[0], f"{then.place.name} is the cheapest"
        if isinstance(before, NoOuting):
            why = f"{was} is out: {'; '.join(before.reasons)}. Then {cheapest}, with {_total(then)}."
            return Flip(what, now, at, price, then.place.id, f"{under}, {why}")
        sentence = f"{under}, {cheapest}: {_total(then)} against {_total(before)} for {was}."
        return Flip(what, now, at, price, then.place.id, sentence)


def _likely(outing: Outing) -> Decimal:
    return outing.cost.total.likely.amount


def _first(answers: Sequence[_Answer]) -> Outing | None:
    """The cheapest of what can be done, the earliest among equals; None where nothing can."""
    return min((answer for answer in answers if isinstance(answer, Outing)), key=_likely, default=None)


def _changes(answers: Sequence[_Answer]) -> bool:
    """Whether another outing is the first than the one that is it at present."""
    return _first(answers) is not answers[0]


def _total(outing: Outing) -> str:
    said = wording.money(outing.cost.total.likely)
    return f"at least {said}" if outing.cost.unknown else said


def _cost(household: Household, party: Sequence[Member], outing: Outing) -> OutingCost:
    """What an outing costs another household, with the same day plan and tickets."""
    lunch_out = any(step.kind is StepKind.LUNCH for step in outing.plan.steps)
    return outing_cost(
        household,
        party,
        outing.day,
        outing.place,
        outing.admission,
        outing.way_there,
        outing.way_home,
        lunch_out=lunch_out,
    )


def _years(day: date, today: date) -> set[int]:
    """The years that the days around an outing lie in."""
    around = (day - timedelta(days=DAYS_EITHER_SIDE), day, day + timedelta(days=DAYS_EITHER_SIDE))
    return {one.year for one in around if one >= today}


def _fuel_price(comparison: _Comparison) -> Iterator[Flip]:
    """The nearest price either way at which another place is cheaper, to the smallest coin.

    A total is a straight line in the price, so the first place keeps its rank between two prices at which it
    has it, but for the rounding of items to coins; halving the span finds the coin at which it loses it.
    """
    car = comparison.household.car
    price = None if car is None else car.rate if car.fuel in _BY_RATE else car.fuel_price
    if car is None or not price:
        return
    what, field = ("cost of driving", "rate") if car.fuel in _BY_RATE else ("fuel price", "fuel_price")
    currency, per = comparison.household.currency, _PER[car.fuel]
    coins = price.scaleb(minor_digits(currency))

    def answers(at: int) -> tuple[Outing, ...]:
        changed = car.model_copy(update={field: Money.from_minor(at, currency).amount})
        return comparison.recosted(comparison.household.model_copy(update={"car": changed}))

    now = f"{wording.money(Money(price, currency))} {per}"
    least, most = ceil(coins * LEAST_TIMES), floor(coins * MOST_TIMES)
    found = False
    for far, near, beyond in ((least, ceil(coins), "less"), (most, floor(coins), "more")):
        if far == near or not _changes(answers(far)):
            continue
        flips, keeps = far, near
        while abs(flips - keeps) > 1:
            middle = (flips + keeps) // 2
            if _changes(answers(middle)):
                flips = middle
            else:
                keeps = middle
        found, at = True, Money.from_minor(flips, currency)
        said = f"{wording.money(at)} {per} or {beyond}"
        yield comparison.flip(what, now, said, answers(flips), under=f"At {said}", price=at)
    if not found:
        span = wording.listed([wording.money(Money.from_minor(end, currency)) for end in (least, most)])
        yield comparison.flip(what, now, "", comparison.outings, under=f"Between {span} {per}")


def _food(comparison: _Comparison) -> Flip:
    """The other way of eating."""
    food = comparison.household.food
    other = "packed" if food.way == "bought" else "bought"
    changed = food.model_copy(update={"way": other})
    answers = comparison.recosted(comparison.household.model_copy(update={"food": changed}))
    return comparison.flip("food", food.way, other, answers, under=f"With {other} food")


def _adult_at_home(comparison: _Comparison) -> Iterator[Flip]:
    party, day = comparison.party, comparison.outings[0].day
    adults = [member for member in party if member.is_adult_on(day)]
    for gone in adults if len(adults) > 1 else ():
        rest = tuple(member for member in party if member is not gone)
        without = f"without {gone.name}"
        yield comparison.flip(
            f"{gone.name} at home",
            f"{gone.name} goes",
            without,
            comparison.all_replanned(party=rest),
            under=without.capitalize() if False else f"Without {gone.name}",
        )


def _one_more_child(comparison: _Comparison) -> Iterator[Flip]:
    """One more child of the household, as old as the youngest who pays."""
    household, party, first = comparison.household, comparison.party, comparison.outings[0]
    paying = [
        member
        for member in party
        if not member.is_adult_on(first.day) and first.admission.shares[member.name].minor > 0
    ]
    if not paying:
        return
    youngest = min(paying, key=lambda member: member.months_on(first.day))
    taken = {member.name for member in (*household.members, *party)}
    name = next(name for number in count(1) if (name := f"child {number}") not in taken)
    child = Member(name=name, born=youngest.born)
    larger = household.model_copy(update={"members": (*household.members, child)})
    answers = comparison.all_replanned(household=larger, party=(*party, child))
    more = f"one more child as old as {youngest.name}"
    yield comparison.flip("one more child", f"{len(party)} go", more, answers, under=f"With {more}")


def _passes(comparison: _Comparison) -> Iterator[Flip]:
    """Each pass that would make an outing cheaper which is not the first already."""
    household, outings = comparison.household, comparison.outings
    last_day = max(outing.day for outing in outings)
    places = {place.id: place for place in (*(o.place for o in outings), *comparison.family.places)}
    for place in places.values():
        for offer in place.offers:
            if not isinstance(offer, Pass) or (place.id, offer.name) in {
                (held.place, held.offer) for held in household.passes
            }:
                continue
            good_at = {place.id, *(other.place for other in offer.elsewhere if other.percent_off)}
            if not any(outing.place.id in good_at for outing in outings[1:]):
                continue
            cards = tuple(
                HeldPass(place=place.id, offer=offer.name, holders=holders, valid_until=last_day)
                for holders in _holders(comparison, offer, last_day)
            )
            owning = household.model_copy(update={"passes": (*household.passes, *cards)})
            answers = [
                comparison.replanned(index, household=owning) if outing.place.id in good_at else outing
                for index, outing in enumerate(outings)
            ]
            each = " by each of you" if len(cards) > 1 else ""
            yield comparison.flip(
                f"'{offer.name}'",
                "not owned",
                f"owned{each}",
                answers,
                under=f"With '{offer.name}' at {place.name} already owned{each}",
            )


def _holders(comparison: _Comparison, offer: Pass, day: date) -> list[tuple[str, ...]]:
    """Who would hold a pass: everybody one of their own if it seats one person, else one for all it seats."""
    family = {member.name for member in comparison.household.members}
    waiting = [(member.name, member.months_on(day)) for member in comparison.party if member.name in family]
    if sum(seats.count for seats in offer.seats) == 1:
        return [(name,) for name, months in waiting if months in offer.seats[0].ages]
    holders: list[str] = []
    for seats in offer.seats:
        fitting = [name for name, months in waiting if months in seats.ages and name not in holders]
        holders += fitting[: seats.count]
    return [tuple(holders)] if holders else []


def _other_weekdays(comparison: _Comparison) -> Iterator[Flip]:
    """For each outing, of the nearest date on each other weekday the cheapest one that makes a change."""
    for index, outing in enumerate(comparison.outings):
        what, now = f"another weekday at {outing.place.name}", wording.day(outing.day)
        found: dict[int, tuple[_Answer, ...]] = {}
        changing: list[tuple[Outing, tuple[_Answer, ...]]] = []
        for day in _nearest_days(outing.day, comparison.today):
            if day.weekday() in found:
                continue
            answer = comparison.replanned(index, day=day)
            if isinstance(answer, Outing):
                answers = (*comparison.outings[:index], answer, *comparison.outings[index + 1 :])
                found[day.weekday()] = answers
                if _changes(answers):
                    changing.append((answer, answers))
        if changing:
            other, answers = min(changing, key=lambda one: _likely(one[0]))
            at = wording.day(other.day)
            yield comparison.flip(what, now, at, answers, under=f"If you go to {other.place.name} on {at}")
        else:
            under = f"On any other weekday at {outing.place.name}"
            yield comparison.flip(what, now, "", comparison.outings, under=under)
