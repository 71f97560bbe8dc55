"""What the parent writes for day sheets is kept, comes back, and can be taken back."""

from datetime import date, datetime, timedelta

import pytest

from tripplan.documents.model import Written
from tripplan.documents.outings.emergency_contacts import EmergencyContact, EmergencyContacts
from tripplan.documents.outings.packing_changes import PackingChanges
from tripplan.documents.outings.sheet_entries import Booking, SheetDetails, SheetEntries, SheetTicks
from tripplan.documents.places.own_questions import OwnQuestions
from tripplan.errors import RecordConflict
from tripplan.records.export import export_all, read_export
from tripplan.records.kinds import kind_of
from tripplan.records.sheet_entries import sheet_entries_in
from tripplan.records.store import Records

DAY = date(2026, 12, 8)
DETAILS = SheetDetails(
    place="mill", day=DAY, bookings=(Booking(what="tour", number="K7"),), ticked=SheetTicks(needs=True)
)
QUESTIONS = OwnQuestions(place="mill", questions=("How deep?",))
PACKING = PackingChanges(added=("the grey rabbit",), left_out=("Pushchair",))
CONTACTS = EmergencyContacts(contacts=(EmergencyContact(name="Aunt Vera", telephone="(608) 555-0100"),))
DOCUMENTS: tuple[Written, ...] = (DETAILS, QUESTIONS, PACKING, CONTACTS)


def test_nothing_on_record_means_the_usual(records: Records) -> None:
    """No bookings, nothing ticked, no own contacts, questions or packing."""
    assert sheet_entries_in(records, "mill", DAY) == SheetEntries()


def test_what_is_kept_stands_on_its_own_sheet_only(records: Records, noon: datetime) -> None:
    """Bookings belong to one outing, questions to one place, packing and contacts to every sheet."""
    for document in DOCUMENTS:
        records.save(document, noon)
    expected = SheetEntries(DETAILS.bookings, DETAILS.ticked, CONTACTS, PACKING, QUESTIONS)
    assert sheet_entries_in(records, "mill", DAY) == expected
    another_day = sheet_entries_in(records, "mill", DAY + timedelta(days=1))
    assert another_day == SheetEntries(contacts=CONTACTS, packing=PACKING, questions=QUESTIONS)
    another_place = sheet_entries_in(records, "cave", DAY)
    assert another_place == SheetEntries(contacts=CONTACTS, packing=PACKING)


@pytest.mark.parametrize("document", DOCUMENTS, ids=lambda document: type(document).__name__)
def test_each_is_taken_back_and_never_overwritten_unseen(
    records: Records, noon: datetime, document: Written
) -> None:
    """After one save there was nothing before; a save from an older look is refused."""
    kept = records.save(document, noon)
    key = kind_of(type(document)).key(document)
    with pytest.raises(RecordConflict):
        records.save(document.model_copy(), noon, expected=7)
    assert records.get(type(document), key) == kept
    assert records.undo(type(document), key, noon, kept.revision) is None
    assert records.get(type(document), key) is None


def test_they_travel_in_an_export(records: Records, noon: datetime) -> None:
    """A family that moves to another computer takes its lists along."""
    for document in DOCUMENTS:
        records.save(document, noon)
    contents = read_export(export_all(records), "records.json")
    assert contents.findings == ()
    assert all(document in contents.documents for document in DOCUMENTS)
