"""What the drive costs: fuel, electricity or a rate per distance, and wear where it is asked for.

Wear is no money spent that day, so it stands apart and is left out unless the household counts it.
"""

from dataclasses import dataclass
from decimal import Decimal

from tripplan.documents.family.car import Car, Fuel
from tripplan.documents.family.household import Household
from tripplan.language.sentences import Fact, fact
from tripplan.planning.cost.items import CostItem, Swing, known_item
from tripplan.planning.cost.mileage_rates import PublishedRates, UsRates
from tripplan.planning.travel.drive import Leg
from tripplan.values.cost_kind import CostKind
from tripplan.values.money import Money
from tripplan.values.ranges import Origin, Range, Source
from tripplan.values.units import KM_PER_MILE, Distance

USUAL_SEATS = 5
"""Seats of a car that the household says nothing about [-]."""

_RATES = (Fuel.RATE_PER_MILE, Fuel.RATE_PER_KM)
_PUBLISHED_GIVE_OR_TAKE = Decimal(40)
"""How far a national rate may be from this family's car [%]. No source, our choice."""


@dataclass(frozen=True)
class _PerKm:
    """What a kilometre costs.

    Attributes:
        amount: in the household's currency [/km].
        known: the price, or how it is known.
        source: where it comes from.
        cause: what moves it besides the distance.
        give_or_take: how far it may be off [%].
    """

    amount: Decimal
    known: Fact
    source: Source
    cause: str = ""
    give_or_take: Decimal = Decimal(0)


def cars_needed(household: Household, people: int) -> int:
    """How many cars like the household's own it takes to seat everybody."""
    return -(-people // seats_in_a_car(household))


def seats_in_a_car(household: Household) -> int:
    """Seats of a car like the household's own."""
    return household.car.seats if household.car else USUAL_SEATS


def driving_items(
    household: Household,
    people: int,
    published: PublishedRates,
    way_there: Leg,
    way_home: Leg,
    to: str,
    *,
    count_wear: bool,
) -> tuple[CostItem, ...]:
    """The cost of driving there and back.

    Args:
        household: its car, or its country's published rate where it has none; its usual detours.
        people: how many go; more than the seats take more cars.
        published: the rates that count on the day.
        way_there: the drive out.
        way_home: the drive back.
        to: the place's name; an error in the distance belongs to it alone.
        count_wear: whether the loss of value is an item of its own.

    Returns:
        One item for running the car and, if asked for, one for wear; a rate typed in covers wear already.
    """
    cars = cars_needed(household, people)
    km = _there_and_back(household, way_there, way_home)
    far = Distance(km.likely, household.units)
    per_km = _running_cost(household, published)
    if per_km is None:
        unknown = fact("costs-driving", cars=cars, far=far, price=fact("costs-price-unknown"))
        running = CostItem(CostKind.CAR, unknown, None, _BY_PARENT)
    else:
        label = fact("costs-driving", cars=cars, far=far, price=per_km.known)
        running = _item(household, km, cars, per_km, label, to)
    if not count_wear or (household.car and household.car.fuel in _RATES):
        return (running,)
    wear = _wear(household, published.us)
    label = fact("costs-wear", cars=cars, far=far)
    if wear is None:
        nowhere = Source(Origin.PUBLISHED, "no published rate for the household's country")
        return (running, CostItem(CostKind.CAR, label, None, nowhere))
    return (running, _item(household, km, cars, wear, label, to))


_BY_PARENT = Source(Origin.PARENT, "the household's car")


def _there_and_back(household: Household, way_there: Leg, way_home: Leg) -> Range:
    """Both ways are mostly the same road, so their errors go the same way [km]."""
    factor = 1 + float(household.habits.detour_percent) / 100
    out, back = way_there.drive.km, way_home.drive.km
    return Range(
        factor * (out.low + back.low), factor * (out.likely + back.likely), factor * (out.high + back.high)
    )


def _item(household: Household, km: Range, cars: int, per_km: _PerKm, label: Fact, to: str) -> CostItem:
    def costs(distance: float) -> Money:
        return Money(per_km.amount * cars * Decimal(str(round(distance, 6))), household.currency)

    likely = costs(km.likely)
    by_price = likely * (per_km.give_or_take / 100)
    swings = (
        Swing(f"distance to {to}", likely - costs(km.low), costs(km.high) - likely),
        Swing(per_km.cause, by_price, by_price),
    )
    return known_item(CostKind.CAR, label, likely, per_km.source, swings)


def _running_cost(household: Household, published: PublishedRates) -> _PerKm | None:
    car = household.car
    if car is None:
        return _published_rate(household, published)
    if car.fuel in _RATES:
        return _typed_rate(car)
    if car.consumption is None or car.fuel_price is None:
        return None
    if car.fuel is Fuel.MILES_PER_US_GALLON:
        amount = car.fuel_price / (car.consumption * KM_PER_MILE)
    else:
        amount = car.fuel_price * car.consumption / 100
    told = f"{_BY_PARENT.text}; consumption: {car.consumption_from}"
    return _PerKm(
        amount,
        fact("costs-consumption", amount=f"{car.consumption:f}", unit=car.fuel.value),
        Source(Origin.PARENT, told) if car.consumption_from else _BY_PARENT,
        "electricity price" if car.fuel is Fuel.KWH_PER_100_KM else "fuel price",
        car.fuel_price_give_or_take_percent,
    )


def _typed_rate(car: Car) -> _PerKm | None:
    if car.rate is None:
        return None
    mile = car.fuel is Fuel.RATE_PER_MILE
    amount = car.rate / KM_PER_MILE if mile else car.rate
    return _PerKm(amount, fact("costs-rate", amount=f"{car.rate:f}", mile=mile), _BY_PARENT)


def _published_rate(household: Household, published: PublishedRates) -> _PerKm | None:
    """The rate closest to what one more mile costs, for a household that tells nothing of its car."""
    us, uk = published.us, published.uk
    if us and (household.home.country, household.currency) == ("US", "USD"):
        per_mile, text = us.medical_or_moving, f"IRS rate for medical and moving trips since {us.since}"
    elif uk and (household.home.country, household.currency) == ("GB", "GBP"):
        per_mile, text = uk.beyond, f"HMRC mileage allowance beyond 10 000 miles since {uk.since}"
    else:
        return None
    return _PerKm(
        per_mile / KM_PER_MILE,
        fact("costs-published-rate", amount=f"{per_mile:f}"),
        Source(Origin.PUBLISHED, text),
        "what the car uses",
        _PUBLISHED_GIVE_OR_TAKE,
    )


def _wear(household: Household, rates: UsRates | None) -> _PerKm | None:
    if not rates or not rates.depreciation:
        return None
    if (household.home.country, household.currency) != ("US", "USD"):
        return None
    source = Source(Origin.PUBLISHED, f"depreciation part of the IRS business rate since {rates.since}")
    return _PerKm(
        rates.depreciation / KM_PER_MILE,
        fact("costs-wear-rate"),
        source,
        "loss of value",
        _PUBLISHED_GIVE_OR_TAKE,
    )
