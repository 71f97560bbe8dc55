"""The whole account of one outing: everything that leaves the purse, from admission to the reserve."""

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass, field, replace
from datetime import date
from decimal import Decimal
from functools import cached_property, lru_cache

from tripplan.documents.family.food import Food
from tripplan.documents.family.household import Household
from tripplan.documents.family.member import Member
from tripplan.documents.places.idea import A_GUESS, IdeaPlace
from tripplan.documents.places.offers import AddOn
from tripplan.documents.places.own_figures import OwnFigures
from tripplan.documents.places.place import Place
from tripplan.errors import CurrencyMismatch, PlanError
from tripplan.language.sentences import Fact, fact
from tripplan.planning.admission.add_on_limits import height_fits, takes
from tripplan.planning.admission.availability import VisitTime
from tripplan.planning.admission.result import Admission, EntryPrice, NoAdmission
from tripplan.planning.cost.driving import cars_needed, driving_items
from tripplan.planning.cost.items import CostItem, OutingCost, Swing, add_up, give_or_take, known_item
from tripplan.planning.cost.mileage_rates import PublishedRates, published_on
from tripplan.planning.cost.parking import parking_price
from tripplan.planning.travel.drive import Leg
from tripplan.values.ages import ADULT, MONTHS
from tripplan.values.cost_kind import CostKind
from tripplan.values.money import Money, total
from tripplan.values.ranges import Origin, Source

GROWN_APPETITE_MONTHS = 13 * MONTHS
"""From this age on a meal counts as an adult's [months]. Common practice of children's menus, no source."""
PACKED_GIVE_OR_TAKE, BOUGHT_GIVE_OR_TAKE = Decimal(15), Decimal(25)
"""How far food may cost more or less than the household's figure [%]. No source, our choice."""

GUESS_BELOW, GUESS_ABOVE = Decimal("0.5"), Decimal(1)
"""By what share a guess of tickets and parking may be too high, or too low [-]. No source, our choice."""


def outing_cost(
    household: Household,
    party: Sequence[Member],
    day: date,
    place: Place,
    admission: Admission | EntryPrice | NoAdmission,
    way_there: Leg,
    way_home: Leg,
    *,
    lunch_there: bool = True,
    own: OwnFigures | None = None,
    count_wear: bool = False,
    visit: VisitTime | None = None,
) -> OutingCost:
    """What an outing costs in all.

    Tolls and ferries are not looked up; they count as far as the parent's own figures name them.

    Args:
        household: its car, food, treats and reserve.
        party: who goes; ages are those on `day`.
        day: the date.
        place: the card: parking, add-ons, tax on them, food rules, how old its prices are.
        admission: what entry costs, or why there is none.
        way_there: the drive out.
        way_home: the drive back.
        lunch_there: whether lunch is eaten at the place, else at home or packed, which is as dear; food costs
            what it does over eating at home, or all of it where the household says so.
        own: the parent's own figures for this place: add-ons wanted, tolls, further extras.
        count_wear: whether the car's loss of value is an item.
        visit: arrival and leaving, for parking that is paid by the hour; None where nobody has said when.

    Returns:
        Items, total and what is unknown; the total's likely amount is exactly the sum of the items'.

    Raises:
        PlanError: nobody goes, or the own figures are another place's.
        CurrencyMismatch: the place's prices are in another currency than the household's money.
    """
    account = Account(household, place, way_there, way_home, own=own, count_wear=count_wear)
    return account.cost(party, day, admission, lunch_there=lunch_there, visit=visit)


