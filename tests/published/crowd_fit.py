"""How well chances of a full house foretell counted days at places that the levels never saw, as tables.

Each place is judged with the levels that the tables of the *other* places give for its kind, so nothing of it
was fitted; a day's chance is compared with whether it was among the busiest fifth of its counted year. Which
parts the levels have (the weeks before Christmas among them), what is pooled in proportion to the weekend,
how much the common level counts beside a kind's own and how strong the season is indoors were chosen with all
six tables in view. Weather is not used: it is not known ahead. The baselines are the base rate (every day 1
in 5) and 'weekend or holiday' (two rates, learned from the other places).
"""

import csv
import io
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from functools import lru_cache
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from tests.published.crowd_tables import MUSEUM_NAMES, Counts, bicycles, fitted, museum, park, zoo
from tripplan.language.sentences import fact, said
from tripplan.planning.crowds.busiest_fifth import busiest_fifth_chances
from tripplan.planning.crowds.levels import EFFECTS, TABLES, Levels, VisitorTable, pooled
from tripplan.planning.crowds.risk import crowd_risks
from tripplan.planning.holidays.days_off import days_off

Floats = NDArray[np.float64]
BINS = (0.0, 0.05, 0.1, 0.2, 0.35, 0.5, 1.0)
_TENTHS = 10
KINDS_OF_DAY = ("term weekday", "weekday on break", "Saturday", "Sunday", "public holiday")

_BRISTOL = (
    "Bristol City Council, museum visitors by day, April 2015 to February 2019, Open Government Licence 3.0"
)


@dataclass(frozen=True)
class Counted:
    """One place whose visitors were counted.

    Attributes:
        name: of the message that says what was counted, where and when.
        source: author and title.
        years: the counted ones; the zoo's 1991 has only 90 days and the museums' 2019 at most 45, and are
            left out.
        grows: whether visitors grew steadily over these years.
    """

    name: str
    source: str
    years: Sequence[int]
    grows: bool = False

    @property
    def words(self) -> str:
        """What was counted, where and when."""
        return said(fact(self.name))

    @property
    def table(self) -> VisitorTable:
        """What the program has of it."""
        return next(table for table in TABLES if table.name == self.name)


COUNTED: Mapping[str, Counted] = {
    "zoo": Counted(
        "crowds-table-zoo",
        "data set zoo.df of the R package s20x (Auckland; its days are dated by their public holidays)",
        (1990,),
    ),
    "bicycles": Counted(
        "crowds-table-bicycles",
        "Fanaee-T and Gama, Bike Sharing (Washington DC), UCI Machine Learning Repository, 2013",
        (2011, 2012),
        grows=True,
    ),
    "park": Counted(
        "crowds-table-walkers",
        "City of Melbourne, pedestrian counting system, Birrarung Marr, in the R package tsibble",
        (2015, 2016),
    ),
    **{
        museum: Counted(f"crowds-table-{message}", _BRISTOL, (2015, 2016, 2017, 2018))
        for museum, message in zip(MUSEUM_NAMES, ("museum", "park-museum", "town-house"), strict=True)
    },
}
"""The places, by the names of their tables."""


def tables_text(folder: Path) -> str:
    """`visitor_tables.csv`: one line a place, its effects to four digits after the point."""
    text = io.StringIO()
    writer = csv.DictWriter(text, ["name", "source", "kind", "who_comes", *EFFECTS], lineterminator="\n")
    writer.writeheader()
    for name, counted in COUNTED.items():
        counts = places(folder)[name]
        effects = fitted(counts, grows=counted.grows)
        visit = counts.place.visit
        told = {
            "name": counted.name,
            "source": counted.source,
            "kind": visit.kind,
            "who_comes": visit.who_comes,
        }
        writer.writerow(told | {effect: f"{value:.4f}" for effect, value in effects.items()})
    return text.getvalue()


@lru_cache(maxsize=4)
def places(folder: Path) -> Mapping[str, Counts]:
    """What was counted at each place, whole."""
    return {
        "zoo": zoo(folder),
        "bicycles": bicycles(folder),
        "park": park(folder),
        **{name: museum(folder, name) for name in MUSEUM_NAMES},
    }


def of_years(name: str, folder: Path) -> list[Counts]:
    """What was counted at a place, year by year."""
    return [places(folder)[name].in_year(year) for year in COUNTED[name].years]


def levels_without(name: str) -> Levels:
    """The levels of a place's kind, by the tables of all other places."""
    own = COUNTED[name].table
    return pooled([table for table in TABLES if table is not own], own.kind, own.who_comes)


