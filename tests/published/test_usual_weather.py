"""The usual weather against another table of the same weather service, which the program does not use.

Source: NOAA National Climatic Data Center, 1981-2010 highs and lows, and Comparative Climatic Data through
2018: mean days with precipitation of at least 0.01 in and mean snowfall by month, 256 first-order stations.
Its years are not ours (2006-2020): at the same stations ours are 0.5 °C warmer.
"""

from collections.abc import Callable
from pathlib import Path

import numpy as np
import pandas as pd
import pytest
from numpy.typing import NDArray

from tests.published.make_climate_table import left_out_one_by_one
from tripplan.documents.where import Point
from tripplan.planning.climate.stations import HIGH_OFF, LOW_OFF, WET_DAYS_OFF, stations

COLUMNS = {"high": "tmax_c", "low": "tmin_c", "wet": "wet_days"}
AT_MOST = {"high": 1.2, "low": 1.6, "wet": 1.4}
"""Mean absolute error that a month may have [°C, days]."""
WET_WITHOUT_OWN = 1.6
"""The same of wet days without the own station [days]: even at the same stations 2006-2020 had 1.0 more in
October. No weighting of 1 to 40 stations around brings it below 1.47."""
SAME_STATION_KM = 3.0
NO_SNOW_INCHES, SNOWY_INCHES = 0.0, 2.0


@pytest.fixture(scope="module")
def checked(shared_data: Path) -> pd.DataFrame:
    """The other table, a station and month a row."""
    return pd.read_csv(shared_data / "climate/check_us_1981_2010.csv")


def said_of(checked: pd.DataFrame, *, keep_own: bool) -> dict[str, NDArray[np.float64]]:
    """What the program says of each station of the other table, by part; twelve columns each."""
    every = stations()
    found: dict[str, list[NDArray[np.float64]]] = {part: [] for part in ("high", "low", "wet", "snow")}
    for row in checked.drop_duplicates("station_id").itertuples():
        point = Point(row.lat, row.lon)  # type: ignore[arg-type]
        others = every if keep_own else every.without(every.km_from(point) < SAME_STATION_KM)
        months = others.months_at(point, row.elev_m)  # type: ignore[arg-type]
        for part, rows in found.items():
            said = None if months is None else getattr(months, part)
            rows.append(np.full(12, np.nan) if said is None else said)
    return {part: np.array(rows) for part, rows in found.items()}


def by_month(checked: pd.DataFrame, column: str) -> NDArray[np.float64]:
    """A column of the other table with a row a station, in its order, and twelve columns."""
    values: NDArray[np.float64] = checked[column].to_numpy(dtype=float).reshape(-1, 12)
    return values


@pytest.mark.parametrize("keep_own", [True, False], ids=["with its own station", "without its own station"])
def test_highs_lows_and_wet_days_are_near_the_other_table(
    checked: pd.DataFrame, tell: Callable[[str], None], *, keep_own: bool
) -> None:
    """By month, highs within 1.2 °C, lows within 1.6 °C and wet days within 1.4 on average."""
    assert (by_month(checked, "month") == np.arange(1, 13)).all()
    said = said_of(checked, keep_own=keep_own)
    known = ~np.isnan(said["high"][:, 0])
    assert known.sum() > 240
    for part, column in COLUMNS.items():
        off = np.abs(said[part] - by_month(checked, column))[known].mean(axis=0)
        tell(f"{part}, {'with' if keep_own else 'without'} its own station: {np.round(off, 2).tolist()}")
        assert off.max() <= (WET_WITHOUT_OWN if part == "wet" and not keep_own else AT_MOST[part])


def test_wet_days_of_a_place_without_a_station_are_near_but_for_the_years(
    checked: pd.DataFrame, tell: Callable[[str], None]
) -> None:
    """Without what the years differ by at the same stations, every month is within 1.4 days on average."""
    real = by_month(checked, "wet_days")
    own, others = (said_of(checked, keep_own=keep)["wet"] for keep in (True, False))
    known = ~np.isnan(own[:, 0]) & ~np.isnan(others[:, 0])
    years = (own - real)[known].mean(axis=0)
    off = np.abs(others - real - years)[known].mean(axis=0)
    tell(f"wet: the years differ by {np.round(years, 2).tolist()}; without that {np.round(off, 2).tolist()}")
    assert off.max() <= AT_MOST["wet"]


def test_snow_falls_where_the_other_table_has_snow(
    checked: pd.DataFrame, tell: Callable[[str], None]
) -> None:
    """Days against inches: none where it never snows, and in snowy months more where more falls.

    It counts inches, we count days; so ranks are compared, not figures.
    """
    days, inches = said_of(checked, keep_own=True)["snow"], by_month(checked, "snowfall_in")
    known = ~np.isnan(days)
    never = known & (inches <= NO_SNOW_INCHES)
    snowy = known & (inches >= SNOWY_INCHES)
    ranks = pd.Series(days[snowy]).corr(pd.Series(inches[snowy]), method="spearman")
    tell(
        f"snow: {days[never].mean():.3f} days a month where no snow is measured; ranks of days and inches in "
        f"{snowy.sum()} snowy months correlate by {ranks:.2f}"
    )
    assert days[never].mean() < 0.1
    assert (days[snowy] > 0).mean() > 0.98
    assert ranks > 0.7


def test_a_place_without_a_station_is_off_by_what_is_said(tell: Callable[[str], None]) -> None:
    """Every tenth station left out in turn: nine of ten months are within the range that is told."""
    every = stations()
    off = left_out_one_by_one(every, range(0, every.name.size, 10))
    for part, most in (("high", HIGH_OFF), ("low", LOW_OFF), ("wet", WET_DAYS_OFF)):
        inside = float((np.abs(off[part]) <= most).mean())
        tell(f"{part}: {np.abs(off[part]).mean():.2f} off on average, {inside:.0%} within {most}")
        assert inside == pytest.approx(0.9, abs=0.03)
