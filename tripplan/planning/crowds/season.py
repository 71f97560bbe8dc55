"""The time of year: which months are fuller, by latitude or by what the place card says."""

import math
from dataclasses import dataclass
from datetime import date, timedelta
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from tripplan.planning.crowds.levels import Levels
from tripplan.planning.holidays.days_off import DaysOff, Flags, fixed

Floats = NDArray[np.float64]

_MIDSUMMER = 200
"""Day of the year when the northern half is warmest [-]; common practice, no source."""
_YEAR_DAYS = 365.25

_LATITUDES = np.arange(-60, 50, 10)
_JULY_ABOVE_JANUARY = np.array([-11.2, -4.7, -6.6, -7.2, -5.4, -2.4, -0.8, 1.1, 6.2, 12.8, 19.0])
"""Mean temperature of July less that of January, all around the parallel of a latitude [K]. After von Hann,
Lehrbuch der Meteorologie; from memory. Not carried on beyond 40 degrees north, where no table was counted and
the west of the continents is much milder than the parallel."""

INDOORS = 0.05
"""Midsummer against the year's average indoors [ln]: visits a day to DCMS-sponsored museums 2009-2018 lie
between 0.77 and 1.11 of the year's mean outside the summer school holidays, which gives 0.10; at the three
museums counted by day, once school holidays are counted apart, 0 foresees the days a little better."""
TOLD = 0.55
"""The fullest time against the year's average where the card names the busiest months [ln]: half of the
logarithm of the ratio between the fullest and the emptiest month, which is 1.81 to 0.57 in Saguaro, 1.54 to
0.57 in the Everglades (US National Park Service, visits by month, 2014-2019 and 2022-2023)."""

_MILD, _WARM = 36.0, 32.0
"""Nearer to the equator than the first, summer may be too hot to be the fuller time; nearer than the second
nobody can tell from the latitude [degrees]. No source, our choice, after Saguaro at 32 degrees and the
Everglades at 25, which both invert."""


@dataclass(frozen=True, eq=False)
class SeasonDays:
    """The time of year over some days in a row, one array entry a day.

    Attributes:
        effect: on the logarithm of visitors, against the year's average [ln].
        doubt: standard deviation of it where latitude does not tell which months are busy [ln]; else None.
    """

    effect: Floats
    doubt: Floats | None = None


def season(
    first: date, days: int, latitude: float, indoors: str, busiest_months: tuple[int, ...], levels: Levels
) -> SeasonDays:
    """The time of year at a place.

    Args:
        first: the first day.
        days: how many in a row [days].
        latitude: of the place, north positive [degrees].
        indoors: 'indoors', 'outdoors' or 'both'.
        busiest_months: as the card says, 1 for January; empty where it does not say.
        levels: how strong the season is outdoors.
    """
    if busiest_months:
        return SeasonDays(TOLD * _told_wave(first, days, busiest_months))
    wave, shoulder = _waves(first, days)
    warmer = float(np.interp(latitude, _LATITUDES, _JULY_ABOVE_JANUARY))
    outdoors = {"indoors": 0.0, "outdoors": 1.0, "both": 0.5}[indoors]
    unsure = min(1.0, max(0.0, (_MILD - abs(latitude)) / (_MILD - _WARM))) * outdoors
    outside, inside = outdoors * (1 - unsure), 1 - outdoors
    swing = outside * levels.season * warmer + inside * math.copysign(INDOORS, latitude)
    effect = swing * wave - outside * levels.shoulder * warmer**2 * shoulder
    return SeasonDays(effect, TOLD * unsure * np.abs(wave) if unsure else None)


_DECEMBER = 12
_FESTIVE = ((12, 24), (12, 25), (12, 31), (1, 1))


@lru_cache(maxsize=64)
def around_christmas(off: DaysOff) -> tuple[Flags, Flags]:
    """The days from 1 to 23 December, and the eve and first day of Christmas and of the new year.

    Args:
        off: the days; in a year whose Christmas Day is no public holiday there are none of these.
    """
    dates = np.datetime64(off.first, "D") + np.arange(len(off))
    month = dates.astype("datetime64[M]")
    day = (dates - month).astype(int) + 1
    month_of_year = month.astype(int) % 12 + 1
    kept = np.zeros(len(off), dtype=bool)
    for year in off.years.values():
        christmas_day = (month_of_year[year] == _DECEMBER) & (day[year] == 25)
        kept[year] = (off.public_holiday[year] & christmas_day).any()
    festive = np.any([(month_of_year == m) & (day == d) for m, d in _FESTIVE], axis=0)
    advent = (month_of_year == _DECEMBER) & (day < 24)
    return fixed(advent & kept), fixed(festive & kept)


@lru_cache(maxsize=8)
def _waves(first: date, days: int) -> tuple[Floats, Floats]:
    """A wave that is 1 in the northern midsummer and -1 in midwinter, and one that is 1 in both."""
    dates = np.datetime64(first, "D") + np.arange(days)
    of_year = (dates - dates.astype("datetime64[Y]")).astype(int) + 1
    angle = 2 * math.pi * (of_year - _MIDSUMMER) / _YEAR_DAYS
    return fixed(np.cos(angle)), fixed(np.cos(2 * angle))


@lru_cache(maxsize=256)
def _told_wave(first: date, days: int, busiest_months: tuple[int, ...]) -> Floats:
    """A smooth wave about 0, high in the months named; in each year its top is 2 above its bottom."""
    last = first + timedelta(days=days - 1)
    years = [_told_year(year, busiest_months) for year in range(first.year, last.year + 1)]
    begin = (first - date(first.year, 1, 1)).days
    return fixed(np.concatenate(years)[begin : begin + days])


def _told_year(year: int, busiest_months: tuple[int, ...]) -> Floats:
    dates = np.arange(f"{year}-01-01", f"{year + 1}-01-01", dtype="datetime64[D]")
    named = np.isin(dates.astype("datetime64[M]").astype(int) % 12 + 1, busiest_months).astype(float)
    # A bell two months wide, laid around the year's end.
    bell = np.hanning(2 * _MONTH + 1)
    around = np.concatenate([named[-_MONTH:], named, named[:_MONTH]])
    smooth = np.convolve(around, bell / bell.sum(), mode="valid")
    reach = float(np.ptp(smooth))
    if not reach:
        return np.zeros(len(dates))
    wave: Floats = (smooth - smooth.mean()) * 2 / reach
    return wave


_MONTH = 30
