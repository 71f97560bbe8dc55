"""Records in a folder of their own for each test."""

from collections.abc import Iterable
from datetime import UTC, datetime
from pathlib import Path

import pytest

from tripplan.documents.model import Written
from tripplan.records.opening import Which, open_records
from tripplan.records.store import Records

NOON = datetime(2026, 11, 25, 12, 0, tzinfo=UTC)


@pytest.fixture
def noon() -> datetime:
    """The time that tests say it is."""
    return NOON


@pytest.fixture
def records(tmp_path: Path) -> Records:
    """Fresh records of the family's own."""
    return open_records(tmp_path / "data", Which.FAMILY, NOON)


def fill(records: Records, values: Iterable[Written]) -> None:
    """Make these the only documents on record."""
    with records.change(NOON) as change:
        change.replace_all(values)
