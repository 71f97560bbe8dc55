"""What would have to change for another of the compared outings to become the cheapest."""

from collections import defaultdict
from collections.abc import Callable, Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta
from decimal import Decimal
from itertools import count
from math import ceil, floor

from tripplan.planning import wording
from tripplan.planning.admission.blocks import bands_on
from tripplan.planning.admission.sentences import age_in_words
from tripplan.planning.ages import ADULT, AgeBand
from tripplan.planning.calendars import DateSpan
from tripplan.planning.car import Fuel
from tripplan.planning.cost import OutingCost, outing_cost
from tripplan.planning.cost.account import GROWN_APPETITE_MONTHS
from tripplan.planning.family import Family
from tripplan.planning.held_pass import HeldPass
from tripplan.planning.household import Household
from tripplan.planning.member import Member
from tripplan.planning.money import Money, minor_digits
from tripplan.planning.offers import Pass
from tripplan.planning.outing import NoOuting, Outing, plan_outing
from tripplan.planning.place import Place, PlaceId
from tripplan.planning.place_facts import PlaceFacts, place_facts
from tripplan.planning.sweep.sweeping import sweep
from tripplan.planning.sweep.table import DayTable

LEAST_TIMES, MOST_TIMES = Decimal("0.25"), Decimal(4)
"""A price of driving beyond these multiples of the present one is out of reason. No source, our choice."""
DAYS_EITHER_SIDE = 6
"""How far off another day of the week is looked for [days]; the seventh is the same weekday again."""
BIRTHDAYS_WITHIN_DAYS = 183
"""Birthdays further away are not looked at [days]; half a year."""

_PRICES_OF_DRIVING = {
    Fuel.MILES_PER_US_GALLON: ("fuel_price", "fuel price", "a gallon"),
    Fuel.LITRES_PER_100_KM: ("fuel_price", "fuel price", "a litre"),
    Fuel.KWH_PER_100_KM: ("fuel_price", "electricity price", "a kWh"),
    Fuel.RATE_PER_MILE: ("rate", "cost of driving", "a mile"),
    Fuel.RATE_PER_KM: ("rate", "cost of driving", "a km"),
}
"""The car's field that holds the price, its short name, and what it is for."""
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
    first = min(outings, key=_likely)
    in_order = (first, *(outing for outing in outings if outing is not first))
    facts = tuple(place_facts(family, outing.place, _years_around(outing.day, today)) for outing in in_order)
    comparison = _Comparison(family, tuple(party), in_order, facts, today)
    return (
        *_price_of_driving(comparison),
        _food(comparison),
        *_adult_at_home(comparison),
        *_one_more_child(comparison),
        *_passes(comparison),
        *_other_weekdays(comparison),
        *_birthdays(comparison),
    )


