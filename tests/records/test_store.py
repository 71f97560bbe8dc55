"""Documents are kept as they are, never overwritten unseen, and every change can be taken back."""

from datetime import UTC, date, datetime, timedelta
from typing import cast

import pytest
from pydantic import ValidationError

from tests.builders import make_household, make_place
from tests.records.conftest import fill
from tripplan.documents.family.household import Household
from tripplan.documents.model import Written
from tripplan.documents.places.place import Place
from tripplan.documents.places.typed_drive import TypedDrive
from tripplan.errors import RecordConflict, RecordsUnusable, UnknownName
from tripplan.records.kinds import KINDS
from tripplan.records.migrations import summed
from tripplan.records.store import Records, StoredDocument


def drive(km: float) -> TypedDrive:
    """A typed drive whose distance tells its versions apart."""
    return TypedDrive(place="mill", km=km, minutes=50, typed_on=date(2026, 11, 1))


def km_on_record(records: Records) -> float | None:
    """The distance on record, if there is one."""
    kept = records.get(TypedDrive, "mill")
    return None if kept is None else kept.value.km


def test_what_is_saved_comes_back_equal(records: Records, noon: datetime) -> None:
    """A household and places come back equal, with revision and time, by key in order."""
    records.save(make_household(), noon)
    records.save(make_place(id="windmill"), noon)
    records.save(make_place(id="cave"), noon)
    assert records.get(Household) == StoredDocument(make_household(), 1, noon)
    places = records.all(Place)
    assert list(places) == ["cave", "windmill"]
    assert places["cave"].value == make_place(id="cave")


def test_nothing_on_record_is_none(records: Records) -> None:
    """What was never saved is None, and a type without documents is empty."""
    assert records.get(Household) is None
    assert records.all(Place) == {}


def test_what_was_read_before_is_made_anew_only_where_it_changed(records: Records, noon: datetime) -> None:
    """The answer is that of a fresh reading; what is the same is the very same object."""
    for name in ("cave", "mill", "windmill"):
        records.save(make_place(id=name), noon)
    before = records.all(Place)
    records.save(make_place(id="mill", name="Other"), noon, before["mill"].revision)
    records.remove(Place, "cave", noon, before["cave"].revision)
    records.save(make_place(id="abbey"), noon)
    now = records.all(Place, before)
    assert now == records.all(Place)
    assert list(now) == ["abbey", "mill", "windmill"]
    assert now["windmill"] is before["windmill"]
    assert now["mill"].value.name == "Other"
    records.undo(Place, "mill", noon, now["mill"].revision)
    assert records.all(Place, now)["mill"].value == before["mill"].value


def test_only_known_kinds_are_kept(records: Records, noon: datetime) -> None:
    """A type that the records do not know is a caller's mistake, named with the known ones."""

    class Recipe(Written):
        """Nothing that is kept here."""

    with pytest.raises(UnknownName, match=r"Recipe.*planned_outing"):
        records.save(Recipe(), noon)


def test_names_of_kinds_never_change() -> None:
    """These names stand in families' files; a new one may join, none may go or change."""
    assert {kind.name for kind in KINDS.values()} >= {
        "household",
        "place",
        "school_calendar",
        "family_calendar",
        "typed_drive",
        "planned_outing",
        "study_unit",
        "logbook_entry",
        "logbook_settings",
        "compared_places",
        "demo_shown",
    }


def test_times_are_kept_in_utc_and_need_a_zone(records: Records, noon: datetime) -> None:
    """The same moment comes back whatever zone it was given in; without a zone nothing is saved."""
    records.save(drive(1), noon.astimezone(tz=None))
    kept = records.get(TypedDrive, "mill")
    assert kept is not None
    assert (kept.saved_at, kept.saved_at.tzinfo) == (noon, UTC)
    with pytest.raises(ValueError, match="time zone"):
        records.save(drive(2), noon.replace(tzinfo=None), kept.revision)
    assert km_on_record(records) == 1


def test_two_windows_never_overwrite_each_other_unseen(records: Records, noon: datetime) -> None:
    """The second of two windows that began from the same revision is told, and changes nothing."""
    seen = records.save(drive(1), noon).revision
    records.save(drive(2), noon, seen)
    with pytest.raises(RecordConflict, match="typed drive mill was changed in another window"):
        records.save(drive(3), noon, seen)
    with pytest.raises(RecordConflict):
        records.remove(TypedDrive, "mill", noon, seen)
    with pytest.raises(RecordConflict):
        records.undo(TypedDrive, "mill", noon, seen)
    assert km_on_record(records) == 2