@dataclass(frozen=True, eq=False)
class Account:
    """What outings of a household to one place cost, by the same way; what they share is worked out once.

    Attributes:
        household, place, way_there, way_home, own, count_wear: as for `outing_cost`, and so are the errors.
    """

    household: Household
    place: Place
    way_there: Leg
    way_home: Leg
    own: OwnFigures | None = None
    count_wear: bool = False
    _by_car: dict[tuple[int, PublishedRates, Decimal | None, bool], tuple[CostItem, ...]] = field(
        default_factory=dict
    )

    def __post_init__(self) -> None:
        place, own = self.place, self.own
        if place.currency != self.household.currency:
            raise CurrencyMismatch(place.currency, self.household.currency)
        if own is not None and own.place != place.id:
            raise PlanError(f"the own figures for {own.place} do not fit {place.id}")

    def cost(
        self,
        party: Sequence[Member],
        day: date,
        admission: Admission | EntryPrice | NoAdmission,
        *,
        lunch_there: bool = True,
        visit: VisitTime | None = None,
    ) -> OutingCost:
        """What one of the outings costs; the arguments and errors are those of `outing_cost`."""
        months = _ages(party, day)
        beside = self._beside_food(party, months, day, admission, visit)
        return self._in_all(beside, self._food(months, out=lunch_there))

    def costs(
        self,
        party: Sequence[Member],
        day: date,
        admission: EntryPrice,
        visit: VisitTime,
    ) -> tuple[OutingCost, OutingCost]:
        """What one of the outings costs with lunch at home, and out; twice the second where they are equal.

        The arguments and errors are those of `outing_cost`.
        """
        months = _ages(party, day)
        beside = self._beside_food(party, months, day, admission, visit)
        at_home, out = (self._food(months, out=out) for out in (False, True))
        there = self._in_all(beside, out)
        told_home, told_out = ([(item.likely, item.swings) for item in food] for food in (at_home, out))
        return there if told_home == told_out else self._in_all(beside, at_home), there

    def _beside_food(
        self,
        party: Sequence[Member],
        months: Sequence[int],
        day: date,
        admission: Admission | EntryPrice | NoAdmission,
        visit: VisitTime | None,
    ) -> list[CostItem]:
        """The items of one of the outings but for food and the reserve."""
        household, currency = self.household, self.household.currency
        included = not isinstance(admission, NoAdmission) and admission.parking_included
        parking = parking_price(self.place.parking, visit)
        return [
            self._admission(admission, len(party)),
            *self._of_the_car(len(party), day, parking, included=included),
            *self._add_ons(party, months, admission, visit),
            *_own_extras(currency, self.own),
            *_treats(currency, household.treats_per_child, sum(age not in ADULT for age in months)),
        ]

    def _in_all(self, beside: Sequence[CostItem], food: Sequence[CostItem]) -> OutingCost:
        items = [*beside, *food]
        return add_up([*items, *_reserve(self.household, items)], self.household.currency)

    def _of_the_car(
        self, people: int, day: date, parking: Decimal | None, *, included: bool
    ) -> tuple[CostItem, ...]:
        """Driving, tolls and parking at a price for each car; parking may be included in a pass."""
        household, published = self.household, published_on(day)
        key = (people, published, parking, included)
        if key not in self._by_car:
            there, back, to = self.way_there, self.way_home, self.place.name
            self._by_car[key] = (
                *driving_items(household, people, published, there, back, to, count_wear=self.count_wear),
                *_tolls(household.currency, self.own),
                *self._parking(parking, cars_needed(household, people), included=included),
            )
        return self._by_car[key]

    @cached_property
    def _card(self) -> Source:
        read = self.place.prices_read
        return Source(Origin.PLACE_CARD, f"{self.place.name}, prices read {read.on}: {read.source}")

    def _from_card(self, kind: CostKind, label: Fact, likely: Money) -> CostItem:
        """An item at the place's prices, which all may have moved together since they were read."""
        place = self.place
        swing = give_or_take(f"prices at {place.name}", likely, place.prices_read.give_or_take_percent)
        return known_item(kind, label, likely, self._card, (swing,))

    def _unknown_on_card(self, kind: CostKind, label: Fact) -> CostItem:
        source = Source(Origin.PLACE_CARD, f"{self.place.name}: the card does not say")
        return CostItem(kind, label, None, source)

    def _taxed(self, price: Decimal, *, taxable: bool) -> Money:
        """A price of the card with the sales tax that it leaves out."""
        tax = self.place.sales_tax
        percent = tax.percent if tax and taxable else Decimal(0)
        return Money(price * (1 + percent / 100), self.place.currency)

    def _admission(self, admission: Admission | EntryPrice | NoAdmission, people: int) -> CostItem:
        if isinstance(admission, NoAdmission):
            return self._unknown_on_card(CostKind.ADMISSION, fact("costs-no-admission"))
        if isinstance(self.place, IdeaPlace):
            return _guessed_entry(self.place)
        return self._from_card(CostKind.ADMISSION, fact("costs-admission", people=people), admission.total)

    def _parking(self, for_one: Decimal | None, cars: int, *, included: bool) -> Iterator[CostItem]:
        if isinstance(self.place, IdeaPlace):
            return  # part of the guess
        yield self._parking_on_card(for_one, cars, included=included)

    def _parking_on_card(self, for_one: Decimal | None, cars: int, *, included: bool) -> CostItem:
        place, label = self.place, fact("costs-parking", cars=cars)
        if included:
            free = fact("costs-parking-in-pass", parking=label)
            return self._from_card(CostKind.PARKING, free, Money.zero(place.currency))
        if for_one is None:
            return self._unknown_on_card(CostKind.PARKING, label)
        taxable = place.sales_tax is not None and place.sales_tax.on_parking
        price = self._taxed(for_one * cars, taxable=taxable)
        return self._from_card(CostKind.PARKING, label, price)

    def _food(self, months: Sequence[int], *, out: bool) -> tuple[CostItem, ...]:
        food, visit, currency = self.household.food, self.place.visit, self.household.currency
        grown, children = _eaters(food, months)
        if not out:
            return _lunch_at_home(food, currency, grown, children)
        return _meal(food, currency, grown, children, sold=visit.food_sold, own_food=visit.own_food)

    def _add_ons(
        self,
        party: Sequence[Member],
        months: Sequence[int],
        admission: Admission | EntryPrice | NoAdmission,
        visit: VisitTime | None,
    ) -> Iterator[CostItem]:
        """What is taken beside entry, at the price that goes with each person's ticket."""
        beside = {} if isinstance(admission, NoAdmission) else dict(admission.beside)
        place, chosen = self.place, None if self.own is None else self.own.add_ons
        for name in chosen or ():
            if name not in {add_on.name for add_on in place.add_ons}:
                yield self._unknown_on_card(CostKind.EXTRAS, fact("costs-extra-gone", name=name))
        taxable = place.sales_tax is not None and place.sales_tax.on_add_ons
        for add_on in wanted_add_ons(place, self.own):
            with_ticket = dict(beside.get(add_on.name, ()))
            takers = [
                (height_fits(add_on, member, age), with_ticket.get(number, add_on.price))
                for number, (member, age) in enumerate(zip(party, months, strict=True))
                if takes(add_on, member, age) and with_ticket.get(number) != 0
            ]
            if not takers or not (visit is None or visit.meets(add_on.valid)):
                continue
            price = _for_all(add_on, [price for _, price in takers])
            label = fact("costs-extra", name=add_on.name)
            if add_on.per == "person":
                label = fact("costs-extra-for", name=add_on.name, people=len(takers))
            item = self._from_card(CostKind.EXTRAS, label, self._taxed(price, taxable=taxable))
            certain = _for_all(add_on, [price for fits, price in takers if fits])
            if certain < price:
                may_save = self._taxed(price - certain, taxable=taxable)
                swing = Swing(f"heights for {add_on.name}", may_save, Money.zero(may_save.currency))
                item = replace(item, swings=(*item.swings, swing))
            yield item


