"""What to pack, from ages, season and place; the family's own additions and removals win."""

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from tripplan.documents.family.food import Food
from tripplan.documents.family.member import Member
from tripplan.documents.outings.packing_changes import PackingChanges
from tripplan.documents.places.place import Place
from tripplan.language.wording import listed
from tripplan.values.ages import MONTHS

TROPIC_DEGREES = 23.4
"""North and south of the equator up to here there is no winter to pack for [degrees]."""
LONG_DRIVE_MINUTES = 45
"""From here on a child needs something to do in the car [min]. No source, our choice."""
COLD_BELOW, COOL_BELOW, WARM_FROM, HOT_FROM, WET_FROM = 5.0, 10.0, 18.0, 32.0, 0.25
"""What is cold, cool, warm and hot as it feels [°C], how likely a wet day is [-]. No source, our choice."""
MINUTES_PER_NAPPY, SPARE_NAPPIES = 120, 2
"""How long one nappy lasts [min] and how many more to take [-]. Common practice, no source."""


class Season(StrEnum):
    """A quarter of the year as weather services count it, from the first of a month."""

    WINTER = "winter"
    SPRING = "spring"
    SUMMER = "summer"
    AUTUMN = "autumn"
    ALWAYS_WARM = "always warm"


_NORTHERN = (Season.WINTER, Season.SPRING, Season.SUMMER, Season.AUTUMN)


def season_on(day: date, latitude: float) -> Season:
    """The season of a day at a latitude.

    Args:
        day: the date.
        latitude: north positive [degrees].

    Source: meteorological seasons (December to February are the northern winter), common practice.
    """
    if abs(latitude) <= TROPIC_DEGREES:
        return Season.ALWAYS_WARM
    quarter = day.month % 12 // 3
    return _NORTHERN[quarter if latitude > 0 else (quarter + 2) % 4]


@dataclass(frozen=True)
class PackingItem:
    """One thing to pack.

    Attributes:
        what: the thing.
        detail: for whom or how many, or what to mind; may be empty.
        why: which rule suggests it, and where that comes from.
    """

    what: str
    detail: str
    why: str


@dataclass(frozen=True)
class Trip:
    """What packing needs to know of an outing.

    Attributes:
        place: where to.
        party: who goes.
        day: when; ages are those on this day.
        minutes_out: from leaving home to being home again [min].
        drive_minutes: the longer of the two drives [min].
        lunch_out: whether lunch is eaten away from home.
        food: how the family eats out.
        lunch_there: whether lunch is at the place, where it may be bought, and not on the way or outside.
        felt_low, felt_high: how cold and how warm it usually feels there; None where nobody knows [°C].
        wet: the usual chance of rain or snow that day; None where nobody knows [0-1].
    """

    place: Place
    party: Sequence[Member]
    day: date
    minutes_out: float
    drive_minutes: float
    lunch_out: bool
    food: Food
    lunch_there: bool = True
    felt_low: float | None = None
    felt_high: float | None = None
    wet: float | None = None

    @property
    def season(self) -> Season:
        """The season there and then."""
        return season_on(self.day, self.place.where.point.latitude)

    @property
    def is_warm(self) -> bool:
        """Whether it may be warm and sunny."""
        if self.felt_high is not None:
            return self.felt_high >= WARM_FROM
        return self.season in (Season.SPRING, Season.SUMMER, Season.ALWAYS_WARM)

    @property
    def is_cold(self) -> bool:
        """Whether it takes coats, hats and gloves."""
        if self.felt_low is not None:
            return self.felt_low < COLD_BELOW
        return self.season is Season.WINTER

    @property
    def is_hot(self) -> bool:
        """Whether everybody needs more to drink than usual."""
        return self.felt_high is not None and self.felt_high >= HOT_FROM

    @property
    def partly_outdoors(self) -> bool:
        """Whether some of the visit is in the open."""
        return self.place.visit.indoors != "indoors"

    @property
    def is_long_drive(self) -> bool:
        """Whether a child needs something to do on the way."""
        return self.drive_minutes >= LONG_DRIVE_MINUTES

    def aged(self, first: int, below: int) -> tuple[str, ...]:
        """Names of those of some ages.

        Args:
            first: the youngest age that counts [completed months].
            below: the age that no longer counts [completed months].
        """
        return tuple(m.name for m in self.party if first <= m.months_on(self.day) < below)

    def speaks_of(self, words: re.Pattern[str]) -> bool:
        """Whether the card's name, cautions or notes hold one of some words; topics are only studied."""
        told = (self.place.name, self.place.notes, *self.place.visit.cautions)
        return any(words.search(text) for text in told)


def _words(*words: str) -> re.Pattern[str]:
    return re.compile(rf"\b(?:{'|'.join(words)})s?\b", re.IGNORECASE)


