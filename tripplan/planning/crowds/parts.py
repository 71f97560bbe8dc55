"""What makes one day fuller or emptier than an ordinary school-term weekday, part by part."""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date

from tripplan.planning.crowds.levels import OUT_ON_A_WEEKDAY, SEASON_INDOORS, Levels, summerliness
from tripplan.planning.crowds.public_holidays import (
    OBSERVED,
    is_bridge_day,
    is_observed,
    is_weekend,
    long_weekend,
)
from tripplan.planning.crowds.schools import SchoolShares
from tripplan.planning.place import Place


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


def parts_of(
    place: Place,
    day: date,
    public_holidays: Mapping[date, str],
    shares: SchoolShares,
    on_break: float,
    levels: Levels,
) -> tuple[Part, ...]:
    """Everything that tells a day from an ordinary school-term weekday.

    Args:
        place: where.
        day: when.
        public_holidays: names by date.
        shares: how the pupils within reach are spread that day.
        on_break: share of them in a break; a weekend in term is none [-].
        levels: what each part brings.

    Returns:
        The parts, those without effect left out.
    """
    parts = (
        *_kind_of_day(day, public_holidays, shares, on_break, levels),
        _season(place, day, levels),
        *_special_days(place, day),
    )
    return tuple(part for part in parts if part.effect or part.doubt)


def _kind_of_day(
    day: date, public_holidays: Mapping[date, str], shares: SchoolShares, on_break: float, levels: Levels
) -> tuple[Part, ...]:
    name = public_holidays.get(day, "")
    if name and not is_observed(name):
        return (Part(levels.public_holiday, f"public holiday ({name})", "an ordinary weekday"),)
    if is_weekend(day):
        long = bool(long_weekend(day, public_holidays.keys()))
        return (
            Part(levels.weekend, "weekend", "an ordinary weekday"),
            Part(levels.weekend_on_break * on_break, "inside school holidays", "another weekend"),
            Part(levels.long_weekend * long, "part of a long weekend", "another weekend"),
        )
    schools = _schools(shares, levels)
    at_least = _off_work(day, name, public_holidays, levels)
    more = max(0.0, at_least.effect - sum(part.effect for part in schools))
    return (*schools, Part(more, at_least.cause, at_least.compared_with))


def _schools(shares: SchoolShares, levels: Levels) -> tuple[Part, ...]:
    """The effect of pupils who have no school on a weekday: those known to, and those who may.

    Visitors are mixed by share, not their logarithms: half the pupils bring half the crowd. The unknown part
    is a doubt between two such days, one where all of it has school and one where all of it has none.
    """
    more = math.expm1(levels.school_holiday)
    known = math.log1p(shares.out * more)
    between = math.log1p((shares.out + shares.unknown) * more) - known
    return (
        Part(known, _pupils(shares.out), "an ordinary weekday"),
        Part(
            OUT_ON_A_WEEKDAY * between,
            f"no school calendar for {_unknown(shares.unknown)} nearby, who may or may not have school",
            "a school day",
            doubt=math.sqrt(OUT_ON_A_WEEKDAY * (1 - OUT_ON_A_WEEKDAY)) * between,
        ),
    )


def _unknown(share: float) -> str:
    return "the pupils" if share > 0.95 else f"{share:.0%} of the pupils"


def _pupils(out: float) -> str:
    if out > 0.95:
        return "the pupils nearby are out of school"
    if out > 0.5:
        return "most pupils nearby are out of school"
    return f"{out:.0%} of the pupils nearby are out of school"


def _off_work(day: date, name: str, public_holidays: Mapping[date, str], levels: Levels) -> Part:
    """How full a weekday is at least where many have no work: like a weekend. No source, our choice."""
    if name:
        celebrated = name.removesuffix(OBSERVED)
        return Part(levels.weekend, f"many are off work for {celebrated}", "such a weekday")
    if is_bridge_day(day, public_holidays.keys()):
        return Part(levels.weekend, "alone between days off", "such a weekday")
    return Part(0.0, "", "")


def _season(place: Place, day: date, levels: Levels) -> Part:
    indoors = place.visit.indoors
    strength = {
        "indoors": SEASON_INDOORS,
        "outdoors": levels.season,
        "both": (SEASON_INDOORS + levels.season) / 2,
    }[indoors]
    summer = summerliness(day.timetuple().tm_yday, place.where.point.latitude)
    return Part(strength * summer, "time of year", "the year's average")


def _special_days(place: Place, day: date) -> tuple[Part, ...]:
    return tuple(
        Part(math.log(special.crowd_factor), special.name, "a usual day")
        for special in place.special_days
        if special.day == day
    )