def flips_in_short(flips: Sequence[Flip]) -> tuple[str, ...]:
    """What changes the first place, a sentence each, and one sentence on all that does not."""
    said = [flip.sentence for flip in flips if flip.at is not None]
    idle = [flip.what for flip in flips if flip.at is None]
    if idle:
        said.append(f"None of these changes the first place, within reason: {wording.listed(idle)}.")
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

    def recosted(self, household: Household) -> tuple[_Answer, ...]:
        """All outings under a change of the household that moves neither day plans nor tickets."""
        return tuple(
            replace(outing, cost=_cost(household, self.family, self.party, outing)) for outing in self.outings
        )

    def replanned(
        self,
        index: int,
        *,
        household: Household | None = None,
        party: Sequence[Member] | None = None,
        day: date | None = None,
    ) -> _Answer:
        """One outing planned anew under a change; a departure picked by hand stays as far as it can."""
        outing = self.outings[index]
        picked = day is None and self.picked(index)
        return plan_outing(
            self.family if household is None else replace(self.family, household=household),
            self.party if party is None else party,
            self.facts[index],
            day or outing.day,
            today=self.today,
            leave_at=outing.plan.leave_home if picked else None,
        )

    def changed(
        self,
        *,
        household: Household | None = None,
        party_on: Callable[[date], Sequence[Member]] | None = None,
        indexes: Collection[int] | None = None,
    ) -> tuple[_Answer, ...] | None:
        """All outings under a change, or None where the first place stays, which the totals alone tell.

        Args:
            household: as changed.
            party_on: who goes on the day of an outing, as changed.
            indexes: the outings that the change concerns; all when left out.
        """
        family = self.family if household is None else replace(self.family, household=household)
        asked = range(len(self.outings)) if indexes is None else indexes
        by_day: dict[date, list[int]] = defaultdict(list)
        for index in asked:
            by_day[self.outings[index].day].append(index)
        parties = {day: party_on(day) if party_on else self.party for day in by_day}

        def planned(index: int) -> _Answer:
            return self.replanned(index, household=household, party=parties[self.outings[index].day])

        if not any(self.picked(index) for index in asked):
            totals = self.totals()
            for day, concerned in by_day.items():
                places = [self.outings[index].place for index in concerned]
                table = sweep(family, parties[day], places, DateSpan(first=day, last=day), today=self.today)
                totals |= {index: _total_in(table, row, 0) for row, index in enumerate(concerned)}
            if _first_of(totals) == 0:
                return None
        return tuple(planned(n) if n in asked else outing for n, outing in enumerate(self.outings))

    def totals(self) -> dict[int, int | None]:
        """What each outing likely costs at present, by its number [smallest coins]."""
        return {n: outing.cost.total.likely.minor for n, outing in enumerate(self.outings)}

    def picked(self, index: int) -> bool:
        """Whether the departure of an outing was picked by hand."""
        outing = self.outings[index]
        return outing.plan != outing.search.best

    def with_outing(self, index: int, answer: _Answer) -> tuple[_Answer, ...]:
        """All outings as they are but for one."""
        return (*self.outings[:index], answer, *self.outings[index + 1 :])

    def stays(self, what: str, now: str, under: str) -> Flip:
        """An input that does not change the first place."""
        sentence = f"{under}, {self.outings[0].place.name} stays the cheapest."
        return Flip(what, now, None, None, None, sentence)

    def flip(
        self,
        what: str,
        now: str,
        at: str,
        under: str,
        answers: Sequence[_Answer] | None,
        *,
        price: Money | None = None,
    ) -> Flip:
        """What the outings under a change mean for the first place.

        Args:
            what: the input's short name.
            now: its present value.
            at: its value under the change.
            under: the change as the first words of a sentence.
            answers: the outings under the change, in the comparison's order; None where the first stays.
            price: the value as money, for a price.
        """
        if answers is None or not _changes(answers):
            return self.stays(what, now, under)
        then, before, name = _first(answers), answers[0], self.outings[0].place.name
        if then is None:
            return Flip(what, now, at, price, None, f"{under}, none of these outings can be done.")
        cheapest = f"{then.place.name} is the cheapest"
        if isinstance(before, NoOuting):
            why = "; ".join(before.reasons)
            sentence = f"{under}, {name} cannot be done ({why}); {cheapest} of the rest: {_total(then)}."
        else:
            sentence = f"{under}, {cheapest}: {_total(then)} against {_total(before)} for {name}."
        return Flip(what, now, at, price, then.place.id, sentence)


def _likely(outing: Outing) -> Decimal:
    return outing.cost.total.likely.amount


def _first(answers: Sequence[_Answer]) -> Outing | None:
    """The cheapest of what can be done, the earliest among equals; None where nothing can."""
    return min((answer for answer in answers if isinstance(answer, Outing)), key=_likely, default=None)


def _changes(answers: Sequence[_Answer]) -> bool:
    """Whether the first is another outing than at present."""
    return _first(answers) is not answers[0]


