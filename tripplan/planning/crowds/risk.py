"""Crowd risk: the chance that a day is among the busiest fifth of a place's open days that year."""

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence, Set
from dataclasses import dataclass, replace
from datetime import date, timedelta
from functools import cached_property, reduce

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tripplan.errors import PlanError
from tripplan.planning.crowds.days_off import DaysOff, Flags, days_off
from tripplan.planning.crowds.learning import Sight, learnt, surprise, ways_to_differ
from tripplan.planning.crowds.levels import POOLED, TABLES, Levels
from tripplan.planning.crowds.notes import CrowdNote
from tripplan.planning.crowds.parts import Floats, Group, Part, YearPart, year_parts
from tripplan.planning.crowds.schools import SchoolDays, SchoolShares
from tripplan.planning.place import Place
from tripplan.planning.ranges import Origin, Source

BUSIEST_SHARE = 0.2
"""The busiest fifth of the open days [-]."""

WORDS = (
    (0.10, "plenty of room"),
    (0.25, "some company"),
    (0.50, "well filled"),
    (1.00, "packed, most likely"),
)
"""What a chance is called: the first word whose limit it does not exceed. Up to a tenth is half the average
chance, a quarter lies just above the average, beyond a half a full house is more likely than not."""

_ELSEWHERE = f"counted elsewhere, not at this place: {'; '.join(table.name for table in TABLES)}"
_SOURCE = Source(Origin.ESTIMATE, _ELSEWHERE)
_SOURCE_WITH_NOTES = Source(
    Origin.ESTIMATE,
    f"{_ELSEWHERE}. Your own notes here count beside it: about four of one kind of day weigh as much",
)
_WORTH_SAYING = math.log(1.05)
_MOST_STEPS = 200
_CLOSE_ENOUGH = 1e-9
"""By how many days the expected number of busy days may miss a fifth [days]."""


@dataclass(frozen=True)
class CrowdReason:
    """One thing that makes a day fuller or emptier.

    Attributes:
        text: in words, the factor included.
        factor: how many times the visitors of the day without it [-]; the factors of a day multiply.
    """

    text: str
    factor: float


@dataclass(frozen=True)
class CrowdRisk:
    """How likely a full house is.

    Attributes:
        chance: chance of being among the busiest fifth of the open days of that year [0-1].
        word: one of `WORDS`.
        reasons: what it rests on, largest effect first; never empty.
        shares: how the pupils within reach are spread.
        source: where the levels come from.
    """

    chance: float
    word: str
    reasons: tuple[CrowdReason, ...]
    shares: SchoolShares
    source: Source


@dataclass(frozen=True, eq=False)
class CrowdYear:
    """The crowd risk of one calendar year at one place, one array entry a day from 1 January.

    Attributes:
        off: the year, with its weekends and holidays.
        is_open: which days are compared with each other.
        chance: as in `CrowdRisk`, not a number on days that are not open [0-1].
        level: expected logarithm of visitors, against an ordinary school-term weekday [ln].
        noise: standard deviation about it, doubts included [ln].
        parts: what the levels are made of.
        schools: how the pupils within reach are spread.
        notes: how many of the family's own notes are among the parts [-].
    """

    off: DaysOff
    is_open: Flags
    chance: Floats
    level: Floats
    noise: Floats
    parts: tuple[YearPart, ...]
    schools: SchoolDays
    notes: int = 0

    @property
    def first(self) -> date:
        """1 January."""
        return self.off.first

    def on(self, day: date) -> CrowdRisk:
        """One day's risk with its reasons, put into words now.

        Raises:
            KeyError: the place is not open that day, or the day is of another year.
        """
        index = (day - self.first).days
        if not 0 <= index < len(self.chance) or not self.is_open[index]:
            raise KeyError(day)
        chance = float(self.chance[index])
        of_day = [part.on(index) for part in self.parts]
        source = _SOURCE_WITH_NOTES if self.notes else _SOURCE
        return CrowdRisk(chance, word_for(chance), _reasons(of_day), self.schools.on(day), source)

    def sight(self, note: CrowdNote) -> Sight:
        """A note of a day of this year, open or not, beside what is expected of the day without it."""
        index = (note.day - self.first).days
        return Sight(
            self._ways[index],
            surprise(
                note.fullness, float(self.level[index]), self.level[self.is_open], self.noise[self.is_open]
            ),
            float(self.noise[index]),
        )

    def with_learnt(self, differs: Floats, notes: int) -> "CrowdYear":
        """The year as the family's notes make it.

        Args:
            differs: how much the place differs in each way, as `learnt` says it.
            notes: how many notes say so [-].
        """
        cause = "from your note here" if notes == 1 else f"from your {notes} notes here"
        effect = self._ways @ differs
        own = YearPart(effect, cause, "what was counted elsewhere", Group.PLACE)
        level = self.level + effect
        chance = _chances_of_open_days(level, self.noise, self.is_open)
        return replace(self, level=level, chance=chance, parts=(*self.parts, own), notes=notes)

    @cached_property
    def _ways(self) -> Floats:
        return ways_to_differ(self.off, self.schools, self.parts)