def test_two_windows_cannot_both_make_the_same_new_document(records: Records, noon: datetime) -> None:
    """Saving as new what is there by now is a conflict."""
    records.save(drive(1), noon)
    with pytest.raises(RecordConflict):
        records.save(drive(2), noon)
    assert km_on_record(records) == 1


def test_a_removed_document_is_not_brought_back_unseen(records: Records, noon: datetime) -> None:
    """A window that still shows a removed document cannot save over the removal; a new one may begin."""
    seen = records.save(drive(1), noon).revision
    gone = records.remove(TypedDrive, "mill", noon, seen)
    for stale in (seen, gone):
        with pytest.raises(RecordConflict):
            records.save(drive(2), noon, stale)
    assert km_on_record(records) is None
    anew = records.save(drive(3), noon)
    assert anew.revision > gone


def test_revisions_are_never_used_twice(records: Records, noon: datetime) -> None:
    """After an undo, a window from before it is still told: going back is a revision of its own."""
    first = records.save(drive(1), noon)
    second = records.save(drive(2), noon, first.revision)
    records.undo(TypedDrive, "mill", noon, second.revision)
    for stale in (first.revision, second.revision):
        with pytest.raises(RecordConflict):
            records.save(drive(9), noon, stale)
    assert km_on_record(records) == 1


def test_saving_what_is_there_adds_no_revision(records: Records, noon: datetime) -> None:
    """The same content keeps revision and time, so that an undo takes back a real change."""
    first = records.save(drive(1), noon)
    again = records.save(drive(1), noon + timedelta(hours=1), first.revision)
    assert again == first


def test_undo_goes_back_step_by_step(records: Records, noon: datetime) -> None:
    """Each undo takes back one more change, to before the document was there; then nothing is left."""
    revision = 0
    for km in (1, 2, 3):
        revision = records.save(drive(km), noon, revision).revision
    revision = records.remove(TypedDrive, "mill", noon, revision)
    for km in (3, 2, 1):
        kept = cast(StoredDocument[TypedDrive], records.undo(TypedDrive, "mill", noon, revision))
        assert kept.value.km == km == km_on_record(records)
        revision = kept.revision
    assert records.undo(TypedDrive, "mill", noon, revision) is None
    assert km_on_record(records) is None
    with pytest.raises(UnknownName, match="no change to undo in"):
        records.undo(TypedDrive, "mill", noon, revision + 1)


def test_undo_after_undo_and_a_new_change_goes_back_on_the_new_path(records: Records, noon: datetime) -> None:
    """1, 2, undo, 3: the undo of 3 gives 1, and the next one takes the document away."""
    one = records.save(drive(1), noon)
    two = records.save(drive(2), noon, one.revision)
    back = cast(StoredDocument[TypedDrive], records.undo(TypedDrive, "mill", noon, two.revision))
    three = records.save(drive(3), noon, back.revision)
    again = cast(StoredDocument[TypedDrive], records.undo(TypedDrive, "mill", noon, three.revision))
    assert again.value.km == 1
    assert records.undo(TypedDrive, "mill", noon, again.revision) is None


def test_what_was_never_there_has_nothing_to_undo(records: Records, noon: datetime) -> None:
    """Undo without any change is a caller's mistake."""
    with pytest.raises(UnknownName):
        records.undo(TypedDrive, "mill", noon, 0)


def test_changes_in_one_block_happen_together_or_not_at_all(records: Records, noon: datetime) -> None:
    """When the third of three changes meets a conflict, the first two did not happen either."""
    kept = records.save(drive(1), noon)
    before = records.raw_documents()

    def change_three() -> None:
        with records.change(noon) as change:
            change.save(make_household())
            change.remove(TypedDrive, "mill", kept.revision)
            assert change.get(TypedDrive, "mill") is None
            change.save(make_place(), expected=7)

    with pytest.raises(RecordConflict):
        change_three()
    assert records.raw_documents() == before


@pytest.mark.parametrize("stopped_by", [KeyboardInterrupt, MemoryError, ZeroDivisionError])
def test_a_block_that_is_broken_off_changes_nothing(
    records: Records, noon: datetime, stopped_by: type[BaseException]
) -> None:
    """Whatever ends a block half-way, nothing of it is on record and the next change works."""

    def broken_off() -> None:
        with records.change(noon) as change:
            change.save(drive(1))
            raise stopped_by

    with pytest.raises(stopped_by):
        broken_off()
    assert records.is_fresh()
    records.save(drive(2), noon)
    assert km_on_record(records) == 2


