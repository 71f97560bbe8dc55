"""The whole account of one outing: everything that leaves the purse, from admission to the reserve."""

from collections.abc import Collection, Iterator, Sequence
from datetime import date
from decimal import Decimal

from tripplan.errors import CurrencyMismatch, PlanError
from tripplan.planning.admission.result import Admission, EntryPrice, NoAdmission
from tripplan.planning.ages import MONTHS
from tripplan.planning.cost.driving import cars_needed, driving_items
from tripplan.planning.cost.items import CostItem, CostKind, OutingCost, add_up, give_or_take, known_item
from tripplan.planning.household import Household, Member
from tripplan.planning.money import Money, total
from tripplan.planning.own_figures import OwnFigures
from tripplan.planning.place import Place
from tripplan.planning.ranges import Origin, Source
from tripplan.planning.travel.drive import Leg

GROWN_APPETITE_MONTHS = 13 * MONTHS
"""From this age on a meal counts as an adult's [months]. Common practice of children's menus, no source."""
PACKED_GIVE_OR_TAKE, BOUGHT_GIVE_OR_TAKE = Decimal(15), Decimal(25)
"""How far food may cost more or less than the household's figure [%]. No source, our choice."""


def outing_cost(
    household: Household,
    party: Sequence[Member],
    day: date,
    place: Place,
    admission: Admission | EntryPrice | NoAdmission,
    way_there: Leg,
    way_home: Leg,
    *,
    lunch_out: bool = True,
    own: OwnFigures | None = None,
    count_wear: bool = False,
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
        lunch_out: whether the party is out at lunch time; a lunch at home costs nothing extra.
        own: the parent's own figures for this place: add-ons wanted, tolls, further extras.
        count_wear: whether the car's loss of value is an item.

    Returns:
        Items, total and what is unknown; the total's likely amount is exactly the sum of the items'.

    Raises:
        PlanError: nobody goes, or the own figures are another place's.
        CurrencyMismatch: the place's prices are in another currency than the household's money.
    """
    if not party:
        raise PlanError("an outing without anybody has no cost")
    if place.currency != household.currency:
        raise CurrencyMismatch(place.currency, household.currency)
    if own is not None and own.place != place.id:
        raise PlanError(f"the own figures for {own.place} do not fit {place.id}")
    items = [
        _admission(place, admission, len(party)),
        *driving_items(household, len(party), day, way_there, way_home, place.name, count_wear=count_wear),
        *_tolls(household, own),
        _parking(place, cars_needed(household, len(party)), admission),
        *(_food(household, party, day, place) if lunch_out else _lunch_at_home(household)),
        *_add_ons(place, party, day, None if own is None else own.add_ons),
        *_own_extras(household, own),
        *_treats(household, party, day),
    ]
    return add_up([*items, *_reserve(household, items)], household.currency)


def _from_card(kind: CostKind, label: str, likely: Money, place: Place) -> CostItem:
    """An item at the place's prices, which all may have moved together since they were read."""
    read = place.prices_read
    swing = give_or_take(f"prices at {place.name}", likely, read.give_or_take_percent)
    source = Source(Origin.PLACE_CARD, f"{place.name}, prices read {read.on}: {read.source}")
    return known_item(kind, label, likely, source, (swing,))


def _unknown_on_card(kind: CostKind, label: str, place: Place) -> CostItem:
    return CostItem(kind, label, None, Source(Origin.PLACE_CARD, f"{place.name}: the card does not say"))


def _taxed(place: Place, price: Decimal, *, taxable: bool) -> Money:
    """A price of the card with the sales tax that it leaves out."""
    percent = place.sales_tax.percent if place.sales_tax and taxable else Decimal(0)
    return Money(price * (1 + percent / 100), place.currency)


def _admission(place: Place, admission: Admission | EntryPrice | NoAdmission, people: int) -> CostItem:
    if isinstance(admission, NoAdmission):
        return _unknown_on_card(CostKind.ADMISSION, "admission, as no offer lets this party in", place)
    return _from_card(CostKind.ADMISSION, f"admission for {people}", admission.total, place)


def _parking(place: Place, cars: int, admission: Admission | EntryPrice | NoAdmission) -> CostItem:
    label = "parking" if cars == 1 else f"parking for {cars} cars"
    if not isinstance(admission, NoAdmission) and admission.parking_included:
        free = Money.zero(place.currency)
        return _from_card(CostKind.PARKING, f"{label}, included in the pass", free, place)
    if place.parking.price is None:
        return _unknown_on_card(CostKind.PARKING, label, place)
    taxable = place.sales_tax is not None and place.sales_tax.on_parking
    return _from_card(
        CostKind.PARKING, label, _taxed(place, place.parking.price * cars, taxable=taxable), place
    )


def meal_price(household: Household, party: Sequence[Member], day: date, *, bought: bool) -> Money:
    """What one meal of a party costs by the household's figures.

    Args:
        household: its food.
        party: who eats; ages are those on `day`.
        day: the date.
        bought: whether it is bought there, or packed at home.
    """
    return _meals(household, *_eaters(household, party, day), bought=bought)


def _meals(household: Household, grown: int, children: int, *, bought: bool) -> Money:
    food = household.food
    adult, child = (
        (food.bought_adult, food.bought_child) if bought else (food.packed_adult, food.packed_child)
    )
    return Money(adult * grown + child * children, household.currency)


def _eaters(household: Household, party: Sequence[Member], day: date) -> tuple[int, int]:
    """How many eat as grown-ups and how many as children; the youngest eat what comes along anyway."""
    eaters = [m for member in party if (m := member.months_on(day)) >= household.food.free_under_months]
    grown = sum(months >= GROWN_APPETITE_MONTHS for months in eaters)
    return grown, len(eaters) - grown


def _food(household: Household, party: Sequence[Member], day: date, place: Place) -> Iterator[CostItem]:
    food, visit = household.food, place.visit
    grown, children = _eaters(household, party, day)
    if not grown + children:
        return
    bought, why = food.way == "bought", ""
    if bought and not visit.food_sold:
        bought, why = False, ", as none is sold there"
    elif not bought and visit.food_sold and not visit.own_food:
        bought, why = True, ", as own food is not allowed there"
    likely = _meals(household, grown, children, bought=bought)
    cause, percent, told = (
        ("price of bought food", BOUGHT_GIVE_OR_TAKE, food.bought_from)
        if bought
        else ("price of packed food", PACKED_GIVE_OR_TAKE, food.packed_from)
    )
    whose = f"the household's figures for one meal{f' ({told})' if told else ''}"
    yield known_item(
        CostKind.FOOD,
        f"food for {grown + children}, {'bought' if bought else 'packed'}{why}",
        likely,
        Source(Origin.ESTIMATE, f"{whose}, give or take {percent} %"),
        (give_or_take(cause, likely, percent),),
    )


def _lunch_at_home(household: Household) -> Iterator[CostItem]:
    yield known_item(
        CostKind.FOOD,
        "lunch is eaten at home",
        Money.zero(household.currency),
        Source(Origin.ESTIMATE, "the day plan is home again at lunch time, or leaves after it"),
    )


def _add_ons(
    place: Place, party: Sequence[Member], day: date, chosen: Collection[str] | None
) -> Iterator[CostItem]:
    for name in chosen or ():
        if name not in {add_on.name for add_on in place.add_ons}:
            yield _unknown_on_card(CostKind.EXTRAS, f"{name}, which is no longer on the card", place)
    taxable = place.sales_tax is not None and place.sales_tax.on_add_ons
    for add_on in place.add_ons:
        wanted = add_on.usual if chosen is None else add_on.name in chosen
        takers = sum(member.months_on(day) in add_on.ages for member in party)
        if not wanted or not takers:
            continue
        many = takers if add_on.per == "person" else 1
        label = f"{add_on.name} for {takers}" if add_on.per == "person" else add_on.name
        price = _taxed(place, add_on.price * many, taxable=taxable)
        yield _from_card(CostKind.EXTRAS, label, price, place)


def _tolls(household: Household, own: OwnFigures | None) -> Iterator[CostItem]:
    if own is not None and own.tolls is not None:
        yield known_item(
            CostKind.CAR,
            "tolls and ferries, there and back",
            Money(own.tolls, household.currency),
            Source(Origin.PARENT, "typed in for this place"),
        )


def _own_extras(household: Household, own: OwnFigures | None) -> Iterator[CostItem]:
    for extra in () if own is None else own.extras:
        likely = Money(extra.price, household.currency)
        yield known_item(
            CostKind.EXTRAS,
            extra.name,
            likely,
            Source(Origin.PARENT, "typed in for this place"),
            (give_or_take(f"{extra.name} at {own.place}", likely, extra.give_or_take_percent),)
            if own and extra.give_or_take_percent
            else (),
        )


def _treats(household: Household, party: Sequence[Member], day: date) -> Iterator[CostItem]:
    children = sum(not member.is_adult_on(day) for member in party)
    if children and household.treats_per_child:
        yield known_item(
            CostKind.EXTRAS,
            f"treats for {children}",
            Money(household.treats_per_child * children, household.currency),
            Source(Origin.PARENT, "planned per child"),
        )


def _reserve(household: Household, items: Sequence[CostItem]) -> Iterator[CostItem]:
    """A share of the known rest, exact because the parent sets it aside."""
    percent = household.reserve_percent
    if percent:
        rest = total((item.likely for item in items if item.likely), household.currency)
        yield known_item(
            CostKind.RESERVE,
            f"reserve, {percent} % of the rest",
            rest * (percent / 100),
            Source(Origin.PARENT, "set aside for what nobody thought of"),
        )
