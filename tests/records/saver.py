"""A program that counts up in the records, for tests that run several at once or kill one.

Usage: python -m tests.records.saver FOLDER COUNT
"""

import sys
from datetime import UTC, date, datetime
from multiprocessing.synchronize import Barrier
from pathlib import Path

from tripplan.documents.places.typed_drive import TypedDrive
from tripplan.errors import RecordConflict
from tripplan.records.opening import Which, open_records
from tripplan.records.store import Records

SAVED_AT = datetime(2026, 11, 25, 12, 0, tzinfo=UTC)


def count_up(records: Records) -> int:
    """Save one more than what is on record, again until nobody came in between; the number saved [-]."""
    while True:
        kept = records.get(TypedDrive, "mill")
        number = 1 + (int(kept.value.km) if kept else 0)
        drive = TypedDrive(place="mill", km=number, minutes=50, typed_on=date(2026, 11, 1))
        try:
            records.save(drive, SAVED_AT, kept.revision if kept else 0)
        except RecordConflict:
            continue
        return number


def begin_in_step(folders: list[Path], step: Barrier) -> None:
    """Make records in one folder after another, each at the same moment as the other processes do."""
    for folder in folders:
        step.wait()
        open_records(folder, Which.FAMILY, SAVED_AT)


if __name__ == "__main__":
    opened = open_records(Path(sys.argv[1]), Which.FAMILY, SAVED_AT)
    for _ in range(int(sys.argv[2])):
        sys.stdout.write(f"{count_up(opened)}\n")
        sys.stdout.flush()
