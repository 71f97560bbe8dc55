"""How many visitors a kind of day brings: effects on the natural logarithm of daily visitors.

Daily counts of families at outing places are hardly published; the tables of `visitor_tables.csv` are what
there is. Each kind of place has the levels that its own tables give, drawn towards what all kinds have in
common, and the more so the fewer tables it has. Plain ratios of mean visitors at the zoo, against an ordinary
school-term weekday: weekend 4.1, school-holiday weekday 4.4, public holiday 7.9.
"""

import csv
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, fields, replace
from functools import lru_cache
from importlib.resources import files
from operator import attrgetter
from statistics import mean
from typing import cast

from tripplan.documents.places.place import FullestDays, KindOfPlace, WhoComes


@dataclass(frozen=True)
class Levels:
    """What each part of a day adds to the logarithm of visitors; 0 is Monday to Thursday in term.

    Attributes:
        friday: a Friday that is no public holiday [ln].
        saturday: a Saturday in term [ln].
        sunday: a Sunday in term [ln].
        school_holiday: a weekday on which all pupils nearby are out of school [ln].
        weekend_on_break: on top of `saturday` or `sunday`, inside school holidays [ln].
        public_holiday: a public holiday, whatever the weekday [ln].
        long_weekend: on top of `saturday` or `sunday`, beside a public holiday or bridge day [ln].
        off_work: a weekday in lieu of a holiday, or alone between days off [ln].
        season: outdoors, midsummer against the year's average; midwinter is as much below it. For each kelvin
            between the mean temperatures of January and July in that latitude [ln/K].
        shoulder: likewise, how far spring and autumn lie above a plain wave, and midsummer and midwinter
            below it, for each square of these kelvins [ln/K2]: people go out less when it is too hot as when
            it is too cold, so what bends the wave grows by the square of its swing.
        advent: a weekday from 1 to 23 December [ln].
        advent_weekend: a weekend day of these weeks [ln].
        festive: the eve and first day of Christmas and of the new year, on top of what else they are [ln].
        noise: standard deviation of a single day about all this (weather, chance) [ln].
    """

    friday: float
    saturday: float
    sunday: float
    school_holiday: float
    weekend_on_break: float
    public_holiday: float
    long_weekend: float
    off_work: float
    season: float
    shoulder: float
    advent: float
    advent_weekend: float
    festive: float
    noise: float

    @property
    def weekend(self) -> float:
        """A weekend day in term, Saturdays and Sundays alike [ln]."""
        return (self.saturday + self.sunday) / 2


@dataclass(frozen=True)
class VisitorTable:
    """What one published table of visitors says.

    Attributes:
        name: of the message that says what was counted, where and when.
        source: author and title.
        kind: what kind of place was counted, as on a place card.
        who_comes: who fills it, likewise.
        effects: by the names of `Levels`, fitted by least squares on the logarithm of the daily counts, all
            at once; without those that it cannot tell.
    """

    name: str
    source: str
    kind: KindOfPlace
    who_comes: WhoComes
    effects: Mapping[str, float]

    @property
    def weekend(self) -> float:
        """A weekend day in term, Saturdays and Sundays alike [ln]."""
        return (self.effects["saturday"] + self.effects["sunday"]) / 2


EFFECTS = tuple(field.name for field in fields(Levels))


def tables_in(text: str) -> tuple[VisitorTable, ...]:
    """The tables of a CSV text with a column for each attribute and each effect."""
    return tuple(
        VisitorTable(
            name=row["name"],
            source=row["source"],
            kind=cast(KindOfPlace, row["kind"]),
            who_comes=cast(WhoComes, row["who_comes"]),
            effects={name: float(row[name]) for name in EFFECTS if row[name]},
        )
        for row in csv.DictReader(text.splitlines())
    )


TABLES = tables_in(
    files("tripplan.planning.crowds").joinpath("visitor_tables.csv").read_text(encoding="utf-8")
)
"""All tables, as `python -m tests.published.write_figures` fits them."""

MUSEUMS_SCHOOL_HOLIDAY: dict[WhoComes, float] = {"families": 1.16, "everybody": 0.35}
"""A school-holiday weekday in proportion to a weekend at museums [-]: visits a day in August are 1.89 and
1.98 times those in September at two that children like (Science Museum, National Railway Museum), 1.26 and
1.11 times at two galleries (Tate Modern, Soane). DCMS-sponsored museums, monthly visits 2009 to 2018. They
count like one more kind of place."""

