"""Outings that are planned, and those taken off the list, whose entries a calendar may still hold."""

from collections.abc import Mapping, Set
from dataclasses import dataclass, replace
from datetime import date

from tripplan.documents.outings.planned import PlannedOuting
from tripplan.documents.places.place import PlaceId
from tripplan.records.store import Records, StoredDocument


@dataclass(frozen=True)
class OutingsEver:
    """Every outing that is or was planned.

    Attributes:
        planned: what is on record, by id.
        removed: what was, as it was last, by id; its revision is 0.
    """

    planned: Mapping[str, StoredDocument[PlannedOuting]]
    removed: Mapping[str, StoredDocument[PlannedOuting]]

    @property
    def ids(self) -> Set[str]:
        """Ids that were ever given, each with a calendar entry of its own."""
        return self.planned.keys() | self.removed.keys()

    def revision_of(self, outing: PlannedOuting) -> int:
        """The revision that a planned outing is a change of; 0 where it is not on record."""
        kept = self.planned.get(outing.id)
        return kept.revision if kept else 0

    def before(self, place: PlaceId, day: date) -> PlannedOuting | None:
        """What `on` finds, without its revision."""
        kept = self.on(place, day)
        return kept.value if kept else None

    def on(self, place: PlaceId, day: date) -> StoredDocument[PlannedOuting] | None:
        """What a newly planned outing goes on from; None where there was none on that day.

        One that was removed is followed too: calendars that still hold its entry, called off or not, take
        what comes under the same UID with a higher sequence, and nothing else (RFC 5546, 2.1.4 and 2.1.5).

        Args:
            place: the id of the place card.
            day: the day of the visit.
        """
        for kept in self.planned.values():
            if (kept.value.place, kept.value.day) == (place, day):
                return kept
        gone = [kept for kept in self.removed.values() if (kept.value.place, kept.value.day) == (place, day)]
        if not gone:
            return None
        last = max(gone, key=lambda kept: kept.saved_at)
        without_its_past = {"choice": "", "study_unit": "", "moved_from": None}
        return replace(last, value=last.value.model_copy(update=without_its_past))


def outings_ever(records: Records) -> OutingsEver:
    """Every outing that is or was planned in some records.

    Raises:
        RecordsUnusable: the records cannot be read.
    """
    return OutingsEver(records.all(PlannedOuting), records.removed(PlannedOuting))