def chances(counts: Counts, levels: Levels) -> Floats:
    """What the model says of each counted day, all days of the table compared with each other."""
    level, noise = [], []
    for year in sorted({day.year for day in counts.days}):
        first, last = date(year, 1, 1), date(year, 12, 31)
        counted = np.zeros((last - first).days + 1, dtype=bool)
        counted[[(day - first).days for day in counts.days if day.year == year]] = True
        found = crowd_risks(counts.place, counted, counts.holidays, counts.schools_in(year), levels=levels)
        level.append(found.level[counted])
        noise.append(found.uncertainty[counted])
    return busiest_fifth_chances(np.concatenate(level), np.concatenate(noise))


def kinds_of_day(counts: Counts) -> NDArray[np.int64]:
    """For each counted day of one year which of `KINDS_OF_DAY` it is."""
    year = counts.days[0].year
    first = date(year, 1, 1)
    off, schools = days_off(first, date(year, 12, 31), counts.holidays), counts.schools_in(year)
    on_break = schools.on_break + schools.unknown * schools.chance_on_break >= 0.5
    kind = np.select(
        [off.public_holiday, off.weekday == 6, off.weekday == 5, on_break], [4, 3, 2, 1], default=0
    )
    return np.asarray(kind[[(day - first).days for day in counts.days]], dtype=np.int64)


@dataclass(frozen=True)
class Judged:
    """Days that were judged, one array entry a day.

    Attributes:
        chance: what the model said [0-1].
        plain: what 'weekend or holiday' said [0-1].
        happened: 1 for each day that was among the busiest fifth.
        kind: which of `KINDS_OF_DAY` it was.
    """

    chance: Floats
    plain: Floats
    happened: Floats
    kind: NDArray[np.int64]

    @property
    def skill(self) -> float:
        """Over the base rate: 1 is perfect, 0 no better than saying 1 in 5 every day [-]."""
        return 1 - brier(self.chance, self.happened) / brier(0.2, self.happened)

    @property
    def skill_over_weekends(self) -> float:
        """Over 'weekend or holiday' [-]."""
        return 1 - brier(self.chance, self.happened) / brier(self.plain, self.happened)

    @property
    def classes(self) -> list[tuple[float, int, float, float]]:
        """Where each class of chances begins, its days, mean chance and share that happened."""
        of_day = np.digitize(self.chance, BINS[1:-1])
        return [
            (
                BINS[n],
                int((of_day == n).sum()),
                float(self.chance[of_day == n].mean()),
                float(self.happened[of_day == n].mean()),
            )
            for n in np.unique(of_day)
        ]

    @property
    def calibration_error(self) -> float:
        """Mean distance between what was said and what was seen, over all days [-]."""
        return sum(days * abs(said - seen) for _, days, said, seen in self.classes) / len(self.chance)


def together(parts: Sequence[Judged]) -> Judged:
    """The days of some places as one."""
    return Judged(
        *(
            np.concatenate([getattr(part, name) for part in parts])
            for name in ("chance", "plain", "happened", "kind")
        )
    )


def brier(chance: Floats | float, happened: Floats) -> float:
    """Mean squared distance between chances and what happened [-]."""
    return float(np.mean((chance - happened) ** 2))


def weekend_or_holiday(counts: Counts, learned_from: Sequence[Counts]) -> Floats:
    """The baseline: one rate for weekends and public holidays, one for other days."""
    busy = np.concatenate([other.busiest for other in learned_from])
    free = np.concatenate([other.free_days for other in learned_from])
    return np.asarray(np.where(counts.free_days, busy[free].mean(), busy[~free].mean()), dtype=float)


@lru_cache(maxsize=32)
def judged_without_itself(name: str, folder: Path) -> Judged:
    """A place judged by what was counted at the others."""
    others = [year for other in COUNTED if other != name for year in of_years(other, folder)]
    levels = levels_without(name)
    return together(
        [
            Judged(
                chances(counts, levels),
                weekend_or_holiday(counts, others),
                counts.busiest,
                kinds_of_day(counts),
            )
            for counts in of_years(name, folder)
        ]
    )


def factors(effects: Mapping[str, float]) -> list[float]:
    """How many times the visitors of a term weekday each other kind of day brings [-]."""
    names = ("school_holiday", "saturday", "sunday", "public_holiday")
    return [float(np.exp(effects[name])) for name in names]