OFF_WORK = 0.1
"""As in `Levels`, everywhere: mean of the 22 such days of all six tables, which differ by more than kinds of
place could [ln]. Most of them lie in school holidays, which are counted apart."""
COMMON_COUNTS = 1.0
"""The common level counts like so many tables beside a kind's own [-]. Of a third, a half, 1, 2 and 3 the
chances at a place that was never counted hardly tell one from the other (`tests/published/crowd_fit.md`)."""
ALIKE_COUNTS = 2.0
"""How many tables it takes to believe a kind's own difference between Saturdays and Sundays by half [-]: the
tables disagree in its sign."""
FULLEST_BY = 0.42
"""How much fuller the fullest day of the weekend is than the other one, where the card names it [ln]: the
largest difference of all tables, that of the zoo."""
_SATURDAYS_FULLER: dict[FullestDays, float] = {"saturdays": FULLEST_BY, "sundays": -FULLEST_BY}
_IN_PROPORTION = ("friday", "weekend_on_break", "public_holiday", "long_weekend")
_AROUND_CHRISTMAS = ("advent", "advent_weekend", "festive")


def pooled(tables: Sequence[VisitorTable], kind: KindOfPlace | None, who_comes: WhoComes) -> Levels:
    """What tables say together of one kind of place.

    Places differ much in how far they live by days off, less in how the days off compare with each other. So
    a weekend is pooled by itself and all other days off in proportion to their table's own weekend. School
    holidays alone also go by who comes: there only tables and museums where the same people come count.

    Args:
        tables: at least one of them with a season.
        kind: of the place that the levels are for; None for what all kinds have in common.
        who_comes: who fills it.
    """

    def level(of: Callable[[VisitorTable], float | None], *more: float) -> float:
        told: dict[KindOfPlace, list[float]] = {}
        for table in tables:
            if (value := of(table)) is not None:
                told.setdefault(table.kind, []).append(value)
        own = told.get(kind, []) if kind else []
        return _shrunk(own, mean([*map(mean, told.values()), *more]), COMMON_COUNTS)

    def in_proportion(name: str) -> Callable[[VisitorTable], float]:
        return lambda table: table.effects[name] / table.weekend

    def on_break(table: VisitorTable) -> float | None:
        return in_proportion("school_holiday")(table) if table.who_comes == who_comes else None

    def plain(name: str) -> Callable[[VisitorTable], float | None]:
        return lambda table: table.effects.get(name)

    weekend = level(attrgetter("weekend"))
    apart = _shrunk(
        [table.effects["saturday"] - table.effects["sunday"] for table in tables if table.kind == kind],
        0,
        ALIKE_COUNTS,
    )
    # Of the time of year a kind of its own tells less than all outdoors together.
    seasons = [table.effects for table in tables if "season" in table.effects]
    return Levels(
        saturday=weekend + apart / 2,
        sunday=weekend - apart / 2,
        school_holiday=weekend * level(on_break, MUSEUMS_SCHOOL_HOLIDAY[who_comes]),
        off_work=OFF_WORK,
        **{name: mean(effects[name] for effects in seasons) for name in ("season", "shoulder")},
        **{name: level(plain(name)) for name in (*_AROUND_CHRISTMAS, "noise")},
        **{name: weekend * level(in_proportion(name)) for name in _IN_PROPORTION},
    )


def _shrunk(own: Sequence[float], common: float, counts: float) -> float:
    """A mean in which the common value counts like so many values of the kind's own."""
    return (sum(own) + counts * common) / (len(own) + counts)


_ALL_ALIKE = ("saturday", "sunday", "school_holiday", "off_work", *_IN_PROPORTION, *_AROUND_CHRISTMAS)
_LIKE: dict[tuple[str, WhoComes], KindOfPlace] = {
    ("indoors", "families"): "museum",
    ("indoors", "everybody"): "museum",
    ("outdoors", "families"): "zoo_or_farm",
    ("outdoors", "everybody"): "park_or_trail",
}
"""The kind whose levels are used where a card names none: the one that was counted under such a roof."""


@lru_cache(maxsize=256)
def levels_for(
    kind: KindOfPlace | None, who_comes: WhoComes, indoors: str, fullest_days: FullestDays | None
) -> Levels:
    """The levels of a place as its card describes the visit, see `Visit`."""
    levels = pooled(TABLES, kind or _LIKE.get((indoors, who_comes)), who_comes)
    if fullest_days is None:
        return levels
    if fullest_days == "all_alike":
        return replace(levels, **dict.fromkeys(_ALL_ALIKE, 0.0))
    half = _SATURDAYS_FULLER[fullest_days] / 2
    return replace(levels, saturday=levels.weekend + half, sunday=levels.weekend - half)


FREE_ENTRY = 1.7
"""How many times the visitors a day of free entry brings among paid ones [-]: visits to the national museums
of the United Kingdom that had charged rose by about 70 % in the year after they became free in December 2001
(DCMS figures, from memory). A single free day may draw more."""
SHORT_DAY = 0.25
"""What a school day that begins late or ends early draws, of what a day without school does [-]. No source,
our choice: at most half of the place's opening hours are free then, and few set out for half a day."""
SCHOOL_CLASSES = 1.5
"""How many times the visitors of a term weekday without classes one has when all classes come [-]. No source,
our choice."""
