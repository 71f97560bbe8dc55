"""How many visitors a kind of day brings: effects on the natural logarithm of daily visitors.

Daily counts of families at outing places are hardly published; the tables below are what there is. Each kind
of place has the levels that its own tables give, drawn towards what all kinds have in common, and the more so
the fewer tables it has. Plain ratios of mean visitors at the zoo, against an ordinary school-term weekday:
weekend 4.1, school-holiday weekday 4.4, public holiday 7.9.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from operator import attrgetter
from statistics import mean

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
    noise: float

    @property
    def weekend(self) -> float:
        """A weekend day in term, Saturdays and Sundays alike [ln]."""
        return (self.saturday + self.sunday) / 2


@dataclass(frozen=True)
class VisitorTable:
    """What one published table of visitors says; None where it cannot tell.

    Attributes:
        name: of the message that says what was counted, where and when.
        source: author and title.
        kind: what kind of place was counted, as on a place card.
        who_comes: who fills it, likewise.
        friday, saturday, sunday, public_holiday, long_weekend, off_work, noise, season, shoulder,
            school_holiday, weekend_on_break: as in `Levels`, fitted by least squares on the logarithm of the
            daily counts, all effects at once.
    """

    name: str
    source: str
    kind: KindOfPlace
    who_comes: WhoComes
    friday: float
    saturday: float
    sunday: float
    public_holiday: float
    long_weekend: float
    off_work: float
    noise: float
    season: float | None = None
    shoulder: float | None = None
    school_holiday: float | None = None
    weekend_on_break: float | None = None

    @property
    def weekend(self) -> float:
        """A weekend day in term, Saturdays and Sundays alike [ln]."""
        return (self.saturday + self.sunday) / 2


CITY_ZOO = VisitorTable(
    kind="zoo_or_farm",
    name="crowds-table-zoo",
    source="data set zoo.df of the R package s20x (Auckland; its days are dated by their public holidays)",
    who_comes="families",
    friday=0.05,
    saturday=1.08,
    sunday=1.50,
    school_holiday=1.41,
    weekend_on_break=0.32,
    public_holiday=2.03,
    long_weekend=0.27,
    off_work=-0.23,
    season=0.042,
    shoulder=0.0015,
    noise=0.53,
)
CITY_BICYCLES = VisitorTable(
    kind="park_or_trail",
    name="crowds-table-bicycles",
    source="Fanaee-T and Gama, Bike Sharing (Washington DC), UCI Machine Learning Repository, 2013",
    who_comes="everybody",
    friday=0.30,
    saturday=1.01,
    sunday=0.94,
    public_holiday=0.84,
    long_weekend=0.13,
    off_work=0.51,
    season=0.046,
    shoulder=0.0011,
    noise=0.57,
    school_holiday=0.31,
    weekend_on_break=0.03,
)
RIVERSIDE_PARK = VisitorTable(
    kind="park_or_trail",
    name="crowds-table-walkers",
    source="City of Melbourne, pedestrian counting system, Birrarung Marr, in the R package tsibble",
    who_comes="everybody",
    friday=0.35,
    saturday=0.67,
    sunday=0.46,
    school_holiday=0.17,
    weekend_on_break=-0.17,
    public_holiday=0.66,
    long_weekend=0.23,
    off_work=0.00,
    season=0.027,
    shoulder=-0.0002,
    noise=0.48,
)
_BRISTOL = (
    "Bristol City Council, museum visitors by day, April 2015 to February 2019, Open Government Licence 3.0"
)
CITY_MUSEUM = VisitorTable(
    kind="museum",
    name="crowds-table-museum",
    source=_BRISTOL,
    who_comes="families",
    friday=0.03,
    saturday=0.85,
    sunday=0.62,
    school_holiday=0.69,
    weekend_on_break=0.10,
    public_holiday=0.69,
    long_weekend=-0.13,
    off_work=-0.39,
    noise=0.38,
)
PARK_MUSEUM = VisitorTable(
    kind="museum",
    name="crowds-table-park-museum",
    source=_BRISTOL,
    who_comes="families",
    friday=-0.14,
    saturday=0.71,
    sunday=0.84,
    school_holiday=1.10,
    weekend_on_break=0.26,
    public_holiday=1.26,
    long_weekend=-0.06,
    off_work=0.33,
    noise=0.62,
)
TOWN_HOUSE = VisitorTable(
    kind="museum",
    name="crowds-table-town-house",
    source=_BRISTOL,
    who_comes="families",
    friday=-0.14,
    saturday=0.54,
    sunday=0.32,
    school_holiday=0.59,
    weekend_on_break=0.16,
    public_holiday=0.66,
    long_weekend=0.09,
    off_work=0.60,
    noise=0.41,
)
TABLES = (CITY_ZOO, CITY_BICYCLES, RIVERSIDE_PARK, CITY_MUSEUM, PARK_MUSEUM, TOWN_HOUSE)

MUSEUMS_SCHOOL_HOLIDAY: dict[WhoComes, float] = {"families": 1.16, "everybody": 0.35}
"""A school-holiday weekday in proportion to a weekend at museums [-]: visits a day in August are 1.89 and
1.98 times those in September at two that children like (Science Museum, National Railway Museum), 1.26 and
1.11 times at two galleries (Tate Modern, Soane). DCMS-sponsored museums, monthly visits 2009 to 2018. They
count like one more kind of place."""

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
_IN_PROPORTION = ("friday", "weekend_on_break", "public_holiday", "long_weekend", "off_work")


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
        return lambda table: getattr(table, name) / table.weekend

    def on_break(table: VisitorTable) -> float | None:
        told = table.school_holiday is not None and table.who_comes == who_comes
        return in_proportion("school_holiday")(table) if told else None

    weekend = level(attrgetter("weekend"))
    apart = _shrunk(
        [table.saturday - table.sunday for table in tables if table.kind == kind], 0, ALIKE_COUNTS
    )
    # Of the time of year a kind of its own tells less than all outdoors together.
    seasons = [table for table in tables if table.season is not None]
    return Levels(
        saturday=weekend + apart / 2,
        sunday=weekend - apart / 2,
        school_holiday=weekend * level(on_break, MUSEUMS_SCHOOL_HOLIDAY[who_comes]),
        season=mean(map(attrgetter("season"), seasons)),
        shoulder=mean(map(attrgetter("shoulder"), seasons)),
        noise=level(attrgetter("noise")),
        **{name: weekend * level(in_proportion(name)) for name in _IN_PROPORTION},
    )


def _shrunk(own: Sequence[float], common: float, counts: float) -> float:
    """A mean in which the common value counts like so many values of the kind's own."""
    return (sum(own) + counts * common) / (len(own) + counts)


_ALL_ALIKE = ("saturday", "sunday", "school_holiday", *_IN_PROPORTION)
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
