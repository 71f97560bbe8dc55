"""How many visitors a kind of day brings: effects on the natural logarithm of daily visitors.

Daily counts of families at outing places are hardly published. The tables below are what there is; a table of
the same kind of place counts twice beside the others, and none rules alone. Plain ratios of mean visitors at
the zoo, against an ordinary school-term weekday: weekend 4.1, school-holiday weekday 4.4, public holiday 7.9.
"""

from collections.abc import Sequence
from dataclasses import dataclass, fields

from tripplan.documents.places.place import WhoComes


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
        who_comes: who fills the place, as on a place card.
        friday, saturday, sunday, public_holiday, long_weekend, off_work, noise, season, shoulder,
            school_holiday, weekend_on_break: as in `Levels`, fitted by least squares on the logarithm of the
            daily counts, all effects at once.
    """

    name: str
    source: str
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
TABLES = (CITY_ZOO, CITY_BICYCLES, RIVERSIDE_PARK)

MUSEUMS_SCHOOL_HOLIDAY: dict[WhoComes, float] = {"families": 1.08, "everybody": 0.35}
"""A school-holiday weekday in proportion to a weekend at museums [-]: visits a day in August are 1.89 and
1.98 times those in September at two that children like (Science Museum, National Railway Museum), 1.26 and
1.11 times at two galleries (Tate Modern, Soane). DCMS-sponsored museums, monthly visits 2009 to 2018."""

OPINION = {
    "friday": 0.0,
    "weekend_on_break": 0.0,
    "public_holiday": 1.0,
    "long_weekend": 0.0,
    "off_work": 1.0,
}
"""Our opinion without any table, in proportion to a weekend [-]: that every day off brings as many, and that
nothing comes on top. It counts like a table of another kind of place, which keeps one table from ruling. No
source."""
SAME_KIND = 2.0
"""How much a table of the same kind of place counts beside others [-]. No source, our choice."""


def pooled(tables: Sequence[VisitorTable], who_comes: WhoComes) -> Levels:
    """What tables say together: a strength of weekends, and all other days off in proportion to it.

    Places differ much in how far they live by days off, less in how the days off compare with each other.
    So the weekend is the weighted mean over the tables, Saturdays and Sundays alike, because the tables
    disagree which of the two is the fuller one; the others are means of their ratio to the table's own
    weekend, drawn towards `OPINION`. School holidays alone do go by who comes: there only tables and
    museums of the same kind count.

    Args:
        tables: at least one of them with a season.
        who_comes: who fills the place that the levels are for.
    """

    def mean(told: Sequence[tuple[float, float]]) -> float:
        return sum(weight * value for weight, value in told) / sum(weight for weight, _ in told)

    def told(name: str, *, in_proportion: bool) -> list[tuple[float, float]]:
        return [
            (
                SAME_KIND if table.who_comes == who_comes else 1.0,
                effect / table.weekend if in_proportion else effect,
            )
            for table in tables
            if (effect := getattr(table, name)) is not None
        ]

    weekend = mean(told("weekend", in_proportion=False))
    levels: dict[str, float] = {}
    for field in fields(Levels):
        if field.name in ("saturday", "sunday"):
            levels[field.name] = weekend
        elif field.name == "school_holiday":
            ratios = [
                (1.0, table.school_holiday / table.weekend)
                for table in tables
                if table.who_comes == who_comes and table.school_holiday is not None
            ]
            levels["school_holiday"] = weekend * mean([*ratios, (1.0, MUSEUMS_SCHOOL_HOLIDAY[who_comes])])
        elif field.name in OPINION:
            ratios = [*told(field.name, in_proportion=True), (1.0, OPINION[field.name])]
            levels[field.name] = weekend * mean(ratios)
        else:
            levels[field.name] = mean(told(field.name, in_proportion=False))
    return Levels(**levels)


POOLED: dict[WhoComes, Levels] = {
    "families": pooled(TABLES, "families"),
    "everybody": pooled(TABLES, "everybody"),
}
"""The levels used unless somebody asks for others, by who comes."""

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
