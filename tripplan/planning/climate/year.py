"""A place's year, month by month."""

from dataclasses import dataclass

import numpy as np

from tripplan.planning.climate.climate import Climate, half_days
from tripplan.planning.climate.days_of_year import MONTH_DAYS, YEAR_DAYS, Floats


@dataclass(frozen=True)
class UsualMonth:
    """What one month is usually like.

    Attributes:
        low, high: mean daily extremes [°C].
        wet: days with rain or snow [days].
        snow: days with snowfall [days]; None where nobody counted.
        daylight: mean time from sunrise to sunset [h].
    """

    low: float
    high: float
    wet: float
    snow: float | None
    daylight: float


def usual_year(climate: Climate) -> tuple[UsualMonth, ...]:
    """January to December as they usually are; forecasts of single days are left out."""
    starts = np.cumsum((0, *MONTH_DAYS[:-1]))

    def sums(days: Floats) -> Floats:
        total: Floats = np.add.reduceat(days[:YEAR_DAYS], starts)
        return total

    low, high, light = (
        sums(days) / np.array(MONTH_DAYS)
        for days in (climate.low, climate.high, 2 * half_days(climate.latitude))
    )
    wet, snow = sums(climate.wet), None if climate.snow is None else sums(climate.snow)
    return tuple(
        UsualMonth(
            low=float(low[n]),
            high=float(high[n]),
            wet=float(wet[n]),
            snow=None if snow is None else float(snow[n]),
            daylight=float(light[n]),
        )
        for n in range(len(MONTH_DAYS))
    )