def report(folder: Path) -> str:
    """The tables as Markdown."""
    lines = [
        "# How well a full house is foretold",
        "",
        "Written by `python -m tests.published.write_figures`; a test compares it with the levels in use.",
        "Every place is judged by what was counted at the *other* places: nothing of it was fitted. *Seen*",
        "is the share of days that really were among the busiest fifth of the counted days of their year.",
        "Which effects a day can have was chosen with all six tables in view.",
        "",
        "## Skill, each place left out in turn",
        "",
        "| place | kind | days | skill over the base rate | over weekend or holiday | calibration error |",
        "|---|---|---|---|---|---|",
        *_skills(folder),
        "",
        "## Said and seen, all places together",
        "",
        "| chance from | days | said | seen |",
        "|---|---|---|---|",
        *(
            f"| {begins:.2f} | {days} | {said:.3f} | {seen:.3f} |"
            for begins, days, said, seen in _every(folder).classes
        ),
        "",
        "## Said and seen by kind of day",
        "",
        "| place | kind of day | days | said | seen |",
        "|---|---|---|---|---|",
        *_by_kind_of_day(folder),
        "",
        "## Visitors against a term weekday",
        "",
        "*Foretold* is what the other places' tables say, *counted* the place's own table; the figures",
        "behind ± are standard errors, by leaving out a tenth of the weeks in turn. Aimed at: foretold",
        "within 20 % of counted. Where places of one kind differ by more than that among themselves no",
        "figure for the kind can meet it; the family's notes can.",
        _all_foretold_within(),
        "",
        "| place | | weekday on break | Saturday | Sunday | public holiday |",
        "|---|---|---|---|---|---|",
        *_factors(folder),
        "",
        "## Sources",
        "",
        *(f"* {counted.words}: {counted.source}." for counted in COUNTED.values()),
    ]
    return "\n".join(lines) + "\n"


def _every(folder: Path) -> Judged:
    return together([judged_without_itself(name, folder) for name in COUNTED])


def _skills(folder: Path) -> Iterator[str]:
    for name, counted in COUNTED.items():
        yield _skill(counted.words, counted.table.kind, judged_without_itself(name, folder))
    yield _skill("all", "", _every(folder))


def _skill(name: str, kind: str, judged: Judged) -> str:
    return (
        f"| {name} | {kind.replace('_', ' ')} | {len(judged.chance)} | {judged.skill:.3f} "
        f"| {judged.skill_over_weekends:.3f} | {judged.calibration_error:.3f} |"
    )


def _by_kind_of_day(folder: Path) -> Iterator[str]:
    for name, counted in COUNTED.items():
        judged = judged_without_itself(name, folder)
        for number, kind in enumerate(KINDS_OF_DAY):
            of_kind = judged.kind == number
            if of_kind.any():
                said, seen = judged.chance[of_kind].mean(), judged.happened[of_kind].mean()
                yield f"| {counted.words} | {kind} | {of_kind.sum()} | {said:.2f} | {seen:.2f} |"


def factor_errors(counts: Counts, *, grows: bool) -> list[float]:
    """Standard errors of `factors`, by leaving out a tenth of the weeks in turn [-]."""
    parts = []
    for tenth in range(_TENTHS):
        left = {day: n for day, n in counts.visitors.items() if day.toordinal() // 7 % _TENTHS != tenth}
        parts.append(factors(fitted(replace(counts, visitors=left), grows=grows)))
    return [float(error) for error in np.sqrt((_TENTHS - 1) * np.var(parts, axis=0))]


def within_a_fifth(name: str) -> list[bool]:
    """Of each kind of day whether what the other places foretell is within 20 % of what was counted."""
    foretold, counted = factors(vars(levels_without(name))), factors(COUNTED[name].table.effects)
    return [abs(said / seen - 1) <= 0.2 for said, seen in zip(foretold, counted, strict=True)]


def _all_foretold_within() -> str:
    met = np.array([within_a_fifth(name) for name in COUNTED]).sum(axis=0)
    told = ", ".join(f"{label} at {n}" for label, n in zip(KINDS_OF_DAY[1:], met, strict=True))
    return f"Met, of {len(COUNTED)} places: {told}."


def _factors(folder: Path) -> Iterator[str]:
    for name, counted in COUNTED.items():
        foretold = factors(vars(levels_without(name)))
        yield f"| {counted.words} | foretold | {' | '.join(f'{factor:.1f}' for factor in foretold)} |"
        own = factors(counted.table.effects)
        off = factor_errors(places(folder)[name], grows=counted.grows)
        told = " | ".join(f"{factor:.1f} ± {error:.1f}" for factor, error in zip(own, off, strict=True))
        yield f"| {counted.words} | counted | {told} |"
