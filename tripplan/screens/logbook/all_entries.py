"""The whole logbook, without reading anew at every press what has not changed."""

from collections.abc import Mapping

import streamlit as st

from tripplan.documents.logbook.entry import LogbookEntry
from tripplan.records.store import Records, StoredDocument

_Entries = Mapping[str, StoredDocument[LogbookEntry]]


@st.cache_resource(show_spinner=False, max_entries=4)
def _seen(path: str) -> dict[str, _Entries]:  # noqa: ARG001 - one for each records file
    return {}


def all_entries(records: Records) -> _Entries:
    """Every entry by its id, in order of the ids, as it is on record now.

    Args:
        records: whose logbook.

    Raises:
        RecordsUnusable: the records cannot be read.
    """
    seen = _seen(str(records.database.path))
    # Every session may put its own in here: whoever comes next checks each entry against the records.
    entries = seen["entries"] = records.all(LogbookEntry, seen.get("entries"))
    return entries
