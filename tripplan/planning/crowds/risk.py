"""Crowd risk: the chance that a day is among the busiest fifth of a place's open days that year."""

import math
from collections.abc import Iterator, Mapping, Sequence, Set
from dataclasses import dataclass, replace
from datetime import date, timedelta
from functools import cached_property, reduce

import numpy as np
from numpy.typing import NDArray

from tripplan.documents.logbook.crowd_note import CrowdNote, Fullness
from tripplan.documents.places.place import Place
from tripplan.errors import PlanError
from tripplan.language.sentences import Fact, fact, said, say
from tripplan.planning.crowds.busiest_fifth import busiest_fifth_chances
from tripplan.planning.crowds.learning import (
    DAYS_OFF_VARY,
    Observation,
    of_group,
    posterior,
    residual,
    ways_to_differ,
)
from tripplan.planning.crowds.levels import TABLES, Levels, levels_for
from tripplan.planning.crowds.parts import FactorGroup, Floats, Part, Than, YearPart, year_parts
from tripplan.planning.holidays.days_off import DaysOff, Flags, days_off
from tripplan.planning.holidays.schools import SchoolDays, SchoolShares
from tripplan.values.ranges import Origin, Source

FULLNESS = (
    (0.10, Fullness.PLENTY_OF_ROOM),
    (0.25, Fullness.SOME_COMPANY),
    (0.50, Fullness.WELL_FILLED),
    (1.00, Fullness.PACKED),
)
"""What a chance is called: the first whose limit it does not exceed. Up to a tenth is half the average
chance, a quarter lies just above the average, beyond a half a full house is more likely than not."""

_WORTH_SAYING = math.log(1.05)


@dataclass(frozen=True)
class CrowdReason:
    """One thing that makes a day fuller or emptier.

    Attributes:
        cause: what it is.
        factor: how many times the visitors of the day without it [-]; the factors of a day multiply.
        fact: both of them.
    """

    cause: Fact
    factor: float
    fact: Fact

    @property
    def text(self) -> str:
        """In words, the factor included."""
        return said(self.fact)


@dataclass(frozen=True)
class CrowdRisk:
    """How likely a full house is.

    Attributes:
        chance: chance of being among the busiest fifth of the open days of that year [0-1].
        fullness: what that chance is called.
        reasons: what it rests on, largest effect first; never empty.
        shares: how the pupils within reach are spread.
        with_notes: whether the family's own notes count beside what was counted elsewhere.
    """

    chance: float
    fullness: Fullness
    reasons: tuple[CrowdReason, ...]
    shares: SchoolShares
    with_notes: bool

    @property
    def word(self) -> str:
        """What the chance is called, in a word or two."""
        return say(fullness_code(self.fullness))

    @property
    def source(self) -> Source:
        """Where the levels come from."""
        tables = tuple(fact(table.name) for table in TABLES)
        code = "crowds-source-with-notes" if self.with_notes else "crowds-source"
        return Source(Origin.ESTIMATE, say(code, tables=tables))


@dataclass(frozen=True, eq=False)
class Crowds(Mapping[date, CrowdRisk]):
    """The crowd risk of every open day of some calendar years at one place.

    As a mapping it goes by date, in order, and makes a day's reasons when asked for. The arrays have one
    entry a day, open or not, and are for going through many days.

    Attributes:
        off: the days, with their weekends and holidays.
        is_open: which of them are compared with each other, each with those of its calendar year.
        level: expected logarithm of visitors, against an ordinary school-term weekday [ln].
        noise: standard deviation about it at a place that lives by days off as much as expected, doubts about
            calendar and season included [ln].
        days_off_vary: how much the place may differ in that, in proportion; see `DAYS_OFF_VARY` [-].
        parts: what the levels are made of.
        schools: how the pupils within reach are spread.
        notes: how many of the family's own notes are among the parts [-].
    """

    off: DaysOff
    is_open: Flags
    level: Floats
    noise: Floats
    days_off_vary: float
    parts: tuple[YearPart, ...]
    schools: SchoolDays
    notes: int = 0

    @cached_property
    def chance(self) -> NDArray[np.float64]:
        """As in `CrowdRisk`, one entry a day, not a number on days that are not open [0-1]."""
        return chances_of((self,))[0]

    @cached_property
    def uncertainty(self) -> Floats:
        """Standard deviation of all that is not known about a day [ln]."""
        by_days_off = self.days_off_vary * of_group(FactorGroup.DAY_OFF, self.parts)
        return np.asarray(np.hypot(self.noise, by_days_off))

    def __getitem__(self, day: date) -> CrowdRisk:
        index = self._index(day)
        chance = float(self.chance[index])
        of_day = [part.on(index) for part in self.parts]
        return CrowdRisk(
            chance, fullness_for(chance), _reasons(of_day), self.schools.on(day), with_notes=self.notes > 0
        )

    def __iter__(self) -> Iterator[date]:
        return (self.off.first + timedelta(days=index) for index in np.flatnonzero(self.is_open).tolist())

    def __len__(self) -> int:
        return int(self.is_open.sum())

    def _index(self, day: date) -> int:
        """Which entry is that of an open day.

        Raises:
            KeyError: the place is not open that day, or the day's year was not asked about.
        """
        index = (day - self.off.first).days
        if not 0 <= index < len(self.off) or not self.is_open[index]:
            raise KeyError(day)
        return index

    def chance_on(self, day: date) -> float:
        """The chance of a full house on an open day [0-1].

        Raises:
            KeyError: the place is not open that day, or the day's year was not asked about.
        """
        return float(self.chance[self._index(day)])

    def sight(self, note: CrowdNote) -> Observation | None:
        """A note beside what is expected of its day without it, be the place open on the day or not.

        Args:
            note: of one of the days.

        Returns:
            None where no day of that year is open: there is nothing to compare the day with.
        """
        index = (note.day - self.off.first).days
        year = self.off.years.get(note.day.year, slice(0))
        opened = self.is_open[year]
        if not opened.any():
            return None
        levels, noises = self.level[year][opened], self.uncertainty[year][opened]
        felt = residual(note.fullness, float(self.level[index]), levels, noises)
        return Observation(self._ways[index], felt, float(self.noise[index]))

    def learning_from(self, notes: Sequence[CrowdNote]) -> "Crowds":
        """The crowd risks of the same days, as the family's own notes of this place make them.

        Args:
            notes: of this place only. One of a year without an open day among these is left out.
        """
        sights = [sight for note in notes if (sight := self.sight(note)) is not None]
        if not sights:
            return self
        mean, covariance = posterior(sights)
        effect = self._ways @ mean
        cause = fact("crowds-your-notes", notes=len(sights))
        own = YearPart(effect, cause, Than.ELSEWHERE, FactorGroup.PLACE)
        level = self.level + effect
        return replace(
            self,
            level=level,
            days_off_vary=math.sqrt(covariance[0, 0]),
            parts=(*self.parts, own),
            notes=len(sights),
        )

    @cached_property
    def _ways(self) -> Floats:
        return ways_to_differ(self.off, self.schools, self.parts)


