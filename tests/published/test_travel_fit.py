"""The drive estimate against open tables of drives, on pairs that it was not fitted to."""

import csv
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.published.drive_fit import FITS, fitted
from tests.published.drive_report import FIGURES, report
from tests.published.drive_tables import (
    Pairs,
)
from tests.published.write_figures import HERE, TRAVEL, errors_text
from tripplan.planning.travel.estimate_tables import BANDS, TABLES

Reader = Callable[[Path], Pairs]


@pytest.mark.parametrize("roads", FITS)
def test_committed_curves_are_what_the_open_tables_give(shared_data: Path, roads: str) -> None:
    """Fitting anew gives the committed curves to 1 % at every knot."""
    for figure, band in zip(FIGURES.values(), fitted(roads, shared_data), strict=True):
        for end in ("low", "likely", "high"):
            committed = getattr(BANDS[roads, figure], end)
            assert committed.values == pytest.approx(getattr(band, end).values, rel=0.01)


def test_errors_told_to_the_parent_are_those_of_what_was_held_out(shared_data: Path) -> None:
    """The file of quoted errors is what the committed curves give on the held-out pairs."""
    assert (TRAVEL / "drive_errors.csv").read_text(encoding="utf-8") == errors_text(BANDS, shared_data)


def test_every_quoted_error_stands_in_the_program() -> None:
    """Each line of the file reaches the sentence of its roads and class."""
    with (TRAVEL / "drive_errors.csv").open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    assert rows
    for row in rows:
        (table,) = (table for table in TABLES if table.roads_of == row["roads_of"])
        error = table.error_at(float(row["below_km"]) - 1)
        assert error is not None
        assert [row["km"], row["minutes"]] == [
            "" if share is None else f"{share:.3f}" for share in (error.km, error.minutes)
        ]


def test_tables_of_the_fit_are_up_to_date(shared_data: Path) -> None:
    """The committed tables of errors are what the committed curves give."""
    assert (HERE / "travel_fit.md").read_text(encoding="utf-8") == report(BANDS, shared_data)
