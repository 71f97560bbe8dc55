"""What the parent writes for a day sheet, beside what planning works out."""

from dataclasses import dataclass, field
from datetime import date
from typing import Annotated

from pydantic import Field

from tripplan.documents.model import Name, Written
from tripplan.documents.outings.emergency_contacts import EmergencyContacts
from tripplan.documents.outings.packing_changes import PackingChanges
from tripplan.documents.places.own_questions import OwnQuestions
from tripplan.documents.places.place import PlaceId


class Booking(Written):
    """One booking, with the number that proves it."""

    what: Name
    """What was booked."""
    number: Annotated[str, Field(min_length=1, max_length=60)]
    """The number or code."""


class SheetTicks(Written):
    """What the parent ticked to stand on the sheet, a paper that may be left behind."""

    names: bool = False
    """Names on the page saved for the phone, which leaves the computer; else first letters stand for them."""
    needs: bool = False
    """Allergies and needs, as noted in the household."""
    birth_dates: bool = False
    """Birth dates."""
    home_address: bool = False
    """The home address."""


class SheetDetails(Written):
    """What the parent wrote for the sheet of one outing."""

    place: PlaceId
    """The id of the place card."""
    day: date
    """The day of the visit."""
    bookings: Annotated[tuple[Booking, ...], Field(max_length=10)] = ()
    """What is booked."""
    ticked: SheetTicks = SheetTicks()
    """What may stand on the sheet."""


@dataclass(frozen=True)
class SheetEntries:
    """Everything the parent wrote that one day sheet shows.

    Attributes:
        bookings: what is booked.
        ticked: what may stand on the sheet.
        contacts: the family's own emergency contacts.
        packing: what the family packs differently.
        questions: the parent's own for this place, if any.
    """

    bookings: tuple[Booking, ...] = ()
    ticked: SheetTicks = field(default_factory=SheetTicks)
    contacts: EmergencyContacts = field(default_factory=EmergencyContacts)
    packing: PackingChanges = field(default_factory=PackingChanges)
    questions: OwnQuestions | None = None