UNDERGROUND = _words("cave", "cavern", "grotto", "mine", "underground", "cellar", "ice house")
WET = _words("wet", "splash", "splashing", "spray", "mud", "muddy", "puddle", "stream", "wade", "wading")
ANIMALS = _words(
    "animal", "farm", "barn", "goat", "lamb", "calf", "pony", "hen", "feather", "petting", "mite"
)
LOUD = _words("loud", "noise", "noisy", "forge", "engine", "cannon", "hammer")
LONG_GRASS = _words("prairie", "meadow", "wood", "woodland", "forest", "marsh", "bog", "tick", "mosquito")


@dataclass(frozen=True)
class PackingRule:
    """When one thing is suggested.

    Attributes:
        what: the thing.
        why: the rule in words, and its source.
        detail: for whom or how many; None where the thing is not needed.
    """

    what: str
    why: str
    detail: Callable[[Trip], str | None]


def _always(_: Trip) -> str:
    return ""


def _for(names: Sequence[str], *, when: bool = True) -> str | None:
    return listed(list(names)) if names and when else None


def _if(needed: bool, detail: str = "") -> str | None:
    return detail if needed else None


def _nappies(trip: Trip) -> str | None:
    names = trip.aged(0, 30)
    each = -int(-trip.minutes_out // MINUTES_PER_NAPPY) + SPARE_NAPPIES
    return f"about {each * len(names)} for {listed(list(names))}" if names else None


def _needs(trip: Trip) -> str:
    names = [member.name for member in trip.party if member.needs]
    return f"with what the needs noted for {listed(names)} call for" if names else ""


def _drinks(trip: Trip) -> str:
    inside = "" if trip.place.visit.own_food else "; ask whether they may be taken in"
    more = "; on a hot day about a cup for each every 20 minutes, and a refill" if trip.is_hot else ""
    return f"{len(trip.party)}{more}{inside}"


def _sun(trip: Trip) -> str | None:
    if not (trip.partly_outdoors and trip.is_warm):
        return None
    babies = trip.aged(0, 6)
    return f"keep {listed(list(babies))} in the shade; ask your doctor about cream" if babies else ""


NO_SOURCE = "common practice, no source"

RULES = (
    PackingRule(
        "Tickets or booking, passes, proofs of age or status, card and cash",
        f"for every outing; {NO_SOURCE}",
        _always,
    ),
    PackingRule(
        "Charged telephone and cable",
        f"for every outing; {NO_SOURCE}",
        _always,
    ),
    PackingRule("First-aid kit and medicines", f"for every outing; {NO_SOURCE}", _needs),
    PackingRule(
        "Child seat",
        "under 4; the law where you drive and the seat's manual decide which seat fits",
        lambda trip: _for(trip.aged(0, 4 * MONTHS)),
    ),
    PackingRule(
        "Booster or child seat",
        "4 to 11; Great Britain asks for one until 12 years or 135 cm (GOV.UK, Child car seats: the law); "
        "the law where you drive decides",
        lambda trip: _for(trip.aged(4 * MONTHS, 12 * MONTHS)),
    ),
    PackingRule(
        "Nappies, wipes, changing mat, bags",
        f"under two and a half: one every two hours and two spare; {NO_SOURCE}",
        _nappies,
    ),
    PackingRule("A full change of clothes", f"under 5; {NO_SOURCE}", lambda trip: _for(trip.aged(0, 60))),
    PackingRule("Milk, bottles, baby food", f"under 1; {NO_SOURCE}", lambda trip: _for(trip.aged(0, MONTHS))),
    PackingRule(
        "Bib, spoon, drinking cup",
        f"6 months to under 3; {NO_SOURCE}",
        lambda trip: _for(trip.aged(6, 3 * MONTHS)),
    ),
    PackingRule(
        "Pushchair",
        f"under 4, where the place lets pushchairs in; {NO_SOURCE}",
        lambda trip: _for(trip.aged(0, 4 * MONTHS), when=trip.place.visit.pushchairs),
    ),
    PackingRule(
        "Rain cover and sunshade for the pushchair",
        f"under 4, where part of the visit is outdoors; {NO_SOURCE}",
        lambda trip: _for(
            trip.aged(0, 4 * MONTHS), when=trip.place.visit.pushchairs and trip.partly_outdoors
        ),
    ),
    PackingRule(
        "Carrier or sling",
        f"under 3, where pushchairs cannot go all the way round; {NO_SOURCE}",
        lambda trip: _for(trip.aged(0, 3 * MONTHS), when=not trip.place.visit.pushchairs),
    ),
    PackingRule(
        "Comforter and light blanket",
        f"for whoever naps; {NO_SOURCE}",
        lambda trip: _for([member.name for member in trip.party if member.naps]),
    ),
    PackingRule(
        "Something to do in the car",
        f"3 to 12, drives of {LONG_DRIVE_MINUTES} min or more; {NO_SOURCE}",
        lambda trip: _for(trip.aged(3 * MONTHS, 13 * MONTHS), when=trip.is_long_drive),
    ),
    PackingRule(
        "Bags for rubbish and travel sickness",
        f"2 to 12, drives of {LONG_DRIVE_MINUTES} min or more; {NO_SOURCE}",
        lambda trip: _if(trip.is_long_drive and bool(trip.aged(2 * MONTHS, 13 * MONTHS))),
    ),
    PackingRule(
        "Notebook and pencils",
        f"5 to 17, for what there is to study; {NO_SOURCE}",
        lambda trip: _for(trip.aged(5 * MONTHS, 18 * MONTHS)),
    ),
    PackingRule("Water bottles", f"for everybody; {NO_SOURCE}", _drinks),
    PackingRule(
        "Packed lunch and snacks",
        "lunch is out, the family packs it, and own food is allowed (place card)",
        lambda trip: _if(
            trip.lunch_out
            and (not trip.lunch_there or (trip.food.way == "packed" and trip.place.visit.own_food)),
            f"for {len(trip.party)}",
        ),
    ),
    PackingRule(
        "Snacks for the car",
        "own food is not allowed inside (place card)",
        lambda trip: _if(not trip.place.visit.own_food, "not eaten inside: own food is not allowed"),
    ),
    PackingRule(
        "Coats, hats and gloves",
        "felt below 41 °F (5 °C), or winter where nobody knows; "
        "that thick coats leave a seat's straps slack is common advice, from memory",
        lambda trip: _if(
            trip.is_cold,
            "thick coats off under the straps of a car seat" if trip.aged(0, 12 * MONTHS) else "",
        ),
    ),
    PackingRule(
        "A blanket and a warm drink in the car",
        f"winter, drives of {LONG_DRIVE_MINUTES} min or more; {NO_SOURCE}",
        lambda trip: _if(trip.season is Season.WINTER and trip.is_long_drive),
    ),
    PackingRule(
        "Rain jackets and a warm layer",
        f"partly outdoors, not winter: no forecast is known here; {NO_SOURCE}",
        lambda trip: _if(
            trip.partly_outdoors and trip.season is not Season.WINTER, "look at the forecast the day before"
        ),
    ),
    PackingRule(
        "Sun hats and sun cream",
        f"partly outdoors, felt from 64 °F (18 °C), else spring and summer; {NO_SOURCE}",
        _sun,
    ),
    PackingRule(
        "Spare socks and mittens",
        f"partly outdoors, rain or snow on one day in four or more, felt below 50 °F (10 °C); {NO_SOURCE}",
        lambda trip: _if(
            trip.partly_outdoors
            and trip.wet is not None
            and trip.wet >= WET_FROM
            and trip.felt_low is not None
            and trip.felt_low < COOL_BELOW,
            "a pair for each child",
        ),
    ),
    PackingRule(
        "Insect repellent and long trousers",
        f"partly outdoors in long grass or woods, not winter; {NO_SOURCE}",
        lambda trip: _if(
            trip.partly_outdoors and trip.season is not Season.WINTER and trip.speaks_of(LONG_GRASS)
        ),
    ),
    PackingRule(
        "Warm jackets for underground",
        f"the card speaks of a cave, a mine or the like, where it is cool all year; {NO_SOURCE}",
        lambda trip: _if(trip.speaks_of(UNDERGROUND)),
    ),
    PackingRule(
        "Shoes with grip, dry socks",
        f"the card speaks of wet ground, water or a cave; {NO_SOURCE}",
        lambda trip: _if(trip.speaks_of(WET) or trip.speaks_of(UNDERGROUND)),
    ),
    PackingRule(
        "Soap or hand wipes",
        f"the card speaks of animals: hands are washed before eating; {NO_SOURCE}",
        lambda trip: _if(trip.speaks_of(ANIMALS), "wash hands after touching, before eating"),
    ),
    PackingRule(
        "Ear protection",
        f"under 12, and the card speaks of noise; {NO_SOURCE}",
        lambda trip: _for(trip.aged(0, 12 * MONTHS), when=trip.speaks_of(LOUD)),
    ),
)


def suggested_items(trip: Trip) -> tuple[PackingItem, ...]:
    """What the rules suggest for an outing, whatever the family does with it."""
    found = ((rule, rule.detail(trip)) for rule in RULES)
    return tuple(PackingItem(rule.what, detail, rule.why) for rule, detail in found if detail is not None)


def packing_list(trip: Trip, changes: PackingChanges) -> tuple[PackingItem, ...]:
    """What to pack: the suggestions without what the family leaves out, then its own additions.

    Args:
        trip: the outing.
        changes: what the family does differently.
    """
    left_out = {thing.casefold() for thing in changes.left_out}
    kept = [item for item in suggested_items(trip) if item.what.casefold() not in left_out]
    there = {item.what.casefold() for item in kept}
    own = {thing.casefold(): thing for thing in changes.added if thing.casefold() not in there}
    return (*kept, *(PackingItem(thing, "", "your own") for thing in own.values()))
