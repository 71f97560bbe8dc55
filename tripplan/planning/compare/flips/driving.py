"""At which price of fuel or of driving another place becomes the cheapest."""

from collections.abc import Iterator
from decimal import Decimal
from math import ceil, floor

from tripplan.documents.family.car import Fuel
from tripplan.language.sentences import fact
from tripplan.planning.compare.flips.comparison import Answer, Comparison
from tripplan.planning.compare.flips.flip import Flip
from tripplan.values.money import Money, minor_digits

LEAST_TIMES, MOST_TIMES = Decimal("0.25"), Decimal(4)
"""A price of driving beyond these multiples of the present one is out of reason. No source, our choice."""

_PRICES_OF_DRIVING = {
    Fuel.MILES_PER_US_GALLON: ("fuel_price", "flips-fuel-price", "flips-a-gallon"),
    Fuel.LITRES_PER_100_KM: ("fuel_price", "flips-fuel-price", "flips-a-liter"),
    Fuel.KWH_PER_100_KM: ("fuel_price", "flips-electricity-price", "flips-a-kwh"),
    Fuel.RATE_PER_MILE: ("rate", "flips-driving", "flips-a-mile"),
    Fuel.RATE_PER_KM: ("rate", "flips-driving", "flips-a-km"),
}
"""The car's field that holds the price, and the codes of its name and of a price for what it is for."""


def price_of_driving(comparison: Comparison) -> Iterator[Flip]:
    """The nearest price either way at which another place is cheaper, to the smallest coin.

    A total is a straight line in the price, but for items being rounded to coins. So a place that is first at
    both ends of a span is first within it; and where it is not, halving the span finds the coin at which it
    stops being first.
    """
    household, car = comparison.household, comparison.household.car
    if car is None:
        return
    field, name, per = _PRICES_OF_DRIVING[car.fuel]
    price: Decimal | None = getattr(car, field)
    if not price:
        return
    currency = household.currency

    def answers_at(coins: int) -> tuple[Answer, ...]:
        changed = car.model_copy(update={field: Money.from_minor(coins, currency).amount})
        return comparison.recosted(household.model_copy(update={"car": changed}))

    now = fact(per, price=Money(price, currency))
    what = fact(name)
    coins = price.scaleb(minor_digits(currency))
    least, most = ceil(coins * LEAST_TIMES), floor(coins * MOST_TIMES)
    found = False
    for first_kept, end, more in ((ceil(coins), least, False), (floor(coins), most, True)):
        if end == first_kept or not comparison.changes(answers_at(end)):
            continue
        kept, changed = first_kept, end
        while abs(changed - kept) > 1:
            middle = (kept + changed) // 2
            if comparison.changes(answers_at(middle)):
                changed = middle
            else:
                kept = middle
        found, value = True, Money.from_minor(changed, currency)
        at = fact("flips-or-beyond", price=fact(per, price=value), more=more)
        yield comparison.flip(what, now, at, fact("flips-at", at=at), answers_at(changed), price=value)
    if not found:
        low, high = (Money.from_minor(end, currency) for end in (least, most))
        yield comparison.stays(what, now, fact("flips-between", low=low, high=fact(per, price=high)))
