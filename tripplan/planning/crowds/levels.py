"""How many visitors a kind of day brings: effects on the natural logarithm of daily visitors.

Daily counts of families at outing places are hardly published. The tables below are what there is; they
differ by what they count, so each carries a weight and none rules alone. Plain ratios of mean visitors at
the zoo, against an ordinary school-term weekday: weekend 4.1, school-holiday weekday 4.4, public holiday 7.9.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray


@dataclass(frozen=True)
class Levels:
    """What each part of a day adds to the logarithm of visitors; 0 is an ordinary school-term weekday.

    Attributes:
        weekend: a Saturday or Sunday in term [ln].
        school_holiday: a weekday on which all pupils nearby are out of school [ln].
        weekend_on_break: on top of `weekend`, inside school holidays [ln].
        public_holiday: a public holiday, whatever the weekday [ln].
        long_weekend: on top of `weekend`, beside a public holiday or bridge day [ln].
        season: outdoors, midsummer against the year's average; midwinter is as much below it [ln].
        noise: standard deviation of a single day about all this (weather, chance) [ln].
    """

    weekend: float
    school_holiday: float
    weekend_on_break: float
    public_holiday: float
    long_weekend: float
    season: float
    noise: float


@dataclass(frozen=True)
class Table:
    """What one published table of visitors says; None where it cannot tell.

    Attributes:
        name: what was counted, where and when.
        source: author and title.
        weight: how much it counts beside the others [-]. No source, our choice: 2 for a family attraction
            counted day by day, 1 for anything less like one.
        weekend, public_holiday, long_weekend, season, noise, school_holiday, weekend_on_break: as in
            `Levels`, fitted by least squares on the logarithm of the daily counts, all effects at once.
    """

    name: str
    source: str
    weight: float
    weekend: float
    public_holiday: float
    long_weekend: float
    season: float
    noise: float
    school_holiday: float | None = None
    weekend_on_break: float | None = None


CITY_ZOO = Table(
    name="a city zoo, 440 days of 1990 and 1991",
    source="data set zoo.df of the R package s20x (Auckland; its days are dated by their public holidays)",
    weight=2,
    weekend=1.28,
    school_holiday=1.35,
    weekend_on_break=0.27,
    public_holiday=2.01,
    long_weekend=0.29,
    season=0.28,
    noise=0.55,
)
CITY_BICYCLES = Table(
    name="leisure riders of a city's hired bicycles, 2011 and 2012",
    source="Fanaee-T and Gama, Bike Sharing (Washington DC), UCI Machine Learning Repository, 2013",
    weight=1,
    weekend=0.83,
    public_holiday=0.67,
    long_weekend=0.12,
    season=0.91,
    noise=0.62,
)
RIVERSIDE_PARK = Table(
    name="walkers in a riverside park, 2015 and 2016",
    source="City of Melbourne, pedestrian counting system, Birrarung Marr, in the R package tsibble",
    weight=1,
    weekend=0.42,
    public_holiday=0.53,
    long_weekend=0.17,
    season=0.19,
    noise=0.50,
)
TABLES = (CITY_ZOO, CITY_BICYCLES, RIVERSIDE_PARK)

OWN_OPINION = 1.0
"""How much our opinion without any table counts, as a weight beside theirs [-]: that every day off brings as
many as a weekend, and that nothing comes on top. No source, our choice; it keeps one table from ruling."""


def pooled(tables: Sequence[Table]) -> Levels:
    """What tables say together: a strength of weekends, and all other days off in proportion to it.

    Places differ much in how far they live by days off, less in how the days off compare with each other.
    So the weekend is the weighted mean over the tables; the others are means of their ratio to the table's
    own weekend, drawn towards `OWN_OPINION`.

    Args:
        tables: at least one.
    """

    def in_proportion(effects: Sequence[float | None], opinion: float) -> float:
        told = [
            (table.weight, effect / table.weekend)
            for table, effect in zip(tables, effects, strict=True)
            if effect is not None
        ]
        told.append((OWN_OPINION, opinion))
        return weekend * sum(w * ratio for w, ratio in told) / sum(w for w, _ in told)

    weights = sum(table.weight for table in tables)
    weekend = sum(table.weight * table.weekend for table in tables) / weights
    return Levels(
        weekend=weekend,
        school_holiday=in_proportion([table.school_holiday for table in tables], opinion=1),
        weekend_on_break=in_proportion([table.weekend_on_break for table in tables], opinion=0),
        public_holiday=in_proportion([table.public_holiday for table in tables], opinion=1),
        long_weekend=in_proportion([table.long_weekend for table in tables], opinion=0),
        season=sum(table.weight * table.season for table in tables) / weights,
        noise=sum(table.weight * table.noise for table in tables) / weights,
    )


POOLED = pooled(TABLES)
"""The levels used unless somebody asks for others."""

SEASON_INDOORS = 0.10
"""As `Levels.season`, indoors [ln]: visits a day to DCMS-sponsored museums 2009-2018 lie between
0.77 and 1.11 of the year's mean outside the summer school holidays."""

OUT_ON_A_WEEKDAY = 0.3
"""Share of weekdays without school, for pupils whose calendar is unknown [-]: 180 to 190 days of school
(common practice in the US and in England, no source) out of 261 weekdays."""

_MIDSUMMER = 200
_YEAR_DAYS = 365.25


def summerliness(day_of_year: ArrayLike, latitude: float) -> NDArray[np.float64]:
    """How far the season is from the year's average: 1 in midsummer, -1 in midwinter [-].

    It fades out towards the tropics, from 35 degrees of latitude to 15. Deserts and other places that people
    visit in winter are not known here; no source, our choice.

    Args:
        day_of_year: 1 for 1 January; one or many [-].
        latitude: of the place, north positive [degrees].
    """
    strength = min(1.0, max(0.0, (abs(latitude) - 15.0) / 20.0))
    wave = np.cos(2 * math.pi * (np.asarray(day_of_year) - _MIDSUMMER) / _YEAR_DAYS)
    return np.asarray(math.copysign(strength, latitude) * wave)
