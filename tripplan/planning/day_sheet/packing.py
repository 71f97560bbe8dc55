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
from tripplan.language.locales import Locale, speaking
from tripplan.language.sentences import Fact, fact, said
from tripplan.values.ages import MONTHS

TROPIC_DEGREES = 23.4
"""North and south of the equator up to here there is no winter to pack for [degrees]."""
LONG_DRIVE_MINUTES = 45
"""From here on a child needs something to do in the car [min]. No source, our choice."""
COLD_BELOW, COOL_BELOW, WARM_FROM, HOT_FROM, WET_FROM = 5.0, 10.0, 18.0, 32.0, 0.25
"""What is cold, cool, warm and hot as it feels [°C], how likely a wet day is [-]. No source, our choice."""
MINUTES_PER_DIAPER, SPARE_DIAPERS = 120, 2
"""How long one diaper lasts [min] and how many more to take [-]. Common practice, no source."""


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
        detail: for whom or how many, or what to mind; None for nothing.
        why: which rule suggests it, and where that comes from; None for what the family added.
    """

    what: Fact
    detail: Fact | None = None
    why: Fact | None = None

    @property
    def called(self) -> frozenset[str]:
        """What it is called in any language, without capitals; it may have been left out in another."""
        names = set()
        for locale in Locale:
            with speaking(locale):
                names.add(said(self.what).casefold())
        return frozenset(names)


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
        code: of the message that names the thing; with '-why' behind it, of the one that says the rule.
        needed: whether it is, or for whom and how many.
    """

    code: str
    needed: Callable[[Trip], Fact | bool]

    def item(self, trip: Trip) -> PackingItem | None:
        """The thing for an outing; None where it is not needed."""
        needed = self.needed(trip)
        if needed is False:
            return None
        why = fact(f"{self.code}-why", minutes=LONG_DRIVE_MINUTES)
        return PackingItem(fact(self.code), needed if isinstance(needed, Fact) else None, why)


def _for(names: Sequence[str], *, when: bool = True) -> Fact | bool:
    return fact("packing-for", names=tuple(names)) if names and when else False