class Crowds(Mapping[date, CrowdRisk]):
    """The crowd risks of every open day of some years at one place; a day's reasons are made when asked for.

    As a mapping it goes by date, in order. `chance_on` and the arrays of `year` are for going through many
    days: they make no object a day.
    """

    def __init__(self, years: Iterable[CrowdYear]) -> None:
        self._years = {of_year.first.year: of_year for of_year in sorted(years, key=_first_day)}

    def __getitem__(self, day: date) -> CrowdRisk:
        return self._years[day.year].on(day)

    def __iter__(self) -> Iterator[date]:
        for of_year in self._years.values():
            for index in np.flatnonzero(of_year.is_open):
                yield of_year.first + timedelta(days=int(index))

    def __len__(self) -> int:
        return sum(int(of_year.is_open.sum()) for of_year in self._years.values())

    def chance_on(self, day: date) -> float:
        """The chance of a full house on an open day [0-1].

        Raises:
            KeyError: the place is not open that day, or the day's year was not asked about.
        """
        of_year = self._years[day.year]
        chance = float(of_year.chance[(day - of_year.first).days])
        if math.isnan(chance):
            raise KeyError(day)
        return chance

    def learning_from(self, notes: Sequence[CrowdNote]) -> "Crowds":
        """The crowd risks of the same days, as the family's own notes of this place make them.

        Args:
            notes: of this place only. One of a year without an open day among these is left out: there is
                nothing to compare it with.
        """
        sights = [self._years[note.day.year].sight(note) for note in notes if note.day.year in self._years]
        if not sights:
            return self
        differs = learnt(sights)
        return Crowds(of_year.with_learnt(differs, len(sights)) for of_year in self._years.values())

    def year(self, year: int) -> CrowdYear:
        """The arrays of one of the years.

        Raises:
            KeyError: the year was not asked about.
        """
        return self._years[year]


def crowd_year(
    place: Place,
    year: int,
    is_open: Flags,
    public_holidays: Mapping[date, str],
    schools: SchoolDays,
    *,
    kept: Set[date] | None = None,
    levels: Levels | None = None,
) -> CrowdYear:
    """The crowd risk of every open day of one calendar year.

    Args:
        place: where; whether it is indoors, its latitude and its special days count.
        year: the calendar year [years].
        is_open: the days that are compared with each other, one entry a day of the year.
        public_holidays: names by date; empty where they are not known.
        kept: what PH means in the card's rules; all of these when left out.
        schools: how the pupils within reach are spread, one entry a day of the year.
        levels: what each kind of day brings; by who comes to the place when left out.

    Returns:
        The chances of the open days add up to a fifth of their number.

    Raises:
        PlanError: there is not one entry a day of the year.
    """
    off = days_off(year, public_holidays, kept)
    if schools.first != off.first or not len(off) == len(schools.out) == len(is_open):
        raise PlanError("crowd risk needs one entry for each day of the year")
    levels = levels or POOLED[place.visit.who_comes]
    parts = year_parts(place, off, schools, is_open, levels)
    level: Floats = reduce(np.add, (part.effect for part in parts))
    doubts = [part.doubt**2 for part in parts if part.doubt is not None]
    noise = np.sqrt(sum(doubts, levels.noise**2))
    chance = _chances_of_open_days(level, noise, is_open)
    return CrowdYear(off, is_open, chance, level, noise, parts, schools)