def _total_in(table: DayTable, row: int, column: int) -> int | None:
    """The likely total of one place on one day [smallest coins]; None where it cannot be done."""
    return int(table.likely[row, column]) if table.can_go[row, column] else None


def _first_of(totals: Mapping[int, int | None]) -> int | None:
    """The number of the cheapest of what can be done, the earliest among equals."""
    known = {n: total for n, total in totals.items() if total is not None}
    return min(known, key=lambda n: (known[n], n), default=None)


def _total(outing: Outing) -> str:
    said = wording.money(outing.cost.total.likely)
    return f"at least {said}" if outing.cost.unknown else said


def _cost(household: Household, family: Family, party: Sequence[Member], outing: Outing) -> OutingCost:
    """What the same day plan and tickets cost under a change of the household."""
    return outing_cost(
        household,
        party,
        outing.day,
        outing.place,
        outing.admission,
        outing.way_there,
        outing.way_home,
        lunch_out=outing.plan.lunch_out,
        own=family.own_figures_for(outing.place.id),
    )


def _price_of_driving(comparison: _Comparison) -> Iterator[Flip]:
    """The nearest price either way at which another place is cheaper, to the smallest coin.

    A total is a straight line in the price, but for items being rounded to coins. So a place that is first at
    both ends of a span is first within it; and where it is not, halving the span finds the coin at which it
    stops being first.
    """
    household, car = comparison.household, comparison.household.car
    if car is None:
        return
    field, what, per = _PRICES_OF_DRIVING[car.fuel]
    price: Decimal | None = getattr(car, field)
    if not price:
        return
    currency = household.currency

    def answers_at(coins: int) -> tuple[_Answer, ...]:
        changed = car.model_copy(update={field: Money.from_minor(coins, currency).amount})
        return comparison.recosted(household.model_copy(update={"car": changed}))

    now = f"{wording.money(Money(price, currency))} {per}"
    coins = price.scaleb(minor_digits(currency))
    least, most = ceil(coins * LEAST_TIMES), floor(coins * MOST_TIMES)
    found = False
    for first_kept, end, beyond in ((ceil(coins), least, "less"), (floor(coins), most, "more")):
        if end == first_kept or not _changes(answers_at(end)):
            continue
        kept, changed = first_kept, end
        while abs(changed - kept) > 1:
            middle = (kept + changed) // 2
            if _changes(answers_at(middle)):
                changed = middle
            else:
                kept = middle
        found, value = True, Money.from_minor(changed, currency)
        at = f"{wording.money(value)} {per} or {beyond}"
        yield comparison.flip(what, now, at, f"At {at}", answers_at(changed), price=value)
    if not found:
        ends = wording.listed([wording.money(Money.from_minor(end, currency)) for end in (least, most)])
        yield comparison.stays(what, now, f"Between {ends} {per}")


def _food(comparison: _Comparison) -> Flip:
    """The other way to eat."""
    food = comparison.household.food
    other = "packed" if food.way == "bought" else "bought"
    changed = food.model_copy(update={"way": other})
    answers = comparison.recosted(comparison.household.model_copy(update={"food": changed}))
    return comparison.flip("food", food.way, other, f"With {other} food", answers)


def _adult_at_home(comparison: _Comparison) -> Iterator[Flip]:
    party, day = comparison.party, comparison.outings[0].day
    adults = [member for member in party if member.is_adult_on(day)]
    for gone in adults if len(adults) > 1 else ():
        rest = tuple(member for member in party if member is not gone)
        answers = comparison.changed(party_on=_always(rest))
        yield comparison.flip(
            f"{gone.name} at home", f"{gone.name} goes", "at home", f"Without {gone.name}", answers
        )


def _always(party: Sequence[Member]) -> Callable[[date], Sequence[Member]]:
    """The same party whatever the day."""
    return lambda _: party


