"""An outing that is planned anew goes on from the one that was taken off the list."""

from datetime import date, datetime, timedelta
from pathlib import Path
from typing import Any

import pytest

from tripplan.documents.outings.planned import EntryTicks, PlannedOuting, PlanStatus
from tripplan.documents.places.typed_drive import TypedDrive
from tripplan.errors import RecordConflict
from tripplan.planning.calendar_entry.planned_outing import with_next_sequence
from tripplan.records.copies.daily import back_up
from tripplan.records.copies.listed import copy_of
from tripplan.records.export import export_all, import_all
from tripplan.records.opening import Which, open_records
from tripplan.records.planned_outings import outings_ever
from tripplan.records.restoring import put_back
from tripplan.records.store import Records

DAY = date(2026, 12, 8)
HOUR = timedelta(hours=1)


def outing(outing_id: str = "mill", **changes: Any) -> PlannedOuting:
    """A day at the mill."""
    moments = [f"2026-12-08T{hour:02}:00:00-06:00[America/Chicago]" for hour in (9, 10, 12, 13)]
    values: dict[str, Any] = {
        "id": outing_id,
        "place": "mill",
        "day": DAY,
        "party": ["Ann"],
        "uid": f"uid-of-{outing_id}",
        "changed_at": "2026-11-25T12:00:00Z",
        "likely_amount": "50",
        "currency": "USD",
        **dict(zip(("leave_home", "enter", "leave_place", "home"), moments, strict=True)),
        **changes,
    }
    return PlannedOuting.model_validate(values)


def remove(records: Records, outing_id: str, at: datetime) -> None:
    """Take an outing off the list."""
    kept = records.get(PlannedOuting, outing_id)
    assert kept is not None
    records.remove(PlannedOuting, outing_id, at, kept.revision)


def test_a_removed_document_is_told_as_it_was_last(records: Records, noon: datetime) -> None:
    """Whatever it said last, with revision 0, which saves it anew; what is on record is not among them."""
    records.save(outing(), noon)
    records.save(outing(sequence=1), noon + HOUR, 1)
    records.save(outing("other"), noon)
    assert records.removed(PlannedOuting) == {}
    remove(records, "mill", noon)
    (gone,) = records.removed(PlannedOuting).values()
    assert (gone.value, gone.revision, gone.saved_at) == (outing(sequence=1), 0, noon + HOUR)
    records.save(gone.value, noon, gone.revision)
    assert records.removed(PlannedOuting) == {}
    assert records.removed(TypedDrive) == {}


def test_what_is_planned_is_followed_before_what_was_removed(records: Records, noon: datetime) -> None:
    """Of several that were removed it is the last; its place in a choice, in a unit and its move are over."""
    for name, at in (("first", noon), ("second", noon + HOUR), ("third", noon)):
        records.save(outing(name, choice="x", study_unit="Water", moved_from="2026-12-07T09:00:00Z"), at)
    remove(records, "first", noon)
    remove(records, "second", noon)
    ever = outings_ever(records)
    on_the_list = ever.on("mill", DAY)
    assert on_the_list is not None
    assert (on_the_list.value.id, on_the_list.revision) == ("third", 1)
    assert ever.before("mill", DAY) == on_the_list.value
    assert [ever.revision_of(outing(name)) for name in ("third", "first", "new")] == [1, 0, 0]
    assert ever.ids == {"first", "second", "third"}
    remove(records, "third", noon)
    last = outings_ever(records).on("mill", DAY)
    assert last is not None
    assert (last.value, last.revision) == (outing("second"), 0)
    assert outings_ever(records).on("mill", DAY + timedelta(days=1)) is None
    assert outings_ever(records).before("cave", DAY) is None