def crowd_risks(
    place: Place,
    is_open: Flags,
    public_holidays: Mapping[date, str],
    schools: SchoolDays,
    *,
    kept: Set[date] | None = None,
    levels: Levels | None = None,
) -> Crowds:
    """The crowd risk of every open day, each compared with the other open days of its calendar year.

    Args:
        place: where; whether it is indoors, its latitude and its special days count.
        is_open: the days that are compared with each other, one entry a day of `schools`.
        public_holidays: names by date; empty where they are not known.
        schools: how the pupils within reach are spread on every day of one calendar year or several in a row.
        kept: what PH means in the card's rules; all public holidays when left out.
        levels: what each kind of day brings; by who comes to the place when left out.

    Returns:
        The chances of the open days of a year add up to a fifth of their number.

    Raises:
        PlanError: there is not one entry for each day of these years.
    """
    first, last = schools.first, schools.first + timedelta(days=len(is_open) - 1)
    whole = (first.month, first.day, last.month, last.day) == (1, 1, 12, 31)
    if not whole or len(is_open) != len(schools.out):
        raise PlanError("crowd risk needs one entry for each day of whole calendar years")
    off = days_off(first, last, public_holidays, kept)
    visit = place.visit
    levels = levels or levels_for(visit.kind, visit.who_comes, visit.indoors, visit.fullest_days)
    parts = year_parts(place, off, schools, is_open, levels)
    level: Floats = reduce(np.add, (part.effect for part in parts))
    doubts = [part.doubt**2 for part in parts if part.doubt is not None]
    noise = np.sqrt(sum(doubts, levels.noise**2))
    return Crowds(off, is_open, level, noise, DAYS_OFF_VARY, parts, schools)


def chances_of(every: Sequence[Crowds]) -> list[NDArray[np.float64]]:
    """The attribute `chance` of the crowd risks of some places, in a fraction of the time of one by one."""
    level, noise, begins, opened = [], [], [0], []
    for number, crowds in enumerate(every):
        for year in crowds.off.years.values():
            days = year.start + np.flatnonzero(crowds.is_open[year])
            if days.size:
                level.append(crowds.level[days])
                noise.append(crowds.uncertainty[days])
                begins.append(begins[-1] + days.size)
                opened.append((number, days))
    chances = [np.full(len(crowds.off), math.nan) for crowds in every]
    if opened:
        found = busiest_fifth_chances(np.concatenate(level), np.concatenate(noise), begins[:-1])
        for (number, days), of_year in zip(opened, np.split(found, begins[1:-1]), strict=True):
            chances[number][days] = of_year
    return chances


def fullness_for(chance: float) -> Fullness:
    """What a chance is called, by `FULLNESS`."""
    return next(fullness for limit, fullness in FULLNESS if chance <= limit)


def fullness_code(fullness: Fullness) -> str:
    """The name of the message that says how full a place is."""
    return f"crowds-{fullness.replace(' ', '-')}"


def _reasons(parts: Sequence[Part]) -> tuple[CrowdReason, ...]:
    told = [part for part in parts if abs(part.effect) >= _WORTH_SAYING or part.doubt]
    if not told:
        ordinary = fact("crowds-ordinary-day")
        return (CrowdReason(ordinary, 1.0, ordinary),)
    told.sort(key=lambda part: -abs(part.effect))
    return tuple(CrowdReason(part.cause, part.factor, part.fact) for part in told)
