"""Cards for the home, the car, money, habits and passes: the facts in a line each, and what changes them."""

from collections.abc import Sequence
from decimal import Decimal
from functools import partial

from tripplan.documents.family.car import Car
from tripplan.documents.family.household import Household
from tripplan.documents.field_spec import asked
from tripplan.language import wording
from tripplan.language.sentences import say
from tripplan.records.store import StoredDocument
from tripplan.screens.household.parts import Part, card
from tripplan.screens.household.pass_form import held_in_words, pass_form
from tripplan.screens.household.rush_hours import rush_form
from tripplan.screens.household.sections import (
    FOOD,
    HABITS,
    RATES,
    RESERVE,
    WEATHER,
    WORTH,
    Section,
    car_form,
    home_form,
    section_form,
)
from tripplan.screens.household.stops import stops_form
from tripplan.screens.look import cards
from tripplan.screens.look.cards import Chip
from tripplan.screens.widgets.view import View
from tripplan.values.money import Money

Kept = StoredDocument[Household]


def home_card(view: View, kept: Kept) -> None:
    """Where outings start, and in which units and words the family reads."""
    household = kept.value
    home = household.home
    place = ", ".join(filter(None, (home.town, home.subdivision))) or f"{home.latitude}, {home.longitude}"
    units, language = (
        asked(Household, name).spoken().words[getattr(household, name)] for name in ("units", "language")
    )
    face = cards.face(
        cards.name(say("household-home"), drawing="indoors"),
        cards.small(f"{place} · {home.time_zone}"),
        cards.small(say("household-reads", currency=household.currency, units=units, language=language)),
    )
    draw = partial(home_form, view, kept)
    parts = [Part("home", say("household-the-home"), draw), _part(view, kept, WEATHER, "weather")]
    card(view, "home", face, parts)


def car_card(view: View, kept: Kept, asked_about: Sequence[str]) -> None:
    """The car, and what is unlikely about it.

    Args:
        view: whose household.
        kept: the household.
        asked_about: as questions.
    """
    car, currency = kept.value.car, kept.value.currency
    if car is None:
        head = (
            cards.name(say("household-no-car"), drawing="drive"),
            cards.small(say("household-no-car-cost")),
        )
    else:
        unit = asked(Car, "fuel").spoken().words[car.fuel]
        price = "" if car.fuel_price is None else wording.money(Money(car.fuel_price, currency))
        used = f"{car.rate} {currency} {car.fuel}" if car.fuel in RATES else f"{car.consumption} {unit}"
        chips = [
            Chip("crowd", say("household-seats", seats=car.seats)),
            Chip("drive", used),
            Chip("money", say("household-fuel-at", price=price) if price else ""),
        ]
        head = (cards.name(car.name, drawing="drive"), cards.chips(chips))
    face = cards.face(*head, *map(cards.warning, asked_about))
    card(view, "car", face, [Part("car", say("household-the-car"), partial(car_form, view, kept))])


def money_card(view: View, kept: Kept) -> None:
    """What eating costs, what is set aside, and what a hassle is worth."""
    household = kept.value
    food, worth = household.food, household.worth

    def money(amount: Decimal) -> str:
        return wording.money(Money(amount, household.currency))

    eats = {
        "packed": ("household-food-packed", food.packed_adult, food.packed_child),
        "bought": ("household-food-bought", food.bought_adult, food.bought_child),
    }
    code, adult, child = eats[food.way]
    reserve = say(
        "household-reserve",
        percent=f"{household.reserve_percent.normalize():f}",
        treats=money(household.treats_per_child),
    )
    facts = [
        Chip("money", say(code, adult=money(adult), child=money(child))),
        Chip("needs", reserve),
        Chip("nap", say("household-nap-worth", nap=money(worth.lost_nap_hour), car=money(worth.hour_in_car))),
    ]
    face = cards.face(cards.name(say("household-money"), drawing="money"), cards.facts(facts))
    sections = ((FOOD, "food"), (RESERVE, "reserve"), (WORTH, "worth"))
    card(view, "money", face, [_part(view, kept, section, name) for section, name in sections])


def habits_card(view: View, kept: Kept) -> None:
    """When the family leaves and comes home, how it rests, and what it stops for."""
    habits, units = kept.value.habits, kept.value.units
    stops = habits.stops
    rush = "household-rush-own" if habits.rush_hours else "household-rush-never"
    if habits.rush_hours is None:
        rush = "household-rush-published"
    facts = [
        Chip("clock", say("household-hours", out=habits.earliest_departure, home=habits.home_by)),
        Chip("drive", say("household-rests", stretch=wording.minutes(habits.drive_at_most_minutes))),
        Chip("crowd", say(rush)),
        Chip("crowd", say("household-picks-up", name=stops.pick_up.name) if stops.pick_up else ""),
        Chip(
            "drive",
            say("household-fuel-range", range=wording.distance(stops.fuel_range_km, units))
            if stops.fuel_range_km
            else "",
        ),
        Chip("clock", say("household-stops-back", what=stops.way_back) if stops.way_back_minutes else ""),
    ]
    face = cards.face(cards.name(say("household-habits"), drawing="plan"), cards.facts(facts))
    parts = [
        _part(view, kept, HABITS, "habits"),
        Part("rush", say("household-the-rush"), partial(rush_form, view, kept)),
        Part("stops", say("household-the-stops"), partial(stops_form, view, kept)),
    ]
    card(view, "habits", face, parts)


def passes_card(view: View, kept: Kept, asked_about: Sequence[str]) -> None:
    """The annual passes that the family holds.

    Args:
        view: whose household.
        kept: the household.
        asked_about: what is unlikely about them, as questions.
    """
    held = kept.value.passes
    face = cards.face(
        cards.name(say("household-passes"), drawing="book"),
        cards.facts(Chip("book", held_in_words(one, view)) for one in held)
        if held
        else cards.small(say("household-no-passes")),
        *map(cards.warning, asked_about),
    )
    draw = partial(pass_form, view, kept)
    card(view, "passes", face, [Part("passes", say("household-the-passes"), draw)])


def _part(view: View, kept: Kept, section: Section, name: str) -> Part:
    return Part(section.name, say(f"household-the-{name}"), partial(section_form, view, kept, section))