def test_a_save_that_fails_between_its_two_tables_changes_nothing(records: Records, noon: datetime) -> None:
    """With the second of a save's two statements refused, the first is taken back as well."""
    with records.database.writing() as connection:
        connection.execute(
            "CREATE TRIGGER refuse BEFORE INSERT ON document BEGIN SELECT RAISE(ABORT, 'refused'); END"
        )
    with pytest.raises(RecordsUnusable, match="refused"):
        records.save(drive(1), noon)
    with records.database.reading() as connection:
        assert connection.execute("SELECT count(*) FROM version").fetchone()[0] == 0


def test_what_could_not_be_read_again_is_not_saved(records: Records, noon: datetime) -> None:
    """A document changed past its own rules is refused when saved, not found out when loaded."""
    with pytest.raises(ValidationError):
        records.save(drive(1).model_copy(update={"km": -1.0}), noon)
    assert records.is_fresh()


def test_replacing_refuses_two_documents_of_one_name(records: Records) -> None:
    """Two places with one id are a caller's mistake, and nothing is put in."""
    with pytest.raises(ValueError, match="share a key"):
        fill(records, [make_place(), make_place(name="Twin")])
    assert records.is_fresh()


def write_body(records: Records, sql: str) -> None:
    """Change what stands in the file as another version of the program would, checksum and all."""
    with records.database.writing() as connection:
        connection.execute(f"UPDATE version SET body = {sql} WHERE kind = 'typed_drive'")
        connection.execute(f"UPDATE version SET checksum = {summed('version')}")


def test_a_document_that_no_longer_fits_is_set_aside_and_named(records: Records, noon: datetime) -> None:
    """A value that is refused by now: the document is named with field and value; all others open."""
    records.save(drive(1), noon)
    records.save(make_place(), noon)
    write_body(records, "json_set(body, '$.km', -1)")
    assert records.get(TypedDrive, "mill") is None
    assert list(records.all(Place)) == ["test-museum"]
    (aside,) = records.set_aside()
    assert (aside.called, aside.is_used) == ("typed drive mill", False)
    assert "km" in aside.why
    assert "-1" in aside.why
    assert {raw.key for raw in records.raw_documents()} == {"mill", "test-museum"}


def test_a_field_that_a_document_can_do_without_never_locks_it_out(records: Records, noon: datetime) -> None:
    """A field of a later version, and one with a value refused by now, are left out and named."""
    records.save(make_household(), noon)
    with records.database.writing() as connection:
        connection.execute(
            "UPDATE version SET body = json_set(body, '$.reserve_percent', '250', '$.moods', json('[1]'))"
        )
        connection.execute(f"UPDATE version SET checksum = {summed('version')}")
    kept = records.get(Household)
    assert kept is not None
    assert kept.value == make_household()
    (aside,) = records.set_aside()
    assert aside.is_used
    assert "reserve_percent" in aside.why
    assert "250" in aside.why
    assert "moods" in aside.why


def test_what_cannot_be_read_stands_in_nobodys_way(records: Records, noon: datetime) -> None:
    """It can be entered anew, or let go; what was there stays in the history."""
    records.save(drive(1), noon)
    write_body(records, "'no JSON'")
    assert records.set_aside()
    assert records.save(drive(2), noon).revision == 2
    assert (km_on_record(records), records.set_aside()) == (2, ())
    write_body(records, "'no JSON'")
    with records.change(noon) as change:
        change.let_go("typed_drive", "mill")
    assert (km_on_record(records), records.set_aside(), records.is_fresh()) == (None, (), True)


def test_a_row_that_the_disk_has_changed_is_not_taken_for_what_was_saved(
    records: Records, noon: datetime
) -> None:
    """One digit of a distance: the drive is set aside, not driven wrong."""
    records.save(drive(1234), noon)
    with records.database.writing() as connection:
        connection.execute("UPDATE version SET body = replace(body, '1234', '1235')")
    assert km_on_record(records) is None
    assert records.all(TypedDrive) == {}
    assert [aside.called for aside in records.set_aside()] == ["typed drive mill"]
    assert [raw.is_sound for raw in records.raw_documents()] == [False]
