"""Two thousand outings: saving, loading, adding up and learning, measured beside reading the plain JSON."""

import json
import time
from collections.abc import Callable, Sequence
from datetime import UTC, date, datetime, timedelta
from pathlib import Path

from tests.builders import make_household, make_place
from tests.planning.logbook.entries import make_entry
from tests.planning.logbook.test_against_plan import said
from tripplan.planning.logbook.entry import LogbookEntry
from tripplan.planning.logbook.settings import LogbookSettings
from tripplan.planning.logbook.year import year_account
from tripplan.planning.model import Written
from tripplan.records.export import MOST_BYTES, export_all, import_all
from tripplan.records.opening import Which, open_records
from tripplan.records.store import Records
from tripplan.services import family_in, family_on_record

NOON = datetime(2026, 11, 25, 12, tzinfo=UTC)
COUNT = 2000


def seconds(work: Callable[[], object], times: int = 1) -> float:
    """The quickest of some runs [s]."""
    best = float("inf")
    for _ in range(times):
        start = time.perf_counter()
        work()
        best = min(best, time.perf_counter() - start)
    return best


def replace_all(records: Records, documents: Sequence[Written]) -> None:
    """Make these the only documents on record."""
    with records.change(NOON) as change:
        change.replace_all(documents)


def test_two_thousand_outings(tmp_path: Path) -> None:
    """They are saved, loaded, exported and taken back whole; a page asks for the newest alone."""
    days = [date(2021, 6, 1) + timedelta(days=n) for n in range(COUNT)]
    plan = said()
    entries = [make_entry(id=f"{day}-trip", day=day, as_planned=plan) for day in days]
    records = open_records(tmp_path / "one", Which.FAMILY, NOON)
    there = open_records(tmp_path / "two", Which.FAMILY, NOON)
    saving = seconds(lambda: replace_all(records, [make_household(), make_place(), *entries]))
    loading = seconds(lambda: records.all(LogbookEntry))
    bodies = [raw.body for raw in records.raw_documents()]
    plain = seconds(lambda: [json.loads(body) for body in bodies], 2)
    usual = seconds(lambda: family_on_record(records), 3)
    learned = seconds(lambda: family_in(records), 3)
    kept = [one.value for one in records.all(LogbookEntry).values()]
    adding = seconds(lambda: year_account(kept, [], [], LogbookSettings(), currency="USD", today=days[-1]))
    exported = export_all(records)
    importing = seconds(lambda: import_all(there, exported, "all.json", NOON))
    assert kept == entries
    assert export_all(there) == exported
    assert len(exported) < MOST_BYTES
    print(  # noqa: T201 - the figures are the point of the test
        f"\n{COUNT} outings: saved in {saving:.2f} s, loaded in {loading:.2f} s ({loading / plain:.1f} times "
        f"the plain JSON), a year added up in {adding * 1000:.0f} ms; exported {len(exported) / 1e6:.1f} MB, "
        f"imported in {importing:.2f} s; the family with what is learned takes {learned * 1000:.0f} ms, "
        f"{learned / usual:.1f} times the family without"
    )
