"""Taking a study unit off the records, with what was said of it elsewhere."""

from tripplan.documents.study.units import StudyUnit
from tripplan.documents.study.wishes import ProgrammeWishes
from tripplan.records.store import Change, StoredDocument


def remove_unit(change: Change, kept: StoredDocument[StudyUnit]) -> None:
    """Remove a unit, and what was settled or ruled out for it in the term's programme.

    Args:
        change: what it is part of.
        kept: the unit as it was seen.

    Raises:
        RecordConflict: the unit was changed meanwhile.
    """
    change.remove(StudyUnit, kept.value.name, kept.revision)
    wishes = change.get(ProgrammeWishes)
    if wishes is not None:
        change.save(wishes.value.forgetting(kept.value.name), wishes.revision)
