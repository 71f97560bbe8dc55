"""What makes a day fuller or emptier than an ordinary school-term weekday, part by part.

A part is worked out for whole years at once; what it says of a single day is put into words on demand.
"""

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from enum import Enum, auto
from functools import lru_cache, partial
from typing import Any

import numpy as np
from numpy.typing import NDArray

from tripplan.documents.places.offers import Offer, Ticket
from tripplan.documents.places.place import Place
from tripplan.planning.crowds.levels import FREE_ENTRY, SCHOOL_CLASSES, SHORT_DAY, Levels
from tripplan.planning.crowds.rule_days import days_of_offer, days_of_rule
from tripplan.planning.crowds.season import season
from tripplan.planning.holidays.days_off import DaysOff, Flags
from tripplan.planning.holidays.public_holidays import OBSERVED
from tripplan.planning.holidays.schools import SchoolDays
from tripplan.values.ages import EVERYONE

Floats = NDArray[np.floating[Any]]

_A_WEEKEND = "another weekend"
_WEEKDAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")


class FactorGroup(Enum):
    """What a part is about; places differ in how strong each group is."""

    DAY_OFF = auto()
    SEASON = auto()
    PLACE = auto()


@dataclass(frozen=True)
class Part:
    """One named effect on a day.

    Attributes:
        effect: on the logarithm of visitors [ln]; the effects of a day add up.
        cause: in words.
        compared_with: what the effect multiplies, such as 'an ordinary weekday'.
        doubt: standard deviation of the effect where a calendar is unknown [ln].
    """

    effect: float
    cause: str
    compared_with: str
    doubt: float = 0.0

    @property
    def factor(self) -> float:
        """How many times the visitors [-]."""
        return math.exp(self.effect)

    def __str__(self) -> str:
        return f"{self.cause}: {self.factor:.1f} times {self.compared_with}"


@dataclass(frozen=True, eq=False)
class YearPart:
    """One named effect on all days of some years, one array entry a day.

    Attributes:
        effect: as in `Part` [ln].
        cause: in words, or what gives the words for the day with that index.
        compared_with: as in `Part`.
        group: what it is about.
        doubt: as in `Part` [ln]; None for none.
    """

    effect: Floats
    cause: str | Callable[[int], str]
    compared_with: str
    group: FactorGroup
    doubt: Floats | None = None

    def on(self, index: int) -> Part:
        """The effect on the day with that index, in words."""
        return Part(
            float(self.effect[index]),
            self.cause if isinstance(self.cause, str) else self.cause(index),
            self.compared_with,
            0.0 if self.doubt is None else float(self.doubt[index]),
        )


def year_parts(
    place: Place, off: DaysOff, schools: SchoolDays, is_open: Flags, levels: Levels
) -> tuple[YearPart, ...]:
    """Everything that tells the days from an ordinary weekday, which is Monday to Thursday in term.

    Args:
        place: where.
        off: the days, with their public holidays and weekends.
        schools: how the pupils within reach are spread on each of them.
        is_open: on which of them the place is open.
        levels: what each part brings.
    """
    return (
        *_kinds_of_day(off, schools, levels),
        _season(place, off, levels),
        *_free_entry(place, off, schools, is_open),
        *_school_classes(place, off, schools),
        *_special_days(place, off),
    )


def _kinds_of_day(off: DaysOff, schools: SchoolDays, levels: Levels) -> Iterator[YearPart]:
    calendar = _calendar_parts(off, levels)
    on_break = off.weekend * (schools.on_break + schools.unknown * schools.chance_on_break)
    inside = partial(_weekend_on_break, schools)
    yield calendar.public_holiday
    yield calendar.weekday
    yield YearPart(levels.weekend_on_break * on_break, inside, _A_WEEKEND, FactorGroup.DAY_OFF)
    yield calendar.long_weekend
    yield from _schools(off, schools, levels)
    yield calendar.off_work


@dataclass(frozen=True)
class _CalendarParts:
    """What rests on the calendar alone, which all places of a region share."""

    public_holiday: YearPart
    weekday: YearPart
    long_weekend: YearPart
    off_work: YearPart


@lru_cache(maxsize=256)
def _calendar_parts(off: DaysOff, levels: Levels) -> _CalendarParts:
    ordinary, day_off = "an ordinary weekday", FactorGroup.DAY_OFF
    by_weekday = np.array([0, 0, 0, 0, levels.friday, levels.saturday, levels.sunday])
    off_work = levels.off_work * (off.in_lieu | off.bridge)
    parts = _CalendarParts(
        YearPart(levels.public_holiday * off.public_holiday, partial(_holiday, off), ordinary, day_off),
        YearPart(by_weekday[off.weekday] * ~off.public_holiday, partial(_weekday, off), ordinary, day_off),
        YearPart(levels.long_weekend * off.long_weekend, "part of a long weekend", _A_WEEKEND, day_off),
        YearPart(off_work, partial(_off_work, off), "such a weekday", day_off),
    )
    for part in (parts.public_holiday, parts.weekday, parts.long_weekend, parts.off_work):
        part.effect.setflags(write=False)
    return parts


