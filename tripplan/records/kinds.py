"""What the records hold: for each type of document, what it is called and what tells two of them apart."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import date
from typing import Any

from tripplan.documents.calendars.calendars import FamilyCalendar, SchoolCalendar
from tripplan.documents.calendars.family_days import FamilyDays
from tripplan.documents.calendars.local_days import LocalDays
from tripplan.documents.calendars.server_calendar import OnServer, ServerCalendar
from tripplan.documents.family.household import Household
from tripplan.documents.logbook.entry import LogbookEntry
from tripplan.documents.logbook.settings import LogbookSettings
from tripplan.documents.model import Written
from tripplan.documents.outings.emergency_contacts import EmergencyContacts
from tripplan.documents.outings.going_together import GoingTogether
from tripplan.documents.outings.packing_changes import PackingChanges
from tripplan.documents.outings.planned import PlannedOuting
from tripplan.documents.outings.planned_visits import PlannedVisits
from tripplan.documents.outings.sheet_entries import SheetDetails
from tripplan.documents.places.forecast import PlaceForecast
from tripplan.documents.places.idea import Idea
from tripplan.documents.places.own_figures import OwnFigures
from tripplan.documents.places.own_questions import OwnQuestions
from tripplan.documents.places.place import Place, PlaceId
from tripplan.documents.places.typed_drive import TypedDrive
from tripplan.documents.study.units import StudyUnit
from tripplan.documents.study.wishes import ProgrammeWishes
from tripplan.documents.where import LookupResult
from tripplan.errors import UnknownName

ONLY = "only"
"""The key of a document of which there is one."""


def sheet_key(place: PlaceId, day: date) -> str:
    """The key of what the parent wrote for the day sheet of one outing."""
    return f"{place} on {day.isoformat()}"


class ComparedPlaces(Written):
    """Which places stand side by side."""

    places: tuple[PlaceId, ...] = ()


class DemoShown(Written):
    """Whether the screens show the invented family or the parent's own."""

    shown: bool = True


@dataclass(frozen=True)
class DocumentKind:
    """What the records know about one type of document.

    Attributes:
        name: stored with each document; never changes.
        key: what tells two documents of this kind apart.
        travels: whether it is part of an export; a choice about this computer
            and what was looked up on it are not.
    """

    name: str
    key: Callable[[Any], str]
    travels: bool = True

    def called(self, key: str) -> str:
        """How a sentence names one document, such as 'place stone-mill'."""
        words = self.name.replace("_", " ")
        return words if key == ONLY else f"{words} {key}"


KINDS: dict[type[Written], DocumentKind] = {
    Household: DocumentKind("household", lambda _: ONLY),
    Place: DocumentKind("place", lambda place: str(place.id)),
    Idea: DocumentKind("idea", lambda idea: str(idea.id)),
    SchoolCalendar: DocumentKind("school_calendar", lambda calendar: str(calendar.name)),
    LocalDays: DocumentKind("local_days", lambda _: ONLY),
    FamilyCalendar: DocumentKind("family_calendar", lambda calendar: str(calendar.name)),
    FamilyDays: DocumentKind("family_days", lambda _: ONLY),
    TypedDrive: DocumentKind("typed_drive", lambda drive: str(drive.place)),
    OwnFigures: DocumentKind("own_figures", lambda own: str(own.place)),
    PlannedOuting: DocumentKind("planned_outing", lambda planned: str(planned.id)),
    StudyUnit: DocumentKind("study_unit", lambda unit: str(unit.name)),
    ProgrammeWishes: DocumentKind("programme_wishes", lambda _: ONLY),
    LogbookEntry: DocumentKind("logbook_entry", lambda entry: str(entry.id)),
    LogbookSettings: DocumentKind("logbook_settings", lambda _: ONLY),
    PlaceForecast: DocumentKind("forecast", lambda forecast: str(forecast.place), travels=False),
    LookupResult: DocumentKind("looked_up", lambda found: found.text.casefold(), travels=False),
    SheetDetails: DocumentKind("sheet_details", lambda details: sheet_key(details.place, details.day)),
    OwnQuestions: DocumentKind("own_questions", lambda own: str(own.place)),
    PackingChanges: DocumentKind("packing_changes", lambda _: ONLY),
    EmergencyContacts: DocumentKind("emergency_contacts", lambda _: ONLY),
    PlannedVisits: DocumentKind("planned_visits", lambda _: ONLY),
    GoingTogether: DocumentKind("going_together", lambda _: ONLY),
    ComparedPlaces: DocumentKind("compared_places", lambda _: ONLY),
    ServerCalendar: DocumentKind("server_calendar", lambda _: ONLY, travels=False),
    OnServer: DocumentKind("on_server", lambda lying: str(lying.outing), travels=False),
    DemoShown: DocumentKind("demo_shown", lambda _: ONLY, travels=False),
}

MODELS: dict[str, type[Written]] = {kind.name: model for model, kind in KINDS.items()}

STAYS_HERE = frozenset(kind.name for kind in KINDS.values() if not kind.travels)


def called(kind: str, key: str) -> str:
    """How a sentence names a document, even one of a kind that this version does not know."""
    known = KINDS[MODELS[kind]] if kind in MODELS else DocumentKind(kind, lambda _: key)
    return known.called(key)


def kind_of(model: type[Written]) -> DocumentKind:
    """What the records know about a type.

    Raises:
        UnknownName: documents of this type are not kept.
    """
    if model not in KINDS:
        raise UnknownName("kind of record", model.__name__, tuple(MODELS))
    return KINDS[model]