def _diapers(trip: Trip) -> Fact | bool:
    names = trip.aged(0, 30)
    each = -int(-trip.minutes_out // MINUTES_PER_DIAPER) + SPARE_DIAPERS
    return fact("packing-about-so-many", number=each * len(names), names=names) if names else False


def _needs(trip: Trip) -> Fact | bool:
    names = tuple(member.name for member in trip.party if member.needs)
    return fact("packing-with-needs", names=names) if names else True


def _drinks(trip: Trip) -> Fact:
    own, people = trip.place.visit.own_food, len(trip.party)
    return fact("packing-drinks", number=people, hot=trip.is_hot, let_in=own)


def _sun(trip: Trip) -> Fact | bool:
    if not (trip.partly_outdoors and trip.is_warm):
        return False
    babies = trip.aged(0, 6)
    return fact("packing-babies-in-shade", names=babies) if babies else True


def _packed_lunch(trip: Trip) -> Fact | bool:
    packed = trip.food.way == "packed" and trip.place.visit.own_food
    if trip.lunch_out and (packed or not trip.lunch_there):
        return fact("packing-for-so-many", number=len(trip.party))
    return False


def _coats(trip: Trip) -> Fact | bool:
    under_straps = trip.is_cold and trip.aged(0, 12 * MONTHS)
    return fact("packing-coats-off") if under_straps else trip.is_cold


def _spare_socks(trip: Trip) -> Fact | bool:
    wet = trip.wet is not None and trip.wet >= WET_FROM
    cool = trip.felt_low is not None and trip.felt_low < COOL_BELOW
    return fact("packing-pair-each") if trip.partly_outdoors and wet and cool else False


RULES = (
    PackingRule("packing-papers", lambda _: True),
    PackingRule("packing-phone", lambda _: True),
    PackingRule("packing-first-aid", _needs),
    PackingRule("packing-child-seat", lambda trip: _for(trip.aged(0, 4 * MONTHS))),
    PackingRule("packing-booster", lambda trip: _for(trip.aged(4 * MONTHS, 12 * MONTHS))),
    PackingRule("packing-diapers", _diapers),
    PackingRule("packing-clothes", lambda trip: _for(trip.aged(0, 60))),
    PackingRule("packing-bottles", lambda trip: _for(trip.aged(0, MONTHS))),
    PackingRule("packing-bib", lambda trip: _for(trip.aged(6, 3 * MONTHS))),
    PackingRule(
        "packing-stroller", lambda trip: _for(trip.aged(0, 4 * MONTHS), when=trip.place.visit.pushchairs)
    ),
    PackingRule(
        "packing-stroller-cover",
        lambda trip: _for(
            trip.aged(0, 4 * MONTHS), when=trip.place.visit.pushchairs and trip.partly_outdoors
        ),
    ),
    PackingRule(
        "packing-carrier", lambda trip: _for(trip.aged(0, 3 * MONTHS), when=not trip.place.visit.pushchairs)
    ),
    PackingRule("packing-lovey", lambda trip: _for([member.name for member in trip.party if member.naps])),
    PackingRule(
        "packing-car-games", lambda trip: _for(trip.aged(3 * MONTHS, 13 * MONTHS), when=trip.is_long_drive)
    ),
    PackingRule(
        "packing-trash-bags", lambda trip: trip.is_long_drive and bool(trip.aged(2 * MONTHS, 13 * MONTHS))
    ),
    PackingRule("packing-notebook", lambda trip: _for(trip.aged(5 * MONTHS, 18 * MONTHS))),
    PackingRule("packing-water", _drinks),
    PackingRule("packing-lunch", _packed_lunch),
    PackingRule(
        "packing-car-snacks",
        lambda trip: False if trip.place.visit.own_food else fact("packing-not-eaten-inside"),
    ),
    PackingRule("packing-coats", _coats),
    PackingRule("packing-blanket", lambda trip: trip.season is Season.WINTER and trip.is_long_drive),
    PackingRule(
        "packing-rain-jackets",
        lambda trip: (
            trip.partly_outdoors and trip.season is not Season.WINTER and fact("packing-look-at-forecast")
        ),
    ),
    PackingRule("packing-sun-hats", _sun),
    PackingRule("packing-spare-socks", _spare_socks),
    PackingRule(
        "packing-repellent",
        lambda trip: trip.partly_outdoors and trip.season is not Season.WINTER and trip.speaks_of(LONG_GRASS),
    ),
    PackingRule("packing-underground", lambda trip: trip.speaks_of(UNDERGROUND)),
    PackingRule("packing-grip", lambda trip: trip.speaks_of(WET) or trip.speaks_of(UNDERGROUND)),
    PackingRule("packing-soap", lambda trip: trip.speaks_of(ANIMALS) and fact("packing-wash-hands")),
    PackingRule("packing-ears", lambda trip: _for(trip.aged(0, 12 * MONTHS), when=trip.speaks_of(LOUD))),
)


def suggested_items(trip: Trip) -> tuple[PackingItem, ...]:
    """What the rules suggest for an outing, whatever the family does with it."""
    return tuple(item for rule in RULES if (item := rule.item(trip)) is not None)


def packing_list(trip: Trip, changes: PackingChanges) -> tuple[PackingItem, ...]:
    """What to pack: the suggestions without what the family leaves out, then its own additions.

    Args:
        trip: the outing.
        changes: what the family does differently.
    """
    left_out = {thing.casefold() for thing in changes.left_out}
    kept = [item for item in suggested_items(trip) if not item.called & left_out]
    there = frozenset[str]().union(*(item.called for item in kept))
    own = {thing.casefold(): thing for thing in changes.added if thing.casefold() not in there}
    return (*kept, *(PackingItem(fact("packing-own", thing=thing)) for thing in own.values()))
