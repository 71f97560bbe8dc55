"""Two thousand outings: saving, loading, adding up and learning, measured beside reading the plain JSON."""

import json
import os
from collections.abc import Callable, Iterable, Sequence
from datetime import UTC, date, datetime, timedelta
from functools import cache
from pathlib import Path

from pydantic import TypeAdapter

from tests.benchmarks.timing import timed
from tests.builders import make_household, make_place
from tests.planning.logbook.entries import make_entry
from tests.planning.logbook.test_against_plan import said
from tripplan.documents.logbook.entry import LogbookEntry
from tripplan.documents.logbook.settings import LogbookSettings
from tripplan.documents.model import Written
from tripplan.planning.logbook.year import year_account
from tripplan.records.export import MOST_BYTES, export_all, import_all
from tripplan.records.opening import Which, open_records
from tripplan.records.store import Records
from tripplan.services import family_in, family_on_record

NOON = datetime(2026, 11, 25, 12, tzinfo=UTC)
COUNT = 2000
CHANGED = 15
"""How many are changed one by one."""
FEWER = 10
"""A file each is written and flushed for a tenth of them, and the time taken ten times."""
LOGBOOK = TypeAdapter(list[LogbookEntry])


@cache
def outings() -> tuple[LogbookEntry, ...]:
    """So many outings, a day each."""
    plan, days = said(), (date(2021, 6, 1) + timedelta(days=n) for n in range(COUNT))
    return tuple(make_entry(id=f"{day}-trip", day=day, as_planned=plan) for day in days)


def seconds(work: Callable[[], object], times: int = 1) -> float:
    """The quickest of some runs, each from nothing [s]."""
    return min(timed(work)[0] for _ in range(times))


def replace_all(records: Records, documents: Sequence[Written]) -> None:
    """Make these the only documents on record."""
    with records.change(NOON) as change:
        change.replace_all(documents)


def test_two_thousand_outings(tmp_path: Path, tell: Callable[[str], None]) -> None:
    """They are saved, loaded, exported and taken back whole; a page asks for the newest alone."""
    records = open_records(tmp_path / "one", Which.FAMILY, NOON)
    there = open_records(tmp_path / "two", Which.FAMILY, NOON)
    saving = seconds(lambda: replace_all(records, [make_household(), make_place(), *outings()]))
    loading = seconds(lambda: records.all(LogbookEntry))
    known = records.all(LogbookEntry)
    again = seconds(lambda: records.all(LogbookEntry, known), 3)
    bodies = [raw.body for raw in records.raw_documents()]
    plain = seconds(lambda: [json.loads(body) for body in bodies], 2)
    usual = seconds(lambda: family_on_record(records), 3)
    learned = seconds(lambda: family_in(records), 3)
    kept = [one.value for one in records.all(LogbookEntry).values()]
    today = kept[-1].day
    adding = seconds(lambda: year_account(kept, [], [], LogbookSettings(), currency="USD", today=today))
    exported = export_all(records)
    importing = seconds(lambda: import_all(there, exported, "all.json", NOON))
    assert kept == list(outings())
    assert export_all(there) == exported
    assert len(exported) < MOST_BYTES
    tell(
        f"{COUNT} outings: saved in {saving:.2f} s, loaded in {loading:.2f} s ({loading / plain:.1f} times "
        f"the plain JSON), again at the next press in {again / loading:.2f} of that, a year added up in "
        f"{adding * 1000:.0f} ms; exported {len(exported) / 1e6:.1f} MB, imported in {importing:.2f} s; the "
        f"family with what is learned takes {learned * 1000:.0f} ms, {learned / usual:.1f} times the family "
        "without"
    )


def write_through(path: Path, text: str) -> None:
    """Write a file so that it is on the disk, whole or not at all, as a careful program does."""
    partial = path.with_suffix(".partial")
    with partial.open("w", encoding="utf-8") as file:
        file.write(text)
        file.flush()
        os.fsync(file.fileno())
    os.replace(partial, path)
    if os.name == "posix":  # elsewhere a folder cannot be opened
        folder = os.open(path.parent, os.O_RDONLY)
        os.fsync(folder)
        os.close(folder)


def test_two_thousand_outings_against_plain_files(tmp_path: Path, tell: Callable[[str], None]) -> None:
    """All at once and one by one, beside JSON in one file and in a file each; what is loaded is the same."""
    records = open_records(tmp_path, Which.FAMILY, NOON)
    whole, folder = tmp_path / "whole.json", tmp_path / "each"
    folder.mkdir()
    bodies = {entry.id: entry.model_dump_json() for entry in outings()}

    def write_whole(times: int = 1) -> None:
        for _ in range(times):
            write_through(whole, f"[{','.join(bodies.values())}]")

    def write_each(ids: Iterable[str]) -> None:
        for one in ids:
            write_through(folder / f"{one}.json", bodies[one])

    def save_one_by_one() -> None:
        for entry in changed:
            records.save(entry, NOON, 1)

    at_once = seconds(lambda: replace_all(records, outings()))
    at_once_whole = seconds(write_whole)
    few = list(bodies)[: COUNT // FEWER]
    at_once_each = seconds(lambda: write_each(few)) * FEWER  # a flush each: all of them would take long
    for one in bodies:
        (folder / f"{one}.json").write_text(bodies[one], encoding="utf-8")
    changed = [entry.model_copy(update={"notes": "changed"}) for entry in outings()[:CHANGED]]
    bodies |= {entry.id: entry.model_dump_json() for entry in changed}
    one_by_one = seconds(save_one_by_one)
    one_by_one_whole = seconds(lambda: write_whole(CHANGED))
    one_by_one_each = seconds(lambda: write_each(entry.id for entry in changed))
    read = LogbookEntry.model_validate_json
    loading = seconds(lambda: records.all(LogbookEntry), 2)
    loading_whole = seconds(lambda: LOGBOOK.validate_json(whole.read_bytes()), 2)
    loading_each = seconds(lambda: [read(path.read_bytes()) for path in folder.iterdir()], 2)
    kept = [one.value for one in records.all(LogbookEntry).values()]
    assert kept == [*changed, *outings()[CHANGED:]] == LOGBOOK.validate_json(whole.read_bytes())
    assert sorted((read(path.read_bytes()) for path in folder.iterdir()), key=lambda one: one.id) == kept

    def told(what: str, ours: float, one_file: float, file_each: float) -> str:
        return (
            f"{what} in {ours:.2f} s: {ours / one_file:.2f} times one JSON file rewritten whole, "
            f"{ours / file_each:.2f} times a file each"
        )

    tell(
        f"{COUNT} outings against plain files that are flushed to the disk:"
        f"\n  {told('saved at once', at_once, at_once_whole, at_once_each)}"
        f"\n  {told(f'{CHANGED} changed one by one', one_by_one, one_by_one_whole, one_by_one_each)}"
        f"\n  {told('loaded', loading, loading_whole, loading_each)}"
    )
