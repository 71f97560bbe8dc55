"""Makes the table of usual weather: `python -m tests.published.make_climate_table`.

Reads the open tables of `../shared/data/climate`; `SOURCES.md` beside the table names them. Prints how good a
place without a station can be.
"""

from collections.abc import Iterable
from pathlib import Path

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from tests.conftest import ROOT
from tripplan.planning.climate.stations import Stations, stations

FOLDER = ROOT.parent / "shared/data/climate"
TABLE = ROOT / "tripplan/planning/climate/stations.npz"
MONTHS = range(1, 13)
PARTS = {"high": "tmax_c", "low": "tmin_c", "wet": "wet_days", "snow": "snow_days"}
OPEN_ABROAD = ("knmi_1991_2020_computed", "meteireann_1991_2020_computed")


def united_states(folder: Path) -> pd.DataFrame:
    """All stations of the United States, one line each, with columns such as `high_01`."""
    wide = pd.read_csv(folder / "us_all_stations_wide.csv.gz")
    names = {
        f"{ours}_{month:02}": f"{theirs}_{month:02}" for ours, theirs in PARTS.items() for month in MONTHS
    }
    return wide[["name", "lat", "lon", "elev_m", *names.values()]].rename(
        columns={theirs: ours for ours, theirs in names.items()}
    )


def abroad(folder: Path) -> pd.DataFrame:
    """The stations of other countries whose license is settled, in the same form."""
    long = pd.read_csv(folder / "normals.csv")
    long = long[long["source"].isin(OPEN_ABROAD)]
    keys = ["name", "lat", "lon", "elev_m"]
    wide = long.pivot(index=["station_id", *keys], columns="month", values=list(PARTS.values()))
    ours = {theirs: name for name, theirs in PARTS.items()}
    wide.columns = pd.Index([f"{ours[column[0]]}_{int(column[1]):02}" for column in wide.columns])
    return wide.reset_index().drop(columns="station_id")


def write(folder: Path = FOLDER, table: Path = TABLE) -> None:
    """Put all stations into the table."""
    own, others = united_states(folder), abroad(folder)
    every = pd.concat([own, others], ignore_index=True)

    def tenths(part: str) -> NDArray[np.int16]:
        values = every[[f"{part}_{month:02}" for month in MONTHS]].to_numpy(dtype=float)
        rounded: NDArray[np.int16] = np.rint(np.where(np.isnan(values), -0.1, values) * 10).astype(np.int16)
        return rounded

    np.savez_compressed(
        table,
        name=every["name"].str.strip().to_numpy(dtype="U"),
        latitude=every["lat"].to_numpy(dtype=np.float32),
        longitude=every["lon"].to_numpy(dtype=np.float32),
        height=every["elev_m"].to_numpy(dtype=np.int16),
        free=np.arange(len(every)) < len(own),
        high=tenths("high"),
        low=tenths("low"),
        wet=tenths("wet"),
        snow=tenths("snow"),
    )


def left_out_one_by_one(every: Stations, chosen: Iterable[int]) -> dict[str, NDArray[np.float64]]:
    """How far each of some stations is from what the others say of it, by part; twelve columns each."""
    off: dict[str, list[NDArray[np.float64]]] = {part: [] for part in PARTS}
    for n in chosen:
        found = every.without(np.arange(len(every.name)) == n).months_at(
            every.point(n), float(every.height[n])
        )
        if found is None:
            continue
        for part in PARTS:
            said, counted = getattr(found, part), getattr(every, part)[n]
            if said is not None and (part != "snow" or every.counts_snow[n]):
                off[part].append(said - counted)
    return {part: np.array(rows) for part, rows in off.items()}


def main() -> None:
    """Write the table and say what it is worth."""
    write()
    stations.cache_clear()
    print(f"{len(stations().name)} stations, {TABLE.stat().st_size / 1024:.0f} KB")  # noqa: T201
    for part, off in left_out_one_by_one(stations(), range(len(stations().name))).items():
        low, high = np.quantile(off, [0.05, 0.95])
        print(  # noqa: T201
            f"{part}: a place without a station is off by {np.abs(off).mean():.2f} on average; nine in ten "
            f"lie between {low:+.2f} and {high:+.2f}"
        )


if __name__ == "__main__":
    main()
