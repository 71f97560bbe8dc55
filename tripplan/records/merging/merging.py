"""Two changes of one document, made apart from the same beginning, brought together."""

from collections.abc import Mapping, Sequence

from tripplan.records.merging.differences import entry_names

_GONE = object()
"""Stands for a field or entry that is not there."""

Fields = Mapping[str, object]
"""A document, or a part of one, as JSON values."""


def merged(base: Fields, mine: Fields, theirs: Fields) -> dict[str, object]:
    """What was changed on one side only, from both sides; where both changed the same, mine.

    Entries of a list are followed by their name, else by their number where no list grew or shrank;
    a list for which neither works counts as one value.

    Args:
        base: what both changes were made from.
        mine: the same after one change.
        theirs: the same after the other.
    """
    names = dict.fromkeys((*theirs, *mine))
    both = {
        name: _merged(base.get(name, _GONE), mine.get(name, _GONE), theirs.get(name, _GONE)) for name in names
    }
    return {name: value for name, value in both.items() if value is not _GONE}


def _merged(base: object, mine: object, theirs: object) -> object:
    if mine == base:
        return theirs
    if theirs in (base, mine):
        return mine
    if isinstance(mine, dict) and isinstance(theirs, dict):
        return merged(base if isinstance(base, dict) else {}, mine, theirs)
    if isinstance(base, list) and isinstance(mine, list) and isinstance(theirs, list):
        return _merged_lists(base, mine, theirs)
    return mine


def _merged_lists(
    base: Sequence[object], mine: Sequence[object], theirs: Sequence[object]
) -> Sequence[object]:
    by_name = [_by_name(entries) for entries in (base, mine, theirs)]
    named = [entries for entries in by_name if entries is not None]
    if len(named) == len(by_name):
        return list(merged(*named).values())
    if len(base) == len(mine) == len(theirs):
        return [_merged(*entries) for entries in zip(base, mine, theirs, strict=True)]
    return mine


def _by_name(entries: Sequence[object]) -> dict[str, object] | None:
    names = entry_names(entries) if all(isinstance(entry, dict) for entry in entries) else None
    return None if names is None else dict(zip(names, entries, strict=True))