def _one_more_child(comparison: _Comparison) -> Iterator[Flip]:
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
    like = f"one more child as old as {youngest.name}"
    yield comparison.flip("one more child", f"{len(party)} go", like, f"With {like}", answers)


def _passes(comparison: _Comparison) -> Iterator[Flip]:
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
        what = f"'{offer.name}' ({place.name})"
        at = f"{len(cards)} owned" if len(cards) > 1 else "owned"
        under = f"With {f'{len(cards)} of ' if len(cards) > 1 else ''}{what} already owned"
        yield comparison.flip(what, "not owned", at, under, answers)


def _holders(comparison: _Comparison, offer: Pass, day: date) -> list[tuple[str, ...]]:
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


def _other_weekdays(comparison: _Comparison) -> Iterator[Flip]:
    """For each outing the other weekday, by its nearest date, with the least total that makes a change."""
    for index, outing in enumerate(comparison.outings):
        what, now = f"another weekday at {outing.place.name}", wording.day(outing.day)
        changing = {
            day: total
            for day, total in _on_other_weekdays(comparison, index).items()
            if _first_of({**comparison.totals(), index: total}) != 0
        }
        if not changing:
            under = f"If you go to {outing.place.name} on any other weekday near {now}"
            yield comparison.stays(what, now, under)
            continue
        day = min(changing, key=changing.__getitem__)
        at = wording.day(day)
        under = f"If you go to {outing.place.name} on {at}"
        answers = comparison.with_outing(index, comparison.replanned(index, day=day))
        yield comparison.flip(what, now, at, under, answers)


def _on_other_weekdays(comparison: _Comparison, index: int) -> dict[date, int]:
    """What one outing costs on each other weekday, by the nearest date on which it can be done, in order."""
    outing, today = comparison.outings[index], comparison.today
    around = timedelta(days=DAYS_EITHER_SIDE)
    span = DateSpan(first=max(outing.day - around, today), last=outing.day + around)
    table = sweep(comparison.family, comparison.party, [outing.place], span, today=today)
    found: dict[date, int] = {}
    for distance in range(1, DAYS_EITHER_SIDE + 1):
        for day in _dates_at(outing.day, distance, today):
            total = _total_in(table, 0, (day - span.first).days)
            if total is not None and day.weekday() not in {other.weekday() for other in found}:
                found[day] = total
    return found


def _dates_at(day: date, distance: int, today: date) -> Iterator[date]:
    """The dates so many days after and before a day, as far as they are not over."""
    later, earlier = day + timedelta(days=distance), day - timedelta(days=distance)
    return (one for one in (later, earlier) if one >= today)


def _years_around(day: date, today: date) -> set[int]:
    """The years of an outing's day and of those near it."""
    return {day.year, *(one.year for one in _dates_at(day, DAYS_EITHER_SIDE, today))}


def _birthdays(comparison: _Comparison) -> Iterator[Flip]:
    """The first birthday within half a year that changes the first place, or that none does."""
    crossings = _crossings(comparison)
    if not crossings:
        return
    what, now = "next birthdays", f"ages on {wording.day(comparison.outings[0].day)}"
    for when, member in crossings:

        def aged(day: date, when: date = when) -> tuple[Member, ...]:
            return tuple(one.aged(day, max(day, when)) for one in comparison.party)

        answers = comparison.changed(party_on=aged)
        if answers is not None and _changes(answers):
            under = f"From {wording.day(when)}, when {member.name} is {age_in_words(member.months_on(when))}"
            yield comparison.flip(what, now, wording.day(when), f"{under} old", answers)
            return
    yield comparison.stays(what, now, f"With the birthdays until {wording.day(crossings[-1][0])}")


def _crossings(comparison: _Comparison) -> list[tuple[date, Member]]:
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
        yield from bands_on(offer)
    for rule in place.must_be_accompanied:
        yield from (rule.ages, rule.by)
    yield from (add_on.ages for add_on in place.add_ons if add_on.usual)
