"""What the parent wrote for one day sheet, gathered from the records."""

from datetime import date

from tripplan.documents.outings.emergency_contacts import EmergencyContacts
from tripplan.documents.outings.packing_changes import PackingChanges
from tripplan.documents.outings.sheet_entries import SheetDetails, SheetEntries
from tripplan.documents.places.own_questions import OwnQuestions
from tripplan.documents.places.place import PlaceId
from tripplan.records.kinds import sheet_key
from tripplan.records.store import Records


def sheet_entries_in(records: Records, place: PlaceId, day: date) -> SheetEntries:
    """Everything on record that the sheet of one outing shows; the usual where nothing is.

    Args:
        records: whose.
        place: the id of the place card.
        day: the day of the visit.

    Raises:
        RecordsUnusable: the records cannot be read.
    """
    details = records.get(SheetDetails, sheet_key(place, day))
    contacts = records.get(EmergencyContacts)
    packing = records.get(PackingChanges)
    questions = records.get(OwnQuestions, place)
    own = details.value if details else SheetDetails(place=place, day=day)
    return SheetEntries(
        bookings=own.bookings,
        ticked=own.ticked,
        contacts=contacts.value if contacts else EmergencyContacts(),
        packing=packing.value if packing else PackingChanges(),
        questions=questions.value if questions else None,
    )