def test_taking_a_change_back_counts_the_sequence_up(records: Records, noon: datetime) -> None:
    """The outing says again what it said before, as a later edition of the entry; its parts are withdrawn."""
    first = outing()
    later = first.changed(noon, ticked=EntryTicks(in_parts=True), status=PlanStatus.CONFIRMED)
    records.save(later, noon, records.save(first, noon).revision)
    (change, _) = records.past_changes(2)
    with records.change(noon + HOUR) as back:
        back.take_back(change.number, with_next_sequence)
    kept = records.get(PlannedOuting, "mill")
    assert kept is not None
    expected = {"sequence": 2, "changed_at": noon + HOUR, "once_written": ("-there", "-back")}
    assert kept.value == first.model_copy(update=expected)
    with records.change(noon + 2 * HOUR) as forth:  # and further back from there, as with any document
        forth.take_back(records.past_changes(3)[2].number, with_next_sequence)
    assert records.get(PlannedOuting, "mill") is None


def test_taking_a_removal_back_changes_nothing(records: Records, noon: datetime) -> None:
    """What the calendar holds is what is on the list again."""
    records.save(outing(), noon)
    remove(records, "mill", noon)
    with records.change(noon + HOUR) as back:
        back.take_back(records.past_changes(1)[0].number, with_next_sequence)
    kept = records.get(PlannedOuting, "mill")
    assert kept is not None
    assert kept.value == outing()


def test_a_days_copy_that_is_put_back_counts_the_sequence_up(records: Records, noon: datetime) -> None:
    """Outings that changed since then are later editions; those that did not are as they were."""
    with records.change(noon) as change:
        for value in (outing(), outing("same"), outing("removed")):
            change.save(value)
    back_up(records.database, DAY)
    records.save(outing().changed(noon, status=PlanStatus.CANCELLED), noon, 1)
    remove(records, "removed", noon)
    put_back(records, copy_of(records.database.path, DAY), noon + HOUR, with_next_sequence)
    kept = {key: one.value for key, one in records.all(PlannedOuting).items()}
    assert kept == {
        "mill": outing(sequence=2, changed_at=noon + HOUR),
        "same": outing("same"),
        "removed": outing("removed"),
    }


def test_an_imported_export_counts_the_sequence_up_and_never_down(
    records: Records, tmp_path: Path, noon: datetime
) -> None:
    """Changed or removed since the export: a later edition; unchanged, or from a computer ahead: as it is."""
    with records.change(noon) as change:
        for value in (outing(), outing("gone"), outing("same"), outing("ahead")):
            change.save(value)
    earlier = export_all(records)
    elsewhere = open_records(tmp_path / "elsewhere", Which.FAMILY, noon)
    for name in ("mill", "gone"):
        records.save(outing(name, sequence=3, party=["Ann", "Cy"]), noon, 1)
    remove(records, "gone", noon)
    assert import_all(records, earlier, "all.json", noon + HOUR, with_next_sequence) == ()
    now = {key: one.value for key, one in records.all(PlannedOuting).items()}
    assert now == {
        "ahead": outing("ahead"),
        "gone": outing("gone", sequence=4, changed_at=noon + HOUR),
        "mill": outing(sequence=4, changed_at=noon + HOUR),
        "same": outing("same"),
    }
    elsewhere.save(outing("ahead", sequence=7, changed_at=noon), noon)
    assert import_all(records, export_all(elsewhere), "all.json", noon + HOUR, with_next_sequence) == ()
    kept = records.get(PlannedOuting, "ahead")
    assert kept is not None
    assert (kept.value.sequence, kept.value.changed_at) == (7, noon)


def test_documents_without_a_calendar_entry_are_put_back_to_the_letter(
    records: Records, noon: datetime
) -> None:
    """Only planned outings have a sequence; where two windows met, nothing is put back."""
    one, two = (TypedDrive(place="mill", km=km, minutes=50, typed_on=DAY) for km in (1, 2))
    records.save(two, noon, records.save(one, noon).revision)
    number = records.past_changes(1)[0].number
    with records.change(noon) as back:
        back.take_back(number, with_next_sequence)
    kept = records.get(TypedDrive, "mill")
    assert kept is not None
    assert kept.value == one
    with pytest.raises(RecordConflict), records.change(noon) as again:
        again.take_back(number, with_next_sequence)
