"""What makes a day fuller or emptier than an ordinary school-term weekday, part by part.

A part is worked out for whole years at once; what causes it on a single day is found out on demand.
"""

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from enum import Enum, StrEnum, auto
from functools import lru_cache, partial
from typing import Any

import numpy as np
from numpy.typing import NDArray

from tripplan.documents.places.offers import Offer, Ticket
from tripplan.documents.places.place import Place
from tripplan.language.sentences import Fact, fact
from tripplan.planning.crowds.levels import FREE_ENTRY, SCHOOL_CLASSES, SHORT_DAY, Levels
from tripplan.planning.crowds.rule_days import days_of_offer, days_of_rule
from tripplan.planning.crowds.season import around_christmas, season
from tripplan.planning.holidays.days_off import DaysOff, Flags
from tripplan.planning.holidays.public_holidays import OBSERVED
from tripplan.planning.holidays.schools import SchoolDays
from tripplan.values.ages import EVERYONE
from tripplan.values.weekday import Weekday

Floats = NDArray[np.floating[Any]]

_MOST, _ALL = 0.5, 0.95
"""From these shares of the pupils on it is most of them, and all [-]."""
_OPEN_QUESTION = (0.2, 0.8)
"""Between these chances that there is no school neither is likely [0-1]."""


class Than(StrEnum):
    """What a day is compared with; the messages of these names say it."""

    WEEKDAY = "crowds-than-weekday"
    SUCH_WEEKDAY = "crowds-than-such-weekday"
    WEEKEND = "crowds-than-weekend"
    SCHOOL_DAY = "crowds-than-school-day"
    WHOLE_SCHOOL_DAY = "crowds-than-whole-school-day"
    AVERAGE = "crowds-than-average"
    PAID = "crowds-than-paid"
    WITHOUT_CLASSES = "crowds-than-without-classes"
    USUAL = "crowds-than-usual"
    ELSEWHERE = "crowds-than-elsewhere"


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
        cause: what brings it.
        compared_with: what the effect multiplies.
        doubt: standard deviation of the effect where a calendar is unknown [ln].
    """

    effect: float
    cause: Fact
    compared_with: Than
    doubt: float = 0.0

    @property
    def factor(self) -> float:
        """How many times the visitors [-]."""
        return math.exp(self.effect)

    @property
    def fact(self) -> Fact:
        """The cause with its size."""
        than = fact(self.compared_with)
        return fact("crowds-reason", cause=self.cause, factor=round(self.factor, 2), than=than)


@dataclass(frozen=True, eq=False)
class YearPart:
    """One named effect on all days of some years, one array entry a day.

    Attributes:
        effect: as in `Part` [ln].
        cause: of all days, or what gives that of the day with an index.
        compared_with: as in `Part`.
        group: what it is about.
        doubt: as in `Part` [ln]; None for none.
    """

    effect: Floats
    cause: Fact | Callable[[int], Fact]
    compared_with: Than
    group: FactorGroup
    doubt: Floats | None = None

    def on(self, index: int) -> Part:
        """The effect on the day with that index."""
        return Part(
            float(self.effect[index]),
            self.cause if isinstance(self.cause, Fact) else self.cause(index),
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
        *_around_christmas(off, levels),
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
    yield YearPart(levels.weekend_on_break * on_break, inside, Than.WEEKEND, FactorGroup.DAY_OFF)
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
    ordinary, day_off = Than.WEEKDAY, FactorGroup.DAY_OFF
    by_weekday = np.array([0, 0, 0, 0, levels.friday, levels.saturday, levels.sunday])
    off_work = levels.off_work * (off.in_lieu | off.bridge)
    parts = _CalendarParts(
        YearPart(levels.public_holiday * off.public_holiday, partial(_holiday, off), ordinary, day_off),
        YearPart(by_weekday[off.weekday] * ~off.public_holiday, partial(_weekday, off), ordinary, day_off),
        YearPart(levels.long_weekend * off.long_weekend, fact("crowds-long-weekend"), Than.WEEKEND, day_off),
        YearPart(off_work, partial(_off_work, off), Than.SUCH_WEEKDAY, day_off),
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
    yield YearPart(known * off.working, partial(_pupils, schools), Than.SCHOOL_DAY, FactorGroup.DAY_OFF)
    yield YearPart(
        chance * between,
        partial(_unknown, schools),
        Than.SCHOOL_DAY,
        FactorGroup.DAY_OFF,
        doubt=np.sqrt(chance * (1 - chance)) * between,
    )
    if schools.short.any():
        part_of_day = np.log1p((schools.out + SHORT_DAY * schools.short) * more) - known
        yield YearPart(
            part_of_day * off.working,
            partial(_short_day, schools),
            Than.WHOLE_SCHOOL_DAY,
            FactorGroup.DAY_OFF,
        )


def _weekday(off: DaysOff, index: int) -> Fact:
    return fact("crowds-weekday", day=Weekday(off.weekday[index]))


def _holiday(off: DaysOff, index: int) -> Fact:
    return fact("crowds-holiday", name=off.names[index])


def _off_work(off: DaysOff, index: int) -> Fact:
    if off.in_lieu[index]:
        return fact("crowds-in-lieu", name=off.names[index].removesuffix(OBSERVED))
    return fact("crowds-bridge-day")


def _unknown(schools: SchoolDays, index: int) -> Fact:
    chance = float(schools.chance_out[index])
    low, high = _OPEN_QUESTION
    code = "crowds-school-unknown" if low <= chance <= high else "crowds-school-likely"
    code = "crowds-no-school-likely" if chance > high else code
    return fact(code, students=_students(float(schools.unknown[index])))


def _weekend_on_break(schools: SchoolDays, index: int) -> Fact:
    known = schools.on_break[index] >= schools.unknown[index] * schools.chance_on_break[index]
    return fact("crowds-on-break" if known else "crowds-likely-on-break")


def _pupils(schools: SchoolDays, index: int) -> Fact:
    return fact("crowds-no-school", students=_students(float(schools.out[index]), most=True))


def _short_day(schools: SchoolDays, index: int) -> Fact:
    return fact("crowds-short-school-day", students=_students(float(schools.short[index])))


def _students(share: float, *, most: bool = False) -> Fact:
    """How many of the pupils nearby, whether or not a half of them is told as most of them."""
    if share > _ALL:
        return fact("crowds-students")
    return (
        fact("crowds-most-students")
        if most and share > _MOST
        else fact("crowds-some-students", share=round(share, 2))
    )


def _season(place: Place, off: DaysOff, levels: Levels) -> YearPart:
    found = season(
        off.first, len(off), place.where.point.latitude, place.visit.indoors, place.busiest_months, levels
    )
    code = "crowds-season"
    if place.busiest_months:
        code = "crowds-season-by-card"
    elif found.doubt is not None:
        code = "crowds-season-in-doubt"
    return YearPart(found.effect, fact(code), Than.AVERAGE, FactorGroup.SEASON, doubt=found.doubt)


def _around_christmas(off: DaysOff, levels: Levels) -> Iterator[YearPart]:
    advent, festive = around_christmas(off)
    weekday, weekend = advent & off.working, advent & off.weekend
    for effect, code, than in (
        (levels.advent * weekday + levels.advent_weekend * weekend, "crowds-before-christmas", Than.USUAL),
        (levels.festive * festive, "crowds-christmas-and-new-year", Than.USUAL),
    ):
        yield YearPart(effect, fact(code), than, FactorGroup.PLACE)


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
        yield YearPart(draw, fact("crowds-free-entry"), Than.PAID, FactorGroup.PLACE)


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
    cause = fact("crowds-school-classes", hours=hours)
    yield YearPart(effect, cause, Than.WITHOUT_CLASSES, FactorGroup.PLACE)


def _special_days(place: Place, off: DaysOff) -> Iterator[YearPart]:
    for special in place.special_days:
        index = (special.day - off.first).days
        if 0 <= index < len(off):
            effect = np.zeros(len(off))
            effect[index] = math.log(special.crowd_factor)
            yield YearPart(
                effect, fact("crowds-special-day", name=special.name), Than.USUAL, FactorGroup.PLACE
            )
