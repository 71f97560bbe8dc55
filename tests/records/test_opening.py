"""The family's records and the demo's stand apart; one choice says which are shown."""

import hashlib
from datetime import datetime
from pathlib import Path

from tests.builders import make_household
from tripplan.documents.family.household import Household
from tripplan.records.opening import Which, open_records, show, shown


def test_the_demo_is_shown_at_first_and_left_and_loaded_by_one_choice(tmp_path: Path, noon: datetime) -> None:
    """A fresh start shows the invented family; the choice holds after opening again."""
    family = open_records(tmp_path, Which.FAMILY, noon)
    assert shown(family) is Which.DEMO
    for choice in (Which.FAMILY, Which.FAMILY, Which.DEMO):
        show(family, choice, noon)
        assert shown(open_records(tmp_path, Which.FAMILY, noon)) is choice


def test_choosing_what_is_shown_leaves_fresh_records_fresh(tmp_path: Path, noon: datetime) -> None:
    """The choice is no content of the family's."""
    family = open_records(tmp_path, Which.FAMILY, noon)
    show(family, Which.FAMILY, noon)
    assert family.is_fresh()


def test_replacing_everything_leaves_the_choice(tmp_path: Path, noon: datetime) -> None:
    """What an import replaces does not include which records this computer shows."""
    family = open_records(tmp_path, Which.FAMILY, noon)
    show(family, Which.FAMILY, noon)
    with family.change(noon) as change:
        change.replace_all([make_household()])
    assert shown(family) is Which.FAMILY


def test_what_happens_in_the_demo_never_touches_the_family(tmp_path: Path, noon: datetime) -> None:
    """Filling and changing the demo leaves the family's file the same to the byte."""
    family = open_records(tmp_path, Which.FAMILY, noon)
    family.save(make_household(name="Ours"), noon)
    before = hashlib.sha256(family.database.path.read_bytes()).hexdigest()
    demo = open_records(tmp_path, Which.DEMO, noon)
    demo.save(make_household(name="Invented"), noon)
    kept = demo.get(Household)
    assert kept is not None
    demo.remove(Household, "only", noon, kept.revision)
    assert hashlib.sha256(family.database.path.read_bytes()).hexdigest() == before
