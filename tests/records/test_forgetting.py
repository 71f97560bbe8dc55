"""Deleted for good means gone: from the file, its free pages, its copies and what was kept beside it."""

from datetime import timedelta

from tests.builders import make_household, make_place
from tests.planning.logbook.entries import make_entry
from tests.records.conftest import NOON
from tripplan.documents.family.household import Household
from tripplan.documents.logbook.entry import LogbookEntry
from tripplan.documents.places.place import Place
from tripplan.records.copies.daily import back_up
from tripplan.records.copies.listed import copies_of
from tripplan.records.damage.examine import damage_in
from tripplan.records.forgetting import forget, forgettable
from tripplan.records.opening import Which, open_records
from tripplan.records.store import Records

CHILD = "Zephyrine"
LATER = NOON + timedelta(days=3)


def with_child(*names: str) -> Household:
    """A household of these people."""
    return make_household(members=[{"name": name, "born": "2019-05"} for name in ("Ann", *names)])


def family_that_lost_a_child(records: Records) -> None:
    """A child in the household, in a logbook entry and in a copy; then it is taken out of the household."""
    first = records.save(with_child(CHILD, "Cy"), NOON)
    told = {"member": CHILD, "did": "turned the mill", "learned": "why", "subjects": [{"subject": "science"}]}
    nap = {"member": CHILD, "minutes": 30, "where": "car"}
    records.save(make_entry(party=["Ann", CHILD, "Cy"], naps=[nap], children=[told]), NOON)
    records.save(make_place(id="kept"), NOON)
    gone = records.save(make_place(id="gone", notes=f"{CHILD} liked it"), NOON)
    back_up(records.database, NOON.date())
    with records.change(NOON, f"{CHILD} is removed.") as change:
        change.save(with_child("Cy"), first.revision)
        change.remove(Place, "gone", gone.revision)


def every_byte(records: Records) -> bytes:
    """All that lies in the records' folder."""
    folder = records.database.path.parent
    return b"".join(path.read_bytes() for path in sorted(folder.rglob("*")) if path.is_file())


def test_what_would_go_is_told(records: Records) -> None:
    """Earlier states, removed records, who left, where the name stands, and copies; nothing changes."""
    family_that_lost_a_child(records)
    what = forgettable(records)
    assert (what.states, what.removed, what.people) == (2, ("place gone",), (CHILD,))
    assert what.naming == ("logbook entry 2026-11-14-test-museum",)
    assert (what.mentioning, len(what.files)) == ((), 1)
    assert CHILD.encode() in every_byte(records)


def test_no_byte_of_a_deleted_child_is_left(records: Records) -> None:
    """Nowhere in the folder, free pages and log included; all else is on record, copied, whole and open."""
    family_that_lost_a_child(records)
    forget(records, LATER)
    assert CHILD.encode() not in every_byte(records)
    kept = records.get(Household)
    assert kept is not None
    assert kept.value == with_child("Cy")
    assert [entry.value.party for entry in records.all(LogbookEntry).values()] == [("Ann", "Cy")]
    assert list(records.all(Place)) == ["kept"]
    assert damage_in(records.database) == ""
    assert [copy.holds() for copy in copies_of(records.database.path)] == [3]
    again = open_records(records.database.path.parent, Which.FAMILY, LATER)
    assert again.made_anew is None
    assert again.save(with_child("Cy", "Di"), LATER, kept.revision).revision == kept.revision + 1
    assert not forgettable(again).people


def test_a_name_in_a_text_of_what_stays_is_told(records: Records) -> None:
    """A note is the parent's own; the record that has it is named."""
    family_that_lost_a_child(records)
    records.save(make_place(id="noted", notes=f"Ask for {CHILD}'s cup."), NOON)
    assert forgettable(records).mentioning == ("place noted",)


def test_without_anything_removed_there_is_nothing_to_delete(records: Records) -> None:
    """A fresh household has no earlier state."""
    records.save(with_child(CHILD), NOON)
    assert not forgettable(records).any