def _for_all(add_on: AddOn, prices: Collection[Decimal]) -> Decimal:
    """What an add-on costs the party, by what it costs each who takes it."""
    return sum(prices, Decimal(0)) if add_on.per == "person" else max(prices, default=Decimal(0))


def wanted_add_ons(place: Place, own: OwnFigures | None) -> tuple[AddOn, ...]:
    """What a family takes beside entry: what most do, or what the parent has said."""
    chosen = None if own is None else own.add_ons
    return tuple(
        add_on for add_on in place.add_ons if (add_on.usual if chosen is None else add_on.name in chosen)
    )


def _ages(party: Sequence[Member], day: date) -> list[int]:
    """Everybody's age on a day [completed months]; somebody must be there."""
    if not party:
        raise PlanError("an outing without anybody has no cost")
    return [member.months_on(day) for member in party]


def meal_price(household: Household, party: Sequence[Member], day: date, *, bought: bool) -> Money:
    """What one meal of a party costs by the household's figures.

    Args:
        household: its food.
        party: who eats; ages are those on `day`.
        day: the date.
        bought: whether it is bought there, or packed at home.
    """
    grown, children = _eaters(household.food, [member.months_on(day) for member in party])
    return _meal_price(household.food, household.currency, grown, children, bought=bought)


def _eaters(food: Food, months: Sequence[int]) -> tuple[int, int]:
    """How many eat as grown-ups and how many as children; the youngest eat what comes along anyway."""
    eaters = [age for age in months if age >= food.free_under_months]
    grown = sum(age >= GROWN_APPETITE_MONTHS for age in eaters)
    return grown, len(eaters) - grown


def _meal_price(food: Food, currency: str, grown: int, children: int, *, bought: bool) -> Money:
    adult, child = (
        (food.bought_adult, food.bought_child) if bought else (food.packed_adult, food.packed_child)
    )
    return Money(adult * grown + child * children, currency)