def _chances_of_open_days(level: Floats, noise: Floats, is_open: Flags) -> NDArray[np.float64]:
    """One entry a day, not a number on days that are not open."""
    chance = np.full(len(level), math.nan)
    chance[is_open] = busiest_fifth_chances(level[is_open], noise[is_open])
    return chance


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
        place: where.
        is_open: the days that are compared with each other, one entry a day of `schools`.
        public_holidays: names by date; empty where they are not known.
        schools: how the pupils within reach are spread on every day of one calendar year or several in a row.
        kept: what PH means in the card's rules; all public holidays when left out.
        levels: what each kind of day brings; by who comes to the place when left out.

    Returns:
        One answer per open day.
    """
    first, years = schools.first, []
    last = first + timedelta(days=len(is_open) - 1)
    for year in range(first.year, last.year + 1):
        begin, end = ((date(january, 1, 1) - first).days for january in (year, year + 1))
        if is_open[begin:end].any():
            of_school = schools.part(begin, end - begin)
            opened = is_open[begin:end]
            years.append(
                crowd_year(place, year, opened, public_holidays, of_school, kept=kept, levels=levels)
            )
    return Crowds(years)


def busiest_fifth_chances(level: ArrayLike, noise: ArrayLike) -> NDArray[np.float64]:
    """Each day's chance of being among the busiest fifth, given how full it is expected to be.

    The logarithm of a day's visitors is its level plus logistic noise. A day counts as busy above the one
    threshold that a fifth of all days is expected to exceed; Newton's method finds it, halving where a step
    of it would leave the bracket.

    Args:
        level: expected logarithm of visitors, one entry a day, against any common zero [ln].
        noise: standard deviation about it, one entry a day, above 0 [ln].

    Returns:
        Chances [0-1]; they add up to a fifth of the number of days.
    """
    expected = np.asarray(level, dtype=float)
    days = expected.size
    if not days:
        return np.zeros(0)
    # A logistic distribution of scale s has the standard deviation s pi / sqrt(3).
    twice_scale = np.broadcast_to(
        np.asarray(noise, dtype=float) * (2 * math.sqrt(3) / math.pi), expected.shape
    )
    steepest = 0.5 / twice_scale
    reach = 10 * float(twice_scale.max())
    low, high = float(expected.min()) - reach, float(expected.max()) + reach
    threshold = float(expected.mean() + expected.std())
    for _ in range(_MOST_STEPS):
        # A chance is (1 + swing) / 2, and falls with the threshold by steepest x (1 - swing squared).
        swing = np.tanh((expected - threshold) / twice_scale)
        too_many = 0.5 * (days + float(swing.sum())) - BUSIEST_SHARE * days
        if abs(too_many) < _CLOSE_ENOUGH:
            break
        if too_many > 0:
            low = threshold
        else:
            high = threshold
        steepness = float(steepest @ (1 - swing * swing))
        step = threshold + too_many / steepness if steepness > 0 else math.inf
        threshold = step if low < step < high else (low + high) / 2
    return 0.5 * (1 + swing)


def word_for(chance: float) -> str:
    """What a chance is called, one of `WORDS`."""
    return next(word for limit, word in WORDS if chance <= limit)


def _first_day(of_year: CrowdYear) -> date:
    return of_year.first


def _reasons(parts: Sequence[Part]) -> tuple[CrowdReason, ...]:
    told = [part for part in parts if abs(part.effect) >= _WORTH_SAYING or part.doubt]
    if not told:
        return (CrowdReason("an ordinary school-term weekday", 1.0),)
    told.sort(key=lambda part: -abs(part.effect))
    return tuple(CrowdReason(str(part), part.factor) for part in told)
