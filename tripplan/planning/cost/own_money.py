"""A place card in another currency with its prices in the household's, at the parent's own rate."""

from collections.abc import Iterable
from decimal import Decimal

from tripplan.documents.family.exchange_rate import ExchangeRate
from tripplan.documents.family.household import Household
from tripplan.documents.model import Written
from tripplan.documents.places.place import Place
from tripplan.language.sentences import Fact, fact

PRICE_DIGITS = 4
"""Decimal places that a converted price keeps, so that sums of it are right to the smallest coin [-]."""
_PRICED = ("offers", "add_ons", "fees", "vouchers", "parking")


def rate_for(place: Place, household: Household) -> ExchangeRate | None:
    """The parent's rate for a place's currency; None for the household's own, or where none is typed in."""
    if place.currency == household.currency:
        return None
    rates = household.exchange_rates
    return next((rate for rate in rates if rate.currency == place.currency), None)


def in_own_money(place: Place, household: Household) -> Place:
    """The card with its prices in the household's currency if the parent typed in a rate, else as it is."""
    rate = rate_for(place, household)
    if rate is None:
        return place
    read = place.prices_read
    changes: dict[str, object] = {name: _converted(getattr(place, name), rate.worth) for name in _PRICED}
    changes["currency"] = household.currency
    changes["prices_read"] = read.model_copy(update={"source": f"{read.source}; {_counted(rate, household)}"})
    return place.model_copy(update=changes)


def without_rate(place: Place, household: Household) -> Fact:
    """Why a place in another currency cannot be counted, and what helps."""
    return fact("outing-no-rate", currency=place.currency, own=household.currency)


def rates_counted(places: Iterable[Place], household: Household) -> tuple[Fact, ...]:
    """Each rate at which the prices of some cards are counted."""
    rates = dict.fromkeys(filter(None, (rate_for(place, household) for place in places)))
    return tuple(_counted(rate, household) for rate in rates)


def _counted(rate: ExchangeRate, household: Household) -> Fact:
    worth = f"{rate.worth.normalize():f} {household.currency}"
    return fact("notes-rate", currency=rate.currency, worth=worth, day=rate.on)


def _converted(value: object, worth: Decimal) -> object:
    """The same with every amount of money in it converted; percentages and numbers of people stay."""
    if isinstance(value, tuple):
        return tuple(_converted(one, worth) for one in value)
    if not isinstance(value, Written):
        return value
    changes: dict[str, object] = {}
    for name in type(value).model_fields:
        inner = getattr(value, name)
        if isinstance(inner, Decimal) and "percent" not in name:
            changes[name] = round(inner * worth, PRICE_DIGITS)
        elif isinstance(inner, tuple | Written):
            changes[name] = _converted(inner, worth)
    return value.model_copy(update=changes)
