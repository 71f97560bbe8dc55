"""What would be different if certain documents took the place of everything on record."""

from collections.abc import Sequence
from dataclasses import dataclass

from tripplan.documents.model import Written
from tripplan.records.kinds import called, kind_of
from tripplan.records.store import RawDocument, Records


@dataclass(frozen=True)
class Replacement:
    """What would be different, each document by what it is called.

    Attributes:
        added: what is not on record now.
        changed: what is on record and says something else.
        removed: what is on record and would be gone.
        unchanged: how many documents stay as they are [-].
    """

    added: tuple[str, ...]
    changed: tuple[str, ...]
    removed: tuple[str, ...]
    unchanged: int

    @property
    def any(self) -> bool:
        """Whether anything would be different."""
        return bool(self.added or self.changed or self.removed)

    @property
    def listed(self) -> tuple[tuple[str, tuple[str, ...]], ...]:
        """The three lists with a heading each."""
        return (("New:", self.added), ("Changed:", self.changed), ("Removed:", self.removed))


def replacement(
    records: Records, documents: Sequence[Written], unread: Sequence[RawDocument] = ()
) -> Replacement:
    """Compare documents with what is on record, which need not be readable; changes nothing.

    Args:
        records: what is on record.
        documents: what would take its place.
        unread: what would go in with them, though this version cannot read it.
    """
    kept = {(raw.kind, raw.key): raw.body for raw in records.raw_documents()}
    new = {
        (kind_of(type(document)).name, kind_of(type(document)).key(document)): document.model_dump_json()
        for document in documents
    }
    new |= {(raw.kind, raw.key): raw.body for raw in unread}
    both = new.keys() & kept.keys()
    return Replacement(
        added=_called(new.keys() - kept.keys()),
        changed=_called({name for name in both if new[name] != kept[name]}),
        removed=_called(kept.keys() - new.keys()),
        unchanged=sum(new[name] == kept[name] for name in both),
    )


def _called(names: set[tuple[str, str]]) -> tuple[str, ...]:
    return tuple(called(kind, key) for kind, key in sorted(names))