@lru_cache(maxsize=256)
def _meal(
    food: Food, currency: str, grown: int, children: int, *, sold: bool, own_food: bool
) -> tuple[CostItem, ...]:
    """A meal of so many, bought or packed as the place allows it."""
    if not grown + children:
        return ()
    bought, why = food.way == "bought", "as-wished"
    if bought and not sold:
        bought, why = False, "none-sold"
    elif not bought and sold and not own_food:
        bought, why = True, "own-not-allowed"
    price = _meal_price(food, currency, grown, children, bought=bought)
    cause, percent, told = (
        ("price of bought food", BOUGHT_GIVE_OR_TAKE, food.bought_from)
        if bought
        else ("price of packed food", PACKED_GIVE_OR_TAKE, food.packed_from)
    )
    label = fact("costs-food", people=grown + children, bought=bought, why=why)
    whose = f"the household's figures for one meal{f' ({told})' if told else ''}"
    if food.count_all:
        source = Source(Origin.ESTIMATE, f"{whose}, give or take {percent} %")
        return (known_item(CostKind.FOOD, label, price, source, (give_or_take(cause, price, percent),)),)
    if not bought:
        source = Source(Origin.ESTIMATE, f"{whose}; eating at home costs as much")
        return (known_item(CostKind.FOOD, label, Money.zero(currency), source),)
    at_home = _meal_price(food, currency, grown, children, bought=False)
    over = max(price - at_home, Money.zero(currency))
    source = Source(Origin.ESTIMATE, f"{whose}, give or take {percent} %, less what eating at home costs")
    return (known_item(CostKind.FOOD, label, over, source, (give_or_take(cause, price, percent),)),)


@lru_cache(maxsize=256)
def _lunch_at_home(food: Food, currency: str, grown: int, children: int) -> tuple[CostItem, ...]:
    label = fact("costs-lunch-from-home")
    if not food.count_all or not grown + children:
        told = f" ({food.packed_from})" if food.packed_from else ""
        source = Source(
            Origin.ESTIMATE,
            "the day plan has lunch at home, or packed on the way, as dear by the household's figures for "
            f"one meal{told}",
        )
        return (known_item(CostKind.FOOD, label, Money.zero(currency), source),)
    price = _meal_price(food, currency, grown, children, bought=False)
    swing = give_or_take("price of packed food", price, PACKED_GIVE_OR_TAKE)
    source = Source(Origin.ESTIMATE, f"as dear as packed food, give or take {PACKED_GIVE_OR_TAKE} %")
    return (known_item(CostKind.FOOD, label, price, source, (swing,)),)


def _guessed_entry(place: IdeaPlace) -> CostItem:
    """Tickets and parking of an idea: the parent's guess with a wide range, or unknown."""
    money, label = place.idea.money, fact("costs-tickets-and-parking")
    if money is None:
        return CostItem(CostKind.ADMISSION, label, None, Source(Origin.PARENT, "only an idea so far"))
    likely = Money(money, place.currency)
    swing = Swing(f"tickets and parking at {place.name}", likely * GUESS_BELOW, likely * GUESS_ABOVE)
    return known_item(
        CostKind.ADMISSION, fact("costs-guess", what=label), likely, Source(Origin.PARENT, A_GUESS), (swing,)
    )


def _tolls(currency: str, own: OwnFigures | None) -> Iterator[CostItem]:
    if own is not None and own.tolls is not None:
        yield known_item(
            CostKind.CAR,
            fact("costs-tolls"),
            Money(own.tolls, currency),
            Source(Origin.PARENT, "typed in for this place"),
        )


def _own_extras(currency: str, own: OwnFigures | None) -> Iterator[CostItem]:
    for extra in () if own is None else own.extras:
        likely = Money(extra.price, currency)
        yield known_item(
            CostKind.EXTRAS,
            fact("costs-extra", name=extra.name),
            likely,
            Source(Origin.PARENT, "typed in for this place"),
            (give_or_take(f"{extra.name} at {own.place}", likely, extra.give_or_take_percent),)
            if own and extra.give_or_take_percent
            else (),
        )


@lru_cache(maxsize=256)
def _treats(currency: str, each: Decimal, children: int) -> tuple[CostItem, ...]:
    if not children or not each:
        return ()
    source = Source(Origin.PARENT, "planned per child")
    return (
        known_item(
            CostKind.EXTRAS, fact("costs-treats", children=children), Money(each * children, currency), source
        ),
    )


def _reserve(household: Household, items: Sequence[CostItem]) -> Iterator[CostItem]:
    """A share of the known rest, exact because the parent sets it aside."""
    percent = household.reserve_percent
    if percent:
        rest = total((item.likely for item in items if item.likely), household.currency)
        yield known_item(
            CostKind.RESERVE,
            fact("costs-reserve", share=float(percent) / 100),
            rest * (percent / 100),
            Source(Origin.PARENT, "set aside for what nobody thought of"),
        )