def _schools(off: DaysOff, schools: SchoolDays, levels: Levels) -> Iterator[YearPart]:
    """The effect of pupils who have no school on a weekday: those known to, those who may, those half a day.

    Visitors are mixed by share, not their logarithms: half the pupils bring half the crowd. The unknown part
    is a doubt between two such days, one where all of it has school and one where all of it has none; how
    likely each of them is, a guess or the typical year says.
    """
    more = math.expm1(levels.school_holiday)
    known = np.log1p(schools.out * more)
    chance = schools.chance_out
    between = (np.log1p((schools.out + schools.unknown) * more) - known) * off.working
    yield YearPart(known * off.working, partial(_pupils, schools), "a school day", FactorGroup.DAY_OFF)
    yield YearPart(
        chance * between,
        partial(_unknown, schools),
        "a school day",
        FactorGroup.DAY_OFF,
        doubt=np.sqrt(chance * (1 - chance)) * between,
    )
    if schools.short.any():
        part_of_day = np.log1p((schools.out + SHORT_DAY * schools.short) * more) - known
        yield YearPart(
            part_of_day * off.working, partial(_short_day, schools), "a whole school day", FactorGroup.DAY_OFF
        )


def _weekday(off: DaysOff, index: int) -> str:
    return _WEEKDAYS[off.weekday[index]]


def _holiday(off: DaysOff, index: int) -> str:
    return f"public holiday ({off.names[index]})"


def _off_work(off: DaysOff, index: int) -> str:
    if off.in_lieu[index]:
        return f"many are off work for {off.names[index].removesuffix(OBSERVED)}"
    return "alone between days off"


def _unknown(schools: SchoolDays, index: int) -> str:
    share = float(schools.unknown[index])
    pupils = "the pupils" if share > 0.95 else f"{share:.0%} of the pupils"
    chance = float(schools.chance_out[index])
    if 0.2 <= chance <= 0.8:
        return f"no school calendar for {pupils} nearby, who may or may not have school"
    have = "no school" if chance > 0.5 else "school"
    return f"no school calendar for {pupils} nearby, who likely have {have}"


def _weekend_on_break(schools: SchoolDays, index: int) -> str:
    known = schools.on_break[index] >= schools.unknown[index] * schools.chance_on_break[index]
    return "inside school holidays" if known else "inside likely school holidays"


def _pupils(schools: SchoolDays, index: int) -> str:
    out = float(schools.out[index])
    if out > 0.95:
        return "the pupils nearby are out of school"
    if out > 0.5:
        return "most pupils nearby are out of school"
    return f"{out:.0%} of the pupils nearby are out of school"


def _short_day(schools: SchoolDays, index: int) -> str:
    share = float(schools.short[index])
    pupils = "the pupils" if share > 0.95 else f"{share:.0%} of the pupils"
    return f"{pupils} nearby have a short school day and fill the rest of it"


def _season(place: Place, off: DaysOff, levels: Levels) -> YearPart:
    found = season(
        off.first, len(off), place.where.point.latitude, place.visit.indoors, place.busiest_months, levels
    )
    cause = "time of year"
    if place.busiest_months:
        cause = "time of year, by the busiest months on the place card"
    elif found.doubt is not None:
        cause = "time of year, hard to tell from afar where winters are warm"
    return YearPart(found.effect, cause, "the year's average", FactorGroup.SEASON, doubt=found.doubt)


def _free_entry(place: Place, off: DaysOff, schools: SchoolDays, is_open: Flags) -> Iterator[YearPart]:
    """Days of free entry for everybody; the fewer there are among the open days, the more each one draws."""
    offers = [offer for offer in place.offers if _lets_everybody_in_free(offer)]
    if not offers:
        return
    free = is_open & np.any([days_of_offer(offer, off, schools) for offer in offers], axis=0)
    draw = np.zeros(len(off))
    for year in off.years.values():
        if free[year].any():
            paid = 1 - free[year].sum() / is_open[year].sum()
            draw[year] = math.log(FREE_ENTRY) * paid * free[year]
    if free.any():
        yield YearPart(draw, "a day of free entry", "a day that costs", FactorGroup.PLACE)


def _lets_everybody_in_free(offer: Offer) -> bool:
    return (
        isinstance(offer, Ticket)
        and not (offer.price or offer.needs or offer.companions or offer.at_most)
        and offer.at_least == 1
        and offer.ages == EVERYONE
    )


def _school_classes(place: Place, off: DaysOff, schools: SchoolDays) -> Iterator[YearPart]:
    """School classes, on term weekdays when the card says that they come."""
    hours = place.opening.school_groups
    if hours is None:
        return
    in_school = 1 - schools.out - schools.chance_out * schools.unknown
    come = days_of_rule(hours, off, schools) & off.working & ~off.in_lieu
    effect = np.log1p((SCHOOL_CLASSES - 1) * in_school) * come
    yield YearPart(effect, f"school classes come ({hours})", "a term day without them", FactorGroup.PLACE)


def _special_days(place: Place, off: DaysOff) -> Iterator[YearPart]:
    for special in place.special_days:
        index = (special.day - off.first).days
        if 0 <= index < len(off):
            effect = np.zeros(len(off))
            effect[index] = math.log(special.crowd_factor)
            yield YearPart(effect, special.name, "a usual day", FactorGroup.PLACE)
