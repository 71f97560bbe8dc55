"""Writes what the program says of its own estimates: `python -m tests.published.write_figures`.

Fits the curves of the drive estimate to the open tables of `../shared/data`, puts them and their errors
where the program reads them, and rewrites `travel_fit.md` and `crowd_fit.md` beside this file and
what the guide quotes of them. Tests fail where any of it is stale.
"""

import csv
import io
import os
import subprocess
import sys
from collections.abc import Iterable, Sequence
from pathlib import Path

from tests.published import crowd_fit, drive_report
from tests.published.drive_fit import FITS, fitted
from tests.published.drive_report import Bands, quoted_errors
from tests.published.metropolitan_cells import cells_text
from tripplan.planning.travel.estimate_curves import KNOTS_KM, Band, bands_in

ROOT = Path(__file__).resolve().parents[2]
TRAVEL = ROOT / "tripplan" / "planning" / "travel"
CROWDS = ROOT / "tripplan" / "planning" / "crowds"
HERE = Path(__file__).resolve().parent


def csv_text(head: Sequence[str], rows: Iterable[Sequence[object]]) -> str:
    """A table as it stands in a file."""
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\n")
    writer.writerow(head)
    writer.writerows(rows)
    return text.getvalue()


def curves_text(bands: Iterable[tuple[str, str, Band]]) -> str:
    """`drive_curves.csv`: one line a curve, four digits a value."""
    return csv_text(
        ["roads_of", "figure", "end", *(f"{km:g} km" for km in KNOTS_KM)],
        (
            [roads, figure, end, *(f"{value:.4g}" for value in getattr(band, end).values)]
            for roads, figure, band in bands
            for end in ("low", "likely", "high")
        ),
    )


def curves(folder: Path) -> str:
    """All curves, fitted anew, as they stand in their file."""
    found = []
    for roads in FITS:
        detour, pace = fitted(roads, folder)
        found += [(roads, "detour", detour), (roads, "pace", pace)]
    return curves_text(found)


def errors_text(bands: Bands, folder: Path) -> str:
    """`drive_errors.csv`."""
    return csv_text(["roads_of", "below_km", "km", "minutes"], quoted_errors(bands, folder))


def main() -> None:
    """Write everything anew, from the curves on to the figures that rest on them."""
    folder = Path(os.environ.get("TRIPPLAN_SHARED_DATA", ROOT.parent / "shared" / "data"))
    fresh = curves(folder)
    bands = bands_in(fresh)
    (TRAVEL / "drive_curves.csv").write_text(fresh, encoding="utf-8")
    (TRAVEL / "metropolitan_cells.csv").write_text(cells_text(), encoding="utf-8")
    (TRAVEL / "drive_errors.csv").write_text(errors_text(bands, folder), encoding="utf-8")
    (HERE / "travel_fit.md").write_text(drive_report.report(bands, folder), encoding="utf-8")
    (CROWDS / "visitor_tables.csv").write_text(crowd_fit.tables_text(folder), encoding="utf-8")
    (HERE / "crowd_fit.md").write_text(crowd_fit.report(folder), encoding="utf-8")
    # The guide quotes what stands in the files by now, so it is written by a fresh interpreter.
    subprocess.run([sys.executable, "-m", "tests.published.guide_figures"], check=True, cwd=ROOT)


if __name__ == "__main__":
    main()
